/**
 * A new visit's file: blanks for what the case is about and what the last visits read and judged, with what was said then as
 * remarks, on as few lines as can be. A blank costs two strokes and a line that nobody fills in costs more, so nothing else
 * is asked for.
 */
import type { Horse, Practice } from '../../casebook/model.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import type { Assessment } from '../../trend/assessment.ts'
import type { Formatter } from '../shared/format.ts'
import type { Words } from '../words/index.ts'
import { bodyLines, clearedLines, comfortLines, footingLines, stanceLines } from './asked-comfort.ts'
import { findingLines, growOutLines } from './asked-findings.ts'
import { readingLines } from './asked-readings.ts'
import { blank, remarked, sectionHeadings } from './lines.ts'

type StarterWords = Words['starter']

/**
 * Text of a new visit. Passes the reader once each blank is filled in or its line deleted.
 *
 * @param date the visit's date; only visits before it count as the last
 */
export function startVisit(
  horse: Horse,
  assessment: Assessment,
  practice: Practice,
  date: PlainDate,
  format: Formatter,
): string {
  const w = format.words.starter
  const past = horse.visits.filter((visit) => visit.date <= date)
  const order = practice.feetOrder
  return [
    '---',
    `# ${w.fillIn}`,
    `date: ${date}`,
    ...byLine(practice, w),
    ...footingLines(past, w),
    ...readingLines(horse, past, practice, format),
    ...findingLines(horse, past, assessment, format),
    ...growOutLines(horse, past, assessment.growOut, format),
    ...comfortLines(past, assessment, order, w),
    ...bodyLines(past, w),
    ...stanceLines(past, order, w),
    ...clearedLines(assessment, order, w),
    remarked(`care: ${blank}`, w.care),
    `next visit: in ${Math.round(practice.trimCycleDays / 7) || 1} weeks`,
    '---',
    '',
    `## ${sectionHeadings.forOwner}`,
    '',
    ...(horse.consent.portfolio ? [`## ${sectionHeadings.forTeaching}`, ''] : []),
  ].join('\n')
}

/** Asked for where more than one could have taken the readings. */
const byLine = ({ people }: Practice, w: StarterWords): string[] =>
  people.length < 2 ? [] : [remarked(`by: ${blank}`, w.by(people.map(({ id }) => id).join(', ')))]
