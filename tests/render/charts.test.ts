import { beforeAll, describe, expect, it } from 'vitest'
import { type DrawChart, loadCharts, mentionsChart } from '../../src/render/charts/charts.ts'
import { sparkline } from '../../src/render/charts/sparkline.ts'
import { dateAxis, dayAxis, valueAxis } from '../../src/render/charts/ticks.ts'
import { figureWords } from '../../src/render/figure-words.ts'
import { english } from '../english.ts'
import { named, textOf } from './read-html.ts'
import { agreement, distribution, findings, trend } from './samples.ts'

const words = figureWords(english)

let draw: DrawChart
beforeAll(async () => {
  draw = await loadCharts(words)
})

const charts = [
  trend(),
  trend('heel-balance', { baseline: 'zero' }),
  trend('single', { panels: trend().panels.slice(0, 1) }),
  findings(4),
  findings(30),
  distribution,
  agreement,
  trend('little', { size: 'small' }),
]

describe('a chart', () => {
  it('is the same bytes whatever was drawn before', async () => {
    const alone = await Promise.all(charts.map(async (chart) => (await loadCharts(words))(chart)))
    // A fixed order in which every chart follows every other.
    for (let step = 1; step < charts.length; step += 1) {
      for (let i = 0; i < charts.length * 2; i += 1) {
        const which = (i * step) % charts.length
        const chart = charts[which]
        if (chart) expect(draw(chart)).toBe(alone[which])
      }
    }
  })

  it('is the same bytes in every time zone', () => {
    const before = process.env.TZ
    const offsets = new Set<number>()
    const drawn = ['UTC', 'Pacific/Kiritimati', 'America/Los_Angeles', 'Asia/Kathmandu'].map((zone) => {
      process.env.TZ = zone
      offsets.add(new Date(2026, 0, 1).getTimezoneOffset())
      return charts.map(draw).join('')
    })
    if (before === undefined) delete process.env.TZ
    else process.env.TZ = before
    expect(offsets.size).toBe(4)
    expect(new Set(drawn).size).toBe(1)
  })

  it('is found in the data of a page at any depth', () => {
    expect(mentionsChart({ feet: [{ charts: [trend()] }] })).toBe(true)
    expect(mentionsChart({ kind: 'side', list: [null, 'trend', 3] })).toBe(false)
  })
})

describe('a trend chart', () => {
  it('has a panel a foot, each with its verdict', () => {
    const panels = named(draw(trend()), 'div').filter(({ properties }) =>
      String(properties.className).includes('panel-'),
    )
    expect(panels.map(({ properties }) => properties.className)).toEqual([
      ['panel', 'panel-LF'],
      ['panel', 'panel-RF'],
      ['panel', 'panel-LH'],
      ['panel', 'panel-RH'],
    ])
    expect(textOf(panels[0] ?? { type: 'root', children: [] })).toContain('foot LF improving')
  })

  it('shares one scale: the axes of the first panel stand in every panel', () => {
    const pictures = named(draw(trend()), 'svg').filter(({ properties }) => properties.role === 'img')
    expect(pictures).toHaveLength(4)
    expect(pictures.map((svg) => textOf(svg))).toEqual([
      expect.stringMatching(/toe length, mm.*Jan2026.*Apr.*Jul/),
      ...Array(3).fill(expect.stringMatching(/^toe length, mm/)),
    ])
    const axes = `${trend().id}-axes`
    expect(named(draw(trend()), 'g').filter(({ properties }) => properties.id === axes)).toHaveLength(1)
    expect(named(draw(trend()), 'use').map(({ properties }) => properties.href)).toEqual(
      Array(3).fill(`#${axes}`),
    )
  })

  it('names band and forecast where they lie', () => {
    const [picture] = named(draw(trend()), 'svg')
    const text = textOf(picture ?? { type: 'root', children: [] })
    expect(text).toContain('target up to 84 mm')
    expect(text).toContain('25 Jun 26')
  })

  it('leaves the name of the band, its own key and no panel to a small one', () => {
    const html = draw(trend('little', { size: 'small' }))
    expect(html).toContain('panels-small')
    expect(html).not.toContain('target up to')
    expect(html).not.toContain('figure-key')
    const [picture] = named(html, 'svg')
    expect(picture?.properties.viewBox).toMatch(/^0 0 210 /)
  })

  it('tells feet and stages apart without colour', () => {
    const html = draw(trend())
    const colours = ['LF', 'RF', 'LH', 'RH'].map((foot) => `var(--series-${foot}`)
    for (const colour of colours) expect(html).toContain(colour)
    // Readings on arrival are open triangles in the foot's own colour, as many as there are visits.
    const open = html.match(/<path d="[^"]*" fill="var\(--paper, #fff\)" stroke="var\(--series-/g) ?? []
    expect(open.join('').match(/M[\d.]+ [\d.]+l-[\d.]+ [\d.]+ [\d.]+ 0z/g)).toHaveLength(20)
  })

  it('keeps a wide interval within the picture', () => {
    const [panel] = trend().panels
    if (!panel) throw new Error('no panel')
    const line = panel.line.map((point) => ({ ...point, low: point.value - 500, high: point.value + 500 }))
    const html = draw(trend('wide', { panels: [{ ...panel, line }] }))
    const area = /d="(M[^"]+)" fill="var\(--ribbon/.exec(html)?.[1] ?? ''
    const [first = 0, ...steps] = (area.match(/-?[\d.]+/g) ?? []).map(Number).filter((_, i) => i % 2 === 1)
    const heights = [first]
    for (const step of steps) heights.push((heights.at(-1) ?? 0) + step)
    expect(heights.length).toBeGreaterThan(8)
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(-0.01)
    expect(Math.max(...heights)).toBeLessThanOrEqual(180.01)
  })

  it('names only the marks that occur in its key', () => {
    const [panel] = trend().panels
    if (!panel) throw new Error('no panel')
    const keyOf = (points: typeof panel.points) =>
      named(draw(trend('bare', { panels: [{ ...panel, points }] })), 'li').map((item) => textOf(item).trim())
    expect(keyOf(panel.points)).toEqual([words.trend.after, words.trend.before])
    const [first, ...others] = panel.points.filter(({ stage }) => stage === 'after')
    if (!first) throw new Error('no reading')
    expect(keyOf([{ ...first, isLeftOut: true }, ...others])).toEqual([
      words.trend.after,
      words.trend.leftOut,
    ])
  })

  it('counts days where no date may show', () => {
    const panels = trend().panels.map((panel) => ({
      ...panel,
      points: panel.points.map((point, i) => ({ ...point, at: { day: i * 19 } })),
      line: [],
      forecast: null,
    }))
    const text = named(draw(trend('days', { panels, timeTitle: 'days since the first visit' })), 'svg').map(
      textOf,
    )
    expect(text[0]).toContain('days since the first visit')
    expect(text.join('')).not.toMatch(/Oct|2025|2026/)
  })
})

