/** Comfort and body of one visit, with what each level means. */
import type { Visit } from '../../../casebook/model.ts'
import type { PlainDate } from '../../../hoof/dates.ts'
import { feet, type PerFoot } from '../../../hoof/feet.ts'
import { type ScaleName, scales } from '../../../hoof/scales.ts'
import { capital } from '../../shared/format.ts'
import { footTitle, type HorseCase } from '../case/horse-case.ts'
import { type Fact, weightText } from '../case/profile.ts'
import { type FeetTable, feetTable, textRow } from './feet-table.ts'

export interface ComfortPart {
  /** A row a scale. */
  readonly table: FeetTable
  readonly facts: readonly Fact[]
}

export const scaleId = (scale: ScaleName): string => `scale-${scale.replaceAll(' ', '-')}`

/** `2, hard to see at walk …`. */
const levelText = ({ words }: HorseCase, scale: ScaleName, level: string): string => {
  const meaning = scales[scale].levels.find((one) => one.level === level)?.meaning
  return meaning === undefined ? level : words.visit.levelOf(level, meaning)
}

export function comfortPart(of: HorseCase, { comfort, stance, bodyState, cleared }: Visit): ComfortPart {
  const { words } = of
  const w = words.visit
  const row = (name: string, cells: PerFoot<string>) =>
    textRow(
      of,
      name,
      feet.map((foot) => cells[foot] ?? null),
    )
  const by = comfort.lamenessBy === null ? w.lameness : `${w.lameness}, ${w.lamenessBy(comfort.lamenessBy)}`
  return {
    table: feetTable(of, '', feet, [
      row(
        by,
        textsOf(comfort.lameness, (level) => levelText(of, 'lameness', String(level))),
      ),
      row(
        w.pulse,
        textsOf(comfort.digitalPulse, (level) => levelText(of, 'digital pulse', String(level))),
      ),
      row(
        w.hoofTesters,
        textsOf(comfort.hoofTesters, ({ place, grade }) => w.testersAt(place, grade)),
      ),
      row(w.landing, comfort.landing),
      row(w.stance, stanceTexts(stance)),
    ]),
    facts: [
      ...(comfort.obel === null
        ? []
        : [{ name: w.obel, text: levelText(of, 'obel', roman[comfort.obel] ?? '') }]),
      ...dayFact(of, w.onset, comfort.onset),
      ...dayFact(of, w.painkillers, comfort.painkillers),
      ...surfaceFacts(of, comfort.surfaces),
      ...clearedFacts(of, cleared),
      ...bodyFacts(of, bodyState),
    ],
  }
}

const stanceTexts = (stance: Visit['stance']): PerFoot<string> =>
  textsOf(stance, ({ position, words }) => (words === null ? position : `${position}, ${words}`))

const roman = ['0', 'I', 'II', 'III', 'IV']

const textsOf = <T>(values: PerFoot<T>, text: (value: T) => string): PerFoot<string> =>
  Object.fromEntries(
    feet.flatMap((foot) => {
      const value = values[foot]
      return value === undefined ? [] : [[foot, text(value)]]
    }),
  )

const dayFact = ({ format }: HorseCase, name: string, day: PlainDate | null): readonly Fact[] =>
  day === null ? [] : [{ name, text: format.date(day) }]

function clearedFacts({ words, format }: HorseCase, { feet: days, all }: Visit['cleared']): readonly Fact[] {
  const said = [
    ...feet.flatMap((foot) => {
      const day = days[foot]
      return day === undefined ? [] : [words.visit.clearedAt(format.foot(foot), format.date(day))]
    }),
    ...(all === null ? [] : [words.visit.clearedAt(words.visit.clearedAll, format.date(all))]),
  ]
  return said.length === 0 ? [] : [{ name: words.visit.cleared, text: capital(said.join('; ')) }]
}

function surfaceFacts({ words }: HorseCase, surfaces: Readonly<Record<string, string>>): readonly Fact[] {
  const said = Object.entries(surfaces).map(([name, how]) => words.visit.surface(name, how))
  return said.length === 0 ? [] : [{ name: words.visit.surfaces, text: capital(said.join('; ')) }]
}

function bodyFacts(of: HorseCase, { weightKg, condition, crest }: Visit['bodyState']): readonly Fact[] {
  const w = of.words.visit
  const said = [
    ...(weightKg === null ? [] : [w.bodyWeight(weightText(of, weightKg))]),
    ...(condition === null ? [] : [w.bodyCondition(condition)]),
    ...(crest === null ? [] : [w.bodyCrest(crest)]),
  ]
  return said.length === 0 ? [] : [{ name: w.body, text: capital(said.join('; ')) }]
}

export const footHeads = (of: HorseCase): readonly string[] => feet.map((foot) => footTitle(of, foot))
