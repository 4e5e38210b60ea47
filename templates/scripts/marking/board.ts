/**
 * The picture under the finger: one finger or the mouse moves it, two fingers or the wheel size it, a tap says where. A
 * finger that moves never taps, so no swipe can move a point.
 */
import type { Point } from '../../../src/hoof/landmarks.ts'

export interface Board {
  /** Whether a tap is fine enough to set a point by. */
  readonly isFine: () => boolean
  /** Shows a place in the middle, as large as points are set at. */
  readonly look: (at: Point) => void
  /** Shows the whole picture. */
  readonly whole: () => void
  readonly zoom: (by: number) => void
  /** Called after each change of what is shown. */
  readonly onMove: (moved: () => void) => void
  readonly onTap: (tapped: (at: Point) => void) => void
  /** Where a point of the picture lies on the board, screen pixels. */
  readonly placeOf: (at: Point) => Point
}

/** Pixels of the screen that a pixel of the picture takes where points are set. */
const fine = 2.5
const largest = 12
/** A finger that moves less, screen pixels, and is lifted sooner, milliseconds, has tapped. */
const still = 9
const soon = 600

export function boardOf(
  element: HTMLElement,
  layer: HTMLElement,
  picture: { readonly width: number; readonly height: number },
): Board {
  const { width, height } = picture
  const box = () => element.getBoundingClientRect()
  /** Pixels of the screen to a pixel of the picture, and where its upper left corner lies on the board. */
  let [size, left, top] = [1, 0, 0]
  let moved = () => {}
  let tapped = (_: Point) => {}

  const fitting = () => Math.min(box().width / width, box().height / height)
  const fineSize = () => Math.max(fine, 2 * fitting())

  function show(): void {
    const { width: w, height: h } = box()
    size = Math.min(largest, Math.max(fitting(), size))
    // What is smaller than the board stands in its middle; what is larger leaves no edge bare beyond half the board.
    const held = (at: number, own: number, room: number) =>
      own <= room ? (room - own) / 2 : Math.min(room / 2, Math.max(room / 2 - own, at))
    left = held(left, width * size, w)
    top = held(top, height * size, h)
    layer.style.transform = `translate(${left}px, ${top}px) scale(${size})`
    moved()
  }

  function zoomAt(by: number, x: number, y: number): void {
    const next = Math.min(largest, Math.max(fitting(), size * by))
    left = x - ((x - left) * next) / size
    top = y - ((y - top) * next) / size
    size = next
    show()
  }

  const fingers = new Map<number, { x: number; y: number }>()
  let [travelled, began, most] = [0, 0, 0]
  element.addEventListener('pointerdown', (event) => {
    if (event.button !== 0 || (event.target as Element).closest('button')) return
    element.setPointerCapture(event.pointerId)
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY })
    if (fingers.size === 1) [travelled, began, most] = [0, event.timeStamp, 1]
    else most = fingers.size
  })
  element.addEventListener('pointermove', (event) => {
    const finger = fingers.get(event.pointerId)
    if (finger === undefined) return
    const [dx, dy] = [event.clientX - finger.x, event.clientY - finger.y]
    travelled += Math.hypot(dx, dy)
    const other = [...fingers].find(([id]) => id !== event.pointerId)?.[1]
    const { left: x0, top: y0 } = box()
    if (other) {
      const before = Math.hypot(finger.x - other.x, finger.y - other.y)
      const now = Math.hypot(event.clientX - other.x, event.clientY - other.y)
      left += dx / 2
      top += dy / 2
      if (before > 0)
        zoomAt(now / before, (event.clientX + other.x) / 2 - x0, (event.clientY + other.y) / 2 - y0)
    } else if (travelled > still) {
      left += dx
      top += dy
      show()
    }
    finger.x = event.clientX
    finger.y = event.clientY
  })
  const lift = (event: PointerEvent, isTap: boolean) => {
    if (!fingers.delete(event.pointerId) || fingers.size > 0) return
    if (!isTap || most > 1 || travelled > still || event.timeStamp - began > soon) return
    const { left: x0, top: y0 } = box()
    tapped([(event.clientX - x0 - left) / size, (event.clientY - y0 - top) / size])
  }
  element.addEventListener('pointerup', (event) => lift(event, true))
  element.addEventListener('pointercancel', (event) => lift(event, false))
  element.addEventListener(
    'wheel',
    (event) => {
      event.preventDefault()
      const { left: x0, top: y0 } = box()
      zoomAt(Math.exp(-event.deltaY / 300), event.clientX - x0, event.clientY - y0)
    },
    { passive: false },
  )
  new ResizeObserver(show).observe(element)

  return {
    isFine: () => size >= fine * 0.99,
    look: ([x, y]) => {
      const { width: w, height: h } = box()
      size = Math.max(size, fineSize())
      left = w / 2 - x * size
      top = h / 2 - y * size
      show()
    },
    whole: () => {
      size = 0
      show()
    },
    zoom: (by) => {
      const { width: w, height: h } = box()
      zoomAt(by, w / 2, h / 2)
    },
    onMove: (then) => {
      moved = then
    },
    onTap: (then) => {
      tapped = then
    },
    placeOf: ([x, y]) => [left + x * size, top + y * size],
  }
}
