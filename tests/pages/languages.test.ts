/** No page knows its language: every kind of page and file, made in a second one, shows nothing of the first. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { packageRoot, templates } from '../../src/build/program.ts'
import { readTable } from '../../src/casebook/table.ts'
import { visitsCalendar } from '../../src/editions/practice/visits-calendar.ts'
import { findingMeanings, places } from '../../src/hoof/findings.ts'
import { publishedGrowth, publishedRenewal } from '../../src/hoof/growth.ts'
import { derivedMeasures, measures } from '../../src/hoof/measures.ts'
import { scales } from '../../src/hoof/scales.ts'
import { sources } from '../../src/hoof/sources.ts'
import { ownWords } from '../../src/identity/own-words.ts'
import { exportOf } from '../../src/pages/export.ts'
import { markPage } from '../../src/pages/mark/mark-page.ts'
import { presentOwnerHorse } from '../../src/pages/owner/horse.ts'
import { lockedPage, ownerPart, ownerRecord } from '../../src/pages/owner/pages.ts'
import { presentPortfolioCase } from '../../src/pages/portfolio/case.ts'
import { casePage, portfolioPages } from '../../src/pages/portfolio/pages.ts'
import { presentFront, presentHorse, summarise } from '../../src/pages/practice/index.ts'
import { reviewPage } from '../../src/pages/review/review-page.ts'
import { formatter } from '../../src/pages/shared/format.ts'
import type { PageView } from '../../src/pages/shared/page.ts'
import { startCasebook } from '../../src/pages/starter/casebook.ts'
import { startHorse } from '../../src/pages/starter/horse.ts'
import { importedFiles } from '../../src/pages/starter/imported.ts'
import { startVisit } from '../../src/pages/starter/visit.ts'
import { yardHorsePage } from '../../src/pages/yard/horse.ts'
import { yardPage } from '../../src/pages/yard/page.ts'
import { createRenderer } from '../../src/render/renderer.ts'
import { lessonsOf } from '../../src/trend/model/practice.ts'
import { allPictures, demoCasebook, demoFolder, inputsOf } from '../editions/demo-inputs.ts'
import { english } from '../english.ts'
import { phrases, toy, unmarked } from './toy-language.ts'

const asOf = '2026-11-27'
const casebook = demoCasebook(asOf)
const { practice, horses } = casebook
const format = formatter(practice.units, toy)
const inputs = inputsOf(casebook, asOf, { format, pictures: allPictures })

const renderer = createRenderer(templates(packageRoot()), toy)
const render = (views: Iterable<PageView>) => Promise.all([...views].map((view) => renderer.render(view)))

async function ownerPages(): Promise<readonly string[]> {
  const [owner] = practice.owners
  if (owner === undefined) throw new Error('the demo has no owner')
  const views = inputs.flatMap((input) => {
    const shown = presentOwnerHorse(input)
    return shown === null ? [] : [ownerPart(shown, input.horse.id, (file) => `data:,${file}`, toy)]
  })
  const inlined = { style: '', policy: '' }
  const brief = { level: 'stop', word: toy.owner.levels.stop, next: toy.owner.indexNone } as const
  const parts = (await render(views)).map((html, i) => ({ anchor: `a${i}`, name: `N${i}`, brief, html }))
  const locked = lockedPage(
    practice,
    'token',
    { armored: 'A', checksum: 'B' },
    { ...inlined, script: '' },
    toy,
  )
  return render([ownerRecord(practice, owner, parts, inlined, toy), locked])
}

function portfolio(): readonly PageView[] {
  const cases = inputs.flatMap((input) => presentPortfolioCase(input, ownWords([], [toy])) ?? [])
  const picture = { src: 'picture-1.jpg', sources: [] }
  return [
    ...cases.map(({ page, summary }) => casePage(page, summary.slug, practice, () => picture, toy)),
    ...portfolioPages(
      practice,
      cases.map(({ summary }) => summary),
      format,
    ),
  ]
}

function markPages(): readonly PageView[] {
  const size = { width: 1600, height: 1200, focalLength: null }
  const marked = horses.flatMap((horse) =>
    horse.visits.flatMap((visit) =>
      visit.photos.flatMap((photo) =>
        photo.view === 'lateral' || photo.view === 'behind'
          ? [{ file: photo.file, view: photo.view, entry: { photo, visit }, ...size }]
          : [],
      ),
    ),
  )
  return [
    ...marked.slice(0, 2),
    { file: 'photos/new.jpg', view: 'solar' as const, entry: null, ...size },
  ].map((subject) => markPage(subject, format))
}

function reviewPages(): readonly PageView[] {
  const hash = 'hash'
  const marks = (['name', 'pattern', 'date', 'likely name', 'title', 'place'] as const).map((why, i) => ({
    start: i,
    end: i + 1,
    text: 'Juno',
    why,
  }))
  const kinds = ['alias', 'practice', 'finding', 'teaching', 'ownerView'] as const
  const sentences = kinds.map((what) => ({
    hash,
    place: 'juno/horse.md:1',
    what,
    original: 'A',
    published: 'Juno Juno',
    marks,
  }))
  const photo = {
    hash,
    place: 'juno/horse.md',
    photo: 'juno/a.jpg',
    src: 'a.jpg',
    shows: ['LF'],
    caption: 'A',
  }
  const items = [...sentences, photo]
  return [
    reviewPage([{ id: 'juno', alias: 'Juno', items }], ['juno'], 'key', toy),
    reviewPage([], [], 'key', toy),
  ]
}

const table = readTable('horse,date,stage,foot,measure,value\nJuno,2026-01-12,after,LF,toe length,90\n', 'mm')

const files = (): readonly string[] => [
  ...startCasebook('mm', toy.starter).map(({ text }) => text),
  startHorse(null, asOf, toy.starter),
  ...inputs.map(({ horse, assessment }) => startVisit(horse, assessment, practice, asOf, format)),
  ...importedFiles(table.readings, toy.starter).map(({ text }) => text),
  visitsCalendar(practice, inputs.map(summarise), asOf, format).replaceAll('\r\n ', ''),
  ...messagesIn(
    exportOf(
      inputs.map(({ assessment }) => assessment),
      overall.lessons,
      asOf,
      format,
    ),
  ),
]

/** What an export says in words; its keys are the same in every language. */
function messagesIn(value: unknown): readonly string[] {
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, entry]) =>
    key === 'message' ? [String(entry)] : messagesIn(entry),
  )
}

