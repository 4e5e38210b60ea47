import { describe, expect, it } from 'vitest'
import { anonymiser } from '../../src/identity/anonymise.ts'
import { type HorseIdentity, identifiersOf } from '../../src/identity/identifiers.ts'
import { ownWords } from '../../src/identity/own-words.ts'
import { english } from '../english.ts'

const { portfolio } = english

const contacts = { practice: null, vet: { name: null, phone: null } }

const own = ownWords([], [portfolio])

const zoe: HorseIdentity = {
  id: 'zoe',
  name: 'Zoë',
  owner: 'kestrel',
  vet: { name: null, phone: null },
  privateWords: ['Thistledown Yard', 'Brockweir'],
  files: ['zoe-lf.jpg'],
  dates: ['2026-03-14', '2026-04-18'],
}
const owners = [
  { id: 'kestrel', name: 'Ada Kestrel', language: null },
  { id: 'fenwick', name: "Orla O'Fenwick", language: null },
]

const people = [{ id: 'tib', name: 'Ilse Brandtholm' }]

const about = (horse: HorseIdentity, ownerName = 'Ada Kestrel') =>
  anonymiser({
    horse: horse.id,
    owner: 'kestrel',
    horseName: horse.name,
    ownerName,
    identifiers: identifiersOf([horse], { owners, people, contacts }, own).identifiers,
    firstDate: '2026-03-14',
    stand: { ...portfolio.stand, alias: 'Bramble' },
  })

describe('text for teaching', () => {
  const rewrite = about(zoe)

  it.each([
    ['Zoë stood well.', 'Bramble stood well.'],
    ['ZOË and zoe and Zoe.', 'Bramble and Bramble and Bramble.'],
    ["Zoe's toe, Zoë’s heel.", "Bramble's toe, Bramble’s heel."],
    ['Zo\u00ADe came back.', 'Bramble came back.'],
    ['Zo\u0007e and \u001BZ\u009Boe came back.', 'Bramble and Bramble came back.'],
    ['Zo\u200Fe and Z\u202Aoe\u202C came back.', 'Bramble and Bramble came back.'],
    ['Ada Kestrel rode.', 'The owner rode.'],
    ["We told Ada. In Kestrel's view: fine.", "We told the owner. In the owner's view: fine."],
    ['Orla had a look too.', 'Someone else had a look too.'],
    [
      'Ilse Brandtholm held her; Tib measured.',
      'Someone of the practice held her; someone of the practice measured.',
    ],
    ['Kept at Thistledown Yard near brockweir.', 'Kept at (left out) near (left out).'],
    ['See zoe-lf.jpg.', 'See (left out).'],
  ])('takes the name out of %j', (text, expected) => {
    expect(rewrite(text)).toBe(expected)
  })

  it.each([
    ['Z. was sore.', 'Bramble was sore.'],
    ["Z's frog healed.", "Bramble's frog healed."],
    ['A.K. held her.', 'The owner held her.'],
    ['Told A. K. to wait.', 'Told the owner to wait.'],
    ["AK's notes agree.", "The owner's notes agree."],
    ["That was K's idea.", "That was the owner's idea."],
  ])('takes the initials out of %j', (text, expected) => {
    expect(rewrite(text)).toBe(expected)
  })

  it.each([
    ['On 2026-04-18 the toe was shorter.', 'On day 35 the toe was shorter.'],
    ['On 18 April 2026 it was.', 'On day 35 it was.'],
    ['April 18th, 2026 was wet.', 'Day 35 was wet.'],
    ['Seen 18/04/2026.', 'Seen day 35.'],
    ['Seen 18.4.2026.', 'Seen day 35.'],
    ['Since 14 March it grew.', 'Since day 0 it grew.'],
    ['In April 2026 it rained.', 'In month 2 of the case it rained.'],
    ['Shod until 3 May 2024.', 'Shod until before the case.'],
  ])('counts days in %j', (text, expected) => {
    expect(rewrite(text)).toBe(expected)
  })

  it('leaves other words alone', () => {
    const text = 'The toe was 9 mm shorter; Z-shaped cracks may close. A 4 mm step, 2 may be too much.'
    expect(rewrite(text)).toBe(text)
  })

  it('knows a name that is an everyday word by its capital', () => {
    const may = about({ ...zoe, id: 'may', name: 'May' })
    expect(may('May stood well; it may heal.')).toBe('Bramble stood well; it may heal.')
    expect(may('On 18 May 2026 she came.')).toBe('On day 65 she came.')
  })

  it('is done with what it has rewritten: a second pass changes nothing', () => {
    const once = rewrite("Zoë's owner Ada Kestrel came on 18 April 2026 to Thistledown Yard.")
    expect(rewrite(once)).toBe(once)
  })
})
