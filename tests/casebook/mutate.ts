/** Case files as slips, bad copies, broken disks and bad will leave them: a file of ours with something done to it. */

/** Numbers from 0 up to 1, the same for the same seed (mulberry32). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
}

/** Most bytes of a file that is made: what is longer is cut. The longest of ours has 5 KiB. */
const mostBytes = 8 * 1024

const signs: readonly string[] = [
  ...[
    '---\n',
    '---',
    '--- ',
    '\n---\n',
    '...\n',
    '? ',
    '?',
    '- ',
    '- - ',
    ': ',
    ':',
    '[',
    ']',
    '{',
    '}',
    ', ',
    ',',
    '"',
    "'",
    '\\',
  ],
  ...[
    '&a ',
    '*a ',
    '!!x ',
    '!<x> ',
    '| ',
    '|\n',
    '>-\n',
    '%YAML 1.2\n',
    ' #',
    '#',
    '~',
    '_',
    '<<: ',
    '@',
    '`',
    '\t',
    '\r',
    '\r\n',
  ],
  ...[
    '\u00a0',
    '\u2028',
    '\u0085',
    '\u200b',
    '\ufeff',
    '\u202e',
    '\u0000',
    '\u0007',
    '\u001b[31m',
    '\ud83d\udc34',
    '\u0301',
    '\ufb03',
    '\u0130',
  ],
  ...[
    '## For the owner\n',
    '## For teaching\n',
    '## For the owners\n',
    '# ',
    '> ',
    '>',
    '- [ ] ',
    '1. ',
    '```\n',
    '~~~\n',
    '|a|b|\n|-|-|\n',
  ],
  ...[
    '**',
    '*',
    '__',
    '~~',
    '![',
    '](',
    '[^1]',
    '[^1]: ',
    '[a]: b\n',
    '<!--',
    '-->',
    '<div>',
    '&amp;',
    '&#0;',
    '===\n',
    '\\\n',
    'www.',
    'a@b.c ',
  ],
  ...[
    '0',
    '-1',
    '1e309',
    '99999999999999999999',
    '0x1F',
    '1/0',
    '98,5',
    '.',
    '2026-02-30',
    '0000-00-00',
    '9999-12-31',
    '31.12.1999',
    '3 5/8"',
  ],
  ...[
    '__proto__: x\n',
    'constructor: x\n',
    'toString',
    '../',
    '/',
    '\\x',
    'null',
    'true',
    'no',
    'LF',
    'all',
    'resolved',
    'in 5 weeks',
    '14.2 hh',
  ],
]

type Change = (bytes: Buffer, random: () => number) => Buffer

const among = (count: number, random: () => number): number => Math.floor(random() * count)
const oneOf = <T>(all: readonly T[], random: () => number): T => all[among(all.length, random)] as T

const spliced = (bytes: Buffer, start: number, removed: number, put: Uint8Array): Buffer =>
  Buffer.concat([bytes.subarray(0, start), put, bytes.subarray(start + removed)])

/** A stretch of up to so many bytes. */
function stretch(bytes: Buffer, most: number, random: () => number): { start: number; length: number } {
  const start = among(bytes.length + 1, random)
  return { start, length: Math.min(bytes.length - start, among(most + 1, random)) }
}

const onParts =
  (mark: RegExp, joint: string, change: (parts: string[], random: () => number) => string[]): Change =>
  (bytes, random) =>
    Buffer.from(change(bytes.toString('latin1').split(mark), random).join(joint), 'latin1')

const deleted = (parts: string[], random: () => number) =>
  parts.toSpliced(among(parts.length, random), 1 + among(3, random))
const doubled = (parts: string[], random: () => number) => {
  const at = among(parts.length, random)
  return parts.toSpliced(at, 0, ...parts.slice(at, at + 1 + among(3, random)))
}
const exchanged = (parts: string[], random: () => number) => {
  const [one, other] = [among(parts.length, random), among(parts.length, random)]
  return parts.with(one, parts[other] ?? '').with(other, parts[one] ?? '')
}
const repeated = (parts: string[], random: () => number) => {
  const at = among(parts.length, random)
  const times = 2 ** among(10, random)
  return parts.toSpliced(at, 0, ...Array<string>(times).fill(parts[at] ?? ''))
}

