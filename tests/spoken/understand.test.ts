/** The running context, and what is left to a question rather than guessed. */
import { describe, expect, it } from 'vitest'
import { findingsOf, heard, nothingKnown, questionsOf, readingsOf } from './said.ts'

describe('a reading takes what it lacks from what was said before', () => {
  it('its foot, and after a list of four all feet in the practice’s order', () => {
    expect(readingsOf('Left fore. Toe length 98. Angle 44.')).toEqual([
      'before LF toe-length 98',
      'before LF toe-angle 44',
    ])
    const order = { ...nothingKnown, feetOrder: ['RF', 'LF', 'RH', 'LH'] as const }
    expect(readingsOf('Toe length 98, 96, 91, 90.', order)).toEqual([
      'before RF toe-length 98',
      'before LF toe-length 96',
      'before RH toe-length 91',
      'before LH toe-length 90',
    ])
  })

  it('its measure, from a heading or the sentence before', () => {
    expect(readingsOf('Heel angle. Left fore 38. Right fore 39.')).toEqual([
      'before LF heel-angle 38',
      'before RF heel-angle 39',
    ])
    expect(readingsOf('Left fore toe length 98, angle 44. Right fore 96, 45.')).toEqual([
      'before LF toe-length 98',
      'before LF toe-angle 44',
      'before RF toe-length 96',
      'before RF toe-angle 45',
    ])
  })

  it('its stage, until another is said', () => {
    expect(readingsOf('Left fore toe length 98. Finished. Left fore toe length 90.')).toEqual([
      'before LF toe-length 98',
      'after LF toe-length 90',
    ])
    expect(readingsOf('Finished the thrush course last week. Left fore toe length 98.')).toEqual([
      'before LF toe-length 98',
    ])
    expect(readingsOf('Left fore, before I forget, toe length 98, after lunch toe angle 44.')).toEqual([
      'before LF toe-length 98',
      'before LF toe-angle 44',
    ])
  })

  it('its unit, where only one can be', () => {
    expect(readingsOf('Left fore toe length 9.8. Right fore toe length 3 and 5 eighths.')).toEqual([
      'before LF toe-length 9.8 cm',
      'before RF toe-length 3 5/8 in',
    ])
    expect(heard('Left fore toe length 9.8.').readings[0]?.doubt).toBe('the unit was not said: cm')
  })
})

describe('comfort', () => {
  const levels = (text: string) =>
    heard(text).comfort.map(({ scale, foot, level }) => `${foot} ${scale} ${level}`)

  it.each([
    ['Left fore, no heat but pulse bounding.', ['LF digital pulse 3']],
    [
      'No digital pulses.',
      ['LF digital pulse 0', 'RF digital pulse 0', 'LH digital pulse 0', 'RH digital pulse 0'],
    ],
    ['Lame on the left fore, two out of five.', ['LF lameness 2']],
    ['Owner thinks he is two out of five on the right hind.', []],
    ['He was three out of five on the left fore last week.', []],
    ['Left fore pulse was bounding on Monday, faint today.', []],
    ['If his pulse is ever bounding ring the vet.', []],
  ])('%s', (text, found) => {
    expect(levels(text)).toEqual(found)
  })
})

describe('stages beside numbers', () => {
  it.each([
    'Left fore toe length 98 before, 90 after.',
    'Left fore toe length before 98 after 90.',
    'Before left fore toe length 98 after 90.',
    'Left fore, before, toe length 98, after, 90.',
  ])('%s', (text) => {
    expect(readingsOf(text)).toEqual(['before LF toe-length 98', 'after LF toe-length 90'])
  })
})

it('what is wished, usual or was another day is no reading', () => {
  for (const text of [
    'I like a toe length of eighty-five and an angle of fifty on a left fore.',
    'Last time the left fore toe length was ninety-eight and the toe angle forty-four.',
    'Left fore toe length ninety-eight at the start of the month.',
    'Toe length eighty-five would be ideal for the left fore.',
  ]) {
    expect(readingsOf(text), text).toEqual([])
  }
})

