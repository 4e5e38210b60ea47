/** What is well formed and still hard to believe. */
import { describe, expect, it } from 'vitest'
import { addDays } from '../../src/hoof/dates.ts'
import { type Foot, feet } from '../../src/hoof/feet.ts'
import { type MeasureId, measures } from '../../src/hoof/measures.ts'
import { readOne, readVisitBlock, told } from './read-one.ts'

const visit = (block: string) => `---\n${block}\n---\n`
const oneRow = (row: string, parts = {}) => told(readVisitBlock(`before:\n  ${row}`, parts))

describe('a single reading', () => {
  it.each([
    [
      'toe angle: {LF: 440}',
      'reading-impossible',
      'A toe angle of 440° at LF cannot be. It looks like a lost decimal point.',
      '44',
    ],
    ['toe angle: {LF: 0}', 'reading-impossible', 'A toe angle of 0° at LF cannot be.', null],
    ['toe angle: {LF: 90}', 'reading-impossible', 'A toe angle of 90° at LF cannot be.', null],
    ['toe length: {LF: 0}', 'reading-impossible', 'A toe length of 0 mm at LF cannot be.', null],
    [
      'toe length: {LF: -98}',
      'reading-impossible',
      'A toe length of -98 mm at LF cannot be. It looks like a dash before the number.',
      '98',
    ],
    [
      'toe length: {LF: 98 in}',
      'reading-impossible',
      'A toe length of 98 in at LF cannot be. It looks like millimetres.',
      '98 mm',
    ],
    [
      'toe length: {LF: 9.8}',
      'reading-unlikely',
      'A toe length of 9.8 mm at LF is unlikely. It looks like centimetres.',
      '9.8 cm',
    ],
    [
      'toe length: {LF: 3 5/8}',
      'reading-unlikely',
      'A toe length of 3.63 mm at LF is unlikely. It looks like inches.',
      '3.63 in',
    ],
    [
      'toe length: {LF: 980}',
      'reading-unlikely',
      'A toe length of 980 mm at LF is unlikely. It looks like a lost decimal point.',
      '98',
    ],
    ['toe length: {LF: 180}', 'reading-unlikely', 'A toe length of 180 mm at LF is unlikely.', null],
    ['heel angle: {LF: 80}', 'reading-unlikely', 'A heel angle of 80° at LF is unlikely.', null],
    [
      'groove apex: {LF: 60}',
      'reading-unlikely',
      'A groove depth at frog tip of 60 mm at LF is unlikely. It looks like a lost decimal point.',
      '6',
    ],
  ])('%s', (row, code, message, fix) => {
    const read = readVisitBlock(`before:\n  ${row}`)
    expect(read.diagnostics).toHaveLength(1)
    expect(read.diagnostics[0]).toMatchObject({
      code,
      message,
      fix,
      level: code === 'reading-impossible' ? 'error' : 'warning',
    })
    expect(read.horse === null).toBe(code === 'reading-impossible')
  })

  it.each([
    ['cm', '98', 'A toe length of 98 cm at LF is unlikely. It looks like millimetres.', '98 mm'],
    ['in', '9.8', 'A toe length of 9.8 in at LF is unlikely. It looks like centimetres.', '9.8 cm'],
  ])('in a practice that reads in %s', (units, value, message, fix) => {
    const practice = `---\npractice: P\nunits: ${units}\nowners: {abel: Abel}\n---\n`
    const read = readVisitBlock(`before: {toe length: {LF: ${value}}}`, { practice })
    expect(read.diagnostics[0]).toMatchObject({ message, fix })
  })

  it('tells a slip of a whole row once', () => {
    expect(oneRow('toe length: [9.8, 9.6, 9.5, 95]')).toEqual([
      'reading-unlikely juno/2026-01-12.md:3 Toe length is unlikely: LF 9.8 mm, RF 9.6 mm and LH 9.5 mm. They look like centimetres.',
    ])
  })

  it('says nothing at the edges of what is likely', () => {
    for (const { name, likely } of Object.values(measures)) {
      expect(oneRow(`${name}: {LF: ${likely[0]}, RF: ${likely[1]}}`)).toEqual([])
    }
  })
})

