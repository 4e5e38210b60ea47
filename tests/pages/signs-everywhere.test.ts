/** One truth on all pages: every sign stands in every edition, at its level, and a foot that it holds has no plan anywhere. */
import { describe, expect, it } from 'vitest'
import type { Horse } from '../../src/casebook/model.ts'
import { addDays } from '../../src/hoof/dates.ts'
import { ownWords } from '../../src/identity/own-words.ts'
import { exportOf } from '../../src/pages/export.ts'
import { presentOwnerHorse } from '../../src/pages/owner/horse.ts'
import { presentPortfolioCase } from '../../src/pages/portfolio/case.ts'
import { presentHorse, summarise } from '../../src/pages/practice/index.ts'
import { cautionLines, wordsOf } from '../../src/pages/shared/caution-lines.ts'
import type { HorseInput } from '../../src/pages/shared/horse-input.ts'
import { assess } from '../../src/trend/assess.ts'
import { untaughtPractice } from '../../src/trend/model/practice.ts'
import { formatIn } from '../english.ts'
import { buildHorse, practice as practiceOf, type VisitSketch } from '../trend/build-horse.ts'
import { type Sketch, signTable } from '../trend/sign-table/index.ts'

const practice = practiceOf({
  contacts: { practice: '01632 960000', vet: { name: 'Dr Penrose', phone: '01632 960001' } },
})
const format = formatIn('mm')
const consent = { ownerSite: true, portfolio: true, photos: true, given: '2026-01-01' }

/** Heels that need levelling and a toe angle on target, at every foot, so that there is something to hold back. */
const needy: VisitSketch = {
  date: '',
  after: {
    'heel-medial': { LF: 38, RF: 38, LH: 38, RH: 38 },
    'heel-lateral': { LF: 30, RF: 30, LH: 30, RH: 30 },
    'toe-angle': { LF: 52, RF: 52, LH: 52, RH: 52 },
  },
}
const band = { low: 50, high: 54 }

function inputOf(sketches: readonly Sketch[], horse: Partial<Horse> = {}): HorseInput {
  const visits = sketches.map((sketch, i) => ({
    ...needy,
    ...sketch,
    date: addDays('2026-01-05', i * 35),
    after: { ...needy.after, ...sketch.after },
  }))
  const made = buildHorse({
    consent,
    alias: 'Bramble',
    targets: { 'toe-angle': { LF: band, RF: band, LH: band, RH: band } },
    trimLimits: { sole: {}, mostPerTrim: 1.5 },
    ...horse,
    visits,
  })
  return {
    horse: made,
    assessment: assess(made, practice, visits.at(-1)?.date ?? ''),
    practice,
    pictures: new Map(),
    format,
  }
}

/** What each edition says, as text; the keys are where. */
function editionsOf(input: HorseInput): Readonly<Record<string, string>> {
  const pages = [...presentHorse(input)].map(({ path, model }) => [path, JSON.stringify(model)] as const)
  const page = (ending: string) => pages.find(([path]) => path.endsWith(ending))?.[1] ?? ''
  const strip = (text: string) => text.replaceAll(/"w":\{.*?\},"page"/g, '"page"')
  return {
    front: JSON.stringify(summarise(input)),
    horse: strip(page('/index.html')),
    handOver: strip(page('hand-over.html')),
    fieldSheet: strip(page('field-sheet.html')),
    owner: JSON.stringify(presentOwnerHorse(input)),
    portfolio: JSON.stringify(presentPortfolioCase(input, ownWords([], [format.words]))?.page),
    export: JSON.stringify(exportOf([input.assessment], untaughtPractice, input.assessment.asOf, format)),
  }
}

const inJson = (text: string) => JSON.stringify(text).slice(1, -1)

describe.each(signTable.map((row) => [`${row.code}: ${JSON.stringify(row.raises.at(-1))}`, row] as const))(
  '%s',
  (_, { code, level, raises, horse }) => {
    const input = inputOf([{}, ...raises], horse)
    const caution = input.assessment.cautions.find((one) => one.code === code)
    if (caution === undefined) throw new Error(`${code} was not raised`)
    const editions = editionsOf(input)
    const words = wordsOf(format, caution)

    it('stands in every edition', () => {
      const expected: Readonly<Record<string, string>> = {
        // What asks for care alone is a word and its feet there.
        front: level === 'mind' ? '"worst":{"level":' : words.practice(caution.facts, format),
        horse: words.practice(caution.facts, format),
        handOver: words.practice(caution.facts, format),
        fieldSheet: words.practice(caution.facts, format),
        owner: words.owner(caution.facts, format),
        portfolio: words.portfolio(caution.facts, format),
        export: `"code":"${code}","level":"${level}"`,
      }
      for (const [where, text] of Object.entries(expected))
        expect(editions[where], where).toContain(text.startsWith('"') ? text : inJson(text))
      if (level !== 'mind') expect(editions.handOver, 'question').toContain(inJson(words.question))
    })

    it('is still told after long silence, folded into one line', () => {
      const silent = inputOf([{}, ...raises, {}, {}], horse)
      const still = silent.assessment.cautions.find((one) => one.code === code && one.standing)
      // What the readings of every visit say again is not silent.
      if (still === undefined || still.silentVisits < 2) return
      const lines = cautionLines([still], format, (one) => wordsOf(format, one).practice(one.facts, format))
      expect(lines).toHaveLength(1)
      const places = ['horse', 'handOver', 'fieldSheet', 'owner', ...(level === 'mind' ? [] : ['front'])]
      const told = editionsOf(silent)
      for (const where of places) expect(told[where], where).toContain(inJson(words.name(caution.facts)))
    })
  },
)

