/** The round that a visit goes: foot by foot, so that a foot is lifted once, on arrival and again after the trim. */
import type { Stage } from '../../../../src/casebook/model.ts'
import type { Foot } from '../../../../src/hoof/feet.ts'
import type { MeasureId } from '../../../../src/hoof/measures.ts'
import type { YardDraft } from '../../../../src/yard/draft.ts'
import type { HorseKnowledge } from '../../../../src/yard/knowledge.ts'

export type Step =
  | { readonly kind: 'reading'; readonly stage: Stage; readonly foot: Foot; readonly measure: MeasureId }
  | { readonly kind: 'feature'; readonly foot: Foot; readonly what: string; readonly place: string }
  /** The findings of a foot that are open, all at once. */
  | { readonly kind: 'findings'; readonly foot: Foot }

export const keyOfStep = (step: Step): string =>
  step.kind === 'reading'
    ? `${step.stage} ${step.measure} ${step.foot}`
    : step.kind === 'feature'
      ? `feature ${step.what}, ${step.place} ${step.foot}`
      : `findings ${step.foot}`

export const isSame = (a: Step, b: Step): boolean => keyOfStep(a) === keyOfStep(b)

export const stageOf = (step: Step): Stage => (step.kind === 'reading' ? step.stage : 'before')

type Known = Pick<HorseKnowledge, 'asked' | 'feetOrder' | 'openFindings' | 'features'>

/** What is asked of a foot at a stage: its usual measures; what is followed and what is open once, on arrival. */
export function stepsOf(known: Known, draft: YardDraft, stage: Stage, foot: Foot): readonly Step[] {
  const readings = known.asked[stage]
    .filter(({ of }) => of.includes(foot))
    .map(({ measure }): Step => ({ kind: 'reading', stage, foot, measure }))
  if (stage === 'after') return readings
  const followed = [
    ...known.features.map(({ foot: of, feature, place }) => ({ foot: of, what: feature, place })),
    ...draft.features,
  ].filter((one) => one.foot === foot)
  const names = new Map(followed.map(({ what, place }) => [`${what}, ${place}`, { what, place }]))
  return [
    ...readings,
    ...[...names.values()].map(({ what, place }): Step => ({ kind: 'feature', foot, what, place })),
    ...(known.openFindings.some((one) => one.foot === foot) ? [{ kind: 'findings', foot } as const] : []),
  ]
}

/** The whole round. */
export const roundOf = (known: Known, draft: YardDraft): readonly Step[] =>
  (['before', 'after'] as const).flatMap((stage) =>
    known.feetOrder.flatMap((foot) => stepsOf(known, draft, stage, foot)),
  )

export function isDone(known: Known, draft: YardDraft, step: Step): boolean {
  if (step.kind === 'findings')
    return known.openFindings.every(
      ({ foot, what, place }) =>
        foot !== step.foot ||
        draft.findings.some((one) => one.foot === foot && one.what === what && one.place === place),
    )
  return textOf(draft, step) !== ''
}

/** What is written at a step, as typed. */
export const textOf = (draft: YardDraft, step: Step): string => writtenAt(draft, step)?.text ?? ''

export function writtenAt(draft: YardDraft, step: Step) {
  if (step.kind === 'reading')
    return draft.readings.find(
      ({ stage, foot, measure }) => stage === step.stage && foot === step.foot && measure === step.measure,
    )
  if (step.kind === 'feature')
    return draft.features.find(
      ({ foot, what, place }) => foot === step.foot && what === step.what && place === step.place,
    )
  return undefined
}

/** The draft with this text at a step, typed by hand; empty text takes the line away. */
export function written(draft: YardDraft, step: Step, text: string): YardDraft {
  if (step.kind === 'findings') return draft
  const old = writtenAt(draft, step)
  const place = <T>(list: readonly T[], line: T): T[] => {
    if (text === '') return list.filter((one) => one !== old)
    return old ? list.map((one) => (one === old ? line : one)) : [...list, line]
  }
  if (step.kind === 'reading') {
    const { stage, foot, measure } = step
    return { ...draft, readings: place(draft.readings, { stage, foot, measure, text, heard: null }) }
  }
  const { foot, what, place: at } = step
  return { ...draft, features: place(draft.features, { foot, what, place: at, text, heard: null }) }
}

/** How much of a foot is done. */
export function progressOf(
  known: Known,
  draft: YardDraft,
  foot: Foot,
): { readonly done: number; readonly of: number } {
  const steps = (['before', 'after'] as const).flatMap((stage) => stepsOf(known, draft, stage, foot))
  return { done: steps.filter((step) => isDone(known, draft, step)).length, of: steps.length }
}
