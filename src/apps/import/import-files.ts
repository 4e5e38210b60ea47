/** Files of a table into a casebook: new ones are added, those that the same import wrote and nobody changed are replaced. */
import { randomUUID } from 'node:crypto'
import { lstatSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { addFiles, type NewFile, refuseLinks } from '../../build/disk/add-files.ts'
import { asUserError, UserError } from '../../build/disk/errors.ts'
import type { CasebookFolder } from '../../casebook/folder.ts'
import { isFrom, originOf, withOrigin } from './origin.ts'

export interface ImportPlan {
  readonly add: readonly NewFile[]
  /** Written by an earlier import of the table and as it was then. */
  readonly replace: readonly (NewFile & { readonly before: string })[]
  /** Stand there already, word for word. */
  readonly same: readonly string[]
  /** Visits that are a person's, or another table's: never replaced. */
  readonly keep: readonly { readonly path: string; readonly why: string }[]
  /** Written by an earlier import of the table, which no longer has them. */
  readonly gone: readonly string[]
}

/**
 * What importing would do. A horse.md that stands there is a person's to fill in, so it stays without a word.
 *
 * @param table name of the table, by which an import knows its own files again
 */
export function planImport(
  folder: string,
  casebook: CasebookFolder,
  files: readonly NewFile[],
  table: string,
): ImportPlan {
  const plan = {
    add: [] as NewFile[],
    replace: [] as (NewFile & { before: string })[],
    same: [] as string[],
    keep: [] as { path: string; why: string }[],
  }
  for (const { path, text } of files) {
    const file = { path, text: withOrigin(text, table) }
    const before = textThere(folder, path)
    const origin = before === null ? null : originOf(before)
    if (before === null) plan.add.push(file)
    else if (before === file.text) plan.same.push(path)
    else if (origin?.isUntouched && isFrom(origin, table)) plan.replace.push({ ...file, before })
    else if (!path.endsWith('/horse.md')) plan.keep.push({ path, why: whyKept(origin) })
  }
  return { ...plan, gone: goneFrom(casebook, new Set(files.map(({ path }) => path)), table) }
}

function whyKept(origin: ReturnType<typeof originOf>): string {
  if (!origin) return 'stands already and is no file of an import'
  return origin.isUntouched ? `was imported from ${origin.table}` : 'was changed since it was imported'
}

/** The text at a path of the casebook; null where there is nothing. */
function textThere(folder: string, path: string): string | null {
  refuseLinks(folder, path)
  const target = join(folder, ...path.split('/'))
  const stat = lstatSync(target, { throwIfNoEntry: false })
  if (!stat) return null
  if (!stat.isFile()) throw new UserError(`Nothing was written: ${path} is a link or no plain file.`)
  return readFileSync(target, 'utf8')
}

function goneFrom(casebook: CasebookFolder, paths: ReadonlySet<string>, table: string): readonly string[] {
  return casebook.list().flatMap(({ path, kind }) => {
    if (kind !== 'file' || paths.has(path) || !/^[^/]+\/\d[^/]*\.md$/.test(path)) return []
    const origin = originOf(new TextDecoder().decode(casebook.read(path)))
    return origin && isFrom(origin, table) ? [path] : []
  })
}

/** Does what was planned. Each file is whole at any time; an import that breaks off can be made again. */
export function carryOut(folder: string, plan: ImportPlan): void {
  const { kept } = addFiles(folder, plan.add)
  const [taken] = kept
  if (taken !== undefined)
    throw new UserError(`${taken} came to be there meanwhile and was left as it is. Import again.`)
  for (const { path, text, before } of plan.replace) {
    if (textThere(folder, path) !== before)
      throw new UserError(`${path} was changed meanwhile and was left as it is. Import again.`)
    const target = join(folder, ...path.split('/'))
    const partial = join(dirname(target), `.${basename(target)}.${randomUUID()}.new`)
    try {
      writeFileSync(partial, text, { flag: 'wx', flush: true, mode: lstatSync(target).mode })
      renameSync(partial, target)
    } catch (error) {
      rmSync(partial, { force: true })
      throw asUserError(error, path, 'written')
    }
  }
}
