/** Where in a text a capital says nothing, and where a word can only be somebody's name. */

const opening = /["'“”‘’«(*_~`[]/
const abbreviated = /(?:^|[\s(])(?:mr|mrs|ms|mx|dr|prof|rev|st|no|vs|approx|ca|incl|e\.g|i\.e|cf|\p{Lu})\.$/iu

/** First in a text, a block, a list item, a cell or an attribute, or after the end of a sentence. */
export function beginsSentence(text: string, at: number): boolean {
  let first = at
  while (first > 0 && opening.test(text[first - 1] ?? '')) first--
  let end = first
  while (end > 0 && /\s/.test(text[end - 1] ?? '')) end--
  if (end === 0) return true
  const gap = text.slice(end, first)
  if (/\n[^\S\n]*\n/.test(gap)) return true
  const before = text[end - 1] ?? ''
  if (gap === '') return /[=>|]/.test(before)
  const line = text.slice(text.lastIndexOf('\n', first - 1) + 1, first)
  if (/^\s*(?:[-+*#>|]+|\d+[.)])\s*$/.test(line) && line.trim() !== '') return true
  if (gap.includes('\n') && /^\s*#/.test(text.slice(text.lastIndexOf('\n', end - 1) + 1, end))) return true
  if (!/[.!?:;…|>–—"”»]/.test(before)) return false
  return !(before === '.' && abbreviated.test(text.slice(Math.max(0, end - 10), end)))
}

const title =
  /(?:^|[^\p{L}\p{N}])(?:mr|mrs|ms|mx|miss|dr|prof|professor|sir|madam|lady|lord|rev|frau|herr|mme|mlle|señora?)\.?[\s\u00A0]+$/iu

/** Whether a title stands before: Mrs, Dr. */
export const hasTitle = (text: string, at: number): boolean =>
  title.test(text.slice(Math.max(0, at - 14), at))

const does =
  `stood|stands|walked|walks|trotted|trots|cantered|came|comes|went|goes|arrived|rested|rests|leaned|leans
|kicked|ate|eats|grazed|grazes|lives|lived|hates|hated|likes|liked|loves|loved|rode|rides|held|holds|said|says|told|asked
|thought|thinks|feeds|fed|rang|wrote|helped|bought|wears|wore|trusted|stumbled|limped|rolled|slept`.replaceAll(
    '\n',
    '',
  )
const how =
  `lame|sore|footsore|sound|fit|happy|unhappy|shod|unshod|barefoot|ridden|led|willing|tired|fat|overweight|stiff
|reluctant|retired|sold|born|in foal|turned out|on box rest`.replaceAll('\n', '')
const deed = new RegExp(
  `^(?:['’]s(?!\\p{L})|\\s+(?:(?:${does})|(?:was|is|has been|had been|seemed|looked|looks|seems)\\s+(?:(?:not|now|very|still|much|quite|never|again)\\s+)?(?:${how}))(?!\\p{L}))`,
  'iu',
)

/** Whether what follows is what a horse or a person does or is: `… stood well`, `… was lame`, `…'s toe`. */
export const readsAsName = (text: string, end: number): boolean => deed.test(text.slice(end, end + 40))
