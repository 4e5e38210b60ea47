/** Findings `what, where, grade, words` and grow-out lines `what, place, distance`, by foot. */
import type { Foot } from '../hoof/feet.ts'
import { findingAliases, findingMeanings, grades, places } from '../hoof/findings.ts'
import { parseLength } from '../hoof/units.ts'
import { footNamed, tellUnknownFeet } from './by-foot.ts'
import { emptyIn, gapIn, type Reader, type Sheet, sentence, wrongForm } from './fields.ts'
import { grouped } from './grouped.ts'
import type { Finding, FollowedFeature } from './model.ts'
import { figure } from './quantities.ts'
import { tellCut } from './readers.ts'
import type { Fix, Spot, SpotEdit } from './report.ts'
import { numberWords } from './slips.ts'
import { either, holding, listed, nearest, normal, quote } from './words.ts'
import { isOpenPlace, type Written, type WrittenText } from './written.ts'

export interface PlacedFeature {
  readonly feature: FollowedFeature
  readonly spot: Spot
  /** Where the name of what is followed stands. */
  readonly whatSpot: Spot
}

/** A part of a line between commas, with its place. */
interface Part extends Spot {
  readonly text: string
}

export const findings: Reader<readonly Finding[]> = (value, sheet, name) => {
  const read = linesByFoot(value, sheet, name, '- flare, medial quarter, 2').flatMap(
    ({ foot, parts, spot }) => {
      const finding = findingOf(foot, parts, spot, sheet)
      return finding ? [{ ...finding, spot }] : []
    },
  )
  tellTwice(read, ({ grade }) => `grade ${grade}`, sheet)
  return read.map(({ spot: _spot, ...finding }) => finding)
}

export const growOut: Reader<readonly PlacedFeature[]> = (value, sheet, name) => {
  const read = linesByFoot(value, sheet, name, '- nail holes, toe, 42 mm').flatMap(
    ({ foot, parts, spot }) => {
      const feature = featureOf(foot, parts, spot, sheet)
      return feature ? [{ feature, spot, whatSpot: parts[0] ?? spot }] : []
    },
  )
  const lines = read.map(({ feature, spot }) => ({ ...feature, spot }))
  tellTwice(lines, ({ distance }) => `${figure(distance)} mm`, sheet)
  return read
}

/** Warns of a line that says again what another line says of the same place on the same foot. */
function tellTwice<T extends { foot: Foot; what: string; place: string; spot: Spot }>(
  lines: readonly T[],
  sizeOf: (line: T) => string,
  sheet: Sheet,
): void {
  for (const [, same] of grouped(lines, ({ foot, what, place }) => `${foot}, ${what}, ${place}`)) {
    const [first, ...others] = same
    for (const other of first ? others : []) {
      const sizes = [...new Set([sizeOf(first as T), sizeOf(other)])]
      const { foot, what, place } = other
      sheet.report.warning(
        'written-twice',
        other.spot,
        `${sentence(what)} at ${foot}, ${place}, is written twice${sizes.length > 1 ? `, with ${listed(sizes)}` : ''}.`,
        { expected: 'one line for each place', advice: 'keep the line that is right' },
      )
    }
  }
}

interface Line {
  readonly foot: Foot
  readonly parts: readonly Part[]
  readonly spot: Spot
}

function linesByFoot(value: Written, sheet: Sheet, name: string, example: string): readonly Line[] {
  if (value.kind !== 'map') {
    wrongForm(value, sheet, name, `a foot and its lines: LF: and below it ${example}`, {
      fix: footWithColon(value, sheet),
    })
    return []
  }
  const unknown = value.entries.filter(({ key }) => !footNamed(key.text))
  tellUnknownFeet(unknown, value, sheet, name)
  return value.entries.flatMap((entry) => {
    const foot = footNamed(entry.key.text)
    if (!foot) return []
    if (emptyIn(entry, sheet)) return []
    return rowsOf(entry.value, sheet, `${name} ${foot}`, example)
      .filter((line) => !openPart(line.parts, sheet, `${name} ${foot}`))
      .map((line) => ({ foot, ...line }))
  })
}

/** `LF` without its colon above the lines of the foot. */
function footWithColon(value: Written, sheet: Sheet): Fix | null {
  const line = sheet.report.textOf(value).split('\n')[0] ?? ''
  if (value.kind !== 'text' || value.verbatim || !footNamed(line)) return null
  const end = value.start + line.trimEnd().length
  return { words: `${line.trim()}:`, edits: [{ start: end, end, text: ':' }] }
}

