import type { AnyMeasureId } from '../../hoof/measures.ts'

/** Measures that tell most of how feet change, in the order in which pages tell of them. */
export const telling: readonly AnyMeasureId[] = [
  'toe-angle',
  'toe-length',
  'heel-balance',
  'heel-gap',
  'heel-angle',
  'frog-ratio',
  'sulcus-depth',
  'white-line',
  'width',
]
