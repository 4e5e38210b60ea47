import { describe, expect, it } from 'vitest'
import { identifiersOf } from '../../src/identity/identifiers.ts'
import { marksIn } from '../../src/identity/marks.ts'
import { ownWords } from '../../src/identity/own-words.ts'
import { english } from '../english.ts'

const own = ownWords([], [english.portfolio])
const { identifiers } = identifiersOf(
  [
    {
      id: 'h7-x',
      name: 'Grace',
      owner: 'own-7',
      vet: { name: null, phone: null },
      privateWords: [],
      files: [],
      dates: [],
    },
  ],
  {
    owners: [{ id: 'own-7', name: 'Ada Quillfeather', language: null }],
    people: [],
    contacts: { practice: null, vet: { name: null, phone: null } },
  },
  own,
)
const marks = (text: string) => marksIn(text, { identifiers, own }).map((mark) => `${mark.why}: ${mark.text}`)

describe('what a person is shown in a sentence', () => {
  it.each([
    ['We told Ada on 14 March.', ['name: Ada', 'date: 14 March']],
    ['Write to a@example.com.', ['pattern: a@example.com']],
    ['Grace in movement came back.', ['likely name: Grace']],
    ['Her daughter Xenia held the foot of LF.', ['likely name: Xenia']],
    ['Xenia held the foot.', ['likely name: Xenia']],
    ['The vet Dr Harrowgill came to Mill Farm.', ['title: Dr Harrowgill', 'place: Mill Farm']],
    ['Shod until 2024, on 2000 mg a day.', ['date: 2024']],
  ])('%j', (text, expected) => {
    expect(marks(text)).toEqual(expected)
  })

  it('is nothing in ordinary notes', () => {
    const text =
      'The toe of LF was 98 mm. Trimmed every 5 weeks; P3 and the DDFT were left alone. The farm is wet.\n\n- Frog first\n- No thrush'
    expect(marks(text)).toEqual([])
  })
})
