import { setTimeout as rest } from 'node:timers/promises'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { type Recheck, type RecheckOptions, recheck } from '../../../src/apps/preview/recheck.ts'
import { UserError } from '../../../src/build/disk/errors.ts'
import { eventually } from './eventually.ts'

const pace = { soon: 10, seldom: 100_000, slice: 0, pause: 1 }

let look: Recheck
afterEach(() => look.close())

/** Starts looking at these steps and counts how often something was found. */
function start(
  steps: RecheckOptions['steps'],
  isBusy = () => false,
  at = pace,
): { readonly found: () => number } {
  const found = vi.fn()
  look = recheck({ steps, isBusy, found }, at)
  look.soon()
  return { found: () => found.mock.calls.length }
}

describe('a second look', () => {
  it('tells once of what it found, after it looked at everything', async () => {
    let steps = 0
    const { found } = start(function* () {
      for (const isOther of [true, false, true, false]) {
        expect(found()).toBe(0)
        steps += 1
        yield isOther
      }
    })
    await eventually(() => expect(found()).toBe(1))
    expect(steps).toBe(4)
  })

  it('says nothing when all is as it was', async () => {
    let looks = 0
    const { found } = start(() => {
      looks += 1
      return [false, false]
    })
    await eventually(() => expect(looks).toBe(1))
    await rest(30)
    expect(found()).toBe(0)
  })

  it('begins once for many changes, and again for one that comes while it looks', async () => {
    let looks = 0
    start(function* () {
      looks += 1
      yield false
      if (looks === 1) look.soon()
      yield false
    })
    look.soon()
    look.soon()
    await eventually(() => expect(looks).toBe(2))
    await rest(50)
    expect(looks).toBe(2)
  })

  it('is not put off by changes that go on and on', async () => {
    let looks = 0
    start(() => {
      looks += 1
      return []
    })
    for (let change = 0; change < 20; change += 1) {
      look.soon()
      await rest(3)
    }
    expect(looks).toBeGreaterThan(1)
  })

  it('lets others go first', async () => {
    let isBusy = true
    let steps = 0
    const { found } = start(
      function* () {
        for (const isOther of [false, true]) {
          steps += 1
          yield isOther
        }
      },
      () => isBusy,
    )
    await rest(40)
    expect([steps, found()]).toEqual([1, 0])
    isBusy = false
    await eventually(() => expect(found()).toBe(1))
  })

  it('looks again where nothing happens, also after one that the disk refused', async () => {
    let looks = 0
    const { found } = start(
      () => {
        looks += 1
        if (looks === 1) throw new UserError('the disk reports a fault')
        return [true]
      },
      () => false,
      { ...pace, seldom: 5 },
    )
    await eventually(() => expect(found()).toBeGreaterThan(1))
  })

  it('ends when it is closed', async () => {
    let steps = 0
    const { found } = start(function* () {
      for (;;) {
        steps += 1
        yield true
      }
    })
    await eventually(() => expect(steps).toBeGreaterThan(1))
    look.close()
    const before = steps
    await rest(20)
    expect([steps, found()]).toEqual([before, 0])
  })
})
