import { controlsShown, withoutControls } from '../../casebook/control-characters.ts'
import { type Foot, feet } from '../../hoof/feet.ts'

/** The place that a person is to fill in. `check` names each that is left. */
export const blank = '_'

/** Headings by which the reader of case files knows what is for others: the same in every language. */
export const sectionHeadings = { forOwner: 'For the owner', forTeaching: 'For teaching' } as const

/** A line of a case file with its remark in a column of its own where it fits. */
export function remarked(line: string, remark: string | null): string {
  if (remark === null) return line
  return `${line.padEnd(34)} # ${withoutControls(remark).replaceAll(/\s+/g, ' ')}`
}

/** Text as a YAML scalar that reads back as that text, on one line: any white space in it is one space. */
export function scalar(text: string): string {
  const oneLine = text.replaceAll(/\s+/g, ' ').trim()
  const plain = /^[\p{L}\p{N}][\p{L}\p{N} .()/+°%-]*$/u.test(oneLine) && !/^[-+.\d]+$/.test(oneLine)
  const reserved = /^(?:true|false|yes|no|on|off|null|y|n)$/i.test(oneLine)
  return plain && !reserved ? oneLine : quoted(oneLine)
}

/** A JSON string is one of YAML (1.2, section 1.3), but for signs that YAML allows as escapes only. */
const quoted = (text: string): string => controlsShown(JSON.stringify(text))

/** A line of a list: parts between commas, the first of which a person may have named with any signs. */
export function partsLine(what: string, ...others: readonly string[]): string {
  const line = [what, ...others].join(', ')
  return `- ${scalar(what) === what ? line : quoted(line)}`
}

/** The same in brackets, to stand beside a key; null where a part has signs that would make other parts of it. */
export function bracketed(what: string, ...others: readonly string[]): string | null {
  return what.includes(',') ? null : `[${[scalar(what), ...others].join(', ')}]`
}

/** A blank for each foot: a list of four, or a map where it is fewer. */
export function blanks(of: readonly Foot[], order: readonly Foot[]): string {
  if (of.length === feet.length) return `[${order.map(() => blank).join(', ')}]`
  const map = order.filter((foot) => of.includes(foot)).map((foot) => `${foot}: ${blank}`)
  return `{${map.join(', ')}}`
}