const held = signTable.filter(({ holds }) => holds)

describe('a foot that a caution holds', () => {
  it.each(held.map((row) => [row.code, row] as const))(
    'has no plan, no amount and no target met anywhere: %s',
    (_, { raises, horse }) => {
      const input = inputOf([{}, ...raises], horse)
      const { heldFeet, plans, trends } = input.assessment
      expect(heldFeet.length).toBeGreaterThan(0)
      expect(plans.filter(({ foot }) => heldFeet.includes(foot))).toEqual([])
      expect(
        trends.filter(({ foot, position }) => heldFeet.includes(foot) && position === 'on target'),
      ).toEqual([])
      const editions = editionsOf(input)
      for (const [where, text] of Object.entries(editions)) {
        if (heldFeet.length === 4) {
          expect(text, where).not.toMatch(/on target|where we want|Off the |at most|perTrim/)
        }
      }
      expect(editions.horse).toContain('no plan and no amount while a caution waits for the vet')
      expect(editions.fieldSheet).toContain('no plan and no amount while a caution waits for the vet')
      expect(editions.handOver).toContain('no plan and no amount while a caution waits for the vet')
      expect(editions.owner).toContain('until your vet has had a look')
      expect(editions.portfolio).toContain('no amounts, because a caution asked for a vet first')
    },
  )

  it('has them all again once it is over, so that the test above sees something', () => {
    const text = editionsOf(inputOf([{}, {}, {}, {}, {}]))
    expect(text.horse).toContain('inner heel: at most')
    expect(text.fieldSheet).toContain('Off the inner heel, at most')
    expect(text.owner).toContain('where we want')
    expect(text.export).toContain('on target')
  })
})

describe('a first visit with severe smelly separation, thrush 2 and lameness 1', () => {
  const input = inputOf([
    {
      findings: ['LF wall separation, toe, 3, smells', 'LF thrush, frog, 2'],
      comfort: { lameness: { LF: 1 } },
    },
  ])
  it('says tell the vet on every page it should', () => {
    const editions = editionsOf(input)
    for (const where of ['horse', 'handOver', 'fieldSheet'] as const) {
      expect(editions[where], where).toContain('Tell the vet')
      expect(editions[where], where).toContain('Severe wall separation (toe)')
    }
    expect(summarise(input).cautions).toMatchObject([{ level: 'vet' }])
    expect(editions.owner).toContain('Tell your vet')
    expect(editions.portfolio).toContain('tell the vet')
    expect(editions.export).toContain('Tell the vet.')
  })
  it('says whom to ring where the casebook knows', () => {
    const editions = editionsOf(input)
    for (const where of ['horse', 'handOver', 'fieldSheet', 'owner'] as const)
      expect(editions[where], where).toContain('Dr Penrose, 01632 960001')
    expect(editions.portfolio).not.toContain('Penrose')
    expect(editions.portfolio).not.toContain('960001')
  })
})

describe('what got worse by a grade', () => {
  it.each([
    [[1, 2], 'Flare at the toe: mild in January, medium now.'],
    [[2, 1, 2], 'Flare at the toe: mild in February, medium now.'],
    [[3, 1, 2, 2], 'Flare at the toe: mild in February, medium now.'],
    [[2, 2, 3], 'Flare at the toe: medium in January, severe now.'],
  ])('is told to the owner as worse, with both grades: %j', (grades, text) => {
    const input = inputOf(grades.map((grade) => ({ findings: [`LF flare, toe, ${grade}`] })))
    const told = presentOwnerHorse(input)?.changes.feet.find(({ foot }) => foot === 'Left fore')
    expect(told?.moods[0]).toMatchObject({ word: 'Worse:', sentences: expect.arrayContaining([text]) })
  })
})

describe('a year of an ordinary sound horse', () => {
  const input = inputOf(
    Array.from({ length: 10 }, (_, i) => ({
      before: { 'toe-length': { LF: 88 + (i % 3), RF: 87 + (i % 2) } },
      after: {
        'toe-length': { LF: 82, RF: 81 },
        'toe-angle': { LF: 51 + (i % 2), RF: 51, LH: 52, RH: 52 },
        'heel-medial': { LF: 34, RF: 34, LH: 34, RH: 34 },
        'heel-lateral': { LF: 33, RF: 34, LH: 33, RH: 34 },
      },
      findings: i % 2 === 0 ? ['LF flare, medial quarter, 1', 'RF thrush, frog, 1'] : ['RF thrush, frog, 0'],
      comfort: {
        lameness: { LF: 0, RF: 0, LH: 0, RH: 0 },
        digitalPulse: { LF: i % 4 === 0 ? 1 : 0, RF: 0, LH: 0, RH: 0 },
        surfaces: { sand: 'easy', gravel: i % 3 === 0 ? 'short' : 'easy' },
      },
      body: { weightKg: 500 + (i % 3) * 6, condition: 5, crest: 1 },
      stance: { LF: 'toe-out', RF: 'straight' },
    })),
  )
  it('raises no caution at any visit', () => {
    expect(input.assessment.cautions).toEqual([])
    expect(editionsOf(input).horse).not.toMatch(/Tell the vet|Stop: ask/)
  })
})
