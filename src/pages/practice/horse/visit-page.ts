/** A visit's page: cautions, note and care, what really changed, soles, photographs, readings; the rest folded. */
import type { Visit } from '../../../casebook/model.ts'
import { daysBetween } from '../../../hoof/dates.ts'
import { type Foot, feet } from '../../../hoof/feet.ts'
import type { AnyMeasureId } from '../../../hoof/measures.ts'
import { z975 } from '../../../trend/student.ts'
import { drawnTogether } from '../../shared/drawn-together.ts'
import type { SoleDrawing, Table } from '../../shared/figures.ts'
import { findingName } from '../../shared/findings.ts'
import { capital } from '../../shared/format.ts'
import type { PageView } from '../../shared/page.ts'
import { photosOfVisit, type ShownPhoto } from '../../shared/photos.ts'
import type { PageShell } from '../../shared/shell.ts'
import type { Words } from '../../words/index.ts'
import { type DividedNote, divided } from '../case/divided-note.ts'
import { footTitle, type HorseCase, type Link, shellOfHorse, visitHref } from '../case/horse-case.ts'
import { type CautionGroup, groupsOfVisit } from '../parts/cautions.ts'
import { type ComfortPart, comfortPart, footHeads } from '../parts/comfort.ts'
import { heelText, soleOf } from '../parts/drawings.ts'
import { gradeName, seenBefore } from '../parts/findings.ts'
import { realPairTexts } from '../parts/pairs.ts'
import { trimChanges, type VisitRow, visitReadings } from '../parts/visit-table.ts'

export interface VisitPage {
  readonly w: Words
  readonly page: PageShell
  readonly horse: Link
  readonly heading: string
  readonly about: string
  readonly earlier: Link | null
  readonly later: Link | null
  readonly cautions: readonly CautionGroup[]
  readonly notes: DividedNote
  readonly care: readonly string[]
  readonly next: string | null
  /** A sentence a measure that the trim changed, and a finding that came, went or moved. */
  readonly changed: readonly string[]
  readonly findings: readonly FootFindings[]
  /** What of the soles was not measured. */
  readonly soleNotes: readonly string[]
  readonly photos: readonly ShownPhoto[]
  readonly feet: readonly string[]
  readonly rows: readonly VisitRow[]
  readonly limits: string | null
  readonly onPhotos: Table | null
  readonly followed: readonly string[]
  readonly pairs: readonly string[]
  readonly comfort: ComfortPart
  readonly hasComfort: boolean
  readonly forOwner: string | null
  readonly forTeaching: string | null
}

/** The rest of a longer note is folded. */
const longNote = 700

interface FootFindings {
  readonly foot: string
  readonly lines: readonly { readonly text: string; readonly words: string | null }[]
  readonly sole: SoleDrawing | null
}

export function visitPage(of: HorseCase, visit: Visit): PageView {
  const { horse, words, format, visits } = of
  const place = visits.indexOf(visit)
  const date = format.date(visit.date)
  const pairs = [...heelTexts(of, visit), ...realPairTexts(of, pairsOfVisit(of, visit), visit.date)]
  const comfort = comfortPart(of, visit)
  const photos = photosOfVisit(visit, of.pictures, format)
  const findings = feet.flatMap((foot) => footFindings(of, visit, place, foot))
  const soleNotes = drawnTogether(findings.flatMap(({ sole }) => sole ?? [])).notes
  const model: VisitPage = {
    w: format.words,
    page: shellOfHorse(of, words.visit.title(horse.name, date)),
    horse: { text: horse.name, href: 'index.html' },
    heading: words.visit.heading(date),
    about: aboutText(of, visit, place),
    earlier: neighbour(of, visits[place - 1], words.visit.earlier),
    later: neighbour(of, visits[place + 1], words.visit.later),
    cautions: groupsOfVisit(of, visit),
    notes: divided(visit.body.own, longNote),
    care: visit.care,
    next: visit.nextVisit === null ? null : words.next.visit(format.date(visit.nextVisit)),
    changed: [...trimSentences(of, visit), ...findingSentences(of, visit, place)],
    findings: findings.map((one) => ({ ...one, sole: one.sole && { ...one.sole, unread: null } })),
    soleNotes,
    photos,
    feet: footHeads(of),
    ...visitReadings(of, visit.id),
    onPhotos: photoTable(of, photos),
    followed: visit.growOut.map(({ what, foot, place: where, distance }) =>
      words.visit.followedAt(capital(what), format.foot(foot), where, format.length(distance)),
    ),
    pairs,
    comfort,
    hasComfort: comfort.table.rows.length + comfort.facts.length > 0,
    forOwner: visit.body.forOwner,
    forTeaching: visit.body.forTeaching,
  }
  return { path: `${horse.id}/${visitHref(visit.id)}`, template: 'practice/visit', model }
}