/** True, and told, when a part of the line is still to be filled in. */
function openPart(parts: readonly Part[], sheet: Sheet, name: string): boolean {
  const open = parts.find((part) => isOpenPlace(part.text))
  if (open) sheet.report.gap(open, `${sentence(name)}: ${parts[0]?.text ?? 'a line'} is not yet filled in.`)
  return open !== undefined
}

/** The lines of one foot. `[flare, toe, 2]` in brackets is the one line that it reads as. */
function rowsOf(value: Written, sheet: Sheet, name: string, example: string): readonly Omit<Line, 'foot'>[] {
  if (gapIn(value, name, sheet)) return []
  const items = value.kind === 'list' ? value.items : [value]
  const texts = items.filter((item): item is WrittenText => item.kind === 'text')
  if (value.kind === 'list' && texts.length > 2 && texts.every((item) => !item.text.includes(','))) {
    const parts = texts.map((item) => ({ text: item.text.trim(), start: item.start, end: item.end }))
    return [{ parts, spot: value }]
  }
  return items.flatMap((item) => {
    if (item.kind === 'nothing' || gapIn(item, name, sheet)) return []
    if (item.kind === 'text') {
      const parts = partsOf(item)
      if (tellFolded(item, value, sheet, name)) return []
      if (endsInWords(item, parts, sheet)) tellCut(item, sheet, name, parts.length > 3)
      return [{ parts, spot: item }]
    }
    wrongForm(item, sheet, name, `a line such as ${example}`, { fix: withoutColons(item) })
    return []
  })
}

/**
 * Lines that YAML folds into one since the dash of some is missing. True, and told, where each of them is a line of its
 * own by its commas.
 */
function tellFolded(item: WrittenText, whole: Written, sheet: Sheet, name: string): boolean {
  const source = sheet.report.textOf(item)
  if (item.quoted || !source.includes('\n')) return false
  const lines = source.split('\n')
  if (lines.length > mostWords || lines.some((line) => line.split(',').length < 3)) return false
  // The first line of a list has its dash, two places before the text.
  const isListed = whole.kind === 'list'
  const edits: SpotEdit[] = isListed ? [] : [{ start: item.start, end: item.start, text: '- ' }]
  const at = sheet.report.columnOf(item.start) - 1
  const lead = sheet.report.textOf({ start: item.start - at, end: item.start })
  const column = isListed ? lead.lastIndexOf('-') : at
  let start = item.start
  for (const [index, line] of lines.entries()) {
    const dash = /^\s*(?:- +)?/.exec(line)?.[0].length ?? 0
    if (index > 0) edits.push({ start, end: start + dash, text: `${' '.repeat(Math.max(0, column))}- ` })
    start += line.length + 1
  }
  sheet.report.error(
    'dash-missing',
    item,
    `A dash is missing in the lines of ${name}, so they are read as one.`,
    {
      expected: 'each line begins with a dash and a space',
      fix: { words: '- before each line', edits },
    },
  )
  return true
}

/**
 * Whether what a `#` cuts off a line may belong to it: after the words that end a finding, or where the sign stands
 * right before a word, as in `#2`. A remark after a grade or a distance is a remark.
 */
