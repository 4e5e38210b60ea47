/** What passes to the portfolio, and that nothing of who it is does: not by an alias, a note or a name. */
import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import type { Horse } from '../../src/casebook/model.ts'
import { identifiersOf, identityOf } from '../../src/identity/identifiers.ts'
import { leakSearch } from '../../src/leaks/search.ts'
import { findingsTable, solesAtFirst, timelineOf } from '../../src/pages/portfolio/baseline.ts'
import { presentPortfolioCase } from '../../src/pages/portfolio/case.ts'
import { foundTable } from '../../src/pages/portfolio/conclusion.ts'
import { type CaseContext, caseContext } from '../../src/pages/portfolio/context.ts'
import { readingsCsv } from '../../src/pages/portfolio/csv.ts'
import { discussionOf } from '../../src/pages/portfolio/discussion.ts'
import { chartsOf, gridOf, growOutLines, trimsDone } from '../../src/pages/portfolio/follow-up.ts'
import { practice, visit, zoe } from '../owner/zoe.ts'
import { assessment, input } from '../owner/zoe-assessed.ts'
import { inDays, made, own } from './made.ts'

describe('an alias with signs that mean something elsewhere', () => {
  const context = (alias: string) => {
    const found = caseContext({ ...input, horse: { ...zoe, alias } }, own)
    if (found === null) throw new Error('the fixture has consent')
    return found
  }

  it('runs no formula in the table of readings', () => {
    const rows = parse(readingsCsv(context('=1+1'))) as string[][]
    expect(rows.length).toBeGreaterThan(3)
    expect(new Set(rows.slice(1).map(([alias]) => alias))).toEqual(new Set(["'=1+1"]))
  })

  it.each([
    ['../../x', 'x'],
    ['a/b\\c', 'a-b-c'],
    ['a\u0000b\u001b[31m\r\nc', 'a-b-31-m-c'],
    ['\u202eonuJ\u202c', 'onuj'],
    ['C:con.txt', 'c-con-txt'],
    ['=1+1', '1-1'],
    ['.hidden', 'hidden'],
    ['Zoë & Ül', 'zoe-ul'],
    ['\u05d9\u05d5\u05e0\u05d5\u200f', '\u05d9\u05d5\u05e0\u05d5'],
  ])('%j gives a folder of letters, digits and hyphens: %j', (alias, slug) => {
    expect(context(alias).slug).toBe(slug)
  })

  it.each(['..', '/', '\u202e', '\u0000', '=+@'])('%j gives no folder, so no case', (alias) => {
    expect(caseContext({ ...input, horse: { ...zoe, alias } }, own)).toBeNull()
  })
})

describe('what passes to the portfolio', () => {
  it('is nothing without consent, without an alias, or without a visit', () => {
    const gone = (horse: Horse) => presentPortfolioCase({ ...input, horse }, own)
    expect(gone({ ...zoe, consent: { ...zoe.consent, portfolio: false } })).toBeNull()
    expect(gone({ ...zoe, alias: null })).toBeNull()
    expect(gone({ ...zoe, visits: [] })).toBeNull()
  })

  it('is no name, no note, no caption, no remark, no date', () => {
    const { page, summary, csv } = made()
    const text = JSON.stringify(page) + JSON.stringify(summary) + csv
    expect(text).not.toMatch(/PRIVATE|Zoë|zoe|Kestrel|Thistledown|\d{4}-\d\d-\d\d|January|April/)
    // Which picture is meant stays with the program: the page carries a name of its own for it.
    expect(page.findings.shots.few.map(({ picture }) => picture)).toEqual(['photos/IMG_4711.jpg'])
  })

  it('is pictures with consent only', () => {
    const { page } = made({ ...zoe, consent: { ...zoe.consent, photos: false } })
    const { few, more } = page.findings.shots
    expect([...few, ...more, ...page.outcome.shots.few, ...page.outcome.shots.more]).toEqual([])
    expect(page.consent).toBe(
      'The owner agreed to this case being shown for teaching, without names and without pictures.',
    )
  })

  it('is text for teaching with the alias, and weeks for dates', () => {
    const { page } = made()
    // The last of the visits stands open where nothing is told of the whole case.
    expect([...page.discussionVisits, ...page.discussion]).toEqual([
      { head: 'Week 0', text: 'Bramble came to (left out) in week 0. Long toes.' },
      { head: 'Week 15', text: "J. was wrong. Bramble's flare went first; the owner soaked the frog." },
    ])
    const whole = made({ ...zoe, body: { ...zoe.body, forTeaching: 'Zoë taught me.' } }).page
    expect(whole.discussion).toEqual([{ head: 'On the whole case', text: 'Bramble taught me.' }])
    expect(whole.discussionVisits.map(({ head }) => head)).toEqual(['Week 0', 'Week 15'])
    expect(page.ownerView).toBe('The owner saw a willing mare by week 15.')
  })

  it('is days for dates where the practice asks for them', () => {
    const { page } = made(zoe, inDays)
    expect([...page.discussionVisits, ...page.discussion].map(({ head }) => head)).toEqual([
      'Day 0',
      'Day 105',
    ])
    expect(page.discussionVisits[0]?.text).toBe('Bramble came to (left out) on day 0. Long toes.')
    expect(page.ownerView).toBe('The owner saw a willing mare by day 105.')
  })
})

