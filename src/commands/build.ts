import { availableParallelism } from 'node:os'
import { dirname, join, relative, resolve } from 'node:path'
import type { Built } from '../apps/site/build-site.ts'
import { disk } from '../build/disk/real-disk.ts'
import { isWithin, realPlace } from '../build/disk/real-place.ts'
import type { Edition } from '../editions/edition.ts'
import { editions } from '../editions/index.ts'
import { printExceptions, printRefusal } from '../leaks/report.ts'
import { asOfDay, asOfOption, casebookFolder, countOf, textOf } from './arguments.ts'
import { type CommandEntry, exit, type OptionEntry, type World, WrongUse } from './command.ts'
import { printHosts, printWithdrawn } from './hosts.ts'
import { progressLine } from './progress.ts'
import { counted, countText, printAll, problemsIn } from './report.ts'

const editionsOf = (named: string | null | undefined): readonly Edition[] =>
  named === 'all' ? editions : editions.filter(({ name }) => name === (named ?? 'practice'))

/** More threads than this cost more memory than they save time. */
const mostThreads = 4

/** How many horses are made at once where nobody says. */
export const usualThreads = () => Math.min(availableParallelism(), mostThreads)

export const outOption: OptionEntry = {
  flags: '--out <folder>',
  does: 'where the site goes (default: site here, or beside the casebook you are in)',
}

export const build: CommandEntry = {
  usage: 'build [folder]',
  does: 'Checks the casebook and makes the site. A horse with problems keeps its last pages; every other one is made.',
  options: [
    outOption,
    {
      flags: '--edition <edition>',
      does: 'for whom',
      choices: [...editions.map(({ name }) => name), 'all'],
      default: 'practice',
    },
    asOfOption,
    { flags: '--jobs <count>', does: 'how many horses are made at once (default: by the processor)' },
  ],
  run: async ([folder], options, world) => {
    const casebook = casebookFolder(folder, world)
    const site = siteFolder(textOf(options, 'out'), casebook, world)
    const asOf = asOfDay(options, world)
    const threads = countOf(options, 'jobs') ?? usualThreads()
    const wanted = editionsOf(textOf(options, 'edition'))

    const { buildSite } = await import('../apps/site/build-site.ts')
    const { lazyPageTools } = await import('../apps/site/site-units.ts')
    const { packageRoot, programKey } = await import('../build/program.ts')
    const line = progressLine(world)
    try {
      const built = await buildSite(
        { casebook, site, asOf, editions: wanted },
        {
          files: disk,
          threads,
          openTools: lazyPageTools(),
          program: programKey(packageRoot()),
          now: world.now,
          report: line.show,
          signal: world.signal,
        },
      )
      line.clear()
      return report(built, wanted, { casebook, site, named: folder }, world)
    } finally {
      line.clear()
    }
  },
}

/**
 * The site's folder, absolute; where none is named, `site` here, or beside the casebook for one who is in it.
 * @throws WrongUse when it and the casebook lie in one another: the one would be read or written as the other
 */
export function siteFolder(named: string | null, casebook: string, world: World): string {
  const usual = isWithin(world.cwd, casebook) ? join(dirname(casebook), 'site') : 'site'
  const name = named ?? usual
  const site = resolve(world.cwd, name)
  const [made, from] = [realPlace(disk, site), realPlace(disk, casebook)]
  if (isWithin(made, from) || isWithin(from, made)) {
    throw new WrongUse(
      `The site ${name} and the casebook lie in one another. Name another folder with --out.`,
    )
  }
  return site
}

interface Where {
  readonly casebook: string
  readonly site: string
  /** The casebook as the person named it. */
  readonly named: string | undefined
}

/** Says what was made, and last which file to open. */
function report(
  built: Built,
  wanted: readonly Edition[],
  { casebook, site, named }: Where,
  world: World,
): number {
  const { diagnostics, published, horses, exceptions, waiting, refusals } = built
  world.stderr.write(printAll(diagnostics))
  const problems = problemsIn(diagnostics)
  if (diagnostics.length > 0) world.stderr.write(`${countText(diagnostics)}\n`)
  if (published === null) {
    world.stderr.write('Nothing was published: practice.md must be put right first. The site is as it was.\n')
    return exit.problems
  }
  const parts = [
    `${counted(horses.made, 'horse')} made`,
    `${horses.unchanged} unchanged`,
    ...(horses.broken > 0 ? [`${horses.broken} left as last built, because of problems`] : []),
  ]
  world.stdout.write(`${parts.join(', ')}; ${counted(published.written, 'file')} written.\n`)
  const from = (...path: readonly string[]) => relative(world.cwd, join(...path)) || join(...path)
  if (exceptions.length > 0) {
    world.stdout.write(
      `Searched for in some forms only, so look for yourself:\n${printExceptions(exceptions)}\n`,
    )
  }
  if (published.left.length > 0) {
    world.stderr.write(
      `Not as growdown wrote them, so they were left as they are; move them away and build again:\n${published.left.map((place) => `  ${from(place)}\n`).join('')}`,
    )
  }
  if (waiting.length > 0 && wanted.some(({ review }) => review !== undefined)) {
    const counts = waiting.map(({ id, count }) => `${id} ${count}`).join(', ')
    world.stdout.write(
      `Waiting to be read, so these cases are as they were last approved, or stay out: ${counts}.\nRead and approve: growdown review${named === undefined ? '' : ` ${named}`}\n`,
    )
  }
  const places = {
    site: (...path: readonly string[]) => from(site, ...path),
    casebook: (...path: readonly string[]) => from(casebook, ...path),
  }
  for (const refusal of refusals) {
    world.stderr.write(`${printRefusal(refusal, (path) => from(casebook, path))}\n\n`)
  }
  world.stdout.write(printWithdrawn(built))
  for (const edition of wanted) world.stdout.write(`${edition.announcement(places)}\n`)
  world.stdout.write(printHosts(built.hosts, places.site()))
  const isLeft = published.left.length > 0 || refusals.length > 0
  return problems > 0 || isLeft ? exit.problems : exit.clean
}
