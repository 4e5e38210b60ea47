import type { MeasureId } from '../../hoof/measures.ts'
import type { Formatter } from './format.ts'

/** `Not measured, drawn by usual proportions: width.`; null where nothing stands in. */
export const standInNote = (format: Formatter, ids: readonly MeasureId[]): string | null =>
  ids.length === 0 ? null : format.words.figures.unread(format.list([...new Set(ids)].map(format.name)))
