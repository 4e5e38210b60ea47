/** Text as it would stand in bytes that are no text: runs of letters, digits and signs, one or two bytes each. */

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
