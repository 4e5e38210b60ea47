/**
 * Marked points into the text of a visit, in place of those of the same photo entry. Every other character stays:
 * a value is replaced where it stands, a key that is not wanted goes with its line, a new one comes after the last.
 * What comes out is read again; where anything but the points reads differently, nothing is done.
 */
import {
  type Document,
  isAlias,
  isCollection,
  isMap,
  isScalar,
  isSeq,
  type Pair,
  parseDocument,
  Scalar,
  type YAMLMap,
} from 'yaml'
import { UserError } from '../../build/disk/errors.ts'
import type { Landmarks } from '../../hoof/landmarks.ts'
import { type LandmarkEntry, landmarkEntries, landmarkKeys } from '../../pages/mark/landmark-block.ts'

/** Which entry of a visit: the picture's path in the horse's folder, and which of the entries that name it. */
export interface EntryName {
  readonly file: string
  /** 0 for the first. */
  readonly nth: number
}

/**
 * The text of a visit with the points of one entry replaced.
 * @throws UserError where this cannot be done without touching anything else; the message says why
 */
export function withLandmarks(text: string, entry: EntryName, landmarks: Landmarks): string {
  const { start, block } = blockOf(text)
  const wanted = landmarkEntries(landmarks)
  const edits = editsOf(block, entryIn(parsed(block), entry), wanted)
  // From the end, so that offsets before it stay true; of two at one place the later one first.
  const changed = edits
    .toReversed()
    .toSorted((a, b) => b.start - a.start)
    .reduce((now, edit) => now.slice(0, edit.start) + edit.text + now.slice(edit.end), block)
  if (!readsAlike(block, changed, entry, wanted))
    throw refusal('the block is written in a way that is not understood well enough')
  return text.slice(0, start) + changed + text.slice(start + block.length)
}

const refusal = (why: string): UserError =>
  new UserError(`Nothing was written: ${why}. Copy the block and put it into the file by hand.`)

interface Edit {
  readonly start: number
  readonly end: number
  readonly text: string
}

function blockOf(text: string): { readonly start: number; readonly block: string } {
  const opening = /^\uFEFF?---[ \t]*\r?\n/.exec(text)?.[0]
  const closing = opening === undefined ? -1 : text.slice(opening.length).search(/^---[ \t]*\r?$/m)
  if (opening === undefined || closing < 0) throw refusal('the file has no block between two lines of ---')
  return { start: opening.length, block: text.slice(opening.length, opening.length + closing) }
}

function parsed(block: string): Document {
  const document = parseDocument(block, { schema: 'core', merge: false, strict: true })
  if (document.errors.length > 0) throw refusal('the block holds an error; see what "growdown check" says')
  return document
}

/** As the reader of case files takes a key: any case, spaces or hyphens. */
const plain = (key: unknown): string =>
  String(isScalar(key) ? key.value : key)
    .trim()
    .toLowerCase()
    .replace(/[-_\s]+/g, ' ')

const pairOf = (map: YAMLMap, key: string): Pair | undefined =>
  map.items.find((pair) => plain(pair.key) === key)

