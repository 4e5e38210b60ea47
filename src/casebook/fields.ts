/**
 * The keys of a case file as a table: for each its reader and, beside it, what holds when it is absent.
 * What a file wrote stays `YamlNode`; what a reader returns is resolved. `undefined` from a reader means that the value
 * was reported and cannot be used; the absent value then stands in so that the rest of the file is still checked.
 */
import type { Foot } from '../hoof/feet.ts'
import type { LengthUnit } from '../hoof/units.ts'
import type { Person } from './model.ts'
import type { Help, Report, SpotEdit, TextRange } from './report.ts'
import { either, listed, nearest, normal, quote } from './words.ts'
import { isUnfilled, type YamlEntry, type YamlMap, type YamlNode } from './yaml-tree.ts'

/** One file being read, with what its practice has set. */
export interface ParseContext {
  readonly report: Report
  /** Unit of a bare length. */
  readonly units: LengthUnit
  /** Order of a list of four. */
  readonly feetOrder: readonly Foot[]
  /** The practice's own finding names, with their meaning. */
  readonly terms: Readonly<Record<string, string>>
  /** Who works in the practice. */
  readonly people: readonly Person[]
}

/** Reads one value; `name` is the key as a person would say it. Never called for `~`, nothing, or a place left unfilled. */
export type Reader<T> = (value: YamlNode, context: ParseContext, name: string) => T | undefined

export interface Field<T> {
  readonly read: Reader<T>
  readonly absent: T
  /** What to write, when the key must be there. */
  readonly required: string | null
}

export const field = <T>(read: Reader<T>, absent: T): Field<T> => ({ read, absent, required: null })

/** A key that must be there. `absent` stands in so that checking can go on. */
export const required = <T>(read: Reader<T>, absent: T, example: string): Field<T> => ({
  read,
  absent,
  required: example,
})

// biome-ignore lint/suspicious/noExplicitAny: a table holds fields of many types; each keeps its own in the result
type Fields = Readonly<Record<string, Field<any>>>
export type Resolved<F extends Fields> = { readonly [K in keyof F]: F[K]['absent'] }

/**
 * The keys of `map` by the table. Keys match in any case, with spaces or hyphens. Unknown keys are errors with the
 * nearest known name. `where` ends the sentence "is not a key ...": `of a visit`. A missing key is told of
 * at `missingAt`: the map, or null for the whole file.
 */
export function readFields<F extends Fields>(
  map: YamlMap,
  fields: F,
  context: ParseContext,
  where: string,
  missingAt: TextRange | null = map,
): Resolved<F> {
  const found = new Map<string, YamlEntry>()
  const unknown: YamlEntry[] = []
  for (const entry of map.entries) {
    const name = normal(entry.key.text)
    if (!Object.hasOwn(fields, name)) unknown.push(entry)
    else if (found.has(name)) keyTwice(entry, context)
    else found.set(name, entry)
  }
  const known = Object.keys(fields)
  const taken = unknown.length > 0 ? namesIn(map) : new Set<string>()
  const misplaced = reportMisplaced(unknown, map, context, where)
  const meant = unknown
    .filter((entry) => !misplaced.has(entry))
    .map((entry) => unknownKey(entry, taken, known, context, where))
  const resolved: Record<string, unknown> = {}
  for (const [name, { read, absent, required: example }] of Object.entries(fields)) {
    const entry = found.get(name)
    const isOpen =
      entry &&
      (emptyIn(entry, context, example !== null || misplaced.has(entry)) ||
        gapIn(entry.value, entry.key.text, context))
    if (example !== null && (!entry || entry.value.kind === 'nothing') && !meant.includes(name)) {
      context.report.error('key-missing', entry?.key ?? missingAt, `${sentence(name)} is missing.`, {
        expected: example,
      })
    }
    const value = entry && !isOpen ? read(entry.value, context, name) : undefined
    resolved[name] = value === undefined ? absent : value
  }
  return resolved as Resolved<F>
}

/**
 * Unknown keys right below a key that holds nothing were meant to stand under it and are not moved in. One remark for
 * them and the empty key.
 *
 * @returns the entries told of
 */
