/** Names of measures as case files and tables write them. */
import { type AnyMeasureId, derivedMeasures, measures } from '../hoof/measures.ts'
import { normal } from './words.ts'

const all = [...Object.values(measures), ...Object.values(derivedMeasures)]

const named: ReadonlyMap<string, AnyMeasureId> = new Map(
  all.flatMap(({ id, name }) => [
    [normal(id), id],
    [normal(name), id],
  ]),
)

/** The measure that a name stands for, as pages write it or as its id does: `Toe length`, `toe-length`, `heel gap`. */
export const measureNamed = (name: string): AnyMeasureId | null => named.get(normal(name)) ?? null

/** Every spelling, by which a slip is known; entered measures alone, or worked-out ones as well. */
export const spellingsOf = (ids: readonly AnyMeasureId[]): readonly string[] => [
  ...new Set(all.filter(({ id }) => ids.includes(id)).flatMap(({ id, name }) => [name, normal(id)])),
]
