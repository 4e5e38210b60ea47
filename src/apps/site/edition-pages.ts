/** Pages over all horses of each edition, what protects them, and what is held back. */
import type { Builder } from '../../build/builder.ts'
import type { Fate } from '../../build/publish.ts'
import type { Diagnostic } from '../../casebook/diagnostic.ts'
import type { CasebookFolder } from '../../casebook/folder.ts'
import type { Practice } from '../../casebook/model.ts'
import { reportOn } from '../../casebook/report.ts'
import { type Addresses, type AllHorses, type Edition, isForOthers } from '../../editions/edition.ts'
import type { Exception, HorseIdentity } from '../../identity/identifiers.ts'
import { type LeakGuard, leakGuard, type Refusal } from '../../leaks/guard.ts'
import type { PracticeLessons } from '../../trend/model/practice.ts'
import { type Consents, foldersOfOwner, horsesOf, type Withdrawn, withdrawnIn } from './consents.ts'
import type { HorseRecord } from './horse-job.ts'
import type { SiteContext, SiteOptions } from './options.ts'
import { allHorses, editionUnits, overallUnit, type ShownHorse, shownHorses } from './site-units.ts'

export interface MadeHorses {
  readonly practice: Practice
  readonly lessons: PracticeLessons
  readonly records: readonly HorseRecord[]
  readonly consents: Consents
  readonly addresses: Readonly<Record<string, Addresses>>
  readonly folder: CasebookFolder
  report(warning: Diagnostic): void
}

export interface MadeEditions {
  /** Names that were searched for in some forms only. */
  readonly exceptions: readonly Exception[]
  readonly refusals: readonly Refusal[]
  readonly withdrawn: readonly Withdrawn[]
  /** What becomes of a path of the site. */
  fateOf(path: string): Fate
}

/** Makes and protects; where anything slipped, the folder that it is in stays as it was, and all else goes on. */
export async function buildEditions(
  options: SiteOptions,
  context: SiteContext,
  builder: Builder,
  horses: MadeHorses,
): Promise<MadeEditions> {
  const { editions, asOf } = options
  const { practice, lessons, records, consents, addresses } = horses
  const common = { practice, lessons, asOf, addresses }
  const { program, openTools } = context
  for (const edition of editions) {
    const all = allHorses(edition, records, common)
    await builder.build(editionUnits(edition, all, shownHorses(edition, records), program, openTools))
    const tools = { edition, program, builder, report: horses.report, open: openTools }
    await builder.build((await edition.together?.(all, tools)) ?? [])
  }
  const guard = await guardOf(options, context, horses)
  const held = await protect(options, context, builder, horses, guard)
  const isOfBuilt = (folder: string) => editions.some((edition) => folder.startsWith(`${edition.folder}/`))
  const withdrawn = withdrawnIn(builder.standing.restsOn, consents, isOfBuilt)
  const instead = new Map<string, Fate>()
  for (const edition of editions.filter(({ folder }) => held.has(folder))) {
    const gone = withdrawn.filter(({ folder }) => folder.startsWith(`${edition.folder}/`))
    if (gone.length === 0) continue
    const all = allHorses(edition, records, common)
    const fates = await overallWithout(horsesOf(gone), edition, all, context, builder, guard)
    for (const [path, fate] of fates) instead.set(path, fate)
  }
  const leaving = editions.some(isForOthers)
  const [exceptions] = leaving ? await builder.build([guard.exceptions]) : []
  const broken = records.filter(({ isBroken }) => isBroken).map(({ id }) => id)
  // Asked for every file of the site: what paths begin with is put together once.
  const isIn = (starts: readonly string[], path: string) => starts.some((start) => path.startsWith(start))
  const startOf = (folder: string) => `${folder}/`
  const made = editions.map(({ folder, keepsBroken }) => ({
    start: startOf(folder),
    last: keepsBroken ? broken.map((id) => startOf(`${folder}/${id}`)) : [],
  }))
  const standing = [...held].map(startOf)
  const ended = withdrawn.map(({ folder }) => startOf(folder))
  return {
    exceptions: exceptions?.notes ?? [],
    refusals: guard.refusals(),
    withdrawn,
    fateOf: (path) => {
      const edition = made.find(({ start }) => path.startsWith(start))
      if (edition !== undefined && !isIn(standing, path)) return isIn(edition.last, path) ? 'kept' : 'made'
      return instead.get(path) ?? (isIn(ended, path) ? 'removed' : 'kept')
    },
  }
}

