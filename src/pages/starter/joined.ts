/** Spoken notes and a new visit in one file: what was said stands as it was understood, what was not said is asked for. */
import type { Horse, Practice, Stage, Visit } from '../../casebook/model.ts'
import { measures } from '../../hoof/measures.ts'
import type { AskedLines, Understood } from '../../spoken/index.ts'
import { askedAt } from '../../trend/asked-readings.ts'
import type { Assessment } from '../../trend/assessment.ts'
import type { Formatter } from '../shared/format.ts'
import { askedScales, bodyLines, clearedLines, footingLines, stanceLines } from './asked-comfort.ts'
import { askedFeatures, askedFindings, featureRemark } from './asked-findings.ts'
import { lastReadings } from './last-values.ts'
import { blank, blanks, remarked } from './lines.ts'

/** No words stand behind what is asked for. */
const unsaid = { from: [], doubt: null } as const

export interface Joined {
  readonly understood: Understood
  readonly asked: AskedLines
}

export function joined(
  understood: Understood,
  horse: Horse,
  past: readonly Visit[],
  assessment: Assessment,
  practice: Practice,
  format: Formatter,
): Joined {
  const { starter: w } = format.words
  const order = practice.feetOrder
  const scales = askedScales(past, assessment, order)
  const isSaid = (key: string) =>
    understood.comfort.some(({ scale }) => scale === key) ||
    (key === 'surfaces' && understood.surfaces.length > 0)
  return {
    understood: {
      ...understood,
      readings: [...understood.readings, ...missingReadings(understood, horse, past)],
      findings: [...understood.findings, ...missingFindings(understood, horse, past, assessment, format)],
      features: [...understood.features, ...missingFeatures(understood, horse, past, assessment, format)],
      comfort: [...understood.comfort, ...missingComfort(understood, scales)],
      nextVisit: understood.nextVisit ?? {
        text: `in ${Math.round(practice.trimCycleDays / 7) || 1} weeks`,
        ...unsaid,
      },
    },
    asked: {
      before: wholeRows('before', understood, horse, past, practice, format),
      after: wholeRows('after', understood, horse, past, practice, format),
      comfort: scales
        .filter(({ key }) => !isSaid(key))
        .map(({ key, blanks: of, last }) => remarked(`  ${key}: ${of}`, last === null ? null : w.last(last))),
      block: [
        ...footingLines(past, w),
        ...(understood.body.length > 0 ? [] : bodyLines(past, w)),
        ...stanceLines(past, order, w),
        ...clearedLines(assessment, order, w),
        ...(understood.care.length > 0 ? [] : [remarked(`care: ${blank}`, w.care)]),
      ],
    },
  }
}

/** Rows of which nothing was said, with what was read last behind them. */
function wholeRows(
  stage: Stage,
  { readings }: Understood,
  horse: Horse,
  past: readonly Visit[],
  { feetOrder }: Practice,
  format: Formatter,
): readonly string[] {
  return askedAt(stage, horse, past)
    .filter(({ measure }) => !readings.some((one) => one.stage === stage && one.measure === measure))
    .map(({ measure, of }) =>
      remarked(
        `  ${measures[measure].name}: ${blanks(of, feetOrder)}`,
        lastReadings(past, measure, feetOrder, format),
      ),
    )
}

/** The feet that are lacking in rows of which something was said. */
function missingReadings(
  { readings }: Understood,
  horse: Horse,
  past: readonly Visit[],
): Understood['readings'] {
  return (['before', 'after'] as const).flatMap((stage) =>
    askedAt(stage, horse, past).flatMap(({ measure, of }) => {
      const said = readings.filter((one) => one.stage === stage && one.measure === measure)
      if (said.length === 0) return []
      return of
        .filter((foot) => !said.some((one) => one.foot === foot))
        .map((foot) => ({ stage, foot, measure, value: null, text: blank, ...unsaid }))
    }),
  )
}

function missingFindings(
  { findings }: Understood,
  horse: Horse,
  past: readonly Visit[],
  assessment: Assessment,
  format: Formatter,
): Understood['findings'] {
  const { open, unseen } = askedFindings(horse, past, assessment)
  const isSaid = (foot: string, what: string, place: string | null) =>
    findings.some(
      (one) =>
        one.foot === foot &&
        one.what === what &&
        (place === null || one.place === null || one.place === place),
    )
  const asked = [
    ...open.map(({ foot, what, place, grade, date, stands }) => {
      const doubt = format.words.starter.lastOn(String(grade), format.shortDate(date), stands)
      return { foot, what, place, grade: null, from: [], doubt }
    }),
    ...unseen.map((one) => ({ ...one, grade: null, ...unsaid })),
  ]
  return asked.filter(({ foot, what, place }) => !isSaid(foot, what, place))
}

function missingFeatures(
  { features }: Understood,
  horse: Horse,
  past: readonly Visit[],
  assessment: Assessment,
  format: Formatter,
): Understood['features'] {
  const { going, unseen } = askedFeatures(horse, past, assessment.growOut)
  const asked = [
    ...going.map((one) => ({
      ...{ foot: one.foot, what: one.feature, place: one.place, text: blank },
      ...{ from: [], doubt: featureRemark(one, format) },
    })),
    ...unseen.map((one) => ({ ...one, text: blank, ...unsaid })),
  ]
  return asked.filter(
    ({ foot, what, place }) =>
      !features.some(
        (one) =>
          one.foot === foot &&
          one.what === what &&
          (place === null || one.place === null || one.place === place),
      ),
  )
}

/** The feet that are lacking where a scale was judged for others. */
function missingComfort(
  { comfort }: Understood,
  scales: ReturnType<typeof askedScales>,
): Understood['comfort'] {
  return (['lameness', 'landing', 'digital pulse'] as const).flatMap((scale) => {
    const said = comfort.filter((one) => one.scale === scale)
    if (said.length === 0) return []
    const of = scales.find(({ key }) => key === scale)?.of ?? []
    return of
      .filter((foot) => !said.some((one) => one.foot === foot))
      .map((foot) => ({ scale, foot, level: blank, by: said[0]?.by ?? null, ...unsaid }))
  })
}
