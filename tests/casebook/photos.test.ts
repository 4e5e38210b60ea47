/** Readings of photographs held against what is likely, against the last photograph and against the hand. */
import { describe, expect, it } from 'vitest'
import { readOne, told } from './read-one.ts'

interface Taken {
  /** Tangent of the toe angle, and millimetres of the scale that is 300 pixels long. */
  readonly slope?: number
  readonly scale?: number
  readonly hand?: string
  readonly camera?: string
  readonly stage?: 'before' | 'after'
}

/** A foot at three pixels a millimetre: toe 50°, 88 mm; heel 118 mm behind. */
function visit({
  slope = Math.tan((50 * Math.PI) / 180),
  scale = 100,
  hand = '',
  camera = '',
  stage = 'before',
}: Taken): string {
  const angle = Math.atan(slope)
  const [x, y] = [300 + 264 * Math.cos(angle), 900 - 264 * Math.sin(angle)].map(Math.round)
  return [
    '---',
    hand,
    'photos:',
    '  - file: photos/a.jpg',
    '    foot: LF',
    '    view: lateral',
    `    stage: ${stage}`,
    `    scale: [[300, 950], [600, 950], ${scale} mm]`,
    camera,
    '    ground: [[100, 900], [900, 900]]',
    '    toe at ground: [300, 900]',
    `    toe at hairline: [${x}, ${y}]`,
    '    heel at ground: [654, 900]',
    '    heel at hairline: [740, 812]',
    '---',
    '',
  ]
    .filter((line) => line !== '')
    .join('\n')
}

const read = (...taken: readonly Taken[]) =>
  told(
    readOne({
      visits: Object.fromEntries(taken.map((one, i) => [`2026-0${i + 1}-12`, visit(one)])),
      files: { 'juno/photos/a.jpg': 'x' },
    }),
  )
const degrees = (angle: number) => Math.tan((angle * Math.PI) / 180)

describe('a photo reading', () => {
  it('passes where it is likely', () => {
    expect(read({}, { slope: degrees(51) })).toEqual([])
  })

  it('passes the same likely ranges as one by hand: 76° for 49° is not taken without a word', () => {
    expect(read({ slope: degrees(77) })).toEqual([
      'photo-unlikely juno/2026-01-12.md:3 The points of photos/a.jpg give readings that are unlikely: toe angle 77.1°.',
    ])
  })

  it('is said once a picture where the scale makes every length unlikely', () => {
    const [only, ...more] = read({ scale: 25 })
    expect(only).toContain('toe length 22')
    expect(only).toContain('bearing length 29.5 mm')
    expect(more).toEqual([])
  })

  it('is held against the last photograph', () => {
    const [only, ...more] = read({ stage: 'after' }, { slope: degrees(69) })
    expect(only).toContain('photo-jump juno/2026-02-12.md:3 Toe angle at LF is 68.9° on photos/a.jpg')
    expect(only).toContain('after the trim of 2026-01-12 a photograph gave 49.9°')
    expect(more).toEqual([])
  })

  it('passes beside the hand where both errors explain the difference', () => {
    expect(read({ hand: 'before:\n  toe angle: {LF: 52}\n  toe length: {LF: 92}' })).toEqual([])
  })

  it.each<[string, Taken, string]>([
    [
      'a scale that lay nearer',
      {
        camera: '    camera: on a block',
        scale: 84,
        hand: 'before:\n  toe angle: {LF: 50}\n  toe length: {LF: 88}\n  bearing length: {LF: 118}',
      },
      'the scale lay nearer to the camera than the foot, or its length is written wrong: all lengths are 16 % too short',
    ],
    [
      'a camera that looked down',
      { hand: 'before:\n  toe angle: {LF: 56}\n  heel angle: {LF: 57}' },
      'the camera looked down: all angles are too flat',
    ],
    ['a point that slipped', { hand: 'before:\n  toe angle: {LF: 57}' }, 'one point has slipped'],
  ])('that differs from the hand by more is said once, with the likeliest cause: %s', (_, taken, cause) => {
    const { diagnostics } = readOne({
      visits: { '2026-01-12': visit(taken) },
      files: { 'juno/photos/a.jpg': 'x' },
    })
    expect(diagnostics).toHaveLength(1)
    expect(diagnostics[0]).toMatchObject({ code: 'photo-against-hand', level: 'warning' })
    expect(diagnostics[0]?.message).toContain(
      'photos/a.jpg and the hand differ at LF by more than both errors explain',
    )
    expect(diagnostics[0]?.advice).toContain(cause)
  })
})
