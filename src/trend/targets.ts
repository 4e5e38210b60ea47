/** The bands that verdicts are set against. */
import type { Horse } from '../casebook/model.ts'
import type { Band } from '../hoof/bands.ts'
import type { Foot } from '../hoof/feet.ts'
import type { AnyMeasureId } from '../hoof/measures.ts'
import { closedSomewhere } from './verdict.ts'

/**
 * Where the practitioner gives no target. Heel balance: common practice, no source. Frog ratio and load index: Turner.
 * There is none for any other measure; texts differ too widely.
 */
export const defaultBands: Partial<Record<AnyMeasureId, Band>> = {
  'heel-balance': { low: -2, high: 2 },
  'frog-ratio': { low: 0.67, high: null },
  'load-index': { low: null, high: 78 },
}

export interface Target {
  readonly band: Band | null
  readonly from: 'practitioner' | 'default' | null
}

/** The practitioner's own target wins; a band open both ways wants nothing. */
export function targetOf(horse: Horse, foot: Foot, measure: AnyMeasureId): Target {
  const own = horse.targets[measure]?.[foot]
  if (own !== undefined) return closedSomewhere(own) ? { band: own, from: 'practitioner' } : noTarget
  const band = defaultBands[measure]
  return band === undefined ? noTarget : { band, from: 'default' }
}

export const noTarget: Target = { band: null, from: null }
