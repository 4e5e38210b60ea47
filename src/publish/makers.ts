/** The real makers of pages. All that is heavy is loaded when the first page is made, and kept. */
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { assetFiles } from './assets.ts'
import type { Files } from './disk/files.ts'
import type { Makers } from './order.ts'
import { packageRoot } from './package.ts'
import type { PageMaker } from './page-maker.ts'
import { inThisThread, inThreads } from './pool.ts'
import { stagingWorker } from './staged-horse.ts'

/** `threads` worker threads make the horses when there are many. */
export function pageMakers(files: Files, threads: number): Makers {
  const root = packageRoot()
  let opened: Promise<PageMaker> | null = null
  const pageMaker = () => {
    opened ??= import('./page-maker.ts').then(({ openPageMaker }) => openPageMaker())
    return opened
  }
  return {
    horses: (bench) => {
      const here = inThisThread(
        stagingWorker(files, bench, async (job, tools) => (await pageMaker()).ofHorse(job, tools)),
      )
      const script = pathToFileURL(join(root, 'dist', 'worker.js'))
      return inThreads({ script, bench, count: threads }, here)
    },
    overAll: async (edition, all) => (await pageMaker()).overAll(edition, all),
    others: async () => (await pageMaker()).others,
    assets: (edition) => assetFiles(root, edition),
  }
}
