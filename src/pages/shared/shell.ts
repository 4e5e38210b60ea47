/** What the layout round every page needs: `templates/partials/layout.hbs`. */
export interface PageShell {
  /** A sheet is made for paper: it carries its own title and small print. */
  readonly kind: 'page' | 'sheet'
  /** Language of the page, BCP 47. */
  readonly lang: string
  readonly title: string
  /** From the page to the edition's folder: empty, or `../`. */
  readonly root: string
  /** Browser scripts of `assets/`, by name without ending. */
  readonly scripts: readonly string[]
  readonly practice: string
  readonly links: readonly ShellLink[]
  /** Cautions that stand on every page. */
  readonly standing: readonly string[]
  readonly localRules: string | null
  /** Last line: from when the record is. */
  readonly made: string
}

interface ShellLink {
  readonly href: string
  readonly text: string
  readonly current: boolean
}
