/** A visit's page: cautions, four-foot table, findings on the sole, pairs, photos, comfort, notes, care. */
import type { Visit } from '../../casebook/model.ts'
import { daysBetween } from '../../hoof/dates.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import type { AnyMeasureId } from '../../hoof/measures.ts'
import type { LevelDrawing, SoleDrawing } from '../shared/figures.ts'
import { capital } from '../shared/format.ts'
import type { PageView } from '../shared/page.ts'
import { photosOfVisit, type ShownPhoto } from '../shared/photos.ts'
import type { PageShell } from '../shared/shell.ts'
import type { Words } from '../words/index.ts'
import { type CautionGroup, groupsOfVisit } from './cautions.ts'
import { type ComfortPart, comfortPart, footHeads } from './comfort.ts'
import { levelOf, soleOf } from './drawings.ts'
import { pairTexts } from './feet-part.ts'
import { findingName, gradeName } from './findings.ts'
import { footTitle, type HorseCase, type Link, shellOfHorse, visitHref } from './horse-case.ts'
import { type VisitRow, visitRows } from './visit-table.ts'

export interface VisitPage {
  readonly w: Words
  readonly page: PageShell
  readonly horse: Link
  readonly heading: string
  readonly about: string
  readonly earlier: Link | null
  readonly later: Link | null
  readonly cautions: readonly CautionGroup[]
  readonly feet: readonly string[]
  readonly rows: readonly VisitRow[]
  readonly findings: readonly FootFindings[]
  readonly photos: readonly ShownPhoto[]
  readonly followed: readonly string[]
  readonly levels: readonly LevelDrawing[]
  readonly pairs: readonly string[]
  readonly hasPairs: boolean
  readonly comfort: ComfortPart
  readonly hasComfort: boolean
  readonly care: readonly string[]
  readonly next: string | null
  readonly notes: string
  readonly forOwner: string | null
  readonly forTeaching: string | null
}

interface FootFindings {
  readonly foot: string
  readonly lines: readonly { readonly text: string; readonly words: string | null }[]
  readonly sole: SoleDrawing | null
}

export function visitPage(of: HorseCase, visit: Visit): PageView {
  const { horse, words, format, visits } = of
  const place = visits.indexOf(visit)
  const date = format.date(visit.date)
  const heels = heelStates(of, visit)
  const pairs = pairTexts(of, pairsOfVisit(of, visit))
  const comfort = comfortPart(of, visit)
  const model: VisitPage = {
    w: format.words,
    page: shellOfHorse(of, words.visit.title(horse.name, date)),
    horse: { text: horse.name, href: 'index.html' },
    heading: words.visit.heading(date),
    about: aboutText(of, visit, place),
    earlier: neighbour(of, visits[place - 1], words.visit.earlier),
    later: neighbour(of, visits[place + 1], words.visit.later),
    cautions: groupsOfVisit(of, visit),
    feet: footHeads(of),
    rows: visitRows(of, visit.id),
    findings: feet.flatMap((foot) => footFindings(of, visit, place, foot)),
    photos: photosOfVisit(visit, of.pictures, format),
    followed: visit.growOut.map(({ what, foot, place: where, distance }) =>
      words.visit.followedAt(capital(what), format.foot(foot), where, format.length(distance)),
    ),
    levels: heels.map((state) => levelOf(of, state)),
    pairs,
    hasPairs: heels.length + pairs.length > 0,
    comfort,
    hasComfort: comfort.byFoot.length + comfort.facts.length > 0,
    care: visit.care,
    next: visit.nextVisit === null ? null : words.next.visit(format.date(visit.nextVisit)),
    notes: visit.body.own,
    forOwner: visit.body.forOwner,
    forTeaching: visit.body.forTeaching,
  }
  return { path: `${horse.id}/${visitHref(visit.id)}`, template: 'practice/visit', model }
}

function aboutText({ format, words, visits }: HorseCase, visit: Visit, place: number): string {
  const before = visits[place - 1]
  return [
    `${words.visit.ordinal(place + 1, visits.length)}${before === undefined ? '.' : ','}`,
    ...(before === undefined ? [] : [words.visit.span(format.span(daysBetween(before.date, visit.date)))]),
    ...(visit.footing === null ? [] : [words.visit.footing(visit.footing)]),
  ].join(' ')
}

const neighbour = (
  { format }: HorseCase,
  visit: Visit | undefined,
  text: (date: string) => string,
): Link | null =>
  visit === undefined ? null : { text: text(format.date(visit.date)), href: visitHref(visit.id) }

/** The findings of a foot, each with what it was at the visit before. */
function footFindings(of: HorseCase, visit: Visit, place: number, foot: Foot): readonly FootFindings[] {
  const { words, visits } = of
  const here = visit.findings.filter((finding) => finding.foot === foot)
  if (here.length === 0) return []
  const earlier = visits.slice(0, place).flatMap(({ findings }) => findings)
  const lines = here.map((finding, i) => {
    const was = earlier.findLast(
      (one) => one.foot === foot && one.what === finding.what && one.place === finding.place,
    )
    const course =
      was === undefined
        ? words.visit.gradeNew
        : was.grade === finding.grade
          ? words.visit.gradeSame
          : words.visit.gradeWas(gradeName(of, was.grade))
    const text = words.visit.findingLine(
      String(i + 1),
      capital(findingName(finding)),
      gradeName(of, finding.grade),
      course,
    )
    return { text, words: finding.words }
  })
  return [{ foot: footTitle(of, foot), lines, sole: soleOf(of, visit, foot) }]
}

/** Heels of each foot as this visit left them: after the trim, or on arrival where nothing was read after it. */
function heelStates({ assessment, readings }: HorseCase, visit: Visit) {
  const last = (foot: Foot, measure: AnyMeasureId) => {
    const here = readings.at(visit.id, measure).filter((reading) => reading.foot === foot)
    return (here.find(({ stage }) => stage === 'after') ?? here[0])?.value ?? null
  }
  return feet.flatMap((foot) => {
    const balance = last(foot, 'heel-balance')
    if (balance === null) return []
    const target = assessment.trends.find(
      (trend) => trend.foot === foot && trend.measure === 'heel-balance',
    )?.target
    const within =
      (target?.low == null || balance >= target.low) && (target?.high == null || balance <= target.high)
    return [{ foot, visit: visit.id, balance, tilt: last(foot, 'heel-tilt'), within }]
  })
}

/** After the trim where both stages were read. */
function pairsOfVisit({ assessment }: HorseCase, visit: Visit) {
  const here = assessment.pairs.filter((one) => one.visit === visit.id)
  return here.filter(
    (one) =>
      one.stage === 'after' ||
      !here.some(
        ({ pair, measure, stage }) => pair === one.pair && measure === one.measure && stage === 'after',
      ),
  )
}
