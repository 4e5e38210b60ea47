/** The words for what the search found, and for what it searches in some forms only. */
import type { Exception } from '../identity/identifiers.ts'
import type { LeakHit } from './search.ts'

const most = 30

/** One block a hit: file and place, what was found, what to do. */
export function printLeaks(hits: readonly LeakHit[]): string {
  if (hits.length === 0) return ''
  const blocks = hits.slice(0, most).map((hit) => {
    const place =
      hit.line !== null ? `:${hit.line}:${hit.column}` : hit.offset !== null ? ` at byte ${hit.offset}` : ''
    return `${hit.path}${place}\n  ${hit.kind}: ${JSON.stringify(hit.text)}\n  ${hit.hint}`
  })
  const more = hits.length > most ? [`and ${hits.length - most} more.`] : []
  const head =
    hits.length === 1
      ? 'One name, word or date would have become public. Nothing was published.'
      : `${hits.length} names, words or dates would have become public. Nothing was published.`
  return [head, ...blocks, ...more].join('\n\n')
}

/** A line for each name that is searched in some forms only. */
export function printExceptions(exceptions: readonly Exception[]): string {
  return exceptions.map(({ kind, text, reason }) => `${kind} ${JSON.stringify(text)}: ${reason}`).join('\n')
}
