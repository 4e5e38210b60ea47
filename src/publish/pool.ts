/** Who makes the horses: this thread alone when few are to be made, with worker threads beside it when many are. */
import { setImmediate } from 'node:timers/promises'
import { setFlagsFromString } from 'node:v8'
import { Worker } from 'node:worker_threads'
import { Stopped, Trouble } from './disk/trouble.ts'
import type { HorseWorker, PooledJob, StagedHorse } from './staged-horse.ts'

/**
 * Makes every horse, in any order, and tells of each.
 * Rejects at the first fault, and with `Stopped` when asked to stop.
 */
export type HorseMaker = (
  jobs: readonly PooledJob[],
  done: (horse: StagedHorse) => void,
  signal: AbortSignal,
) => Promise<void>

/** A maker that takes jobs one by one, so that others can take from the same. */
export type SharingMaker = (
  jobs: Iterable<PooledJob>,
  done: (horse: StagedHorse) => void,
  signal: AbortSignal,
) => Promise<void>

/** Fewer horses than this are made sooner than a worker thread has started. */
const fewHorses = 4

/** Jobs that wait at a worker. */
const ahead = 3

/** What a worker may hold, MiB. Without it garbage is let lie, and memory grows to twice as much. */
const room = { maxOldGenerationSizeMb: 280, maxYoungGenerationSizeMb: 48 }

/**
 * How V8 works while every processor makes pages. Left alone it gives a third of their time to threads of its own:
 * it optimises functions over and over, whose closures die with each page, and sweeps beside the work.
 */
const whileAllWork = [
  // A function has to run long before it is optimised, and then takes in fewer others.
  '--interrupt-budget=1000000',
  '--max-inlined-bytecode-size-cumulative=500',
  '--no-concurrent-marking',
  '--no-parallel-scavenge',
  // The first thread's heap has no limit of its own: it is swept once it has grown by so many percent.
  '--heap-growing-percent=140',
]

export const inThisThread =
  (worker: HorseWorker): SharingMaker =>
  async (jobs, done, signal) => {
    for (const job of jobs) {
      // Lets a wish to stop, which arrives as an event, be heard between two horses.
      await setImmediate()
      if (signal.aborted) throw new Stopped()
      done(await worker(job))
    }
  }

export interface Threads {
  /** The worker's file. */
  readonly script: URL
  /** What each worker needs to open its tools. */
  readonly bench: object
  /** This thread counted in. */
  readonly count: number
}

/** What a worker answers. */
export type Answer =
  | { readonly horse: StagedHorse }
  | {
      readonly fault: { readonly message: string; readonly stack: string | null; readonly isTrouble: boolean }
    }

export const inThreads =
  ({ script, bench, count }: Threads, here: SharingMaker): HorseMaker =>
  async (jobs, done, signal) => {
    if (jobs.length < fewHorses || count < 2) return here(jobs, done, signal)
    for (const flag of whileAllWork) setFlagsFromString(flag)
    const waiting = jobs[Symbol.iterator]()
    const workers = Array.from(
      { length: Math.min(count, jobs.length) - 1 },
      () => new Worker(script, { workerData: bench, resourceLimits: room }),
    )
    try {
      await Promise.all([
        ...workers.map((worker) => feed(worker, waiting, done, signal)),
        here(waiting, done, signal),
      ])
    } finally {
      await Promise.all(workers.map((worker) => worker.terminate()))
    }
  }

/** Hands one worker job after job, some ahead so that it never waits while this thread is busy with a horse. */
function feed(
  worker: Worker,
  jobs: Iterator<PooledJob>,
  done: (horse: StagedHorse) => void,
  signal: AbortSignal,
): Promise<void> {
  return new Promise((resolve, reject) => {
    let open = 0
    const next = () => {
      const { value, done: none } = jobs.next()
      if (none) {
        if (open === 0) resolve()
        return
      }
      open += 1
      worker.postMessage(value)
    }
    const stop = () => reject(new Stopped())
    if (signal.aborted) stop()
    signal.addEventListener('abort', stop, { once: true })
    worker.on('message', (answer: Answer) => {
      if ('fault' in answer) return reject(faultOf(answer.fault))
      open -= 1
      done(answer.horse)
      next()
    })
    worker.on('error', reject)
    worker.on('exit', () => reject(new Error('a worker thread ended before its work')))
    for (let i = 0; i < ahead; i++) next()
  })
}

function faultOf(fault: Extract<Answer, { fault: unknown }>['fault']): Error {
  if (fault.isTrouble) return new Trouble(fault.message)
  const error = new Error(fault.message)
  if (fault.stack !== null) error.stack = fault.stack
  return error
}
