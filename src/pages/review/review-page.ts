/** The page on which a person reads what is about to leave for the portfolio, and approves it. */
import type { Mark } from '../../identity/marks.ts'
import type { FreeTextKind } from '../../identity/sentences.ts'
import type { PageView } from '../shared/page.ts'
import type { Words } from '../words/index.ts'

interface Waiting {
  readonly hash: string
  /** Where to change it: `juno/2026-03-14.md:31`. */
  readonly place: string
}

export interface WaitingSentence extends Waiting {
  readonly what: FreeTextKind
  readonly original: string
  readonly published: string
  readonly marks: readonly Mark[]
}

export interface WaitingPhoto extends Waiting {
  /** Path in the casebook. */
  readonly photo: string
  /** Address of the picture. */
  readonly src: string
  readonly shows: readonly string[]
  readonly caption: string | null
}

export interface WaitingCase {
  readonly id: string
  readonly alias: string
  readonly items: readonly (WaitingSentence | WaitingPhoto)[]
}

const isPhoto = (item: WaitingSentence | WaitingPhoto): item is WaitingPhoto => 'photo' in item

/** @param key that the script has to send with what is approved */
export function reviewPage(
  cases: readonly WaitingCase[],
  broken: readonly string[],
  key: string,
  words: Words,
): PageView {
  const { review: w, base } = words
  const countOf = (items: WaitingCase['items']) => {
    const photos = items.filter(isPhoto).length
    return w.count(items.length - photos, photos)
  }
  return {
    path: 'index.html',
    template: 'review/review',
    model: {
      lang: base.lang,
      w,
      count: cases.length === 0 ? w.nothing : countOf(cases.flatMap(({ items }) => items)),
      broken: broken.length === 0 ? null : w.broken(broken.join(', ')),
      task: { key, says: w.script },
      cases: cases.map(({ id, alias, items }) => ({
        id,
        alias,
        folder: w.ofCase(id),
        count: countOf(items),
        items: items.map((item) => (isPhoto(item) ? photoOf(item, w) : sentenceOf(item, w))),
      })),
    },
  }
}

function sentenceOf({ hash, place, what, original, published, marks }: WaitingSentence, w: Words['review']) {
  return {
    hash,
    place,
    kind: w.kinds[what],
    photo: null,
    original: original === published ? null : original,
    parts: partsOf(published, marks),
    isMarked: marks.length > 0,
    marks: marks.map(({ text, why }) => ({ text, why: w.why[why] })),
  }
}

function photoOf({ hash, place, photo, src, shows, caption }: WaitingPhoto, w: Words['review']) {
  return {
    hash,
    place,
    kind: w.kinds.photo,
    photo: { src, path: photo, shows: shows.join(', '), caption },
    original: null,
    parts: [],
    isMarked: false,
    marks: [],
  }
}

/** The text in turn unmarked and marked. */
function partsOf(text: string, marks: readonly Mark[]): readonly { text: string; isMarked: boolean }[] {
  const parts: { text: string; isMarked: boolean }[] = []
  let at = 0
  for (const { start, end } of marks) {
    parts.push(
      { text: text.slice(at, start), isMarked: false },
      { text: text.slice(start, end), isMarked: true },
    )
    at = end
  }
  parts.push({ text: text.slice(at), isMarked: false })
  return parts.filter((part) => part.text !== '')
}