/** What the trim changed beyond the errors of both readings. */
const trimSentences = (of: HorseCase, visit: Visit): readonly string[] =>
  trimChanges(of, visit.id).flatMap(({ measure, feet: changed }) => {
    const { format, words } = of
    const real = changed.filter(({ isReal }) => isReal)
    const said = real.map(({ foot, change }) => words.visit.changedAt(foot, change))
    return real.length === 0
      ? []
      : [words.visit.trimChanged(capital(format.name(measure)), format.list(said))]
  })

/** Findings that came, went or moved since they were last seen; at a first visit nothing has changed. */
function findingSentences(of: HorseCase, visit: Visit, place: number): readonly string[] {
  if (place === 0) return []
  const w = of.words.visit
  return visit.findings.flatMap((finding) => {
    const was = seenBefore(of.visits.slice(0, place), finding)
    const name = `${finding.foot} ${findingName(finding)}`
    const now = gradeName(of, finding.grade)
    if (was === undefined) return finding.grade > 0 ? [w.findingNew(name, now)] : []
    return was.grade === finding.grade ? [] : [w.findingMoved(name, gradeName(of, was.grade), now)]
  })
}

function photoTable({ format }: HorseCase, photos: readonly ShownPhoto[]): Table | null {
  const rows = photos.flatMap(({ subject, values }) =>
    values.map(({ name, value, error }) => [`${subject}: ${name}`, value, error]),
  )
  const { measured, measure, value, error } = format.words.photos
  return rows.length === 0 ? null : { caption: measured, head: [measure, value, error], rows }
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

/** The findings of a foot, each with what it was when it was last seen. */
function footFindings(of: HorseCase, visit: Visit, place: number, foot: Foot): readonly FootFindings[] {
  const { words } = of
  const here = visit.findings.filter((finding) => finding.foot === foot)
  if (here.length === 0) return []
  const lines = here.map((finding, i) => {
    const was = seenBefore(of.visits.slice(0, place), finding)
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
  const sole = soleOf(of, visit, foot)
  return [{ foot: footTitle(of, foot), lines, sole }]
}

/** Heels of each foot as this visit left them, both figures of one stage; a difference within its error is none. */
function heelTexts(of: HorseCase, visit: Visit): readonly string[] {
  const { readings, format, words } = of
  const at = (foot: Foot, measure: AnyMeasureId) =>
    readings.at(visit.id, measure).filter((reading) => reading.foot === foot)
  return feet.flatMap((foot) => {
    const here = at(foot, 'heel-balance')
    const reading = here.find(({ stage }) => stage === 'after') ?? here[0]
    if (reading === undefined || Math.abs(reading.value) < z975 * reading.sd) return []
    const tilt = at(foot, 'heel-tilt').find(({ stage }) => stage === reading.stage)
    const said = heelText(of, reading.value)
    return tilt === undefined
      ? [words.visit.levelTitle(footTitle(of, foot), said)]
      : [words.visit.levelTilted(footTitle(of, foot), said, format.fine('heel-tilt', Math.abs(tilt.value)))]
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
