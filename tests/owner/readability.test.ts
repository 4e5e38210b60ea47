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
import { assess } from '../../src/trend/assess.ts'
import { english, formatIn } from '../english.ts'
import { buildHorse, practice } from '../trend/build-horse.ts'
import { signTable } from '../trend/sign-table/index.ts'
import { assessment, input, type TrendGiven, trend } from './fixture.ts'

const { owner } = english

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
const statements = ways.flatMap((way) =>
  [...measureIds, ...derivedIds].flatMap((measure) => {
    const one = trend({ measure, values: [30, 28, 26, 24], ...way })
    const view = presentOwnerHorse({ ...input, assessment: { ...assessment, trends: [one] } })
    return view?.changes.feet.flatMap(({ moods }) => moods.flatMap(({ sentences }) => sentences)) ?? []
  }),
)
const format = formatIn('mm')
const ownerCautions = signTable.flatMap(({ code, raises, horse }) => {
  const visits = raises.map((visit, i) => ({ date: addDays('2026-01-05', i * 35), ...visit }))
  return assess(buildHorse({ ...horse, visits }), practice(), visits.at(-1)?.date ?? '')
    .cautions.filter((one) => one.code === code)
    .map((one) => wordsOf(format, one).owner(one.facts, format))
})
const view = presentOwnerHorse(input)
const parts: Readonly<Record<string, readonly string[]>> = {
  statements,
  'what there is besides': [owner.nothing, owner.nothingElse, owner.moreMoved, owner.nothingYet],
  'what to look for': [...Object.values(owner.lookFor), owner.lookForOwnTerm, owner.lookForLaminitis],
  'of this horse': view?.lookFor ?? [],
  'what is ahead': [...(view?.numbers.ahead ?? []), owner.planWhy],
  'what words mean': [...Object.values(owner.measures).map(({ meaning }) => meaning), owner.measuring],
  'when to ring the vet': [...owner.ringNow, ...owner.ringToday, owner.ringNote],
  cautions: ownerCautions,
  'how to unlock': [
    owner.locked.how,
    owner.locked.hint,
    owner.locked.wrong,
    owner.locked.damaged,
    owner.locked.private,
  ],
  'standing cautions': [owner.careful, owner.safe],
}

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
