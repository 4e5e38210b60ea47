/** A closed band of wanted values; null is an open side. Unit of the measure it belongs to. */
export interface Band {
  readonly low: number | null
  readonly high: number | null
}

export const inBand = (value: number, band: Band): boolean =>
  (band.low === null || value >= band.low) && (band.high === null || value <= band.high)

/** The edge of the band that a value outside it would reach first; null when the value lies in the band. */
export function nearestEdge(value: number, band: Band): number | null {
  if (band.low !== null && value < band.low) return band.low
  if (band.high !== null && value > band.high) return band.high
  return null
}
