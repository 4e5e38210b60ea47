import type { BuildContext } from '../../build/builder.ts'
import type { FolderEntry } from '../../casebook/folder.ts'
import type { Edition, PageTools } from '../../editions/edition.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import type { LastRead } from './horse-reading.ts'
import type { KnownHorses } from './surveyed-horse.ts'

/** What is to be built. Folders are absolute. */
export interface SiteOptions {
  readonly casebook: string
  readonly site: string
  readonly asOf: PlainDate
  readonly editions: readonly Edition[]
  /** Those that the site may hold besides, from earlier builds; the usual ones where none are given. */
  readonly every?: readonly Edition[]
}

export interface SiteContext extends BuildContext {
  /** What pages are made with, loaded when first asked for. */
  openTools(): Promise<PageTools>
  /** How many horses are made at once, where many are to be made. */
  readonly threads: number
  /** Kept by a process that builds again and again: the casebook's listing, so that not every file is looked at again. */
  readonly listing?: { list(): readonly FolderEntry[] }
  /** Likewise: the horses as they were surveyed last. */
  readonly known?: KnownHorses
  /** Likewise: what was read of the horse that was read last. */
  readonly lastRead?: LastRead
}
