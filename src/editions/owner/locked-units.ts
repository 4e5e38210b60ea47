/** Every owner's page as a unit of the build: searched inside, locked, searched outside. */
import type { Assets, AssetTexts } from '../../build/assets.ts'
import type { Builder } from '../../build/builder.ts'
import { cacheKey } from '../../build/cache-key.ts'
import type { BuiltUnit, Unit } from '../../build/unit.ts'
import type { Diagnostic } from '../../casebook/diagnostic.ts'
import type { Owner, Practice } from '../../casebook/model.ts'
import type { LeakGuard } from '../../leaks/guard.ts'
import type { OwnerPart } from '../../pages/owner/pages.ts'
import { keepKeys } from '../lock/keep-keys.ts'
import { type Locked, type LockKey, type LockMemory, markOf } from '../lock/lock.ts'
import { openToOthers, weakPassphrase } from '../lock/passphrases.ts'
import { ownerOfThatId, practitionersEntry } from '../lock/practitioners-entry.ts'
import { weakPassphrases } from '../lock/weak-passphrases.ts'
import { type HorseFragment, languageOf, ownersShown } from './horse-fragment.ts'
import { armoredIn, lockedOwnerPage, plainPage } from './locked-page.ts'
import type { ForOwners } from './page-tools.ts'

interface LockTools {
  /** Of the owners' pages below the site. */
  readonly folder: string
  readonly assets: Assets
  readonly casebook: string
  readonly guard: LeakGuard
  readonly builder: Pick<Builder, 'read' | 'fragment' | 'build'>
  /** Holds a folder of the site back: it stays as it was. */
  hold(folder: string): void
  /** The folders of the site in which horses are shown to an owner now. */
  foldersOf(owner: string): readonly string[]
  /** Takes a warning to the person who builds. */
  report(diagnostic: Diagnostic): void
  open(): Promise<{ readonly forOwners: ForOwners; assets(of: Assets): AssetTexts }>
  /** Base-2 logarithm of the work of unlocking; the usual one where undefined. */
  readonly workFactor: number | undefined
}

/**
 * A unit for each owner with a horse to be shown. Passphrases are made where there is none; the page of an owner whose
 * passphrase or token cannot be used stays as it was.
 * @throws UserError when the disk refuses
 */
export async function lockedUnits(
  practice: Practice,
  fragments: readonly HorseFragment[],
  tools: LockTools,
): Promise<readonly Unit<LockMemory | null>[]> {
  const owners = ownersShown(practice, fragments)
  const ids = owners.map(({ id }) => id).filter((id) => id !== practitionersEntry)
  if (ids.length < owners.length) tools.report(ownerOfThatId)
  const { keys, secret, diagnostics, isOpen } = keepKeys(tools.casebook, ids)
  for (const diagnostic of diagnostics) tools.report(diagnostic)
  if (isOpen) tools.report(openToOthers)
  for (const id of await weakPassphrases('owners', keys, secret, tools.builder))
    tools.report(weakPassphrase(id))
  return owners.map((owner) => {
    const found = keys.get(owner.id)
    if (found === undefined) return heldUnit(owner, tools)
    const key = { ...found, secret }
    const own = fragments.filter((fragment) => fragment.owner === owner.id)
    return {
      name: nameOf(owner),
      key: cacheKey(tools.guard.key, key.token, owner, practice, own),
      // A changed passphrase is no part of the key, which is written down.
      isCurrent: (locked) => locked?.mark === markOf(key),
      make: async ({ put, holdBack }, before) => {
        const made = await lockedFile({ practice, owner, key, fragments: own }, before, tools)
        if (made) put(made.file)
        else holdBack()
        return made?.memory ?? null
      },
    }
  })
}

const nameOf = ({ id }: Owner) => `owner: ${id}`

function heldUnit(owner: Owner, tools: LockTools): Unit<LockMemory | null> {
  for (const folder of tools.foldersOf(owner.id)) tools.hold(folder)
  return {
    name: nameOf(owner),
    key: '',
    make: async ({ holdBack }) => {
      holdBack()
      return null
    },
  }
}

interface Subject {
  readonly practice: Practice
  readonly owner: Owner
  readonly key: LockKey
  readonly fragments: readonly HorseFragment[]
}

/** The locked page; null where the search found anything, so that nothing is put. */
async function lockedFile(
  { practice, owner, key, fragments }: Subject,
  before: BuiltUnit<LockMemory | null> | undefined,
  tools: LockTools,
) {
  const { guard, workFactor } = tools
  const { forOwners, assets } = await tools.open()
  const { renderer, words } = forOwners(languageOf(practice, owner.id))
  const { style, scripts } = assets(tools.assets)
  const inlined = { style, script: scripts.map(({ text }) => text).join('\n') }
  const place = `${tools.folder}/${key.token}`
  const path = `${place}/index.html`
  const markup = fragments.map((fragment) => markupOf(fragment, tools))
  const plain = await plainPage(practice, owner, markup, renderer, inlined, words)
  const reader = { kind: 'owner', owner: owner.id } as const
  if (!(await guard.isClean({ path, bytes: Buffer.from(plain), reader, random: [key.token] }, place)))
    return null

  const previous = previousLock(before, tools)
  const page = await lockedOwnerPage(practice, plain, key, previous, renderer, inlined, words, workFactor)
  const isClean = await guard.isClean(
    {
      path,
      bytes: Buffer.from(page.html),
      reader: { kind: 'everyone' },
      sealed: [page.sealed],
      random: [key.token, page.locked.checksum],
    },
    place,
  )
  if (!isClean) return null
  const { armored: _, ...memory } = page.locked
  return { file: { path, text: page.html }, memory }
}

const markupOf = ({ anchor, name, brief, fragment }: HorseFragment, { builder }: LockTools): OwnerPart => ({
  anchor,
  name,
  brief,
  html: builder.fragment(fragment),
})

/** How the page was locked last time, with the locked part out of the page as it was published. */
function previousLock(
  before: BuiltUnit<LockMemory | null> | undefined,
  { builder }: LockTools,
): Locked | null {
  const output = before?.outputs[0]
  const memory = before?.notes ?? null
  if (output === undefined || memory === null) return null
  const bytes = builder.read(output.path)
  const armored = bytes === null ? null : armoredIn(new TextDecoder().decode(bytes))
  return armored === null ? null : { ...memory, armored }
}
