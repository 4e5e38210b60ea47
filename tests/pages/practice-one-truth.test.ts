/** One truth on all pages of a horse: the same reading reads the same everywhere, and no sentence says what cannot be. */
import { beforeAll, describe, expect, it } from 'vitest'
import type { ShownReading } from '../../src/pages/practice/case/shown-reading.ts'
import { summarise } from '../../src/pages/practice/index.ts'
import type { MeasuresPage } from '../../src/pages/practice/measures/measures-page.ts'
import { named, textOf } from '../render/read-html.ts'
import { demoDay, demoPages, renderDemo } from './demo-pages.ts'

/** Every reading that a page's data shows, at any depth. */
function shownIn(model: unknown): readonly ShownReading[] {
  if (typeof model !== 'object' || model === null) return []
  if ('reading' in model && 'text' in model) return [model as ShownReading]
  return Object.entries(model).flatMap(([key, value]) => (key === 'w' ? [] : shownIn(value)))
}

/** The figure without its unit, its sign, and the day beside it: a column's head or the words beside it have those. */
const bare = (text: string): string =>
  text
    .replace(/\(.*\)/, '')
    .replace(/[^\d./ ]/g, '')
    .replace(/[ /]+$/, '')
    .trim() || text

describe.each(demoPages.map((one) => [one.input.horse.name, one] as const))('%s', (_, { input, pages }) => {
  const { assessment, format } = input
  const shown = pages.flatMap(({ path, model }) => shownIn(model).map((one) => ({ ...one, path })))

  it('shows each reading alike wherever it stands', () => {
    const seen = new Map<string, Map<string, string>>()
    for (const { reading, text, path } of shown) {
      const texts = seen.get(reading) ?? new Map<string, string>()
      // Level heels are told by a word where their side is told as well.
      const figure = text === format.words.practice.problem.level ? '0' : bare(text)
      texts.set(figure, path)
      seen.set(reading, texts)
    }
    const differing = [...seen].filter(([, texts]) => texts.size > 1)
    expect(differing.map(([reading, texts]) => [reading, ...texts])).toEqual([])
    if (assessment.visits.length > 1) expect(shown.length).toBeGreaterThan(seen.size)
  })

  it('shows what was read, and nothing else', () => {
    const read = new Map(
      assessment.readings.map(({ foot, measure, visit, stage, source, value }) => [
        `${foot} ${measure} ${visit} ${stage} ${source === 'photo' ? 'photo' : 'gauge'}`,
        bare(format.figure(measure, value)),
      ]),
    )
    for (const { reading, text, path } of shown) {
      if (!/ (?:gauge|photo)$/.test(reading)) continue
      const figure = text === format.words.practice.problem.level ? '0' : bare(text)
      expect([figure, path]).toEqual([read.get(reading), path])
    }
  })

  it('has no figure on the front page that its own page lacks', () => {
    const texts = new Set(shown.map(({ text }) => bare(text)))
    const figures = summarise(input).problems.match(/\d[\d./ ]*(?= ?(?:mm|cm|in|°))/g) ?? []
    for (const figure of figures) expect([...texts]).toContain(figure.trim())
  })

  it('names no second day for horn that a followed feature tells of', () => {
    const page = pages.find(({ template }) => template === 'practice/measures')?.model as MeasuresPage
    for (const { foot, place, state } of assessment.growOut) {
      if (place !== 'toe' || state === 'grown out') continue
      const name = format.words.base.feet[foot]
      const said = page.newGrowth.find((text) => text.toLowerCase().startsWith(name))
      expect(said ?? '').not.toMatch(/ 20\d\d/)
    }
  })

  it('mixes no stages in a drawing of then and now', () => {
    const sides = pages.flatMap(({ model }) => sidesIn(model))
    for (const { foot, latest } of sides) {
      const view = assessment.geometry.find((one) => one.foot === foot)
      if (latest !== null) expect(view?.first.stage).toBe(view?.latest.stage)
    }
  })
})

function sidesIn(model: unknown): readonly { readonly foot: string; readonly latest: unknown }[] {
  if (typeof model !== 'object' || model === null) return []
  if ('kind' in model && model.kind === 'side') return [model as never]
  return Object.values(model).flatMap(sidesIn)
}