describe('names planted in every field', () => {
  const secrets = ['Quillon', 'Marrowby', 'Hestercombe', 'quillon-7', 'IMG_9031.jpg', '2026-01-12']
  const planted = (text: string) =>
    `${text} Quillon's 2026-01-12 at Hestercombe, said Marrowby (IMG_9031.jpg), quillon-7`
  const bare = visit(0)
  const horse: Horse = {
    ...zoe,
    id: 'quillon-7',
    name: 'Quillon',
    owner: 'marrow',
    kind: planted('cob'),
    sex: planted('mare'),
    alias: 'Bramble',
    privateWords: ['Hestercombe'],
    history: [planted('')],
    tetanus: null,
    vet: { involved: true, diagnosis: planted(''), name: null, phone: null, date: null, feet: [] },
    body: { own: planted(''), forOwner: planted(''), forTeaching: planted('') },
    file: 'quillon-7/horse.md',
    visits: [
      {
        ...bare,
        file: 'quillon-7/2026-01-12.md',
        footing: planted(''),
        findings: [
          { foot: 'LF', what: planted('thrush'), place: planted('toe'), grade: 2, words: planted('') },
        ],
        growOut: [{ foot: 'LF', what: planted('hole'), place: planted('toe'), distance: 4 }],
        comfort: { ...bare.comfort, lamenessBy: planted(''), surfaces: { [planted('sand')]: 'easy' } },
        stance: { LF: { position: 'other', words: planted('') } },
        photos: [
          {
            file: 'photos/IMG_9031.jpg',
            foot: 'LF',
            view: 'solar',
            stage: 'before',
            caption: planted(''),
            landmarks: null,
          },
        ],
        care: [planted('')],
        body: { own: planted(''), forOwner: planted(''), forTeaching: planted('### Marrowby\n') },
      },
      { ...visit(3), file: 'quillon-7/2026-04-27.md' },
    ],
  }
  const owners = [{ id: 'marrow', name: 'Tilda Marrowby', language: null }]
  const house = { ...practice, owners }
  const grown = assessment.growOut.map((one) => ({ ...one, feature: planted('hole'), place: planted('toe') }))
  const findings = presentPortfolioCase(
    { ...input, horse, practice: house, assessment: { ...assessment, growOut: grown } },
    own,
  )
  const search = leakSearch({
    list: identifiersOf([identityOf(horse)], { owners, people: [], contacts: practice.contacts }, own),
    horses: [identityOf(horse)],
    own,
    ownTexts: [],
  })
  const scan = (text: string) =>
    search.scan({
      path: 'portfolio/bramble/index.html',
      bytes: Buffer.from(text),
      reader: { kind: 'everyone' },
    })

  it('come out nowhere in the page, its summary or its table', () => {
    const { page, ...rest } = findings ?? made()
    // The program's own pointer to a picture is put in place of by the page maker.
    const withoutPointers = JSON.stringify({ ...rest, page }, (key, value) =>
      key === 'picture' ? '' : value,
    )
    for (const secret of secrets) expect(withoutPointers).not.toContain(secret)
    expect(scan(withoutPointers)).toEqual([])
  })

  it('are caught by the search in every part of the page whose rewriting is left out', () => {
    const context = caseContext(
      { ...input, horse, practice: house, assessment: { ...assessment, growOut: grown } },
      own,
    )
    if (context === null) throw new Error('the horse has consent')
    const parts: Readonly<Record<string, (of: CaseContext) => unknown>> = {
      findings: findingsTable,
      soles: solesAtFirst,
      grid: gridOf,
      found: foundTable,
      'grow-out': growOutLines,
      discussion: discussionOf,
    }
    for (const [name, part] of Object.entries(parts)) {
      expect(scan(JSON.stringify(part(context))), name).toEqual([])
      const leaking = scan(JSON.stringify(part({ ...context, anonymous: (text) => text })))
      const kinds = new Set(leaking.map(({ kind }) => kind))
      for (const kind of [
        'name of a horse',
        'private word',
        'name of an owner',
        'name of a picture',
        'folder of a horse',
        'date',
      ]) {
        expect(kinds, name).toContain(kind)
      }
    }
  })

  it('are caught where a day is told by its date', () => {
    const context = caseContext(
      { ...input, horse: { ...zoe, visits: horse.visits }, practice: house, assessment },
      own,
    )
    if (context === null) throw new Error('the horse has consent')
    const dated = { ...context, timeOf: (date: string) => date as unknown as number }
    for (const part of [timelineOf, trimsDone, chartsOf, growOutLines, readingsCsv]) {
      expect(scan(JSON.stringify(part(context)))).toEqual([])
      expect(scan(JSON.stringify(part(dated))).map(({ kind }) => kind)).toContain('date')
    }
  })
})
