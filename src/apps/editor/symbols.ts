/** The parts of a case file as an editor lists them: keys and their lines, then the headings of the body. */
import { type DocumentSymbol, SymbolKind } from 'vscode-languageserver/node'
import type { Outline, Row } from './outline.ts'

export function symbolsOf(outline: Outline): readonly DocumentSymbol[] {
  return [...childrenOf(null, outline), ...headingSymbols(outline)]
}

function childrenOf(parent: Row | null, outline: Outline): DocumentSymbol[] {
  return outline.rows.filter((row) => row.parent === parent).map((row) => symbolOf(row, outline))
}

function symbolOf(row: Row, outline: Outline): DocumentSymbol {
  const text = outline.lines[row.line] ?? ''
  const value = text
    .slice(row.valueAt)
    .replace(/\s#.*$/, '')
    .trim()
  const children = childrenOf(row, outline)
  const last = lastLine(row, outline)
  return {
    name: row.key ?? (value || '-'),
    ...(row.key !== null && value !== '' && { detail: value }),
    kind: children.length > 0 ? SymbolKind.Object : row.key === null ? SymbolKind.String : SymbolKind.Field,
    range: {
      start: { line: row.line, character: 0 },
      end: { line: last, character: outline.lines[last]?.length ?? 0 },
    },
    selectionRange: {
      start: { line: row.line, character: row.indent },
      end: {
        line: row.line,
        character: Math.max(row.indent, row.key === null ? text.length : row.indent + row.key.length),
      },
    },
    children,
  }
}

/** The last line of what stands under a row. */
function lastLine(row: Row, { rows }: Outline): number {
  const isUnder = (one: Row | null): boolean => one !== null && (one === row || isUnder(one.parent))
  return rows.findLast(isUnder)?.line ?? row.line
}

function headingSymbols({ headings, lines }: Outline): readonly DocumentSymbol[] {
  return headings.map(({ line, depth, text }, index) => {
    const next = headings.slice(index + 1).find((one) => one.depth <= depth)
    const last = (next?.line ?? lines.length) - 1
    const range = { start: { line, character: 0 }, end: { line: last, character: lines[last]?.length ?? 0 } }
    const end = { line, character: lines[line]?.length ?? 0 }
    return { name: text || '#', kind: SymbolKind.Module, range, selectionRange: { start: range.start, end } }
  })
}
