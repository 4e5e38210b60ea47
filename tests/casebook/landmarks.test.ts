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
    ['toe at ground', '[200, 990]', 'Toe at ground lies far off the ground line.'],
    ['heel at ground', '[700, 990]', 'Heel at ground lies far off the ground line.'],
    ['new growth ends', '[440, 450]', 'New growth ends above the hairline.'],
    ['new growth ends', '[600, 640]', 'New growth ends off the toe wall.'],
    ['pastern', '[[430, 790], [600, 700]]', 'The pastern is marked on the hoof or on the ground.'],
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

  it.each([
    [
      'scale',
      '[[100, 900], [112, 900], 100 mm]',
      'The scale is 12 pixels long: a tap that is one off makes every length wrong by 8 %.',
    ],
    ['scale', '[[100, 900], [180, 900], 10 mm]', 'A scale of 10 mm is too short to measure a foot by.'],
  ])('are doubted by a scale that is none: %s %s', (name, value, message) => {
    expect(read('lateral', changed(name, value)).diagnostics).toContainEqual(
      expect.objectContaining({ code: 'landmark-unlikely', level: 'warning', message }),
    )
  })

  it.each([
    ['frog tip: [400, 90]', 'The frog tip lies in front of the toe or behind the heels.'],
    ['frog tip: [400, 300]\nfrog base: [400, 200]', 'The frog base lies in front of the frog tip.'],
    ['frog tip: [400, 300]\nbreakover: [400, 350]', 'The breakover lies behind the frog tip.'],
  ])('of a sole cannot be: %s', (lines, message) => {
    const sole =
      'scale: [[1, 1], [801, 1], 200 mm]\ntoe: [400, 100]\nheel medial: [250, 600]\nheel lateral: [550, 600]'
    expect(told(read('solar', sole))).toEqual([])
    expect(told(read('solar', sole, 'RF'))[0]).toContain(
      'Inner and outer heel lie as they do on the other foot than RF.',
    )
    expect(read('solar', `${sole}\n${lines}`).diagnostics[0]).toMatchObject({
      code: 'landmark-impossible',
      message,
    })
  })

  it('say how the camera stood, and how much nearer the scale lay', () => {
    const { camera, scale } =
      read(
        'lateral',
        `${changed('scale', '[[100, 900], [900, 900], 20 cm, 30 mm nearer]')}\ncamera: {height: 60 cm, distance: 120 cm}`,
      ).visit?.photos[0]?.landmarks ?? {}
    expect(camera).toEqual({ height: 600, distance: 1200 })
    expect(scale?.nearer).toBe(30)
    expect(
      read('lateral', `${lateral.join('\n')}\ncamera: On a block`).visit?.photos[0]?.landmarks?.camera,
    ).toBe('block')
    expect(read('lateral', `${lateral.join('\n')}\ncamera: in the air`).diagnostics[0]).toMatchObject({
      code: 'value-form',
    })
  })

  it('may have the card in place of scale and ground, as marking writes it, or only how it stands', () => {
    const corners = 'corners: [[100, 900], [500, 890], [505, 600], [98, 610]]'
    const bare = lateral.filter((line) => !/^(?:scale|ground)/.test(line)).join('\n')
    const card = (value: string) => read('lateral', `${bare}\ncard: ${value}`)
    const found = card(`{${corners}, width: 180 mm, camera: [90, 210, 640], nearer: 30 mm nearer}`)
    expect(found.visit?.photos[0]?.landmarks?.card).toEqual({
      corners: [
        [100, 900],
        [500, 890],
        [505, 600],
        [98, 610],
      ],
      width: 180,
      camera: [90, 210, 640],
      nearer: 30,
    })
    expect(card('{corners: [[505, 600], [98, 610], [100, 900], [500, 890]]}').diagnostics[0]).toMatchObject({
      code: 'landmark-impossible',
      message: 'The card does not stand on its long edge, so that edge is not the ground.',
    })
    expect(card('10 mm further').visit?.photos[0]?.landmarks?.cardTold).toEqual({ nearer: -10 })
    expect(card('none').visit?.photos[0]?.landmarks?.cardTold).toBe('none')
    expect(card('near').diagnostics[0]).toMatchObject({ code: 'value-form' })
    expect(card('{corners: [[100, 900], [505, 600], [500, 890], [98, 610]]}').diagnostics[0]).toMatchObject({
      code: 'landmark-impossible',
      message: 'The corners of the card cross.',
    })
  })

  it('have names, and the nearest is named', () => {
    expect(read('lateral', 'toe on ground: [3, 4]').diagnostics[0]).toMatchObject({
      code: 'key-unknown',
      fix: 'toe at ground',
    })
  })
})
