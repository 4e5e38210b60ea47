/** Spoken notes that a command is given: read, understood, and refused where they are too long. */
import { statSync } from 'node:fs'
import { basename, extname, resolve } from 'node:path'
import { limits } from '../casebook/limits.ts'
import type { Practice, Visit } from '../casebook/model.ts'
import type { PlainDate } from '../hoof/dates.ts'
import type { Known, NotesFormat, Understood } from '../spoken/index.ts'
import { utf8Text } from './arguments.ts'
import { type World, WrongUse } from './command.ts'

/** @throws WrongUse where no reader of case files would take the text */
export function refuseTooLong(text: string): void {
  const { length } = new TextEncoder().encode(text)
  if (length <= limits.fileBytes) return
  throw new WrongUse(
    `The notes are too long for one visit: its file would hold ${length} bytes, and one is read up to ${limits.fileBytes}.`,
  )
}

export interface Notes {
  readonly text: string
  readonly format: NotesFormat
}

const formats: Readonly<Record<string, NotesFormat>> = { '.txt': 'text', '.vtt': 'vtt', '.srt': 'srt' }

/** The notes, in the format that their name says. */
export function readNotes(name: string, world: World): Notes {
  const path = resolve(world.cwd, name)
  const stat = statSync(path, { throwIfNoEntry: false })
  if (!stat?.isFile()) throw new WrongUse(`There is no file ${name} here. Name the text of the spoken notes.`)
  const format = formats[extname(name).toLowerCase()]
  if (!format) {
    throw new WrongUse(
      `${basename(name)} is no text of spoken notes. Expected a file that ends in .txt, .vtt or .srt.`,
    )
  }
  if (stat.size > limits.fileBytes) {
    throw new WrongUse(
      `${basename(name)} holds ${stat.size} bytes; notes are read up to ${limits.fileBytes}.`,
    )
  }
  const refusal = `${basename(name)} is not UTF-8 text. Save it as UTF-8 and try again.`
  return { text: utf8Text(path, refusal), format }
}

/** What was said, with what was known when it was. */
export async function hearNotes(
  { text, format }: Notes,
  visits: readonly Visit[],
  practice: Practice,
  date: PlainDate,
): Promise<{ readonly known: Known; readonly understood: Understood }> {
  const { buildLexicon, knownBefore, understand } = await import('../spoken/index.ts')
  const known = knownBefore(visits, practice, date)
  return { known, understood: understand(text, known, buildLexicon(Object.keys(practice.terms)), format) }
}
