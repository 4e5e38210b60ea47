/**
 * Markdown cut where that is safe: most of a practitioner's notes are plain sentences and short lists, which need no
 * parser. A plain paragraph stands at the margin and ends every list and quotation before it, so what lies on either
 * side can be parsed by itself.
 */

/** A piece of a text: ready HTML, or Markdown for the parser. */
export type Piece = { readonly html: string } | { readonly markdown: string }

/** What may reach over a blank line: HTML, fences, definitions of links and footnotes. */
const reachesOver = /<|```|~~~|\]:|\[\^/

/** A line that a parser would give back as it stands. */
const plainLine =
  /^(?![#>+\-=:\s]|\d+[.)])(?:(?!www\.|:\/\/)[^\\`*_[\]<>&~|@\r\0\t])*[^\\`*_[\]<>&~|@\r\0\s]$/i

/** Words between stars that can be nothing but emphasis: a blank or bracket before, a blank or stop after. */
const stressed = /(?<=^|[ (])(\*\*?)([\p{L}\p{N}](?:[\p{L}\p{N} ,'-]*[\p{L}\p{N}])?)\1(?=[ .,;:!?)]|$)/gu

/** A line that starts a point of a list. */
const point = /^([-*]) (.*)$/

/** What, after a blank line, may go on with a list. */
const goesOn = /^[-*\s]/

export function piecesOf(text: string): readonly Piece[] {
  if (reachesOver.test(text)) return [{ markdown: text }]
  const pieces: Piece[] = []
  let waiting = ''
  const settle = () => {
    if (/[^ \t\n]/.test(waiting)) pieces.push({ markdown: waiting })
    waiting = ''
  }
  // Blocks, and between them the blank lines.
  const parts = text.split(/(\n(?:[ \t]*\n)+)/)
  for (const [i, part] of parts.entries()) {
    const block = plainBlock(part.replace(/\n$/, ''))
    const stands =
      block !== null &&
      (block.paragraph !== '' || waiting.trim() === '') &&
      (block.list === '' || !goesOn.test(parts[i + 2] ?? ''))
    if (stands) {
      settle()
      pieces.push({ html: [block.paragraph, block.list].filter((html) => html !== '').join('\n') })
    } else waiting += part
  }
  settle()
  return pieces
}

/** The HTML of lines without a blank one among them: a plain paragraph, a list, or a paragraph with a list under it. */
function plainBlock(block: string): { readonly paragraph: string; readonly list: string } | null {
  const paragraph: string[] = []
  const points: string[] = []
  let marker: string | undefined
  for (const line of block.split('\n')) {
    const [, sign, content = line] = point.exec(line) ?? []
    const html = plainHtml(content)
    marker ??= sign
    if (html === null || (sign !== undefined && sign !== marker)) return null
    if (sign !== undefined) points.push(html)
    else if (points.length > 0) points.push(`${points.pop()}\n${html}`)
    else paragraph.push(html)
  }
  return {
    paragraph: paragraph.length > 0 ? `<p>${paragraph.join('\n')}</p>` : '',
    list: points.length > 0 ? `<ul>\n${points.map((html) => `<li>${html}</li>\n`).join('')}</ul>` : '',
  }
}

function plainHtml(line: string): string | null {
  if (!line.includes('*')) return plainLine.test(line) ? line : null
  if (!plainLine.test(line.replace(stressed, 'x'))) return null
  return line.replace(stressed, (_, stars: string, words: string) =>
    stars === '*' ? `<em>${words}</em>` : `<strong>${words}</strong>`,
  )
}