function entryIn(document: Document, { file, nth }: EntryName): YAMLMap {
  const photos = isMap(document.contents) ? pairOf(document.contents, 'photos')?.value : undefined
  const entries = isSeq(photos) ? photos.items : [photos]
  const named = entries.filter((item): item is YAMLMap => {
    if (!isMap(item)) return false
    const value = pairOf(item, 'file')?.value
    return isScalar(value) && String(value.value).replace(/^\.\//, '') === file
  })
  const entry = named[nth]
  if (entry === undefined) throw refusal(`the visit names the picture ${file} no more`)
  return entry
}

function editsOf(block: string, entry: YAMLMap, wanted: readonly LandmarkEntry[]): readonly Edit[] {
  const values = new Map(wanted)
  const edits: Edit[] = []
  const present = new Set<string>()
  for (const pair of entry.items) {
    const key = plain(pair.key)
    if (!landmarkKeys.includes(key)) continue
    present.add(key)
    const value = values.get(key)
    edits.push(value === undefined ? removal(block, entry, pair) : replacement(block, pair, value))
  }
  const added = wanted.filter(([key]) => !present.has(key))
  if (added.length > 0)
    edits.push(entry.flow ? flowAddition(block, entry, added) : addition(block, entry, added))
  return edits
}

type Node = { readonly range?: readonly [number, number, number] | null }

const startOf = (node: unknown): number => {
  const range = (node as Node | null)?.range
  if (!range) throw refusal('a part of the entry has no place')
  return range[0]
}

/** The offset after the last character of a node's own, without the blanks and comments behind it. */
function endOf(node: unknown): number {
  if (isCollection(node) && !node.flow) {
    const last = node.items.at(-1)
    if (last !== undefined)
      return endOf('key' in (last as object) ? ((last as Pair).value ?? (last as Pair).key) : last)
  }
  const range = (node as Node | null)?.range
  if (!range) throw refusal('a part of the entry has no place')
  return range[1]
}

function replacement(block: string, { key, value }: Pair, text: string): Edit {
  if (isAlias(value)) throw refusal('a point is an alias')
  if (!isEmpty(value)) return { start: startOf(value), end: endOf(value), text }
  const colon = afterColon(block, key)
  return { start: colon, end: colon, text: ` ${text}` }
}

/** Nothing stands after the colon. The reader of YAML may place such a value on another line. */
const isEmpty = (value: unknown): boolean =>
  value === null || (isScalar(value) && startOf(value) === endOf(value))

const afterColon = (block: string, key: unknown): number => block.indexOf(':', endOf(key)) + 1

const pairEnd = (block: string, { key, value }: Pair): number =>
  isEmpty(value) ? afterColon(block, key) : endOf(value)

/** From the first character of a line to after its last pair, and the line itself where nothing else is on it. */
function removal(block: string, entry: YAMLMap, pair: Pair): Edit {
  const at = entry.items.indexOf(pair)
  const start = startOf(pair.key)
  const end = pairEnd(block, pair)
  if (entry.flow) return flowRemoval(block, entry, at, start, end)
  if (at === 0) throw refusal('the entry begins with a point; let it begin with file:')
  const lineStart = block.lastIndexOf('\n', start) + 1
  const lineEnd = endOfLine(block, end)
  const rest = block.slice(end, lineEnd)
  if (rest.trim() !== '') return { start, end: end + rest.search(/\S/), text: '' }
  return { start: lineStart, end: Math.min(lineEnd + 1, block.length), text: '' }
}

function flowRemoval(block: string, entry: YAMLMap, at: number, start: number, end: number): Edit {
  const before = entry.items[at - 1]
  const after = entry.items[at + 1]
  const from = before ? pairEnd(block, before) : start
  const to = before ? end : after ? startOf(after.key) : end
  const gap = before ? block.slice(from, start) : block.slice(end, to)
  if (!/^\s*,?\s*$/.test(gap)) throw refusal('a comment stands between the points')
  return { start: from, end: to, text: '' }
}

const endOfLine = (block: string, from: number): number => {
  const end = block.indexOf('\n', from)
  return end < 0 ? block.length : end
}

const columnOf = (block: string, at: number): number => at - (block.lastIndexOf('\n', at - 1) + 1)

/** After the last pair that is written on one line. */
function addition(block: string, entry: YAMLMap, added: readonly LandmarkEntry[]): Edit {
  const last = entry.items.findLast((pair) => {
    const { key, value } = pair
    const isBlock =
      (isCollection(value) && !value.flow) ||
      (isScalar(value) && (value.type === Scalar.BLOCK_FOLDED || value.type === Scalar.BLOCK_LITERAL))
    return !isBlock && block.slice(startOf(key), pairEnd(block, pair)).split('\n').length === 1
  })
  const first = entry.items[0]
  if (!last || !first) throw refusal('no key of the entry is written on one line')
  const at = endOfLine(block, pairEnd(block, last))
  const isWindows = block[at - 1] === '\r'
  const newline = isWindows ? '\r\n' : '\n'
  const indent = ' '.repeat(columnOf(block, startOf(first.key)))
  const text = added.map(([key, value]) => `${newline}${indent}${key}: ${value}`).join('')
  const place = isWindows ? at - 1 : at
  return { start: place, end: place, text }
}

/** Inside the braces, each on a line of its own. */
function flowAddition(block: string, entry: YAMLMap, added: readonly LandmarkEntry[]): Edit {
  const last = entry.items.at(-1)
  if (!last) throw refusal('the entry is empty')
  const at = pairEnd(block, last)
  const newline = block.includes('\r\n') ? '\r\n' : '\n'
  const indent = ' '.repeat(columnOf(block, startOf(entry)) + 1)
  const text = added.map(([key, value]) => `,${newline}${indent}${key}: ${value}`).join('')
  return { start: at, end: at, text }
}

/** Whether only the points of that entry changed, and to what was wanted. */
function readsAlike(
  before: string,
  after: string,
  name: EntryName,
  wanted: readonly LandmarkEntry[],
): boolean {
  const [old, now] = [before, after].map((block) => {
    const document = parsed(block)
    const entry = entryIn(document, name)
    const points = new Map<string, string>()
    for (const pair of [...entry.items]) {
      const key = plain(pair.key)
      if (!landmarkKeys.includes(key)) continue
      points.set(key, JSON.stringify(isCollection(pair.value) ? pair.value.toJSON() : pair.value))
      entry.items.splice(entry.items.indexOf(pair), 1)
    }
    return { rest: JSON.stringify(document.toJS()), points }
  })
  const asked = new Map(wanted.map(([key, value]) => [key, JSON.stringify(parseDocument(value).toJS())]))
  const isSame =
    asked.size === now?.points.size && [...asked].every(([key, value]) => now.points.get(key) === value)
  return isSame && old?.rest === now.rest
}
