import { describe, expect, it } from 'vitest'
import type { Visit } from '../../src/casebook/model.ts'
import { photosOfVisit, type ThenAndNow, thenAndNow } from '../../src/pages/shared/photos.ts'
import type { Picture, Pictures } from '../../src/pages/shared/pictures.ts'
import { readOne } from '../casebook/read-one.ts'
import { formatIn } from '../english.ts'

const format = formatIn('mm')
const side = (turn: number) => [
  'scale: [[100, 900], [900, 900], 100 mm]',
  `ground: [[100, ${800 + turn}], [900, 800]]`,
  'toe at ground: [200, 800]',
  'toe at hairline: [420, 480]',
  'heel at ground: [700, 800]',
  'heel at hairline: [800, 650]',
]

const picture = (file: string, width = 1000): Picture => ({
  file,
  width,
  height: 750,
  variants: [
    { path: `pictures/${file.length}-480.webp`, type: 'image/webp', width: 480, height: 360 },
    { path: `pictures/${file.length}-960.webp`, type: 'image/webp', width: 960, height: 720 },
    { path: `pictures/${file.length}-960.jpg`, type: 'image/jpeg', width: 960, height: 720 },
  ],
})

interface Taken {
  readonly file: string
  readonly foot?: string
  readonly view?: string
  readonly stage?: string
  readonly points?: readonly string[]
}

const entry = ({ file, foot = 'LF', view = 'lateral', stage, points = [] }: Taken) =>
  [
    `  - file: ${file}`,
    `    foot: ${foot}`,
    `    view: ${view}`,
    ...(stage ? [`    stage: ${stage}`] : []),
    ...points.map((line) => `    ${line}`),
    '',
  ].join('\n')

function taken(visits: Readonly<Record<string, readonly Taken[]>>): {
  visits: readonly Visit[]
  pictures: Pictures
} {
  const files = Object.values(visits)
    .flat()
    .map(({ file }) => file)
  const { horse, diagnostics } = readOne({
    visits: Object.fromEntries(
      Object.entries(visits).map(([date, photos]) => [
        date,
        `---\nphotos:\n${photos.map(entry).join('')}---\n`,
      ]),
    ),
    files: Object.fromEntries(files.map((file) => [`juno/${file}`, 'x'])),
  })
  if (horse === null) throw new Error(diagnostics.map(({ message }) => message).join(' '))
  return { visits: horse.visits, pictures: new Map(files.map((file) => [file, picture(file)])) }
}

const pairs = (visits: Readonly<Record<string, readonly Taken[]>>): readonly ThenAndNow[] => {
  const { visits: read, pictures } = taken(visits)
  return thenAndNow(read, pictures, format)
}

describe('the photographs of a visit', () => {
  const { visits, pictures } = taken({
    '2026-01-12': [{ file: 'photos/a.jpg', stage: 'before', points: side(0) }, { file: 'photos/b.jpg' }],
  })
  const [visit] = visits
  if (!visit) throw new Error('no visit')

  it('have sizes, words, lines and values', () => {
    const [first, second] = photosOfVisit(visit, pictures, format)
    expect(first?.picture).toEqual({
      src: 'pictures/12-960.jpg',
      width: 1000,
      height: 750,
      alt: 'Picture: Left fore, from the outer side, on arrival, 12 January 2026. Marked on it: toe angle 55.5°, toe length 48.5 mm, heel angle 56.5°, coronet angle 24°, bearing length 62.5 mm, heel lateral 22.5 mm.',
      sources: [{ type: 'image/webp', srcset: 'pictures/12-480.webp 480w, pictures/12-960.webp 960w' }],
    })
    expect(first?.values[0]).toEqual({ name: 'toe angle', value: '55.5°', error: '± 2.4°' })
    expect(second).toMatchObject({ subject: 'Left fore, from the outer side', marked: null, values: [] })
    expect(second?.picture.alt).toBe('Picture: Left fore, from the outer side, 12 January 2026.')
  })

  it('have each line in hundredths of the picture, letters at its ends, and what it measures in the margin', () => {
    const marked = photosOfVisit(visit, pictures, format)[0]?.marked
    expect(marked?.margin.map(({ kind, letters, texts }) => [kind, letters, ...texts])).toEqual([
      ['side', 'ab', 'bearing length 62.5 mm'],
      ['wall', 'ac', 'toe angle 55.5°', 'toe length 48.5 mm'],
      ['side', 'bd', 'heel angle 56.5°', 'heel lateral 22.5 mm'],
      ['side', 'cd', 'coronet angle 24°'],
      ['scale', 'ef', 'scale 100 mm'],
    ])
    expect(marked?.lines.map(({ kind }) => kind)).toEqual(['ground', 'side', 'wall', 'side', 'side', 'scale'])
    expect(marked?.lines[2]).toMatchObject({ x1: '20.00%', y1: '106.67%', x2: '42.00%', y2: '64.00%' })
    expect(marked?.points.map(({ letter }) => letter)).toEqual(['a', 'b', 'c', 'd', 'e', 'f'])
    expect(marked?.points[2]).toMatchObject({ x: '42.00%', y: '64.00%' })
  })

  it('have no letter over another, on a phone', () => {
    const points = photosOfVisit(visit, pictures, format)[0]?.marked?.points ?? []
    const at = points.map(({ x, y, dx, dy }) => [
      (Number.parseFloat(x) / 100) * 320 + dx,
      (Number.parseFloat(y) / 100) * 240 + dy,
    ])
    at.forEach(([x = 0, y = 0], i) => {
      for (const [ox = 0, oy = 0] of at.slice(i + 1)) expect(Math.hypot(ox - x, oy - y)).toBeGreaterThan(17)
    })
  })

  it('that could not be processed are left out', () => {
    expect(photosOfVisit(visit, new Map(), format)).toEqual([])
  })
})

