/**
 * Marking points on a picture: one after the other, by tap, mouse or keyboard, with a magnifier. The block for the case
 * file and the measured values follow every change; nothing leaves the page unless the person asks for it.
 */
import {
  type LandmarkPoint,
  type Landmarks,
  landmarkPoints,
  measureLandmarks,
  type Point,
} from '../../src/hoof/landmarks.ts'
import { parseLength } from '../../src/hoof/units.ts'
import { landmarkText } from '../../src/pages/mark/landmark-block.ts'
import type { MarkTask } from '../../src/pages/mark/mark-page.ts'

function part<T extends Element>(id: string): T {
  const found = document.querySelector<T>(`#${id}`)
  if (found === null) throw new Error(`the page has no ${id}`)
  return found
}

const task: MarkTask = JSON.parse(part('task').textContent ?? '')
const { steps, width, height, says } = task
const board = part<HTMLElement>('board')
const drawn = part<SVGSVGElement>('marks')
const loupe = part<HTMLCanvasElement>('loupe')
const lengthField = part<HTMLInputElement>('length')
const outcome = part('outcome')
const picture = board.querySelector('img')

const marks = new Map<string, Point>(Object.entries(task.marks))
/** The step that is being set; after the last one all are through. */
let current = 0

const fill = (text: string, values: Readonly<Record<string, string | number>>): string =>
  text.replace(/\{(\w+)\}/g, (_, name: string) => String(values[name] ?? ''))

const clamp = ([x, y]: Point): Point => [
  Math.min(width, Math.max(0, Math.round(x * 10) / 10)),
  Math.min(height, Math.max(0, Math.round(y * 10) / 10)),
]

/** Where the point of this step is or would start: where the last one was set, else in the middle. */
function here(): Point {
  const id = steps[current]?.id ?? ''
  const before = steps.slice(0, current).findLast((step) => marks.has(step.id))
  return marks.get(id) ?? (before && marks.get(before.id)) ?? [width / 2, height / 2]
}

function put(point: Point): void {
  const step = steps[current]
  if (step === undefined) return
  marks.set(step.id, clamp(point))
  show()
}

function go(to: number): void {
  current = Math.min(steps.length, Math.max(0, to))
  show()
}

/** What is marked so far as the case file has it. */
function landmarks(): Landmarks {
  const line = (name: string): readonly [Point, Point] | null => {
    const [from, to] = [marks.get(`${name} from`), marks.get(`${name} to`)]
    return from && to ? [from, to] : null
  }
  const [ground, pastern, scale] = [line('ground'), line('pastern'), line('scale')]
  const length = parseLength(lengthField.value, 'mm')
  const points: Partial<Record<LandmarkPoint, Point>> = {}
  for (const name of landmarkPoints) {
    const point = marks.get(name)
    if (point) points[name] = point
  }
  return {
    scale: scale && length && length.mm > 0 ? { from: scale[0], to: scale[1], length: length.mm } : null,
    lines: { ...(ground && { ground }), ...(pastern && { pastern }) },
    points,
  }
}

function show(): void {
  showStep()
  showMarks()
  showLoupe()
  showPoints()
  showResults()
}

function showStep(): void {
  const step = steps[current]
  part('step-count').textContent =
    step === undefined ? '' : fill(says.step, { step: current + 1, steps: steps.length })
  part('step-name').textContent = step?.name ?? says.done
  part('step-how').textContent = step?.how ?? ''
  const point = step && marks.get(step.id)
  part('status').textContent = point ? fill(says.at, { name: step.name, x: point[0], y: point[1] }) : ''
  part<HTMLButtonElement>('back').disabled = current === 0
  part<HTMLButtonElement>('skip').disabled = step === undefined
  part<HTMLButtonElement>('next').disabled = step === undefined
  for (const dot of document.querySelectorAll('.mark-sample [data-point]')) {
    dot.classList.toggle('is-now', dot.getAttribute('data-point') === step?.id)
  }
}

const svgElement = (name: string, attributes: Readonly<Record<string, string>>): SVGElement => {
  const element = document.createElementNS('http://www.w3.org/2000/svg', name)
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value)
  return element
}

const across = (x: number) => `${(x / width) * 100}%`
const down = (y: number) => `${(y / height) * 100}%`

function showMarks(): void {
  const { scale, lines } = landmarks()
  const straight = [...Object.values(lines), ...(scale ? [[scale.from, scale.to] as const] : [])]
  drawn.replaceChildren(
    ...straight.map(([a, b]) =>
      svgElement('line', { x1: across(a[0]), y1: down(a[1]), x2: across(b[0]), y2: down(b[1]) }),
    ),
    ...[...marks].map(([id, [x, y]]) =>
      svgElement('circle', {
        cx: across(x),
        cy: down(y),
        r: id === steps[current]?.id ? '9' : '4',
        class: id === steps[current]?.id ? 'is-now' : '',
      }),
    ),
  )
}

/** Pixels of the picture that the magnifier shows from side to side. */
const span = Math.max(60, width / 18)

