/** Findings `what, where, grade, words` and grow-out lines `what, place, distance`, by foot. */
import type { Foot } from '../hoof/feet.ts'
import { findingAliases, findingMeanings, grades, placeless, places } from '../hoof/findings.ts'
import { parseLength } from '../hoof/units.ts'
import { footNamed } from './by-foot.ts'
import { gapIn, type Reader, type Sheet, sentence, wrongForm } from './fields.ts'
import type { Finding, FollowedFeature } from './model.ts'
import { figure } from './readings.ts'
import type { Spot } from './report.ts'
import { nearest, normal, quote } from './words.ts'
import { isOpenPlace, type Written, type WrittenText } from './written.ts'

export interface PlacedFeature {
  readonly feature: FollowedFeature
  readonly spot: Spot
}

/** A part of a line between commas, with its place. */
export interface Part extends Spot {
  readonly text: string
}

export const findings: Reader<readonly Finding[]> = (value, sheet, name) =>
  linesByFoot(value, sheet, name, '- flare, medial quarter, 2').flatMap(({ foot, parts, spot }) => {
    const finding = findingOf(foot, parts, spot, sheet)
    return finding ? [finding] : []
  })

export const growOut: Reader<readonly PlacedFeature[]> = (value, sheet, name) =>
  linesByFoot(value, sheet, name, '- nail holes, toe, 42 mm').flatMap(({ foot, parts, spot }) => {
    const feature = featureOf(foot, parts, spot, sheet)
    return feature ? [{ feature, spot }] : []
  })

interface Line {
  readonly foot: Foot
  readonly parts: readonly Part[]
  readonly spot: Spot
}

function linesByFoot(value: Written, sheet: Sheet, name: string, example: string): readonly Line[] {
  if (value.kind !== 'map') {
    wrongForm(value, sheet, name, `a foot and its lines: LF: and below it ${example}`)
    return []
  }
  return value.entries.flatMap((entry) => {
    const foot = footNamed(entry.key.text)
    if (!foot) {
      const meant = nearest(entry.key.text, ['LF', 'RF', 'LH', 'RH'])
      sheet.report.error('foot-unknown', entry.key, `${quote(entry.key.text)} under ${name} is not a foot.`, {
        expected: 'LF, RF, LH or RH',
        ...(meant && { fix: meant }),
      })
      return []
    }
    return rowsOf(entry.value, sheet, `${name} ${foot}`, example)
      .filter((line) => !openPart(line.parts, sheet, `${name} ${foot}`))
      .map((line) => ({ foot, ...line }))
  })
}

/** True, and told, when a part of the line is still to be filled in. */
function openPart(parts: readonly Part[], sheet: Sheet, name: string): boolean {
  const open = parts.find((part) => isOpenPlace(part.text))
  if (open) sheet.report.gap(open, `${sentence(name)}: ${parts[0]?.text ?? 'a line'} is not yet filled in.`)
  return open !== undefined
}

