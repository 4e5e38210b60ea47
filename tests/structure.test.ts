/** The plan of `src/`: a line of rooms, each importing only from those above it, and no circles. */
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path/posix'
import { describe, expect, it } from 'vitest'

/** From the trade to the command line. */
const rooms = [
  ...['hoof', 'casebook', 'trend', 'spoken', 'identity', 'pages', 'render'],
  ...['build', 'pictures', 'leaks', 'editions', 'apps', 'commands'],
]

/** Still to be mended, and then to be taken out of these lists. */
const knownCircles = [
  [
    'pages/shared/format.ts',
    ...['caution-words.ts', 'en/assessment.ts', 'en/cautions.ts', 'index.ts'].map(
      (name) => `pages/words/${name}`,
    ),
  ],
]
const knownFolderCircles = [
  ['casebook', 'casebook/plausibility'],
  ['pages/owner', 'pages/practice'],
  ['pages/shared', 'pages/words', 'pages/words/en'],
  ['render', 'render/charts', 'render/drawings'],
  ['trend', 'trend/cautions'],
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

const roomOf = (path: string) => path.split('/')[0] ?? ''

describe('the files of src/', () => {
  it('are found with what they import', () => {
    expect(files.length).toBeGreaterThan(200)
    expect(byFile.get('cli.ts')).toContain('commands/build.ts')
    expect(byFile.get('commands/build.ts')).toContain('apps/site/build-site.ts')
    const missing = [...byFile].flatMap(([path, imports]) =>
      [...imports]
        .filter((other) => !files.includes(other) && !other.endsWith('.d.ts'))
        .map((other) => `${path}: ${other}`),
    )
    expect(missing).toEqual([])
  })

  it('stand in a known room each', () => {
    expect(files.filter((path) => path.includes('/') && !rooms.includes(roomOf(path)))).toEqual([])
  })

  it('import only from their own room and those above it', () => {
    const upward = [...byFile].flatMap(([path, imports]) =>
      [...imports]
        .filter((other) => path.includes('/') && rooms.indexOf(roomOf(other)) > rooms.indexOf(roomOf(path)))
        .map((other) => `${path} imports ${other}`),
    )
    expect(upward).toEqual([])
  })

  it('import one another in no circle', () => {
    expect(circlesOf(byFile).filter((circle) => !isIn(knownCircles, circle))).toEqual([])
  })
})

it('folders import one another in no circle', () => {
  expect(circlesOf(byFolder()).filter((circle) => !isIn(knownFolderCircles, circle))).toEqual([])
})

it('a circle is found where there is one', () => {
  const graph = new Map(
    Object.entries({ a: ['b'], b: ['c'], c: ['b', 'd'], d: [] }).map(([k, to]) => [k, new Set(to)]),
  )
  expect(circlesOf(graph)).toEqual([['b', 'c']])
})
