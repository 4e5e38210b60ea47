/** A horse's own page: what to heed, what to do today, what the case is about and whether it works. Method stands elsewhere. */
import type { Visit } from '../../../casebook/model.ts'
import { drawnTogether } from '../../shared/drawn-together.ts'
import type { FindingsGrid, SideDrawing, TrendChart, WallDrawing } from '../../shared/figures.ts'
import type { PageView } from '../../shared/page.ts'
import { type ThenAndNow, thenAndNow } from '../../shared/photos.ts'
import type { PageShell } from '../../shared/shell.ts'
import type { Words } from '../../words/index.ts'
import { type HorseCase, type Link, shellOfHorse, visitHref } from '../case/horse-case.ts'
import { type Fact, identityLine, ownerName, profileFacts } from '../case/profile.ts'
import {
  type CautionGroup,
  type CautionOfFoot,
  linesByFoot,
  ringText,
  standingGroups,
} from '../parts/cautions.ts'
import { findingsGrid } from '../parts/findings.ts'
import { type ProblemsPart, problemsPart } from '../parts/problems.ts'
import { type RealPart, realPart } from '../parts/real.ts'
import { worthDrawing } from '../parts/worth-drawing.ts'
import { problemCharts } from './multiples.ts'
import { type TodayPart, todayPart } from './today.ts'

export interface HorsePage {
  readonly w: Words
  readonly page: PageShell
  readonly name: string
  readonly identity: string
  readonly seen: string
  readonly due: string
  /** To tap with a thumb. */
  readonly bar: readonly Link[]
  readonly cautions: readonly CautionOfFoot[]
  /** The same in full: what, why, and what not to do. */
  readonly cautionsInFull: readonly CautionGroup[]
  /** Whom to ring, where a caution asks for it. */
  readonly ring: string | null
  readonly today: TodayPart
  readonly problems: ProblemsPart
  readonly real: RealPart
  readonly charts: readonly TrendChart[]
  readonly findings: FindingsGrid | null
  readonly drawings: readonly (WallDrawing | SideDrawing)[]
  /** What of them was not measured. */
  readonly drawingNotes: readonly string[]
  /** First against latest picture of a foot: of the foot that matters most. */
  readonly photos: ThenAndNow | null
  readonly visits: readonly VisitLine[]
  /** Folded away. */
  readonly olderVisits: readonly VisitLine[]
  readonly olderHead: string
  readonly profile: readonly Fact[]
  readonly background: readonly string[]
  readonly notes: string
  readonly forOwner: string | null
  readonly forTeaching: string | null
}

interface VisitLine extends Link {
  readonly about: string
}

/** Visits that are listed open. */
const openVisits = 3

export function horsePage(of: HorseCase): PageView {
  const { horse, practice, words, format } = of
  const photos = pairWorthShowing(of)
  const { drawings, notes } = drawnTogether(worthDrawing(of))
  const visits = of.visits.toReversed().map((visit) => visitLine(of, visit))
  const model: HorsePage = {
    w: format.words,
    page: shellOfHorse(of, words.horse.title(horse.name, practice.name), photos === null ? [] : ['compare']),
    name: horse.name,
    identity: [identityLine(of), ownerName(horse, practice.owners) ?? '']
      .filter((part) => part !== '')
      .join(' · '),
    seen: seenText(of),
    due: of.assessmentWords.nextVisitSentence(of.assessment.nextVisit, format),
    bar: tapBar(of, photos !== null),
    cautions: linesByFoot(of),
    cautionsInFull: standingGroups(of),
    ring: ringText(of),
    today: todayPart(of),
    problems: problemsPart(of),
    real: realPart(of),
    charts: problemCharts(of),
    findings: findingsGrid(of),
    drawings,
    drawingNotes: notes,
    photos,
    visits: visits.slice(0, openVisits),
    olderVisits: visits.slice(openVisits),
    olderHead: words.horse.olderVisits(visits.length - openVisits),
    profile: profileFacts(of),
    background: horse.history,
    notes: horse.body.own,
    forOwner: horse.body.forOwner,
    forTeaching: horse.body.forTeaching,
  }
  return { path: `${horse.id}/index.html`, template: 'practice/horse', model }
}

function seenText({ visits, format, words }: HorseCase): string {
  const last = visits.at(-1)
  return last === undefined ? words.horse.notSeen : words.horse.seen(format.date(last.date), visits.length)
}

function tapBar({ words, visits }: HorseCase, hasPhotos: boolean): readonly Link[] {
  const { bar } = words.horse
  const last = visits.at(-1)
  return [
    { text: bar.fieldSheet, href: 'field-sheet.html' },
    { text: bar.handOver, href: 'hand-over.html' },
    ...(last === undefined ? [] : [{ text: bar.lastVisit, href: visitHref(last.id) }]),
    { text: bar.measures, href: 'measures.html' },
    ...(hasPhotos ? [{ text: bar.photos, href: '#photos' }] : []),
  ]
}

/** Of the foot of the first problem that has one, from the side where there is a choice. */
function pairWorthShowing({ visits, pictures, format, assessment }: HorseCase): ThenAndNow | null {
  const pairs = thenAndNow(visits, pictures, format)
  const inOrder = assessment.problems.flatMap(({ foot }) =>
    foot === null ? [] : [`${foot.toLowerCase()}-lateral`, foot.toLowerCase()],
  )
  const best = inOrder.flatMap((key) => pairs.find(({ id }) => id.includes(key)) ?? [])
  return best[0] ?? pairs[0] ?? null
}

function visitLine({ format, words }: HorseCase, visit: Visit): VisitLine {
  const about = words.visit.summary(visit.readings.length, visit.findings.length)
  return { text: format.date(visit.date), href: visitHref(visit.id), about }
}
