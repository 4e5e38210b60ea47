/**
 * Text with its disguises undone, each place still known: HTML entities, URL escapes, escapes of JSON and scripts.
 * A name may hide in any of them, or in one within another.
 */

export interface Plain {
  readonly text: string
  /** Where a place of `text` came from in the text as it was given. */
  origin(at: number): number
}

interface Step {
  /** Places after which decoded and original text run apart, rising. */
  readonly decoded: readonly number[]
  readonly original: readonly number[]
}

const escapes =
  /&#[xX]([0-9a-fA-F]{1,6});?|&#(\d{1,7});?|&([a-zA-Z]{2,24});|((?:%[0-9a-fA-F]{2})+)|\\u\{([0-9a-fA-F]{1,6})\}|\\u([0-9a-fA-F]{4})|\\x([0-9a-fA-F]{2})|\\([nrtbfv/"'\\])/g

const named: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
  nbsp: ' ',
  shy: '\u00AD',
  zwnj: '\u200C',
  zwj: '\u200D',
  rsquo: '’',
  lsquo: '‘',
  hyphen: '-',
  dash: '-',
  period: '.',
  lowbar: '_',
  Tab: ' ',
  NewLine: '\n',
  ensp: ' ',
  emsp: ' ',
  thinsp: ' ',
  szlig: 'ß',
  aelig: 'æ',
  AElig: 'Æ',
  oelig: 'œ',
  OElig: 'Œ',
  oslash: 'ø',
  Oslash: 'Ø',
  eth: 'ð',
  ETH: 'Ð',
  thorn: 'þ',
  THORN: 'Þ',
}

/** `&eacute;` and its kin: the letter alone, since accents do not count in the search. */
const accented = /^([A-Za-z])(?:acute|grave|circ|uml|tilde|ring|cedil|caron|breve|macr|ogon|dot|dblac|strok)$/

/** Rounds of undoing: an escape within an escape within an escape. */
const rounds = 4

/** Undoes every escape, over and over until nothing changes. */
export function plainText(given: string): Plain {
  const steps: Step[] = []
  let text = given
  for (let round = 0; round < rounds; round++) {
    const { text: next, step } = undo(text)
    if (step === null) break
    text = next
    steps.push(step)
  }
  return { text, origin: (at) => steps.reduceRight((place, step) => through(step, place), at) }
}

/** Tags at which what is read breaks off; any other tag may stand within a word. */
const breaking = new Set(
  `address article aside blockquote br button caption canvas dd details dialog dir div dl dt fieldset figcaption figure
footer form frame h1 h2 h3 h4 h5 h6 head header hr html iframe img input label legend li main meta nav ol optgroup option
p picture pre section select source summary svg table tbody td template text textarea tfoot th thead title tr track ul video
g desc body link circle line path rect polyline polygon use`.split(/\s+/),
)

const isBreaking = (tag: string): boolean =>
  breaking.has(/^<\/?([a-zA-Z0-9]+)/.exec(tag)?.[1]?.toLowerCase() ?? '')

/** A break that no word and no number is read across. */
const broken = '\n\n'

/** The text between the tags only: a name that a tag splits is whole again, and two cells of a table are two texts. */
export function withoutTags(given: Plain): Plain {
  return stepped(given, tagsIn(given.text), ([tag]) => (isBreaking(tag) ? broken : ''))
}

/** The text that a page shows: without tags, and without what is inside scripts and style sheets. */
export function shownText(given: Plain): Plain {
  const blocks = /<(script|style)\b[^>]*>[\s\S]*?<\/\1\s*>/gi
  return withoutTags(stepped(given, given.text.matchAll(blocks), () => broken))
}

const said =
  /\s(?:alt|title|aria-label|aria-description|href|src|srcset|content|datetime|value|placeholder|label|summary|data-[a-z-]+)\s*=\s*(?:"([^"]*)"|'([^']*)'|([^\s"'>]+))/gi

/** What the attributes of a page say to people and where they lead, each a text of its own. */
export function attributeText({ text, origin }: Plain): Plain {
  const places: number[] = []
  let out = ''
  for (const tag of tagsIn(text)) {
    for (const match of tag[0].matchAll(said)) {
      const value = match[1] ?? match[2] ?? match[3] ?? ''
      if (value.trim() === '') continue
      const from = tag.index + match.index + match[0].lastIndexOf(value)
      for (let i = 0; i < value.length; i++) places.push(from + i)
      places.push(from + value.length, from + value.length)
      out += value + broken
    }
  }
  return { text: out, origin: (at) => origin(places[at] ?? text.length) }
}

