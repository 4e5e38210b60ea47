/**
 * Slips of a tired writer, one a row: what was written, the code that names it, and what the likely fix makes of it, or
 * null where no fix can be sure. Every row is one slip in an otherwise sound casebook, so it must be told of once.
 */
import type { Files } from '../apply-fix.ts'

export interface Slip {
  /** What was written, in a line. */
  readonly name: string
  readonly files: Files
  readonly code: string
  /** The casebook once the fix is applied; null where none is given. */
  readonly fixed: Files | null
}

export const practice = (block = 'practice: Slow Hoof Practice\nowners: {abel: {name: Abel Moor}}') =>
  `---\n${block}\n---\n`
export const horse = (block = 'name: Juno\nowner: abel') => `---\n${block}\n---\n`
export const visitPath = 'juno/2026-02-16.md'
export const rest = 'stance: [toe-out, straight, toe-out, straight]'
export const visit = (block: string) => `---\n${block}\n${rest}\n---\n`
export const sound: Files = {
  'practice.md': practice(),
  'juno/horse.md': horse(),
  'juno/2026-01-05.md': visit('footing: hard'),
  'juno/photos/LF-side.jpg': 'x',
}

export const oneLine = (text: string) => text.replaceAll('\n', ' / ')

/** A slip in one file of the casebook. */
export const inFile =
  (path: string, of: (block: string) => string, others: Files = sound) =>
  (written: string, code: string, fixed: string | null = null): Slip => ({
    name: oneLine(written),
    files: { ...others, [path]: of(written) },
    code,
    fixed: fixed === null ? null : { ...others, [path]: of(fixed) },
  })

export const inVisit = inFile(visitPath, visit)
export const raw = inFile(visitPath, (text) => text)
export const inHorse = inFile('juno/horse.md', (line) => horse(`name: Juno\nowner: abel\n${line}`))
export const wholeHorse = inFile('juno/horse.md', horse)
export const inPractice = inFile('practice.md', (line) =>
  practice(`practice: Slow Hoof Practice\nowners: {abel: {name: Abel Moor}}\n${line}`),
)
export const wholePractice = inFile('practice.md', practice)
/** A practice that works in inches, or centimetres. */
export const inUnits = (units: string) =>
  inFile(visitPath, visit, {
    ...sound,
    'practice.md': practice(
      `practice: Slow Hoof Practice\nunits: ${units}\nowners: {abel: {name: Abel Moor}}`,
    ),
  })

export const row = (
  name: string,
  path: string,
  code: string,
  fixed: Files | null,
  text = visit('footing: soft'),
): Slip => ({
  name,
  files: { ...sound, [path]: text },
  code,
  fixed,
})
/** A file of that name beside the sound ones, and the name that it should have. */
export const named = (path: string, code: string, to: string | null, text = visit('footing: soft')): Slip =>
  row(path, path, code, to === null ? null : { ...sound, [to]: text }, text)

export const toe = (values: string, code: string, fixed: string | null = null, use = inVisit): Slip =>
  use(`before:\n  toe length: ${values}`, code, fixed === null ? null : `before:\n  toe length: ${fixed}`)
export const angle = (values: string, code: string, fixed: string | null = null): Slip =>
  inVisit(`before:\n  toe angle: ${values}`, code, fixed === null ? null : `before:\n  toe angle: ${fixed}`)
export const finding = (line: string, code: string, fixed: string | null = null): Slip =>
  inVisit(`findings:\n  LF:\n    - ${line}`, code, fixed === null ? null : `findings:\n  LF:\n    - ${fixed}`)
export const key = (line: string, code: string, fixed: string | null = null): Slip =>
  inVisit(line, code, fixed)
