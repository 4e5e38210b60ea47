/**
 * The block at the head of a case file as a tree, every scalar still as it was written: `no`, `2026-03-14`, `007`
 * and `3 5/8"` stay text, and each node knows where it stands in the file. Nothing in it is ever built or run:
 * tags, anchors, aliases and merge keys are refused before a tree exists.
 */
import { EVENT_ID, type Event, getScalarValue, parseEvents, SCALAR_STYLE, YAMLException } from 'js-yaml'
import { limits } from './limits.ts'
import { plainReason } from './reasons.ts'
import type { Fix, Report, SpotEdit, TextRange } from './report.ts'
import { quote } from './words.ts'

export interface YamlText extends TextRange {
  readonly kind: 'text'
  readonly text: string
  /** True when the text stands in the file letter by letter from `start` to `end`, so that a part of it can be shown. */
  readonly verbatim: boolean
  /** True when it stands in quotes, which `start` and `end` leave out. */
  readonly quoted: boolean
  /** Words after a single space and a `#`, which YAML drops; null where there are none or they stand apart. */
  readonly cut: TextRange | null
}
/** `~`, `null` or nothing at all. */
export interface YamlNothing extends TextRange {
  readonly kind: 'nothing'
  /** False where there is nothing at all. */
  readonly said: boolean
}
export interface YamlList extends TextRange {
  readonly kind: 'list'
  readonly items: readonly YamlNode[]
}
export interface YamlEntry {
  readonly key: YamlText
  readonly value: YamlNode
}
export interface YamlMap extends TextRange {
  readonly kind: 'map'
  readonly entries: readonly YamlEntry[]
}
export type YamlNode = YamlText | YamlNothing | YamlList | YamlMap

/** A place that a person is still to fill in: a lone `?`, or the `_` that the tool's own new files hold. */
export const isOpenPlace = (text: string): boolean => text === '?' || text === '_'
export const isUnfilled = (value: YamlNode): boolean => value.kind === 'text' && isOpenPlace(value.text)

/** Stands for a bare `?` while the text is parsed, so that a place left unfilled is no YAML key mark. */
const unfilled = '\uE000'

/**
 * The tree of the text from `from` to `to`, or null when it is unusable (reported). An empty block is an empty map.
 * Keys written twice are reported and the first one counts.
 */
export function readYamlTree(text: string, from: number, to: number, report: Report): YamlMap | null {
  const block = markUnfilled(text.slice(from, to))
  if (reportHardSpaces(block, from, report)) return null
  let events: Event[]
  try {
    events = parseEvents(block, { maxDepth: limits.blockDepth })
  } catch (problem) {
    if (!(problem instanceof YAMLException)) throw problem
    const at = problem.mark?.position ?? 0
    const reason = plainReason(problem.reason, block, at)
    const range = { start: from + reason.range.start, end: from + reason.range.end }
    report.error('block-form', range, reason.message, {
      expected: reason.expected,
      fix: reason.fix && shifted(reason.fix, from),
      advice: reason.advice,
    })
    return null
  }
  const refused = firstRefused(events, block)
  if (refused) {
    const range = { start: from + refused.start, end: from + refused.end }
    report.error(refused.code, range, refused.message, {
      expected: 'plain text, lists and keys',
      advice: refused.advice,
    })
    return null
  }
  const tree = compose(events, block, from, report)
  if (!tree || !isWithinLimits(tree, report)) return null
  if (block.includes('- #')) reportLostLines(events, block, from, report)
  return tree
}

/** Whether each text and each list is of a size that a person may write; the first that is not is told of. */
function isWithinLimits(node: YamlNode, report: Report): boolean {
  switch (node.kind) {
    case 'nothing':
      return true
    case 'text':
      return isShortEnough(node, report)
    case 'list':
      return (
        isFewEnough(node, node.items.length, report) &&
        node.items.every((item) => isWithinLimits(item, report))
      )
    case 'map':
      return (
        isFewEnough(node, node.entries.length, report) &&
        node.entries.every(({ key, value }) => isShortEnough(key, report) && isWithinLimits(value, report))
      )
  }
}

function isShortEnough(node: YamlText, report: Report): boolean {
  if (node.text.length <= limits.text) return true
  report.error('too-long', node, `This text has ${node.text.length} letters.`, {
    expected: `at most ${limits.text} letters`,
    advice: 'shorten it; long notes go below the second line of ---',
  })
  return false
}

function isFewEnough(node: YamlNode, count: number, report: Report): boolean {
  if (count <= limits.entries) return true
  report.error('too-many', node, `${count} entries are together here.`, {
    expected: `at most ${limits.entries}`,
    advice: 'remove what does not belong here',
  })
  return false
}

