/**
 * Whatever is edited in whatever order, a build that remembers and one that does not give the same bytes. The short run
 * tries 15 sequences of edits for each way to remember.
 */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { warmOver } from '../../../src/apps/preview/warm.ts'
import type { Built } from '../../../src/apps/site/build-site.ts'
import { disk } from '../../../src/build/disk/real-disk.ts'
import {
  build,
  context,
  horseText,
  type Place,
  pages,
  place,
  threeHorses,
  visitText,
} from '../../build/kit.ts'
import { runs } from '../../runs.ts'

const ids = ['alder', 'bramble', 'clover', 'dock'] as const
const dates = ['2026-03-02', '2026-04-06', '2026-05-11'] as const

type Edit =
  | { readonly do: 'visit'; readonly id: string; readonly date: string; readonly toe: number }
  | { readonly do: 'rename'; readonly id: string; readonly name: string }
  | { readonly do: 'remove horse' | 'remove visit'; readonly id: string; readonly date: string }
  | { readonly do: 'practice'; readonly name: string }
  | { readonly do: 'build' | 'touch nothing' }

const edit: fc.Arbitrary<Edit> = fc.oneof(
  fc.record({
    do: fc.constant('visit' as const),
    id: fc.constantFrom(...ids),
    date: fc.constantFrom(...dates),
    toe: fc.integer({ min: 85, max: 100 }),
  }),
  fc.record({
    do: fc.constant('rename' as const),
    id: fc.constantFrom(...ids),
    name: fc.constantFrom('Ash', 'Birch', 'Cedar'),
  }),
  fc.record({
    do: fc.constantFrom('remove horse' as const, 'remove visit' as const),
    id: fc.constantFrom(...ids),
    date: fc.constantFrom(...dates),
  }),
  fc.record({ do: fc.constant('practice' as const), name: fc.constantFrom('Reed Bank', 'Sedge Row') }),
  fc.record({ do: fc.constantFrom('build' as const, 'touch nothing' as const) }),
)

/** How the remembering build is done, and what it hears of each change. */
interface Remembering {
  build(): Promise<Built>
  changed(path: string): void
}

async function carryOut(
  at: Place,
  files: Map<string, string>,
  one: Edit,
  { build, changed }: Remembering,
): Promise<void> {
  const put = (path: string, text: string) => {
    files.set(path, text)
    at.write(path, text)
    changed(path)
  }
  const drop = (path: string) => {
    if (!files.delete(path)) return
    at.remove(path)
    changed(path)
  }
  if (one.do === 'build') await build()
  if (one.do === 'visit') {
    if (!files.has(`${one.id}/horse.md`)) put(`${one.id}/horse.md`, horseText(one.id))
    put(`${one.id}/${one.date}.md`, visitText(one.date, one.toe))
  }
  if (one.do === 'rename') put(`${one.id}/horse.md`, horseText(one.name))
  if (one.do === 'remove visit') drop(`${one.id}/${one.date}.md`)
  if (one.do === 'remove horse') {
    for (const path of [...files.keys()]) if (path.startsWith(`${one.id}/`)) drop(path)
  }
  if (one.do === 'practice')
    put('practice.md', `---\npractice: ${one.name}\nowners:\n  ash: {name: Ash Tern}\n---\n`)
}

const now = () => Date.now()

/** Each build in a process of its own, which remembers on the disk. */
const onTheDisk = (at: Place): Remembering => ({ build: () => build(at, { now }), changed: () => {} })

/** All builds in one process, which looks at nothing that it did not hear of. */
function inOneProcess(at: Place): Remembering {
  const warm = warmOver(disk, at.casebook, at.site)
  const { openTools } = context()
  return { build: () => build(at, { now, ...warm, openTools }), changed: warm.invalidate }
}

it.each([
  ['on the disk', onTheDisk],
  ['in one process', inOneProcess],
])(
  'a build remembered %s equals a fresh one after any edits',
  async (_, remembering) => {
    await fc.assert(
      fc.asyncProperty(fc.array(edit, { minLength: 1, maxLength: 14 }), async (edits) => {
        const at = place(threeHorses)
        const fresh = place({})
        try {
          const files = new Map(Object.entries(threeHorses))
          const remembered = remembering(at)
          for (const one of edits) await carryOut(at, files, one, remembered)
          const built = await remembered.build()
          await build({ ...fresh, casebook: at.casebook })
          expect(built.diagnostics.filter(({ level }) => level === 'error')).toEqual([])
          expect(pages(at.site)).toEqual(pages(fresh.site))
        } finally {
          at.done()
          fresh.done()
        }
      }),
      { numRuns: runs(15, 300), seed: 20260601 },
    )
  },
  1_800_000,
)