function stepped(given: Plain, matches: Iterable<Match>, by: (match: readonly [string]) => string): Plain {
  const { text, step } = replaced(given.text, matches, ([whole]) => by([whole]))
  return step === null ? given : { text, origin: (at) => given.origin(through(step, at)) }
}

/** Tags and remarks. A remark that is not closed is none; after the last that closes, none is looked for. */
function* tagsIn(text: string): Generator<Match> {
  const close = text.lastIndexOf('-->')
  const closed = close === -1 ? 0 : close + 3
  for (const match of text.slice(0, closed).matchAll(/<!--[\s\S]*?-->|<[a-zA-Z/!?][^<>]*>/g)) yield match
  for (const match of text.slice(closed).matchAll(/<[a-zA-Z/!?][^<>]*>/g)) {
    match.index += closed
    yield match
  }
}

const undo = (text: string) =>
  replaced(text, text.matchAll(escapes), (match) => {
    const [whole, hex, decimal, name, url, braced, four, pair, sign] = match
    if (hex !== undefined) return codePoint(Number.parseInt(hex, 16), whole)
    if (decimal !== undefined) return codePoint(Number(decimal), whole)
    if (name !== undefined) return named[name] ?? accented.exec(name)?.[1] ?? whole
    if (url !== undefined) return Buffer.from(url.replaceAll('%', ''), 'hex').toString('utf8')
    const code = braced ?? four ?? pair
    if (code !== undefined) return codePoint(Number.parseInt(code, 16), whole)
    return sign !== undefined && 'nrtbfv'.includes(sign) ? ' ' : (sign ?? whole)
  })

const codePoint = (code: number, whole: string): string =>
  code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : whole

type Match = RegExpExecArray

function replaced(
  text: string,
  matches: Iterable<Match>,
  by: (match: readonly (string | undefined)[] & { 0: string }) => string,
): { text: string; step: Step | null } {
  const decoded: number[] = []
  const original: number[] = []
  let out = ''
  let at = 0
  for (const match of matches) {
    const put = by(match as unknown as readonly (string | undefined)[] & { 0: string })
    if (put === match[0]) continue
    out += text.slice(at, match.index)
    decoded.push(out.length)
    original.push(match.index)
    out += put
    at = match.index + match[0].length
    decoded.push(out.length)
    original.push(at)
  }
  if (decoded.length === 0) return { text, step: null }
  return { text: out + text.slice(at), step: { decoded, original } }
}

/** The original place of a decoded one: the last mark at or before it, and as far on from there. */
function through(step: Step, at: number): number {
  let low = 0
  let high = step.decoded.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((step.decoded[middle] ?? 0) <= at) low = middle + 1
    else high = middle
  }
  if (low === 0) return at
  return (step.original[low - 1] ?? 0) + (at - (step.decoded[low - 1] ?? 0))
}

const dataUri = /data:([a-z]+\/[a-z0-9.+-]+)?((?:;[a-z0-9=-]+)*);base64,([A-Za-z0-9+/=]+)/gi

/** Data URIs give way to spaces, and their bytes are handed out with the place of each. */
export function withoutData(text: string): { text: string; embedded: { at: number; bytes: Uint8Array }[] } {
  const embedded: { at: number; bytes: Uint8Array }[] = []
  const rest = text.replace(dataUri, (whole, _type, _more, body: string, at: number) => {
    embedded.push({ at, bytes: Buffer.from(body, 'base64') })
    return ' '.repeat(whole.length)
  })
  return { text: rest, embedded }
}

/** Line and column of a place in a text, both from one. Places that rise are found in one walk. */
export function lineFinder(text: string): (at: number) => { line: number; column: number } {
  let line = 1
  let start = 0
  return (at) => {
    if (at < start) [line, start] = [1, 0]
    for (let next = text.indexOf('\n', start); next !== -1 && next < at; next = text.indexOf('\n', start)) {
      line++
      start = next + 1
    }
    return { line, column: at - start + 1 }
  }
}
