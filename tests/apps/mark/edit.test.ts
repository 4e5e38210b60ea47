import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { withLandmarks } from '../../../src/apps/mark/edit.ts'
import type { Landmarks } from '../../../src/hoof/landmarks.ts'
import { landmarkEntries, landmarkText } from '../../../src/pages/mark/landmark-block.ts'
import { readVisitBlock } from '../../casebook/read-one.ts'

const side: Landmarks = {
  scale: { from: [100, 900], to: [900, 900.25], length: 101.6 },
  lines: {
    ground: [
      [100, 800],
      [900, 800],
    ],
  },
  points: { 'toe-at-ground': [200.04, 800], 'toe-at-hairline': [420, 480] },
}
const name = { file: 'photos/a.jpg', nth: 0 }
const none: Landmarks = { scale: null, lines: {}, points: {} }

describe('the block of marked points', () => {
  it('has one key a line, to a tenth of a pixel', () => {
    expect(landmarkText(side, '    ')).toBe(
      [
        '    scale: [[100, 900], [900, 900.3], 101.6 mm]\n',
        '    ground: [[100, 800], [900, 800]]\n',
        '    toe at ground: [200, 800]\n',
        '    toe at hairline: [420, 480]\n',
      ].join(''),
    )
  })

  it('reads back as it was written', () => {
    const block = `photos:\n  - file: photos/a.jpg\n    view: lateral\n${landmarkText(side, '    ')}`
    const { visit } = readVisitBlock(block, { files: { 'juno/photos/a.jpg': 'x' } })
    expect(visit?.photos[0]?.landmarks).toEqual({
      ...side,
      scale: { from: [100, 900], to: [900, 900.3], length: 101.6 },
      points: { 'toe-at-ground': [200, 800], 'toe-at-hairline': [420, 480] },
    })
  })
})

