import { asOfDay, asOfOption } from './arguments.ts'
import { type CommandEntry, exit } from './command.ts'

export const lsp: CommandEntry = {
  usage: 'lsp',
  does: 'Serves an editor by the Language Server Protocol: problems and fixes while you write, words to choose from, last readings.',
  options: [{ flags: '--stdio', does: 'over standard input and output, the one way there is' }, asOfOption],
  run: async (_args, options, world) => {
    asOfDay(options, world)
    const { serveEditor } = await import('../apps/editor/server.ts')
    const { packageRoot, packageVersion } = await import('../build/program.ts')
    await serveEditor({
      input: process.stdin,
      output: process.stdout,
      version: packageVersion(packageRoot()),
      today: () => asOfDay(options, world),
    })
    return exit.clean
  },
}
