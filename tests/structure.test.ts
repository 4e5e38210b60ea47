/** The plan of the program: which room may import from which, and no circles. Types count as imports too. */
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, posix } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'

const source = fileURLToPath(new URL('../src', import.meta.url))

/**
 * From the ground up: a room imports from itself and from floors above it in this list, never from another room of its
 * own floor. A folder without a line of its own belongs to the room round it. Add a room here when you add a folder.
 */
const floors: readonly (readonly string[])[] = [
  ['hoof'],
  ['casebook'],
  ['trend'],
  ['identity'],
  ['pages/words'],
  ['pages/shared'],
  ['pages/practice', 'pages/owner', 'pages/portfolio', 'pages/mark', 'pages/starter', 'pages'],
  // What a browser may have: no disk and no HTML.
  ['render', 'library-browser.ts'],
  // What is below uses all of the above and has no order yet; see `circlesLeft`.
  ['publish', 'commands', 'library.ts', 'cli.ts'],
]

/** Rooms of the last floor may import from each other. */
const openFloor = floors.length - 1

/** Circles that are known and are to go; nothing may be added. */
const circlesLeft = {
  files: [
    'publish/for-others.ts publish/made.ts publish/portfolio-case.ts',
    'publish/order.ts publish/others.ts publish/pieces.ts',
  ],
  folders: ['publish publish/disk publish/locked publish/pictures'],
}

type Graph = ReadonlyMap<string, ReadonlySet<string>>

/** Each file of `src/` with the files that it imports, by path within `src/`. */
function importsOfFiles(): Graph {
  const files = readdirSync(source, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.ts') && !path.endsWith('.d.ts'))
    .map((path) => path.replaceAll('\\', '/'))
  return new Map(
    files.map((path) => [path, new Set(importedBy(readFileSync(join(source, path), 'utf8'), path))]),
  )
}

const importedBy = (text: string, path: string): readonly string[] =>
  [...text.matchAll(/\b(?:from|import)\s*\(?\s*'(\.[^']+)'/g)].map(([, to = '']) =>
    posix.join(posix.dirname(path), to),
  )

const rooms = floors.flat()

/** The room of a file: the longest of those that its path begins with. */
function roomOf(path: string): string {
  const [room] = rooms
    .filter((one) => path === one || path.startsWith(`${one}/`))
    .toSorted((a, b) => b.length - a.length)
  return room ?? `no room: ${path}`
}

const floorOf = (room: string): number => floors.findIndex((floor) => floor.includes(room))

/** The same graph between what `nameOf` makes of its files; what lies within one of them is left out. */
function between(files: Graph, nameOf: (path: string) => string): Graph {
  const graph = new Map<string, Set<string>>()
  for (const [from, targets] of files)
    for (const to of targets) {
      const [a, b] = [nameOf(from), nameOf(to)]
      if (a !== b) graph.set(a, (graph.get(a) ?? new Set()).add(b))
    }
  return graph
}

/** All that can be reached from a name by one step or more. */
function reachedFrom(graph: Graph, start: string): ReadonlySet<string> {
  const reached = new Set<string>()
  const open = [...(graph.get(start) ?? [])]
  for (let name = open.pop(); name !== undefined; name = open.pop()) {
    if (reached.has(name)) continue
    reached.add(name)
    open.push(...(graph.get(name) ?? []))
  }
  return reached
}

/** Every set of names that reach each other, each as its names in order with a space between. */
function circlesIn(graph: Graph): readonly string[] {
  const reached = new Map([...graph.keys()].map((name) => [name, reachedFrom(graph, name)]))
  const circles = [...graph.keys()]
    .filter((name) => reached.get(name)?.has(name))
    .map((name) =>
      [...(reached.get(name) ?? [])]
        .filter((other) => reached.get(other)?.has(name))
        .toSorted()
        .join(' '),
    )
  return [...new Set(circles)].toSorted()
}

const files = importsOfFiles()

describe('the rooms of the program', () => {
  it('hold every file', () => {
    expect([...files.keys()].filter((path) => roomOf(path).startsWith('no room'))).toEqual([])
    expect(rooms.filter((room) => ![...files.keys()].some((path) => roomOf(path) === room))).toEqual([])
  })

  it('import from above alone', () => {
    const wrong: string[] = []
    for (const [from, targets] of files)
      for (const to of targets) {
        const [room, other] = [roomOf(from), roomOf(to)]
        const [floor, otherFloor] = [floorOf(room), floorOf(other)]
        const isOpen = floor === openFloor && otherFloor === openFloor
        if (room !== other && otherFloor >= floor && !isOpen) wrong.push(`${from} imports ${to}`)
      }
    expect(wrong).toEqual([])
  })

  it('import files that exist', () => {
    const missing = [...files].flatMap(([from, targets]) =>
      [...targets].filter((to) => !files.has(to) && !to.endsWith('.d.ts')).map((to) => `${from}: ${to}`),
    )
    expect(missing).toEqual([])
  })
})

describe('circles', () => {
  it('are none between files', () => {
    expect(circlesIn(files)).toEqual(circlesLeft.files)
  })

  it('are none between rooms', () => {
    expect(circlesIn(between(files, roomOf))).toEqual([])
  })

  it('are none between the folders of the last floor', () => {
    const last = new Map([...files].filter(([path]) => floorOf(roomOf(path)) === openFloor))
    expect(circlesIn(between(last, (path) => dirname(path)))).toEqual(circlesLeft.folders)
  })

  it('are found by this test', () => {
    const graph = new Map([
      ['a', new Set(['b'])],
      ['b', new Set(['c'])],
      ['c', new Set(['b'])],
    ])
    expect(circlesIn(graph)).toEqual(['b c'])
    expect(importedBy("import type { A } from '../a/b.ts'\nconst c = import('./c.ts')", 'x/y.ts')).toEqual([
      'a/b.ts',
      'x/c.ts',
    ])
  })
})