describe('a plot of differences', () => {
  it('names its mean and its limits, and tells pairs apart that no error explains', () => {
    const html = draw(agreement)
    const text = textOf(named(html, 'svg')[0] ?? { type: 'root', children: [] })
    for (const { label } of [agreement.bias, ...agreement.limits]) expect(text).toContain(label)
    expect(named(html, 'li').map((item) => textOf(item).trim())).toEqual([
      words.agreement.explained,
      words.agreement.unexplained,
    ])
  })
})

describe('a trend of the size of a word', () => {
  const points = [
    { at: 0, value: 98 },
    { at: 35, value: 92 },
    { at: 70, value: 88 },
  ]
  const view = { points, band: { low: null, high: 90 }, within: [], description: 'Toe length: 98, 92, 88' }

  it('says in words what it shows', () => {
    const [picture] = named(sparkline(view), 'svg')
    expect(picture?.properties).toMatchObject({ role: 'img', ariaLabel: view.description })
  })

  it('runs over its whole width and height, the last value marked, the band where it is wanted', () => {
    const html = sparkline(view)
    expect(html).toContain('d="M4 4L44 14.8L84 22"')
    expect(html).toContain('cx="84" cy="22"')
    // Up to 90 of 88 to 98 on 18 units: from 14.4 below the upper rim to the foot.
    expect(html).toContain('y="18.4" width="88" height="7.6"')
  })

  it('stands on the middle where there is one value', () => {
    expect(sparkline({ ...view, points: points.slice(0, 1), band: null })).toContain('cx="44"')
  })
})

describe('a findings grid', () => {
  it('says each grade by figure, tone and pattern', () => {
    const html = draw(findings(5))
    for (const grade of [1, 2, 3]) {
      expect(html).toContain(`fill="url(#findings-5-grade-${grade})"`)
      expect(html).toContain(`<pattern id="findings-5-grade-${grade}"`)
    }
    const [picture] = named(html, 'svg')
    expect(textOf(picture ?? { type: 'root', children: [] })).toContain('0123')
  })

  it('goes on in a further picture when there are many visits', () => {
    const pictures = named(draw(findings(30)), 'svg').filter(({ properties }) => properties.role === 'img')
    expect(pictures).toHaveLength(3)
  })
})

describe('axes', () => {
  it('run from round value to round value', () => {
    expect(valueAxis(81.3, 101.8, 4, '.')).toMatchObject({ low: 80, high: 105 })
    expect(valueAxis(-6, 2, 4, '.').ticks.map(({ label }) => label)).toEqual([
      '\u22126',
      '\u22124',
      '\u22122',
      '0',
      '2',
    ])
    expect(valueAxis(0.61, 0.72, 4, '.').ticks.map(({ label }) => label)).toEqual([
      '0.60',
      '0.62',
      '0.64',
      '0.66',
      '0.68',
      '0.70',
      '0.72',
    ])
    expect(valueAxis(50, 50, 4, '.').high).toBeGreaterThan(50)
  })

  it('mark months, with the year where it begins', () => {
    const { ticks } = dateAxis(20390, 20640, 5, words.months)
    expect(ticks.map(({ label }) => label)).toEqual([
      ['Nov', '2025'],
      ['Jan', '2026'],
      ['Mar'],
      ['May'],
      ['Jul'],
    ])
  })

  it('mark days in a short span', () => {
    const { ticks } = dateAxis(20463, 20475, 5, words.months)
    expect(ticks[0]?.label).toEqual(['10 Jan', '2026'])
    expect(ticks.length).toBeLessThanOrEqual(6)
  })

  it('leave out the day that would be written beyond the edge', () => {
    const { ticks } = dateAxis(20463, 20469, 3, words.months)
    expect(ticks.map(({ label }) => label[0])).toEqual(['10 Jan', '12 Jan', '14 Jan'])
  })

  it('keep day ticks within the span', () => {
    expect(dayAxis(-5, 190, 5, '.').ticks.map(({ at }) => at)).toEqual([0, 50, 100, 150])
  })
})
