/** Rules on how the horse goes: lameness, digital pulse, surfaces. */
import type { Visit } from '../../casebook/model.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import type { Facts } from '../assessed-care.ts'
import { lastBefore, type Moment, type Rule, type Statement, says } from './rule.ts'

const lamenessRule =
  (found: (grade: number, foot: Foot, at: Moment) => Facts | null) =>
  (at: Moment): readonly Statement[] =>
    feet.flatMap((foot) => {
      const grade = at.visit.comfort.lameness[foot]
      if (grade === undefined) return []
      const facts = found(grade, foot, at)
      return [says(foot, facts === null ? [] : [facts])]
    })

const unwillingSurfaces = ({ comfort }: Visit): readonly string[] =>
  Object.entries(comfort.surfaces)
    .filter(([, level]) => level === 'unwilling')
    .map(([surface]) => surface)

/** Whether the visit says how the horse moves, and if so, where it would not; Obel III and IV are unwilling by name. */
function unwillingness(visit: Visit): readonly string[] | null {
  const { surfaces, obel } = visit.comfort
  if (Object.keys(surfaces).length === 0 && obel === null) return null
  return [...unwillingSurfaces(visit), ...(obel !== null && obel >= 3 ? ['any surface'] : [])]
}

export const comfortRules: readonly Rule[] = [
  {
    code: 'lameness-severe',
    level: 'stop',
    look: lamenessRule((grade) => (grade >= 4 ? { grade } : null)),
  },
  {
    code: 'pulse-bounding',
    level: 'stop',
    look: ({ visit }) =>
      feet.flatMap((foot) => {
        const grade = visit.comfort.digitalPulse[foot]
        return grade === undefined ? [] : [says(foot, grade >= 3 ? [{ grade }] : [])]
      }),
  },
  {
    code: 'pulse-both-fores',
    level: 'stop',
    look: ({ visit }) => {
      const { LF, RF } = visit.comfort.digitalPulse
      if (LF !== undefined && RF !== undefined)
        return [says(null, LF >= 2 && RF >= 2 ? [{ left: LF, right: RF }] : [])]
      // One fore alone can only give the all-clear.
      return (LF ?? RF ?? 2) < 2 ? [says(null, [])] : []
    },
  },
  {
    code: 'unwilling-to-move',
    level: 'stop',
    // Newly so, or never judged before. It stands until a visit finds the horse willing on all that it judges.
    look: (at) => {
      const now = unwillingness(at.visit)
      if (now === null) return []
      const before = lastBefore(at, unwillingness) ?? []
      if (now.length > 0 && before.length > 0) return []
      return [says(null, now.length > 0 ? [{ surfaces: now.join(', ') }] : [])]
    },
  },
  {
    code: 'lameness-moderate',
    level: 'vet',
    look: lamenessRule((grade) => (grade >= 2 && grade <= 3 ? { grade } : null)),
  },
  {
    code: 'lameness-rising',
    level: 'vet',
    look: lamenessRule((grade, foot, at) => {
      const before = lastBefore(at, (visit) => visit.comfort.lameness[foot] ?? null)
      return before !== null && grade > before ? { grade, before } : null
    }),
  },
]
