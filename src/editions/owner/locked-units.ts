/** Every owner's page as a unit of the build: searched inside, locked, searched outside. */
import type { Assets, AssetTexts } from '../../build/assets.ts'
import type { Builder } from '../../build/builder.ts'
import { cacheKey } from '../../build/cache-key.ts'
import { UserError } from '../../build/disk/errors.ts'
import type { BuiltUnit, Unit } from '../../build/unit.ts'
import type { Diagnostic } from '../../casebook/diagnostic.ts'
import type { Owner, Practice } from '../../casebook/model.ts'
import { printDiagnostic } from '../../casebook/print.ts'
import type { LeakGuard } from '../../leaks/guard.ts'
import type { OwnerPart } from '../../pages/owner/pages.ts'
import type { Words } from '../../pages/words/index.ts'
import type { Renderer } from '../../render/renderer.ts'
import { type HorseFragment, ownersShown } from './horse-fragment.ts'
import { keepKeys } from './keep-keys.ts'
import { type Locked, type LockKey, type LockMemory, markOf } from './lock.ts'
import { armoredIn, lockedOwnerPage, plainPage } from './locked-page.ts'
import { openToOthers } from './passphrases.ts'

interface LockTools {
  /** Of the owners' pages below the site. */
  readonly folder: string
  readonly assets: Assets
  readonly casebook: string
  readonly guard: LeakGuard
  readonly builder: Pick<Builder, 'read' | 'fragment'>
  /** Takes a warning to the person who builds. */
  report(diagnostic: Diagnostic): void
  open(): Promise<{ readonly renderer: Renderer; readonly words: Words; assets(of: Assets): AssetTexts }>
  /** Base-2 logarithm of the work of unlocking; the usual one where undefined. */
  readonly workFactor: number | undefined
}

/**
 * A unit for each owner with a horse to be shown. Passphrases are made where there is none.
 * @throws UserError when the file of passphrases cannot be used
 */
export function lockedUnits(
  practice: Practice,
  fragments: readonly HorseFragment[],
  tools: LockTools,
): readonly Unit<LockMemory | null>[] {
  const owners = ownersShown(practice, fragments)
  const ids = owners.map(({ id }) => id)
  const { keys, secret, diagnostics, isOpen } = keepKeys(tools.casebook, ids)
  if (diagnostics.length > 0) throw new UserError(diagnostics.map(printDiagnostic).join('\n\n'))
  if (isOpen) tools.report(openToOthers)
  return owners.map((owner) => {
    const found = keys.get(owner.id)
    if (found === undefined) throw new Error(`there is no passphrase for ${owner.id}`)
    const key = { ...found, secret }
    const own = fragments.filter((fragment) => fragment.owner === owner.id)
    return {
      name: `owner: ${owner.id}`,
      key: cacheKey(tools.guard.key, key.token, owner, practice, own),
      // A changed passphrase is no part of the key, which is written down.
      isCurrent: (locked) => locked?.mark === markOf(key),
      make: async ({ put }, before) => {
        const made = await lockedFile({ practice, owner, key, fragments: own }, before, tools)
        if (made) put(made.file)
        return made?.memory ?? null
      },
    }
  })
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
  const { renderer, words, assets } = await tools.open()
  const { style, scripts } = assets(tools.assets)
  const inlined = { style, script: scripts.map(({ text }) => text).join('\n') }
  const path = `${tools.folder}/${key.token}/index.html`
  const markup = fragments.map((fragment) => markupOf(fragment, tools))
  const plain = await plainPage(practice, owner, markup, renderer, inlined, words)
  const reader = { kind: 'owner', owner: owner.id } as const
  if (!(await guard.isClean({ path, bytes: Buffer.from(plain), reader, random: [key.token] }))) return null

  const previous = previousLock(before, tools)
  const page = await lockedOwnerPage(practice, plain, key, previous, renderer, inlined, words, workFactor)
  const isClean = await guard.isClean({
    path,
    bytes: Buffer.from(page.html),
    reader: { kind: 'everyone' },
    sealed: [page.sealed],
    random: [key.token, page.locked.checksum],
  })
  if (!isClean) return null
  const { armored: _, ...memory } = page.locked
  return { file: { path, text: page.html }, memory }
}

const markupOf = ({ anchor, name, fragment }: HorseFragment, { builder }: LockTools): OwnerPart => ({
  anchor,
  name,
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
