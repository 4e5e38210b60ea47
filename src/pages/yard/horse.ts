/** One horse on the yard page: what is needed with a foot in hand, without a link to anything that is not there. */
import { feet } from '../../hoof/feet.ts'
import type { YardHorse } from '../../yard/payload.ts'
import { type HorseCase, openCase } from '../practice/case/horse-case.ts'
import { identityLine } from '../practice/case/profile.ts'
import { todayPart } from '../practice/horse/today.ts'
import { summaryOf } from '../practice/over-all/summary.ts'
import { linesByFoot } from '../practice/parts/cautions.ts'
import { type ProblemsPart, type ProblemView, problemsPart } from '../practice/parts/problems.ts'
import { lastReadings } from '../practice/sheets/field-sheet.ts'
import { vetContact } from '../shared/contact.ts'
import { capital } from '../shared/format.ts'
import type { HorseInput } from '../shared/horse-input.ts'
import type { PageView } from '../shared/page.ts'
import { subjectOf } from '../shared/photos.ts'
import type { Words } from '../words/index.ts'

/** The latest picture of a foot. */
export interface YardPhoto {
  /** As the visit names it, within the horse's folder. */
  readonly file: string
  readonly caption: string
}

export interface YardHorsePage {
  readonly w: Words
  readonly identity: string
  readonly seen: string
  readonly due: string
  readonly cautions: ReturnType<typeof linesByFoot>
  readonly ring: Ring | null
  readonly allowed: readonly string[]
  readonly wall: readonly string[]
  readonly note: { readonly head: string; readonly text: string } | null
  readonly problems: ProblemsPart
  readonly readings: ReadingsTable | null
  readonly photos: readonly { readonly src: string; readonly caption: string }[]
}

/** A number to tap. */
interface Ring {
  readonly text: string
  readonly phone: string
  readonly href: string
}

interface ReadingsTable {
  readonly note: string
  readonly feet: readonly string[]
  readonly rows: readonly { readonly name: string; readonly cells: readonly Cell[] }[]
}

interface Cell {
  readonly value: string
  /** Null where it is of the last visit. */
  readonly date: string | null
}

/** The line of the day's list. */
export function yardHorse(input: HorseInput): Omit<YardHorse, 'isBroken'> {
  const { id, name, owner, lastVisit, due, worst, problems } = summaryOf(openCase(input))
  const { flags, neverSeen } = input.format.words.practice.front
  return {
    id,
    name,
    owner,
    due,
    flag: worst && { level: worst.level, text: flags[worst.level](worst.feet) },
    problems: lastVisit === null ? neverSeen : problems,
  }
}

/** The latest picture of each foot that can be shown. */
export function latestPhotos({ horse, assessment, pictures, format }: HorseInput): readonly YardPhoto[] {
  const known = horse.visits.filter(({ id }) => assessment.visits.includes(id))
  return feet.flatMap((foot) => {
    const shots = known.flatMap(({ date, photos }) =>
      photos
        .filter((photo) => photo.foot === foot && pictures.has(photo.file))
        .map((photo) => ({ photo, date })),
    )
    const last = shots.at(-1)
    if (last === undefined) return []
    const caption = format.words.yard.horse.photo(
      capital(subjectOf(last.photo, format)),
      format.shortDate(last.date),
    )
    return [{ file: last.photo.file, caption }]
  })
}

/** @param photos with the bytes as data URIs */
export function yardHorsePage(input: HorseInput, photos: YardHorsePage['photos']): PageView {
  const of = openCase(input)
  const { format, assessmentWords, assessment, words, visits } = of
  const last = visits.at(-1)
  const { allowed, wall } = todayPart(of)
  const note = last?.body.own.trim() ?? ''
  const model: YardHorsePage = {
    w: format.words,
    identity: identityLine(of),
    seen: last === undefined ? words.horse.notSeen : words.horse.seen(format.date(last.date), visits.length),
    due: assessmentWords.nextVisitSentence(assessment.nextVisit, format),
    cautions: linesByFoot(of),
    ring: ringOf(of),
    allowed,
    wall,
    note:
      last === undefined || note === ''
        ? null
        : { head: format.words.yard.horse.note(format.date(last.date)), text: note },
    problems: withoutLinks(problemsPart(of)),
    readings: readingsTable(of),
    photos,
  }
  return { path: `${input.horse.id}.html`, template: 'yard/horse', model }
}

function ringOf({ horse, practice, format }: HorseCase): Ring | null {
  const contact = vetContact(horse, practice)
  if (contact?.phone === null || contact === null) return null
  const w = format.words.yard.horse
  return {
    text: contact.name === null ? w.vet : w.vetNamed(contact.name),
    phone: contact.phone,
    href: `tel:${contact.phone.replace(/[^\d+]/g, '')}`,
  }
}

/** All measures stand on pages that a phone does not have. */
function withoutLinks(part: ProblemsPart): ProblemsPart {
  const unlinked = (view: ProblemView): ProblemView => ({ ...view, href: null })
  return { ...part, open: part.open.map(unlinked), more: part.more.map(unlinked) }
}

function readingsTable(of: HorseCase): ReadingsTable | null {
  const rows = lastReadings(of)
  const last = of.visits.at(-1)
  if (rows.length === 0 || last === undefined) return null
  return {
    note: of.format.words.yard.horse.readOn(of.format.date(last.date)),
    feet,
    rows: rows.map(({ name, cells }) => ({
      name,
      cells: cells.map((cell) => ({ value: cell?.figure ?? '', date: cell?.date ?? null })),
    })),
  }
}
