/**
 * Which consents are in force, and which folders of the site rest on one that is not. What a folder rests on is written
 * into the site's own record, so that any build sees a withdrawal, whatever its editions and whatever it remembers.
 */
import type { RestsOn, SiteRecord } from '../../build/disk/own-files.ts'
import type { OwnersConsent } from '../../casebook/read.ts'
import { type Addresses, type Edition, isForOthers } from '../../editions/edition.ts'
import type { HorseRecord } from './horse-job.ts'

export interface Consents {
  /** As folders name what they rest on. */
  readonly inForce: ReadonlySet<string>
  /** Horses of which nobody can say, since horse.md holds an error. */
  readonly unread: ReadonlySet<string>
}

/** `juno: portfolio`: the horse stands first, so that it can be told whose consent it is. */
const grant = (horse: string, to: string) => `${horse}: ${to}`
const horseOf = (granted: string) => granted.slice(0, granted.indexOf(':'))

const toOwner = ({ owner, ownerSince }: OwnersConsent) =>
  `owner site of ${owner}${ownerSince === null ? '' : ` since ${ownerSince}`}`

export function consentsOf(records: readonly Pick<HorseRecord, 'id' | 'consent'>[]): Consents {
  const inForce = records.flatMap(({ id, consent }) => {
    if (consent === null) return []
    const isOwners = consent.ownerSite && consent.owner !== null
    return [
      ...(consent.portfolio ? [grant(id, 'portfolio')] : []),
      ...(consent.photos ? [grant(id, 'photos')] : []),
      ...(isOwners ? [grant(id, toOwner(consent))] : []),
    ]
  })
  const unread = records.flatMap(({ id, consent }) => (consent === null ? [id] : []))
  return { inForce: new Set(inForce), unread: new Set(unread) }
}

/** What the folders of these editions rest on. */
export function restsOn(
  editions: readonly Edition[],
  records: readonly HorseRecord[],
  addresses: Readonly<Record<string, Addresses>>,
): RestsOn {
  const folders = new Map<string, string[]>()
  for (const { name, folder, shownIn } of editions) {
    for (const { id, kept, consent } of shownIn ? records : []) {
      const shown = kept[name] === undefined ? null : shownIn?.of(kept[name], addresses[name] ?? {})
      if (consent === null || shown === null || shown === undefined) continue
      const needed = shownIn?.consent === 'portfolio' ? 'portfolio' : toOwner(consent)
      const granted = [grant(id, needed), ...(consent.photos ? [grant(id, 'photos')] : [])]
      const place = `${folder}/${shown}`
      folders.set(place, [...(folders.get(place) ?? []), ...granted])
    }
  }
  return folders
}

/** A folder, and the consents under it that ended. */
export interface Withdrawn {
  readonly folder: string
  readonly ended: readonly string[]
}

export const horsesOf = (withdrawn: readonly Withdrawn[]): ReadonlySet<string> =>
  new Set(withdrawn.flatMap(({ ended }) => ended.map(horseOf)))

/** @param alsoUnread whether what nobody can be sure of counts as ended in this folder */
export function withdrawnIn(
  standing: RestsOn | null,
  { inForce, unread }: Consents,
  alsoUnread: (folder: string) => boolean,
): readonly Withdrawn[] {
  return [...(standing ?? [])].flatMap(([folder, rests]) => {
    const isEnded = (one: string) => !inForce.has(one) && (!unread.has(horseOf(one)) || alsoUnread(folder))
    const ended = rests.filter(isEnded)
    return ended.length === 0 ? [] : [{ folder, ended }]
  })
}

/** Folders that show a horse to this owner. */
export const foldersOfOwner = (standing: RestsOn | null, owner: string): readonly string[] =>
  [...(standing ?? [])].flatMap(([folder, rests]) =>
    rests.some(
      (one) => one.endsWith(`: owner site of ${owner}`) || one.includes(`: owner site of ${owner} since `),
    )
      ? [folder]
      : [],
  )

/**
 * Editions that must be built though nobody asked for them, since a consent under them has ended, or since nobody knows
 * on which consents what stands there rests: the site is from before that was written down.
 */
export function unaskedEditions(
  { editions, every }: { readonly editions: readonly Edition[]; readonly every: readonly Edition[] },
  { files, restsOn: standing }: Pick<SiteRecord, 'files' | 'restsOn'>,
  consents: Consents,
): readonly Edition[] {
  const ended = withdrawnIn(standing, consents, () => false).map(({ folder }) => folder)
  const concerned = standing === null ? [...files.keys()] : ended
  const names = new Set(editions.map(({ name }) => name))
  return every.filter(
    (edition) =>
      isForOthers(edition) &&
      !names.has(edition.name) &&
      concerned.some((path) => path.startsWith(`${edition.folder}/`)),
  )
}
