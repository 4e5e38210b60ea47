import type { Horse, Practice, Visit } from '../../casebook/model.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import type { Assessment } from '../../trend/assessment.ts'
import { cautionLevels, cautionLines, standingCautions, wordsOf } from '../shared/caution-lines.ts'
import { contactText, vetContact } from '../shared/contact.ts'
import type { SideDrawing } from '../shared/figures.ts'
import { visitsUpTo } from '../shared/findings.ts'
import type { OwnerFormatter } from '../shared/format.ts'
import type { OwnerInput } from '../shared/horse-input.ts'
import { movedOutline, sideDrawing } from '../shared/side.ts'
import type { OwnerWords } from '../words/index.ts'
import { changesOf, type Matter, mattersOf } from './changes.ts'
import { lookForOf } from './look-for.ts'
import { isInNumbers, meaningsOf, numbersOf } from './numbers.ts'
import { ownerPhotos } from './photos.ts'
import type { CareTask, ContactLine, HorseBrief, Letter, OwnerHorse, UrgentLine } from './view.ts'

/** The horse as its owner may see it; null where the owner's site has no consent or the horse no owner. */
export function presentOwnerHorse({
  horse,
  assessment,
  practice,
  pictures,
  format,
}: OwnerInput): OwnerHorse | null {
  if (!horse.consent.ownerSite || horse.owner === null) return null
  const { owner: words } = format.words
  const visits = visitsUpTo(horse, assessment.visits)
  const own = visits.filter(({ date }) => horse.ownerSince === null || date >= horse.ownerSince)
  const matters = mattersOf(assessment, visits, format)
  const changed = changedFeet(matters)
  const lookFor = lookForOf(assessment, visits, format)
  const photos = ownerPhotos(own, pictures, horse.consent.photos, changed, format)
  const [letter = null, ...lettersBefore] = lettersOf(horse, own, format)
  return {
    name: horse.name,
    seen: seenText(visits, format),
    since: sinceText(horse, visits.length > own.length, format),
    urgent: urgentOf(assessment, visits.at(-1)?.id, format),
    care: (own.at(-1) === visits.at(-1) ? (own.at(-1)?.care ?? []) : []).map((task) =>
      careTask(task, format),
    ),
    next: nextText(assessment, format),
    letter,
    lettersBefore,
    thenAndNow: photos.thenAndNow,
    drawing: photos.thenAndNow === null ? drawingOf(assessment, changed, format) : null,
    changes: changesOf(matters, visits.length, format),
    lookForHead: words.lookForHead(horse.name),
    lookFor: lookFor.lines,
    contacts: contactsOf(horse, practice, words),
    numbers: numbersOf(assessment, visits, lookFor.past, format),
    photos: photos.others,
    meanings: meaningsOf(
      assessment.trends.filter(isInNumbers).map(({ measure }) => measure),
      visits.flatMap(({ findings }) => findings.map(({ what }) => what)),
      practice.terms,
      format,
    ),
    brief: briefOf(assessment, format),
  }
}

/** The feet of which anything is told, the one with most first. */
function changedFeet(matters: readonly Matter[]): readonly Foot[] {
  const count = (foot: Foot) => matters.filter((one) => one.foot === foot).length
  return feet.filter((foot) => count(foot) > 0).toSorted((a, b) => count(b) - count(a))
}

/** Of the first foot whose outline shows a change. */
function drawingOf(
  assessment: Assessment,
  changed: readonly Foot[],
  format: OwnerFormatter,
): SideDrawing | null {
  const { owner: words } = format.words
  const [found] = changed.flatMap((foot) => movedOutline(assessment, foot) ?? [])
  if (found === undefined) return null
  const drawing = sideDrawing(found, format, words, ({ date }, which) =>
    (which === 'first' ? words.firstLabel : words.latestLabel)(format.shortDate(date)),
  )
  return { ...drawing, unread: drawing.unread === null ? null : words.notMeasured }
}

