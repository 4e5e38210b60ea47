/** What a practice teaches, in the build: it changes with the month and with old readings, and with nothing else. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { addDays } from '../../../src/hoof/dates.ts'
import { build, horseText, type Place, pages, place, practiceText, visitText } from '../../build/kit.ts'

const ids = Array.from({ length: 6 }, (_, i) => `horse-${i}`)
const days = Array.from({ length: 6 }, (_, i) => addDays('2026-01-05', 30 * i))
/** Readings that scatter by a few millimetres, the same each time. */
const toe = (horse: number, visit: number) => 92 + 0.5 * visit + 2 * Math.sin(7 * horse + 3 * visit)

let at: Place
beforeEach(() => {
  const files = ids.flatMap((id, horse) => [
    [`${id}/horse.md`, horseText(id)],
    ...days.map((day, visit) => [`${id}/${day}.md`, visitText(day, Math.round(toe(horse, visit)))]),
  ])
  at = place({ 'practice.md': practiceText, ...Object.fromEntries(files) })
})
afterEach(() => at.done())

const asOf = '2026-06-20'
const made = async (day = asOf) => (await build(at, { asOf: day })).horses

describe('what a practice teaches', () => {
  it('is not changed by a visit of this month: the other horses keep their pages', async () => {
    await made()
    at.write('horse-2/2026-06-15.md', visitText('2026-06-15', 130))
    expect(await made()).toEqual({ made: 1, unchanged: 5, broken: 0 })
  })

  it('is not changed by the words of an old visit', async () => {
    await made()
    at.write(`horse-2/${days[2]}.md`, `${visitText(days[2] ?? '', Math.round(toe(2, 2)))}\nShe stood well.\n`)
    expect(await made()).toEqual({ made: 1, unchanged: 5, broken: 0 })
  })

  it('is not changed by a draft', async () => {
    await made()
    at.write('horse-3/2026-03-20.md', visitText('2026-03-20', 140).replace('date:', 'draft: yes\ndate:'))
    expect(await made()).toEqual({ made: 1, unchanged: 5, broken: 0 })
  })

  it('is the same whatever the order of builds', async () => {
    await made('2026-04-30')
    const odd = `horse-4/${days[1]}.md`
    at.write(odd, visitText(days[1] ?? '', 119))
    await made('2026-05-31')
    await made()
    const fresh = place({})
    await build({ ...fresh, casebook: at.casebook }, { asOf })
    expect(pages(at.site)).toEqual(pages(fresh.site))
    fresh.done()
  })

  it('learns from much noisier readings of old, for all', async () => {
    await made()
    for (const [horse, id] of ids.entries())
      for (const [visit, day] of days.entries())
        at.write(`${id}/${day}.md`, visitText(day, Math.round(92 + 9 * Math.sin(5 * horse + 11 * visit))))
    expect((await made()).made).toBe(6)
    const list = JSON.parse(pages(at.site)['practice/index.html'] ?? '{}')
    const { lessons, learned } = list.lessons
    // The sixth visit is of this month.
    expect(lessons['gauge toe-length'].readings).toBe(6 * 5 * 4)
    expect(lessons['gauge toe-length'].e).toBeGreaterThan(1.4)
    expect(learned.measures['gauge toe-length'].e).toBeCloseTo(lessons['gauge toe-length'].e, 0)
  })
})
