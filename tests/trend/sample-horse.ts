/** One invented horse with something of everything, for tests of pages: eight visits, five weeks apart. */
import type { Horse } from '../../src/casebook/model.ts'
import { addDays } from '../../src/hoof/dates.ts'
import type { PerFoot } from '../../src/hoof/feet.ts'
import { buildHorse, type VisitSketch } from './build-horse.ts'

/** A day after the last visit of `sampleHorse`. */
export const sampleAsOf = '2026-09-10'

const four = (lf: number, rf: number, lh: number, rh: number): PerFoot<number> => ({
  LF: lf,
  RF: rf,
  LH: lh,
  RH: rh,
})

function visit(i: number): VisitSketch {
  // Small fixed wobbles stand for measuring error.
  const wobble = [0, 0.6, -0.5, 0.3, -0.7, 0.4, -0.2, 0.5][i] ?? 0
  const toe = 96 - 1.6 * i + wobble
  const heel = 27 + 0.6 * i - wobble
  const gap = Math.max(1, 7 - i)
  return {
    date: addDays('2026-01-05', i * 35),
    before: {
      'quarter-medial': four(66, 66, 64, 64),
      'quarter-lateral': four(67, 66, 64, 65),
      'toe-length': four(toe + 9, toe + 8, toe + 4, toe + 4),
      'toe-angle': four(43.5 + 0.8 * i - wobble, 44.5 + 0.7 * i, 47, 47.5),
      'heel-medial': four(heel + 6, heel + 7, heel + 6, heel + 6),
      'heel-lateral': four(heel + 6 - gap, heel + 6, heel + 5, heel + 6),
    },
    after: {
      'toe-length': four(toe, toe - 1, toe - 4, toe - 4),
      'toe-angle': four(45 + 0.9 * i + wobble, 45.5 + 0.8 * i, 48 + wobble, 48.5),
      'heel-angle': four(36 + i, 37 + i, 40, 40),
      'pastern-angle': four(53, 53, 54, 54),
      'coronet-angle': four(31 - 0.9 * i, 29 - 0.7 * i, 29.5 - 0.4 * i, 29.5 - 0.4 * i),
      'heel-medial': four(heel, heel + 1, heel, heel),
      'heel-lateral': four(heel - gap, heel, heel - 1, heel),
      'quarter-medial': four(58, 58, 56, 56),
      'quarter-lateral': four(59, 58, 56, 57),
      'bearing-length': four(138 - i, 137 - i, 130, 130),
      width: four(128, 127, 120, 120),
      breakover: four(48 - i, 47 - i, 42, 42),
      'frog-length': four(85, 86, 84, 84),
      'frog-width': four(50 + i, 52 + i, 56, 56),
      'coronet-girth': four(362, 361, 352, 352),
      'sulcus-depth': four(Math.max(4, 14 - i), 10, 8, 8),
      'new-angle': four(54, 54, 55, 55),
      'new-length': four(12 + 9.5 * i, 12 + 9.3 * i, 11 + 9 * i, 11 + 9 * i),
    },
    findings: [
      `LF flare, medial quarter, ${Math.max(0, 3 - Math.floor(i / 2))}`,
      `LF wall separation, toe, ${i < 4 ? 2 : 1}, opened about 5 mm`,
      `RF thrush, central sulcus, ${i < 3 ? 2 : 0}`,
      'LH ring, whole foot, 1',
    ],
    growOut: [
      `LF nail holes, toe, ${14 + 9.6 * i}`,
      ...(i > 1 ? [`RF old abscess, lateral heel, ${8 + 9 * (i - 2)}`] : []),
    ],
    comfort: {
      lameness: four(Math.max(0, 2 - i), 0, 0, 0),
      lamenessBy: 'vet',
      landing: { LF: i < 3 ? 'toe' : 'heel', RF: 'flat', LH: 'heel', RH: 'heel' },
      digitalPulse: four(i < 2 ? 1 : 0, 0, 0, 0),
      surfaces: { sand: 'easy', gravel: i < 3 ? 'careful' : 'short' },
    },
    body: { weightKg: 500 + i, condition: 6, crest: 2 },
  }
}

export const sampleHorse: Horse = buildHorse({
  id: 'juniper',
  name: 'Juniper',
  kind: 'cob',
  sex: 'mare',
  born: '2014',
  heightCm: 148,
  weightKg: 505,
  started: '2026-01-05',
  history: ['shod in front until December', 'grass by day, track by night'],
  targets: {
    'toe-angle': { LF: { low: 50, high: 54 }, RF: { low: 50, high: 54 } },
    'toe-length': { LF: { low: null, high: 84 }, RF: { low: null, high: 84 } },
  },
  trimLimits: { sole: { LF: 'flat', RF: 'flat', LH: 'cupped', RH: 'cupped' }, mostPerTrim: null },
  visits: Array.from({ length: 8 }, (_, i) => visit(i)),
})
