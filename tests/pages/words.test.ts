import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { languageTags } from '../../src/casebook/languages.ts'
import { type OwnerWords, ownerWordsFor } from '../../src/pages/words/index.ts'
import { english } from '../english.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))

const textsBelow = (folder: string, ending: string): ReadonlyMap<string, string> =>
  new Map(
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((path) => path.endsWith(ending))
      .map((path) => [join(folder, path), readFileSync(join(root, folder, path), 'utf8')]),
  )

const isBranch = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Every leaf of a catalogue as `path: kind`; a list counts its entries, a function its arguments. */
function shapeOf(catalogue: unknown, path = ''): readonly string[] {
  if (isBranch(catalogue)) {
    return Object.entries(catalogue).flatMap(([key, value]) =>
      shapeOf(value, path === '' ? key : `${path}.${key}`),
    )
  }
  if (Array.isArray(catalogue)) return [`${path}: list of ${catalogue.length}`]
  return [
    `${path}: ${typeof catalogue === 'function' ? `function of ${catalogue.length}` : typeof catalogue}`,
  ]
}

/** What one catalogue has and the other lacks, either way. */
function differences(one: unknown, other: unknown): readonly string[] {
  const [here, there] = [new Set(shapeOf(one)), new Set(shapeOf(other))]
  return [
    ...[...here].filter((leaf) => !there.has(leaf)).map((leaf) => `lacks ${leaf}`),
    ...[...there].filter((leaf) => !here.has(leaf)).map((leaf) => `has beside ${leaf}`),
  ]
}

/** What an owner's page is written with. */
const forOwners = ({ base, figures, owner, cautions }: OwnerWords) => ({
  base,
  figures,
  owner,
  cautions: Object.fromEntries(
    Object.entries(cautions).map(([code, said]) => [code, { name: said.name, owner: said.owner }]),
  ),
})

const valueAt = (path: readonly string[]): unknown =>
  path.reduce<unknown>(
    (value, key) => (typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined),
    english,
  )

/** Catalogues of which the practice edition's templates read parts, as `w.…`. */
const practiceTemplates = [
  ...textsBelow('templates/pages/practice', '.hbs'),
  ...[...textsBelow('templates/partials', '.hbs')].filter(
    ([path]) => !/partials\/(?:owner\/|portfolio\/|mark\/|photos\/mark-)/.test(path),
  ),
]

describe('the catalogue of words', () => {
  it('has every word that a template of the practice edition asks for', () => {
    const lacking: string[] = []
    for (const [path, text] of practiceTemplates) {
      for (const [whole, words = ''] of text.matchAll(/\bw((?:\.[A-Za-z][\w-]*)+)/g)) {
        const value = valueAt(words.slice(1).split('.'))
        if (value === undefined || typeof value === 'function') lacking.push(`${path}: ${whole}`)
      }
    }
    expect(lacking).toEqual([])
    expect(practiceTemplates.length).toBeGreaterThan(8)
  })

  it('has no word in a template of the practice edition', () => {
    const stray: string[] = []
    for (const [path, text] of practiceTemplates) {
      const bare = text
        .replace(/\{\{[\s\S]*?\}\}/g, ' ')
        .replace(/<[^>]*>/g, ' ')
        .replace(/&\w+;/g, ' ')
      for (const [word] of bare.matchAll(/[A-Za-z]{2,}/g)) stray.push(`${path}: ${word}`)
    }
    expect(stray).toEqual([])
  })

  it('has no word of the practice edition that nothing uses', () => {
    const users = [...textsBelow('src/pages', '.ts')]
      .filter(([path]) => !path.includes('/words/'))
      .map(([, text]) => text)
    const text = [...users, ...practiceTemplates.map(([, source]) => source)].join('\n')
    const keys = (value: unknown, depth: number): readonly string[] =>
      isBranch(value)
        ? Object.entries(value).flatMap(([key, below]) => [key, ...(depth > 0 ? keys(below, depth - 1) : [])])
        : []
    const unused = [
      ...keys(english.practice, 1),
      ...keys(english.reference, 0),
      ...keys(english.base, 0),
    ].filter((key) => !new RegExp(`\\b${key}\\b`).test(text))
    expect(unused).toEqual([])
  })

  it.each(languageTags)("says all that English says on an owner's page: %s", (tag) => {
    expect(differences(forOwners(english), forOwners(ownerWordsFor(tag)))).toEqual([])
  })

  it('can be told from one that lacks a word, has one more, or asks for other arguments', () => {
    expect(differences({ a: { b: 'x' } }, { a: {} })).toEqual(['lacks a.b: string'])
    expect(differences({ a: ['x'] }, { a: ['x', 'y'] })).toEqual([
      'lacks a: list of 1',
      'has beside a: list of 2',
    ])
    expect(differences({ a: (n: number) => n }, { a: () => 1 })).toEqual([
      'lacks a: function of 1',
      'has beside a: function of 0',
    ])
  })
})
