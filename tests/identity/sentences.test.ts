import { describe, expect, it } from 'vitest'
import { type FreeText, lineOf, sentencesOf } from '../../src/identity/sentences.ts'

const text = (published: string, original = published): FreeText => ({
  what: 'teaching',
  original,
  published,
  file: 'juno/horse.md',
  isOfPractice: false,
})
const parts = (published: string) => sentencesOf(text(published)).map((one) => one.published)

describe('the sentences of a text', () => {
  it.each<readonly [string, readonly string[]]>([
    ['One. Two! Three? Four', ['One.', 'Two!', 'Three?', 'Four']],
    ['Wrapped over\ntwo lines. And\r\non.', ['Wrapped over two lines.', 'And on.']],
    ['# Head\nText.\n\n- one\n- two\n  goes on\n> said', ['Head', 'Text.', 'one', 'two goes on', 'said']],
    ['1. First.\n2. Second.', ['First.', 'Second.']],
    [
      'Seen by Dr. Holt and Mrs. A. Reed. Then e.g. Sand.',
      ['Seen by Dr. Holt and Mrs. A. Reed.', 'Then e.g. Sand.'],
    ],
    ['Took 1.5 mm off. Then 2.', ['Took 1.5 mm off.', 'Then 2.']],
    ['A\n\n---\n\n| a | b |\n|---|---|\n| c | d |', ['A', '| a | b | |---|---| | c | d |']],
    ['蹄が伸びた。また削った。', ['蹄が伸びた。', 'また削った。']],
    ['', []],
  ])('%j are %j', (written, expected) => {
    expect(parts(written)).toEqual(expected)
  })

  it('leave nothing out but space and the signs that begin a line', () => {
    const written =
      '## It was\n* 17 hh, "big" (very): ring 01632 960111.\n12345. No list. \u200bx\n> - a *b* `c` [d](e)\n\t+ f'
    const bare = (some: string) => some.replace(/\s/g, '')
    const signs = /^(?:[ \t]*(?:##|[*>+-]))+/gm
    expect(bare(parts(written).join(''))).toBe(bare(written.replace(signs, '')))
  })

  it('stand beside what each was written as; beside the paragraph where the two do not part alike', () => {
    const pairs = sentencesOf(
      text('Alder came on day 0. All well.\n\nMr X. stood. By.', 'Juno came on 1 May. All well.\n\nOne.'),
    )
    expect(pairs.map(({ original, published }) => [original, published])).toEqual([
      ['Juno came on 1 May.', 'Alder came on day 0.'],
      ['All well.', 'All well.'],
      ['One.', 'Mr X. stood.'],
      ['One.', 'By.'],
    ])
  })
})

describe('the line of a sentence in its file', () => {
  const file = '---\nname: Juno\n---\n\n> The horn (inner)\n> is dry. It *was* wet.\n- one\n  two\n'
  it.each([
    ['The horn (inner) is dry.', 5],
    ['It *was* wet.', 6],
    ['one two', 7],
    ['juno', 2],
    ['not there', null],
    ['', null],
  ])('%j is %s', (sentence, line) => {
    expect(lineOf(file, sentence)).toBe(line)
  })
})
