/** A fault of the program in the work for one horse: that horse is broken, and every other one is made. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { UserError } from '../../../src/build/disk/errors.ts'
import type { Edition } from '../../../src/editions/edition.ts'
import type { HorseSummary } from '../../../src/pages/shared/summary.ts'
import {
  build,
  contents,
  type Place,
  place,
  plainEdition,
  plainWith,
  threeHorses,
  visitText,
} from '../../build/kit.ts'

let at: Place
beforeEach(() => {
  at = place(threeHorses)
})
afterEach(() => at.done())

type Tools = Parameters<Edition<HorseSummary>['ofHorse']>[1]

/** The plain edition, of which one horse has this happen after its first page was made. */
const faultAt = (id: string, fault: (tools: Tools) => Promise<never> | never) =>
  plainWith(async (horse, tools) => {
    if (horse.horse.id !== id) return plainEdition.ofHorse(horse, tools)
    tools.put({ path: `${id}/index.html`, text: 'half done' })
    return fault(tools)
  })

const endless = (depth: number): number => endless(depth + 1) + 1

const pagesOf = (site: Record<string, string>, id: string) =>
  Object.fromEntries(Object.entries(site).filter(([path]) => path.startsWith(`practice/${id}/`)))

describe('a fault in the work for one horse', () => {
  it.each([
    [
      'a thrown fault',
      () => Promise.reject(new Error('no such toe.')),
      'a fault of this program: no such toe',
    ],
    ['a thing that is no fault', () => Promise.reject('what'), 'a fault of this program: what'],
    ['a stack too deep', () => endless(0) as never, 'something in its files is too deep inside each other'],
  ])('%s leaves its last pages as they were and makes the others', async (_, fault, words) => {
    await build(at)
    const before = contents(at.site)
    at.write('alder/2026-05-11.md', visitText('2026-05-11', 90))
    at.write('bramble/2026-05-11.md', visitText('2026-05-11', 91))
    at.write('clover/2026-05-11.md', visitText('2026-05-11', 92))
    const built = await build(at, { editions: faultAt('bramble', fault) })
    const after = contents(at.site)
    expect(built.horses).toEqual({ made: 2, unchanged: 0, broken: 1 })
    expect(pagesOf(after, 'bramble')).toEqual(pagesOf(before, 'bramble'))
    expect(Object.keys(after)).toEqual(
      expect.arrayContaining(['practice/alder/2026-05-11.html', 'practice/clover/2026-05-11.html']),
    )
    expect(after['practice/index.html']).toContain('"broken":[{"id":"bramble","problems":1}]')
    expect(built.diagnostics).toMatchObject([
      {
        code: 'program-fault',
        level: 'error',
        file: 'bramble/horse.md',
        message: `The pages of bramble could not be made: ${words}.`,
        advice: expect.stringContaining('take back what was last changed'),
      },
    ])
  })

  it('is tried again at the next build, though nothing was changed', async () => {
    await build(at, { editions: faultAt('bramble', () => Promise.reject(new Error('once'))) })
    expect(contents(at.site)).not.toHaveProperty(['practice/bramble/index.html'])
    const built = await build(at)
    expect(built.horses).toEqual({ made: 1, unchanged: 2, broken: 0 })
    expect(built.diagnostics).toEqual([])
    expect(contents(at.site)).toHaveProperty(['practice/bramble/2026-04-06.html'])
  })

  it('is the whole build’s where the disk refuses something', async () => {
    const full = () => Promise.reject(new UserError('site could not be written: the disk is full'))
    await expect(build(at, { editions: faultAt('bramble', full) })).rejects.toThrow('the disk is full')
  })
})
