/** Findings `what, where, grade, words` and grow-out lines `what, place, distance`, by foot. */
import type { Foot } from '../hoof/feet.ts'
import { findingAliases, grades, placeless, places } from '../hoof/findings.ts'
import { parseLength } from '../hoof/units.ts'
import { footNamed } from './by-foot.ts'
import { type ParseContext, type Reader, sentence, wrongForm } from './fields.ts'
import { linesByFoot, type Part } from './finding-lines.ts'
import {
  findingNamed,
  gradeNamed,
  gradeSynonyms,
  gradeWord,
  knownFindings,
  lineMeant,
  placeInWords,
  placeNamed,
} from './finding-words.ts'
import { grouped } from './grouped.ts'
import type { Finding, FollowedFeature } from './model.ts'
import { figure } from './quantities.ts'
import { isTooLong } from './readers.ts'
import type { TextRange } from './report.ts'
import { numberWords } from './slips.ts'
import { either, holding, listed, nearest, normal, quote } from './words.ts'

export interface PlacedFeature {
  readonly feature: FollowedFeature
  readonly range: TextRange
  /** Where the name of what is followed stands. */
  readonly whatRange: TextRange
}

export const findings: Reader<readonly Finding[]> = (value, context, name) => {
  const read = linesByFoot(value, context, name, '- flare, medial quarter, 2').flatMap(
    ({ foot, parts, range }) => {
      const finding = findingOf(foot, parts, range, context)
      return finding ? [{ ...finding, range }] : []
    },
  )
  reportTwice(read, ({ grade }) => `grade ${grade}`, context)
  return read.map(({ range: _spot, ...finding }) => finding)
}

export const growOut: Reader<readonly PlacedFeature[]> = (value, context, name) => {
  const read = linesByFoot(value, context, name, '- nail holes, toe, 42 mm').flatMap(
    ({ foot, parts, range }) => {
      const feature = featureOf(foot, parts, range, context)
      return feature ? [{ feature, range, whatRange: parts[0] ?? range }] : []
    },
  )
  const lines = read.map(({ feature, range }) => ({ ...feature, range }))
  reportTwice(lines, ({ distance }) => `${figure(distance)} mm`, context)
  return read
}

/** Warns of a line that says again what another line says of the same place on the same foot. */
function reportTwice<T extends { foot: Foot; what: string; place: string; range: TextRange }>(
  lines: readonly T[],
  sizeOf: (line: T) => string,
  context: ParseContext,
): void {
  for (const [, same] of grouped(lines, ({ foot, what, place }) => `${foot}, ${what}, ${place}`)) {
    const [first, ...others] = same
    for (const other of first ? others : []) {
      const sizes = [...new Set([sizeOf(first as T), sizeOf(other)])]
      const { foot, what, place } = other
      context.report.warning(
        'written-twice',
        other.range,
        `${sentence(what)} at ${foot}, ${place}, is written twice${sizes.length > 1 ? `, with ${listed(sizes)}` : ''}.`,
        { expected: 'one line for each place', advice: 'keep the line that is right' },
      )
    }
  }
}

function findingOf(
  foot: Foot,
  written: readonly Part[],
  range: TextRange,
  context: ParseContext,
): Finding | null {
  const parts = withPlace(written)
  const [what, place, gradePart, ...rest] = parts
  const name = what ? findingNamed(what.text, context.terms) : null
  const isWhole = what && place?.text && gradePart
  const hasPlace = placeNamed(place?.text ?? '') !== null
  const hasGrade = gradeNamed(gradePart?.text ?? '') !== null
  // A comma missing, too many or in the wrong place makes nonsense of the place and of a part beside it.
  const isTorn = !hasPlace && (!name || !hasGrade)
  const isSound = name && hasPlace && hasGrade
  if (!isWhole || isTorn || (!isSound && lineMeant(textsOf(parts), context.terms) !== null)) {
    reportIncomplete(foot, parts, range, context)
    return null
  }
  if (!name) reportUnknown(what, context)
  const where = placeRead(place, context)
  const degree = gradeOf(gradePart, context)
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
  if (gradeNamed(next.text) !== null) return [what, { ...next, text: 'whole foot' }, next, ...rest]
  return next.text === '' && rest.length > 0 ? [what, { ...next, text: 'whole foot' }, ...rest] : parts
}

