import { describe, expect, it } from 'vitest'
import { formatOf, wordsOf } from '../../src/spoken/words.ts'

const said = (text: string) =>
  wordsOf(text)
    .map((word) => word.text)
    .join(' ')

const vtt = `WEBVTT - yard

STYLE
::cue { color: white }

NOTE one
and more of it

intro
00:01.000 --> 00:04.000 align:start
<v Ada>Left fore,</v> <i>before</i>

01:00:02.500 --> 01:00:03.000
toe length
ninety
`

describe('captions', () => {
  it('are told by how they begin', () => {
    expect(formatOf(vtt)).toBe('vtt')
    expect(formatOf(`\uFEFF${vtt}`)).toBe('vtt')
    expect(formatOf('1\r\n00:00:01,000 --> 00:00:02,000\r\nHello')).toBe('srt')
    expect(formatOf('WEBVTTX')).toBe('text')
    expect(formatOf('1\nLeft fore')).toBe('text')
  })

  it('give their words, with the seconds at which each was said', () => {
    expect(said(vtt)).toBe('Left fore, before toe length ninety')
    expect(wordsOf(vtt).map((word) => word.time)).toEqual([1, 1, 1, 3602.5, 3602.5, 3602.5])
  })

  it('give the place of each word in the text', () => {
    for (const word of wordsOf(vtt)) expect(vtt.slice(word.start, word.end)).toBe(word.text)
  })

  it('read the same with any line end', () => {
    expect(said(vtt.replaceAll('\n', '\r\n'))).toBe(said(vtt))
  })

  it('lose no word where a time, a number or an empty line is missing', () => {
    const torn =
      'WEBVTT\n\n00:99 --> x\nfoo toe ninety\n\nwords without a time\n\n00:01.000 --> 00:02.000\nok'
    expect(said(torn)).toBe('00:99 --> x foo toe ninety words without a time ok')
    const srt = '1\n00:00:01,000 --> 00:00:02,000\none\n2\n00:00:02,000 --> 00:00:03,000\ntwo'
    expect(said(srt)).toContain('one')
    expect(said(srt)).toContain('two')
  })

  it('keep figures that are said from being taken for the number of a caption', () => {
    expect(said('WEBVTT\n\n00:01.000 --> 00:02.000\nToe length\n\n00:02.000 --> 00:03.000\n96\n')).toBe(
      'Toe length 96',
    )
  })

  it('run on from one to the next, and are set off by a silence', () => {
    const words = wordsOf(
      'WEBVTT\n\n00:01.000 --> 00:02.000\na\n\n00:02.500 --> 00:03.000\nb\n\n00:20.000 --> 00:21.000\nc\n',
    )
    expect(words.map((word) => word.opens)).toEqual([true, false, true])
  })
})
