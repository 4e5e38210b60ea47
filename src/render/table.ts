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

/** The rows of a visit's readings, a measure each. */
export const readingRows = (rows: readonly VisitRow[]): string => rows.map(readingRow).join('\n')

function readingRow({ name, href, unit, note, cells, smallest }: VisitRow): string {
  let html = `<tr><th scope="row"><a href="${escapeHtml(href)}">${escapeHtml(name)}</a>`
  if (unit !== '') html += `, ${escapeHtml(unit)}`
  if (note !== null) html += ` <span class="small soft">${escapeHtml(note)}</span>`
  html += '</th>'
  for (const cell of cells) html += `<td>${cell === null ? '' : readingCell(cell)}</td>`
  return `${html}<td>${escapeHtml(smallest ?? '')}</td></tr>`
}

const readingCell = ({ from, value, note }: VisitCell): string =>
  `<span class="pair">${escapeHtml(from)}<b>${escapeHtml(value)}</b></span> ` +
  `<span class="change">${escapeHtml(note)}</span>`
