/** A picture in shades of grey, and what lies between its pixels. */

export interface Grey {
  readonly width: number
  readonly height: number
  /** Row by row, one byte a pixel. */
  readonly data: Uint8Array | Uint8ClampedArray
}

/** At half the size, each pixel the mean of four. */
export function halved({ width, height, data }: Grey): Grey {
  const [w, h] = [width >> 1, height >> 1]
  const half = new Uint8ClampedArray(w * h)
  for (let y = 0; y < h; y++) {
    let from = 2 * y * width
    for (let x = 0, to = y * w; x < w; x++, from += 2, to++)
      half[to] =
        ((data[from] ?? 0) +
          (data[from + 1] ?? 0) +
          (data[from + width] ?? 0) +
          (data[from + width + 1] ?? 0)) /
        4
  }
  return { width: w, height: h, data: half }
}

/** As the canvas has it: four bytes a pixel. */
export function rgbaOf({ width, height, data }: Grey): Uint8ClampedArray {
  const rgba = new Uint8ClampedArray(width * height * 4)
  for (let i = 0, to = 0; i < data.length; i++, to += 4) {
    rgba[to] = rgba[to + 1] = rgba[to + 2] = data[i] ?? 0
    rgba[to + 3] = 255
  }
  return rgba
}

/** @param channels bytes a pixel, of which the first three are red, green and blue */
export function greyOf(
  pixels: Uint8Array | Uint8ClampedArray,
  { width, height, channels }: { readonly width: number; readonly height: number; readonly channels: number },
): Grey {
  const data = new Uint8ClampedArray(width * height)
  for (let i = 0, from = 0; i < data.length; i++, from += channels)
    data[i] = 0.299 * (pixels[from] ?? 0) + 0.587 * (pixels[from + 1] ?? 0) + 0.114 * (pixels[from + 2] ?? 0)
  return { width, height, data }
}

/** Between four pixels, whose middles lie at halves; the edge goes on outside. */
export function shadeAt({ width, height, data }: Grey, x: number, y: number): number {
  const [cx, cy] = [
    Math.min(width - 1.001, Math.max(0, x - 0.5)),
    Math.min(height - 1.001, Math.max(0, y - 0.5)),
  ]
  const [left, top] = [Math.floor(cx), Math.floor(cy)]
  const [right, low] = [cx - left, cy - top]
  const at = top * width + left
  const upper = (data[at] ?? 0) * (1 - right) + (data[at + 1] ?? 0) * right
  const lower = (data[at + width] ?? 0) * (1 - right) + (data[at + width + 1] ?? 0) * right
  return upper * (1 - low) + lower * low
}
