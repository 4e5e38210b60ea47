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
  /** Cautions that always hold: on paper and on the reference page in full. */
  readonly standing: readonly string[]
  /** The first of them, which every page has, and the words that lead to the others. */
  readonly careful: { readonly text: string; readonly more: string }
  readonly localRules: string | null
  /** Last line: from when the record is. */
  readonly made: string
}

interface ShellLink {
  readonly href: string
  readonly text: string
  readonly current: boolean
}
