/** Text as it would stand in bytes that are no text: runs of letters, digits and signs, one or two bytes each. */

export interface ByteRun {
  readonly text: string
  /** The byte at which it begins. */
  readonly at: number
}

/**
 * Runs of at least so many signs in a picture's own bytes: ASCII and UTF-8, and ASCII in two bytes a sign, either way
 * round. A walk over the bytes, since there are many.
 */
export function printableRuns(bytes: Uint8Array, shortest: number): readonly ByteRun[] {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const runs: ByteRun[] = []
  const take = (width: (at: number) => number, read: (from: number, to: number) => string, step: number) => {
    for (let at = 0; at < bytes.length; ) {
      let end = at
      for (let wide = width(end); wide > 0; wide = width(end)) end += wide
      if (end - at >= shortest * step) runs.push({ text: read(at, end), at })
      at = end + 1
    }
  }
  const isPlain = (byte = 0) => byte >= 0x20 && byte <= 0x7e
  const isMore = (byte = 0) => (byte & 0xc0) === 0x80
  const utf8 = (at: number): number => {
    const byte = bytes[at] ?? 0
    if (isPlain(byte)) return 1
    if (byte < 0xc2 || byte > 0xef || !isMore(bytes[at + 1])) return 0
    return byte < 0xe0 ? 2 : isMore(bytes[at + 2]) ? 3 : 0
  }
  take(utf8, (from, to) => buffer.toString('utf8', from, to), 1)
  const wide = (sign: 0 | 1) => (at: number) =>
    isPlain(bytes[at + sign]) && bytes[at + 1 - sign] === 0 && at + 1 < bytes.length ? 2 : 0
  for (const sign of [0, 1] as const) {
    take(wide(sign), (from, to) => buffer.toString('latin1', from, to).replaceAll('\0', ''), 2)
  }
  return runs
}

export interface ByteText {
  /** The runs, parted by line ends. */
  readonly text: string
  /** The byte at which a place of the text stands. */
  at(place: number): number
}

/** A shorter run holds no name. */
const shortestRun = 3

/** As UTF-8 or Latin-1, and as UTF-16 in both orders. */
export function printable(bytes: Uint8Array): readonly ByteText[] {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const readings = [runs(buffer.toString('latin1'), (place) => place)]
  if (buffer.some((byte) => byte >= 0xc2)) {
    const utf8 = buffer.toString('utf8')
    readings.push(runs(utf8, (place) => Buffer.byteLength(utf8.slice(0, place))))
  }
  if (buffer.includes(0)) {
    for (const from of [0, 1]) {
      const even = buffer.subarray(from, from + ((buffer.length - from) & ~1))
      readings.push(runs(even.toString('utf16le'), (place) => from + place * 2))
    }
  }
  return readings
}

function runs(text: string, at: (place: number) => number): ByteText {
  const places: number[] = []
  const starts: number[] = []
  let out = ''
  for (const match of text.matchAll(/[\p{L}\p{M}\p{N}\p{P}\p{S}\p{Cf} ]+/gu)) {
    if (match[0].length < shortestRun) continue
    starts.push(out.length)
    places.push(match.index)
    out += `${match[0]}\n\n`
  }
  return {
    text: out,
    at: (place) => {
      const run = starts.findLastIndex((start) => start <= place)
      return run === -1 ? 0 : at((places[run] ?? 0) + place - (starts[run] ?? 0))
    },
  }
}
