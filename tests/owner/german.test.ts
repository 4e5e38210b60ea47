/** A German owner's page holds no English word but what the practitioner wrote, and dates and numbers as Germans write them. */
import { beforeAll, describe, expect, it } from 'vitest'
import { packageRoot, templates } from '../../src/build/program.ts'
import type { Horse, Practice } from '../../src/casebook/model.ts'
import { readCasebook } from '../../src/casebook/read.ts'
import { isFindingName } from '../../src/hoof/findings.ts'
import { derivedMeasures, measures } from '../../src/hoof/measures.ts'
import { scales } from '../../src/hoof/scales.ts'
import { presentOwnerHorse } from '../../src/pages/owner/horse.ts'
import { lockedPage, ownerPart, ownerRecord } from '../../src/pages/owner/pages.ts'
import { formatter } from '../../src/pages/shared/format.ts'
import type { OwnerInput } from '../../src/pages/shared/horse-input.ts'
import type { OwnerWords } from '../../src/pages/words/index.ts'
import { platformWords } from '../../src/pages/words/local.ts'
import { createRenderer } from '../../src/render/renderer.ts'
import { assess } from '../../src/trend/assess.ts'
import type { Assessment, Trend } from '../../src/trend/assessment.ts'
import { diskFolder } from '../casebook/disk-folder.ts'
import { memoryFolder } from '../casebook/memory-folder.ts'
import { fortyVisits } from '../editions/forty-visits.ts'
import { english, german, germanIn } from '../english.ts'
import { phrases } from '../pages/toy-language.ts'
import { zoe } from './zoe.ts'
import { assessment, input, trend } from './zoe-assessed.ts'

const asOf = '2026-11-27'
const demo = diskFolder('cases')
const practiceFile = new TextDecoder()
  .decode(demo.read('practice.md'))
  .replace('\nunits: mm\n', '\nunits: mm\nlanguage: de\n')
/** The demo with `language: de` in practice.md. */
const inGerman = {
  list: () => demo.list(),
  read: (path: string) => (path === 'practice.md' ? new TextEncoder().encode(practiceFile) : demo.read(path)),
}

/** What the practitioner wrote, which stays as it is, is left out: letters, tasks, names of finding and feature. */
const silent = (horse: Horse): Horse => ({
  ...horse,
  name: '',
  body: { ...horse.body, forOwner: null },
  vet: { ...horse.vet, name: null },
  visits: horse.visits.map((visit) => ({
    ...visit,
    care: visit.care.map(() => ''),
    body: { ...visit.body, forOwner: null },
    findings: visit.findings.filter(({ what }) => isFindingName(what)),
    growOut: visit.growOut.map((one) => ({ ...one, what: '' })),
  })),
})
const silentPractice = (practice: Practice): Practice => ({
  ...practice,
  name: '',
  localRules: null,
  contacts: { ...practice.contacts, vet: { ...practice.contacts.vet, name: null } },
})

function read(): { readonly practice: Practice; readonly horses: readonly Horse[] } {
  const { casebook, diagnostics } = readCasebook(inGerman, asOf)
  const files = { 'practice.md': practiceFile, ...fortyVisits('hard', 'tornby', 'Rowan') }
  const hard = readCasebook(memoryFolder(files), asOf).casebook
  if (casebook === null || hard === null) throw new Error(JSON.stringify(diagnostics))
  return {
    practice: silentPractice(casebook.practice),
    horses: [...casebook.horses, ...hard.horses].map(silent),
  }
}
const { practice, horses } = read()

/** The locked page, and one owner's page of every horse. */
async function pagesIn(words: OwnerWords): Promise<readonly string[]> {
  const renderer = createRenderer(templates(packageRoot()), words)
  const format = formatter('mm', words)
  const picture = { width: 800, height: 600, variants: [] }
  const views = horses.flatMap((horse) => {
    const assessment = assess(horse, practice, asOf)
    const files = horse.visits.flatMap(({ photos }) => photos.map(({ file }) => file))
    const pictures = new Map(files.map((file) => [file, { file, ...picture }]))
    const shown = presentOwnerHorse({ horse, assessment, practice, pictures, format })
    return shown === null ? [] : [{ shown, page: ownerPart(shown, horse.id, () => 'data:,x', words) }]
  })
  const parts = await Promise.all(
    views.map(async ({ shown: { brief }, page }, i) => ({
      anchor: `a${i}`,
      name: '',
      brief,
      html: await renderer.render(page),
    })),
  )
  const inlined = { style: '', policy: '' }
  const owner = { id: 'o', name: '', language: null }
  const locked = lockedPage(practice, 'x', { armored: '', checksum: '' }, { ...inlined, script: '' }, words)
  return Promise.all(
    [ownerRecord(practice, owner, parts, inlined, words), locked].map((view) => renderer.render(view)),
  )
}