/** Lines of a list of which nothing is left, since they begin with `#` and a word: `- #2 nail hole, toe, 1`. */
function reportLostLines(events: readonly Event[], block: string, from: number, report: Report): void {
  const long = events.filter(
    (event) => event.type === EVENT_ID.SCALAR && event.style >= SCALAR_STYLE.LITERAL_BLOCK,
  ) as readonly Extract<Event, { type: typeof EVENT_ID.SCALAR }>[]
  let next = 0
  for (const match of block.matchAll(/^ *(?:- +)+(#[^\s#].*)$/gm)) {
    const end = match.index + match[0].length
    const start = end - (match[1] ?? '').length
    while ((long[next]?.valueEnd ?? Infinity) <= start) next++
    if ((long[next]?.valueStart ?? Infinity) <= start) continue
    report.warning(
      'words-cut',
      { start: from + start, end: from + end },
      'A line that begins with # is a remark, so nothing of it is read.',
      { expected: 'a line that begins with a word', advice: 'begin it with a word, or put it in quotes' },
    )
  }
}

/** Lines moved in with spaces that do not break, as phones type them; YAML takes those for letters. */
function reportHardSpaces(block: string, from: number, report: Report): boolean {
  const hard = /^ *[\u00a0\u2007\u202f\u3000][ \u00a0\u2007\u202f\u3000]*/gm
  const edits = [...block.matchAll(hard)].map((match) => ({
    start: from + match.index,
    end: from + match.index + match[0].length,
    text: ' '.repeat(match[0].length),
  }))
  const [first] = edits
  if (!first) return false
  report.error('block-form', first, 'This line is moved in with spaces of another kind.', {
    expected: 'plain spaces',
    fix: { words: 'replace them by plain spaces', edits },
  })
  return true
}

const shifted = (fix: { readonly words: string; readonly edits: readonly SpotEdit[] }, by: number): Fix => ({
  words: fix.words,
  edits: fix.edits.map(({ start, end, text }) => ({ start: by + start, end: by + end, text })),
})

const markUnfilled = (block: string): string =>
  block.includes('?')
    ? block.replace(/\?(?<=[:[,{-][ \t]*\?)(?=[ \t]*(?:[,\]}]|[ \t]#|$))/gm, unfilled)
    : block

const restore = (text: string): string => text.replaceAll(unfilled, '?')

interface Refused extends TextRange {
  readonly code: string
  readonly message: string
  readonly advice: string
}

/** Tags, anchors, aliases and a second document: none is needed here, and each is a way to do harm. */
function firstRefused(events: readonly Event[], block: string): Refused | null {
  let documents = 0
  for (const event of events) {
    if (event.type === EVENT_ID.POP) continue
    if (event.type === EVENT_ID.DOCUMENT) {
      documents++
      if (documents > 1) {
        return {
          code: 'block-form',
          start: block.indexOf('\n---') + 1,
          end: block.indexOf('\n---') + 4,
          message: 'A second block begins here.',
          advice: 'keep one block between two lines of ---',
        }
      }
      if (event.directives.length > 0) {
        return {
          code: 'yaml-tag',
          start: 0,
          end: block.indexOf('\n'),
          message: 'Lines that begin with % are not allowed.',
          advice: 'remove the line',
        }
      }
      continue
    }
    if (event.type === EVENT_ID.ALIAS || event.anchorStart !== -1) {
      const word = block.slice(event.anchorStart, event.anchorEnd)
      const mark = event.type === EVENT_ID.ALIAS ? '*' : '&'
      return {
        code: 'yaml-alias',
        start: event.anchorStart - 1,
        end: event.anchorEnd,
        message: `${quote(mark + word)} is a reference to another place, and references are not allowed.`,
        advice: `if ${mark} belongs to the text, put the text in quotes; else write the value out`,
      }
    }
    if (event.tagStart !== -1) {
      return {
        code: 'yaml-tag',
        start: event.tagStart,
        end: event.tagEnd,
        message: `${quote(block.slice(event.tagStart, event.tagEnd))} is a tag, and tags are not allowed.`,
        advice: 'if ! belongs to the text, put the text in quotes; else remove the tag',
      }
    }
  }
  return null
}

/** Builds the tree. Events come in document order; a key is always followed by its value. */
function compose(events: readonly Event[], block: string, from: number, report: Report): YamlMap | null {
  let next = 1
  let lastEnd = 0

  function node(): YamlNode | null {
    const event = events[next++]
    if (!event) return null
    switch (event.type) {
      case EVENT_ID.SCALAR:
        return scalar(event)
      case EVENT_ID.SEQUENCE: {
        const items: YamlNode[] = []
        while (events[next]?.type !== EVENT_ID.POP) {
          const item = node()
          if (!item) return null
          items.push(item)
        }
        next++
        return { kind: 'list', items, start: from + event.start, end: closing(']') }
      }
      case EVENT_ID.MAPPING: {
        const entries: YamlEntry[] = []
        const seen = new Map<string, number>()
        while (events[next]?.type !== EVENT_ID.POP) {
          const key = node()
          const value = node()
          if (!key || !value) return null
          const name = plainKey(key)
          if (!name) continue
          const earlier = seen.get(name.text)
          if (earlier !== undefined) {
            keyTwice(name, entries, earlier, value)
            continue
          }
          seen.set(name.text, entries.length)
          entries.push({ key: name, value })
        }
        next++
        return { kind: 'map', entries, start: from + event.start, end: closing('}') }
      }
      default:
        return null
    }
  }

  function scalar(event: Extract<Event, { type: typeof EVENT_ID.SCALAR }>): YamlText | YamlNothing {
    if (event.valueStart === -1) {
      return { kind: 'nothing', said: false, start: from + lastEnd, end: from + lastEnd + 1 }
    }
    lastEnd = event.valueEnd
    const range = { start: from + event.valueStart, end: from + event.valueEnd }
    const text = restore(getScalarValue(block, event))
    if (event.style === SCALAR_STYLE.PLAIN && (text === '' || text === '~' || text === 'null')) {
      return { kind: 'nothing', said: true, ...range }
    }
    const verbatim = text.length === event.valueEnd - event.valueStart
    const quoted = event.style === SCALAR_STYLE.DOUBLE_QUOTED || event.style === SCALAR_STYLE.SINGLE_QUOTED
    return { kind: 'text', text, verbatim, quoted, cut: cutAfter(event), ...range }
  }

  /** The first value counts, unless there is nothing: then that line is the one too many. */
  function keyTwice(name: YamlText, entries: YamlEntry[], index: number, value: YamlNode): void {
    const first = entries[index]
    const isEmpty = first?.value.kind === 'nothing' && !first.value.said
    const help = { expected: 'each key once', advice: 'put both together, or remove one' }
    const message = `${quote(name.text)} is written twice here.`
    if (!first || !isEmpty) {
      report.error('key-twice', name, message, help)
      return
    }
    entries[index] = { key: name, value }
    const key = first.key.start - from
    const indent = depthOf(block, key)
    const start = from + key - indent
    const line = `${name.text}:`
    const rest = /[ \t]*\n/y
    rest.lastIndex = key + line.length
    const isLine =
      block.startsWith(line, key) && (key === indent || block[key - indent - 1] === '\n') && rest.test(block)
    const end = from + rest.lastIndex
    report.error('key-twice', first.key, message, {
      expected: help.expected,
      ...(isLine ? { fix: { words: 'remove this line', edits: [{ start, end, text: '' }] } } : help),
    })
  }

  /**
   * What a `#` cuts off a plain text. One that stands apart, after two spaces or more, is a remark as the tool's own
   * files write it; after a single space it was most likely meant as part of the text: `Pick out LF #2 daily`.
   */
  function cutAfter(event: Extract<Event, { type: typeof EVENT_ID.SCALAR }>): TextRange | null {
    const end = event.valueEnd
    if (event.style !== SCALAR_STYLE.PLAIN || !/^[ \t]#/.test(block.slice(end, end + 2))) return null
    const lineEnd = block.indexOf('\n', end)
    return { start: from + end + 1, end: from + (lineEnd === -1 ? block.length : lineEnd) }
  }

  /** End of a collection: its closing bracket when that follows its last value, else the end of that value. */
  function closing(bracket: string): number {
    const rest = /^["']?[\s,]*/.exec(block.slice(lastEnd, lastEnd + 200))?.[0].length ?? 0
    if (block[lastEnd + rest] === bracket) lastEnd += rest + 1
    return from + lastEnd
  }

  function plainKey(key: YamlNode): YamlText | null {
    if (key.kind !== 'text') {
      report.error('key-form', key, 'A key must be plain text.', { expected: 'a word, then a colon' })
      return null
    }
    if (reserved.has(key.text)) {
      report.error('key-reserved', key, `${quote(key.text)} cannot be used as a key.`, {
        advice: 'remove it or rename it',
      })
      return null
    }
    return key
  }

  if (events.length === 0) return { kind: 'map', entries: [], start: from, end: from }
  const root = node()
  if (root?.kind === 'map') return root
  if (root === null || root.kind === 'nothing') return { kind: 'map', entries: [], start: from, end: from }
  report.error('block-form', root, 'The block between the --- lines holds no keys.', {
    expected: 'lines of `key: value`',
  })
  return null
}

/** How many spaces stand right before a place. */
function depthOf(block: string, at: number): number {
  let start = at
  while (block[start - 1] === ' ') start--
  return at - start
}

/** Words with a meaning in the language this program is written in; as keys they serve nobody. */
const reserved = new Set(['__proto__', 'constructor', 'prototype'])
