import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Rebuilt } from '../apps/preview/rebuild.ts'
import { practice } from '../editions/practice.ts'
import { casebookFolder, portOf, textOf } from './arguments.ts'
import { outOption, siteFolder, usualThreads } from './build.ts'
import { type CommandEntry, exit, type World, WrongUse } from './command.ts'
import { openMarking } from './mark.ts'
import { counted } from './report.ts'

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
    const marking = markingIn(casebook, world)
    const assets = previewAssets(packageRoot(), wordsFor(practiceLanguage).mark.fromPreview)
    const server = await servePreview(join(site, practice.folder), port, assets, marking.open).catch(
      (error) => {
        throw portTaken(error, port)
      },
    )
    server.show(first.problems)
    report(first, world)
    const watching = await watchFolder(casebook, async (paths) => {
      const next = await builder.build(paths)
      server.show(next.problems)
      if (next.changed) server.reload()
      report(next, world)
    })
    builder.keepChecking(() => watching.report(casebook))
    world.stdout.write(`Open ${server.url}\nSaved files show at once. Ctrl-C ends.\n`)
    await builder.warmUp()
    await new Promise<void>((resolve) => {
      if (world.signal.aborted) resolve()
      world.signal.addEventListener('abort', () => resolve(), { once: true })
    })
    await watching.close()
    await marking.close()
    await server.close()
    builder.close()
    return exit.clean
  },
}

/** Opens marking pages of the casebook's pictures, and closes them all at the end. */
function markingIn(casebook: string, world: World) {
  const opened: { close(): Promise<void> }[] = []
  return {
    open: async (photo: string, visit: string | null): Promise<string> => {
      const reported: string[] = []
      const stderr = { write: (text: string) => void reported.push(text), isTerminal: false }
      const page = await openMarking(
        join(casebook, photo),
        new Map(visit === null ? [] : [['visit', visit]]),
        { ...world, stderr },
      )
      if (page === null) throw new Error(reported.join(''))
      opened.push(page)
      return page.url
    },
    close: () => Promise.all(opened.map((page) => page.close())),
  }
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
  world.stderr.write(`${what} in ${Math.round(milliseconds)} ms, ${counted(problems.length, 'problem')}\n`)
}
