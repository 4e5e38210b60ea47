/** What templates may call besides Handlebars' own blocks. Markup leaves a helper as a SafeString, text never does. */
import type Handlebars from 'handlebars'
import { withoutControls } from '../casebook/control-characters.ts'
import type { FeetTable } from '../pages/practice/parts/feet-table.ts'
import type { VisitRow } from '../pages/practice/parts/visit-table.ts'
import type { Chart, Drawing, Sparkline, Table } from '../pages/shared/figures.ts'
import { stageKey } from './charts/key.ts'
import { sparkline } from './charts/sparkline.ts'
import { draw } from './drawings/drawing.ts'
import type { FigureWords } from './figure-words.ts'
import { inOnePiece } from './html.ts'
import type { MarkdownRenderer } from './markdown.ts'
import { feetTableHtml, readingRows, tableHtml } from './table.ts'

export interface HelperTools {
  readonly markdown: MarkdownRenderer
  readonly words: FigureWords
  readonly drawChart: (chart: Chart) => string
}

/** Level of the page heading that a body of text stands under, unless the template says another. */
const usualLevel = 2

/** Adds the helpers to a renderer's own Handlebars. */
export function addHelpers(handlebars: typeof Handlebars, tools: HelperTools): void {
  const safe = (markup: string) => new handlebars.SafeString(inOnePiece(markup))
  handlebars.registerHelper({
    /** `{{figure chart}}`: a chart in its frame. */
    figure: (chart: Chart) => safe(tools.drawChart(chart)),
    /** `{{drawing view}}`: a drawing in its frame; a measure's drawing stands alone. */
    drawing: (drawing: Drawing) => safe(draw(drawing, tools.words)),
    /** `{{stageKey}}`: the marks that small charts share. */
    stageKey: () => safe(stageKey(tools.words.trend)),
    /** `{{sparkline view}}`: a picture of the size of a word. */
    sparkline: (view: Sparkline) => safe(sparkline(view)),
    /** `{{table data}}`, or `{{table data captioned=true}}` where no heading names it. */
    table: (table: Table, { hash }: Handlebars.HelperOptions) =>
      safe(tableHtml(table, hash.captioned === true)),
    /** `{{feetTable data}}` under the heading that names it. */
    feetTable: (table: FeetTable) => safe(feetTableHtml(table)),
    /** `{{readings rows}}` in a table's body. */
    readings: (rows: readonly VisitRow[]) => safe(readingRows(rows)),
    /** `{{markdown text}}`, or `{{markdown text below=3}}` under a heading of another level. */
    markdown: (text: string, { hash }: Handlebars.HelperOptions) =>
      safe(tools.markdown(text, Number(hash.below ?? usualLevel))),
    /** `{{#if (eq a b)}}`. */
    eq: (a: unknown, b: unknown) => a === b,
    /** `{{join list ", "}}`: text, escaped like any other. */
    join: (list: readonly string[], separator: string) => list.join(separator),
    /** `{{json data}}` inside `<script type="application/json">`: cannot end the element. */
    json: (data: unknown) =>
      safe(JSON.stringify(data, publishable).replace(/[<>&\u2028\u2029]/g, escapeJson)),
  })
}

const escapeJson = (sign: string) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`

/** A script may put any text of its data on the page; an escape such as `\u001b` in it would reach it whole. */
const publishable = (_name: string, value: unknown) =>
  typeof value === 'string' ? withoutControls(value) : value