describe('two visits', () => {
  const two = (first: string, second: string, days = 35) =>
    readOne({ visits: { '2026-01-12': visit(first), [addDays('2026-01-12', days)]: visit(second) } })

  it('doubts more growth than any hoof has', () => {
    const read = two('after: {toe length: [82, 85, 85, 81]}', 'before: {toe length: [89, 91, 90, 121]}')
    expect(told(read)).toEqual([
      'jump juno/2026-02-16.md:2 Toe length at RH is 121 mm; after the trim of 2026-01-12 it was 81 mm. No hoof grows 40 mm in 35 days.',
    ])
  })

  it('names two figures that have changed places', () => {
    const read = two('after: {heel medial: [34, 34, 33, 33]}', 'before: {heel medial: [38, 38, 73, 37]}')
    expect(read.diagnostics[0]?.fix).toBe('37, if two figures have changed places')
  })

  it('doubts wear and turns that come too fast, but not a trim', () => {
    expect(
      told(two('after: {heel medial: [40, 40, 40, 40]}', 'before: {heel medial: [43, 12, 44, 44]}'))[0],
    ).toContain('A wear of 28 mm in 35 days is unlikely.')
    expect(
      told(two('after: {toe angle: [48, 50, 54, 55]}', 'before: {toe angle: [47, 68, 53, 54]}'))[0],
    ).toContain('A change of 18° in 35 days without a trim is unlikely.')
    expect(
      told(two('before: {toe length: [110, 108, 90, 91]}', 'before: {toe length: [80, 85, 84, 82]}')),
    ).toEqual([])
  })

  it('doubts one mistyped reading, not the right one that follows it', () => {
    const read = readOne({
      visits: {
        '2026-01-12': visit('before: {toe length: {LF: 88}}'),
        '2026-01-26': visit('before: {toe length: {LF: 128}}'),
        '2026-02-09': visit('before: {toe length: {LF: 95}}'),
        '2026-02-23': visit('before: {toe length: {LF: 99}}'),
      },
    })
    expect(read.diagnostics.map((one) => one.file)).toEqual(['juno/2026-01-26.md'])
  })

  it('names two feet that have changed places, once, and does not then doubt their growth', () => {
    const first = 'after: {toe length: [92, 85, 85, 81], toe angle: [46, 51, 54, 55]}'
    const read = two(first, 'before: {toe length: [92, 99, 92, 88], toe angle: [51, 46, 54, 55]}')
    expect(told(read)).toEqual([
      'feet-swapped juno/2026-02-16.md:2 LF and RF may have changed places before the trim: toe angle is 51° at LF and 46° at RF, last time it was 46° and 51°.',
    ])
    expect(read.diagnostics[0]?.fix).toBe('exchange them in every row under before')
  })

  it('names all four feet at once where a whole visit was read in another order', () => {
    const read = two(
      'after: {toe length: [92, 85, 80, 73], toe angle: [46, 51, 54, 58]}',
      'before: {toe length: [91, 99, 80, 87], toe angle: [51, 46, 58, 54]}',
    )
    expect(told(read)).toEqual([
      'feet-swapped juno/2026-02-16.md:2 Left and right feet may have changed places before the trim: toe length is 91 mm at LF and 99 mm at RF, last time it was 92 mm and 85 mm.',
    ])
  })

  it('names feet that changed places within one visit', () => {
    const read = readVisitBlock(
      'before: {toe length: [98, 88, 85, 84], toe angle: [44, 50, 54, 54]}\nafter: {toe length: [84, 93, 82, 81], toe angle: [51, 46, 55, 55]}',
    )
    expect(told(read)[0]).toContain('LF and RF may have changed places after the trim')
  })

  it('knows a stage that was copied from an earlier visit', () => {
    const rows = '{toe length: [84, 83, 82, 81], toe angle: [51, 52, 53, 54]}'
    expect(told(two(`after: ${rows}`, `before: ${rows}`))).toEqual([
      'stage-copied juno/2026-02-16.md:2 All 8 readings before the trim are those after the trim of 2026-01-12.',
    ])
  })

  it('follows a feature down the wall, by its name', () => {
    const line = (text: string) => `grow-out:\n  LF:\n    - ${text}`
    expect(told(two(line('nail holes, toe, 42 mm'), line('nail holes, toe, 51 mm')))).toEqual([])
    expect(told(two(line('nail holes, toe, 42 mm'), line('nail holes, toe, 24 mm')))[0]).toContain(
      '"nail holes" at LF, toe, is 24 mm from the hairline; on 2026-01-12 it was 42 mm. Horn only grows down.',
    )
    expect(told(two(line('nail holes, toe, 42 mm'), line('nail holes, toe, 90 mm')))[0]).toContain(
      'No hoof grows 48 mm in 35 days.',
    )
    const renamed = two(line('nail holes, toe, 42 mm'), line('nail hole, toe, 51 mm'))
    expect(renamed.diagnostics[0]).toMatchObject({ code: 'feature-name', fix: 'nail holes' })
  })
})

