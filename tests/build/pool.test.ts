/** Worker threads that run out of memory: the job that was too much is the only one that is not done. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { inThreads, type Pool } from '../../src/build/pool.ts'

/** A job holds on to so many MiB while it is done; it answers with its name. */
interface Job {
  readonly name: string
  readonly holds: number
}

let folder: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'growdown-pool-'))
  writeFileSync(
    join(folder, 'worker.mjs'),
    `import { parentPort } from 'node:worker_threads'
    parentPort.on('message', ({ name, holds }) => {
      const held = []
      for (let mib = 0; mib < holds; mib += 8) held.push(new Array(2 ** 20).fill(mib + 0.5))
      parentPort.postMessage({ result: name + (held.length > holds ? '!' : '') })
    })`,
  )
})
afterAll(() => rmSync(folder, { recursive: true }))

const here: Pool<Job, string> = () => Promise.reject(new Error('many jobs are done in threads'))

async function doneOf(jobs: readonly Job[]): Promise<readonly string[]> {
  const done: string[] = []
  const { pool, close } = inThreads<Job, string>(
    {
      script: pathToFileURL(join(folder, 'worker.mjs')),
      data: {},
      count: 2,
      lost: async ({ name }) => `${name} was lost`,
    },
    here,
  )
  await pool(jobs, (result) => done.push(result), new AbortController().signal)
  await close()
  return done.sort()
}

const light = Array.from({ length: 12 }, (_, index) => ({ name: `light ${index + 10}`, holds: 1 }))
const names = light.map(({ name }) => name)

describe('a job that takes more memory than a worker has', () => {
  it('is done alone, by a worker that may hold more', async () => {
    const heavy = { name: 'heavy', holds: 300 }
    expect(await doneOf([...light.slice(0, 5), heavy, ...light.slice(5)])).toEqual(['heavy', ...names])
  }, 60_000)

  it('is lost where that is too little as well, and all others are done, once each', async () => {
    const greedy = ['greedy 1', 'greedy 2'].map((name) => ({ name, holds: 1e6 }))
    expect(await doneOf([...light.slice(0, 5), ...greedy, ...light.slice(5)])).toEqual([
      'greedy 1 was lost',
      'greedy 2 was lost',
      ...names,
    ])
  }, 120_000)
})
