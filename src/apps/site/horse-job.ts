/** What is handed to a thread that makes horses, and what it hands back: plain data. */
import type { Output } from '../../build/disk/staging.ts'
import type { BuildPaths } from '../../build/unit.ts'
import type { Diagnostic } from '../../casebook/diagnostic.ts'
import type { FolderEntry } from '../../casebook/folder.ts'
import type { Practice } from '../../casebook/model.ts'
import type { OwnersConsent } from '../../casebook/read.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import type { HorseIdentity } from '../../identity/identifiers.ts'
import type { Learned } from '../../trend/model/learned.ts'

/** A file of the casebook, with the hash of its content as surveyed; null for what is no file. */
export interface SourceFile extends FolderEntry {
  readonly hash: string | null
}

/** The first round of a build reads each horse, and keeps what was read and what it teaches. */
export interface ReadJob {
  readonly round: 'read'
  readonly id: string
  readonly practice: Practice
  readonly asOf: PlainDate
  readonly files: readonly SourceFile[]
}

/** The unit of the build that reads a horse. */
export const readUnit = (horse: string): string => `${horse}: read`

/** What is known of a horse once it is read: names of texts in the fragment cache. */
export interface ReadNotes {
  /** Null where a fault of this program ended the reading: it is tried again with the pages, and told there. */
  readonly read: string | null
  /** Null where nothing of it teaches: its files hold errors. */
  readonly teaching: string | null
}

/** The second round makes its pages, under what all horses teach. */
export interface HorseJob {
  readonly round: 'pages'
  readonly id: string
  readonly practice: Practice
  readonly asOf: PlainDate
  /** Null where it is to be read anew. */
  readonly read: ReadNotes['read']
  readonly learned: Learned
  /** Names of the editions that are built. */
  readonly editions: readonly string[]
  readonly files: readonly SourceFile[]
  /** Hashes of what is approved to leave of it. */
  readonly approved: readonly string[]
  readonly lastApproved: LastApproved
}

/** What was last published of a horse with all of it approved, by edition. */
export type LastApproved = Readonly<Record<string, ApprovedPages>>

export interface ApprovedPages {
  /** What the edition keeps of it. */
  readonly kept: unknown
  /** Paths within the site. */
  readonly files: readonly Pick<Output, 'path' | 'hash'>[]
  /** Names of what it keeps in the fragment cache. */
  readonly fragments: readonly string[]
  /** As `Reviewed` of the edition had it. */
  readonly madeUnder: string
}

/** What a build knows of a horse besides its pages: made with them, kept with them. Small, since a practice has many. */
export interface HorseRecord {
  readonly id: string
  readonly diagnostics: readonly Diagnostic[]
  /** By what anyone could know the horse: also where its files hold errors, as far as they can be read. */
  readonly identity: HorseIdentity
  /** What was consented to; null where horse.md holds an error. */
  readonly consent: OwnersConsent | null
  /** Whether its files hold an error, so that no page is made. */
  readonly isBroken: boolean
  /** What each edition that shows it keeps of it, by the edition's name. */
  readonly kept: Readonly<Record<string, unknown>>
  /** How many sentences and photographs wait for approval, whatever editions are built: its own, and the practice's. */
  readonly waiting: { readonly own: number; readonly ofPractice: number }
  readonly lastApproved: LastApproved
}

/** Where a thread finds and leaves things. */
export interface SitePaths extends BuildPaths {
  readonly casebook: string
  /** Processed pictures, kept between builds. */
  readonly pictures: string
}