describe('one visit', () => {
  it('doubts walls that a trim made longer, and both stages where most are', () => {
    expect(
      told(readVisitBlock('before: {toe length: [88, 85, 85, 81]}\nafter: {toe length: [88, 89, 83, 80]}')),
    ).toEqual([
      'after-longer juno/2026-01-12.md:3 The toe length became longer at the trim: RF from 85 mm to 89 mm.',
    ])
    const turned = readVisitBlock(
      'before: {toe length: [80, 80, 79, 78]}\nafter: {toe length: [88, 89, 86, 87]}',
    )
    expect(turned.diagnostics).toHaveLength(1)
    expect(turned.diagnostics[0]).toMatchObject({ code: 'stages-exchanged', fix: 'exchange the two names' })
  })

  it('leaves alone what is within measuring error', () => {
    expect(
      told(readVisitBlock('before: {heel medial: [34, 33, 32, 31]}\nafter: {heel medial: [35, 33, 33, 32]}')),
    ).toEqual([])
  })

  it('doubts one reading for all four feet in several measures, not small depths', () => {
    expect(oneRow('toe length: [88, 88, 88, 88]\n  toe angle: [50, 50, 50, 50]')).toEqual([
      'feet-copied juno/2026-01-12.md:3 All four feet have the same reading before the trim, in toe length and toe angle.',
    ])
    expect(
      oneRow('toe length: [88, 88, 88, 88]\n  sulcus depth: [0, 0, 0, 0]\n  white line: [4, 4, 4, 4]'),
    ).toEqual([])
  })

  it('has dates that agree', () => {
    expect(told(readVisitBlock('date: 2026-01-21\nfindings: {LF: [flare, toe, 1]}'))).toEqual([
      'date-not-file juno/2026-01-12.md:2 The date is 2026-01-21, but the file is named 2026-01-12.md.',
    ])
    expect(
      told(readVisitBlock('date: 2026-01-12\nfindings: {LF: [flare, toe, 1]}', { asOf: '2026-01-11' })),
    ).toEqual(['date-in-future juno/2026-01-12.md:2 The visit of 2026-01-12 lies in the future.'])
    expect(
      told(
        readVisitBlock('findings: {LF: [flare, toe, 1]}', {
          horse: '---\nname: Juno\nowner: abel\nstarted: 2026-01-20\n---\n',
        }),
      ),
    ).toEqual([
      'visit-before-start juno/2026-01-12.md: The visit of 2026-01-12 is before 2026-01-20, when the case started.',
    ])
    expect(told(readVisitBlock('findings: {LF: [flare, toe, 1]}\nnext visit: 2025-02-16'))).toEqual([
      'next-visit-early juno/2026-01-12.md:3 The next visit, 2025-02-16, is not after the visit itself, 2026-01-12.',
    ])
  })

  it('says something', () => {
    expect(told(readVisitBlock('footing: soft'))).toEqual([
      'visit-empty juno/2026-01-12.md: The visit of 2026-01-12 holds no reading and no finding.',
    ])
    expect(told(readVisitBlock('before: {toe length: [?, ?, ?, ?]}'))).toEqual([
      'not-filled-in juno/2026-01-12.md:2 Toe length is not yet filled in for all four feet.',
    ])
  })
})

