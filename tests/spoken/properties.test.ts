/** What holds for whatever is said. The short run draws 500 notes for each. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readCasebook } from '../../src/casebook/read.ts'
import { feet } from '../../src/hoof/feet.ts'
import type { LengthUnit } from '../../src/hoof/units.ts'
import { draftVisit, type Known, type Understood } from '../../src/spoken/index.ts'
import { memoryFolder } from '../casebook/memory-folder.ts'
import { runs } from '../runs.ts'
import { drafted, heard, nothingKnown, readingsOf } from './said.ts'

const numRuns = runs(500, 20_000)

const spokenWords =
  `left right near off fore hind front back fronts hinds both all four the other three lf rf lh rh before after trimmed
finished on arrival toe length angle heel heels inside outside medial lateral quarter quarters width breakover frog sole sulcus groove apex
white line new pastern coronet depth thrush flare crack ring chip bruise separation abscess heat pus swelling stretched ragged flat mild
moderate bad very a bit severe grade gone healed no not none never isn't sorry wait scratch that make it actually maybe about roughly last
time target today was want by March in spring weeks pounds o'clock ninety eight forty one hundred and oh two half three eighths point zero
98 45.5 3 5/8 9.8 1,100 0163 2 mm cm inches degrees kg out of five pulse faint bounding landing first lame vet I'd give condition crest
weight tell Ilse to until next visit see her again down from the hairline nail holes short easy gravel sand horse weather # --- ## For owner
> * _x_ <b> | \\ [a](b) 1. & " ' ; : -- … ? ! . , , . . ,`
    .split(/\s+/)
    .filter((word) => word !== '')

const speech = fc
  .array(fc.constantFrom(...spokenWords, '\n', '\n\n'), { maxLength: 90 })
  .map((words) => words.join(' ').replaceAll(/ ([.,?!;:])/g, '$1'))
const anyText = fc.oneof(
  speech,
  fc.string({ unit: 'binary', maxLength: 300 }),
  fc.string({ unit: 'grapheme', maxLength: 300 }),
)
const captions = fc
  .array(
    fc.oneof(
      speech,
      fc.constantFrom('', '00:01.000 --> 00:02.000', '1', '00:00:01,5 --> x', 'NOTE a', 'WEBVTT'),
    ),
  )
  .map((lines) => lines.join('\n'))

const known = fc.record({
  units: fc.constantFrom<LengthUnit>('mm', 'cm', 'in'),
  feetOrder: fc.constantFrom(feet, (['RF', 'LF', 'RH', 'LH'] as const).slice()),
  date: fc.constant('2026-11-20'),
  openFindings: fc.constantFrom([], [{ foot: 'LF' as const, what: 'thrush', place: 'central sulcus' }]),
  features: fc.constantFrom([], [{ foot: 'LF' as const, what: 'nail holes', place: 'toe' }]),
}) as fc.Arbitrary<Known>

/** Every stretch of words that stands beside a line of the draft. */
const stretches = (understood: Understood) =>
  [
    ...understood.readings,
    ...understood.findings,
    ...understood.features,
    ...understood.comfort,
    ...understood.surfaces,
    ...understood.body,
    ...understood.care,
    ...(understood.nextVisit ? [understood.nextVisit] : []),
  ].flatMap(({ from }) => from)

