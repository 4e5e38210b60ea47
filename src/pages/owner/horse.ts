import type { Horse, Practice, Visit } from '../../casebook/model.ts'
import { feet } from '../../hoof/feet.ts'
import { type Assessment, type GrowOut, standingOf } from '../../trend/assessment.ts'
import { cautionLines, standingCautions } from '../shared/caution-lines.ts'
import { contactText, vetContact } from '../shared/contact.ts'
import type { TrendChart } from '../shared/figures.ts'
import { findingStories, visitsUpTo } from '../shared/findings.ts'
import { type Formatter, monthText } from '../shared/format.ts'
import type { HorseInput } from '../shared/horse-input.ts'
import { sideDrawing } from '../shared/side.ts'
import { type ChartWords, trendChart } from '../shared/trend-chart.ts'
import type { Words } from '../words/index.ts'
import { ownerMeasureIds } from '../words/keys.ts'
import { ownerFindings } from './findings.ts'
import { photoPairs } from './photos.ts'
import { type Reported, statementsOf } from './statements.ts'
import type { CareTask, Mood, OwnerFoot, OwnerHorse } from './view.ts'

/** The horse as its owner may see it; null where the owner's site has no consent or the horse no owner. */
export function presentOwnerHorse({
  horse,
  assessment,
  practice,
  pictures,
  format,
}: HorseInput): OwnerHorse | null {
  if (!horse.consent.ownerSite || horse.owner === null) return null
  const visits = visitsUpTo(horse, assessment.visits)
  const own = visits.filter(({ date }) => horse.ownerSince === null || date >= horse.ownerSince)
  const reported = feet.map((foot) => ({ foot, reported: statementsOf(assessment, foot, format) }))
  const all = reported.flatMap((one) => one.reported)
  const chart = ownerChart(assessment, format)
  return {
    name: horse.name,
    seen: seenText(visits, format),
    since: sinceText(horse, visits.length > own.length, format),
    urgent: urgentOf(assessment, visits.at(-1)?.id, format),
    contacts: contactsOf(horse, practice, format.words.owner),
    glance: glanceOf(
      horse.name,
      all.map(({ statement }) => statement.mood),
      format.words.owner,
    ),
    photos: photoPairs(own, pictures, horse.consent.photos, format),
    assumed: assessment.geometry.some(
      ({ first, latest }) => first.assumed.length + latest.assumed.length > 0,
    ),
    feet: reported.flatMap((one) => footOf(one.foot, one.reported, assessment, format)),
    meanings: meaningsOf(all, format.words.owner),
    findings: ownerFindings(findingStories(visits), practice.terms, visits.length - 1, format),
    growOut: assessment.growOut.map((feature) => growSentence(feature, assessment, format)),
    plans: planSentences(assessment, format),
    letters: lettersOf(horse, own, format),
    care: (isLatest(own, visits) ? (own.at(-1)?.care ?? []) : []).map((task) => careTask(task, format)),
    next: nextText(assessment, format),
    chart,
  }
}

/** What to do was said to whoever had the horse then. */
const isLatest = (own: readonly Visit[], all: readonly Visit[]) => own.at(-1) === all.at(-1)

const sinceText = ({ ownerSince }: Horse, isAnyHidden: boolean, format: Formatter): string | null =>
  ownerSince !== null && isAnyHidden ? format.words.owner.ownSince(format.date(ownerSince)) : null

function seenText(visits: readonly Visit[], format: Formatter): string {
  const { owner: words } = format.words
  const first = visits[0]?.date
  const last = visits[visits.length - 1]?.date
  if (first === undefined || last === undefined) return words.notSeen
  return words.seen(visits.length, format.date(first), format.date(last))
}

/** Cautions in force, the gravest first; of what the last visit did not speak, with its day. */
const urgentOf = (
  { cautions }: Assessment,
  lastVisit: string | undefined,
  format: Formatter,
): OwnerHorse['urgent'] =>
  cautionLines(standingCautions(cautions), format, (said, facts) => said.owner(facts, format)).map(
    ({ level, text, visit, date, folded, opensLevel }) => ({
      level,
      word: opensLevel ? format.words.owner.levels[level] : null,
      text: folded > 0 || visit === lastVisit ? text : format.words.owner.since(text, format.date(date)),
    }),
  )

/** How many things go which way: a count of verdicts, nothing more. */
function glanceOf(name: string, moods: readonly Mood[], words: Words['owner']): string[] {
  if (moods.length === 0) return [words.glanceNone]
  const count = (mood: Mood) => moods.filter((one) => one === mood).length
  const counts: readonly (readonly [number, (n: number) => string])[] = [
    [count('bad'), words.glanceBad],
    [count('good'), words.glanceGood],
    [count('steady'), words.glanceSteady],
    [count('moving'), words.glanceMoving],
    [count('early'), words.glanceEarly],
    [count('waits'), words.glanceWaits],
  ]
  return [words.glance(name, moods.length), ...counts.flatMap(([n, text]) => (n === 0 ? [] : [text(n)]))]
}

