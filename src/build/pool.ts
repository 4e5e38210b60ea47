/** Does many jobs: in this thread when they are few, in worker threads when they are many. */
import { setImmediate } from 'node:timers/promises'
import { type MessagePort, type ResourceLimits, Worker } from 'node:worker_threads'
import { Stopped, systemCode, UserError } from './disk/errors.ts'
import { collectGarbage, loneThreadLimits, threadLimits, tuneForFullLoad } from './v8-settings.ts'

/** Does one job. Job and result are plain data. */
export type Work<Job, Result> = (job: Job) => Promise<Result>

/**
 * Does every job, in any order, and hands over each result.
 * Rejects at the first fault, and with `Stopped` when asked to stop.
 */
export type Pool<Job, Result> = (
  jobs: Iterable<Job>,
  done: (result: Result) => void,
  signal: AbortSignal,
) => Promise<void>

/** Fewer jobs than this are done sooner than a worker thread has started. */
const fewJobs = 4

/** Jobs that are handed to a worker ahead of time. */
const ahead = 3

/** A pool of this thread alone. */
export const inThisThread =
  <Job, Result>(work: Work<Job, Result>): Pool<Job, Result> =>
  async (jobs, done, signal) => {
    for (const job of jobs) {
      // Lets a wish to stop, which arrives as an event, be heard between two jobs.
      await setImmediate()
      if (signal.aborted) throw new Stopped()
      done(await work(job))
    }
  }

export interface Threads<Job, Result> {
  /** The worker's file. */
  readonly script: URL
  /** What each worker needs to begin. */
  readonly data: object
  readonly count: number
  /** Answers for a job that no worker has memory enough for. */
  lost(job: Job): Promise<Result>
}

/** Said to a worker in place of a job, at the end of a round. */
const rest = 'rest'

/** What a worker answers. */
type Answer<Result> =
  | { readonly result: Result }
  | {
      readonly fault: {
        readonly message: string
        readonly stack: string | null
        readonly isUserError: boolean
      }
    }

/** A pool that keeps its threads from one round of jobs to the next. */
export interface OpenPool<Job, Result> {
  readonly pool: Pool<Job, Result>
  /** Ends the threads. */
  close(): Promise<void>
}

/**
 * A pool of worker threads; few jobs are done `here`. This thread hands out and gathers: its own heap has no limit, so
 * work done here would set how much memory a build takes, differently by version of Node.
 */
export function inThreads<Job, Result>(
  threads: Threads<Job, Result>,
  here: Pool<Job, Result>,
): OpenPool<Job, Result> {
  const hands = Array.from({ length: threads.count }, () => handOf(threads, threadLimits))
  return {
    pool: async (given, done, signal) => {
      const jobs = [...given]
      if (jobs.length < fewJobs || threads.count < 2) return here(jobs, done, signal)
      tuneForFullLoad()
      collectGarbage()
      const pending = jobs.toReversed()
      await Promise.all(
        hands.slice(0, jobs.length).map((hand) => workOff(hand, pending, threads, done, signal)),
      )
      for (const hand of hands) hand.rest()
    },
    close: async () => {
      await Promise.all(hands.map((hand) => hand.end()))
    },
  }
}

/** The place of one worker, which is started when it is first needed and again when it has run out of memory. */
interface Hand {
  worker(): Worker
  /** Lets go of memory until the next round. */
  rest(): void
  end(): Promise<void>
}

function handOf(
  { script, data }: Pick<Threads<unknown, unknown>, 'script' | 'data'>,
  resourceLimits: ResourceLimits,
): Hand {
  let worker: Worker | null = null
  return {
    worker: () => {
      worker ??= new Worker(script, { workerData: data, resourceLimits })
      return worker
    },
    rest: () => worker?.postMessage(rest),
    end: async () => {
      const last = worker
      worker = null
      await last?.terminate()
    },
  }
}

/** Has one worker after another take from what is pending; one that runs out of memory ends, and its job is tried alone. */
async function workOff<Job, Result>(
  hand: Hand,
  pending: Job[],
  threads: Threads<Job, Result>,
  done: (result: Result) => void,
  signal: AbortSignal,
): Promise<void> {
  while (pending.length > 0) {
    const [culprit, ...untouched] = await feed(hand, pending, done, signal)
    if (culprit === undefined) continue
    await hand.end()
    pending.push(...untouched)
    const alone = handOf(threads, loneThreadLimits)
    try {
      const [stillTooMuch] = await feed(alone, [culprit], done, signal)
      if (stillTooMuch !== undefined) done(await threads.lost(stillTooMuch))
    } finally {
      await alone.end()
    }
  }
}

/**
 * Hands a worker job after job, some ahead so that it never idles while this thread is busy.
 * @returns the jobs that it took and did not do, since it ran out of memory over the first of them
 */
async function feed<Job, Result>(
  hand: Hand,
  pending: Job[],
  done: (result: Result) => void,
  signal: AbortSignal,
): Promise<readonly Job[]> {
  const worker = hand.worker()
  const open: Job[] = []
  const over = new AbortController()
  try {
    return await new Promise((resolve, reject) => {
      const next = () => {
        const job = pending.pop()
        if (job !== undefined) {
          open.push(job)
          worker.postMessage(job)
        } else if (open.length === 0) resolve([])
      }
      const stop = () => reject(new Stopped())
      if (signal.aborted) stop()
      signal.addEventListener('abort', stop, { once: true, signal: over.signal })
      worker.on('message', (answer: Answer<Result>) => {
        if ('fault' in answer) return reject(errorOf(answer.fault))
        open.shift()
        done(answer.result)
        next()
      })
      worker.on('error', (error) => {
        if (systemCode(error) === 'ERR_WORKER_OUT_OF_MEMORY') resolve(open)
        else reject(error)
      })
      worker.on('exit', () => reject(new Error('a worker thread ended before its work')))
      for (let i = 0; i < ahead; i++) next()
    })
  } catch (error) {
    await hand.end()
    throw error
  } finally {
    over.abort()
    // By name: the worker has listeners of its own besides.
    for (const event of ['message', 'error', 'exit']) worker.removeAllListeners(event)
  }
}

function errorOf(fault: Extract<Answer<unknown>, { fault: unknown }>['fault']): Error {
  if (fault.isUserError) return new UserError(fault.message)
  const error = new Error(fault.message)
  if (fault.stack !== null) error.stack = fault.stack
  return error
}

/** The worker's side: does the jobs that come through the port, one after the other, so that memory stays small. */
export function answerJobs<Job, Result>(port: MessagePort, work: Work<Job, Result>): void {
  const attempt = async (job: Job): Promise<Answer<Result>> => {
    try {
      return { result: await work(job) }
    } catch (error) {
      const { message, stack } = error instanceof Error ? error : new Error(String(error))
      return { fault: { message, stack: stack ?? null, isUserError: error instanceof UserError } }
    }
  }
  let last: Promise<void> = Promise.resolve()
  port.on('message', (job: Job | typeof rest) => {
    if (job === rest) collectGarbage()
    else last = last.then(async () => port.postMessage(await attempt(job)))
  })
}