/** What the practitioner wrote, and what the trade calls things: both are in English whatever the page's language. */
const data = [
  ...demoFolder
    .list()
    .filter(({ path }) => path.endsWith('.md'))
    .map(({ path }) => new TextDecoder().decode(demoFolder.read(path))),
  JSON.stringify([measures, derivedMeasures, findingMeanings, places, scales, sources]),
  JSON.stringify([publishedGrowth, publishedRenewal]),
]
  .join(' ')
  .toLowerCase()

const isTold = (text: string) => /[a-z]{2}/i.test(text) && !data.includes(text.toLowerCase())
const told = [...new Set(phrases().map((text) => text.replace(/^\W+|\W+$/g, '')))].filter(isTold)
const [single, longer] = [
  told.filter((text) => !text.includes(' ')),
  told.filter((text) => text.includes(' ')),
]
const singles = new Set(single)

/** Text that a reader sees or hears, and what scripts say; one stretch a line. */
const shownIn = (html: string): string =>
  html
    .replace(/<style[\s\S]*?<\/style>/g, '')
    .replace(/<[^>]*>/g, (tag) =>
      [
        '',
        ...[...tag.matchAll(/\b(?:title|alt|label|aria-label|placeholder|data-says)="([^"]*)"/g)].map(
          ([, value]) => value,
        ),
        '',
      ].join('\n'),
    )
    .replace(/&(?:#x27|#39|apos);/g, "'")
    .replace(/&quot;/g, '"')
    .replace(/&amp;/g, '&')

/** Texts of the English catalogue that stand without marks. */
function strays(text: string): readonly string[] {
  const rest = unmarked(text)
  const lines = rest.split(/[\n":]/).map((line) => line.trim())
  return [
    ...longer.filter((phrase) => rest.includes(phrase)),
    ...lines.filter((line) => singles.has(line) && /^[A-Z]/.test(line)),
  ]
}

/** Locked page and horses as one: what is under the lock stands where it would stand locked. */
async function yardPages(): Promise<readonly string[]> {
  const photos = [{ src: 'data:,', caption: '' }]
  const parts = await render(inputs.map((input) => yardHorsePage(input, photos)))
  const about = { policy: '', style: '', scripts: [], armored: 'A', checksum: 'B' }
  return render(parts.map((sealed) => yardPage(practice, { ...about, sealed }, toy)))
}

const overall = {
  practice,
  summaries: inputs.map(summarise),
  broken: [{ id: 'spoilt', problems: 2 }],
  asOf,
  tokens: Object.fromEntries(practice.owners.map(({ id }) => [id, 'token'])),
  lessons: lessonsOf(horses, asOf),
}
const kinds: readonly (readonly [string, () => Promise<readonly string[]>])[] = [
  ['pages of a horse', () => render(inputs.flatMap((input) => [...presentHorse(input)]))],
  ['front page, office, measures and sources', () => render(presentFront(overall, format))],
  ['yard page', yardPages],
  ['pages of an owner', ownerPages],
  ['portfolio', () => render(portfolio())],
  ['marking pages', () => render(markPages())],
  ['page of what is to be approved', () => render(reviewPages())],
]

describe.each(kinds)('in another language: %s', (_, make) => {
  let pages: readonly string[] = []
  beforeAll(async () => {
    pages = await make()
  })

  it('show nothing of the English catalogue', () => {
    expect([...new Set(pages.flatMap((page) => strays(shownIn(page))))]).toEqual([])
    for (const page of pages) expect(page).toContain('⟦')
  })

  it('say which language they are in', () => {
    for (const page of pages) expect(page).toMatch(/^<!doctype html>\s*<html lang="de-x-toy"/i)
  })

  it('write dates as that language does', () => {
    const english = /\b\d{1,2} (?:January|February|March|May|June|July|October|December) 2026\b/g
    const found = unmarked(shownIn(pages.join('\n'))).match(english) ?? []
    expect(found.filter((date) => !data.includes(date.toLowerCase()))).toEqual([])
  })
})

describe('in another language: files', () => {
  it('show nothing of the English catalogue', () => {
    const made = files()
    expect([...new Set(made.flatMap(strays))]).toEqual([])
    expect(made.filter((text) => text.includes('⟦')).length).toBeGreaterThan(3 * horses.length)
  })

  it('have German months and the English ones only where the practitioner wrote them', () => {
    expect(format.date('2026-03-14')).toBe('14. März 2026')
    expect(format.monthOf('2026-03-14')).toBe('März 2026')
    expect(format.list(['a', 'b', 'c'])).toBe('a, b und c')
    expect(format.span(35)).toBe('5 Wochen')
    expect(format.fine('toe-angle', -1.24)).toBe('\u22121,2°')
    expect(format.measure('toe-length', 98.3)).toBe('98,5 mm')
    expect(format.weekdays[0]).toBe('Mo')
  })
})

describe('the check itself', () => {
  it('finds a text that came past the words handed in', () => {
    expect(strays(shownIn(`<p>⟦x⟧ ${english.portfolio.summaryNotes}</p>`))).toHaveLength(1)
    expect(strays(shownIn(`<p>⟦${english.portfolio.summaryNotes}⟧</p>`))).toEqual([])
    expect(strays('Overdue')).toEqual(['Overdue'])
    expect(strays('Juno')).toEqual([])
    expect(told.length).toBeGreaterThan(700)
  })
})

describe('the program', () => {
  const root = packageRoot()
  const below = (place: string, ending: string) =>
    readdirSync(join(root, place), { recursive: true, encoding: 'utf8' })
      .filter((path) => path.endsWith(ending))
      .map((path) => [
        `${place}/${path.replaceAll('\\', '/')}`,
        readFileSync(join(root, place, path), 'utf8'),
      ])

  it('imports a language by name in its registry alone', () => {
    const named = below('src', '.ts').filter(
      ([path = '', text = '']) =>
        !path.startsWith('src/pages/words/') &&
        /['"/]words\/(?:[a-z]{2}\/|(?!index|formats|keys|local|caution-words)[a-z-]+\.ts)/.test(text),
    )
    expect(named.map(([path]) => path)).toEqual([])
  })

  it('names no language in a template', () => {
    const named = below('templates', '.hbs').filter(([, text = '']) => /\blang="[^{]/.test(text))
    expect(named.map(([path]) => path)).toEqual([])
  })
})
