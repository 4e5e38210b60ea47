/** A page as plain data to a page as HTML. */
import type Handlebars from 'handlebars'
import runtime from 'handlebars/runtime.js'
import { withoutControls } from '../casebook/control-characters.ts'
import type { PageView } from '../pages/shared/page.ts'
import type { OwnerWords } from '../pages/words/index.ts'
import { type DrawChart, loadCharts, mentionsChart } from './charts/charts.ts'
import { figureWords } from './figure-words.ts'
import { addHelpers } from './helpers.ts'
import { createMarkdown } from './markdown.ts'

export interface Renderer {
  /**
   * A whole HTML page. The same view gives the same bytes, whatever was rendered before. No control character and
   * nothing that turns the direction of text is in it, wherever it was written.
   * Rejects with the page, the template and the place where a template asks for what the view does not hold.
   */
  render(view: PageView): Promise<string>
}

/** Every template and partial below `templates/` as Handlebars compiled it, by path without ending. */
export type Templates = Readonly<Record<string, TemplateSpecification>>

const pages = 'pages/'
const partials = 'partials/'

/**
 * A renderer with its own templates, Markdown processors and charts, all kept warm.
 * `pages/practice/horse` is the page `practice/horse`; `partials/layout` is the partial `layout`.
 * `words` are the language of what stands inside figures. A name that the view lacks is an error, and all text is
 * escaped. The chart library is loaded by the first page that holds a chart.
 */
export function createRenderer(templates: Templates, words: OwnerWords): Renderer {
  const inFigures = figureWords(words)
  // Its types are those of the whole library; the path without ending, which they are for, Node does not find.
  const handlebars = (runtime as unknown as typeof Handlebars).create()
  const compiled = new Map<string, Handlebars.TemplateDelegate>()
  for (const [path, template] of Object.entries(templates)) {
    if (path.startsWith(pages)) compiled.set(path.slice(pages.length), handlebars.template(template))
    if (path.startsWith(partials)) {
      handlebars.registerPartial(path.slice(partials.length), handlebars.template(template))
    }
  }

  let charts: DrawChart | null = null
  addHelpers(handlebars, {
    markdown: createMarkdown(),
    words: inFigures,
    drawChart: (chart) => {
      if (charts === null) throw new Error(`the chart "${chart.id}" is not plain data of the page`)
      return charts(chart)
    },
  })

  return {
    async render(view) {
      const template = compiled.get(view.template)
      if (!template) throw new Error(`${view.path}: there is no template ${pages}${view.template}`)
      if (charts === null && mentionsChart(view.model)) charts = await loadCharts(inFigures)
      try {
        return withoutControls(template(view.model))
      } catch (error) {
        const reason = (error instanceof Error ? error.message : String(error)).replace(
          / not defined in .* - (\d+):\d+$/s,
          ' not defined, line $1',
        )
        throw new Error(`${view.path} (template ${pages}${view.template}): ${reason}`, { cause: error })
      }
    },
  }
}