describe('then and now', () => {
  it('sets the first against the latest of the same foot and view', () => {
    const found = pairs({
      '2026-01-12': [{ file: 'photos/a.jpg' }, { file: 'photos/sole.jpg', view: 'solar' }],
      '2026-02-16': [{ file: 'photos/bb.jpg' }],
      '2026-03-23': [{ file: 'photos/ccc.jpg' }, { file: 'photos/rf.jpg', foot: 'RF' }],
    })
    expect(found.map(({ id, heading, apart }) => [id, heading, apart])).toEqual([
      ['compare-lf-lateral', 'Left fore, from the outer side: then and now', '2 months between the two.'],
    ])
    expect(found[0]).toMatchObject({ firstLabel: 'Then: 12 January 2026', latestLabel: 'Now: 23 March 2026' })
    expect(found[0]?.first.picture.src).toBe('pictures/12-960.jpg')
    expect(found[0]?.latest.picture.src).toBe('pictures/14-960.jpg')
  })

  it('prefers the latest of the first one’s stage', () => {
    const [found] = pairs({
      '2026-01-12': [{ file: 'photos/a.jpg', stage: 'before' }],
      '2026-02-16': [
        { file: 'photos/bb.jpg', stage: 'before' },
        { file: 'photos/ccc.jpg', stage: 'after' },
      ],
    })
    expect(found?.latest.picture.src).toBe('pictures/13-960.jpg')
  })

  it('shows nothing for one visit alone', () => {
    expect(pairs({ '2026-01-12': [{ file: 'photos/a.jpg' }, { file: 'photos/bb.jpg' }] })).toEqual([])
  })

  it('is laid over by landmarks where both have them, and says so where not', () => {
    const [aligned] = pairs({
      '2026-01-12': [{ file: 'photos/a.jpg', points: side(0) }],
      '2026-02-16': [
        { file: 'photos/bb.jpg', points: side(0).map((line) => line.replace('100 mm', '50 mm')) },
      ],
    })
    expect(aligned?.over.note).toContain('Laid over each other by ground line and scale')
    expect(aligned?.over.note).toContain('not surely at one scale')
    // The second camera stood twice as near: half the size, about the toe.
    expect(aligned?.over.latest.transform).toBe('matrix(0.5 0 0 0.5 100 400)')
    expect(aligned?.over.viewBox).toBe('0 0 1000 750')

    const onBlock = { points: [...side(0), 'camera: on a block'] }
    const [sure] = pairs({
      '2026-01-12': [{ file: 'photos/a.jpg', ...onBlock }],
      '2026-02-16': [{ file: 'photos/bb.jpg', ...onBlock }],
    })
    expect(sure?.over.note).toContain('both feet are shown at one size')

    const [apart] = pairs({
      '2026-01-12': [{ file: 'photos/a.jpg', points: side(0) }],
      '2026-02-16': [{ file: 'photos/bb.jpg' }],
    })
    expect(apart?.over.note).toContain('Not laid over each other to scale')
    expect(apart?.over.latest.transform).toBe('matrix(1 0 0 1 0 0)')
  })
})
