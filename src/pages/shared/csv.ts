import { stringify } from 'csv-stringify/sync'
import { withoutControls } from '../../casebook/control-characters.ts'

/**
 * A table as CSV for others: RFC 4180, line ends LF. A text that a spreadsheet would run as a formula begins with an
 * apostrophe; numbers stay numbers. One that holds another country's separator is quoted, so that a spreadsheet that
 * goes by it begins no cell in the middle of a text.
 */
export const csvText = (
  columns: readonly string[],
  rows: readonly (readonly (string | number)[])[],
): string =>
  stringify([columns, ...rows] as (string | number)[][], {
    escape_formulas: true,
    quoted_match: /[;\t]/,
    cast: { string: withoutControls },
  })
