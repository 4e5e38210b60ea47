import type { MeasureId } from '../../hoof/measures.ts'
import { type FootMeasures, isFrogNarrowed } from '../../hoof/stand-ins.ts'
import type { OwnerFormatter } from './format.ts'

/**
 * What of a drawing is not as it was read, in a sentence or two: `Not measured, drawn by usual proportions: width.`
 * Null where nothing is. `withFrog`: measures of a view that shows the frog.
 */
export function standInNote(
  format: OwnerFormatter,
  ids: readonly MeasureId[],
  withFrog: FootMeasures = {},
): string | null {
  const { unread, narrowedFrog } = format.words.figures
  const sentences = [
    ...(ids.length === 0 ? [] : [unread(format.list([...new Set(ids)].map(format.name)))]),
    ...(isFrogNarrowed(withFrog) ? [narrowedFrog] : []),
  ]
  return sentences.length === 0 ? null : sentences.join(' ')
}
