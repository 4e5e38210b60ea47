/**
 * What a drawing of a foot is made from: the readings, and for what was not read a stand-in, named so that a page can
 * say it. The proportions are common practice without a source, or from memory; they say nothing of the foot.
 */
import type { MeasureId } from './measures.ts'

/** What was read on one foot at one time, millimetres and degrees; a measure that was not read is left out. */
export type FootMeasures = { readonly [id in MeasureId]?: number | undefined }

export interface SideMeasures {
  readonly toeLength: number
  readonly toeAngle: number
  readonly heelAngle: number
  /** The heel on the outer side, which is the nearer, and the other. */
  readonly heel: number
  readonly otherHeel: number
  readonly bearing: number
  readonly pasternAngle: number
  /** The steeper strip of new growth below the hairline, where it was read. */
  readonly strip: { readonly angle: number; readonly length: number } | null
  readonly assumed: readonly MeasureId[]
}

export interface BehindMeasures {
  readonly width: number
  readonly heelAngle: number
  readonly lateral: number
  readonly medial: number
  readonly frogWidth: number
  readonly sulcus: number
  readonly assumed: readonly MeasureId[]
}

export interface SoleMeasures {
  readonly width: number
  readonly bearing: number
  readonly frogLength: number
  readonly frogWidth: number
  readonly sulcus: number
  /** At the toe. */
  readonly wall: number
  readonly whiteLine: number
  /** Millimetres of the toe in front of the breakover; 0 where it cannot be told. */
  readonly rolled: number
  readonly assumed: readonly MeasureId[]
}

export interface WallMeasures {
  readonly toeLength: number
  readonly width: number
  readonly assumed: readonly MeasureId[]
}

/**
 * From the side: the sound foot's mean gap between toe and heel angle (Dyson 2011, second hand), toe twice the heel
 * (Stachurska 2008), bearing length to toe length as in the trim study (136.9 to 88.3 mm).
 */
export const soundHeelGap = 8.7
export const toeToHeel = 2
export const bearingToToe = 136.9 / 88.3

/** Sizes of a middling riding horse, for what stands in where nothing at all was read. */
const usual = { toeLength: 85, toeAngle: 50, width: 125, sulcus: 4 }

type Rule = () => number

/** Reads measures, and notes each whose stand-in was taken. */
function reader(measures: FootMeasures) {
  const assumed: MeasureId[] = []
  return {
    assumed,
    read: (id: MeasureId, standIn: Rule): number => {
      const value = measures[id]
      if (value !== undefined) return value
      assumed.push(id)
      return standIn()
    },
  }
}

export function sideMeasures(of: FootMeasures): SideMeasures {
  const { assumed, read } = reader(of)
  const { 'new-angle': angle, 'new-length': length } = of
  const toeLength = read('toe-length', () => usual.toeLength)
  const toeAngle = read('toe-angle', () => usual.toeAngle)
  const heel = read('heel-lateral', () => of['heel-medial'] ?? toeLength / toeToHeel)
  return {
    toeLength,
    toeAngle,
    heelAngle: read('heel-angle', () => toeAngle - soundHeelGap),
    heel,
    otherHeel: of['heel-medial'] ?? heel,
    bearing: read('bearing-length', () => bearingToToe * toeLength),
    pasternAngle: of['pastern-angle'] ?? toeAngle,
    strip: angle === undefined || length === undefined ? null : { angle, length },
    assumed,
  }
}

export function behindMeasures(of: FootMeasures): BehindMeasures {
  const { assumed, read } = reader(of)
  const width = read('width', () => usual.width)
  const either = of['heel-medial'] ?? of['heel-lateral']
  const lateral = read('heel-lateral', () => either ?? 0.3 * width)
  return {
    width,
    lateral,
    medial: read('heel-medial', () => lateral),
    heelAngle: of['heel-angle'] ?? of['toe-angle'] ?? usual.toeAngle,
    frogWidth: of['frog-width'] ?? 0.58 * 0.65 * (of['bearing-length'] ?? 1.02 * width),
    sulcus: of['sulcus-depth'] ?? usual.sulcus,
    assumed,
  }
}

export function soleMeasures(of: FootMeasures): SoleMeasures {
  const { assumed, read } = reader(of)
  const width = read('width', () => of['bearing-length'] ?? usual.width)
  const bearing = read('bearing-length', () => width)
  const frogLength = read('frog-length', () => 0.65 * bearing)
  const { breakover } = of
  const isKnown = breakover !== undefined && assumed.length === 0
  return {
    width,
    bearing,
    frogLength,
    frogWidth: read('frog-width', () => 0.58 * frogLength),
    sulcus: of['sulcus-depth'] ?? usual.sulcus,
    wall: of['wall-thickness'] ?? 0.085 * bearing,
    whiteLine: of['white-line'] ?? 0.024 * width,
    rolled: isKnown ? Math.max(0, bearing - frogTipAt(bearing, frogLength) - breakover) : 0,
    assumed,
  }
}

/** How far the frog's tip lies in front of the line of the heels: its base reaches a little behind it. */
export const frogTipAt = (bearing: number, frogLength: number): number => frogLength - 0.035 * bearing

/** The width of the heels, which is seldom read: a frog's width with a heel on each side. */
export const heelWidthFor = (width: number, frogWidth: number): number =>
  Math.max(0.54 * width, Math.min(0.8 * width, frogWidth + 0.28 * width))

/** A frog wider than fits between the heels is drawn narrower, and that is said. */
export const drawnFrogWidth = (width: number, frogWidth: number): number =>
  Math.min(frogWidth, heelWidthFor(width, frogWidth) - 0.17 * width)

/** Whether it is, in a foot whose width and frog were read. */
export const isFrogNarrowed = ({ width, 'frog-width': frogWidth }: FootMeasures): boolean =>
  width !== undefined && frogWidth !== undefined && drawnFrogWidth(width, frogWidth) < frogWidth - 0.5

export function wallMeasures(of: FootMeasures): WallMeasures {
  const { assumed, read } = reader(of)
  const toeLength = read('toe-length', () => usual.toeLength)
  return { toeLength, width: read('width', () => 1.45 * toeLength), assumed }
}
