/** `problems` of horse.md: what the case is about, as its lines say it, or in words of the practice's own. */
import { feet as allFeet, type Foot } from '../hoof/feet.ts'
import { findingAliases, places } from '../hoof/findings.ts'
import { derivedIds, measureIds } from '../hoof/measures.ts'
import { feetInWords } from './by-foot.ts'
import type { ParseContext, Reader } from './fields.ts'
import { findingNamed, gradeNamed, knownFindings, placeNamed } from './finding-words.ts'
import { grouped } from './grouped.ts'
import { limits } from './limits.ts'
import { measureNamed, spellingsOf } from './measure-names.ts'
import type { FollowedFeature, ProblemSubject, WrittenProblem } from './model.ts'
import { listOf, textUpTo } from './readers.ts'
import type { TextRange } from './report.ts'
import { holding, nearest, normal, quote } from './words.ts'
import type { YamlEntry } from './yaml-tree.ts'

/** A line as it stands, before it is known what the visits follow. */
export interface ProblemLine {
  readonly text: string
  readonly range: TextRange
}

const words = textUpTo(limits.problem)
const line: Reader<ProblemLine> = (value, context, name) => {
  const read = words(value, context, name)
  return read === undefined ? undefined : { text: read, range: value }
}
const list = listOf(line)

/** A list of lines, most important first. Feet with their lines below them are read as those lines. */
export const problemLines: Reader<readonly ProblemLine[]> = (value, context, name) => {
  const entries = value.kind === 'map' ? value.entries.slice(0, limits.problems + 1) : []
  const isByFoot = entries.length > 0 && entries.every(({ key }) => feetInKey(key.text))
  const read = isByFoot
    ? entries.flatMap((entry) => linesBelow(entry, context, name))
    : list(value, context, name)
  if (read === undefined || read.length <= limits.problems) return read
  context.report.error('too-long', value, `Problems has more than ${limits.problems} lines.`, {
    expected: 'what the case is about, a handful of lines',
    advice: 'keep the most important; notes stand below the second line of ---',
  })
  return undefined
}

const feetInKey = (key: string): boolean => key.length <= limits.name && feetSaid(key).rest === ''

const linesBelow = ({ key, value }: YamlEntry, context: ParseContext, name: string): ProblemLine[] =>
  (list(value, context, name) ?? []).map(({ text: words, range }) => ({
    text: `${key.text} ${words}`,
    range,
  }))

/** Each line with what it is about. A line that says again what another says is told of, and the first counts. */
export function problemsOf(
  lines: readonly ProblemLine[],
  followed: readonly FollowedFeature[],
  context: ParseContext,
): readonly WrittenProblem[] {
  if (lines.length === 0) return []
  const read = new Map<string, WrittenProblem>()
  const byName = grouped(followed, ({ what }) => nameKey(what, context.terms))
  for (const { text: written, range } of lines) {
    const { feet, words, rest } = feetSaid(written)
    const about = subjectOf(rest, feet ?? allFeet, byName, context)
    if (about.kind === 'words') reportDoubtful({ words, rest, followed: byName, range }, context)
    const problem = { feet: feet ?? allFeet, text: written, about }
    const same = JSON.stringify([problem.feet, about, about.kind === 'words' ? normal(rest) : null])
    if (read.has(same)) {
      context.report.warning('written-twice', range, `The problem ${quote(written)} is written twice.`, {
        expected: 'each problem once, the most important first',
        advice: 'remove the later line',
      })
    } else read.set(same, problem)
  }
  return [...read.values()]
}

interface Said {
  /** Null where no foot is named. */
  readonly feet: readonly Foot[] | null
  /** The feet as written. */
  readonly words: string
  readonly rest: string
}

/** Words that say no more than where. */
const fillers = new Set(['at', 'in', 'on', 'of', 'the'])
/** A line of more words is free words, or names its foot first. */
const mostWords = 12

/** The feet that a line names first, `RH heel balance`, or last, `thrush in LF`. */
function feetSaid(written: string): Said {
  const tokens = [...written.matchAll(/[^\s,:;/&+]+/g)].slice(0, mostWords + 1)
  const words = tokens.map(([token]) => token)
  const first = feetIn(words)
  const begin = tokens[first.count - 1]
  if (begin) {
    const end = begin.index + begin[0].length
    return { feet: first.feet, words: written.slice(0, end), rest: bare(written.slice(end)) }
  }
  for (let at = 1; at < words.length && words.length <= mostWords; at++) {
    const last = feetIn(words.slice(at))
    if (last.count === 0 || last.count < words.length - at) continue
    const start = tokens[at]?.index ?? 0
    return { feet: last.feet, words: written.slice(start), rest: withoutFiller(written.slice(0, start)) }
  }
  return { feet: null, words: '', rest: bare(written) }
}

const bare = (written: string): string => written.replace(/^[\s,:;.]+|[\s,:;.]+$/g, '')

function withoutFiller(written: string): string {
  const words = bare(written).split(/\s+/)
  while (words.length > 1 && fillers.has(normal(words.at(-1) ?? ''))) words.pop()
  return bare(words.join(' '))
}