const textsOf = (parts: readonly Part[]): readonly string[] => parts.map((part) => part.text)

/** One remark for a line without its three parts; a fix only where the line holds all of them. */
function reportIncomplete(foot: Foot, parts: readonly Part[], range: TextRange, context: ParseContext): void {
  const texts = textsOf(parts)
  const fix = lineMeant(texts, context.terms)
  const hasGrade = texts.some((text) => gradeNamed(text) !== null)
  const hasPlace = texts.some((text) => placeNamed(text) !== null)
  const missing = !hasGrade && hasPlace ? 'its grade' : hasGrade && !hasPlace ? 'its place' : null
  const example = `${texts[0] || 'flare'}, ${hasPlace ? texts[1] : 'medial quarter'}, 2`
  context.report.error(
    'finding-form',
    range,
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

function reportUnknown(part: Part, context: ParseContext): void {
  // Another foot's name is not to be thrown away with the rest.
  const namesFoot = part.text.split(' ').some((word) => footNamed(word) !== null)
  const meant = namesFoot
    ? null
    : nearest(part.text, [...knownFindings(context.terms), ...Object.keys(findingAliases)])
  context.report.error('finding-unknown', part, `${quote(part.text)} is not a known finding.`, {
    expected: 'a finding of the page Measures and sources, or one of the terms in practice.md',
    fix: meant,
    advice: namesFoot
      ? 'write the finding under the foot that it was seen on'
      : meant
        ? null
        : `add it in practice.md: terms: {${normal(part.text)}: what it means}`,
  })
}

/** The place, or null (reported). */
export function placeRead(part: Part, context: ParseContext): string | null {
  const place = placeNamed(part.text)
  if (place) return place
  const words = placeInWords(part.text)
  const several = [words, words.replace(/s$/, '')].map((word) => holding(word, places))
  const sides = several.find((names) => names.length > 1) ?? []
  context.report.error('place-unknown', part, `${quote(part.text)} is not a known place on the foot.`, {
    expected: places.join(', '),
    fix: sides.length > 1 ? null : nearest(words, places),
    advice: sides.length > 1 ? `say which: ${either(sides)}` : null,
  })
  return null
}

/** The grade, or null (reported). */
function gradeOf(part: Part, context: ParseContext): Finding['grade'] | null {
  const grade = gradeNamed(part.text)
  if (grade !== null) return grade
  const word = gradeWord(part.text)
  const outOf = /^([0-3])(?:\/| of | out of )3$/.exec(word)?.[1]
  const fix = outOf ?? numberWords[word] ?? gradeSynonyms[word] ?? nearest(word, grades)
  context.report.error('grade-impossible', part, `${quote(part.text)} is no grade of a finding.`, {
    expected: '0 resolved, 1 mild, 2 moderate or 3 severe',
    fix,
    advice: fix || !/\d/.test(word) ? null : 'write one whole number; where in doubt, the higher',
  })
  return null
}

function featureOf(
  foot: Foot,
  parts: readonly Part[],
  range: TextRange,
  context: ParseContext,
): FollowedFeature | null {
  const [what, place, ...rest] = parts
  const [distancePart] = rest
  if (!what?.text || !place?.text || !distancePart?.text) {
    context.report.error('grow-out-form', range, `A grow-out line at ${foot} is not complete.`, {
      expected: 'what, place, distance from the hairline: nail holes, toe, 42 mm',
      advice: 'add what is missing, with commas between',
    })
    return null
  }
  if (isTooLong(what.text, what, context, 'What is followed')) return null
  const where = placeRead(place, context)
  const length = parseLength(rest.map((part) => part.text).join(','), context.units)
  if (!length) {
    wrongForm(
      distancePart,
      context,
      `${sentence(quote(distancePart.text))} as a distance`,
      'a length: 42, 42 mm or 1 5/8 in',
    )
    return null
  }
  if (!where) return null
  if (length.mm < 0 || length.mm > 400) {
    context.report.error(
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
    context.report.warning(
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
