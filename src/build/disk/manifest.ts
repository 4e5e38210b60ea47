/** Which files of the site are the tool's own. Only those are ever replaced or removed. */
import { join } from 'node:path'
import { UserError } from './errors.ts'
import type { Files } from './files.ts'
import { placeIn } from './staging.ts'

/** Name of the list of the tool's own files, in the site's own folder. */
export const manifestFile = '.made.json'

/** Path within the site to hash of the bytes that the tool wrote there. */
export type Manifest = ReadonlyMap<string, string>

/** A wanted file and who wants it there, in words. */
export interface Claim {
  readonly path: string
  readonly by: string
}

/**
 * The list of the tool's own files in a site; empty when there is none.
 * @throws UserError when the list cannot be understood: without it no file may be replaced
 */
export function readManifest(files: Files, site: string): Manifest {
  const path = join(site, manifestFile)
  const bytes = files.read(path)
  if (bytes === null) return new Map()
  try {
    const written: { files: Record<string, string> } = JSON.parse(new TextDecoder().decode(bytes))
    return new Map(Object.entries(written.files))
  } catch {
    throw new UserError(
      `${path} cannot be understood, so it is not known which files here are growdown's. ` +
        'Move the built folders away, delete that file and build again.',
    )
  }
}

/** The list as it is written: sorted, the same for the same files. */
export function printManifest(manifest: Manifest): string {
  const sorted = [...manifest].sort(([a], [b]) => (a < b ? -1 : 1))
  return `${JSON.stringify({ version: 1, files: Object.fromEntries(sorted) }, null, 1)}\n`
}

/**
 * No two may want one place, also where a disk takes upper and lower case for the same.
 * @throws UserError that names both
 */
export function refuseClashes(claims: readonly Claim[]): void {
  const taken = new Map<string, Claim>()
  for (const claim of claims) {
    const name = claim.path.normalize('NFC').toLowerCase()
    const other = taken.get(name)
    if (other) throw clash(other, claim)
    taken.set(name, claim)
  }
}

const clash = (a: Claim, b: Claim) =>
  new UserError(
    `Two pages want the same place: ${a.path} (${a.by}) and ${b.path} (${b.by}). Rename one of the two; nothing was published.`,
  )

/** `a`, `a/b` of `a/b/c.html`. */
export const foldersOf = (path: string): readonly string[] => {
  const segments = path.split('/').slice(0, -1)
  return segments.map((_, index) => segments.slice(0, index + 1).join('/'))
}

/**
 * Nothing that the tool did not write may stand where a file is to go.
 * @throws UserError that names what stands there
 */
export function refuseForeign(
  files: Files,
  site: string,
  manifest: Manifest,
  paths: readonly string[],
): void {
  const absent = new Set<string>()
  for (const folder of new Set(paths.flatMap(foldersOf))) {
    const seen = files.stat(placeIn(site, folder))
    if (seen === null) absent.add(folder)
    else if (seen.kind !== 'folder') throw inTheWay(placeIn(site, folder), seen.kind)
  }
  for (const path of paths.filter((each) => !absent.has(each.slice(0, each.lastIndexOf('/'))))) {
    const place = placeIn(site, path)
    const seen = files.stat(place)
    if (seen !== null && (seen.kind !== 'file' || !manifest.has(path))) throw inTheWay(place, seen.kind)
  }
}

const inTheWay = (place: string, kind: string) =>
  new UserError(
    `${place} is a ${kind === 'other' ? 'special file' : kind} that growdown did not write, and a page is to stand there. ` +
      'Move it away, or build elsewhere with --out; nothing was published.',
  )
