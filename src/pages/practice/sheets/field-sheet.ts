/** Field sheet for the next visit: last values in grey beside empty boxes, what is open, what was agreed. */
import { type Foot, feet } from '../../../hoof/feet.ts'
import { isMeasureId, type MeasureId, measureIds } from '../../../hoof/measures.ts'
import type { AssessedReading, Caution } from '../../../trend/assessment.ts'
import { standingCautions, wordsOf } from '../../shared/caution-lines.ts'
import { findingName } from '../../shared/findings.ts'
import { capital } from '../../shared/format.ts'
import type { PageView } from '../../shared/page.ts'
import type { HorseCase } from '../case/horse-case.ts'
import { heldText, identityLine, limitLine, targetLine } from '../case/profile.ts'
import { type ShownReading, shownReading } from '../case/shown-reading.ts'
import { findingDate, gradeName, openFindingsOf } from '../parts/findings.ts'
import type { Block, BoxRow, TickRow } from './paper-sides.ts'
import { blockOf, type SheetPage, sheetPage } from './sheet.ts'

export interface FieldSheetPage extends SheetPage {
  readonly lead: readonly string[]
}

/** Asked for where the horse has no readings yet. */
const usual: readonly MeasureId[] = ['toe-length', 'toe-angle', 'heel-angle', 'heel-medial', 'heel-lateral']

export function fieldSheet(of: HorseCase): PageView {
  const { horse, words, format, assessment, assessmentWords } = of
  const w = words.sheets
  const lead = [
    w.fieldLead(identityLine(of), assessmentWords.nextVisitSentence(assessment.nextVisit, format)),
  ]
  const sheet = sheetPage(of, w.fieldTitle(horse.name), lead, {
    // There are lines to write on besides.
    toWriteIn: 9,
    wide: [...blockOf(w.fieldLimits, agreedLimits(of)), boxesBlock(of)],
    left: [
      ...ticksOf(w.fieldOpen, openTicks(of)),
      ...ticksOf(w.fieldFindings, findingTicks(of)),
      ...ticksOf(w.fieldFeatures, featureTicks(of)),
    ],
    right: [
      ...ticksOf(w.fieldTwice, twiceTicks(of)),
      { kind: 'blanks', heading: w.fieldNew, note: null, items: feet },
      { kind: 'blanks', heading: w.fieldCare, note: null, items: w.fieldCareLines },
    ],
  })
  const model: FieldSheetPage = { ...sheet, lead }
  return { path: `${horse.id}/field-sheet.html`, template: 'practice/field-sheet', model }
}

/** Every measure that this horse has been read for by gauge. */
const measuresRead = ({ readings }: HorseCase): readonly MeasureId[] =>
  measureIds.filter((id) => readings.of(id).some(({ source }) => source === 'entered'))

/** The last value of each of them at each foot. */
export const lastReadings = (of: HorseCase) =>
  measuresRead(of).map((id) => ({ name: headOf(of, id), cells: feet.map((foot) => lastAt(of, id, foot)) }))

const headOf = ({ format }: HorseCase, id: MeasureId): string =>
  [capital(format.name(id)), format.unit(id)].join(', ')

/** What is read at this horse, and comfort: the last value beside boxes before and after. */
function boxesBlock(of: HorseCase): Block {
  const { visits, words, format } = of
  const w = words.sheets
  const known = measuresRead(of)
  const ids = known.length === 0 ? usual : known
  const last = visits.at(-1)?.date
  return {
    kind: 'boxes',
    heading: w.readings,
    note: last === undefined ? null : w.fieldHow(format.date(last)),
    feet,
    stages: [w.fieldBefore, w.fieldAfter],
    isDense: ids.length > mostHigh,
    items: [...ids.map((id) => boxRow(of, id)), ...comfortRows(of)],
  }
}

function boxRow(of: HorseCase, id: MeasureId): BoxRow {
  return {
    name: headOf(of, id),
    cells: feet.map((foot) => ({ last: lastOf(lastAt(of, id, foot)), single: false })),
  }
}

interface LastReading {
  readonly reading: AssessedReading
  readonly figure: string
  /** Null where it is of the last visit. */
  readonly date: string | null
}

