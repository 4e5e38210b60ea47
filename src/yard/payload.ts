/** What stands in the locked part of the yard page. */
import type { PlainDate } from '../hoof/dates.ts'
import type { CautionLevel } from '../trend/assessment.ts'
import type { HorseKnowledge } from './knowledge.ts'

/** What is read at once after unlocking: enough for the day's list. */
export interface YardIndex {
  readonly version: 1
  /** Names the practice's phone data from build to build. */
  readonly practice: string
  /** The day that cautions, plans and dates were reckoned for. */
  readonly asOf: PlainDate
  /** practice.md as it stands, for the checks. */
  readonly practiceFile: string
  readonly practiceName: string
  /** Who may hold the phone, as practice.md has them. */
  readonly people: readonly { readonly id: string; readonly name: string }[]
  /** By horse's name. */
  readonly horses: readonly YardHorse[]
  /** Drafts of this page that stand in the casebook, with the version taken over. */
  readonly arrived: readonly { readonly draft: string; readonly version: number }[]
  /** 32 bytes in base64: locks what is written on the phone. The same in every build of a casebook. */
  readonly phoneKey: string
  /** Cautions that always hold, and the practice's own rules. */
  readonly standing: readonly string[]
  readonly localRules: string | null
}

/** A line of the day's list. */
export interface YardHorse {
  readonly id: string
  readonly name: string
  readonly owner: string | null
  /** The next visit. */
  readonly due: PlainDate | null
  /** The gravest caution, as its row says it. */
  readonly flag: { readonly level: CautionLevel; readonly text: string } | null
  /** One plain line about its problems. */
  readonly problems: string
  /** Whether its own files hold errors: then it can be read as it was last built, or not at all. */
  readonly isBroken: boolean
}

/** What is opened with one horse. */
export interface YardHorsePart {
  readonly id: string
  /** Its first screen, problems, last readings, plan, cautions, contacts: HTML without scripts, pictures as data. */
  readonly html: string
  /** Its case files by path, `juno/horse.md`: the checks of a new visit read them. */
  readonly files: Readonly<Record<string, string>>
  /** Where pictures of earlier visits lie, for the checks: paths alone. */
  readonly pictures: readonly string[]
  /** What the form shows of it, as of the day of the index: made at the desk, so that the page carries no engine. */
  readonly knowledge: HorseKnowledge
}
