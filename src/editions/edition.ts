/** What an edition is: pages for one kind of reader. Each has a file of its own here, and a line in `index.ts`. */
import type { Assets, AssetTexts } from '../build/assets.ts'
import type { Builder } from '../build/builder.ts'
import type { MadeFile } from '../build/disk/staging.ts'
import type { Unit, UnitOutput } from '../build/unit.ts'
import type { Diagnostic } from '../casebook/diagnostic.ts'
import type { Practice } from '../casebook/model.ts'
import type { PlainDate } from '../hoof/dates.ts'
import type { LengthUnit } from '../hoof/units.ts'
import type { Reviewed } from '../identity/approvals.ts'
import type { OwnWords } from '../identity/common-words.ts'
import type { LeakGuard } from '../leaks/guard.ts'
import type { Formatter } from '../pages/shared/format.ts'
import type { HorseInput } from '../pages/shared/horse-input.ts'
import type { PageView } from '../pages/shared/page.ts'
import type { Words } from '../pages/words/index.ts'
import type { PictureStore } from '../pictures/store.ts'
import type { Renderer } from '../render/renderer.ts'
import type { PracticeLessons } from '../trend/model/practice.ts'
import type { ForOwners } from './owner/page-tools.ts'

/**
 * `Kept` is what it keeps of each horse from build to build, for its pages over all of them: plain data, and small.
 * Edition files are loaded at every start, so they import what is heavy where they use it.
 */
export interface Edition<Kept = unknown> {
  /** As `--edition` names it. */
  readonly name: string
  /** Where it stands below the site; nothing else writes there. */
  readonly folder: string
  /** Whether the pages of a horse with errors stay as they were last built; else they go. */
  readonly keepsBroken: boolean
  readonly assets: Assets
  /** In which folder of an edition for others a horse is shown, and on which consent that rests. */
  readonly shownIn?: {
    readonly consent: 'portfolio' | 'owner site'
    /** Below the edition's own; null where the horse has no folder. */
    of(kept: Kept, addresses: Addresses): string | null
  }
  /** Null for an edition that stays on the practitioner's machine. */
  readonly protection: Protection<Kept> | null
  /** Whether it is locked for the practitioner alone: then it holds drafts, and is searched for no name. */
  readonly isPractitioners?: true
  /** What to open, in a line for the person who built it. */
  announcement(places: Places): string
  /** Puts the pages of one horse, and gives what is to be kept of it; null where this edition does not show it. */
  ofHorse(horse: HorseInput, tools: HorseTools): Promise<Kept | null>
  /**
   * Units for what of a single horse cannot be made without knowing all the others. Asked for at every build, so that its
   * warnings are told each time.
   */
  together?(all: AllHorses<Kept>, tools: TogetherTools): Promise<readonly Unit[]>
  /**
   * What of a horse a person approves before it leaves: asked also where this edition is not built, so that what waits is
   * known. While anything waits the horse stays as it was last published, or stays out. Null where it is not shown at all.
   * @param hashOf hash of the bytes of a file in the horse's folder; null where there is none
   */
  review?(horse: HorseInput, own: OwnWords, hashOf: (file: string) => string | null): Promise<Reviewed | null>
  /** Pages over all horses. */
  pages(all: AllHorses<Kept>, format: Formatter): Promise<readonly PageView[]>
  /** Files over all horses that are no pages. */
  files?(all: AllHorses<Kept>, format: Formatter): Promise<readonly MadeFile[]>
  /**
   * The folder of each owner's page by owner id, for other editions to say: asked also where this edition is not built.
   * @param kept null where it is not built
   */
  addresses?(practice: Practice, casebook: string, kept: readonly Kept[] | null): Promise<Addresses>
}

/** Whether anyone but the practitioner reads it. */
export const isForOthers = ({
  protection,
  isPractitioners,
}: Pick<Edition, 'protection' | 'isPractitioners'>) => protection !== null && isPractitioners !== true

/** A horse's own folder in the casebook, as it stands there. Paths are within the casebook. */
export interface HorseFolder {
  /** Case files, read when asked for. */
  texts(): Readonly<Record<string, string>>
  /** Every other file. */
  readonly pictures: readonly string[]
}

/** Files of one horse go to paths within the edition's folder. */
export interface HorseTools extends Pick<UnitOutput, 'put' | 'keep'>, Pick<PageTools, 'forOwners'> {
  readonly renderer: Renderer
  /** The tool's own words, for telling names that are everyday words. */
  readonly own: OwnWords
  /** Processed pictures. */
  readonly pictures: PictureStore
  readonly folder: HorseFolder
}

export type Addresses = Readonly<Record<string, string>>

/** What is known of all horses once each is made. */
export interface AllHorses<Kept> {
  readonly practice: Practice
  /** What all of them have taught. */
  readonly lessons: PracticeLessons
  readonly asOf: PlainDate
  /** Of the horses that the edition shows, by id. */
  readonly kept: readonly Kept[]
  /** Horses whose files hold errors. */
  readonly broken: readonly { readonly id: string; readonly problems: number }[]
  /** By edition, of those that say any. */
  readonly addresses: Readonly<Record<string, Addresses>>
}

/** How what leaves the practitioner's machine is protected, once everything else of the edition is made. */
export interface Protection<Kept = unknown> {
  /**
   * Units that search or lock. The guard hears of each hit, and holds the folder back; all else is published. Paths are
   * within the site.
   */
  units(all: AllHorses<Kept>, tools: ProtectionTools): Promise<readonly Unit[]>
}

export interface TogetherTools {
  readonly edition: Pick<Edition, 'folder'>
  /** Names the program that builds. */
  readonly program: string
  readonly builder: Pick<Builder, 'fragment'>
  /** Takes a warning to the person who builds. */
  report(diagnostic: Diagnostic): void
  /** Asked for when there is something to make. */
  open(): Promise<PageTools>
}

export interface ProtectionTools {
  readonly edition: Pick<Edition, 'folder' | 'assets'>
  /** Names the program that builds. */
  readonly program: string
  readonly casebook: string
  readonly guard: LeakGuard
  readonly builder: Pick<Builder, 'outputs' | 'read' | 'fragment' | 'build'>
  /** Holds a folder of the site back for another reason, which is reported: it stays as it was. */
  hold(folder: string): void
  /** The folders of the site in which horses are shown to an owner now. */
  foldersOf(owner: string): readonly string[]
  /** Takes a warning to the person who builds. */
  report(diagnostic: Diagnostic): void
  /** Asked for when there is something to make. */
  open(): Promise<PageTools>
}

/** What pages are made with, once loaded. */
export interface PageTools {
  readonly renderer: Renderer
  /** The language of the pages. */
  readonly words: Words
  /** The words with the numbers beside them, by the practice's unit of length. */
  readonly formatIn: (units: LengthUnit) => Formatter
  readonly forOwners: ForOwners
  readonly own: OwnWords
  assets(of: Assets): AssetTexts
}

/** Prints paths as seen from where the person is. */
export interface Places {
  site(...path: readonly string[]): string
  casebook(...path: readonly string[]): string
}
