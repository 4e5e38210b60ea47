/** A horse's own page: urgent, how it stands, what changed, what comes next, the history. */
import type { Visit } from '../../casebook/model.ts'
import type { FindingsGrid } from '../shared/figures.ts'
import type { PageView } from '../shared/page.ts'
import { type ThenAndNow, thenAndNow } from '../shared/photos.ts'
import type { PageShell } from '../shared/shell.ts'
import type { Words } from '../words/index.ts'
import { type CautionGroup, ringText, standingGroups } from './cautions.ts'
import { type ChangedPart, changedPart } from './changed-part.ts'
import { checkTexts } from './checks.ts'
import { type FeetPart, feetPart } from './feet-part.ts'
import { findingsGrid } from './findings.ts'
import { type HorseCase, type Link, shellOfHorse, visitHref } from './horse-case.ts'
import { type NextPart, nextPart } from './next-part.ts'
import { type Fact, identityLine, profileFacts } from './profile.ts'

export interface HorsePage {
  readonly w: Words
  readonly page: PageShell
  readonly name: string
  readonly identity: string
  readonly seen: string
  readonly next: string
  readonly cautions: readonly CautionGroup[]
  /** Whom to ring, where a caution asks for it. */
  readonly ring: string | null
  readonly feet: FeetPart
  readonly changed: ChangedPart
  readonly coming: NextPart
  readonly history: HistoryPart
}

interface HistoryPart {
  readonly grid: FindingsGrid | null
  /** First against latest picture of a foot. */
  readonly photos: readonly ThenAndNow[]
  readonly visits: readonly VisitLine[]
  readonly profile: readonly Fact[]
  readonly background: readonly string[]
  readonly notes: string
  readonly forOwner: string | null
  readonly forTeaching: string | null
}

interface VisitLine extends Link {
  readonly about: string
}

export function horsePage(of: HorseCase): PageView {
  const { horse, practice, words, format, assessment } = of
  const photos = thenAndNow(of.visits, of.pictures, format)
  const model: HorsePage = {
    w: format.words,
    page: shellOfHorse(
      of,
      words.horse.title(horse.name, practice.name),
      photos.length > 0 ? ['compare'] : [],
    ),
    name: horse.name,
    identity: identityLine(of),
    seen: seenText(of),
    next: of.says.nextVisitSentence(assessment.nextVisit, format),
    cautions: standingGroups(of),
    ring: ringText(of),
    feet: feetPart(of),
    changed: changedPart(of, checkTexts(of, assessment.checks)),
    coming: nextPart(of),
    history: {
      grid: findingsGrid(of),
      photos,
      visits: of.visits.toReversed().map((visit) => visitLine(of, visit)),
      profile: profileFacts(of),
      background: horse.history,
      notes: horse.body.own,
      forOwner: horse.body.forOwner,
      forTeaching: horse.body.forTeaching,
    },
  }
  return { path: `${horse.id}/index.html`, template: 'practice/horse', model }
}

function seenText({ visits, format, words }: HorseCase): string {
  const [first] = visits
  const last = visits.at(-1)
  if (first === undefined || last === undefined) return words.horse.notSeen
  return words.horse.seen(visits.length, format.date(first.date), format.date(last.date))
}

function visitLine({ format, words }: HorseCase, visit: Visit): VisitLine {
  const about = words.visit.summary(visit.readings.length, visit.findings.length)
  return { text: format.date(visit.date), href: visitHref(visit.id), about }
}