function showLoupe(): void {
  const context = loupe.getContext('2d')
  if (context === null || picture === null || !picture.complete) return
  const size = loupe.width
  const [x, y] = here()
  // The picture that is served may be smaller than the original that the points count in.
  const served = picture.naturalWidth / width
  context.fillStyle = '#888'
  context.fillRect(0, 0, size, size)
  context.imageSmoothingEnabled = false
  context.drawImage(
    picture,
    (x - span / 2) * served,
    (y - span / 2) * served,
    span * served,
    span * served,
    0,
    0,
    size,
    size,
  )
  for (const [colour, thickness] of [
    ['#000', 5],
    ['#fff', 2],
  ] as const) {
    context.strokeStyle = colour
    context.lineWidth = thickness
    context.beginPath()
    for (const [from, to] of [
      [0.08, 0.44],
      [0.56, 0.92],
    ] as const) {
      context.moveTo(size * from, size / 2)
      context.lineTo(size * to, size / 2)
      context.moveTo(size / 2, size * from)
      context.lineTo(size / 2, size * to)
    }
    context.stroke()
  }
}

function showPoints(): void {
  part('points').replaceChildren(
    ...steps.map(({ id, name }, i) => {
      const item = document.createElement('li')
      const button = document.createElement('button')
      button.type = 'button'
      button.textContent = name
      button.className = marks.has(id) ? 'is-set' : ''
      if (i === current) button.setAttribute('aria-current', 'step')
      button.addEventListener('click', () => {
        go(i)
        board.focus({ preventScroll: true })
        document.querySelector('.mark-now')?.scrollIntoView({ block: 'nearest' })
      })
      item.append(button)
      return item
    }),
  )
}

function showResults(): void {
  const marked = landmarks()
  const readings = measureLandmarks(marked, task.view)
  part<HTMLElement>('no-values').hidden = readings.length > 0
  part('values').replaceChildren(
    ...readings.map(({ measure, value, sd }) => {
      const item = document.createElement('li')
      const unit = measure.endsWith('-angle') ? '°' : measure === 'toe-share' ? '' : ' mm'
      const digits = measure === 'toe-share' ? 2 : 1
      const error = `± ${sd.toFixed(digits)}${unit}`
      item.textContent = `${measure.replaceAll('-', ' ')} ${value.toFixed(digits)}${unit} (${error})`
      return item
    }),
  )
  part<HTMLTextAreaElement>('block').value = task.head + landmarkText(marked, '    ')
}

/** Goes on, unless the scale is set and has no length yet. */
function next(): void {
  const step = steps[current]
  if (step === undefined) return
  if (!marks.has(step.id)) put(here())
  if (step.id === 'scale to' && landmarks().scale === null) {
    const text = lengthField.value.trim()
    part('status').textContent = text === '' ? says.noLength : fill(says.badLength, { text })
    lengthField.focus()
    return
  }
  go(current + 1)
}

function skip(): void {
  const step = steps[current]
  if (step === undefined) return
  marks.delete(step.id)
  go(current + 1)
}

/** Follows a finger or the mouse from where it goes down until it is lifted. */
function follow(target: HTMLElement, move: (event: PointerEvent, isFirst: boolean) => void): void {
  target.addEventListener('pointerdown', (event) => {
    if (event.button !== 0) return
    target.setPointerCapture(event.pointerId)
    move(event, true)
  })
  target.addEventListener('pointermove', (event) => {
    if (target.hasPointerCapture(event.pointerId)) move(event, false)
  })
}

follow(board, (event) => {
  const box = drawn.getBoundingClientRect()
  put([((event.clientX - box.left) / box.width) * width, ((event.clientY - box.top) / box.height) * height])
})

let lastX = 0
let lastY = 0
follow(loupe, (event, isFirst) => {
  const perPixel = span / loupe.getBoundingClientRect().width
  const [x, y] = here()
  // The picture follows the finger, so the point moves the other way.
  if (!isFirst) put([x - (event.clientX - lastX) * perPixel, y - (event.clientY - lastY) * perPixel])
  lastX = event.clientX
  lastY = event.clientY
})

const arrows: Readonly<Record<string, Point>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

function nudge([dx, dy]: Point, by: number): void {
  const [x, y] = here()
  put([x + dx * by, y + dy * by])
}

board.addEventListener('keydown', (event) => {
  const arrow = arrows[event.key]
  if (arrow) nudge(arrow, event.shiftKey ? 10 : 1)
  else if (event.key === 'Enter') next()
  else if (event.key === 'Backspace') go(current - 1)
  else if (event.key === 'Delete') skip()
  else return
  event.preventDefault()
})

for (const button of document.querySelectorAll<HTMLElement>('[data-nudge]')) {
  button.addEventListener('click', (event) => {
    const [dx = 0, dy = 0] = (button.dataset.nudge ?? '').split(' ').map(Number)
    nudge([dx, dy], event.shiftKey ? 10 : 1)
  })
}
part('back').addEventListener('click', () => go(current - 1))
part('skip').addEventListener('click', skip)
part('next').addEventListener('click', next)
lengthField.addEventListener('input', () => {
  showMarks()
  showResults()
})
lengthField.addEventListener('keydown', (event) => {
  if (event.key !== 'Enter') return
  next()
  board.focus()
})

part('copy').addEventListener('click', async () => {
  const block = part<HTMLTextAreaElement>('block')
  try {
    await navigator.clipboard.writeText(block.value)
    outcome.textContent = says.copied
  } catch {
    block.select()
    outcome.textContent = says.notCopied
  }
})

document.querySelector('#write')?.addEventListener('click', async () => {
  outcome.textContent = ''
  try {
    const response = await fetch('write', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(landmarks()),
    })
    const text = await response.text()
    outcome.textContent = response.ok ? `${says.written} ${text}` : text
  } catch {
    outcome.textContent = says.lost
  }
})

picture?.addEventListener('load', showLoupe)
show()
