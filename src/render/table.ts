/**
 * Tables with many cells, which a template would write slowly. The end tags of cells, rows and groups are left out, as
 * the HTML standard allows: of a page full of figures they would be a fifth.
 */
import type { FeetCell, FeetTable } from '../pages/practice/parts/feet-table.ts'
import type { VisitCell, VisitRow } from '../pages/practice/parts/visit-table.ts'
import type { Table } from '../pages/shared/figures.ts'
import { escapeHtml } from './html.ts'

/**
 * A table of plain text. It scrolls within itself on a narrow screen and can be reached by keyboard.
 * The first cell of a row is its heading. `captioned`: whether the caption shows, or is only spoken.
 */
export function tableHtml({ caption, head, rows }: Table, captioned = false): string {
  const name = escapeHtml(caption)
  let html = `<div class="scroll" role="region" tabindex="0" aria-label="${name}"><table>`
  if (captioned) html += `<caption>${name}</caption>`
  html += `<thead>${headRow(head)}<tbody>`
  for (const [first = '', ...rest] of rows) {
    html += `<tr><th scope="row">${escapeHtml(first)}`
    for (const text of rest) html += `<td>${escapeHtml(text)}`
  }
  return `${html}</table></div>`
}

function headRow(head: readonly string[]): string {
  let html = '<tr>'
  for (const text of head) html += text === '' ? '<td>' : `<th scope="col">${escapeHtml(text)}`
  return html
}

/** A column a foot, on any screen; the heading that it stands under names it. */
export function feetTableHtml({ corner, feet, rows }: FeetTable): string {
  let html = `<table class="feet"><thead>${headRow([corner, ...feet])}<tbody>`
  for (const { name, cells } of rows) {
    html += `<tr><th scope="row">${escapeHtml(name)}`
    const [only] = cells
    if (cells.length === 1 && only && feet.length > 1)
      html += `<td colspan="${feet.length}">${feetCell(only)}`
    else for (const cell of cells) html += `<td>${cell === null ? '' : feetCell(cell)}`
  }
  return `${html}</table>`
}

function feetCell(cell: FeetCell): string {
  if ('after' in cell) return readingCell(cell)
  const text = escapeHtml(cell.text)
  return 'tone' in cell && cell.tone !== 'plain'
    ? `<b class="verdict verdict-${cell.tone}">${text}</b>`
    : text
}

/** A visit's readings in four columns, one a foot: each measure its own body, its name over the row. */
export const readingRows = (rows: readonly VisitRow[]): string => rows.map(readingRow).join('')

function readingRow({ name, unit, notes, cells }: VisitRow): string {
  let html = `<tbody><tr><th scope="rowgroup" colspan="4">${escapeHtml(name)}`
  if (unit !== '') html += `, ${escapeHtml(unit)}`
  if (notes.length > 0) html += ` <span class="soft">${escapeHtml(notes.join(', '))}</span>`
  html += '<tr>'
  for (const cell of cells) html += `<td>${cell === null ? '' : readingCell(cell)}`
  return html
}

/** `93 → 83`: on arrival, and after the trim, which is bold where the trim really changed it. */
function readingCell({ arrival, after, isReal }: VisitCell): string {
  const from = arrival === null ? '' : `${escapeHtml(arrival.text)}${after === null ? ' →' : ' → '}`
  if (after === null) return from
  const to = escapeHtml(after.text)
  const said = arrival === null ? `→ ${to}` : to
  return `${from}${isReal ? `<b>${said}</b>` : said}`
}
