import type { Visit } from '../../casebook/model.ts'
import { capital } from '../shared/format.ts'
import type { CaseContext, CaseSubject } from './context.ts'
import type { PortfolioCase } from './view.ts'

const viewHeading = /^#{3,6}\s+(?:the\s+)?owner['’]?s['’]?\s+view\s*#*\s*$/i
const anyHeading = /^(#{1,6})\s/

interface TeachingPart {
  /** Null for what is told of the whole case. */
  readonly visit: Visit | null
  readonly isOwnersView: boolean
  /** As written. */
  readonly text: string
}

/**
 * What stands under the heading for teaching: of each visit, then of the whole case. A part headed `### Owner's view`
 * within it is told under that head of the report.
 */
export function teachingParts({
  horse,
  visits,
}: Pick<CaseSubject, 'horse' | 'visits'>): readonly TeachingPart[] {
  const parts = (visit: Visit | null, written: string | null): readonly TeachingPart[] => {
    if (written === null) return []
    const { rest, view } = splitView(written)
    const both = [
      { visit, isOwnersView: false, text: rest.trim() },
      { visit, isOwnersView: true, text: view },
    ]
    return both.filter(({ text }) => text !== '')
  }
  return [
    ...visits.flatMap((visit) => parts(visit, visit.body.forTeaching)),
    ...parts(null, horse.body.forTeaching),
  ]
}

/** The teaching text, rewritten: of the whole case, then of its visits by week or day. */
export function discussionOf(
  context: CaseContext,
): Pick<PortfolioCase, 'discussion' | 'discussionVisits' | 'ownerView'> {
  const { anonymous, timeOf, time, words } = context
  const parts = teachingParts(context)
  const views = parts.filter(({ isOwnersView }) => isOwnersView).map(({ text }) => anonymous(text))
  const notes = parts.filter(({ isOwnersView }) => !isOwnersView)
  const general = notes
    .filter(({ visit }) => visit === null)
    .map(({ text }) => ({ head: words.discussionGeneral, text: anonymous(text) }))
  const visits = notes.flatMap(({ visit, text }) =>
    visit === null ? [] : [{ head: capital(time.at(timeOf(visit.date))), text: anonymous(text) }],
  )
  return {
    discussion: general.length > 0 ? general : visits.slice(-1),
    discussionVisits: general.length > 0 ? visits : visits.slice(0, -1),
    ownerView: views.length === 0 ? null : views.join('\n\n'),
  }
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
