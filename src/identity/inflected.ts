/**
 * Scripts in which a name changes with its place in the sentence: Cyrillic and Greek by endings, Arabic and Hebrew by
 * what is written on to its beginning.
 */

const cyrillic = /^\p{Script=Cyrillic}+$/u
const greek = /^\p{Script=Greek}+$/u
const arabic = /^\p{Script=Arabic}+$/u
const hebrew = /^\p{Script=Hebrew}+$/u

/** A case ending, and no longer word. */
const longestEnding = 3
const shortestStem = 3
/** So short a stem is everyday language but for its capital. */
const shortStem = 4

/** Stems of a folded word by which every case of it is known; none in scripts without endings. */
export function stemsOf(word: string): readonly string[] {
  if (cyrillic.test(word)) {
    const stem = word.replace(/(?:[иыо]и|ая|яя|[аеиоуыэюяьй])$/u, '')
    const fleeting = stem.replace(/[ео]([бвгджзклмнпрстфхцчшщ])$/u, '$1')
    return [...new Set([stem, fleeting])].filter(({ length }) => length >= shortestStem)
  }
  if (greek.test(word)) {
    const stem = word.replace(/(?:[αηουιεω]+[ςσ]?)$/u, '')
    return stem.length >= shortestStem ? [stem] : []
  }
  return []
}

/** The stems that a folded word of a text may come from, longest first. */
export function possibleStems(folded: string, raw: string): readonly string[] {
  if (!cyrillic.test(folded) && !greek.test(folded)) return []
  const stems: string[] = []
  for (let cut = 0; cut <= longestEnding; cut++) {
    const stem = folded.slice(0, folded.length - cut)
    if (stem.length < shortestStem) break
    if (stem.length > shortStem || /^\p{Lu}/u.test(raw)) stems.push(stem)
  }
  return stems
}

const arabicLead = /^[وف]?[بكل]?(?:ال|ل)?$/u
const hebrewLead = /^[והבכלמש]{1,3}$/u
const shortestRoot = 3

/** A name's folded word without its article; null in other scripts. */
export function bareOf(word: string): string | null {
  if (arabic.test(word))
    return word.startsWith('ال') && word.length >= shortestRoot + 2 ? word.slice(2) : word
  return hebrew.test(word) ? word : null
}

/** The bare words that a folded word of a text may hold behind what is written on to it. */
export function possibleBare(folded: string): readonly string[] {
  const lead = arabic.test(folded) ? arabicLead : hebrew.test(folded) ? hebrewLead : null
  if (lead === null) return []
  const bare: string[] = []
  for (let cut = 1; cut <= 4 && folded.length - cut >= shortestRoot; cut++) {
    if (lead.test(folded.slice(0, cut))) bare.push(folded.slice(cut))
  }
  return bare
}
