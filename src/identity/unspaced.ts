/** Names in scripts that put no space between words: searched as they stand within a run of such signs. */

const scripts =
  '\\p{sc=Han}\\p{sc=Hiragana}\\p{sc=Katakana}\\p{sc=Hangul}\\p{sc=Thai}\\p{sc=Lao}\\p{sc=Khmer}\\p{sc=Myanmar}\\p{sc=Tibetan}'
const anyOf = new RegExp(`[${scripts}]`, 'u')
const hidden = /[\p{Default_Ignorable_Code_Point}\p{Cf}]/u

/** Whether a word holds a sign of such a script. */
export const isUnspaced = (text: string): boolean => anyOf.test(text)

/** One sign as it is compared. */
const sign = (raw: string): string =>
  hidden.test(raw) ? '' : /\s/u.test(raw) ? ' ' : raw.normalize('NFKD').toLowerCase()

const signsOf = (text: string): string => [...text].map(sign).join('')

/**
 * What to search for: the whole with and without its spaces, each part, and of a name of three signs the last two, which
 * is what a person is called by. A single sign names nobody.
 */
export function unspacedForms(text: string): readonly string[] {
  const parts = text.trim().split(/[\s\u3000・·]+/u)
  const given = parts.flatMap((part) => {
    const signs = [...part.normalize('NFC')]
    return signs.length === 3 && /^[\p{sc=Han}\p{sc=Hangul}]{3}$/u.test(signs.join(''))
      ? [signs.slice(1).join('')]
      : []
  })
  const forms = [parts.join(' '), parts.join(''), ...parts, ...given]
  return [...new Set(forms.filter((form) => [...form.normalize('NFC')].length >= 2).map(signsOf))]
}

interface Place<T> {
  readonly start: number
  readonly end: number
  readonly of: T
}

export interface UnspacedFinder<T> {
  find(text: string): readonly Place<T>[]
}

/** One walk over a text, whatever the number of names. */
export function unspacedFinder<T>(
  names: readonly { readonly form: string; readonly of: T }[],
): UnspacedFinder<T> {
  const byFirst = new Map<string, { form: string; of: T }[]>()
  for (const name of names) {
    const first = name.form.slice(0, 1)
    const list = byFirst.get(first)
    if (list) list.push(name)
    else byFirst.set(first, [name])
  }
  for (const list of byFirst.values()) list.sort((a, b) => b.form.length - a.form.length)
  return {
    find(text) {
      if (byFirst.size === 0 || !anyOf.test(text)) return []
      const { signs, places } = compared(text)
      const found: Place<T>[] = []
      for (let at = 0; at < signs.length; at++) {
        // A name begins and ends with a whole sign: a syllable is not cut.
        if (places[at] === places[at - 1]) continue
        const name = byFirst.get(signs[at] ?? '')?.find(({ form }) => {
          const end = at + form.length
          return places[end] !== places[end - 1] && signs.startsWith(form, at)
        })
        if (name === undefined) continue
        const end = at + name.form.length
        found.push({ start: places[at] ?? 0, end: afterSign(text, places[end - 1] ?? 0), of: name.of })
        at = end - 1
      }
      return found
    },
  }
}

const afterSign = (text: string, at: number) => at + String.fromCodePoint(text.codePointAt(at) ?? 0).length

function compared(text: string): { signs: string; places: readonly number[] } {
  const places: number[] = []
  let signs = ''
  let at = 0
  for (const raw of text) {
    const one = sign(raw)
    for (let i = 0; i < one.length; i++) places.push(at)
    signs += one
    at += raw.length
  }
  return { signs, places }
}
