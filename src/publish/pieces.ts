/** The pieces of a site: kept where nothing changed, else made anew and set waiting. */
import { join } from 'node:path'
import type { Practice } from '../casebook/model.ts'
import { digest } from './digest.ts'
import type { Files } from './disk/files.ts'
import { type Staged, stage } from './disk/staging.ts'
import type { AllHorses } from './editions.ts'
import type { BuildOrder, BuildWorld } from './order.ts'
import type { Bench, PooledJob, StagedHorse } from './staged-horse.ts'
import type { Standing } from './standing.ts'
import type { HorsePiece, Output, Piece, SharedPiece, State } from './state.ts'
import type { Survey, SurveyedHorse } from './survey.ts'

export interface HorsePieces {
  /** By horse id, sorted. */
  readonly pieces: readonly (readonly [string, HorsePiece])[]
  readonly waiting: readonly string[]
  /** Ids of those that were made anew. */
  readonly made: ReadonlySet<string>
}

export interface SharedPieces {
  /** By name in words: `practice: pages over all horses`. */
  readonly pieces: readonly (readonly [string, SharedPiece])[]
  readonly waiting: readonly string[]
  readonly made: number
}

/** Every horse's piece: those whose key and files are as they were are kept, the others made. */
export async function horsePieces(
  order: BuildOrder,
  world: BuildWorld,
  bench: Bench,
  known: {
    readonly survey: Survey
    readonly state: State
    readonly standing: Standing
    readonly practice: Practice
  },
): Promise<HorsePieces> {
  const pieces = new Map<string, HorsePiece>()
  const changed: SurveyedHorse[] = []
  for (const horse of known.survey.horses) {
    const before = known.state.horses[horse.id]
    const isKept = before?.key === horse.key && known.standing.stands(before)
    if (isKept && hasPart(world.files, bench, before)) pieces.set(horse.id, before)
    else changed.push(horse)
  }
  const { asOf, editions } = order
  const jobs: PooledJob[] = changed.map(({ id, entries }) => ({
    id,
    entries,
    asOf,
    editions,
    practice: known.practice,
  }))
  const keys = new Map(changed.map(({ id, key }) => [id, key]))
  const waiting: string[] = []
  let done = 0
  const total = jobs.length
  if (total > 0) world.report({ step: 'making', done, total })
  const settle = (horse: StagedHorse) => {
    pieces.set(horse.id, pieceOf(horse, keys.get(horse.id) ?? '', known.survey))
    waiting.push(...waitingIn(horse.outputs))
    done += 1
    world.report({ step: 'making', done, total })
  }
  if (total > 0) await world.makers.horses(bench)(jobs, settle, world.signal)
  const sorted = [...pieces].sort(([a], [b]) => (a < b ? -1 : 1))
  return { pieces: sorted, waiting, made: new Set(keys.keys()) }
}

/** A horse whose files were saved while it was made is made again next time. */
function pieceOf(horse: StagedHorse, key: string, survey: Survey): HorsePiece {
  const isSound = Object.entries(horse.read).every(([path, hash]) => survey.files[path]?.hash === hash)
  return {
    key: isSound ? key : '',
    diagnostics: horse.diagnostics,
    summary: horse.summary,
    forOthers: horse.forOthers,
    outputs: plain(horse.outputs),
  }
}

/** Pages over all horses, style sheets, scripts: a piece each, for each edition. */
export async function sharedPieces(
  order: BuildOrder,
  world: BuildWorld,
  bench: Bench,
  known: { readonly state: State; readonly standing: Standing; readonly all: AllHorses },
): Promise<SharedPieces> {
  const pieces: (readonly [string, Piece])[] = []
  const waiting: string[] = []
  let made = 0
  const add = async (name: string, key: string, make: () => Promise<readonly Staged[]>) => {
    const before = known.state.shared[name]
    if (before?.key === key && known.standing.stands(before)) {
      pieces.push([name, before])
      return
    }
    const outputs = await make()
    made += 1
    waiting.push(...waitingIn(outputs))
    pieces.push([name, { key, outputs: plain(outputs) }])
  }
  for (const edition of order.editions) {
    await add(
      `${edition}: pages over all horses`,
      digest([world.program, JSON.stringify(known.all)]),
      async () => stage(world.files, bench.staging, await world.makers.overAll(edition, known.all)),
    )
    await add(`${edition}: style and scripts`, world.program, async () =>
      stage(world.files, bench.staging, world.makers.assets(edition)),
    )
  }
  return { pieces, waiting, made }
}

/** Whether the horse's part of its owner's page, if it has one, is still kept. */
const hasPart = (files: Files, bench: Bench, { forOthers }: HorsePiece): boolean =>
  forOthers === null || forOthers.part === null || files.look(join(bench.parts, forOthers.part.kept)) !== null

export const waitingIn = (outputs: readonly Staged[]) =>
  outputs.flatMap(({ path, waits }) => (waits ? [path] : []))

export const plain = (outputs: readonly Staged[]): readonly Output[] =>
  outputs.map(({ path, hash, size, modified }) => ({ path, hash, size, modified }))
