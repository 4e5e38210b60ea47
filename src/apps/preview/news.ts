/**
 * What open pages are told: to load again, and what is wrong with the casebook. Each page knows of which build it is; one
 * that was read just before a newer build, and listens only after it, is told at once.
 */
import { randomBytes } from 'node:crypto'
import type { ServerResponse } from 'node:http'
import type { Diagnostic } from '../../casebook/diagnostic.ts'

/** Something wrong, or likely so, as the page shows it. */
export interface ShownProblem extends Pick<Diagnostic, 'level' | 'message' | 'expected' | 'fix' | 'advice'> {
  /** `juno/2026-03-14.md:3:5`. */
  readonly place: string
}

/** All that a page is told of problems. */
export interface ShownProblems {
  readonly errors: number
  readonly warnings: number
  /** Sentences and photographs that wait for approval before they leave. */
  readonly waiting: number
  /** Errors first; the first ones of very many. */
  readonly first: readonly ShownProblem[]
}

export interface News {
  /** Names the build that pages read from now on are of. */
  build(): string
  /** Tells this page from now on; at once where it is of another build. A page that names none is told of the next one. */
  listen(page: ServerResponse, build: string | null): void
  /** The problems stay until the next build. Where anything changed, open pages load again. */
  rebuilt(problems: readonly ShownProblem[], changed: boolean, waiting: number): void
  close(): void
}

/** Pages that listen at one time; the oldest goes, and comes again by itself. */
const mostListening = 24

/** Problems that are shown; nobody reads more before mending some. */
const mostShown = 100

/** Letters of one text of a problem. */
const mostLetters = 600

/** Bytes that wait for a page that does not take them. */
const mostWaiting = 512 * 1024

export function openNews(): News {
  // Another process counts from one as well.
  const process = randomBytes(6).toString('base64url')
  let count = 0
  const build = () => `${process}-${count}`
  const listening = new Set<ServerResponse>()
  let problems = shownOf([], 0)

  const send = (to: Iterable<ServerResponse>, event: string, data: unknown) => {
    for (const page of to) {
      if (page.writableLength > mostWaiting) page.destroy()
      else page.write(`event: ${event}\ndata: ${JSON.stringify(data)}\n\n`)
    }
  }
  return {
    build,
    listen: (page, of) => {
      // Nothing may come for hours.
      page.socket?.setTimeout(0)
      for (const oldest of [...listening].slice(0, -(mostListening - 1))) oldest.end()
      listening.add(page)
      page.on('close', () => listening.delete(page))
      send([page], 'problems', problems)
      if (of !== null && of !== build()) send([page], 'reload', null)
    },
    rebuilt: (found, changed, waiting) => {
      problems = shownOf(found, waiting)
      if (changed) count += 1
      send(listening, 'problems', problems)
      if (changed) send(listening, 'reload', null)
    },
    close: () => {
      for (const page of listening) page.end()
    },
  }
}

function shownOf(all: readonly ShownProblem[], waiting: number): ShownProblems {
  const errors = all.filter(({ level }) => level === 'error')
  const others = all.filter(({ level }) => level !== 'error')
  return {
    errors: errors.length,
    warnings: others.length,
    waiting,
    first: [...errors, ...others].slice(0, mostShown).map(shortened),
  }
}

const short = <T extends string | null>(text: T) =>
  text !== null && text.length > mostLetters ? `${text.slice(0, mostLetters)} …` : text

const shortened = ({ level, place, message, expected, fix, advice }: ShownProblem): ShownProblem => ({
  level,
  place: short(place) ?? '',
  message: short(message) ?? '',
  expected: short(expected),
  fix: short(fix),
  advice: short(advice),
})
