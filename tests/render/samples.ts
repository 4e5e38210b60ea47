/** Invented figures for the tests of this room. */
import { addDays } from '../../src/hoof/dates.ts'
import type { Foot } from '../../src/hoof/feet.ts'
import type {
  AgreementChart,
  DistributionChart,
  FindingsGrid,
  LevelDrawing,
  SideDrawing,
  SideOutline,
  SoleDrawing,
  TrendChart,
  TrendPanel,
  WallDrawing,
} from '../../src/pages/shared/figures.ts'

const start = '2025-10-14'
const table = { caption: 'All readings', head: ['', 'mm'], rows: [['14 Oct 25', '96']] }
const said = (id: string) => ({ id, title: `Finding of ${id}`, description: `What ${id} shows`, table })

function panel(foot: Foot, from: number, slope: number, visits: number): TrendPanel {
  const at = (i: number) => ({ date: addDays(start, i * 38) })
  const days = Array.from({ length: visits }, (_, i) => i)
  return {
    foot,
    label: `foot ${foot}`,
    note: 'improving',
    points: days.flatMap((i) => [
      { at: at(i), value: from + slope * i + 7, stage: 'before' as const, isLeftOut: false },
      { at: at(i), value: from + slope * i, stage: 'after' as const, isLeftOut: false },
    ]),
    sawTooth: true,
    line: days.map((i) => ({
      at: at(i),
      value: from + slope * i,
      low: from + slope * i - 2,
      high: from + slope * i + 2,
    })),
    band: { low: null, high: 84, label: 'up to 84 mm' },
    forecast: {
      at: { date: '2026-06-25' },
      value: 84,
      earliest: { date: '2026-05-21' },
      latest: foot === 'RF' ? null : { date: '2026-08-01' },
      label: '25 Jun 26',
    },
  }
}

export const trend = (id = 'toe-length', more: Partial<TrendChart> = {}): TrendChart => ({
  ...said(id),
  kind: 'trend',
  size: 'full',
  baseline: 'none',
  unit: 'mm',
  valueTitle: 'toe length, mm',
  timeTitle: 'date',
  panels: [
    panel('LF', 96, -2, 6),
    panel('RF', 95, -1.5, 6),
    panel('LH', 88, -0.4, 5),
    panel('RH', 90, -1, 3),
  ],
  ...more,
})

export const findings = (visits: number): FindingsGrid => ({
  ...said(`findings-${visits}`),
  kind: 'findings',
  visits: Array.from({ length: visits }, (_, i) => `visit ${i}`),
  rows: [
    {
      foot: 'LF',
      label: 'flare, medial quarter',
      grades: Array.from({ length: visits }, (_, i) => ([3, 2, 1, 0, null] as const)[i % 5] ?? null),
    },
  ],
})

export const distribution: DistributionChart = {
  ...said('distribution'),
  kind: 'distribution',
  unit: '°',
  valueTitle: 'change of toe angle',
  rows: [
    { label: 'toe angle', values: [3, 3.1, 3.2, 2, -1, 5, 6], median: 3.1, low: 2, high: 5 },
    { label: 'heel angle', values: [1, 2], median: 1.5, low: null, high: null },
  ],
}

export const agreement: AgreementChart = {
  ...said('agreement'),
  kind: 'agreement',
  valueTitle: 'mean of both, mm',
  differenceTitle: 'photograph less hand, mm',
  pairs: [
    { mean: 88, difference: 0.5, isExplained: true },
    { mean: 91, difference: -1, isExplained: true },
    { mean: 102, difference: 6, isExplained: false },
    { mean: 120, difference: 0, isExplained: true },
  ],
  bias: { at: 1.4, label: 'mean +1.5 mm' },
  limits: [
    { at: -4, label: '−4 mm' },
    { at: 6.5, label: '+6.5 mm' },
  ],
}

const measures = {
  'heel-angle': 44,
  'heel-medial': 36,
  'heel-lateral': 36,
  'bearing-length': 124,
  width: 122,
}

const outline = (label: string, angle: number, length: number): SideOutline => ({
  label,
  measures: { ...measures, 'toe-angle': angle, 'toe-length': length },
  toeAngleLabel: `${angle}°`,
  toeLengthLabel: `${length} mm`,
})

export const side: SideDrawing = {
  ...said('side'),
  kind: 'side',
  foot: 'LF',
  unread: null,
  first: outline('January', 44, 98),
  latest: outline('June', 51, 88),
}

export const sole = (foot: Foot, marks: SoleDrawing['marks']): SoleDrawing => ({
  ...said(`sole-${foot}`),
  kind: 'sole',
  foot,
  unread: null,
  measures,
  marks,
})

export const wall: WallDrawing = {
  ...said('wall'),
  kind: 'wall',
  foot: 'LF',
  unread: 'Width was not measured.',
  measures: { 'toe-length': 88 },
  features: [
    {
      what: 'nail holes',
      place: 'toe',
      label: 'nail holes, toe: 42 mm',
      at: 42,
      wallLength: 88,
      ahead: [
        { label: 'April', at: 51 },
        { label: 'July', at: 99 },
      ],
    },
    { what: 'ring', place: 'medial quarter', label: 'ring, 20 mm', at: 20, wallLength: null, ahead: [] },
  ],
}

export const level = (foot: Foot, balance: number): LevelDrawing => ({
  ...said(`level-${foot}`),
  kind: 'level',
  foot,
  unread: null,
  measures,
  balance,
  balanceLabel: `${Math.abs(balance)} mm`,
})
