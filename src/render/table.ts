/** A table of plain text. It scrolls within itself on a narrow screen and can be reached by keyboard. */
import type { Table } from '../present/figures.ts'
import { escapeHtml } from './html.ts'

/** The first cell of a row is its heading. `captioned`: whether the caption shows, or is only spoken. */
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
