/** A worker thread: makes the horses that it is handed, one after the other. */
import { parentPort, workerData } from 'node:worker_threads'
import { disk } from './disk/files.ts'
import { Trouble } from './disk/trouble.ts'
import { openPageMaker } from './page-maker.ts'
import type { Answer } from './pool.ts'
import { type Bench, type PooledJob, stagingWorker } from './staged-horse.ts'

const bench: Bench = workerData
const work = stagingWorker(disk, bench, openPageMaker().ofHorse)

/** Jobs wait for each other, so that no two horses are in memory at once. */
let last: Promise<void> = Promise.resolve()
parentPort?.on('message', (job: PooledJob) => {
  last = last.then(() => answer(job))
})

async function answer(job: PooledJob): Promise<void> {
  parentPort?.postMessage(await attempt(job))
}

async function attempt(job: PooledJob): Promise<Answer> {
  try {
    return { horse: await work(job) }
  } catch (error) {
    const { message, stack } = error instanceof Error ? error : new Error(String(error))
    return { fault: { message, stack: stack ?? null, isTrouble: error instanceof Trouble } }
  }
}