function lastAt({ format, visits, readings }: HorseCase, id: MeasureId, foot: Foot): LastReading | null {
  const own = readings.of(id).filter((one) => one.source === 'entered' && one.foot === foot)
  const newest = own.at(-1)
  if (newest === undefined) return null
  const reading = own.findLast(({ visit, stage }) => visit === newest.visit && stage === 'after') ?? newest
  const isOfLast = reading.visit === visits.at(-1)?.id
  return {
    reading,
    figure: format.figure(id, reading.value),
    date: isOfLast ? null : format.shortDate(reading.date),
  }
}

/** With its date where it is older than the last visit. */
const lastOf = (last: LastReading | null): ShownReading | null =>
  last && shownReading(last.reading, last.date === null ? last.figure : `${last.figure} (${last.date})`)

function comfortRows({ visits, words }: HorseCase): readonly BoxRow[] {
  const last = visits.at(-1)
  const { lameness, pulse, landing } = words.sheets.fieldRows
  const row = (name: string, value: (foot: Foot) => string): BoxRow => ({
    name,
    cells: feet.map((foot) => ({
      last: value(foot) === '' ? null : { text: value(foot), reading: `${foot} ${name} ${last?.id ?? ''}` },
      single: true,
    })),
  })
  return [
    row(lameness, (foot) => String(last?.comfort.lameness[foot] ?? '')),
    row(pulse, (foot) => String(last?.comfort.digitalPulse[foot] ?? '')),
    row(landing, (foot) => last?.comfort.landing[foot] ?? ''),
  ]
}

const ticksOf = (heading: string, items: readonly TickRow[]): readonly Block[] =>
  items.length === 0 ? [] : [{ kind: 'ticks', heading, note: null, items }]

/** More measures than these have lower rows. */
const mostHigh = 12

/** So many feet are asked to be read twice on a sheet. */
const mostTwice = 3

/** The feet that matter most to the problems, each with the measure that is its problem; a foot once. */
function twiceTicks({ assessment, format, words }: HorseCase): readonly TickRow[] {
  const asked = new Map<Foot, string>()
  for (const { foot, about, closedOn } of assessment.problems) {
    if (foot === null || closedOn !== null || about.kind !== 'measure' || !isMeasureId(about.measure))
      continue
    if (!asked.has(foot) && !assessment.heldFeet.includes(foot)) asked.set(foot, format.name(about.measure))
  }
  return [...asked]
    .slice(0, mostTwice)
    .map(([foot, measure]) => ({ text: `${foot} ${measure}`, boxes: words.sheets.fieldTwiceBoxes }))
}

/** What no page is calm about until someone has said so: asked first, in one stroke each. */
const openTicks = (of: HorseCase): readonly TickRow[] =>
  standingCautions(of.assessment.cautions)
    .filter(({ level }) => level !== 'mind')
    .map((caution) => ({
      text: of.words.sheets.fieldOpenSince(openName(of, caution), of.format.shortDate(caution.since)),
      boxes: of.words.sheets.fieldOpenBoxes,
    }))

function openName({ format }: HorseCase, caution: Caution): string {
  const name = wordsOf(format, caution).name(caution.facts)
  return caution.feet.length === feet.length ? capital(name) : `${caution.feet.join(', ')} ${name}`
}

const findingTicks = (of: HorseCase): readonly TickRow[] =>
  openFindingsOf(of).map((finding) => {
    const date = findingDate(of, finding)
    const grade = gradeName(of, finding.grade)
    const was = of.words.sheets.fieldWas(date === null ? grade : of.words.horse.gradeOn(grade, date))
    return { text: `${finding.foot} ${findingName(finding)} (${was})`, boxes: of.words.sheets.fieldGrades }
  })

const featureTicks = (of: HorseCase): readonly TickRow[] =>
  of.assessment.growOut
    .filter(({ state }) => state !== 'grown out')
    .map((one) => ({
      text: of.format.words.base.remark(
        `${one.foot} ${one.feature}, ${one.place}`,
        of.words.sheets.fieldFeature(of.format.length(one.distance), of.format.length(one.expectedNow)),
      ),
      boxes: [''],
    }))

/** What may be taken today, by plan; then the horse's own limits and targets. */
function agreedLimits(of: HorseCase): readonly string[] {
  const { assessment, format, assessmentWords, words } = of
  const plans = assessment.plans.map((plan) =>
    format.words.base.remark(plan.foot, assessmentWords.offSentence(plan, format)),
  )
  const all = [...heldText(of), ...plans, ...limitLine(of), ...targetLine(of)]
  return all.length === 0 ? [words.sheets.fieldLimitsNone] : all
}
