/** Rows of one stage that hold what belongs under another name: lengths under an angle, angles under a length. */
import { type Measure, measureIds, measures } from '../hoof/measures.ts'
import { type ParseContext, sentence } from './fields.ts'
import { fits, type ReadRow } from './quantities.ts'

/**
 * Tells of rows whose numbers cannot be what the row is named for and are likely for another measure of the same part of
 * the foot: as one remark, instead of one for every cell.
 *
 * @returns the rows told of
 */
export function reportExchanged(rows: readonly ReadRow[], context: ParseContext): ReadonlySet<ReadRow> {
  const reported = new Set<ReadRow>()
  for (const row of rows) {
    if (reported.has(row) || !isOutOfPlace(row)) continue
    const partner = rows.find(
      (other) =>
        !reported.has(other) &&
        isOtherKind(row, other.measure) &&
        holds(row, other.measure, context) &&
        holds(other, row.measure, context),
    )
    if (partner) reportPair(row, partner, context)
    else if (hasSlip(row) || !reportMisnamed(row, rows, context)) continue
    reported.add(row)
    if (partner) reported.add(partner)
  }
  return reported
}

/** No cell of the row can be read, or is likely, as what the row is named for. */
const isOutOfPlace = ({ cells }: ReadRow): boolean =>
  cells.length > 1 && cells.every(({ quantities, doubts }) => quantities.length === 0 || doubts.length > 0)

/** Whether another unit or a lost point would explain the row as well. */
const hasSlip = ({ cells }: ReadRow): boolean =>
  cells.some(({ doubts }) => doubts.some(({ slip }) => slip !== null))

/** Whether every number of the row would be a likely one under the other measure. */
const holds = ({ cells }: ReadRow, measure: Measure, { units }: ParseContext): boolean =>
  cells.length > 0 && cells.every(({ value }) => value.kind === 'text' && fits(value.text, measure, units))

/** Lengths and angles of one part of the foot stand next to each other on a page, and are taken for each other. */
const isOtherKind = ({ measure }: ReadRow, other: Measure): boolean =>
  measure.kind !== other.kind && partOf(measure) === partOf(other)

const partOf = ({ name }: Measure): string => name.split(' ')[0] ?? name

const isImpossible = ({ cells }: ReadRow): boolean =>
  cells.some(
    ({ quantities, doubts }) => quantities.length === 0 || doubts.some(({ impossible }) => impossible),
  )

function reportPair(one: ReadRow, other: ReadRow, context: ParseContext): void {
  const [a, b] = [one.row.key, other.row.key]
  const tell = isImpossible(one) || isImpossible(other) ? context.report.error : context.report.warning
  tell('rows-exchanged', a, `${sentence(one.measure.name)} and ${other.measure.name} have changed places.`, {
    expected: `${one.measure.kind}s under ${one.measure.name}, ${other.measure.kind}s under ${other.measure.name}`,
    fix: {
      words: 'exchange the two names',
      edits: [
        { start: a.start, end: a.end, text: b.text },
        { start: b.start, end: b.end, text: a.text },
      ].sort((first, second) => first.start - second.start),
    },
  })
}

/** A row that is likely under the one other measure of its part of the foot, which the stage does not have yet. */
function reportMisnamed(row: ReadRow, rows: readonly ReadRow[], context: ParseContext): boolean {
  const meant = measureIds
    .map((id) => measures[id])
    .filter((measure) => isOtherKind(row, measure) && holds(row, measure, context))
  const [only] = meant
  if (!only || meant.length > 1 || rows.some(({ measure }) => measure === only)) return false
  const tell = isImpossible(row) ? context.report.error : context.report.warning
  tell('row-misnamed', row.row.key, `The readings of ${row.measure.name} look like those of ${only.name}.`, {
    expected: `${row.measure.kind}s under ${row.measure.name}`,
    fix: only.name,
  })
  return true
}