function reportMisplaced(
  unknown: readonly YamlEntry[],
  map: YamlMap,
  context: ParseContext,
  where: string,
): ReadonlySet<YamlEntry> {
  const reported = new Set<YamlEntry>()
  const strange = new Set(unknown)
  for (const [index, empty] of unknown.length > 0 ? map.entries.entries() : []) {
    if (empty.value.kind !== 'nothing' || empty.value.said) continue
    const below = map.entries.slice(index + 1, index + 1 + mostMisplaced)
    const end = below.findIndex((entry) => !strange.has(entry))
    const misplaced = below.slice(0, end === -1 ? below.length : end)
    const [first] = misplaced
    if (!first) continue
    for (const entry of [empty, ...misplaced]) reported.add(entry)
    const names = misplaced.map(({ key }) => quote(key.text))
    context.report.error(
      'not-moved-in',
      first.key,
      `${listed(names)} ${names.length > 1 ? 'are no keys' : 'is not a key'} ${where} and may belong under ${empty.key.text}, which holds nothing.`,
      {
        expected: 'what belongs under a key is moved in by two spaces',
        fix: { words: 'move it in by two spaces', edits: movedIn(misplaced, context) },
      },
    )
  }
  return reported
}

/** Longest run of lines that is taken for one slip. */
const mostMisplaced = 12

/** Two spaces at the beginning of each line from the first of the entries to the last. */
function movedIn(entries: readonly YamlEntry[], context: ParseContext): SpotEdit[] {
  const start = entries[0]?.key.start ?? 0
  const end = entries.at(-1)?.value.end ?? start
  const edits = [{ start, end: start, text: '  ' }]
  for (const match of context.report.textOf({ start, end }).matchAll(/\n(?=.)/g)) {
    edits.push({ start: start + match.index + 1, end: start + match.index + 1, text: '  ' })
  }
  return edits
}

function unknownKey(
  entry: YamlEntry,
  taken: ReadonlySet<string>,
  known: readonly string[],
  context: ParseContext,
  where: string,
): string | null {
  const glued = entry.value.kind === 'nothing' ? withoutSpace(entry.key.text, known) : null
  const meant = keyMeant(entry.key.text, taken, known)
  context.report.error('key-unknown', entry.key, `${quote(entry.key.text)} is not a key ${where}.`, {
    expected: known.length > 12 ? `one of ${known.length} keys: ${known.join(', ')}` : either(known),
    fix: glued ?? meant,
  })
  return glued ? normal(glued.slice(0, glued.indexOf(':'))) : meant
}

/** Whether a key was told of that most likely is this one: that it is missing then says nothing new. */
export const isMistyped = (report: Report, name: string): boolean =>
  report.diagnostics.some(({ code, fix }) => code === 'key-unknown' && fix?.split(':')[0] === name)

/** The names that the keys of a map have, in one spelling. */
export const namesIn = (map: YamlMap): ReadonlySet<string> =>
  new Set(map.entries.map(({ key }) => normal(key.text)))

/** The known name nearest to a key, unless the map has that name already: twice would be no better. */
export function keyMeant(key: string, taken: ReadonlySet<string>, known: readonly string[]): string | null {
  const meant = nearest(key, known)
  return meant === null || taken.has(normal(meant)) ? null : meant
}

/** `weight:505 kg` in braces, where YAML wants a space after the colon, or `weight 505 kg` without one. */
export function withoutSpace(key: string, known: readonly string[]): string | null {
  const name = known.find((one) => normal(key).startsWith(one.toLowerCase()))
  if (!name || key.includes('"')) return null
  const after = key.slice(name.length)
  const rest = after.trimStart().replace(/^:/, '').trim()
  return rest !== '' && !rest.includes('\n') && /^[\s:]/.test(after)
    ? `${key.slice(0, name.length)}: ${rest}`
    : null
}

export function keyTwice(entry: YamlEntry, context: ParseContext): void {
  context.report.error('key-twice', entry.key, `${quote(entry.key.text)} is written twice here.`, {
    expected: 'each key once',
    advice: 'put both together, or remove one',
  })
}

/** True for a key without a value; one with nothing at all after it, not even `~`, was forgotten, and that is told. */
export function emptyIn({ key, value }: YamlEntry, context: ParseContext, isToldElsewhere = false): boolean {
  if (value.kind !== 'nothing') return false
  if (!value.said && !isToldElsewhere) context.report.gap(key, `${sentence(key.text)} holds nothing.`)
  return true
}

/** True, and told, for a place left to be filled in. */
export function gapIn(value: YamlNode, name: string, context: ParseContext): boolean {
  if (!isUnfilled(value)) return false
  context.report.gap(value, `${sentence(name)} is not yet filled in.`)
  return true
}

/** Reports that a value has the wrong form. */
export function wrongForm(
  value: TextRange,
  context: ParseContext,
  name: string,
  expected: string,
  help?: string | Pick<Help, 'fix' | 'advice'>,
): undefined {
  const text =
    (value as YamlNode).kind === 'text' ? ` ${quote((value as YamlNode & { text: string }).text)}` : ''
  context.report.error('value-form', value, `${sentence(name)}:${text || ' this'} cannot be read.`, {
    expected,
    ...(typeof help === 'string' ? { fix: help } : help),
  })
  return undefined
}

export const sentence = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1)
