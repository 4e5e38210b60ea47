import { randomBytes } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { MarkPage } from '../apps/mark/server.ts'
import type { Rebuilt } from '../apps/preview/rebuild.ts'
import type { Watching } from '../apps/preview/watch.ts'
import { practice } from '../editions/practice.ts'
import { casebookFolder, portOf, textOf } from './arguments.ts'
import { outOption, siteFolder, usualThreads } from './build.ts'
import { type CommandEntry, exit, type World, WrongUse } from './command.ts'
import { markPageOf } from './mark.ts'
import { countText } from './report.ts'

const usualPort = 4174

export const preview: CommandEntry = {
  usage: 'preview [folder]',
  does: 'Shows the practice site in a browser on this machine alone, and makes it again whenever a file is saved.',
  options: [
    outOption,
    {
      flags: '--port <number>',
      does: 'port on this machine; 0 takes any that is free',
      default: String(usualPort),
    },
  ],
  run: async ([folder], options, world) => {
    const casebook = casebookFolder(folder, world)
    const site = siteFolder(textOf(options, 'out'), casebook, world)
    const port = portOf(options)
    const { openRebuilder } = await import('../apps/preview/rebuild.ts')
    const { practiceLanguage, wordsFor } = await import('../pages/words/index.ts')
    const { servePreview } = await import('../apps/preview/server.ts')
    const { watchFolder } = await import('../apps/preview/watch.ts')
    const { reviewPages } = await import('../apps/review/review-pages.ts')
    const { lazyPageTools } = await import('../apps/site/site-units.ts')
    const { packageRoot } = await import('../build/program.ts')

    const builder = openRebuilder({
      casebook,
      site,
      threads: usualThreads(),
      today: world.today,
      now: world.now,
      signal: world.signal,
    })
    const first = await builder.build([])
    let watching: Watching | null = null
    const previewed = {
      folder: join(site, practice.folder),
      served: builder.served,
      settled: () => watching?.settled() ?? null,
      assets: previewAssets(packageRoot(), wordsFor(practiceLanguage).mark.fromPreview),
      openMarking: markPagesIn(casebook, world),
      review: reviewPages({
        casebook,
        today: world.today,
        open: lazyPageTools(),
        key: randomBytes(18).toString('base64url'),
      }),
    }
    const server = await servePreview(previewed, port).catch((error) => {
      throw portTaken(error, port)
    })
    server.rebuilt(first.problems, first.changed, first.waiting)
    report(first, world)
    watching = await watchFolder(casebook, async (paths) => {
      const next = await builder.build(paths)
      server.rebuilt(next.problems, next.changed, next.waiting)
      report(next, world)
    })
    const { report: reportChange, close } = watching
    builder.keepChecking(() => reportChange(casebook))
    world.stdout.write(`Open ${server.url}\nSaved files show at once. Ctrl-C ends.\n`)
    await builder.warmUp()
    await new Promise<void>((resolve) => {
      if (world.signal.aborted) resolve()
      world.signal.addEventListener('abort', () => resolve(), { once: true })
    })
    await close()
    await server.close()
    builder.close()
    return exit.clean
  },
}

/** Marking pages of the casebook's pictures; rejects saying why there is none. */
const markPagesIn =
  (casebook: string, world: World) =>
  async (photo: string, visit: string | null): Promise<MarkPage> => {
    const { isPlainFile } = await import('../apps/plain-file.ts')
    if (!isPlainFile(casebook, photo)) throw new WrongUse(`There is no picture ${photo}.`)
    const reported: string[] = []
    const stderr = { write: (text: string) => void reported.push(text), isTerminal: false }
    const options = new Map(visit === null ? [] : [['visit', visit]])
    const page = await markPageOf(join(casebook, photo), options, { ...world, stderr })
    if (page === null) throw new WrongUse(reported.join('').trim())
    return page
  }

function portTaken(error: unknown, port: number): unknown {
  const isTaken = (error as NodeJS.ErrnoException).code === 'EADDRINUSE'
  return isTaken ? new WrongUse(`Port ${port} is in use, perhaps by another preview. Try --port 0.`) : error
}

const previewAssets = (root: string, markText: string) => ({
  script: readFileSync(join(root, 'dist', 'browser', 'preview.js'), 'utf8'),
  style: readFileSync(join(root, 'templates', 'preview.css'), 'utf8'),
  markText,
})

function report({ problems, milliseconds, changed }: Rebuilt, world: World): void {
  const what = changed ? 'made' : 'nothing changed'
  world.stderr.write(`${what} in ${Math.round(milliseconds)} ms, ${countText(problems)}\n`)
}
