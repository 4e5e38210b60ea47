/** Every sentence of the demo's cases, and of a case of forty visits: nothing past as to come, nothing calmer than it is. */
import { describe, expect, it } from 'vitest'
import { daysBetween } from '../../src/hoof/dates.ts'
import { ownWords } from '../../src/identity/own-words.ts'
import { presentPortfolioCase } from '../../src/pages/portfolio/case.ts'
import { findingStories, visitsUpTo } from '../../src/pages/shared/findings.ts'
import { demoInputs } from '../editions/demo-inputs.ts'
import { lastOfForty } from '../editions/forty-visits.ts'
import { english } from '../english.ts'

const { portfolio: words } = english
const own = ownWords([], [words])

const cases = ['2026-11-25', '2027-01-10', '2027-06-01', lastOfForty].flatMap((asOf) =>
  demoInputs(asOf).flatMap((input) => {
    const made = presentPortfolioCase(input, own)
    const first = input.horse.visits[0]
    if (made === null || first === undefined) return []
    const week = Math.floor(daysBetween(first.date, asOf) / 7)
    return [{ name: `${made.summary.slug} on ${asOf}`, input, page: made.page, week }]
  }),
)

const textsIn = (value: unknown): readonly string[] =>
  typeof value === 'string'
    ? [value]
    : typeof value === 'object' && value !== null
      ? Object.values(value).flatMap(textsIn)
      : []

describe.each(cases)('$name', ({ input, page, week }) => {
  const { assessment, horse, format } = input
  // What stands under the heading for teaching is the practitioner's own.
  const { discussion: _, discussionVisits: __, ownerView: ___, ...told } = page
  const texts = textsIn(told)
  const { conclusion } = page.outcome

  it('tells no past week as to come, and no date at all', () => {
    for (const text of texts) {
      expect(text).not.toMatch(
        /\d{4}-\d\d-\d\d|\b(?:January|February|March|April|June|July|August|September|October|November|December)\b/,
      )
      if (!text.includes('at the ground about')) continue
      for (const [, n] of text.matchAll(/week (\d+)/g)) expect(Number(n), text).toBeGreaterThanOrEqual(week)
    }
    const chart = [page.outcome.chart, ...page.outcome.all.charts].flatMap((one) => one?.panels ?? [])
    for (const { forecast, points } of chart) {
      if (forecast === null) continue
      const at = 'week' in forecast.at ? forecast.at.week : Number.NaN
      const last = Math.max(...points.map(({ at: when }) => ('week' in when ? when.week : Number.NaN)))
      expect(at).toBeGreaterThanOrEqual(week)
      expect(at - last).toBeLessThanOrEqual(27)
    }
  })

  it('says first what got worse, of every measure and finding that did', () => {
    const [away, graver] = [words.movedAway('').slice(0, -1), words.foundWorse('').slice(0, -1)]
    for (const { isClear, verdict, measure, foot } of assessment.trends) {
      if (!isClear || verdict !== 'worsening') continue
      const line = conclusion.find((one) => one.startsWith(away)) ?? ''
      expect(line).toContain(format.name(measure))
      expect(line).toContain(format.foot(foot))
    }
    for (const { what, first, last } of findingStories(visitsUpTo(horse, assessment.visits)))
      if (last.grade > first.grade) expect(conclusion.find((one) => one.startsWith(graver))).toContain(what)
    const order = [away, graver].map((head) => conclusion.findIndex((one) => one.startsWith(head)))
    expect(order.filter((at) => at >= 0).every((at) => at < 2)).toBe(true)
  })

  it('gives nothing of what came of it before the fold, and no problem as written', () => {
    const { outcome: _, done: __, ...before } = told
    const open = JSON.stringify(before)
    for (const sentence of conclusion) expect(open).not.toContain(sentence)
    expect(open).not.toMatch(/clearly moved|improving|worsening|on target/)
    // What is followed goes by the name that the visits give it, which may be all that is written.
    const written = horse.problems
      .filter(({ text, about }) => text.includes(' ') && !('what' in about && about.what === text))
      .map(({ text }) => text)
    for (const text of written) expect(JSON.stringify(page)).not.toContain(text)
  })

  it('says no sentence more than twice', () => {
    const sentences = texts
      .flatMap((text) => text.split(/(?<=[.!?]) /))
      .filter((text) => /^\p{Lu}.* .*[.!?]$/u.test(text))
    for (const text of sentences)
      expect(sentences.filter((one) => one === text).length, text).toBeLessThanOrEqual(2)
  })
})

describe('these cases', () => {
  it('are enough, with what the rules are about', () => {
    expect(cases.length).toBeGreaterThanOrEqual(24)
    const all = cases.flatMap(({ page }) => textsIn(page))
    for (const text of [
      'at the ground about week',
      'was expected at the ground by week',
      'Clearly away from the target',
      'Graver than at first',
    ])
      expect(
        all.some((one) => one.includes(text)),
        text,
      ).toBe(true)
  })
})