describe('hand against photograph in the demo', () => {
  it('plots every pair that was read both ways', () => {
    for (const { input, pages } of demoPages) {
      const page = pages.find(({ template }) => template === 'practice/measures')?.model as MeasuresPage
      const key = (one: { foot: string; measure: string; visit: string; stage: string }) =>
        `${one.foot} ${one.measure} ${one.visit} ${one.stage}`
      const { readings } = input.assessment
      const photos = new Set(readings.filter(({ source }) => source === 'photo').map(key))
      const both = readings.filter((one) => one.source === 'entered' && photos.has(key(one)))
      const plotted = page.agreement.flatMap(({ pairs }) => pairs)
      if (page.agreement.length === 2) expect(plotted).toHaveLength(both.length)
      for (const { pairs, limits, bias } of page.agreement) {
        const mean = pairs.reduce((sum, { difference }) => sum + difference, 0) / pairs.length
        expect(bias.at).toBeCloseTo(mean)
        expect((limits[0]?.at ?? 0) + (limits[1]?.at ?? 0)).toBeCloseTo(2 * mean)
      }
    }
    expect(
      demoPages.flatMap(({ pages }) => pages.flatMap(({ model }) => (model as MeasuresPage).agreement ?? []))
        .length,
    ).toBeGreaterThan(1)
  })
})

const monthNames =
  'January February March April May June July August September October November December'.split(' ')
const day = (text: string): string => {
  const [number = '', month = '', year = ''] = text.split(' ')
  const index = monthNames.findIndex((name) => name.startsWith(month))
  return `${year.length === 2 ? `20${year}` : year}-${String(index + 1).padStart(2, '0')}-${number.padStart(2, '0')}`
}
const date = String.raw`(\d{1,2} [A-Z][a-z]+ \d{2,4})`

describe('every sentence of the demo’s pages', () => {
  let pages: readonly { readonly path: string; readonly lines: readonly string[] }[] = []
  beforeAll(async () => {
    const all = demoPages.flatMap(({ pages: views }) => views)
    pages = await Promise.all(
      all.map(async (view) => {
        const html = await renderDemo(view)
        const main = html.slice(html.indexOf('<main'), html.indexOf('</main>'))
        const lines = ['p', 'li', 'dd', 'figcaption'].flatMap((name) =>
          named(main, name).map((node) => textOf(node)),
        )
        return { path: view.path, lines: lines.map((text) => text.replace(/\s+/g, ' ').trim()) }
      }),
    )
  }, 120_000)

  it('are there', () => expect(pages.flatMap(({ lines }) => lines).length).toBeGreaterThan(1_000))

  it('tell no day of the past as one to come', () => {
    const ahead = new RegExp(
      `(?:at the ground about|reach(?:es)? the ground about|° about|(?:mm|in|cm) about|\\d about|latest|not before|is planned for|Due on) ${date}`,
      'g',
    )
    for (const { path, lines } of pages) {
      // A visit's own page says what it planned on its day.
      if (/\d{4}-\d\d-\d\d/.test(path)) continue
      for (const line of lines)
        for (const [said, when = ''] of line.matchAll(ahead))
          expect(day(when) >= demoDay, `${path}: ${said} in ${line}`).toBe(true)
    }
  })

  it('begin no range before today', () => {
    const range = new RegExp(`95 % interval ${date} to`, 'g')
    for (const { path, lines } of pages)
      for (const line of lines)
        for (const [said, when = ''] of line.matchAll(range))
          expect(day(when) >= demoDay, `${path}: ${said}`).toBe(true)
  })

  it('have no verdict beside a contrary one', () => {
    const contrary = [
      /on target.*(?:expected by|about \d+ [A-Z]|in over 18 months|no date yet)/,
      /on target.*(?:worsening|got worse)/,
      /improving.*(?:got worse|look for the cause|no gain)/,
      /worsening.*(?:keep on|getting better)/,
      /steady.*clearly moved/,
    ]
    for (const { path, lines } of pages) {
      if (!path.endsWith('index.html')) continue
      for (const line of lines.filter((text) => text.length < 200))
        for (const pattern of contrary) expect(line, path).not.toMatch(pattern)
    }
  })

  it('stand no more than twice on a page', () => {
    for (const { path, lines } of pages) {
      const counted = new Map<string, number>()
      for (const line of new Set(lines.map((text, i) => `${i} ${text}`))) {
        for (const sentence of line.replace(/^\d+ /, '').split(/(?<=[.!?])\s+(?=[A-Z])/)) {
          if (!/[.!?]$/.test(sentence) || sentence.split(' ').length < 4) continue
          counted.set(sentence, (counted.get(sentence) ?? 0) + 1)
        }
      }
      // What must not be done is said with each sign that forbids it.
      const often = [...counted].filter(([text, times]) => times > 2 && !/^(?:Do not|Never) /.test(text))
      expect(often, path).toEqual([])
    }
  })
})
