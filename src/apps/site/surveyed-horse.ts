/** A horse as the survey of the casebook finds it, and as a process that surveys again and again keeps it. */
import type { SourceFile } from './horse-job.ts'

export interface SurveyedHorse {
  readonly id: string
  readonly key: string
  /** Of what is read alone: the same key means the same horse. */
  readonly readKey: string
  readonly files: readonly SourceFile[]
  /** Hashes of what is approved to leave of it. */
  readonly approved: readonly string[]
}

/** Of a horse: what it was surveyed from, and what came of it. */
interface Known {
  readonly under: string
  readonly from: readonly unknown[]
  readonly horse: SurveyedHorse
}

/** By id, in a process that surveys again and again: of a thousand horses one has changed. */
export type KnownHorses = Map<string, Known>
