/** Every sentence of the demo's owner pages in each language, and of a horse of forty visits: nothing past as to come, nothing calmer than it is. */
import { describe, expect, it } from 'vitest'
import type { LanguageTag } from '../../src/casebook/languages.ts'
import { findingName } from '../../src/pages/owner/findings.ts'
import { presentOwnerHorse } from '../../src/pages/owner/horse.ts'
import type { OwnerHorse } from '../../src/pages/owner/view.ts'
import { standingCautions, wordsOf } from '../../src/pages/shared/caution-lines.ts'
import { findingStories, visitsUpTo } from '../../src/pages/shared/findings.ts'
import { capital, type OwnerFormatter } from '../../src/pages/shared/format.ts'
import { demoInputs } from '../editions/demo-inputs.ts'
import { lastOfForty } from '../editions/forty-visits.ts'
import { english, formatIn, germanIn } from '../english.ts'

interface Language {
  readonly format: OwnerFormatter
  /** What speaks of something to come. */
  readonly isAhead: (text: string) => boolean
  /** Where a sentence on what is ahead has said what it is about. */
  readonly afterSubject: RegExp
  /** What the demo is to hold, so that these rules are tried. */
  readonly held: readonly string[]
}

const languages: Readonly<Record<LanguageTag, Language>> = {
  en: {
    format: formatIn('mm'),
    isAhead: (text) =>
      /should be where|will not be|at the ground about|^(?:It is planned|next visit (?!was))/.test(text),
    afterSubject: / (?:should|was|will) |: (?:at|on|was|grown) /,
    held: ['we look at the next visit', 'It was planned for', 'until your vet has had a look'],
  },
  de: {
    format: germanIn('mm'),
    isAhead: (text) =>
      /\b(?:sollte etwa im|wird nicht vor|: etwa im)|^(?:Er ist für|nächster Besuch)/.test(text),
    afterSubject: / (?:sollte|wird) |: (?:etwa|sollte|wächst|inzwischen) /,
    held: ['beim nächsten Besuch sehen wir nach', 'Er war für den', 'bis Ihr Tierarzt nachgesehen hat'],
  },
}

/** The demo's day, days on which something has come due since, and one of the hard horse's last visit. */
const days = ['2026-11-25', '2026-12-20', '2027-02-10', '2027-06-01', lastOfForty]

const pages = days.flatMap((asOf) =>
  demoInputs(asOf).flatMap((input) =>
    Object.entries(languages).flatMap(([tag, language]) => {
      const { format } = language
      const view = presentOwnerHorse({ ...input, format })
      const name = `${input.horse.id} on ${asOf}, ${tag}`
      return view === null ? [] : [{ asOf, input, view, name, language }]
    }),
  ),
)

/** All that the program says in its own words; letters and tasks are the practitioner's. */
const sentencesOf = ({ letter: _, lettersBefore, care, thenAndNow, photos, ...view }: OwnerHorse) => {
  const texts: string[] = []
  const gather = (value: unknown): void => {
    if (typeof value === 'string') texts.push(value)
    else if (typeof value === 'object' && value !== null) Object.values(value).forEach(gather)
  }
  gather({ ...view, drawing: null, contacts: [], numbers: { ...view.numbers, tables: [] } })
  return texts
}

/** First and last day of each date or month in a text; one without a year is of the year of `asOf`. */
const spans = (text: string, asOf: string, { format }: Language) => {
  const months = Array.from({ length: 12 }, (_, i) =>
    format.month(`2001-${String(i + 1).padStart(2, '0')}-01`),
  )
  const monthPattern = new RegExp(`(?:(\\d{1,2})\\.? )?\\b(${months.join('|')})\\b(?: (\\d{4}))?`, 'g')
  return [...text.matchAll(monthPattern)].map(([, day, month = '', year = asOf.slice(0, 4)]) => {
    const stem = `${year}-${String(months.indexOf(month) + 1).padStart(2, '0')}`
    return day === undefined
      ? { from: `${stem}-01`, to: `${stem}-31` }
      : { from: `${stem}-${day.padStart(2, '0')}`, to: `${stem}-${day.padStart(2, '0')}` }
  })
}

/** A full stop after a figure is a German date's. */
const sentencesIn = (text: string) => text.split(/(?<=(?<!\d)[.!?]) /)