const changes: readonly Change[] = [
  // Single bits and bytes.
  (bytes, random) => {
    const copy = Buffer.from(bytes)
    const at = among(copy.length, random)
    if (copy.length > 0) copy[at] = (copy[at] ?? 0) ^ (1 << among(8, random))
    return copy
  },
  (bytes, random) => spliced(bytes, among(bytes.length + 1, random), 1, Buffer.of(among(256, random))),
  (bytes, random) =>
    spliced(
      bytes,
      among(bytes.length + 1, random),
      0,
      Buffer.from(Array.from({ length: 1 + among(6, random) }, () => among(256, random))),
    ),
  // Stretches: lost, doubled, moved, over and over, and the end of the file.
  (bytes, random) => {
    const { start, length } = stretch(bytes, 60, random)
    return spliced(bytes, start, length, Buffer.of())
  },
  (bytes, random) => {
    const { start, length } = stretch(bytes, 200, random)
    return spliced(bytes, start, 0, bytes.subarray(start, start + length))
  },
  (bytes, random) => {
    const { start, length } = stretch(bytes, 100, random)
    const moved = bytes.subarray(start, start + length)
    const rest = spliced(bytes, start, length, Buffer.of())
    return spliced(rest, among(rest.length + 1, random), 0, moved)
  },
  (bytes, random) => {
    const { start, length } = stretch(bytes, 12, random)
    const many = Array.from({ length: 2 ** among(12, random) }, () => bytes.subarray(start, start + length))
    return spliced(bytes, start, 0, Buffer.concat(many).subarray(0, mostBytes))
  },
  (bytes, random) => bytes.subarray(0, among(bytes.length + 1, random)),
  (bytes, random) => bytes.subarray(among(bytes.length + 1, random)),
  // Lines and words.
  ...['\n', ' '].flatMap((joint) =>
    [deleted, doubled, exchanged, repeated].map((change) => onParts(new RegExp(joint), joint, change)),
  ),
  onParts(/\n/, '\r\n', (parts) => parts),
  onParts(/\n/, '\n', (parts, random) => parts.with(among(parts.length, random), '')),
  onParts(/\n/, '\n', (parts, random) => {
    const at = among(parts.length, random)
    return parts.with(at, `${' '.repeat(among(9, random))}${(parts[at] ?? '').trimStart()}`)
  }),
  // Signs that mean something to YAML, to Markdown, to us or to a terminal: one, several, in place of others.
  ...[1, 1, 4].map(
    (most): Change =>
      (bytes, random) => {
        const put = Array.from({ length: 1 + among(most, random) }, () => oneOf(signs, random)).join('')
        return spliced(bytes, among(bytes.length + 1, random), among(3, random), Buffer.from(put))
      },
  ),
  (bytes, random) => {
    const put = oneOf(signs, random).repeat(2 ** among(12, random))
    return spliced(bytes, among(bytes.length + 1, random), 0, Buffer.from(put).subarray(0, mostBytes))
  },
  // A value of another kind.
  (bytes, random) => {
    const text = bytes.toString('latin1')
    const values = [...text.matchAll(/(?<=: ).*|\d+(?:\.\d+)?|(?<=[[,] ?)[^[\],\n]+/g)]
    const value = values[among(values.length, random)]
    if (value === undefined) return bytes
    return spliced(bytes, value.index, value[0].length, Buffer.from(oneOf(signs, random)))
  },
]

/** The file with one to four things done to it. */
export function mutated(file: Uint8Array, random: () => number): Uint8Array {
  let bytes: Buffer = Buffer.from(file)
  for (let count = 1 + among(4, random); count > 0; count--) bytes = oneOf(changes, random)(bytes, random)
  return bytes.subarray(0, mostBytes)
}
