/** Every owner's locked page: kept where nothing changed, else made, searched, locked and set waiting. */
import type { Owner, Practice } from '../../casebook/model.ts'
import type { OwnerPart } from '../../pages/owner/pages.ts'
import { robots } from '../../pages/owner/pages.ts'
import type { Words } from '../../pages/words/index.ts'
import type { Renderer } from '../../render/renderer.ts'
import { digest } from '../digest.ts'
import type { Files } from '../disk/files.ts'
import { placeIn, type Staged, type Staging, stage } from '../disk/staging.ts'
import { Trouble } from '../disk/trouble.ts'
import { editionFolders } from '../edition-folders.ts'
import type { KeptPart } from '../for-others.ts'
import type { LeakHit, LeakSearch } from '../leaks/leaks.ts'
import { readPart } from '../parts.ts'
import type { SharedPiece } from '../state.ts'
import { fingerprintOf, type Locked, type LockMemory } from './lock.ts'
import { armoredIn, lockedOwnerPage, type OwnerAssets, plainPage } from './owner-page.ts'
import type { OwnerKey, OwnerKeys } from './passphrases.ts'

export interface OwnerJob {
  readonly practice: Practice
  readonly parts: readonly KeptPart[]
  readonly keys: OwnerKeys
  /** Names all that the search knows, so that a page is searched again when that changes. */
  readonly searchKey: string
  readonly search: () => Promise<LeakSearch>
  /** The pieces of the last build, by name. */
  readonly before: Readonly<Record<string, SharedPiece>>
  /** Whether the site still holds a piece as it was written. */
  readonly stands: (piece: SharedPiece) => boolean
}

export interface OwnerMaker {
  readonly renderer: Renderer
  readonly words: Words
  readonly ownerAssets: OwnerAssets
  /** Base-2 logarithm of the work of unlocking. */
  readonly workFactor: number
}

export interface OwnerTools {
  readonly files: Files
  readonly staging: Staging
  readonly partsFolder: string
  readonly open: () => Promise<OwnerMaker>
}

export interface MadeOwner {
  readonly name: string
  readonly piece: SharedPiece
  readonly staged: readonly Staged[]
  readonly hits: readonly LeakHit[]
}

/** Owners who have at least one horse to be shown, in the order of practice.md. */
export const ownersShown = (practice: Practice, parts: readonly KeptPart[]): readonly Owner[] =>
  practice.owners.filter(({ id }) => parts.some(({ owner }) => owner === id))

/** One owner's piece. Where the search finds anything nothing is locked, and the piece holds no page. */
export async function ownerPiece(owner: Owner, job: OwnerJob, tools: OwnerTools): Promise<MadeOwner> {
  const name = `owner: ${owner.id}`
  const ownKey = job.keys.get(owner.id)
  if (ownKey === undefined) throw new Error(`there is no passphrase for ${owner.id}`)
  const parts = job.parts.filter((part) => part.owner === owner.id)
  const before = job.before[name]
  const print = before?.locked ? fingerprintOf(ownKey.passphrase, before.locked.salt) : 'none yet'
  const key = digest([job.searchKey, ownKey.token, print, JSON.stringify([owner, job.practice, parts])])
  if (before?.key === key && job.stands(before)) return { name, piece: before, staged: [], hits: [] }
  return makeOwner(name, owner, ownKey, parts, before, job, tools)
}

async function makeOwner(
  name: string,
  owner: Owner,
  ownKey: OwnerKey,
  parts: readonly KeptPart[],
  before: SharedPiece | undefined,
  job: OwnerJob,
  tools: OwnerTools,
): Promise<MadeOwner> {
  const { renderer, words, ownerAssets, workFactor } = await tools.open()
  const search = await job.search()
  const { folder } = editionFolders.owner
  const reader = { kind: 'owner', owner: owner.id } as const
  const path = `${folder}/${ownKey.token}/index.html`
  const plain = await plainPage(
    job.practice,
    owner,
    parts.map((part) => textOf(part, tools)),
    renderer,
    ownerAssets,
    words,
  )
  const inside = search.scan({ path, bytes: Buffer.from(plain), reader, chance: [ownKey.token] })
  const nothing = { key: '', outputs: [] }
  if (inside.length > 0) return { name, piece: nothing, staged: [], hits: inside }

  const previous = previousLock(before, tools)
  const page = await lockedOwnerPage(
    job.practice,
    plain,
    ownKey,
    previous,
    renderer,
    ownerAssets,
    words,
    workFactor,
  )
  const outside = search.scan({
    path,
    bytes: Buffer.from(page.html),
    reader: { kind: 'everyone' },
    sealed: [page.sealed],
    chance: [ownKey.token, page.locked.checksum],
  })
  if (outside.length > 0) return { name, piece: nothing, staged: [], hits: outside }

  const staged = stage(tools.files, tools.staging, [{ path, text: page.html }])
  const { armored: _, ...locked } = page.locked
  const print = fingerprintOf(ownKey.passphrase, locked.salt)
  const key = digest([job.searchKey, ownKey.token, print, JSON.stringify([owner, job.practice, parts])])
  const outputs = staged.map(({ path: at, hash, size, modified }) => ({ path: at, hash, size, modified }))
  return { name, piece: { key, outputs, locked }, staged, hits: [] }
}

function textOf({ anchor, name, kept }: KeptPart, { files, partsFolder }: OwnerTools): OwnerPart {
  const html = readPart(files, partsFolder, kept)
  if (html === null) throw new Trouble(`A kept part of ${name}'s page is gone. Build again.`)
  return { anchor, name, html }
}

/** How the page was locked last time, with the locked part out of the page as it was published. */
function previousLock(before: SharedPiece | undefined, { files, staging }: OwnerTools): Locked | null {
  const output = before?.outputs[0]
  const memory: LockMemory | undefined = before?.locked
  if (output === undefined || memory === undefined) return null
  const bytes = files.read(placeIn(staging.site, output.path))
  const armored = bytes === null ? null : armoredIn(new TextDecoder().decode(bytes))
  return armored === null ? null : { ...memory, armored }
}

/** What stands beside the owners' folders: it keeps search engines away and names nobody. */
export const ownersRobots = { path: `${editionFolders.owner.folder}/robots.txt`, text: robots } as const
