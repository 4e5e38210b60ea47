import type { Practice } from '../../casebook/model.ts'
import type { Formatter } from '../shared/format.ts'
import type { PageView } from '../shared/page.ts'
import type { Words } from '../words/index.ts'
import type { ToldCase } from './coarsen.ts'
import { presentIndex, presentSummary } from './overall.ts'
import { patientOf } from './patient.ts'
import type { CaseShot, CaseSummary, PortfolioCase, Shots } from './view.ts'

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
    by: practice.portfolio.hidesPractice || practice.name === '' ? null : w.by(practice.name),
    scripts: here === 'index' ? ['portfolio'] : [],
    links: [
      { href: `${root}index.html`, text: w.toIndex, current: here === 'index' },
      { href: `${root}summary.html`, text: w.toSummary, current: here === 'summary' },
    ],
  }
}

/** Stands in the page of a case where the patient is put, once it is known how closely all cases may be told. */
const patientPlace = '<!--patient-->'

/** What is put into the page of a case. */
export const patientPart = (told: ToldCase, { portfolio: w }: Words): PageView => ({
  path: 'patient',
  template: 'portfolio/patient',
  model: { p: patientOf(told, w) },
})

/** The page of a case with its patient. No text that a person wrote can hold the place: pages carry no comment of theirs. */
export function withPatient(page: string, patient: string): string {
  const [before, after, more] = page.split(patientPlace)
  if (before === undefined || after === undefined || more !== undefined)
    throw new Error('the page of a case has no single place for its patient')
  return before + patient.trim() + after
}

/**
 * The page of one case, in its own folder, with a place left for its patient.
 * @param shown what stands for a processed picture; a picture without one is left out
 */
export function casePage(
  page: PortfolioCase,
  slug: string,
  practice: Practice,
  shown: (picture: string) => ShownPicture | null,
  words: Words,
): PageView {
  const shownShots = (shots: readonly CaseShot[]) =>
    shots.flatMap(({ picture, ...shot }) => {
      const found = shown(picture)
      return found === null ? [] : [{ ...shot, ...found }]
    })
  const withPictures = ({ few, more }: Shots) => ({ few: shownShots(few), more: shownShots(more) })
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
  const index = presentIndex(cases, practice, format)
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
