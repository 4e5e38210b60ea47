import type { Horse, Practice } from '../casebook/model.ts'
import type { PlainDate } from '../hoof/dates.ts'
import type { Assessment } from './assessment.ts'

/** Everything the engine can say of one horse on the day `asOf`; later visits are left out. Pure. */
export function assess(_horse: Horse, _practice: Practice, _asOf: PlainDate): Assessment {
  throw new Error('to be written')
}
