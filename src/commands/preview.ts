import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Rebuilt } from '../publish/preview/rebuild.ts'
import { casebookFolder, textOf } from './arguments.ts'
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
    const port = portOf(textOf(options, 'port') ?? String(usualPort))
    const { openBuilder } = await import('../publish/preview/rebuild.ts')
    const { servePreview } = await import('../publish/preview/server.ts')
    const { watchFolder } = await import('../publish/preview/watch.ts')
    const { packageRoot } = await import('../publish/package.ts')

    const builder = openBuilder({
      casebook,
      site,
      threads: usualThreads(),
      today: world.today,
      now: world.now,
      signal: world.signal,
    })
    const first = await builder.build([])
    const marking = markingIn(casebook, world)
    const assets = previewAssets(packageRoot())
    const server = await servePreview(join(site, 'practice'), port, assets, marking.open).catch((error) => {
      throw portTaken(error, port)
    })
    server.show(first.problems)
    tell(first, world)
    const watching = await watchFolder(casebook, async (paths) => {
      const next = await builder.build(paths)
      server.show(next.problems)
      if (next.changed) server.reload()
      tell(next, world)
    })
    builder.keepLooking(() => watching.tell(casebook))
    world.stdout.write(`Open ${server.url}\nSaved files show at once. Ctrl-C ends.\n`)
    await builder.rehearse()
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
      const told: string[] = []
      const stderr = { write: (text: string) => void told.push(text), isTerminal: false }
      const page = await openMarking(
        join(casebook, photo),
        new Map(visit === null ? [] : [['visit', visit]]),
        { ...world, stderr },
      )
      if (page === null) throw new Error(told.join(''))
      opened.push(page)
      return page.url
    },
    close: () => Promise.all(opened.map((page) => page.close())),
  }
}

function portOf(text: string): number {
  const port = Number(text)
  if (!Number.isInteger(port) || port < 0 || port > 65_535)
    throw new WrongUse(`--port ${text} is no port: 0 to 65535.`)
  return port
}

function portTaken(error: unknown, port: number): unknown {
  const isTaken = (error as NodeJS.ErrnoException).code === 'EADDRINUSE'
  return isTaken ? new WrongUse(`Port ${port} is in use, perhaps by another preview. Try --port 0.`) : error
}

const previewAssets = (root: string) => ({
  script: readFileSync(join(root, 'dist', 'browser', 'preview.js'), 'utf8'),
  style: readFileSync(join(root, 'templates', 'preview.css'), 'utf8'),
})

function tell({ problems, milliseconds, changed }: Rebuilt, world: World): void {
  const what = changed ? 'made' : 'nothing changed'
  world.stderr.write(`${what} in ${Math.round(milliseconds)} ms, ${counted(problems.length, 'problem')}\n`)
}
