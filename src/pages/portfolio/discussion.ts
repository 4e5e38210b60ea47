import { capital } from '../shared/format.ts'
import type { CaseContext } from './context.ts'
import type { PortfolioCase } from './view.ts'

const viewHeading = /^#{3,6}\s+(?:the\s+)?owner['’]?s['’]?\s+view\s*#*\s*$/i
const anyHeading = /^(#{1,6})\s/

/**
 * Text under the heading for teaching, rewritten: of each visit by its week or day, then of the whole case. A part headed
 * `### Owner's view` within it is told under that head of the report.
 */
export function discussionOf(context: CaseContext): Pick<PortfolioCase, 'discussion' | 'ownerView'> {
  const { horse, visits, anonymous, timeOf, time, words } = context
  const views: string[] = []
  const part = (head: string, text: string | null) => {
    if (text === null) return []
    const { rest, view } = splitView(text)
    if (view !== '') views.push(anonymous(view))
    return rest.trim() === '' ? [] : [{ head, text: anonymous(rest.trim()) }]
  }
  const ofVisits = visits.flatMap((visit) =>
    part(capital(time.at(timeOf(visit.date))), visit.body.forTeaching),
  )
  const ofCase = part(words.discussionGeneral, horse.body.forTeaching)
  return { discussion: [...ofVisits, ...ofCase], ownerView: views.length === 0 ? null : views.join('\n\n') }
}

function splitView(text: string): { rest: string; view: string } {
  const rest: string[] = []
  const view: string[] = []
  let level = 0
  for (const line of text.split('\n')) {
    const heading = anyHeading.exec(line)
    if (viewHeading.test(line)) {
      level = heading?.[1]?.length ?? 3
      continue
    }
    if (level > 0 && heading && (heading[1]?.length ?? 0) <= level) level = 0
    ;(level > 0 ? view : rest).push(line)
  }
  return { rest: rest.join('\n'), view: view.join('\n').trim() }
}
