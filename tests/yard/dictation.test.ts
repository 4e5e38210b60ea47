/** Dictated text heard into a draft, again and again as it grows. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { arrivedOf } from '../../src/yard/arrived.ts'
import { settled } from '../../src/yard/dictation.ts'
import type { YardDraft } from '../../src/yard/draft.ts'
import { draftOf, opened } from './kit.ts'

const { hear, written } = opened()

const spoken =
  'Left fore as she comes. Toe length ninety-eight, no, ninety-six. Bit of thrush in the central sulcus. She leaned on me the whole time. Right fore toe angle forty-five or forty-six. See her in five weeks.'

const values = (draft: YardDraft) => ({
  readings: draft.readings.map(({ foot, measure, text }) => `${foot} ${measure} ${text}`),
  findings: draft.findings.map(({ foot, what, grade }) => `${foot} ${what} ${grade}`),
  nextVisit: draft.nextVisit,
})

describe('a dictated text', () => {
  it('fills what is sure, asks what is not, and keeps the rest', () => {
    const heard = hear(draftOf(), spoken)
    expect(values(heard)).toEqual({
      readings: ['LF toe-length 96'],
      findings: ['LF thrush 1'],
      nextVisit: 'in 5 weeks',
    })
    expect(heard.questions).toHaveLength(1)
    const { text } = written(heard)
    expect(text).toContain('draft: yes')
    expect(text).toContain('She leaned on me the whole time.')
    expect(text).toContain('  # LF "Left fore as she comes. Toe length ninety-eight, no, ninety-six."')
    expect(text.split('\n---\n')[1]).not.toContain('thrush')
  })

  it('is the same heard piece by piece as at once', () => {
    const words = spoken.split(' ')
    const grown = words.reduce(
      (draft, _, index) => hear(draft, words.slice(0, index + 1).join(' ')),
      draftOf(),
    )
    expect(grown).toEqual(hear(draftOf(), spoken))
  })

  it('leaves what a hand wrote, changed or took away, and keeps the words for it', () => {
    const typed: YardDraft['readings'][number] = {
      stage: 'before',
      foot: 'LF',
      measure: 'toe-length',
      text: '91',
      heard: null,
    }
    const over = hear(draftOf({ readings: [typed] }), spoken)
    expect(over.readings).toEqual([typed])
    expect(written(over).text).toContain('Toe length ninety-eight, no, ninety-six.')

    const heard = hear(draftOf(), spoken)
    const changed = { ...heard, nextVisit: 'in 4 weeks', findings: [] }
    const again = hear(changed, `${spoken} Easy on sand.`)
    expect(again.nextVisit).toBe('in 4 weeks')
    expect(again.findings).toEqual([])
    expect(hear(again, `${spoken} Easy on sand.`).findings).toEqual([])
    expect(written(again).text.split('\n---\n')[1]).toContain('Bit of thrush')
    expect(again.comfort.surfaces).toEqual({ sand: 'easy' })
  })

  it('takes back what a longer text corrects', () => {
    const heard = hear(draftOf(), 'Left fore toe length ninety-six.')
    const corrected = hear(heard, 'Left fore toe length ninety-six. No, ninety-five.')
    expect(values(corrected).readings).toEqual(['LF toe-length 95'])
    expect(values(hear(heard, '')).readings).toEqual([])
  })

  it('does not ask again what was settled', () => {
    const heard = hear(draftOf(), spoken)
    const answered = settled(heard, 0)
    expect(hear(answered, `${spoken} Good girl.`).questions).toEqual([])
  })

  it('loses no word: each stands beside a line, in a question or in the notes', () => {
    const sentences = [
      'Left fore.',
      'Right hind after the trim.',
      'Toe length ninety-eight.',
      'Angle forty-four or forty-five.',
      'Thrush in the frog.',
      'Bad crack.',
      'Nail holes at the toe thirty millimetres down.',
      'Weight five hundred kilos.',
      'Tell Ada to pick out daily.',
      'She was kind.',
      'Lame one on the left hind.',
    ]
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...sentences), { maxLength: 8 }), (said) => {
        const { text } = written(hear(draftOf(), said.join(' ')))
        for (const sentence of said) for (const word of sentence.split(' ')) expect(text).toContain(word)
      }),
      { numRuns: 60 },
    )
  })
})

it('what has arrived is each draft with its latest version', () => {
  const visit = (draft: string, version: number) => ({ yard: { draft, version } })
  const horses = [{ visits: [visit('b', 1), visit('a', 2)] }, { visits: [visit('b', 3), { yard: null }] }]
  expect(arrivedOf(horses as unknown as Parameters<typeof arrivedOf>[0])).toEqual([
    { draft: 'a', version: 2 },
    { draft: 'b', version: 3 },
  ])
})
