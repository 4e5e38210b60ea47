/** Cautions as pages show them: the word first, then the foot and the matter, then the visit it comes from. */
import type { Foot } from '../../hoof/feet.ts'
import type { Caution, CautionLevel } from '../../trend/assessment.ts'
import { capital, type Formatter } from '../shared/format.ts'
import { dateOfVisit, type HorseCase, type Link, visitHref } from './horse-case.ts'

/** Gravest first. */
export const cautionLevels: readonly CautionLevel[] = ['stop', 'vet', 'mind']

export interface CautionView {
  readonly level: CautionLevel
  readonly word: string
  readonly text: string
  readonly visit: Link
}

/** In the engine's order, `stop` first; feet of which one visit says the same stand in one line. */
export function cautionViews(of: HorseCase, cautions: readonly Caution[]): readonly CautionView[] {
  const { format, words, says } = of
  const alike = new Map<string, { readonly caution: Caution; readonly text: string; readonly feet: Foot[] }>()
  for (const caution of cautions) {
    const text = says.cautions[caution.code](caution.facts, format)
    const key = [caution.level, caution.visit, text].join('|')
    const line = alike.get(key) ?? { caution, text, feet: [] }
    if (caution.foot !== null && !line.feet.includes(caution.foot)) line.feet.push(caution.foot)
    alike.set(key, line)
  }
  return [...alike.values()].map(({ caution, text, feet }) => ({
    level: caution.level,
    word: words.horse.flagged[caution.level],
    text: feet.length === 0 ? text : words.horse.remark(feetText(format, feet), text),
    visit: {
      text: words.horse.seenAt(format.date(dateOfVisit(of, caution.visit))),
      href: visitHref(caution.visit),
    },
  }))
}

/** `Left fore and right fore`. */
export const feetText = ({ foot, words }: Formatter, feet: readonly Foot[]): string =>
  capital(words.base.listed(feet.map(foot)))

/** All of one level under one word. */
export interface CautionGroup {
  readonly level: CautionLevel
  readonly word: string
  readonly items: readonly CautionItem[]
}

interface CautionItem {
  readonly text: string
  /** Null on that visit's own page. */
  readonly visit: Link | null
}

export const cautionGroups = (of: HorseCase, cautions: readonly Caution[]): readonly CautionGroup[] =>
  cautionLevels.flatMap((level) => {
    const items = cautionViews(
      of,
      cautions.filter((caution) => caution.level === level),
    )
    return items.length === 0 ? [] : [{ level, word: of.words.horse.flagged[level], items }]
  })

export const standingCautions = ({ assessment }: HorseCase): readonly Caution[] =>
  assessment.cautions.filter(({ standing }) => standing)
