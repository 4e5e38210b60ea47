/** One horse's record with all that its pages share: numbers to text, words, visits in order, links. */
import type { Practice, Visit } from '../../../casebook/model.ts'
import type { PlainDate } from '../../../hoof/dates.ts'
import type { Foot } from '../../../hoof/feet.ts'
import type { AnyMeasureId } from '../../../hoof/measures.ts'
import { visitsUpTo } from '../../shared/findings.ts'
import { capital } from '../../shared/format.ts'
import type { HorseInput } from '../../shared/horse-input.ts'
import { indexReadings, type ReadingIndex } from '../../shared/readings.ts'
import type { PageShell } from '../../shared/shell.ts'
import type { Words } from '../../words/index.ts'

export interface HorseCase extends HorseInput {
  readonly words: Words['practice']
  /** What the engine says, in words. */
  readonly assessmentWords: Words['assessment']
  readonly readings: ReadingIndex
  /** Up to the day of the assessment, oldest first. */
  readonly visits: readonly Visit[]
}

export function openCase(input: HorseInput): HorseCase {
  const { format } = input
  const visits = visitsUpTo(input.horse, input.assessment.visits)
  return {
    ...input,
    words: format.words.practice,
    assessmentWords: format.words.assessment,
    readings: indexReadings(input.assessment.readings),
    visits,
  }
}

/** Text with a place to go to. */
export interface Link {
  readonly text: string
  readonly href: string
}

/** From a horse's page to a measure's entry on the reference page. */
export const measureHref = (id: AnyMeasureId): string => `../reference.html#${id}`

export const visitHref = (id: string): string => `${id}.html`

/** `Left fore`. */
export const footTitle = ({ format }: HorseCase, foot: Foot): string => capital(format.foot(foot))

export const dateOfVisit = ({ visits }: HorseCase, id: string): PlainDate =>
  visits.find((visit) => visit.id === id)?.date ?? id.slice(0, 10)

/** The frame of a page that lies `depth` folders below the practice edition's own. */
export function shellOf(
  practice: Practice,
  words: Words,
  asOf: string,
  page: {
    readonly title: string
    readonly at: 'front' | 'office' | 'reference' | 'horse'
    readonly scripts?: readonly string[]
  },
): PageShell {
  const root = page.at === 'horse' ? '../' : ''
  const { front, office } = words.practice
  return {
    kind: 'page',
    lang: words.base.lang,
    title: page.title,
    root,
    scripts: page.scripts ?? [],
    practice: practice.name,
    links: [
      { href: `${root}index.html`, text: front.horses, current: page.at === 'front' },
      { href: `${root}office.html`, text: office.link, current: page.at === 'office' },
      { href: `${root}reference.html`, text: front.reference, current: page.at === 'reference' },
    ],
    standing: words.assessment.always,
    careful: { text: words.assessment.always[0] ?? '', more: front.careful },
    localRules: practice.localRules,
    made: front.made(asOf),
  }
}

export const shellOfHorse = (
  { practice, format, assessment }: HorseCase,
  title: string,
  scripts: readonly string[] = [],
): PageShell => shellOf(practice, format.words, format.date(assessment.asOf), { title, at: 'horse', scripts })