describe('an honest case', () => {
  /** Uniform numbers from a seed (a 32-bit linear congruential generator, constants of Numerical Recipes). */
  function uniform(seed: number): () => number {
    let state = seed
    return () => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
      return (state + 0.5) / 2 ** 32
    }
  }
  /** Standard normal deviates (Box and Muller). */
  const deviates = (next: () => number) => () =>
    Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next())

  /** Level after the trim, and what is added until the next. */
  const levels: readonly (readonly [MeasureId, number, number])[] = [
    ['toe-length', 86, 10],
    ['heel-medial', 34, 4],
    ['heel-lateral', 33, 4],
    ['toe-angle', 50, -2],
    ['heel-angle', 42, -2],
    ['width', 124, 3],
    ['frog-width', 55, 0],
  ]

  /** Six visits of a horse whose feet differ a little, each reading with the measure's own repeatability. */
  function honestVisits(seed: number): Record<string, string> {
    const deviate = deviates(uniform(seed))
    const offset = new Map<Foot, number>(feet.map((foot) => [foot, deviate() * 2]))
    const row = (id: MeasureId, level: number) => {
      const cells = feet.map((foot) =>
        Math.round(level + (offset.get(foot) ?? 0) + deviate() * measures[id].sd),
      )
      return `  ${measures[id].name}: [${cells.join(', ')}]`
    }
    const stage = (name: string, grown: number) =>
      `${name}:\n${levels.map(([id, level, growth]) => row(id, level + grown * growth)).join('\n')}`
    return Object.fromEntries(
      Array.from({ length: 6 }, (_, index) => [
        addDays('2025-08-01', index * 38),
        visit(`${stage('before', 1)}\n${stage('after', 0)}`),
      ]),
    )
  }

  it('with growth, trims and measuring error raises less than one doubt in a thousand readings', () => {
    const horses = 200
    const doubts = Array.from(
      { length: horses },
      (_, seed) => readOne({ visits: honestVisits(seed) }).diagnostics,
    ).flat()
    expect(doubts.every((one) => one.level === 'warning')).toBe(true)
    expect(doubts.length / (horses * 6 * 2 * 4 * levels.length)).toBeLessThan(1 / 1000)
  })

  it('with two feet swapped is found out', () => {
    const swap = (text: string) =>
      text.replace(/\[(\d+), (\d+), (\d+), (\d+)\]/g, (_, a, b, c, d) => `[${[c, b, a, d].join(', ')}]`)
    const lifted = (text: string) =>
      text.replace(/\[(\d+), (\d+), (\d+)/g, (_, a, b, c) => `[${a}, ${b}, ${Number(c) + 5}`)
    const found = Array.from({ length: 100 }, (_, seed) => {
      const visits = Object.fromEntries(
        Object.entries(honestVisits(seed)).map(([day, text], index) => [
          day,
          index === 3 ? swap(lifted(text)) : lifted(text),
        ]),
      )
      return readOne({ visits }).diagnostics.some(
        (one) => one.code === 'feet-swapped' && one.message.startsWith('LF and LH'),
      )
    })
    expect(found.filter(Boolean).length).toBeGreaterThan(80)
  })
})
