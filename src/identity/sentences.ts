/**
 * The free sentences of a text that leaves, each as it is published beside what was written: what a person reads before
 * it leaves. Together they are the whole text but for space and the signs with which Markdown begins a line.
 */

export type FreeTextKind = 'alias' | 'practice' | 'finding' | 'teaching' | 'ownerView'

/** A text that a person wrote and that leaves. */
export interface FreeText {
  readonly what: FreeTextKind
  readonly original: string
  /** As the page has it. */
  readonly published: string
  /** The case file it stands in, a path within the casebook. */
  readonly file: string
  /** Whether it is the practice's, so that one approval holds for every case. */
  readonly isOfPractice: boolean
}

/** One after the other. Where the two sides do not part alike, a sentence stands beside the paragraph that it came from. */
export function sentencesOf(text: FreeText): readonly FreeText[] {
  const published = paragraphsOf(text.published)
  const written = paragraphsOf(text.original)
  const isAlike = written.length === published.length
  return published.flatMap((paragraph, i) => {
    const source = (isAlike ? written[i] : undefined) ?? written.join(' ')
    const parts = parted(paragraph)
    const sources = parted(source)
    return parts.map((part, j) => ({
      ...text,
      published: part,
      original: (sources.length === parts.length ? sources[j] : undefined) ?? source,
    }))
  })
}

/** Signs of Markdown at the beginning of a line: of a heading, a list, a quotation. */
const lineSigns = /^(?:\s*(?:[-*+]|>|#{1,6}|\d{1,2}[.)])(?=\s|$))+/
const heading = /^\s*#{1,6}\s/
const lineEnd = /\r\n|[\n\r\u0085\u2028\u2029]/

/** Paragraphs, headings and lines of lists, each on one line; line ends within one mean nothing on the page. */
function paragraphsOf(text: string): readonly string[] {
  const paragraphs: string[] = []
  let isOpen = false
  for (const line of text.split(lineEnd)) {
    const bare = line.replace(lineSigns, '').replace(/\s+/g, ' ').trim()
    if (bare !== '' && isOpen && !lineSigns.test(line)) paragraphs.push(`${paragraphs.pop()} ${bare}`)
    else if (bare !== '') paragraphs.push(bare)
    isOpen = bare !== '' && !heading.test(line)
  }
  return paragraphs
}

/** What ends with a full stop and yet ends no sentence. */
const shortened = /(?:^|[\s("'])(?:Mr|Mrs|Ms|Dr|Prof|St|Mt|No|approx|ca|cf|vs|e\.g|i\.e|\p{Lu})\.$/u
/** Such as a line under a heading or between the cells of a table: nothing to read. */
const signsAlone = /^[\s!-/:-@[-`{-~]*$/

/** The sentences of a paragraph by the rules of Unicode, put together again where only a word was shortened. */
function parted(paragraph: string): readonly string[] {
  const sentences: string[] = []
  let before = ''
  for (const { segment } of new Intl.Segmenter('en', { granularity: 'sentence' }).segment(paragraph)) {
    before += segment
    if (shortened.test(before.trimEnd())) continue
    sentences.push(before.trim())
    before = ''
  }
  return [...sentences, before.trim()].filter((sentence) => !signsAlone.test(sentence))
}

/** Words by which a sentence is found again in its file. */
const wordsSought = 8

/** The line of a case file on which a sentence begins, from 1; null where it stands there in another form. */
export function lineOf(fileText: string, sentence: string): number | null {
  const words = sentence.split(/\s+/).filter((word) => word !== '')
  if (words.length === 0) return null
  const signs = /[\\^$.*+?()[\]{}|]/g
  const sought = words.slice(0, wordsSought).map((word) => word.replace(signs, '\\$&'))
  const found = new RegExp(sought.join('\\s+(?:[>*+-]\\s+)*'), 'iu').exec(fileText)
  return found === null ? null : fileText.slice(0, found.index).split('\n').length
}
