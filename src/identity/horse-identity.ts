import type { Contact, Horse } from '../casebook/model.ts'
import { type PlainDate, parseDate } from '../hoof/dates.ts'

/** What of one horse identifies. Small and plain: kept between builds. */
export interface HorseIdentity {
  readonly id: string
  readonly name: string
  readonly owner: string | null
  readonly privateWords: readonly string[]
  /** Its own vet. */
  readonly vet: Contact
  /** Names of its pictures, without folders. */
  readonly files: readonly string[]
  readonly dates: readonly PlainDate[]
}

const baseName = (path: string) => path.slice(path.lastIndexOf('/') + 1)

/** What of a horse identifies it, out of everything that its files said. */
export function identityOf(horse: Horse): HorseIdentity {
  const dates = [
    horse.started,
    horse.consent.given,
    horse.born === null ? null : parseDate(horse.born),
    ...horse.visits.flatMap((visit) => [visit.date, visit.nextVisit]),
  ].filter((date): date is PlainDate => date !== null)
  return {
    id: horse.id,
    name: horse.name,
    owner: horse.owner,
    privateWords: horse.privateWords,
    vet: { name: horse.vet.name, phone: horse.vet.phone },
    files: [...new Set(horse.visits.flatMap((visit) => visit.photos.map((photo) => baseName(photo.file))))],
    dates: [...new Set(dates)].sort(),
  }
}
