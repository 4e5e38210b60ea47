/**
 * What was said, as words with their places in the text and, where it came with times, when they were said.
 *
 * Captions are read by own code: of five packages that read WebVTT or SubRip each drops the words of a cue whose time is
 * malformed, or throws, and none says where in the text a word stands. Here a line is a time, a mark of the format, or
 * words; nothing that could be words is lost.
 */

export interface Word {
  /** As written, with the punctuation that touches it. */
  readonly text: string
  /** Place in the source, UTF-16 units. */
  readonly start: number
  readonly end: number
  /** Seconds from the beginning; null where the text has no times. */
  readonly time: number | null
  /** Whether a line of its own, or a silence, sets it off from the word before. */
  readonly opens: boolean
}

export type NotesFormat = 'text' | 'vtt' | 'srt'

const timeLine = /^\s*(?:(\d{1,4}):)?(\d{1,2}):(\d{1,2})[.,](\d{1,3})\s*-->/
const arrow = /^\s*[\d:.,]+\s*-->\s*[\d:.,]+/

/** A silence that ends what was being said, in seconds. */
const longSilence = 4

/** What the text is, by how it begins; plain text where nothing speaks for captions. */
export function formatOf(text: string): NotesFormat {
  if (/^\uFEFF?WEBVTT(?:[ \t\n\r]|$)/.test(text)) return 'vtt'
  return /^\uFEFF?\s{0,20}\d{1,6}[ \t]{0,9}\r?\n[ \t]{0,9}\d{1,4}:\d\d:\d\d[.,]\d{1,3}\s{1,9}-->/.test(text)
    ? 'srt'
    : 'text'
}

/** The words of a text, in order; the marks of captions are no words. */
export function wordsOf(text: string, format: NotesFormat = formatOf(text)): readonly Word[] {
  return format === 'text' ? plainWords(text) : captionWords(text, format)
}

function plainWords(text: string): readonly Word[] {
  const words: Word[] = []
  let from = 0
  for (const match of text.matchAll(/\S+/g)) {
    const between = text.slice(from, match.index)
    words.push(wordAt(match[0], match.index, null, words.length === 0 || /\n\s*\n/.test(between)))
    from = match.index + match[0].length
  }
  return words
}

const wordAt = (text: string, start: number, time: number | null, opens: boolean): Word => ({
  text,
  start,
  end: start + text.length,
  time,
  opens,
})

interface Line {
  readonly text: string
  readonly start: number
}

function linesOf(text: string): readonly Line[] {
  const lines: Line[] = []
  let start = 0
  for (const line of text.split('\n')) {
    lines.push({ text: line.replace(/\r$/, ''), start })
    start += line.length + 1
  }
  return lines
}

/** Tags of a cue (`<v Ada>`, `<i>`, `<00:01.000>`, `{\an8}`) become blanks, so that places stay. */
const withoutTags = (line: string): string =>
  line.replace(/<\/?[^<>]{0,200}>|\{\\[^{}]{0,40}\}/g, (tag) => ' '.repeat(tag.length))

function captionWords(text: string, format: 'vtt' | 'srt'): readonly Word[] {
  const words: Word[] = []
  let time: number | null = null
  let last = 0
  let isSilent = true
  let block: 'cue' | 'aside' | 'none' = format === 'vtt' ? 'aside' : 'none'
  const lines = linesOf(text)
  for (const [index, line] of lines.entries()) {
    if (line.text.trim() === '') {
      block = 'none'
      continue
    }
    if (arrow.test(line.text)) {
      const begins = secondsOf(line.text)
      isSilent = begins === null || words.length === 0 || begins - last > longSilence
      time = begins
      last = begins === null ? last : (secondsOf(line.text.replace(/^.*?-->/, '')) ?? begins)
      block = 'cue'
      continue
    }
    if (block === 'none') {
      // The name of a cue stands on the line above its time.
      if (arrow.test(lines[index + 1]?.text ?? '')) continue
      if (format === 'vtt' && /^(?:NOTE|STYLE|REGION)(?:\s|$)/.test(line.text)) block = 'aside'
      // Words between two cues with no time of their own are words all the same.
      else block = 'cue'
    }
    if (block === 'aside') continue
    for (const match of withoutTags(line.text).matchAll(/\S+/g)) {
      words.push(wordAt(match[0], line.start + match.index, time, isSilent))
      isSilent = false
    }
  }
  return words
}

function secondsOf(line: string): number | null {
  const match = timeLine.exec(`${line.replace(/-->.*$/, '')}-->`)
  if (!match) return null
  const [, hours = '0', minutes, seconds, part = ''] = match
  return Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds) + Number(part.padEnd(3, '0')) / 1000
}
