/**
 * The line by which a file that an import wrote tells where it came from, and whether anybody has changed it since. It is
 * a remark of the block, so nothing else reads it.
 */
import { cacheKey } from '../../build/cache-key.ts'
import { withoutControls } from '../../casebook/control-characters.ts'

const remark =
  /^# imported from (.*); its next import replaces this file unless it was changed \(([\w-]{16})\)$/m

export interface Origin {
  /** Name of the table. */
  readonly table: string
  /** Whether the file is, sign for sign, as the import wrote it. */
  readonly isUntouched: boolean
}

const nameOf = (table: string): string => withoutControls(table).replaceAll(/\s+/g, ' ').trim()

/** A case file's text with its origin as the last line of the block. */
export function withOrigin(text: string, table: string): string {
  const end = text.indexOf('\n---\n', 3) + 1
  const line = (key: string) =>
    `# imported from ${nameOf(table)}; its next import replaces this file unless it was changed (${key})\n`
  const unsigned = text.slice(0, end) + line('') + text.slice(end)
  return text.slice(0, end) + line(keyOf(unsigned)) + text.slice(end)
}

/** Where a file came from; null where no import says that it wrote it. */
export function originOf(text: string): Origin | null {
  // A copy to another system may have changed the ends of lines, which says nothing of a person.
  const plain = text.replaceAll('\r\n', '\n')
  const match = remark.exec(plain)
  if (!match) return null
  const [line, table = '', key = ''] = match
  const unsigned =
    plain.slice(0, match.index) + line.replace(`(${key})`, '()') + plain.slice(match.index + line.length)
  return { table, isUntouched: keyOf(unsigned) === key }
}

export const isFrom = (origin: Origin, table: string): boolean => origin.table === nameOf(table)

const keyOf = (text: string): string => cacheKey(text).slice(0, 16)