const endsInWords = ({ cut }: WrittenText, parts: readonly Part[], sheet: Sheet): boolean =>
  cut !== null && (parts.length > 3 || /^#[^\s#]/.test(sheet.report.textOf(cut)))

/** `flare: toe, 2` or `flare, toe: 2`, which YAML takes for a key and its value. */
function withoutColons(item: Written): string | null {
  const only = item.kind === 'map' && item.entries.length === 1 ? item.entries[0] : undefined
  if (only?.value.kind !== 'text') return null
  return findingMeant(`${only.key.text}, ${only.value.text}`, {})
}

function partsOf(line: WrittenText): readonly Part[] {
  let from = 0
  return line.text.split(',').map((raw) => {
    const lead = raw.length - raw.trimStart().length
    const start = from + lead
    from += raw.length + 1
    const text = raw.trim()
    return line.verbatim
      ? { text, start: line.start + start, end: line.start + start + Math.max(1, text.length) }
      : { text, start: line.start, end: line.end }
  })
}

function findingOf(foot: Foot, parts: readonly Part[], spot: Spot, sheet: Sheet): Finding | null {
  const [what, place, gradePart, ...rest] = parts
  const name = what ? findingNamed(what.text, sheet.terms) : null
  const isWhole = what && place?.text && gradePart
  const hasPlace = placeNamed(place?.text ?? '') !== null
  const hasGrade = gradeNamed(gradePart?.text ?? '') !== null
  // A comma missing, too many or in the wrong place makes nonsense of the place and of a part beside it.
  const isTorn = !hasPlace && (!name || !hasGrade)
  const isSound = name && hasPlace && hasGrade
  if (!isWhole || isTorn || (!isSound && lineMeant(parts, sheet) !== null)) {
    tellIncomplete(foot, parts, spot, sheet)
    return null
  }
  if (!name) tellUnknown(what, sheet)
  const where = placeRead(place, sheet)
  const degree = gradeOf(gradePart, sheet)
  if (!name || !where || degree === null) return null
  const words = rest
    .map((part) => part.text)
    .join(', ')
    .trim()
  return { foot, what: name, place: where, grade: degree, words: words || null }
}

/** The line as it should be, where its first parts hold a finding, a place and a grade, and its words after them. */
function lineMeant(parts: readonly Part[], { terms }: Sheet): string | null {
  const texts = parts.map((part) => part.text)
  for (let count = 1; count <= Math.min(4, texts.length); count++) {
    const meant = findingMeant(texts.slice(0, count).join(', '), terms)
    if (meant) return [meant, ...texts.slice(count)].join(', ')
  }
  return null
}

/** One remark for a line without its three parts; a fix only where the line holds all of them. */
function tellIncomplete(foot: Foot, parts: readonly Part[], spot: Spot, sheet: Sheet): void {
  const texts = parts.map((part) => part.text)
  const fix = lineMeant(parts, sheet)
  const hasGrade = texts.some((text) => gradeNamed(text) !== null)
  const hasPlace = texts.some((text) => placeNamed(text) !== null)
  const missing = !hasGrade && hasPlace ? 'its grade' : hasGrade && !hasPlace ? 'its place' : null
  const example = `${texts[0] || 'flare'}, ${hasPlace ? texts[1] : 'medial quarter'}, 2`
  sheet.report.error(
    'finding-form',
    spot,
    fix
      ? `The parts of a finding at ${foot} are not in order, with commas between.`
      : missing || parts.length < 3
        ? `A finding at ${foot} is not complete${missing ? `: ${missing} is missing` : ''}.`
        : `A finding at ${foot} cannot be read as what, where and grade.`,
    {
      expected: 'what, where, grade: flare, medial quarter, 2',
      fix,
      advice: fix
        ? null
        : missing === 'its place'
          ? 'say where on the foot, between the finding and the grade'
          : missing === 'its grade'
            ? 'add a grade: 0 resolved, 1 mild, 2 moderate or 3 severe'
            : `write it as ${hasPlace ? example : 'flare, medial quarter, 2'}`,
    },
  )
}

/** Words of a line that are tried as finding, place and grade. */
const mostWords = 12

/**
 * The line as it should be, where its words are a known finding, a known place and a grade, with commas or other marks
 * between or none, in whatever order: `flare medial quarter 2` and `medial quarter, flare, 2`. Null for anything else.
 */
function findingMeant(line: string, terms: Sheet['terms']): string | null {
  if (line.length > 80) return null
  const words = normal(line.replace(/[,;:|/]|\s-\s/g, ' ')).split(' ')
  const grade = words.filter((word) => gradeNamed(word) !== null)
  if (grade.length !== 1 || words.length > mostWords) return null
  const others = words.filter((word) => word !== grade[0] && word !== 'grade')
  const halves = others.slice(1).map((_, index): readonly [string, string] => {
    return [others.slice(0, index + 1).join(' '), others.slice(index + 1).join(' ')]
  })
  for (const [one, other] of halves) {
    for (const [what, where] of [
      [one, other],
      [other, one],
    ] as const) {
      const name = findingNamed(what, terms)
      const place = placeNamed(where)
      if (name && place) return `${what}, ${place}, ${grade[0]}`
    }
  }
  return null
}

/** The vocabulary's name: aliases, plurals, hyphens and the practice's own terms forgiven. */
function findingNamed(text: string, terms: Sheet['terms']): string | null {
  const word = normal(text)
  const known = knownFindings(terms)
  for (const form of [
    word,
    word.replace(/s$/, ''),
    word.replace(/es$/, ''),
    `${word}s`,
    word.replace(/es$/, 'is'),
  ]) {
    const own = known.find((name) => normal(name) === form)
    if (own) return own
    if (Object.hasOwn(findingAliases, form)) return findingAliases[form] ?? null
  }
  return null
}

const knownFindings = (terms: Sheet['terms']): readonly string[] => [
  ...Object.keys(findingMeanings),
  ...Object.keys(terms),
]

function tellUnknown(part: Part, sheet: Sheet): void {
  const meant = nearest(part.text, [...knownFindings(sheet.terms), ...Object.keys(findingAliases)])
  sheet.report.error('finding-unknown', part, `${quote(part.text)} is not a known finding.`, {
    expected: 'a finding of the reference page, or one of the terms in practice.md',
    fix: meant,
    advice: meant ? null : `add it in practice.md: terms: {${normal(part.text)}: what it means}`,
  })
}

const placeWords = new Map(places.map((place) => [sorted(place), place]))
const otherPlaceWords: Readonly<Record<string, string>> = {
  inner: 'medial',
  inside: 'medial',
  outer: 'lateral',
  outside: 'lateral',
}

function sorted(place: string): string {
  return place.split(' ').sort().join(' ')
}

/** In the vocabulary's own words: `inner` for medial, the other order and a plural are forgiven. */
const placeInWords = (text: string): string =>
  normal(text)
    .split(' ')
    .map((word) => otherPlaceWords[word] ?? word)
    .join(' ')

function placeNamed(text: string): string | null {
  const words = placeInWords(text)
  return placeWords.get(sorted(words)) ?? placeWords.get(sorted(words.replace(/s$/, ''))) ?? null
}

/** The place, or null (reported). */
function placeRead(part: Part, sheet: Sheet): string | null {
  const place = placeNamed(part.text)
  if (place) return place
  const words = placeInWords(part.text)
  const several = [words, words.replace(/s$/, '')].map((word) => holding(word, places))
  const sides = several.find((names) => names.length > 1) ?? []
  sheet.report.error('place-unknown', part, `${quote(part.text)} is not a known place on the foot.`, {
    expected: places.join(', '),
    fix: sides.length > 1 ? null : nearest(words, places),
    advice: sides.length > 1 ? `say which: ${either(sides)}` : null,
  })
  return null
}

const gradeWord = (text: string): string => normal(text).replace(/^grade /, '')

function gradeNamed(text: string): Finding['grade'] | null {
  const word = gradeWord(text)
  const named = (grades as readonly string[]).indexOf(word)
  const value = named >= 0 ? named : /^[0-3]$/.test(word) ? Number(word) : -1
  return value === 0 || value === 1 || value === 2 || value === 3 ? value : null
}

/** Words that say the same as a grade and are not its name. */
const gradeSynonyms: Readonly<Record<string, string>> = {
  none: 'resolved',
  gone: 'resolved',
  healed: 'resolved',
  slight: 'mild',
  light: 'mild',
  minor: 'mild',
  medium: 'moderate',
  marked: 'severe',
}

/** The grade, or null (reported). */
function gradeOf(part: Part, sheet: Sheet): Finding['grade'] | null {
  const grade = gradeNamed(part.text)
  if (grade !== null) return grade
  const word = gradeWord(part.text)
  const outOf = /^([0-3])(?:\/| of | out of )3$/.exec(word)?.[1]
  const fix = outOf ?? numberWords[word] ?? gradeSynonyms[word] ?? nearest(word, grades)
  sheet.report.error('grade-impossible', part, `${quote(part.text)} is no grade of a finding.`, {
    expected: '0 resolved, 1 mild, 2 moderate or 3 severe',
    fix,
    advice: fix || !/\d/.test(word) ? null : 'write one whole number; where in doubt, the higher',
  })
  return null
}

function featureOf(foot: Foot, parts: readonly Part[], spot: Spot, sheet: Sheet): FollowedFeature | null {
  const [what, place, ...rest] = parts
  const [distancePart] = rest
  if (!what?.text || !place?.text || !distancePart?.text) {
    sheet.report.error('grow-out-form', spot, `A grow-out line at ${foot} is not complete.`, {
      expected: 'what, place, distance from the hairline: nail holes, toe, 42 mm',
      advice: 'add what is missing, with commas between',
    })
    return null
  }
  const where = placeRead(place, sheet)
  const length = parseLength(rest.map((part) => part.text).join(','), sheet.units)
  if (!length) {
    wrongForm(
      distancePart,
      sheet,
      `${sentence(quote(distancePart.text))} as a distance`,
      'a length: 42, 42 mm or 1 5/8 in',
    )
    return null
  }
  if (!where) return null
  if (length.mm < 0 || length.mm > 400) {
    sheet.report.error(
      'distance-impossible',
      distancePart,
      `A distance of ${figure(length.mm)} mm from the hairline cannot be.`,
      {
        expected: '0 to 160 mm',
      },
    )
    return null
  }
  if (length.mm > 160) {
    sheet.report.warning(
      'distance-unlikely',
      distancePart,
      `No wall is likely to be ${figure(length.mm)} mm long.`,
      {
        expected: '0 to 160 mm',
      },
    )
  }
  return { foot, what: normal(what.text), place: where, distance: length.mm }
}
