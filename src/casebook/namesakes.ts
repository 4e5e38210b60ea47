/** Horses that cannot be told apart by their name, on a page or in a table. */
import type { Diagnostic } from './diagnostic.ts'
import { grouped } from './grouped.ts'
import { reportOn } from './report.ts'
import { listed, normal, quote } from './words.ts'

/** A warning at each horse that has the name of one before it. */
export function namesakes(
  horses: readonly { readonly id: string; readonly name: string }[],
): readonly Diagnostic[] {
  return [...grouped(horses, ({ name }) => normal(name)).values()].flatMap((same) =>
    same.slice(1).flatMap(({ id, name }) => {
      const report = reportOn(`${id}/horse.md`, '')
      const others = same.filter((other) => other.id !== id).map((other) => other.id)
      report.warning('name-twice', null, `The name ${quote(name)} is also that of ${listed(others)}.`, {
        expected: 'a name of its own for each horse',
        advice:
          'add what tells them apart, such as the year or the yard; or put two folders of one horse together',
      })
      return report.diagnostics
    }),
  )
}
