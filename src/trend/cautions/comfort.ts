/** Rules on how the horse goes: lameness, digital pulse, surfaces. */
import type { Visit } from '../../casebook/model.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import type { Facts } from '../assessed-care.ts'
import { type CareRecord, type Look, lastBefore, type Moment, nothing, type Rule } from './rule.ts'

const lamenessRule =
  (found: (grade: number, foot: Foot, at: Moment, record: CareRecord) => Facts | null) =>
  (record: CareRecord): Look | null => {
    if (!isJudged(record, 'lameness')) return null
    return (at, say) => {
      for (const foot of feet) {
        const grade = at.visit.comfort.lameness[foot]
        if (grade === undefined) continue
        const facts = found(grade, foot, at, record)
        say(at, foot, facts === null ? nothing : [facts])
      }
    }
  }

/** Whether any visit judges it at any foot. */
const isJudged = ({ moments }: CareRecord, what: 'lameness' | 'digitalPulse'): boolean =>
  moments.some(({ visit }) => feet.some((foot) => visit.comfort[what][foot] !== undefined))

const unwillingSurfaces = ({ comfort }: Visit): readonly string[] =>
  Object.entries(comfort.surfaces)
    .filter(([, level]) => level === 'unwilling')
    .map(([surface]) => surface)

/** Whether the visit says how the horse moves, and if so, where it would not; Obel III and IV are unwilling by name. */
function unwillingness(visit: Visit): readonly string[] | null {
  const { surfaces, obel } = visit.comfort
  if (obel === null && Object.keys(surfaces).length === 0) return null
  return [...unwillingSurfaces(visit), ...(obel !== null && obel >= 3 ? ['any surface'] : [])]
}

export const comfortRules: readonly Rule[] = [
  {
    code: 'lameness-severe',
    level: 'stop',
    over: lamenessRule((grade) => (grade >= 4 ? { grade } : null)),
  },
  {
    code: 'pulse-bounding',
    level: 'stop',
    over: (record) => {
      if (!isJudged(record, 'digitalPulse')) return null
      return (at, say) => {
        for (const foot of feet) {
          const grade = at.visit.comfort.digitalPulse[foot]
          if (grade !== undefined) say(at, foot, grade >= 3 ? [{ grade }] : nothing)
        }
      }
    },
  },
  {
    code: 'pulse-both-fores',
    level: 'stop',
    over: () => (at, say) => {
      const { LF, RF } = at.visit.comfort.digitalPulse
      if (LF !== undefined && RF !== undefined)
        say(at, null, LF >= 2 && RF >= 2 ? [{ left: LF, right: RF }] : nothing)
      // One fore alone can only give the all-clear.
      else if ((LF ?? RF ?? 2) < 2) say(at, null, nothing)
    },
  },
  {
    code: 'unwilling-to-move',
    level: 'stop',
    // Newly so, or never judged before. It stands until a visit finds the horse willing on all that it judges.
    over:
      ({ moments }) =>
      (at, say) => {
        const now = unwillingness(at.visit)
        if (now === null) return
        if (now.length === 0) say(at, null, nothing)
        else if ((lastBefore(moments, at.place, unwillingness) ?? []).length === 0)
          say(at, null, [{ surfaces: now.join(', ') }])
      },
  },
  {
    code: 'lameness-moderate',
    level: 'vet',
    over: lamenessRule((grade) => (grade >= 2 && grade <= 3 ? { grade } : null)),
  },
  {
    code: 'lameness-rising',
    level: 'vet',
    over: lamenessRule((grade, foot, { place }, { moments }) => {
      const before = lastBefore(moments, place, (visit) => visit.comfort.lameness[foot] ?? null)
      return before !== null && grade > before ? { grade, before } : null
    }),
  },
]
