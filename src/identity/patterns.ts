/** What identifies somebody by its shape alone: addresses, numbers, places written as numbers. */
import { LinkifyIt } from 'linkify-it'
import { claims } from './claims.ts'
import { isEveryday } from './everyday.ts'
import { phoneNumbersIn } from './phone-numbers.ts'
import { isAbbreviation } from './trade-words.ts'

export type PatternKind =
  | 'e-mail address'
  | 'web address'
  | 'handle'
  | 'telephone number'
  | 'postcode'
  | 'number plate'
  | 'long number'
  | 'coordinates'
  | 'place in three words'

export interface PatternPlace {
  readonly start: number
  readonly end: number
  readonly text: string
  readonly kind: PatternKind
}

const links = new LinkifyIt({ fuzzyLink: true, fuzzyEmail: true, fuzzyIP: false })

/** Endings of addresses that are words too: `well.In two weeks` lacks a space. */
const endingsThatAreWords =
  /\.(?:in|it|is|no|so|to|at|be|by|my|me|us|am|as|do|if|on|or|we|he|an|hm|mm|cm|kg|pm)$/i

/** No address is without one of these. */
const ofAddress = /@|:\/\/|\.\p{L}/u

function* addresses(text: string): Generator<PatternPlace> {
  if (!ofAddress.test(text)) return
  for (const match of links.match(text) ?? []) {
    const { index, lastIndex, raw, schema } = match
    const place = { start: index, end: lastIndex, text: raw }
    if (schema === 'mailto:') yield { ...place, kind: 'e-mail address' }
    else if (schema !== '' || isAddress(raw)) yield { ...place, kind: 'web address' }
  }
}