async function guardOf(
  { editions, casebook }: SiteOptions,
  { program, openTools }: SiteContext,
  { practice, records, folder, report }: MadeHorses,
): Promise<LeakGuard> {
  const open = async () => {
    const { own, assets } = await openTools()
    const leaving = editions.filter(isForOthers)
    const texts = leaving.map((edition) => assets(edition.assets))
    return {
      own,
      ownTexts: texts.flatMap(({ style, scripts }) => [style, ...scripts.map(({ text }) => text)]),
    }
  }
  const identities = records.map(({ identity }) => identity)
  const leaves = editions.some(isForOthers)
  const { former, diagnostics } = leaves ? await formerNames(casebook, practice, identities) : noFormer
  diagnostics.forEach(report)
  return leakGuard(program, practice, identities, former, open, () => caseTexts(folder))
}

const noFormer = { former: [], diagnostics: [] }

/** Brings word lists along, which a build that publishes nothing does without. */
async function formerNames(casebook: string, practice: Practice, horses: readonly HorseIdentity[]) {
  const { keepFormerNames, namesInCasebook } = await import('./former-names-on-disk.ts')
  return keepFormerNames(casebook, namesInCasebook(practice, horses))
}

const caseTexts = (folder: CasebookFolder) =>
  folder
    .list()
    .filter(({ path, kind }) => kind === 'file' && path.endsWith('.md'))
    .map(({ path }) => ({ path, text: new TextDecoder().decode(folder.read(path)) }))

/** Searches and locks what leaves; gives the folders that are held back. */
async function protect(
  { casebook, asOf, editions }: SiteOptions,
  { openTools, program }: SiteContext,
  builder: Builder,
  { practice, lessons, records, addresses, report }: MadeHorses,
  guard: LeakGuard,
): Promise<ReadonlySet<string>> {
  const held = new Set<string>()
  for (const edition of editions) {
    if (edition.protection === null) continue
    const clashes = sharedFolders(edition, records, addresses[edition.name] ?? {})
    clashes.forEach(report)
    if (clashes.length > 0) held.add(edition.folder)
    const units = await edition.protection.units(
      allHorses(edition, records, { practice, lessons, asOf, addresses }),
      {
        edition,
        program,
        casebook,
        guard,
        builder,
        report,
        hold: (folder) => held.add(folder),
        foldersOf: (owner) => foldersOfOwner(builder.standing.restsOn, owner),
        open: openTools,
      },
    )
    await builder.build(units, 'protecting')
  }
  for (const { folder } of guard.refusals()) held.add(folder)
  return held
}

/** Two horses that the portfolio would show in one folder, since their aliases are the same. */
function sharedFolders(
  { name, shownIn }: Edition,
  records: readonly HorseRecord[],
  addresses: Addresses,
): readonly Diagnostic[] {
  if (shownIn?.consent !== 'portfolio') return []
  const taken = new Map<string, string>()
  return records.flatMap(({ id, kept }) => {
    const folder = kept[name] === undefined ? null : shownIn.of(kept[name], addresses)
    const first = folder === null ? undefined : taken.get(folder)
    if (folder !== null) taken.set(folder, first ?? id)
    if (first === undefined) return []
    const { error, diagnostics } = reportOn(`${id}/horse.md`, '')
    error(
      'alias-shared',
      null,
      `${first} and ${id} have the same alias, so the portfolio has one place for both.`,
      {
        advice: 'give one of the two another alias; until then the portfolio stays as it was last published',
      },
    )
    return diagnostics
  })
}

/**
 * The pages over all horses as they were last published, but for these horses: an edition that is held back must not go
 * on naming them. Where it is not remembered what those pages were made from, or they would not be clean, they go.
 */
async function overallWithout(
  horses: ReadonlySet<string>,
  edition: Edition,
  all: AllHorses<unknown>,
  { program, openTools }: SiteContext,
  builder: Builder,
  guard: LeakGuard,
): Promise<ReadonlyMap<string, Fate>> {
  const unit = overallUnit(edition)
  const before = builder.before.units[unit]?.notes as readonly ShownHorse[] | null | undefined
  const removed = builder.outputs(unit).map(({ path }) => [path, 'removed'] as const)
  if (!before) return new Map(removed)
  const shown = before.filter(({ id }) => !horses.has(id))
  const then = { ...all, kept: shown.map(({ kept }) => kept) }
  const [overall] = editionUnits(edition, then, shown, program, openTools)
  if (overall) await builder.build([overall])
  const fates = new Map<string, Fate>(removed)
  for (const { path } of builder.outputs(unit)) {
    const bytes = builder.read(path)
    const isClean =
      bytes !== null && (await guard.isClean({ path, bytes, reader: { kind: 'everyone' } }, edition.folder))
    fates.set(path, isClean ? 'made' : 'removed')
  }
  return fates
}