const sinceText = ({ ownerSince }: Horse, isAnyHidden: boolean, format: OwnerFormatter): string | null =>
  ownerSince !== null && isAnyHidden ? format.words.owner.ownSince(format.date(ownerSince)) : null

function seenText(visits: readonly Visit[], format: OwnerFormatter): string {
  const { owner: words } = format.words
  const first = visits[0]?.date
  const last = visits.at(-1)?.date
  if (first === undefined || last === undefined) return words.notSeen
  return words.seen(visits.length, format.date(first), format.date(last))
}

/** Cautions that stop the work or ask for the vet, gravest first, each once; then the feet that wait for the vet. */
function urgentOf(
  { cautions, heldFeet }: Assessment,
  lastVisit: string | undefined,
  format: OwnerFormatter,
): readonly UrgentLine[] {
  const { owner: words } = format.words
  const lines = cautionLines(
    standingCautions(cautions).filter(({ level }) => level !== 'mind'),
    format,
    (one) => wordsOf(format, one).owner(one.facts, format),
  ).map(({ level, text, visit, date, folded, opensLevel }) => ({
    level,
    word: opensLevel ? words.levels[level] : null,
    text: folded > 0 || visit === lastVisit ? text : words.since(text, format.date(date)),
  }))
  if (heldFeet.length === 0) return lines
  const held = words.planHeld(format.list(heldFeet.map(format.foot)))
  return [...lines, { level: lines.at(-1)?.level ?? 'vet', word: null, text: held }]
}

/** The numbers to ring, the vet's first. */
function contactsOf(horse: Horse, practice: Practice, words: OwnerWords['owner']): readonly ContactLine[] {
  const vet = vetContact(horse, practice)
  const dial = (phone: string) => phone.replace(/[^+\d]/g, '')
  const ours = practice.contacts.practice
  return [
    ...(vet === null ? [] : [{ text: words.vetIs(contactText(vet)), dial: dial(vet.phone ?? '') }]),
    ...(ours === null ? [] : [{ text: words.practiceIs(ours), dial: dial(ours) }]),
  ]
}

/** Newest first; what is said of the horse at large comes last. */
function lettersOf(horse: Horse, visits: readonly Visit[], format: OwnerFormatter): readonly Letter[] {
  const { owner: words } = format.words
  const fromVisits = visits
    .toReversed()
    .flatMap((visit) =>
      visit.body.forOwner === null
        ? []
        : [{ head: words.letterFrom(format.date(visit.date)), text: visit.body.forOwner }],
    )
  const about = horse.body.forOwner
  return about === null ? fromVisits : [...fromVisits, { head: words.letterAbout(horse.name), text: about }]
}

const careTask = (task: string, { weekdays, words }: OwnerFormatter): CareTask => ({
  task,
  ticks: weekdays.map((day) => ({ day, label: words.owner.careTick(day, task) })),
})

/** What an overdue visit is said of stands in the words of its caution, here and nowhere else. */
function nextText({ nextVisit, asOf, cautions }: Assessment, format: OwnerFormatter): string {
  const { owner: words } = format.words
  const { due } = nextVisit
  if (due === null) return words.nextNone
  if (due >= asOf) return words.next(format.date(due))
  const overdue = standingCautions(cautions).find(({ code }) => code === 'visit-overdue')
  const ask = overdue && wordsOf(format, overdue).owner(overdue.facts, format)
  return words.nextOverdue(format.date(due), ask ?? words.nextAsk)
}

function briefOf({ nextVisit, asOf, cautions }: Assessment, format: OwnerFormatter): HorseBrief {
  const { owner: words } = format.words
  const { due } = nextVisit
  const standing = standingCautions(cautions)
  const level = cautionLevels.find((one) => standing.some((caution) => caution.level === one)) ?? null
  const isUrgent = level === 'stop' || level === 'vet'
  return {
    level: isUrgent ? level : null,
    word: isUrgent ? words.levels[level] : null,
    next:
      due === null ? words.indexNone : (due < asOf ? words.indexOverdue : words.indexNext)(format.date(due)),
  }
}