describe('writing points into a visit', () => {
  it('adds them under an entry that has none', () => {
    const text = [
      '---',
      'date: 2026-01-12 # a Monday',
      'photos:',
      '  - file: photos/a.jpg   # the good one',
      '    view: lateral',
      '',
      '  # by phone',
      '  - {file: photos/b.jpg}',
      'care: []',
      '---',
      'Notes with ground: [1, 2]',
      '',
    ]
    const changed = withLandmarks(text.join('\n'), name, side).split('\n')
    expect(changed).toEqual([
      ...text.slice(0, 5),
      '    scale: [[100, 900], [900, 900.3], 101.6 mm]',
      '    ground: [[100, 800], [900, 800]]',
      '    toe at ground: [200, 800]',
      '    toe at hairline: [420, 480]',
      ...text.slice(5),
    ])
  })

  it('replaces a value where it stands, drops a line that is not wanted, and keeps its comment', () => {
    const text = [
      '---',
      'photos:',
      '- file: ./photos/a.jpg',
      '  Toe-At-Ground: [1, 2] # where it rolls',
      '  frog tip: [3, 4]',
      '  pastern: [[3, 4], [5, 6]] # unsure',
      '  ground:',
      '  caption: >',
      '    Left fore,',
      '    on arrival',
      '---',
      '',
    ].join('\n')
    expect(withLandmarks(text, name, side)).toBe(
      [
        '---',
        'photos:',
        '- file: ./photos/a.jpg',
        '  Toe-At-Ground: [200, 800] # where it rolls',
        '  # unsure',
        '  ground: [[100, 800], [900, 800]]',
        '  scale: [[100, 900], [900, 900.3], 101.6 mm]',
        '  toe at hairline: [420, 480]',
        '  caption: >',
        '    Left fore,',
        '    on arrival',
        '---',
        '',
      ].join('\n'),
    )
  })

  it('works inside braces, on Windows lines, after a byte-order mark, in the second entry of a picture', () => {
    const text =
      '\uFEFF---\r\nphotos:\r\n  - {file: photos/a.jpg, view: solar}\r\n  - {file: photos/a.jpg, frog tip: [1, 2], ground: [[0, 0], [1, 1]], view: lateral}\r\n---\r\nx\r\n'
    expect(withLandmarks(text, { ...name, nth: 1 }, side)).toBe(
      '\uFEFF---\r\nphotos:\r\n  - {file: photos/a.jpg, view: solar}\r\n  - {file: photos/a.jpg, ground: [[100, 800], [900, 800]], view: lateral,\r\n     scale: [[100, 900], [900, 900.3], 101.6 mm],\r\n     toe at ground: [200, 800],\r\n     toe at hairline: [420, 480]}\r\n---\r\nx\r\n',
    )
  })

  it('takes points away when none are given', () => {
    const text = `---\nphotos:\n  - file: photos/a.jpg\n    view: lateral\n---\n`
    expect(withLandmarks(withLandmarks(text, name, side), name, none)).toBe(text)
  })

  it.each([
    ['no block at all', 'the file has no block between two lines of ---'],
    ['---\nphotos: []\n', 'the file has no block between two lines of ---'],
    ['---\nphotos: []\n---\n', 'the visit names the picture photos/a.jpg no more'],
    ['---\nphotos: [\n---\n', 'the block holds an error; see what "growdown check" says'],
    [
      '---\nphotos:\n  - frog tip: [1, 2]\n    file: photos/a.jpg\n---\n',
      'the entry begins with a point; let it begin with file:',
    ],
    [
      '---\nphotos:\n  - {file: photos/a.jpg, # this\n     frog tip: [1, 2]}\n---\n',
      'a comment stands between the points',
    ],
    [
      '---\nx: &p [1, 2]\nphotos:\n  - file: photos/a.jpg\n    toe at ground: *p\n---\n',
      'a point is an alias',
    ],
    [
      '---\nphotos:\n  - file: photos/a.jpg\n    scale:\n    - [1, 2]\n    - [3, 4]\n    - 5 mm\n---\n',
      'the block holds an error; see what "growdown check" says',
    ],
  ])('refuses what it cannot do cleanly: %j', (text, why) => {
    expect(() => withLandmarks(text, name, side)).toThrow(
      `Nothing was written: ${why}. Copy the block and put it into the file by hand.`,
    )
  })

  it('keeps every other character, whatever stands around (property)', () => {
    const coordinate = fc.integer({ min: 0, max: 40_000 }).map((n) => n / 10)
    const point = fc.tuple(coordinate, coordinate)
    const landmarks: fc.Arbitrary<Landmarks> = fc.record({
      scale: fc.option(
        fc.record({ from: point, to: point, length: fc.integer({ min: 1, max: 999 }).map((n) => n / 4) }),
      ),
      lines: fc.record(
        { ground: fc.tuple(point, point), pastern: fc.tuple(point, point) },
        { requiredKeys: [] },
      ),
      points: fc.record(
        { 'toe-at-ground': point, 'heel-at-hairline': point, breakover: point, toe: point },
        { requiredKeys: [] },
      ),
    })
    const aside = fc.constantFrom('', ' # by eye', '  #', ' # ground: [1, 2]')
    const between = fc.constantFrom(
      '',
      '    # a note\n',
      '\n',
      '    caption: "a # b: {c}"\n',
      "    stage: 'before'\n",
    )
    const others = fc.constantFrom(
      '',
      '  - {file: photos/b.jpg, ground: [[1, 2], [3, 4]]}\n',
      '  # other\n  - file: photos/b.jpg\n    toe: [1, 2]\n',
    )
    const newline = fc.constantFrom('\n', '\r\n')
    const foreign = (text: string) =>
      text
        .split('\n')
        .filter((line) => !landmarkLine.test(line))
        .join('\n')
    // Every line of the entry that marks a point, without the comment behind it.
    const landmarkLine = /^ {4}(?:scale|ground|pastern|toe at ground|heel at hairline|breakover|toe):/
    fc.assert(
      fc.property(
        landmarks,
        landmarks,
        aside,
        between,
        others,
        others,
        newline,
        fc.string(),
        (old, wanted, comment, middle, above, below, end, body) => {
          const oldLines = landmarkEntries(old).map(([key, value]) => `    ${key}: ${value}${comment}\n`)
          const text = [
            '---\ndate: 2026-01-12\nphotos:\n',
            above,
            `  - file: photos/a.jpg${comment}\n`,
            middle,
            ...oldLines,
            '    view: other\n',
            below,
            `care: [a]\n---\n${body}`,
          ]
            .join('')
            .replaceAll('\n', end)
          const changed = withLandmarks(text, name, wanted)
          const expected = new Map(landmarkEntries(wanted))
          const gone = oldLines.filter((line) => !expected.has(line.trim().split(':')[0] ?? ''))
          const kept = (comment.trim() === '' ? [] : gone).map(() => `    ${comment.trim()}`)
          const counted = (lines: string) =>
            lines
              .split('\n')
              .map((line) => line.replace(/\r$/, ''))
              .sort()
          expect(counted(foreign(changed))).toEqual([...counted(foreign(text)), ...kept].sort())
          for (const [key, value] of expected) expect(changed).toContain(`    ${key}: ${value}`)
          expect(withLandmarks(changed, name, wanted)).toBe(changed)
        },
      ),
      { numRuns: 400 },
    )
  })
})
