/** Rules on the sole: as it was found, as horse.md says, and as it was measured. */
import type { Visit } from '../../casebook/model.ts'
import { feet } from '../../hoof/feet.ts'
import type { Facts } from '../assessed-care.ts'
import { lowest, valueRule } from './measured.ts'
import { any, type CareRecord, factsOf, findingsAt, type Look, type Rule } from './rule.ts'

/** Below this a vet has the word; published, second hand: usually under 7 mm where the groove at the apex is gone. */
const soleCritical = 7
/** Called thin in light breeds; published, second hand. */
const soleThin = 15

/** Several rules under one code, each with matters of its own. */
const together =
  (...parts: readonly Rule['over'][]) =>
  (record: CareRecord): Look => {
    const looks = parts.map((part) => part(record)).filter((look) => look !== null)
    return (at, say) => {
      for (const look of looks) look(at, say)
    }
  }

const soleFacts = ({ grade, words }: Visit['findings'][number]): Facts => ({ by: 'finding', grade, words })

/** Speaks of each foot of which the visit records findings. */
const foundThin = ({ names }: CareRecord): Look | null => {
  if (!names.has('thin sole')) return null
  return (at, say) => {
    for (const { foot, findings } of at.findings)
      say(at, foot, factsOf(findings, 'thin sole', any, soleFacts), 'finding')
  }
}

export const soleRules: readonly Rule[] = [
  {
    code: 'sole-depth-critical',
    level: 'stop',
    over: valueRule('sole-depth', lowest, (depth) => (depth < soleCritical ? { depth } : null)),
  },
  {
    code: 'sole-flat',
    level: 'mind',
    over: ({ horse, moments, names }) => {
      const { sole } = horse.trimLimits
      if (!names.has('flat sole') && feet.every((foot) => sole[foot] !== 'flat')) return null
      return (at, say) => {
        // horse.md says how the sole is now, so its word counts at the latest visit.
        const said = at.place === moments.length - 1 ? sole : {}
        for (const foot of feet) {
          const findings = findingsAt(at, foot)
          const flat = factsOf(findings ?? [], 'flat sole', any, soleFacts)
          if (flat.length === 0 && said[foot] === 'flat') say(at, foot, [{ by: 'trim limits' }])
          else if (findings !== null) say(at, foot, flat)
        }
      }
    },
  },
  {
    code: 'sole-thin',
    level: 'mind',
    over: together(
      foundThin,
      valueRule('sole-depth', lowest, (depth) => (depth < soleThin ? { by: 'sole depth', depth } : null)),
      valueRule('groove-apex', lowest, (depth) => (depth <= 0 ? { by: 'groove apex', depth } : null)),
    ),
  },
]