describe.each(pages)('$name', ({ asOf, input, view, language }) => {
  const { assessment } = input
  const { format, isAhead } = language
  const { owner: words } = format.words
  const texts = sentencesOf(view)
  const bad = view.changes.feet.flatMap(({ foot, moods }) =>
    moods.flatMap(({ mood, sentences }) => (mood === 'bad' ? sentences.map((text) => ({ foot, text })) : [])),
  )
  const good = view.changes.feet.flatMap(({ foot, moods }) =>
    moods.flatMap(({ mood, sentences }) =>
      mood === 'good' ? sentences.map((text) => ({ foot, text })) : [],
    ),
  )

  it('tells no past day as to come, and no day to come as past', () => {
    for (const text of texts) {
      const told = spans(text, asOf, language)
      if (isAhead(text)) for (const { to } of told) expect(to >= asOf, text).toBe(true)
      else for (const { from } of told) expect(from <= asOf, text).toBe(true)
    }
  })

  it('gives no two dates for one thing, and no range from before the last reading', () => {
    const subjects = view.numbers.ahead.map((text) => text.split(language.afterSubject)[0])
    expect(new Set(subjects.filter((one) => one?.includes(':'))).size).toBe(
      subjects.filter((one) => one?.includes(':')).length,
    )
    for (const { forecast, last } of assessment.trends)
      if (forecast?.kind === 'date') expect(forecast.earliest >= last.date).toBe(true)
  })

  it('tells as worse all that the practice is told is worse, with the grade then and now', () => {
    for (const trend of assessment.trends) {
      if (!trend.isClear || trend.verdict !== 'worsening') continue
      expect(english.assessment.standings[trend.verdict]).toBe('worsening')
      const foot = capital(format.foot(trend.foot))
      const thing = capital(words.measures[trend.measure].thing)
      expect(bad.some((one) => one.foot === foot && one.text.startsWith(thing))).toBe(true)
      expect(good.some((one) => one.foot === foot && one.text.startsWith(thing))).toBe(false)
    }
    for (const { foot, what, changes, last } of findingStories(visitsUpTo(input.horse, assessment.visits))) {
      const before = changes.at(-2)
      if (before === undefined || last.grade <= before.grade) continue
      const [from, to] = [words.grades[before.grade] ?? '', words.grades[last.grade] ?? '']
      const said = bad.filter(
        (one) =>
          one.foot === capital(format.foot(foot)) && one.text.startsWith(capital(findingName(what, format))),
      )
      const grades = said.map(({ text }) => text.split(/[ ,.:]+/))
      expect(grades.some((told) => told.includes(from) && told.includes(to))).toBe(true)
    }
  })

  it('has every caution that stands, and calls no held foot better by its measures', () => {
    for (const caution of standingCautions(assessment.cautions)) {
      const said = wordsOf(format, caution)
      const sentence = said.owner(caution.facts, format)
      const name = said.name(caution.facts)
      expect(texts.some((text) => text.includes(sentence) || text.includes(name))).toBe(true)
    }
    const things = Object.values(words.measures).map(({ thing }) => capital(thing))
    for (const foot of assessment.heldFeet)
      expect(
        good.filter(
          (one) =>
            one.foot === capital(format.foot(foot)) &&
            things.some((thing) => one.text.startsWith(`${thing} `)),
        ),
      ).toEqual([])
  })

  it('says no sentence more than twice, and none that is long', () => {
    // A caution stands by itself, whatever another of them says.
    const ofCautions = assessment.cautions
      .map((one) => wordsOf(format, one).owner(one.facts, format))
      .join(' ')
    const sentences = texts
      .flatMap((text) => sentencesIn(text))
      .filter((text) => / .* /.test(text) && !ofCautions.includes(text))
    for (const text of sentences)
      expect(sentences.filter((one) => one === text).length, text).toBeLessThanOrEqual(2)
    const courses = view.numbers.found.flatMap(({ lines }) => lines)
    for (const text of texts.filter((one) => !courses.includes(one)))
      for (const sentence of sentencesIn(text))
        expect(sentence.split(' ').length, sentence).toBeLessThanOrEqual(34)
  })

  it('says at most two sentences on a foot of what is not worse', () => {
    for (const { moods } of view.changes.feet)
      expect(
        moods.filter(({ mood }) => mood !== 'bad').flatMap(({ sentences }) => sentences).length,
      ).toBeLessThanOrEqual(2)
  })
})

describe.each(Object.entries(languages))('these pages, %s', (_, language) => {
  it('are of enough horses, with what the rules are about', () => {
    const own = pages.filter((page) => page.language === language)
    expect(own.length).toBeGreaterThan(40)
    const all = own.flatMap(({ view }) => sentencesOf(view))
    expect(all.filter(language.isAhead).length).toBeGreaterThan(20)
    expect(all.filter((text) => spans(text, lastOfForty, language).length > 0).length).toBeGreaterThan(100)
    for (const text of language.held)
      expect(
        all.some((one) => one.includes(text)),
        text,
      ).toBe(true)
    expect(own.some(({ view }) => view.changes.feet.some(({ moods }) => moods.length === 3))).toBe(true)
  })
})