const wordsIn = (text: string): readonly string[] => text.toLowerCase().match(/\p{L}{2,}/gu) ?? []
const catalogueOf = ({ base, figures, owner, cautions }: OwnerWords): readonly string[] => [
  ...phrases([base.feet, figures, owner, Object.entries(base).filter(([key]) => key !== 'lang')]),
  ...phrases(Object.values(cautions).map(({ name, owner: said }) => [name, said])),
  ...platformWords(base),
]
const germanWords = new Set(catalogueOf(german).flatMap(wordsIn))
const englishTexts = [
  ...catalogueOf(english),
  ...phrases([english.assessment, english.practice, english.photos, english.portfolio]),
  ...phrases([measures, derivedMeasures, scales]),
  ...Object.keys(english.owner.findings),
  ...Object.keys(english.owner.places),
]
/** Words of English that are no words of the German catalogue, and no units. */
const isGerman = (word: string) => germanWords.has(word) || word === 'mm' || word === 'lb'
const englishWords = new Set(englishTexts.flatMap(wordsIn).filter((word) => !isGerman(word)))

/** What a reader sees or hears, and what the script says. */
const shownIn = (html: string): string =>
  html.replace(/<[^>]*>/g, (tag) =>
    [...tag.matchAll(/\b(?:title|alt|aria-label|placeholder|data-says)="([^"]*)"/g)]
      .map(([, value = '']) => value.replace(/&quot;(?:opening|empty|wrong|damaged|weak)&quot;:/g, ' '))
      .join(' ')
      .replace(/^|$/g, '\n'),
  )
const englishIn = (html: string) => [
  ...new Set(wordsIn(shownIn(html).replace(/&\w+;/g, ' ')).filter((word) => englishWords.has(word))),
]

describe('a German owner’s page', () => {
  let pages: readonly string[] = []
  beforeAll(async () => {
    pages = await pagesIn(german)
  })

  it('is asked for by one line of practice.md', () => {
    expect(practice.language).toBe('de')
  })

  it('says that it is German', () => {
    expect(pages).toHaveLength(2)
    for (const page of pages) expect(page).toMatch(/^<!doctype html>\s*<html lang="de">/i)
  })

  it('holds no English word', () => {
    expect(pages.map(englishIn)).toEqual([[], []])
  })

  it('writes dates and decimals as Germans do', () => {
    const text = shownIn(pages[0] ?? '')
    expect(text).toMatch(/\d{1,2}\. (?:März|Mai|Oktober) 2026/)
    expect(text).toMatch(/\d,5 mm/)
    expect(text).not.toMatch(/\d\.\d/)
  })

  it('says every standing caution and names every finding of the casebook in German', () => {
    const text = shownIn(pages[0] ?? '')
    const known = new Set(horses.flatMap(({ visits }) => visits.flatMap(({ findings }) => findings)))
    for (const { what } of known)
      if (isFindingName(what))
        expect(text.toLowerCase()).toContain(german.owner.findings[what].name.toLowerCase())
    expect(known.size).toBeGreaterThan(20)
  })
})

