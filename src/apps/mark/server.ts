/**
 * Marking pages, each under an address that holds a random token: of its own five files nothing is shown, and nothing
 * is written, to who does not know it.
 */
import { randomBytes } from 'node:crypto'
import { z } from 'zod'
import { UserError } from '../../build/disk/errors.ts'
import { type Landmarks, landmarkPoints } from '../../hoof/landmarks.ts'
import {
  type Answer,
  type Asked,
  inWords,
  type LocalSite,
  nothingHere,
  openLocalServer,
} from '../local-server.ts'

export interface MarkPage {
  readonly page: string
  readonly style: string
  readonly script: string
  /** JPEG. */
  readonly picture: Uint8Array
  /** Writes the points where they belong and says where; null where nothing may be written. Throws UserError. */
  readonly write: ((landmarks: Landmarks) => string) | null
}

export interface MarkingPages extends LocalSite {
  /**
   * Shows a page until newer ones push it out.
   * @returns its path, with the token
   */
  open(page: MarkPage): string
  show(asked: Pick<Asked, 'path'>): Answer
}

export interface MarkServer {
  /** With the token. */
  readonly url: string
  close(): Promise<void>
}

/** A page holds its picture in memory, and nobody marks many at once. */
const mostKept = 4

const tokenBytes = 18

/** @param port 0 takes any that is free @throws Error when the port is taken */
export async function serveMarking(shown: MarkPage, port: number): Promise<MarkServer> {
  const pages = markingPages('/')
  const path = pages.open(shown)
  const { origin, close } = await openLocalServer(pages, port)
  return { url: origin + path, close }
}

/** @param root path under which their addresses begin */
export function markingPages(root: string): MarkingPages {
  /** By token, the oldest first. */
  const kept = new Map<string, MarkPage>()
  /** What a path names, where it looks like that of a marking page. */
  const named = (path: string): { readonly page: MarkPage | undefined; readonly file: string } | null => {
    const match = path.startsWith(root) ? /^([\w-]{24})\/(.*)$/.exec(path.slice(root.length)) : null
    return match === null ? null : { page: kept.get(match[1] ?? ''), file: match[2] ?? '' }
  }
  return {
    open: (page) => {
      const token = randomBytes(tokenBytes).toString('base64url')
      kept.set(token, page)
      for (const oldest of [...kept.keys()].slice(0, -mostKept)) kept.delete(oldest)
      return `${root}${token}/`
    },
    show: ({ path }) => {
      const found = named(path)
      if (found === null) return nothingHere
      return found.page === undefined ? gone : partOf(found.page, found.file)
    },
    taker: (path) => {
      const found = named(path)
      if (found?.file !== 'write') return null
      const { page } = found
      if (page === undefined) return () => gone
      const { write } = page
      return write && ((json) => written(json, write))
    },
  }
}

const gone = inWords(
  404,
  'This marking page is open no more, since newer ones were opened. Copy the block, or open the picture again.',
)

const policy = {
  'content-security-policy':
    "default-src 'none'; img-src 'self'; style-src 'self'; script-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
}

function partOf({ page, style, script, picture }: MarkPage, file: string): Answer {
  const part = (type: string, body: string | Uint8Array): Answer => ({
    status: 200,
    type,
    body,
    headers: policy,
  })
  switch (file) {
    case '':
      return part('text/html; charset=utf-8', page)
    case 'mark.css':
      return part('text/css; charset=utf-8', style)
    case 'mark.js':
      return part('text/javascript; charset=utf-8', script)
    case 'picture.jpg':
      return part('image/jpeg', picture)
    default:
      return nothingHere
  }
}

function written(json: string, write: (landmarks: Landmarks) => string): Answer {
  const landmarks = landmarksIn(json)
  if (landmarks === null) return inWords(400, 'These are no points of a picture.')
  try {
    return inWords(200, write(landmarks))
  } catch (error) {
    return error instanceof UserError
      ? inWords(409, error.message)
      : inWords(500, `Nothing was written: ${String(error)}`)
  }
}

const pixel = z.number().min(0).max(1_000_000)
const point = z.tuple([pixel, pixel])
const line = z.tuple([point, point])
const nearer = z.number().min(-1_000).max(1_000)
const anywhere = z.number().min(-100_000).max(100_000)
/** A card may stand partly out of the picture. */
const corner = z.tuple([anywhere, anywhere])
const points = z.strictObject({
  scale: z
    .strictObject({
      from: point,
      to: point,
      length: z.number().positive().max(10_000),
      nearer: nearer.exactOptional(),
    })
    .nullable(),
  card: z
    .strictObject({
      corners: z.tuple([corner, corner, corner, corner]),
      width: z.number().positive().max(1_000),
      camera: z.tuple([anywhere, anywhere, z.number().positive().max(100_000)]).nullable(),
      nearer: nearer.nullable(),
    })
    .exactOptional(),
  cardTold: z.literal('none').exactOptional(),
  camera: z
    .union([
      z.enum(['block', 'yard', 'flat']),
      z.strictObject({ height: z.number().min(0).max(10_000), distance: z.number().min(100).max(100_000) }),
    ])
    .exactOptional(),
  lines: z.strictObject({ ground: line.exactOptional(), pastern: line.exactOptional() }),
  points: z.partialRecord(z.enum(landmarkPoints), point),
})

function landmarksIn(json: string): Landmarks | null {
  try {
    return points.parse(JSON.parse(json))
  } catch {
    return null
  }
}
