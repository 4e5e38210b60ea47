/**
 * Markdown cut where that is safe: most of a practitioner's notes are plain sentences, which need no parser. A plain
 * paragraph stands at the margin and ends every list and quotation before it, so what lies on either side can be
 * parsed by itself.
 */

/** A piece of a text: a paragraph of nothing but words, or Markdown for the parser. */
export type Piece = { readonly plain: string } | { readonly markdown: string }

/** What may reach over a blank line: HTML, fences, definitions of links and footnotes. */
const reachesOver = /<|```|~~~|\]:|\[\^/

/** A line that a parser would give back as it stands. */
const plainLine =
  /^(?![#>+\-=:\s]|\d+[.)])(?:(?!www\.|:\/\/)[^\\`*_[\]<>&~|@\r\0\t])*[^\\`*_[\]<>&~|@\r\0\s]$/i

export function piecesOf(text: string): readonly Piece[] {
  if (reachesOver.test(text)) return [{ markdown: text }]
  const pieces: Piece[] = []
  let waiting = ''
  const settle = () => {
    if (/[^ \t\n]/.test(waiting)) pieces.push({ markdown: waiting })
    waiting = ''
  }
  // Blocks, and between them the blank lines.
  for (const part of text.split(/(\n(?:[ \t]*\n)+)/)) {
    if (part.split('\n').every((line) => plainLine.test(line))) {
      settle()
      pieces.push({ plain: part })
    } else waiting += part
  }
  settle()
  return pieces
}