/** Without `https://`: an address has no capital after a full stop, and no everyday word as its ending. */
function isAddress(raw: string): boolean {
  if (/^www\.|\//i.test(raw)) return true
  if (/\.\p{Lu}\p{Ll}/u.test(raw) || /^\d/.test(raw)) return false
  return !endingsThatAreWords.test(raw)
}

const areas =
  `AB|AL|B|BA|BB|BD|BH|BL|BN|BR|BS|BT|CA|CB|CF|CH|CM|CO|CR|CT|CV|CW|DA|DD|DE|DG|DH|DL|DN|DT|DY|E|EC|EH|EN|EX|FK|FY|G|GL
|GU|GY|HA|HD|HG|HP|HR|HS|HU|HX|IG|IM|IP|IV|JE|KA|KT|KW|KY|L|LA|LD|LE|LL|LN|LS|LU|M|ME|MK|ML|N|NE|NG|NN|NP|NR|NW|OL|OX|PA
|PE|PH|PL|PO|PR|RG|RH|RM|S|SA|SE|SG|SK|SL|SM|SN|SO|SP|SR|SS|ST|SW|SY|TA|TD|TF|TN|TQ|TR|TS|TW|UB|W|WA|WC|WD|WF|WN|WR|WS|WV
|YO|ZE`.replaceAll('\n', '')
const inward = '\\d[ABD-HJLNP-UW-Z]{2}'
const britain = `(?:GIR ?0AA|(?:${areas})\\d[\\dA-HJKMNP-Y]? ?${inward})`
const edge = '(?<![\\p{L}\\p{N}/.,-])'
const end = '(?![\\p{L}\\p{N}])'

interface Shape {
  readonly kind: PatternKind
  readonly pattern: RegExp
  readonly isOne?: (found: string, before: string) => boolean
}

const small = (text: string) => text === text.toLowerCase()
const isOrdinal = (text: string) => /\d(?:st|nd|rd|th)$/i.test(text)
const ofUnit = /^\d+ ?(?:IU|MG|KG|ML|MM|CM|KM|LB|OZ|PM|AM|KJ|MJ|HZ|CC|FT|IN|BC|AD)$/

/** Feet and measures with their numbers are no plates: `LF98 RFX`, `P3 DDF`. */
const ofFoot = /^(?:[LR][FH]|[FH][LR]|[NO][FH]|T[LA]|H[LAB]|NB|TB)$/
const noTrade = (text: string) =>
  (text.match(/\p{Lu}+/gu) ?? []).every(
    (letters) => !ofFoot.test(letters) && !(letters.length >= 3 && isAbbreviation(letters)),
  )
const ofPlate = /(?:plates?|reg|registration|registered|trailer|lorry|horsebox|van|car|truck)\W{1,3}$/i
const ofChip = /(?:chip|microchip|passport|ueln|transponder|registration|number|no\.?|id)\W{1,3}$/i

const shapes: readonly Shape[] = [
  {
    kind: 'handle',
    pattern: /(?<![\p{L}\p{N}._@])@[\p{L}_][\p{L}\p{N}_.]*[\p{L}\p{N}_]/gu,
    isOne: (it) => !isEveryday(it.slice(1).toLowerCase()),
  },
  {
    kind: 'postcode',
    pattern: new RegExp(`${edge}${britain}${end}`, 'giu'),
    isOne: (it) =>
      small(it.replace(/\P{L}/gu, '')) ? !isOrdinal(it) && /\s/.test(it) : it === it.toUpperCase(),
  },
  // The Netherlands, Ireland, Canada, the United States, and five digits before the name of a town.
  {
    kind: 'postcode',
    pattern: new RegExp(`${edge}[1-9]\\d{3} ?[A-Z]{2}${end}`, 'gu'),
    isOne: (found) => noTrade(found) && !ofUnit.test(found),
  },
  {
    kind: 'postcode',
    pattern: new RegExp(
      `${edge}[AC-FHKNPRTV-Y]\\d[\\dW] ?(?=[\\dAC-FHKNPRTV-Y]{0,3}\\d)(?=[\\dAC-FHKNPRTV-Y]{0,3}[A-Z])[\\dAC-FHKNPRTV-Y]{4}${end}`,
      'gu',
    ),
  },
  { kind: 'postcode', pattern: new RegExp(`${edge}[A-CEGHJ-NPR-TVXY]\\d[A-Z] ?\\d[A-Z]\\d${end}`, 'gu') },
  {
    kind: 'postcode',
    pattern: new RegExp(`${edge}[A-Z]{2} \\d{5}(?:-\\d{4})?${end}`, 'gu'),
    isOne: (it) => !/^(?:LF|RF|LH|RH|TL|TA|HL|HA|NB)/.test(it),
  },
  { kind: 'postcode', pattern: /(?<![\p{L}\p{N}/.,-])\d{5} \p{Lu}\p{Ll}{2,}(?:[ -]\p{Lu}\p{Ll}+)*/gu },
  {
    kind: 'number plate',
    pattern: new RegExp(`${edge}[A-Z]{2}\\d{2} ?[A-Z]{3}${end}`, 'gu'),
    isOne: noTrade,
  },
  { kind: 'number plate', pattern: new RegExp(`${edge}[A-Z]\\d{2,3} ?[A-Z]{3}${end}`, 'gu'), isOne: noTrade },
  { kind: 'number plate', pattern: new RegExp(`${edge}[A-Z]{2}-\\d{3}-[A-Z]{2}${end}`, 'gu') },
  {
    kind: 'number plate',
    pattern: new RegExp(`${edge}\\p{Lu}{1,3}-\\p{Lu}{1,2} ?\\d{1,4}[EH]?${end}`, 'gu'),
    isOne: noTrade,
  },
  {
    kind: 'number plate',
    pattern: new RegExp(
      `${edge}(?=[A-Z\\d -]{0,13}\\d)(?=[A-Z\\d -]{0,13}[A-Z])[A-Z\\d]{1,4}(?:[ -]?[A-Z\\d]{1,4}){1,2}${end}`,
      'gu',
    ),
    isOne: (it, before) => ofPlate.test(before) && noTrade(it),
  },
  { kind: 'long number', pattern: /(?<![\d.,\p{L}#])\d{9,}(?![\d.])/gu },
  { kind: 'long number', pattern: /(?<![\d.,\p{L}])9\d\d(?:[ -]\d{3}){4}(?![\d.])/gu },
  {
    kind: 'long number',
    pattern: /(?<![\p{L}\p{N}])(?:[A-Z]{2,3}[ -]?)?\d(?:[ -]?\d){6,}(?![\d.])/gu,
    isOne: (_it, before) => ofChip.test(before),
  },
  { kind: 'long number', pattern: /(?<![\p{L}\p{N}])(?=[A-Z\d]{0,3} ?\d{6})[A-Z]{2,3} ?\d{9,12}(?!\d)/gu },
  {
    kind: 'coordinates',
    pattern:
      /(?<![\d.])[-+]?\d{1,3}\.\d{3,8}\s{0,2}°?\s{0,2}[NSEW]?\s{0,2}[,;/ ]\s{0,2}[-+]?\d{1,3}\.\d{3,8}(?!\d)(?:\s{0,2}°?\s{0,2}[NSEW](?!\p{L}))?/gu,
  },
  {
    kind: 'coordinates',
    pattern:
      /(?<![\d.])\d{1,3}\s{0,2}°\s{0,2}\d{1,2}(?:\.\d+)?\s{0,2}['′’]\s{0,2}(?:\d{1,2}(?:\.\d+)?\s{0,2}["″”]\s{0,2})?[NSEWO](?!\p{L})(?:[\s,]{0,3}\d{1,3}\s{0,2}°\s{0,2}\d{1,2}(?:\.\d+)?\s{0,2}['′’]\s{0,2}(?:\d{1,2}(?:\.\d+)?\s{0,2}["″”]\s{0,2})?[NSEWO](?!\p{L}))?/gu,
  },
  {
    kind: 'coordinates',
    pattern:
      /(?<![\d.])\d{1,2}(?:\.\d+)?\s{0,2}°\s{0,2}[NS](?!\p{L})(?:[\s,]{0,3}\d{1,3}(?:\.\d+)?\s{0,2}°\s{0,2}[EW](?!\p{L}))?/gu,
  },
  {
    kind: 'coordinates',
    pattern: new RegExp(
      `${edge}[STNHO][A-HJ-Z] ?(?:\\d{4} ?\\d{4}|\\d{5} ?\\d{5}|\\d{3} \\d{3})(?!\\s{0,2}\\d)${end}`,
      'gu',
    ),
    isOne: (it) => !isAbbreviation(it.slice(0, 2)) || /\d{4}/.test(it),
  },
  {
    kind: 'coordinates',
    pattern: new RegExp(`${edge}[23456789CFGHJMPQRVWX]{4,8}\\+[23456789CFGHJMPQRVWX]{2,3}${end}`, 'gu'),
  },
  {
    kind: 'place in three words',
    pattern: /(?:\/{3})[\p{Ll}\p{M}]+\.[\p{Ll}\p{M}]+\.[\p{Ll}\p{M}]+(?![\p{L}\p{N}.])/gu,
  },
  {
    kind: 'place in three words',
    pattern: /(?<![\p{L}\p{N}./@-])[a-z]{3,}\.[a-z]{3,}\.[a-z]{3,}(?![\p{L}\p{N}/@-]|\.[\p{L}\p{N}])/gu,
  },
]

/** Every such place of a text, in order, none across another. */
export function patternsIn(text: string): readonly PatternPlace[] {
  const claim = claims(text.length)
  const shaped = function* (): Generator<PatternPlace> {
    for (const { kind, pattern, isOne } of shapes) {
      for (const match of text.matchAll(pattern)) {
        const [found] = match
        const before = text.slice(Math.max(0, match.index - 24), match.index)
        if (isOne && !isOne(found, before)) continue
        yield { start: match.index, end: match.index + found.length, text: found, kind }
      }
    }
  }
  const phones = phoneNumbersIn(text).map(
    ({ start, end: stop }): PatternPlace => ({
      start,
      end: stop,
      text: text.slice(start, stop),
      kind: 'telephone number',
    }),
  )
  return [...addresses(text), ...shaped(), ...phones].filter(claim).sort((a, b) => a.start - b.start)
}