describe('sentences of a German page', () => {
  const shown = (change: Partial<OwnerInput> = {}) => {
    const view = presentOwnerHorse({ ...input, format: germanIn('mm'), ...change })
    if (view === null) throw new Error('the fixture has consent')
    return view
  }
  const of = (trends: readonly Trend[], more: Partial<Assessment> = {}) =>
    shown({
      horse: { ...zoe, visits: zoe.visits.map((one) => ({ ...one, findings: [] })) },
      assessment: { ...assessment, trends, heldFeet: [], growOut: [], plans: [], ...more },
    })
  const told = ({ changes }: ReturnType<typeof shown>) =>
    changes.feet.flatMap(({ foot, moods }) =>
      moods.map(({ word, sentences }) => `${foot}: ${word} ${sentences.join(' ')}`),
    )

  it('pass on nothing that an English one keeps back', () => {
    expect(JSON.stringify(shown())).not.toMatch(/PRIVATE|teaching|Bramble/)
    expect(shown({ horse: { ...zoe, consent: { ...zoe.consent, photos: false } } }).thenAndNow).toBeNull()
  })

  it('tell what moved, which way, by how much and since when', () => {
    const band = { target: { low: null, high: 84 }, targetFrom: 'practitioner' } as const
    expect(
      told(
        of([trend({ verdict: 'falling', position: 'on target', values: [90, 87, 84, 79.5], more: band })]),
      ),
    ).toEqual([
      'Vorne links: Besser: Die Zehe ist etwa 10,5 mm kürzer als im Januar und damit so, wie wir es wollen.',
    ])
    expect(told(of([trend({ verdict: 'worsening', values: [80, 84, 87] })]))).toEqual([
      'Vorne links: Schlechter: Die Zehe ist etwa 7 mm länger als im Januar (zuletzt gemessen am 23. März 2026).',
    ])
    const held = of([trend({})], { heldFeet: ['LF'] })
    expect(held.urgent.at(-1)?.text).toBe('Vorne links warten wir, bis Ihr Tierarzt nachgesehen hat.')
  })

  it('name what was found, and what to do about it', () => {
    expect(shown().lookFor).toEqual([
      expect.stringMatching(/^Riss \(vorne rechts, mittel\)\. Sehen Sie nach, ob er länger wird/),
      expect.stringMatching(/^Ausgebogene Wand \(vorne links, leicht\)\. /),
      expect.stringMatching(/^Moon ring \(hinten links, am 12\. Januar 2026 leicht\)\. Wird es schlimmer/),
      expect.stringMatching(/^Vorne links: Die Sohle ist flach\./),
    ])
    expect(shown().urgent[0]?.text).toBe(
      'Hinten rechts: Aus dem Huf kam Flüssigkeit. Rufen Sie den Tierarzt, bevor jemand daran arbeitet.',
    )
  })

  it('tell nothing past as to come', () => {
    const date = { kind: 'date', edge: 84, date: '2026-07-10', earliest: '2026-06-02', latest: null } as const
    const ahead = (isDue: boolean, asOf: string) =>
      of([trend({ more: { forecast: { ...date, isDue } } })], { asOf }).numbers.ahead
    expect(ahead(false, '2026-05-04')).toEqual([
      'Vorne links: Die Zehe sollte etwa im Juli so sein, wie wir es wollen, frühestens im Juni.',
    ])
    expect(ahead(true, '2026-07-11')).toEqual([
      'Vorne links: Die Zehe sollte bis zum 10. Juli 2026 so sein, wie wir es wollen; beim nächsten Besuch sehen wir nach.',
    ])
  })

  it('leave what the practitioner wrote as it is, with German days and heads round it', () => {
    const { letter, care, brief, numbers } = shown()
    expect(letter).toEqual({ head: 'Besuch vom 27. April 2026', text: 'A good visit.' })
    expect(care[0]?.ticks.map(({ label }) => label).slice(1, 3)).toEqual([
      'Di: Pick out both front feet every day',
      'Mi: Pick out both front feet every day',
    ])
    expect(brief).toEqual({ level: 'stop', word: 'Halt.', next: 'nächster Besuch am 1. Juni 2026' })
    expect(numbers.tables[0]?.rows[0]).toEqual([
      'Die Zehe, nach der Bearbeitung',
      '98 mm, 12. Jan 26 bis 89 mm, 27. Apr 26',
      'wird besser',
    ])
  })

  it('say of half a grade what Germans would', () => {
    const facts = { grade: 2.5, limit: 3 } as never
    expect(german.cautions['condition-low'].owner(facts, germanIn('mm'))).toContain('2,5 von 9')
  })
})

describe('the search for English words', () => {
  it('finds them where they are', async () => {
    const found = (await pagesIn(english)).flatMap(englishIn)
    expect(found.length).toBeGreaterThan(300)
    for (const word of ['the', 'frog', 'heels', 'thrush', 'vet', 'march', 'weeks', 'sun'])
      expect(englishWords, word).toContain(word)
  })
})
