/** A row of the table of danger signs, and short ways to write one. */
import type { CautionCode, CautionLevel } from '../../../src/trend/assessment.ts'
import type { HorseSketch, VisitSketch } from '../build-horse.ts'

export type Sketch = Omit<VisitSketch, 'date'>

export interface SignRow {
  readonly code: CautionCode
  readonly level: CautionLevel
  /** Whether the feet have no plan: every stop, and the others that the table names. */
  readonly holds?: true
  readonly raises: readonly Sketch[]
  readonly shortOf: readonly (readonly Sketch[])[]
  /** Each ends it, a visit later. */
  readonly ends: readonly Sketch[]
  /** None of them ends it. */
  readonly keeps?: readonly Sketch[]
  readonly horse?: Omit<HorseSketch, 'visits'>
  /** About a pair or the whole horse. */
  readonly wide?: true
}

export const findings = (...all: string[]): Sketch => ({ findings: all })
export const comfort = (of: NonNullable<Sketch['comfort']>): Sketch => ({ comfort: of })

/** A finding that counts at any grade. */
export const found = (
  code: CautionCode,
  level: CautionLevel,
  what: string,
  place: string,
  more: Partial<SignRow> = {},
): SignRow => ({
  code,
  level,
  ...(level === 'stop' ? { holds: true } : {}),
  raises: [findings(`LF ${what}, ${place}, 1`)],
  shortOf: [[findings(`LF ${what}, ${place}, 0`)]],
  ends: [findings(`LF ${what}, ${place}, 0`)],
  keeps: [findings('LF flare, toe, 1'), findings(`RF ${what}, ${place}, 0`)],
  ...more,
})

/** A finding that counts at grade 3. */
export const severe = (code: CautionCode, what: string, place: string): SignRow => ({
  code,
  level: 'vet',
  raises: [findings(`LF ${what}, ${place}, 3`)],
  shortOf: [[findings(`LF ${what}, ${place}, 2`)]],
  ends: [findings(`LF ${what}, ${place}, 2`), findings(`LF ${what}, ${place}, 0`)],
  keeps: [findings('LF flare, toe, 1'), findings(`LF ${what}, ${place}, 3`)],
})

export const diagnosis = (text: string) => ({
  vet: {
    involved: true,
    diagnosis: text,
    name: null,
    phone: null,
    date: '2026-01-02',
    feet: ['LF' as const],
  },
})
