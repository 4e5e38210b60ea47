/** A camera's picture made small enough to be sent from a yard: upright, with no place and no other note of the camera. */

/** Longest side, pixels. */
export const longest = 2000
const quality = 0.85

/**
 * Drawn upright on a canvas and written anew as JPEG: whatever the file told besides its pixels stays behind.
 * @returns null where the browser cannot read it as a picture
 */
export async function scaledPicture(file: Blob): Promise<Uint8Array<ArrayBuffer> | null> {
  const address = URL.createObjectURL(file)
  const canvas = document.createElement('canvas')
  try {
    const image = new Image()
    image.src = address
    await image.decode()
    const share = Math.min(1, longest / Math.max(image.naturalWidth, image.naturalHeight))
    canvas.width = Math.round(image.naturalWidth * share)
    canvas.height = Math.round(image.naturalHeight * share)
    const context = canvas.getContext('2d')
    if (context === null) return null
    context.imageSmoothingQuality = 'high'
    context.drawImage(image, 0, 0, canvas.width, canvas.height)
    const jpeg = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', quality))
    return jpeg === null ? null : new Uint8Array(await jpeg.arrayBuffer())
  } catch {
    return null
  } finally {
    // The memory of a large picture is given back before the next one comes.
    canvas.width = 0
    URL.revokeObjectURL(address)
  }
}