it('feet that are named together have each what is said', () => {
  expect(readingsOf('Left fore and right fore toe length 95.')).toEqual([
    'before LF toe-length 95',
    'before RF toe-length 95',
  ])
  expect(findingsOf('Thrush in the left fore and right hind, mild.')).toEqual([
    'LF thrush, frog, 1',
    'RH thrush, frog, 1',
  ])
})

describe('what is not sure is asked, not written', () => {
  it.each([
    ['two numbers for one foot', 'Left fore toe length 98, 96.'],
    ['a number without a foot', 'Toe length 98.'],
    ['a range', 'Left fore toe length 98 to 99.'],
    ['either of two', 'Left fore toe angle either 44 or 46.'],
    ['a number that no such measure has', 'Left fore toe angle 98.'],
    ['a heel, and which is not said', 'Left fore heel 34.'],
    ['a toe, and a number that may be its length or its angle', 'Left fore toe 52.'],
    ['three numbers for four feet', 'Toe length 98, 96, 91.'],
    ['a length with the unit of an angle', 'Left fore toe length 98 degrees.'],
    [
      'a second foot after the first was finished',
      'Left fore before, toe length 98. After, toe length 90. Right fore toe length 96.',
    ],
  ])('%s', (_, text) => {
    const sure = text.startsWith('Left fore before') ? 2 : 0
    expect(readingsOf(text)).toHaveLength(sure)
    expect(questionsOf(text).length).toBeGreaterThan(0)
  })

  it('a second reading that takes nothing back leaves a blank', () => {
    const { readings, questions } = heard('Left fore toe length 98. Left fore toe length 95.')
    expect(readings.map(({ text, value }) => [text, value])).toEqual([['_', null]])
    expect(questions[0]?.ask).toBe('LF toe length before the trim: 98 or 95?')
  })

  it('a question of someone else says nothing', () => {
    expect(readingsOf('Is the left fore toe length 98?')).toEqual([])
    expect(findingsOf('Left fore. Is that thrush?')).toEqual([])
    expect(readingsOf('Shall I hold the right fore? Toe length 98.')).toEqual([])
  })
})

describe('corrections', () => {
  it.each([
    ['Left fore toe length 94, no, 96.', ['before LF toe-length 96']],
    ['Left fore toe length 94. Sorry, 96.', ['before LF toe-length 96']],
    ['Left fore toe length 94. Make that 96 millimetres.', ['before LF toe-length 96']],
    ['Left fore toe length 94. Scratch that. Left fore toe length 96.', ['before LF toe-length 96']],
    ['Left fore toe length 94. Scratch that.', []],
    ['Left fore toe length 94. Sorry, right fore.', ['before RF toe-length 94']],
    ['Right fore toe length 96. Left fore toe length 94. Sorry, right fore.', ['before RF toe-length 96']],
    ['RH toe angle 49. Sorry, RH 48.', ['before RH toe-angle 48']],
    ['RH toe angle 49, sorry, RH 48.', ['before RH toe-angle 48']],
    ['Toe angles. LF 47. RH 49. Sorry, RH 48.', ['before LF toe-angle 47', 'before RH toe-angle 48']],
    ['Toe angles. RH 49. Sorry, RH 48. LH 50.', ['before RH toe-angle 48', 'before LH toe-angle 50']],
    ['Left fore toe angle 52. No, right fore 52.', ['before RF toe-angle 52']],
    // One of the two feet and one of the two values is wrong: that is asked.
    ['Left fore toe angle 52. Sorry, right fore 50.', []],
    ['Left fore toe length 94, not 96.', ['before LF toe-length 94']],
    ['Left fore toe length 94. No thrush.', ['before LF toe-length 94']],
  ])('%s', (text, readings) => {
    expect(readingsOf(text)).toEqual(readings)
  })
})

