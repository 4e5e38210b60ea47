/** HEIC, which many telephones save by default: decoded by libheif, since sharp comes without that codec. */
import type { Refusal } from './refusal.ts'

export interface Decoded {
  readonly width: number
  readonly height: number
  /** Four bytes a pixel, upright. */
  readonly data: Uint8ClampedArray
}

/** @throws where it is broken */
export async function decodedHeic(bytes: Uint8Array, mostPixels: number): Promise<Decoded | Refusal> {
  const { default: decode } = await import('heic-decode')
  return silently(async () => {
    const pictures = await decode.all({ buffer: bytes })
    try {
      const [first] = pictures
      if (!first) throw new Error('no picture inside')
      const { width, height } = first
      if (width * height > mostPixels) return { refusal: 'too many pixels', width, height }
      const { data } = await first.decode()
      return { width, height, data }
    } finally {
      pictures.dispose()
    }
  })
}

/** libheif tells the console of what it throws as well, which would stand between the lines of a report. */
async function silently<T>(work: () => Promise<T>): Promise<T> {
  const { log } = console
  console.log = () => {}
  try {
    return await work()
  } finally {
    console.log = log
  }
}
