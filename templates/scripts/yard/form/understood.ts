/** What dictation put into the draft and no hand has changed since, foot by foot. */
import type { Foot } from '../../../../src/hoof/feet.ts'
import { isMeasureId } from '../../../../src/hoof/measures.ts'
import { findingName } from '../../../../src/pages/shared/findings.ts'
import { capital } from '../../../../src/pages/shared/format.ts'
import type { YardDraft } from '../../../../src/yard/draft.ts'
import { keyOf } from '../../../../src/yard/field.ts'
import { careKey, isHeard } from '../../../../src/yard/hearing.ts'
import { withUnit } from './typed.ts'
import type { Writing } from './writing.ts'

export interface UnderstoodGroup {
  readonly name: string
  readonly lines: readonly string[]
}

type Wording = Pick<Writing, 'words' | 'format' | 'knowledge'>

export function understoodOf(draft: YardDraft, wording: Wording): readonly UnderstoodGroup[] {
  const { knowledge, format, words } = wording
  const groups = knowledge.feetOrder.map((foot) => ({
    name: capital(format.foot(foot)),
    lines: ofFoot(draft, foot, wording),
  }))
  return [...groups, { name: words.yardForm.horse, lines: ofHorse(draft, wording) }].filter(
    ({ lines }) => lines.length > 0,
  )
}

function ofFoot(draft: YardDraft, of: Foot, { words, format }: Wording): readonly string[] {
  const w = words.yardForm
  const heard = <T extends { readonly foot: Foot; readonly heard: string | null }>(all: readonly T[]) =>
    all.filter((one) => one.foot === of && one.heard !== null)
  const scales = { 'digital pulse': w.pulse, landing: w.landing, lameness: w.lameness }
  return [
    ...heard(draft.readings).map(({ stage, measure, text }) => {
      const [name, unit] = isMeasureId(measure) ? [format.name(measure), format.unit(measure)] : [measure, '']
      return capital(`${name} ${withUnit(text, unit)}, ${w.lowerStages[stage]}`)
    }),
    ...heard(draft.findings).map(
      (one) => `${capital(findingName(one))}: ${one.grade} ${w.grades[one.grade]}`,
    ),
    ...heard(draft.features).map(({ what, place, text }) => `${capital(w.feature(what, place))}: ${text}`),
    ...(['digital pulse', 'landing', 'lameness'] as const).flatMap((scale) => {
      const level = draft.comfort[scale][of]
      const isSaid = level && isHeard(draft, keyOf({ part: 'comfort', scale, foot: of }), level) !== null
      return isSaid ? [`${scales[scale]}: ${level}`] : []
    }),
  ]
}

function ofHorse(draft: YardDraft, { words }: Wording): readonly string[] {
  const w = words.yardForm
  const isSaid = (key: string, text: string) => isHeard(draft, key, text) !== null
  const bodyNames = { weight: w.weight, condition: w.condition, crest: w.crest }
  return [
    ...Object.entries(draft.comfort.surfaces).flatMap(([surface, level]) =>
      isSaid(keyOf({ part: 'surfaces', surface }), level) ? [`${surface}: ${level}`] : [],
    ),
    ...(['weight', 'condition', 'crest'] as const).flatMap((key) =>
      isSaid(keyOf({ part: 'body', key }), draft.body[key]) ? [`${bodyNames[key]}: ${draft.body[key]}`] : [],
    ),
    ...draft.care.filter((line) => isSaid(careKey(line), line)),
    ...(isSaid('nextVisit', draft.nextVisit) ? [`${w.nextVisit}: ${draft.nextVisit}`] : []),
  ]
}