describe('words that are feet, stages or measures elsewhere', () => {
  it.each([
    'He stood in front of me. Toe length ninety-eight.',
    'We are behind today. Toe length ninety-eight.',
    'Left fore. Ta. Forty-five. Ha! Forty-six.',
    'Of the lot. Oh. Left hind is fine. Toe length forty weeks.',
    'Left fore, he was off for two weeks. The right way is forty. Near enough fifty.',
    'Left fore. I left him at ninety. That is right, fifty.',
    'After that I trimmed him for ninety minutes.',
  ])('%s', (text) => {
    expect(readingsOf(text)).toEqual([])
  })

  it('initials are those of the trade in capitals', () => {
    expect(readingsOf('NF TL 98, TA 45. OF TL 96. NH HA 40.')).toEqual([
      'before LF toe-length 98',
      'before LF toe-angle 45',
      'before RF toe-length 96',
      'before LH heel-angle 40',
    ])
  })
})

describe('findings', () => {
  const open = {
    ...nothingKnown,
    openFindings: [
      { foot: 'LF' as const, what: 'thrush', place: 'central sulcus' },
      { foot: 'LF' as const, what: 'crack', place: 'toe' },
    ],
  }

  it.each([
    ['Left fore. No thrush.', ['LF thrush, central sulcus, 0']],
    ['Left fore. Thrush has gone.', ['LF thrush, central sulcus, 0']],
    ['Thrush in the left fore is all cleared up.', ['LF thrush, central sulcus, 0']],
    ['Left fore. No thrush or cracks.', ['LF thrush, central sulcus, 0', 'LF crack, toe, 0']],
    ['Left fore. Thrush is nearly gone.', ['LF thrush, central sulcus, _']],
    ['Right fore. No thrush.', []],
    ['Left fore. Thrush still there, mild.', ['LF thrush, central sulcus, 1']],
  ])('%s where thrush and a crack were open on the left fore', (text, findings) => {
    expect(findingsOf(text, open)).toEqual(findings)
  })

  it.each([
    'Left fore. Watch for thrush.',
    'Left fore. If there is thrush, ring me.',
    'Left fore. I do not see a crack.',
    'Left fore. Had an abscess in spring.',
    'Left fore. Last time there was thrush.',
    'Left fore. Thrush spray is on the shelf.',
    'Left fore. There never was a bruise.',
    'Left fore. Ring the vet.',
    'Left fore. In the heat all day.',
    'Left fore. Thrush free.',
    'Right hind. Swelling in the hock, moderate.',
    'Left fore nail holes should be forty down by now.',
    'Farrier said there was thrush in the left fore.',
  ])('%s says of none that it is there', (text) => {
    expect(findingsOf(text)).toEqual([])
  })

  it('two feet with two places and one name are asked about', () => {
    expect(findingsOf('Flare, left fore inside quarter mild, right fore outside quarter mild.')).toEqual([])
  })

  it('a grade or place that nobody said is a blank, and asked for', () => {
    expect(findingsOf('Left fore. A crack.')).toEqual(['LF crack, _, _'])
    expect(questionsOf('Left fore. A crack.')).toEqual([
      'LF crack: where on the foot?',
      'LF crack: how bad, 0 to 3?',
    ])
  })
})

describe('heard again at each new word', () => {
  it('never takes back a reading of an earlier sentence but by a correction or a second one', () => {
    const text =
      'Left fore toe length 98. Angle 44. Right fore toe length 96. Thrush in the frog, mild. See him in five weeks.'
    const words = text.split(' ')
    let before: readonly string[] = []
    for (const count of words.keys()) {
      const said = words.slice(0, count + 1).join(' ')
      if (!/\.$/.test(said)) continue
      const now = readingsOf(said)
      expect(now.slice(0, before.length)).toEqual(before)
      before = now
    }
    expect(before).toHaveLength(3)
  })
})