/** Feet named one after the other from the first word on, and by how many words. */
function feetIn(words: readonly string[]): { readonly feet: readonly Foot[]; readonly count: number } {
  const named = new Set<Foot>()
  let count = 0
  for (;;) {
    const from = count > 0 && normal(words[count] ?? '') === 'and' ? count + 1 : count
    const [one, two] = words.slice(from, from + 2)
    const byTwo = two === undefined ? null : feetInWords(`${one} ${two}`)
    const byOne = one === undefined ? null : feetInWords(one)
    const found = byTwo ?? byOne
    if (!found) return { feet: allFeet.filter((foot) => named.has(foot)), count }
    for (const foot of found) named.add(foot)
    count = from + (byTwo ? 2 : 1)
  }
}

/** What the visits follow, by the key of its name. */
type FollowedByName = ReadonlyMap<string, readonly FollowedFeature[]>

function subjectOf(
  rest: string,
  feet: readonly Foot[],
  followed: FollowedByName,
  context: ParseContext,
): ProblemSubject {
  const measure = measureNamed(rest) ?? measureNamed(rest.replace(/s$/, ''))
  if (measure) return { kind: 'measure', measure }
  const { terms } = context
  const readings = whatAndWhere(rest)
  const growing = (on: readonly Foot[]): ProblemSubject | null => {
    for (const { what, place } of readings) {
      const found = followed
        .get(nameKey(what, terms))
        ?.findLast((one) => on.includes(one.foot) && (place === null || one.place === place))
      if (found) return { kind: 'grow-out', what: found.what, place }
    }
    return null
  }
  const here = growing(feet)
  if (here) return here
  for (const { what, place } of readings) {
    const name = findingNamed(what, terms)
    if (name) return { kind: 'finding', what: name, place }
  }
  return growing(allFeet) ?? { kind: 'words' }
}

/** One spelling for the name of what is followed, which is free, and for that of a finding. */
const nameKey = (name: string, terms: ParseContext['terms']): string =>
  findingNamed(name, terms) ?? normal(name).replace(/s$/, '')

interface WhatAndWhere {
  readonly what: string
  readonly place: string | null
}

/** Every way to part the words into a name and a place on the foot, with or without a comma. A grade at the end says nothing here. */
function whatAndWhere(rest: string): readonly WhatAndWhere[] {
  const parts = rest.split(',').map(normal)
  if (parts.length > 1 && gradeNamed(parts.at(-1) ?? '') !== null) parts.pop()
  const words = parts
    .join(' ')
    .split(' ')
    .filter((word) => !fillers.has(word))
  if (words.length > mostWords) return []
  const halves = words.slice(1).flatMap((_, index) => {
    const [one, other] = [words.slice(0, index + 1).join(' '), words.slice(index + 1).join(' ')]
    return [
      { what: one, place: placeNamed(other) },
      { what: other, place: placeNamed(one) },
    ].filter(({ place }) => place !== null)
  })
  return [{ what: words.join(' '), place: null }, ...halves]
}

interface FreeWords extends Pick<Said, 'words' | 'rest'> {
  readonly followed: FollowedByName
  readonly range: TextRange
}

const footWords = ['LF', 'RF', 'LH', 'RH', 'fores', 'hinds', 'all']

/** Free words may say anything; those that are nearly a foot, a measure or a finding were hardly meant to be free. */
function reportDoubtful({ words, rest, followed, range }: FreeWords, context: ParseContext): void {
  const { terms } = context
  const isKnown = (name: string) => subjectOf(name, allFeet, followed, context).kind !== 'words'
  const [first = '', ...others] = rest.split(/\s+/)
  const foot = nearest(first, footWords)
  if (words === '' && (foot !== null || /^[A-Z]{2}$/.test(first)) && isKnown(others.join(' '))) {
    context.report.warning(
      'foot-unknown',
      range,
      `${quote(first)} in the problem ${quote(rest)} is not a foot.`,
      {
        expected: 'LF, RF, LH, RH, fores, hinds or all, then a measure or a finding',
        fix: foot && [foot, ...others].join(' '),
      },
    )
    return
  }
  if (words === '' && placeNamed(rest) !== null) {
    context.report.warning('problem-place', range, `${quote(rest)} is a place on the foot, and no problem.`, {
      expected: 'a measure or a finding; in brackets a comma begins a new problem',
      advice: 'say what is there, or put the line that the place belongs to in quotes',
    })
    return
  }
  const names = [
    ...spellingsOf([...measureIds, ...derivedIds]),
    ...knownFindings(terms),
    ...Object.keys(findingAliases),
    ...[...followed.values()].flatMap(([one]) => one?.what ?? []),
  ]
  const [what = '', place] = rest.split(',').map((part) => part.trim())
  const meant = findingNamed(what, terms) ? what : nearest(what, names)
  const where = place === undefined || placeNamed(place) ? place : nearest(place, places)
  // A word out of a longer name may well be meant as it stands.
  if (!meant || where === null || (meant !== what && holding(what, [meant]).length > 0)) return
  const fix = [words, [meant, where].filter((part) => part !== undefined).join(', ')].join(' ').trim()
  context.report.warning('problem-unknown', range, `${quote(rest)} is neither a measure nor a finding.`, {
    expected: 'a measure or a finding of the page Measures and sources, or words of your own',
    fix,
  })
}
