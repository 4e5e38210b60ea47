/** Tables with many cells, which a template would write slowly. */

import type { VisitCell, VisitRow } from '../pages/practice/visit-table.ts'
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
  html += '<thead><tr>'
  for (const text of head) html += text === '' ? '<td></td>' : `<th scope="col">${escapeHtml(text)}</th>`
  html += '</tr></thead><tbody>'
  for (const [first = '', ...rest] of rows) {
    html += `<tr><th scope="row">${escapeHtml(first)}</th>`
    for (const text of rest) html += `<td>${escapeHtml(text)}</td>`
    html += '</tr>'
  }
  return `${html}</tbody></table></div>`
}

/** A visit's readings in four columns, one a foot: each measure its own body, its name over the row. */
export const readingRows = (rows: readonly VisitRow[]): string => rows.map(readingRow).join('\n')

function readingRow({ name, href, unit, notes, cells }: VisitRow): string {
  let html = `<tbody><tr><th scope="rowgroup" colspan="4"><a href="${escapeHtml(href)}">${escapeHtml(name)}</a>`
  if (unit !== '') html += `, ${escapeHtml(unit)}`
  if (notes.length > 0) html += ` <span class="soft">${escapeHtml(notes.join(', '))}</span>`
  html += '</th></tr><tr>'
  for (const cell of cells) html += `<td>${cell === null ? '' : readingCell(cell)}</td>`
  return `${html}</tr></tbody>`
}

/** `93 → 83`: on arrival, and after the trim, which is bold where the trim really changed it. */
function readingCell({ arrival, after, isReal }: VisitCell): string {
  const from = arrival === null ? '' : `${escapeHtml(arrival.text)}${after === null ? ' →' : ' → '}`
  if (after === null) return from
  const to = escapeHtml(after.text)
  const said = arrival === null ? `→ ${to}` : to
  return `${from}${isReal ? `<b>${said}</b>` : said}`
}
