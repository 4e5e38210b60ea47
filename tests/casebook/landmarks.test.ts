import { describe, expect, it } from 'vitest'
import { readVisitBlock, told } from './read-one.ts'

const files = { 'juno/photos/a.jpg': 'x' }
const read = (view: string, lines: string, foot = 'LF') =>
  readVisitBlock(
    `photos:\n  - file: photos/a.jpg\n    foot: ${foot}\n    view: ${view}\n${lines.replace(/^/gm, '    ')}`,
    { files },
  )

const lateral = [
  'scale: [[100, 900], [900, 900], 20 cm]',
  'ground: [[100, 800], [900, 800]]',
  'toe at ground: [200, 800]',
  'toe-at-hairline: [420, 480]',
  'New growth ends: [400, 520]',
  'heel at ground: [700, 800]',
  'heel at hairline: [800, 650]',
  'pastern: [[430, 470], [600, 100]]',
]
const changed = (name: string, value: string) =>
  lateral
    .map((line) =>
      line.toLowerCase().replaceAll('-', ' ').startsWith(`${name}:`) ? `${name}: ${value}` : line,
    )
    .join('\n')

describe('landmarks of a photo', () => {
  it('are read in pixels, the scale in millimetres', () => {
    const result = read('lateral', lateral.join('\n'))
    expect(told(result)).toEqual([])
    expect(result.visit?.photos[0]?.landmarks).toEqual({
      scale: { from: [100, 900], to: [900, 900], length: 200 },
      lines: {
        ground: [
          [100, 800],
          [900, 800],
        ],
        pastern: [
          [430, 470],
          [600, 100],
        ],
      },
      points: {
        'toe-at-ground': [200, 800],
        'toe-at-hairline': [420, 480],
        'new-growth-ends': [400, 520],
        'heel-at-ground': [700, 800],
        'heel-at-hairline': [800, 650],
      },
    })
  })

  it('have a scale in a map as well, and any unit', () => {
    const result = read('solar', 'scale: {from: [1, 1], to: [801.5, 1], length: 4 in}\nfrog tip: [400, 300]')
    expect(told(result)).toEqual([])
    expect(result.visit?.photos[0]?.landmarks?.scale).toEqual({ from: [1, 1], to: [801.5, 1], length: 101.6 })
  })

  it('may face either way, and the ground line run either way and aslant', () => {
    const mirrored = lateral
      .join('\n')
      .replace(/\[(\d+), (\d+)\]/g, (_, x, y) => `[${1000 - Number(x)}, ${y}]`)
    expect(told(read('lateral', mirrored, 'RF'))).toEqual([])
    expect(told(read('lateral', mirrored))[0]).toContain('The toe points to the right')
    const turned = lateral.join('\n').replace(/\[(\d+), (\d+)\]/g, (_, x, y) => {
      const [cos, sin] = [Math.cos(0.2), Math.sin(0.2)]
      return `[${(Number(x) * cos - Number(y) * sin + 400).toFixed(1)}, ${(Number(x) * sin + Number(y) * cos).toFixed(1)}]`
    })
    expect(told(read('lateral', turned))).toEqual([])
    expect(told(read('lateral', changed('ground', '[[900, 800], [100, 800]]')))).toEqual([])
  })

  it.each([
    ['scale', '[[10, 10], [10, 10], 100 mm]', 'The scale has the same point twice.'],
    ['scale', '[[10, 10], [210, 10], 0 mm]', 'The length of the scale is not above zero.'],
    ['scale', '[[10, 10], [210, 10], -5]', 'The length of the scale is not above zero.'],
    ['ground', '[[5, 5], [5, 5]]', 'Ground has the same point twice, so it has no direction.'],
    ['pastern', '[[5, 5], [5, 5]]', 'Pastern has the same point twice, so it has no direction.'],
    ['heel at ground', '[150, 800]', 'Heel at ground lies in front of the toe.'],
    ['heel at hairline', '[410, 650]', 'Heel at hairline lies in front of the toe.'],
    ['toe at hairline', '[420, 820]', 'Toe at hairline lies below the ground line.'],
    ['heel at hairline', '[800, 900]', 'Heel at hairline lies below the ground line.'],
    ['toe at hairline', '[200, 800]', 'Toe at hairline is the very point that toe at ground is.'],
  ])('cannot be: %s %s', (name, value, message) => {
    const result = read('lateral', changed(name, value))
    expect(result.horse).toBeNull()
    expect(result.diagnostics[0]).toMatchObject({ code: 'landmark-impossible', message })
    expect(result.diagnostics[0]?.sourceLine).toContain(`${name}: ${value}`)
  })

  it.each([
    ['scale', '[[10, 10], [210, 10]]'],
    ['scale', '[[10, 10], [210, 10], long]'],
    ['toe at ground', '[100]'],
    ['toe at ground', '100, 200'],
    ['toe at ground', '[100, -2]'],
    ['ground', '[100, 200]'],
  ])('have the wrong form: %s %s', (name, value) => {
    expect(read('lateral', changed(name, value)).diagnostics[0]).toMatchObject({
      code: 'value-form',
      level: 'error',
    })
  })

  it('are doubted in a view that does not show them, or without scale and ground', () => {
    expect(told(read('lateral', `${lateral.join('\n')}\nfrog tip: [3, 4]`))).toEqual([
      'landmark-view juno/2026-01-12.md:14 Frog tip says nothing in a lateral view.',
    ])
    expect(read('solar', 'frog tip: [3, 4]').diagnostics[0]).toMatchObject({
      code: 'landmark-no-scale',
      level: 'warning',
    })
  })

  it('have names, and the nearest is named', () => {
    expect(read('lateral', 'toe on ground: [3, 4]').diagnostics[0]).toMatchObject({
      code: 'key-unknown',
      fix: 'toe at ground',
    })
  })
})
