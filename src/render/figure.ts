/** The frame round every chart and drawing: finding as caption, picture, the same in words, the data as a table. */
import type { Table } from '../pages/shared/figures.ts'
import { element, escapeHtml } from './html.ts'
import { tableHtml } from './table.ts'

export interface Framed {
  readonly id: string
  readonly kind: string
  readonly title: string
  /** Empty where the page says the same beside it. */
  readonly description: string
  readonly table: Table | null
}

/** Ids by which a picture names its title and its text alternative, where it has one. */
export const labelledBy = ({
  id,
  description,
}: Pick<Framed, 'id' | 'description'>): {
  readonly 'aria-labelledby': string
  readonly 'aria-describedby'?: string
} => ({
  'aria-labelledby': `${id}-title`,
  ...(description === '' ? {} : { 'aria-describedby': `${id}-text` }),
})

/** A whole `<figure>`. `picture` is markup that carries the attributes of `labelledBy`. */
export function frame(figure: Framed, picture: string): string {
  const { id, kind, title, description, table } = figure
  return element(
    'figure',
    { class: `figure figure-${kind}`, id },
    element('figcaption', { id: `${id}-title` }, escapeHtml(title)),
    picture,
    description === ''
      ? ''
      : element('p', { class: 'figure-text', id: `${id}-text` }, escapeHtml(description)),
    table === null
      ? ''
      : element(
          'details',
          { class: 'figure-data' },
          element('summary', {}, escapeHtml(table.caption)),
          tableHtml(table),
        ),
  )
}
