/** The words for what the search found, and for what it searches in some forms only. */
import type { Exception } from '../identity/identifiers.ts'
import type { Refusal } from './guard.ts'

const most = 30

/**
 * What is held back and why, a block a hit: the line of the casebook to change, what was found there, and where in the
 * page.
 * @param fromCasebook prints a path of the casebook as seen from where the person is
 */
export function printRefusal(
  { folder, owner, hits }: Refusal,
  fromCasebook: (path: string) => string = (path) => path,
): string {
  const blocks = hits.slice(0, most).map((hit) => {
    const place =
      hit.line !== null ? `:${hit.line}:${hit.column}` : hit.offset !== null ? ` at byte ${hit.offset}` : ''
    const found = `${hit.kind}: ${JSON.stringify(hit.text)}`
    if (hit.source === null) return `${hit.path}${place}\n  ${found}\n  ${hit.hint}`
    const { file, line, text } = hit.source
    return [
      `${fromCasebook(file)}:${line}`,
      `  ${found}`,
      `  ${shortened(text)}`,
      '  Change that line so that it says the same without it.',
      `  It would have stood in ${hit.path}${place}.`,
    ].join('\n')
  })
  const more = hits.length > most ? [`and ${hits.length - most} more.`] : []
  const what = hits.length === 1 ? 'One name, word or date' : `${hits.length} names, words or dates`
  const head =
    owner === null
      ? `${what} would have become public in ${folder}/.`
      : `${what} would have been shown to ${owner}, whose page is in ${folder}/.`
  return [`${head} It stays as it was last published.`, ...blocks, ...more].join('\n\n')
}

const longestLine = 160
const shortened = (line: string) => (line.length > longestLine ? `${line.slice(0, longestLine)} …` : line)

/** A line for each name that is searched in some forms only. */
export function printExceptions(exceptions: readonly Exception[]): string {
  return exceptions.map(({ kind, text, reason }) => `${kind} ${JSON.stringify(text)}: ${reason}`).join('\n')
}