/** The lines of one foot. `[flare, toe, 2]` in brackets is the one line that it reads as. */
function rowsOf(value: Written, sheet: Sheet, name: string, example: string): readonly Omit<Line, 'foot'>[] {
  if (value.kind === 'nothing' || gapIn(value, name, sheet)) return []
  const items = value.kind === 'list' ? value.items : [value]
  const texts = items.filter((item): item is WrittenText => item.kind === 'text')
  if (value.kind === 'list' && texts.length > 2 && texts.every((item) => !item.text.includes(','))) {
    const parts = texts.map((item) => ({ text: item.text.trim(), start: item.start, end: item.end }))
    return [{ parts, spot: value }]
  }
  return items.flatMap((item) => {
    if (item.kind === 'nothing' || gapIn(item, name, sheet)) return []
    if (item.kind === 'text') return [{ parts: partsOf(item), spot: item }]
    wrongForm(item, sheet, name, `a line such as ${example}`, 'put a line with a colon in quotes')
    return []
  })
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

function findingOf(foot: Foot, written: readonly Part[], spot: Spot, sheet: Sheet): Finding | null {
  const parts = withPlace(written)
  const [what, place, gradePart, ...rest] = parts
  if (!what || !place || !gradePart) {
    sheet.report.error('finding-form', spot, `A finding at ${foot} is not complete.`, {
      expected: 'what, where, grade: flare, medial quarter, 2',
      fix: fixForShort(parts),
    })
    return null
  }
  const name = findingName(what, sheet)
  const where = placeNamed(place, sheet)
  const degree = gradeOf(gradePart, sheet)
  if (!name || !where || degree === null) return null
  const words = rest
    .map((part) => part.text)
    .join(', ')
    .trim()
  return { foot, what: name, place: where, grade: degree, words: words || null }
}

/** `puncture, 2`: what cannot wait for a place is read as the whole foot. */
function withPlace(parts: readonly Part[]): readonly Part[] {
  const [what, next, ...rest] = parts
  const word = what ? normal(what.text) : ''
  const name = findingAliases[word] ?? word
  if (!what || !next || !placeless.has(name)) return parts
  const degree = normal(next.text)
  const isGrade = /^(?:grade )?[0-3]$/.test(degree) || (grades as readonly string[]).includes(degree)
  if (isGrade) return [what, { ...next, text: 'whole foot' }, next, ...rest]
  return next.text === '' && rest.length > 0 ? [what, { ...next, text: 'whole foot' }, ...rest] : parts
}

function fixForShort(parts: readonly Part[]): string {
  const texts = parts.map((part) => part.text)
  const last = texts.at(-1) ?? ''
  if (parts.length === 2 && /^\d$/.test(last)) return `${texts[0]}, toe, ${last} (name the place)`
  if (parts.length === 2) return `${texts.join(', ')}, 1 (give a grade from 0 to 3)`
  return `${texts[0] || 'flare'}, toe, 1 (name the place and give a grade from 0 to 3)`
}

/** The vocabulary's name: aliases, plurals, hyphens and the practice's own terms forgiven. */
function findingName(part: Part, sheet: Sheet): string | null {
  const word = normal(part.text)
  const known = [...Object.keys(findingMeanings), ...Object.keys(sheet.terms)]
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
  const meant = nearest(word, [...known, ...Object.keys(findingAliases)])
  sheet.report.error('finding-unknown', part, `${quote(part.text)} is not a known finding.`, {
    expected: 'a finding of the reference page, or one of the terms in practice.md',
    fix: meant ?? `add it in practice.md: terms: {${word}: what it means}`,
  })
  return null
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

/** `quarter, medial` order and `inner` for medial are forgiven. */
export function placeNamed(part: Part, sheet: Sheet): string | null {
  const words = normal(part.text)
    .split(' ')
    .map((word) => otherPlaceWords[word] ?? word)
    .join(' ')
  const place = placeWords.get(sorted(words)) ?? placeWords.get(sorted(words.replace(/s$/, '')))
  if (place) return place
  const meant = nearest(words, places)
  sheet.report.error('place-unknown', part, `${quote(part.text)} is not a known place on the foot.`, {
    expected: places.join(', '),
    ...(meant && { fix: meant }),
  })
  return null
}

function gradeOf(part: Part, sheet: Sheet): Finding['grade'] | null {
  const word = normal(part.text).replace(/^grade /, '')
  const named = (grades as readonly string[]).indexOf(word)
  const value = named >= 0 ? named : /^[0-3]$/.test(word) ? Number(word) : -1
  if (value === 0 || value === 1 || value === 2 || value === 3) return value
  sheet.report.error('grade-impossible', part, `${quote(part.text)} is no grade of a finding.`, {
    expected: '0 resolved, 1 mild, 2 moderate or 3 severe',
  })
  return null
}

function featureOf(foot: Foot, parts: readonly Part[], spot: Spot, sheet: Sheet): FollowedFeature | null {
  const [what, place, ...rest] = parts
  const [distancePart] = rest
  if (!what?.text || !place || !distancePart) {
    sheet.report.error('grow-out-form', spot, `A grow-out line at ${foot} is not complete.`, {
      expected: 'what, place, distance from the hairline: nail holes, toe, 42 mm',
      fix: 'add what is missing, with commas between',
    })
    return null
  }
  const where = placeNamed(place, sheet)
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