/** The words of a draft's notes as they were said. */
const noteWords = (draft: string): readonly string[] =>
  draft
    .slice(draft.indexOf('\n---\n', 4) + 5)
    .replaceAll(/\\([\\`*_[\]<>#|~&!=+.)-])/g, '$1')
    .split(/\s+/)
    .filter((word) => word !== '')

describe('whatever is said', () => {
  it('throws nothing', () => {
    fc.assert(
      fc.property(
        fc.oneof(anyText, captions),
        fc.constantFrom('text', 'vtt', 'srt', undefined),
        known,
        (text, format, before) => {
          expect(draftVisit(heard(text, before, format), before)).toMatch(/^---\n/)
        },
      ),
      { numRuns },
    )
  })

  it('keeps every word, whole and in order: beside a line, or in the notes', () => {
    fc.assert(
      fc.property(speech, known, (text, before) => {
        const understood = heard(text, before)
        const draft = draftVisit(understood, before)
        const { words, sentences } = understood
        expect(words.map((word) => word.text)).toEqual(text.split(/\s+/).filter((word) => word !== ''))
        const inNotes = new Set<number>()
        for (const { first, last, isUsed } of sentences) {
          for (let word = first; word <= last; word++) if (!isUsed) inNotes.add(word)
        }
        for (const at of words.keys()) {
          if (words[at] === undefined || inNotes.has(at)) continue
          const quoted = stretches(understood).some(
            ({ first, last }) =>
              first <= at &&
              at <= last &&
              draft.includes(
                words
                  .slice(first, last + 1)
                  .map((word) => word.text)
                  .join(' '),
              ),
          )
          expect(quoted, `${words[at]?.text} of ${text}`).toBe(true)
        }
        expect(noteWords(draft)).toEqual([...inNotes].sort((a, b) => a - b).map((at) => words[at]?.text))
      }),
      { numRuns },
    )
  })

  it('becomes a draft that passes check but for what it asks', () => {
    fc.assert(
      fc.property(anyText, known, (text, before) => {
        const files = {
          'practice.md': `---\npractice: A\nunits: ${before.units}\nfeet: [${before.feetOrder.join(', ')}]\nowners: {abel: {name: Abel}}\n---\n`,
          'juno/horse.md': '---\nname: Juno\nowner: abel\n---\n',
          [`juno/${before.date}.md`]: drafted(text, before),
        }
        const { diagnostics } = readCasebook(memoryFolder(files), '2026-11-27')
        expect(diagnostics.filter(({ level }) => level === 'error')).toEqual([])
      }),
      { numRuns },
    )
  })

  it('never opens a section for others', () => {
    for (const heading of [
      '## For the owner',
      'For the owner\n---',
      'For the owner\n===\n',
      '> ## For the owner',
      '1. ## For the owner',
    ]) {
      const files = {
        'practice.md': '---\npractice: A\nowners: {abel: {name: Abel}}\n---\n',
        'juno/horse.md': '---\nname: Juno\nowner: abel\n---\n',
        'juno/2026-11-27.md': drafted(`Left fore.\n\n${heading}\n\nShe never pays. Nor does he.`),
      }
      const { casebook } = readCasebook(memoryFolder(files), '2026-11-27')
      expect(casebook?.horses[0]?.visits[0]?.body).toMatchObject({ forOwner: null, forTeaching: null })
    }
  })
})

describe('numbers of dates, prices, telephones, times and ages', () => {
  const small = fc.constantFrom(
    'two',
    'nine',
    'twelve',
    'thirty',
    'forty-five',
    'fifty',
    'ninety',
    'ninety-six',
    '45',
    '98',
    '50',
  )
  const digits = fc
    .array(fc.constantFrom('oh', 'one', 'two', 'six', 'nine', 'five', 'double'), {
      minLength: 6,
      maxLength: 11,
    })
    .map((all) => `oh ${all.join(' ')}`)
  const other = fc.oneof(
    small.map((n) => `That will be ${n} pounds`),
    small.map((n) => `He charged ${n} quid`),
    small.map((n) => `It costs £${n}`),
    small.map((n) => `Last trimmed ${n} weeks ago`),
    small.map((n) => `She was off for ${n} days`),
    small.map((n) => `He is ${n} years old`),
    small.map((n) => `They drove ${n} miles`),
    small.map((n) => `It is half past ${n}`),
    small.map((n) => `Box ${n} is hers`),
    small.map((n) => `Gate code ${n} works`),
    small.map((n) => `At the last visit it was ${n}`),
    small.map((n) => `The target is ${n}`),
    fc.constantFrom(
      'Born on the fourth of May 2014',
      'On the twenty-first of October',
      'That was in 2019',
      'It is 01632 960 123',
    ),
    digits.map((all) => `Ring ${all}`),
    digits.map((all) => `Her number is ${all}`),
  )

  it('become no reading, wherever they are said', () => {
    fc.assert(
      fc.property(
        fc.array(other, { minLength: 1, maxLength: 3 }),
        fc.constantFrom('. ', ', '),
        (others, joint) => {
          const text = ['Left fore toe length ninety-five', ...others, 'Right fore toe angle forty-six'].join(
            joint,
          )
          expect(readingsOf(`${text}.`)).toEqual(['before LF toe-length 95', 'before RF toe-angle 46'])
        },
      ),
      { numRuns },
    )
  })

  it('nor where a measure was only named', () => {
    for (const text of [
      'Left fore toe length. Last trimmed ninety days ago.',
      'Left fore toe length, ninety pounds please.',
      'Left fore, toe length in ninety days.',
      'Left fore toe length on oh one six three two nine six oh one two three.',
      'Left fore toe angle at half past fifty.',
    ]) {
      expect(readingsOf(text), text).toEqual([])
    }
  })
})

it('what is known before changes nothing of what is said of another foot', () => {
  const open = { ...nothingKnown, openFindings: [{ foot: 'LF' as const, what: 'thrush', place: 'frog' }] }
  expect(heard('Right fore, no thrush.', open).findings).toEqual([])
})
