/** Reads a casebook of one horse, Juno, with the given visits. */
import type { Diagnostic } from '../../src/casebook/diagnostic.ts'
import type { Horse, Visit } from '../../src/casebook/model.ts'
import { readCasebook } from '../../src/casebook/read.ts'
import { memoryFolder } from './memory-folder.ts'

export const practiceText = `---
practice: Slow Hoof Practice
owners: {abel: {name: Abel Moor}}
terms: {chalk toe: crumbling horn}
---
`
export const horseText = '---\nname: Juno\nowner: abel\n---\n'

export interface OneRead {
  readonly horse: Horse | null
  readonly diagnostics: readonly Diagnostic[]
}

export interface OneHorse {
  readonly practice?: string
  readonly horse?: string
  /** File name without ending to text. */
  readonly visits?: Readonly<Record<string, string>>
  /** Further files, paths from the casebook's folder. */
  readonly files?: Readonly<Record<string, string | Uint8Array>>
  readonly links?: readonly string[]
  readonly asOf?: string
}

export function readOne(parts: OneHorse): OneRead {
  const files: Record<string, string | Uint8Array> = {
    'practice.md': parts.practice ?? practiceText,
    'juno/horse.md': parts.horse ?? horseText,
    ...parts.files,
  }
  for (const [name, text] of Object.entries(parts.visits ?? {})) files[`juno/${name}.md`] = text
  const read = readCasebook(memoryFolder(files, { links: parts.links ?? [] }), parts.asOf ?? '2026-06-01')
  return { horse: read.casebook?.horses[0] ?? null, diagnostics: read.diagnostics }
}

/** One visit of 2026-01-12 with the block given; its single visit and what was said of it. */
export function readVisitBlock(
  block: string,
  parts: OneHorse = {},
): OneRead & { readonly visit: Visit | null } {
  const read = readOne({ ...parts, visits: { '2026-01-12': `---\n${block}\n---\n`, ...parts.visits } })
  return { ...read, visit: read.horse?.visits[0] ?? null }
}

/** Code, line and message of each diagnostic. */
export const told = (read: OneRead): readonly string[] =>
  read.diagnostics.map((one) => `${one.code} ${one.file}:${one.line ?? ''} ${one.message}`)
