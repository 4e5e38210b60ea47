/**
 * The editions that leave the practitioner's machine, once all horses are made: owners' pages are locked, and every
 * finished file is searched for all that identifies anyone. One hit, and nothing at all is published.
 */
import type { Practice } from '../casebook/model.ts'
import { printDiagnostic } from '../casebook/print.ts'
import type { OwnWords } from '../identity/common-words.ts'
import { type Exception, identifiersOf } from '../identity/identifiers.ts'
import { digest } from './digest.ts'
import { placeIn, stage } from './disk/staging.ts'
import { Trouble } from './disk/trouble.ts'
import { editionFolders } from './edition-folders.ts'
import type { LeakHit, LeakSearch } from './leaks/leaks.ts'
import { leakSearch } from './leaks/leaks.ts'
import { printLeaks } from './leaks/report.ts'
import {
  type OwnerJob,
  type OwnerMaker,
  ownerPiece,
  ownersRobots,
  ownersShown,
} from './locked/owner-pieces.ts'
import { keepKeys, readKeys } from './locked/passphrases.ts'
import type { BuildOrder, BuildWorld } from './order.ts'
import { type HorsePieces, plain, type SharedPieces, waitingIn } from './pieces.ts'
import type { Bench } from './staged-horse.ts'
import type { Standing } from './standing.ts'
import type { Output, SharedPiece, State } from './state.ts'

/** What making and searching these editions needs of the program itself. */
export interface OthersMaker extends OwnerMaker {
  readonly own: OwnWords
  /** Style sheets and scripts as they stand in pages. */
  readonly ownTexts: readonly string[]
}

export interface OthersPieces extends SharedPieces {
  /** Names that were searched for in some forms only. */
  readonly exceptions: readonly Exception[]
}

interface Known {
  readonly state: State
  readonly standing: Standing
  readonly practice: Practice
  readonly horses: HorsePieces
  readonly shared: SharedPieces
}

/**
 * The pieces of these editions over all horses.
 * @throws Trouble that names file and place of everything that would have become public
 */
export async function othersPieces(
  order: BuildOrder,
  world: BuildWorld,
  bench: Bench,
  known: Known,
): Promise<OthersPieces> {
  if (!order.editions.some((edition) => edition !== 'practice')) {
    return { pieces: [], waiting: [], made: 0, exceptions: [] }
  }
  const searching = searchFor(world, known)
  const pieces: (readonly [string, SharedPiece])[] = []
  const waiting: string[] = []
  const hits: LeakHit[] = []
  let made = 0
  if (order.editions.includes('owner')) {
    const owners = await ownerPages(order, world, bench, known, searching)
    pieces.push(...owners.pieces)
    waiting.push(...owners.waiting)
    hits.push(...owners.hits)
    made += owners.made
  }
  if (order.editions.includes('portfolio')) {
    const searched = await searchPortfolio(order, world, bench, known, searching)
    pieces.push(['portfolio: searched', searched.piece])
    hits.push(...searched.hits)
    made += searched.isNews ? 1 : 0
  }
  if (hits.length > 0) throw new Trouble(printLeaks(hits))
  const exceptions = await searching.exceptions()
  pieces.push(['names', { key: searching.key, outputs: [], exceptions }])
  return { pieces, waiting, made, exceptions }
}

interface Searching {
  /** Names the program and all that it searches for. */
  readonly key: string
  /** Made when first needed: with nothing new there is nothing to search. */
  search(): Promise<LeakSearch>
  exceptions(): Promise<readonly Exception[]>
  open(): Promise<OthersMaker>
}

function searchFor(world: BuildWorld, { state, practice, horses }: Known): Searching {
  const identities = horses.pieces.flatMap(([, { forOthers }]) => forOthers?.identity ?? [])
  const key = digest([
    world.program,
    practice.name,
    JSON.stringify(practice.owners),
    JSON.stringify(identities),
  ])
  const open = once(() => world.makers.others())
  const list = once(async () => identifiersOf(identities, practice, (await open()).own))
  const search = once(async () => {
    const { own, ownTexts } = await open()
    return leakSearch({
      list: await list(),
      horses: identities,
      own,
      ownTexts: [...ownTexts, ...spellings(practice.name)],
    })
  })
  const before = state.shared.names
  const exceptions = async () =>
    (before?.key === key ? before.exceptions : undefined) ?? (await list()).exceptions
  return { key, search, exceptions, open }
}

