/** The markers of the family AprilTag 36h11, as js-aruco2 carries it, and how they are printed. */
import { AR } from 'js-aruco2'
import 'js-aruco2/src/dictionaries/apriltag_36h11.js'

export const markerFamily = 'APRILTAG_36h11'

/** Row by row, whether a cell of a marker is white; the black rim is not among them. */
export function markerCells(id: number): readonly (readonly boolean[])[] {
  const code = new AR.Dictionary(markerFamily).codeList[id] ?? ''
  return Array.from({ length: 6 }, (_, row) =>
    [...code.slice(6 * row, 6 * row + 6)].map((bit) => bit === '1'),
  )
}
