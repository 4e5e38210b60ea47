import type { Practice } from '../../casebook/model.ts'
import type { Formatter } from '../shared/format.ts'
import type { PageView } from '../shared/page.ts'
import type { Words } from '../words/index.ts'
import { presentIndex, presentSummary } from './overall.ts'
import type { CaseShot, CaseSummary, PortfolioCase } from './view.ts'

/** A picture as a page of the portfolio shows it; paths are of its own making. */
export interface ShownPicture {
  readonly src: string
  readonly sources: readonly { readonly type: string; readonly srcset: string }[]
}

type Here = 'index' | 'summary' | 'case'

function frame(title: string, practice: Practice, root: string, here: Here, words: Words) {
  const { portfolio: w } = words
  return {
    lang: words.base.lang,
    title,
    root,
    by: practice.name === '' ? null : w.by(practice.name),
    scripts: here === 'index' ? ['portfolio'] : [],
    links: [
      { href: `${root}index.html`, text: w.toIndex, current: here === 'index' },
      { href: `${root}summary.html`, text: w.toSummary, current: here === 'summary' },
    ],
  }
}

/**
 * The page of one case, in its own folder.
 * @param shown what stands for a processed picture; a picture without one is left out
 */
export function casePage(
  page: PortfolioCase,
  slug: string,
  practice: Practice,
  shown: (picture: string) => ShownPicture | null,
  words: Words,
): PageView {
  const withPictures = (shots: readonly CaseShot[]) =>
    shots.flatMap(({ picture, ...shot }) => {
      const found = shown(picture)
      return found === null ? [] : [{ ...shot, ...found }]
    })
  const { findings, outcome } = page
  return {
    path: `${slug}/index.html`,
    template: 'portfolio/case',
    model: {
      page: frame(page.title, practice, '../', 'case', words),
      w: words.portfolio,
      c: {
        ...page,
        findings: { ...findings, shots: withPictures(findings.shots) },
        outcome: { ...outcome, shots: withPictures(outcome.shots) },
      },
    },
  }
}

/** The list of cases and the page over all of them. */
export function portfolioPages(
  practice: Practice,
  cases: readonly CaseSummary[],
  format: Formatter,
): PageView[] {
  const { words } = format
  const { portfolio: w } = words
  const index = presentIndex(cases, format)
  return [
    {
      path: 'index.html',
      template: 'portfolio/index',
      model: { page: frame(w.title, practice, '', 'index', words), w, i: index },
    },
    {
      path: 'summary.html',
      template: 'portfolio/summary',
      model: {
        page: frame(w.summaryTitle, practice, '', 'summary', words),
        w,
        s: presentSummary(cases, format),
      },
    },
  ]
}
