import type { PageView } from '../present/page.ts'

export interface Renderer {
  /** A whole HTML page. The same view gives the same bytes, whatever was rendered before. */
  render(view: PageView): string
}

/** Text of every template and partial below `templates/`, by path without ending. */
export type TemplateSources = ReadonlyMap<string, string>

export function createRenderer(_templates: TemplateSources): Renderer {
  throw new Error('to be written')
}