function footOf(
  foot: (typeof feet)[number],
  reported: readonly Reported[],
  assessment: Assessment,
  format: Formatter,
): OwnerFoot[] {
  const { owner: words } = format.words
  const geometry = assessment.geometry.find((one) => one.foot === foot)
  if (reported.length === 0 && geometry === undefined) return []
  const label = (which: 'first' | 'latest') => (which === 'first' ? words.firstLabel : words.latestLabel)
  return [
    {
      foot: format.foot(foot),
      // What stands in for readings is said once for all four feet, in this reader's words.
      side: geometry
        ? {
            ...sideDrawing(geometry, format, words, (view, which) =>
              label(which)(format.shortDate(view.date)),
            ),
            unread: null,
          }
        : null,
      statements: reported.map(({ statement }) => statement),
    },
  ]
}

const meaningsOf = (reported: readonly Reported[], words: Words['owner']): string[] =>
  ownerMeasureIds
    .filter((id) => reported.some(({ measure }) => measure === id))
    .map((id) => words.measures[id].meaning)

function growSentence(feature: GrowOut, { asOf }: Assessment, format: Formatter): string {
  const { owner: words } = format.words
  const where = words.places[feature.place] ?? feature.place
  const what = where === '' ? feature.feature : `${feature.feature} ${where}`
  const foot = format.foot(feature.foot)
  const month = (date: string) => monthText(date, asOf, format)
  if (feature.state === 'grown out') return words.grownOut(what, foot)
  if (feature.date === null || feature.earliest === null) return words.growUnknown(what, foot)
  return feature.latest === null
    ? words.growingOpen(what, foot, month(feature.date), month(feature.earliest))
    : words.growing(what, foot, month(feature.date), month(feature.earliest), month(feature.latest))
}

/** No amounts, and nothing of a foot that waits for a vet but that it waits. */
function planSentences({ plans, heldFeet }: Assessment, format: Formatter): string[] {
  const { owner: words } = format.words
  const going = plans.map((plan) => {
    const sentence = plan.measure === 'heel-balance' ? words.planHeels : words.planToe
    return `${sentence(format.foot(plan.foot), plan.trims)} ${words.planStanding[plan.standing]}`
  })
  return [...(heldFeet.length > 0 ? [words.planHeld(format.list(heldFeet.map(format.foot)))] : []), ...going]
}

/** The numbers to ring, the vet's first. */
function contactsOf(horse: Horse, practice: Practice, words: Words['owner']): readonly string[] {
  const vet = vetContact(horse, practice)
  return [
    ...(vet === null ? [] : [words.vetIs(contactText(vet))]),
    ...(practice.contacts.practice === null ? [] : [words.practiceIs(practice.contacts.practice)]),
  ]
}

function lettersOf(
  horse: Horse,
  visits: readonly Visit[],
  format: Formatter,
): { head: string; text: string }[] {
  const { owner: words } = format.words
  const fromVisits = [...visits]
    .reverse()
    .flatMap((visit) =>
      visit.body.forOwner === null
        ? []
        : [{ head: words.letterFrom(format.date(visit.date)), text: visit.body.forOwner }],
    )
  const about = horse.body.forOwner
  return about === null ? fromVisits : [...fromVisits, { head: words.letterAbout(horse.name), text: about }]
}

const careTask = (task: string, { weekdays, words }: Formatter): CareTask => ({
  task,
  ticks: weekdays.map((day) => ({ day, label: words.owner.careTick(day, task) })),
})

function nextText({ nextVisit }: Assessment, format: Formatter): string {
  const { owner: words } = format.words
  if (nextVisit.due === null) return words.nextNone
  const date = format.date(nextVisit.due)
  return nextVisit.overdueDays !== null && nextVisit.overdueDays > 0
    ? words.nextOverdue(date)
    : words.next(date)
}

/** One chart, the most telling: heels where they stood far apart, else the slope of the front. */
function ownerChart(assessment: Assessment, format: Formatter): TrendChart | null {
  const { owner: words } = format.words
  const uneven = assessment.trends.some(
    ({ measure, first }) => measure === 'heel-balance' && Math.abs(first.value) >= 5,
  )
  const measure = uneven ? 'heel-balance' : 'toe-angle'
  const trends = assessment.trends.filter(
    (trend) => trend.measure === measure && trend.family === 'gauge' && trend.n >= 3,
  )
  const time = {
    title: words.chartTime,
    at: (date: string) => ({ date }),
    text: (date: string) => format.date(date),
  }
  // Which heel is the higher is for the drawing; the sentence says how far apart they stand.
  const bare = (text: string) => text.replace(/^\u2212/, '')
  const apart: ChartWords = {
    ...words,
    chartFoot: (foot, first, last, note) => words.chartApart(foot, bare(first), bare(last), note),
  }
  const said = uneven ? apart : words
  return trendChart(assessment, trends, format, time, said, (trend) => words.verdicts[standingOf(trend)])
}
