/**
 * The block of a case file line by line, as it is while someone types in it: no YAML yet, but keys and how far they are
 * moved in. What cannot be understood is passed over.
 */
export interface Row {
  /** Zero-based. */
  readonly line: number
  /** Column of the key or, in a list, of what follows the dash. */
  readonly indent: number
  /** As written; null for a line of a list that has no key of its own. */
  readonly key: string | null
  readonly isItem: boolean
  /** Column at which the value begins, or would. */
  readonly valueAt: number
  readonly parent: Row | null
}

export interface Outline {
  readonly lines: readonly string[]
  /** First line of the block and the one after its last; null where there is no block. */
  readonly block: { readonly from: number; readonly to: number } | null
  readonly rows: readonly Row[]
  /** Headings of the body. */
  readonly headings: readonly { readonly line: number; readonly depth: number; readonly text: string }[]
}

const keyOf = /^([^\s:#{}[\],"'&*!|>%@`-][^:{}[\],]*?|[^\s:#{}[\],"'&*!|>%@`-])[ \t]*:(?=\s|$)/

export function outlineOf(text: string): Outline {
  const lines = text.split(/\r\n|\r|\n/)
  const block = blockOf(lines)
  return {
    lines,
    block,
    rows: block ? rowsOf(lines, block.from, block.to) : [],
    headings: headingsOf(lines, block ? block.to + 1 : 0),
  }
}

function blockOf(lines: readonly string[]): Outline['block'] {
  if (lines[0]?.trimEnd() !== '---') return null
  const end = lines.findIndex((line, index) => index > 0 && line.trimEnd() === '---')
  return { from: 1, to: end === -1 ? lines.length : end }
}

function rowsOf(lines: readonly string[], from: number, to: number): readonly Row[] {
  const rows: Row[] = []
  const above: Row[] = []
  let open = 0
  for (let line = from; line < to; line++) {
    const text = lines[line] ?? ''
    if (open > 0 && !isNextRow(text, rows.at(-1))) {
      open = Math.max(0, open + bracketsIn(text))
      continue
    }
    const here = rowsAt(text, line, above)
    rows.push(...here)
    above.push(...here)
    open = Math.max(0, bracketsIn(text.slice(here.at(-1)?.valueAt ?? 0)))
  }
  return rows
}

/** A bracket that is not closed yet ends where the next key stands no further in than its own. */
function isNextRow(text: string, row: Row | undefined): boolean {
  const lead = /^ */.exec(text)?.[0].length ?? 0
  return row !== undefined && lead <= row.indent && /^(?:- |[a-z][a-z -]*:(?:\s|$))/i.test(text.slice(lead))
}

/** The row that a line is, or two where a dash and a key share it; `above` loses those that it does not stand under. */
function rowsAt(text: string, line: number, above: Row[]): readonly Row[] {
  const lead = /^[ \t]*/.exec(text)?.[0].length ?? 0
  const rest = text.slice(lead)
  if (rest === '' || rest.startsWith('#')) return []
  const dash = /^(?:-[ \t]+|-$)/.exec(rest)?.[0].length ?? 0
  const indent = lead + dash
  const parent = parentOf(above, lead, dash > 0)
  const item: Row | null =
    dash > 0 ? { line, indent, key: null, isItem: true, valueAt: indent, parent } : null
  const key = keyOf.exec(rest.slice(dash))
  const after = indent + (key?.[0].length ?? 0)
  const space = /^[ \t]*/.exec(text.slice(after))?.[0].length ?? 0
  if (!key && item) return [item]
  const row: Row = {
    line,
    indent,
    key: key?.[1] ?? null,
    isItem: false,
    valueAt: after + space,
    parent: item ?? parent,
  }
  return item ? [item, row] : [row]
}

/** Under which row a line stands that begins at a column. A dash may stand right below the key that its list belongs to. */
export function parentOf(above: Row[], lead: number, isItem: boolean): Row | null {
  for (;;) {
    const last = above.at(-1)
    if (!last) return null
    const starts = last.isItem ? last.indent - 1 : last.indent
    if (starts < lead || (isItem && !last.isItem && last.indent === lead)) return last
    above.pop()
  }
}

/** How many brackets a text opens and does not close, those in quotes and remarks left out. */
export function bracketsIn(text: string): number {
  const bare = text.replace(/"(?:[^"\\]|\\.)*"|'[^']*'|(?:^|\s)#.*$/gm, '')
  return (bare.match(/[[{]/g)?.length ?? 0) - (bare.match(/[\]}]/g)?.length ?? 0)
}

function headingsOf(lines: readonly string[], from: number): Outline['headings'] {
  let fence: string | null = null
  return lines.slice(from).flatMap((text, index) => {
    const mark = /^ {0,3}(```|~~~)/.exec(text)?.[1]
    if (mark && (fence === null || fence === mark)) fence = fence === null ? mark : null
    const match = fence === null ? /^ {0,3}(#{1,6})[ \t]+(.*?)[ \t]*#*[ \t]*$/.exec(text) : null
    return match ? [{ line: from + index, depth: (match[1] ?? '').length, text: match[2] ?? '' }] : []
  })
}

/** Keys from the top of the block down to a row; a number for a line of a list. */
export function pathOf(row: Row | null): readonly (string | number)[] {
  if (!row) return []
  const own: readonly (string | number)[] = [
    ...(row.isItem ? [0] : []),
    ...(row.key === null ? [] : [row.key]),
  ]
  return [...pathOf(row.parent), ...own]
}
