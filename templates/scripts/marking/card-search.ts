/** The card looked for in the picture as the browser shows it. */
import { type CardSearch, type FullPicture, findCard, searchedSide } from '../../../src/card/find-card.ts'
import { greyOf } from '../../../src/card/grey.ts'

/** @param full size of the upright picture that points count in; null where the browser lends no pixels */
export function cardIn(picture: HTMLImageElement, full: FullPicture): CardSearch | null {
  const share = Math.min(1, searchedSide / Math.max(picture.naturalWidth, picture.naturalHeight))
  const canvas = document.createElement('canvas')
  canvas.width = Math.round(picture.naturalWidth * share)
  canvas.height = Math.round(picture.naturalHeight * share)
  const context = canvas.getContext('2d', { willReadFrequently: true })
  if (context === null) return null
  context.imageSmoothingQuality = 'high'
  context.drawImage(picture, 0, 0, canvas.width, canvas.height)
  const { data } = context.getImageData(0, 0, canvas.width, canvas.height)
  return findCard(greyOf(data, { width: canvas.width, height: canvas.height, channels: 4 }), full)
}