function once<T>(make: () => Promise<T>): () => Promise<T> {
  let made: Promise<T> | null = null
  return () => {
    made ??= make()
    return made
  }
}

/** The practice's name may show; in a page its signs may be written as entities. */
const spellings = (name: string): string[] => [
  name,
  name.replaceAll('&', '&amp;').replaceAll("'", '&#x27;').replaceAll('"', '&quot;'),
]

async function ownerPages(
  order: BuildOrder,
  world: BuildWorld,
  bench: Bench,
  { state, standing, practice, horses }: Known,
  { search, key, open }: Searching,
) {
  const parts = horses.pieces.flatMap(([, { forOthers }]) => forOthers?.part ?? [])
  const owners = ownersShown(practice, parts)
  const { keys, diagnostics } = keepKeys(
    order.casebook,
    owners.map(({ id }) => id),
  )
  if (diagnostics.length > 0) throw new Trouble(diagnostics.map(printDiagnostic).join('\n\n'))

  const { files } = world
  const job: OwnerJob = {
    practice,
    parts,
    keys,
    search,
    searchKey: key,
    before: state.shared,
    stands: standing.stands,
  }
  const tools = { files, staging: bench.staging, partsFolder: bench.parts, open }
  const robots = stage(files, bench.staging, [ownersRobots])
  const pieces: (readonly [string, SharedPiece])[] = [['owner: robots', { key: '', outputs: plain(robots) }]]
  const waiting = [...waitingIn(robots)]
  const hits: LeakHit[] = []
  let made = 0
  for (const [done, owner] of owners.entries()) {
    world.report({ step: 'locking', done, total: owners.length })
    const one = await ownerPiece(owner, job, tools)
    pieces.push([one.name, one.piece])
    waiting.push(...waitingIn(one.staged))
    hits.push(...one.hits)
    if (one.staged.length > 0) made += 1
  }
  return { pieces, waiting, hits, made }
}

/**
 * The folder of each owner's page, by owner id: made where owners' pages are to be built, else as the casebook has
 * them. A file that cannot be used gives none; the building of owners' pages says why.
 */
export function ownerTokens(
  order: BuildOrder,
  practice: Practice,
  { pieces }: HorsePieces,
): Readonly<Record<string, string>> {
  const makes = order.editions.includes('owner')
  const parts = pieces.flatMap(([, { forOthers }]) => forOthers?.part ?? [])
  const shown = makes ? ownersShown(practice, parts) : practice.owners
  const ids = shown.map(({ id }) => id)
  const keys = makes ? keepKeys(order.casebook, ids).keys : readKeys(order.casebook, ids)
  return Object.fromEntries([...keys].map(([id, { token }]) => [id, token]))
}

/** Files that were searched for the same names before, and are the same, are not searched again. */
async function searchPortfolio(
  order: BuildOrder,
  world: BuildWorld,
  bench: Bench,
  { state, horses, shared }: Known,
  { search, key }: Searching,
): Promise<{ piece: SharedPiece; hits: LeakHit[]; isNews: boolean }> {
  const before = state.shared['portfolio: searched']
  const clean = new Set(before?.key === key ? before.clean : [])
  const waits = new Set([...horses.waiting, ...shared.waiting])
  const outputs = [...horses.pieces, ...shared.pieces]
    .flatMap(([, piece]) => piece.outputs)
    .filter(({ path }) => path.startsWith(`${editionFolders.portfolio.folder}/`))
  const fresh = outputs.filter((output) => !clean.has(nameOf(output)))
  const hits: LeakHit[] = []
  for (const { path } of fresh) {
    const bytes = world.files.read(placeIn(waits.has(path) ? bench.staging.folder : order.site, path))
    if (bytes === null) throw new Trouble(`${path} is gone. Build again.`)
    hits.push(...(await search()).scan({ path, bytes, reader: { kind: 'everyone' } }))
  }
  const piece = { key, outputs: [], clean: outputs.map(nameOf) }
  return { piece, hits, isNews: fresh.length > 0 || before?.key !== key }
}

const nameOf = ({ path, hash }: Output) => `${path} ${hash}`
