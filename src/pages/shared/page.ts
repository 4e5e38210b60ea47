/** A page before it is HTML: where it goes within its edition, which template makes it, and what it says. */
export interface PageView {
  /** Path within the edition's folder, forward slashes: `juno/index.html`. */
  readonly path: string
  /** A template below `templates/pages/`, without ending: `practice/horse`. */
  readonly template: string
  /** Plain data: text, numbers as text, figures of figures.ts, markdown to be rendered. */
  readonly model: object
}
