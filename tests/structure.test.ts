/** The plan of `src/`: a line of rooms, each importing only from those above it, and no circles. */
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path/posix'
import { describe, expect, it } from 'vitest'

/**
 * From the trade to the command line. Rooms on one line do not know each other. A folder without a name of its own here
 * belongs to the room round it.
 */
const floors: readonly (readonly string[])[] = [
  ['hoof'],
  ['card'],
  ['casebook'],
  ['trend'],
  ['spoken'],
  ['yard'],
  ['identity'],
  ['pages/words'],
  ['pages/shared'],
  ['pages/practice', 'pages/owner', 'pages/portfolio', 'pages/mark', 'pages/starter', 'pages'],
  ['pages/yard'],
  // What a browser may have: no disk and no HTML.
  ['render', 'library-browser.ts'],
  ['build'],
  ['pictures'],
  ['leaks'],
  ['editions'],
  ['apps'],
  ['commands'],
  ['library.ts', 'cli.ts'],
]

/** A room and its own inner folders may lead to each other. */
const innerFolders = [
  ['casebook', 'casebook/plausibility'],
  [
    'pages/words',
    'pages/words/de',
    'pages/words/de/cautions',
    'pages/words/en',
    'pages/words/en/cautions',
    'pages/words/en/practice',
  ],
  ['render', 'render/charts', 'render/drawings'],
  ['trend', 'trend/cautions', 'trend/model'],
]

const isIn = (known: readonly (readonly string[])[], circle: readonly string[]) =>
  known.some((one) => circle.every((node) => one.includes(node)))

const files = readdirSync('src', { recursive: true, encoding: 'utf8' })
  .map((path) => path.replaceAll('\\', '/'))
  .filter((path) => path.endsWith('.ts') && !path.endsWith('.d.ts'))
  .sort()

/** Imports and re-exports, static, dynamic or of types alone, as paths below src/. */
function importsOf(path: string): readonly string[] {
  const text = readFileSync(join('src', path), 'utf8')
  const found = text.matchAll(/(?:\bfrom|\bimport\(|^import)\s*['"](\.[^'"]+\.ts)['"]/gm)
  return [...found].map(([, spec = '']) => normalize(join(dirname(path), spec)))
}

type Graph = ReadonlyMap<string, ReadonlySet<string>>

const byFile: Graph = new Map(files.map((path) => [path, new Set(importsOf(path))]))

/** The same by folder, imports within one left out. */
function byFolder(): Graph {
  const graph = new Map<string, Set<string>>()
  for (const [path, imports] of byFile) {
    const folder = dirname(path)
    const to = graph.get(folder) ?? new Set()
    graph.set(folder, to)
    for (const other of imports) if (dirname(other) !== folder) to.add(dirname(other))
  }
  return graph
}

/** Groups in which each leads to each other. */
function circlesOf(graph: Graph): readonly (readonly string[])[] {
  const reach = (from: string): ReadonlySet<string> => {
    const seen = new Set<string>()
    const open = [...(graph.get(from) ?? [])]
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      if (seen.has(next)) continue
      seen.add(next)
      open.push(...(graph.get(next) ?? []))
    }
    return seen
  }
  const reached = new Map([...graph.keys()].map((node) => [node, reach(node)]))
  const groups = [...graph.keys()]
    .filter((node) => reached.get(node)?.has(node))
    .map((node) =>
      [...graph.keys()].filter((other) => reached.get(node)?.has(other) && reached.get(other)?.has(node)),
    )
  return [...new Map(groups.map((group) => [group.join(), group])).values()]
}

/** The room of a file: the longest of those that its path begins with. */
const roomOf = (path: string): string =>
  floors
    .flat()
    .filter((room) => path === room || path.startsWith(`${room}/`))
    .toSorted((a, b) => b.length - a.length)[0] ?? `no room for ${path}`

const floorOf = (room: string): number => floors.findIndex((floor) => floor.includes(room))

/** The same by room. */
function byRoom(): Graph {
  const graph = new Map<string, Set<string>>()
  for (const [path, imports] of byFile) {
    const to = graph.get(roomOf(path)) ?? new Set()
    graph.set(roomOf(path), to)
    for (const other of imports) if (roomOf(other) !== roomOf(path)) to.add(roomOf(other))
  }
  return graph
}

describe('the files of src/', () => {
  it('are found with what they import', () => {
    expect(files.length).toBeGreaterThan(200)
    expect(byFile.get('commands/command-line.ts')).toContain('commands/build.ts')
    expect(byFile.get('commands/build.ts')).toContain('apps/site/build-site.ts')
    const missing = [...byFile].flatMap(([path, imports]) =>
      [...imports]
        .filter((other) => !files.includes(other) && !other.endsWith('.d.ts'))
        .map((other) => `${path}: ${other}`),
    )
    expect(missing).toEqual([])
  })

  it('stand in a known room each', () => {
    expect(files.map(roomOf).filter((room) => room.startsWith('no room'))).toEqual([])
  })

  it('import only from their own room and those above it', () => {
    const upward = [...byRoom()].flatMap(([room, others]) =>
      [...others]
        .filter((other) => floorOf(other) >= floorOf(room))
        .map((other) => `${room} imports ${other}`),
    )
    expect(upward).toEqual([])
  })

  it('import one another in no circle', () => {
    expect(circlesOf(byFile)).toEqual([])
  })
})

it('folders import one another in no circle', () => {
  expect(circlesOf(byFolder()).filter((circle) => !isIn(innerFolders, circle))).toEqual([])
})

it('a circle is found where there is one', () => {
  const graph = new Map(
    Object.entries({ a: ['b'], b: ['c'], c: ['b', 'd'], d: [] }).map(([k, to]) => [k, new Set(to)]),
  )
  expect(circlesOf(graph)).toEqual([['b', 'c']])
})
