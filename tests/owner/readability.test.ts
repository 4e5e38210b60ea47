/**
 * How hard the generated text is to read: Flesch-Kincaid grade level (Kincaid and others 1975), formula and syllable
 * counts by general-purpose libraries.
 */
import { fleschKincaid } from 'flesch-kincaid'
import { syllable } from 'syllable'
import { describe, expect, it } from 'vitest'
import { addDays } from '../../src/hoof/dates.ts'
import { derivedIds, measureIds } from '../../src/hoof/measures.ts'
import { presentOwnerHorse } from '../../src/pages/owner/horse.ts'
import { wordsOf } from '../../src/pages/shared/caution-lines.ts'
import type { OwnerFormatter } from '../../src/pages/shared/format.ts'
import { assess } from '../../src/trend/assess.ts'
import { formatIn, germanIn } from '../english.ts'
import { buildHorse, practice } from '../trend/build-horse.ts'
import { signTable } from '../trend/sign-table/index.ts'
import { assessment, input, type TrendGiven, trend } from './zoe-assessed.ts'

const limit = 8

function gradeOf(sentences: readonly string[]): number {
  const words = sentences.flatMap((sentence) => sentence.match(/[\p{L}\p{N}'’]+/gu) ?? [])
  // `.`, `!`, `?` and a full stop's worth of a list item end a sentence.
  const count = sentences.reduce((sum, text) => sum + (text.match(/[.!?]+(?=\s|$)/g)?.length ?? 1), 0)
  return fleschKincaid({
    sentence: count,
    word: words.length,
    syllable: words.reduce((sum, word) => sum + syllable(word), 0),
  })
}

/** Every kind of sentence about every measure. */
const ways: readonly TrendGiven[] = [
  { verdict: 'improving' },
  { verdict: 'worsening' },
  { verdict: 'rising', position: 'no target' },
  { verdict: 'falling', position: 'on target' },
  { verdict: 'falling', position: 'near target' },
]

/** What an owner may read in one language, by part. */
function partsIn(format: OwnerFormatter): Readonly<Record<string, readonly string[]>> {
  const { owner } = format.words
  const view = presentOwnerHorse({ ...input, format })
  const statements = ways.flatMap((way) =>
    [...measureIds, ...derivedIds].flatMap((measure) => {
      const one = trend({ measure, values: [30, 28, 26, 24], ...way })
      const shown = presentOwnerHorse({ ...input, format, assessment: { ...assessment, trends: [one] } })
      return shown?.changes.feet.flatMap(({ moods }) => moods.flatMap(({ sentences }) => sentences)) ?? []
    }),
  )
  return {
    statements,
    'what there is besides': [owner.nothing, owner.nothingElse, owner.moreMoved, owner.nothingYet],
    'what to look for': [...Object.values(owner.lookFor), owner.lookForOwnTerm, owner.lookForLaminitis],
    'of this horse': view?.lookFor ?? [],
    'what is ahead': [...(view?.numbers.ahead ?? []), owner.planWhy],
    'what words mean': [...Object.values(owner.measures).map(({ meaning }) => meaning), owner.measuring],
    'when to ring the vet': [...owner.ringNow, ...owner.ringToday, owner.ringNote],
    cautions: raised.map((one) => wordsOf(format, one).owner(one.facts, format)),
    'how to unlock': [
      owner.locked.how,
      owner.locked.hint,
      owner.locked.wrong,
      owner.locked.damaged,
      owner.locked.private,
    ],
    'standing cautions': [owner.careful, owner.safe],
  }
}

/** Every caution that there is. */
const raised = signTable.flatMap(({ code, raises, horse }) => {
  const visits = raises.map((visit, i) => ({ date: addDays('2026-01-05', i * 35), ...visit }))
  const { cautions } = assess(buildHorse({ ...horse, visits }), practice(), visits.at(-1)?.date ?? '')
  return cautions.filter((one) => one.code === code)
})
const parts = partsIn(formatIn('mm'))
const german = partsIn(germanIn('mm'))

describe('the generated text for owners', () => {
  it.each(Object.keys(parts))('reads at school grade 8 or below: %s', (name) => {
    const text = parts[name] ?? []
    expect(text.length).toBeGreaterThan(0)
    expect(gradeOf(text)).toBeLessThanOrEqual(limit)
  })

  it('reads at grade 8 or below as a whole, and the measure itself tells hard text from easy', () => {
    expect(gradeOf(Object.values(parts).flat())).toBeLessThanOrEqual(limit)
    expect(gradeOf(['The cat sat on the mat.'])).toBeLessThan(2)
    expect(
      gradeOf([
        'Distal phalangeal rotation necessitates radiographic evaluation preceding therapeutic intervention.',
      ]),
    ).toBeGreaterThan(20)
  })
})

describe('the same in German', () => {
  /** Of sentences, in words. */
  const meanLength = (texts: readonly string[]) => {
    const sentences = texts.flatMap((text) => text.split(/(?<=(?<!\d)[.!?:;]) /))
    const words = sentences.flatMap((sentence) => sentence.match(/[\p{L}\p{N}'’]+/gu) ?? [])
    return words.length / sentences.length
  }

  // The grade above counts English syllables; what it asks for beside short words are short sentences.
  it.each(Object.keys(german))('has sentences of no more than fourteen words on average: %s', (name) => {
    expect(german[name]).toHaveLength(parts[name]?.length ?? 0)
    expect(meanLength(german[name] ?? [])).toBeLessThanOrEqual(14)
  })

  it('sends to the vet wherever a caution does', () => {
    const format = germanIn('mm')
    const grave = raised.filter(({ level }) => level !== 'mind')
    for (const one of grave)
      expect(wordsOf(format, one).owner(one.facts, format), one.code).toMatch(/[Tt]ierarzt/)
    expect(new Set(grave.map(({ code }) => code)).size).toBeGreaterThan(35)
  })
})
