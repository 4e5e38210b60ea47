/**
 * Marking points on a picture, by touch first: a tap in the whole picture brings a place near, a tap near by sets the point
 * and goes on to where the next one is likely to be. Where the printed card is in the picture, scale and ground are done.
 * The measured values follow every change. Works on the elements of templates/partials/mark/tool.hbs.
 */
import { cardWidth, type PlacedCard } from '../../../src/hoof/card.ts'
import {
  type Landmarks,
  measureLandmarks,
  type PhotoReading,
  type Point,
  shownHalf,
} from '../../../src/hoof/landmarks.ts'
import type { Camera } from '../../../src/hoof/stance.ts'
import type { MarkTask } from '../../../src/pages/mark/mark-task.ts'
import { boardOf } from './board.ts'
import { cardIn } from './card-search.ts'
import { historyOf } from './history.ts'
import { doubtsOf, fill, landmarksMarked, nearerWritten } from './marked-landmarks.ts'
import { nextPlace } from './next-place.ts'
import { drawMarks } from './overlay.ts'

/** An element of the page by its id. */
export function partOf<T extends Element>(root: ParentNode, id: string): T {
  const found = root.querySelector<T>(`#${id}`)
  if (found === null) throw new Error(`the page has no ${id}`)
  return found
}

/** @param changed called with what is marked and what it measures, at first and after every change */
export function startMarking(
  root: ParentNode,
  task: MarkTask,
  changed: (marked: Landmarks, readings: readonly PhotoReading[]) => void,
): void {
  const part = <T extends Element>(id: string) => partOf<T>(root, id)
  const { width, height, says } = task
  const element = part<HTMLElement>('board')
  const picture = part<HTMLImageElement>('picture')
  const drawn = part<SVGSVGElement>('marks')
  const lengthField = part<HTMLInputElement>('length')
  const nearerField = part<HTMLInputElement>('nearer')
  const cameraField = part<HTMLSelectElement>('camera')
  const cardField = part<HTMLInputElement>('uses-card')

  picture.width = width
  picture.height = height
  const board = boardOf(element, part('layer'), task)
  /** How the camera stood where that is no choice of the list. */
  const toldCamera: Camera | null = typeof task.camera === 'object' ? task.camera : null
  const kept = historyOf(
    {
      marks: task.marks,
      length: task.scaleLength,
      nearer: task.nearer,
      camera: typeof task.camera === 'string' ? task.camera : toldCamera ? 'told' : 'yard',
      usesCard: !task.isCardRefused,
    },
    task.storageKey,
  )
  let card: PlacedCard | null = task.card
  /** The step that is being set; after the last one all are through. */
  let current = 0

  const usedCard = (): PlacedCard | null => (kept.now().usesCard ? card : null)
  /** Those that the card takes the place of are left out. */
  const steps = () => task.steps.filter(({ isInCard }) => !isInCard || usedCard() === null)

  const clamp = ([x, y]: Point): Point => [
    Math.min(width, Math.max(0, Math.round(x * 10) / 10)),
    Math.min(height, Math.max(0, Math.round(y * 10) / 10)),
  ]

  const say = (text: string) => {
    part('status').textContent = text
  }

  /** What is marked so far as the case file has it. */
  const landmarks = () => landmarksMarked(kept.now(), usedCard(), toldCamera)

  function show(): void {
    showStep()
    showMarks()
    showPoints()
    showResults()
    const can = kept.can()
    part<HTMLButtonElement>('undo').disabled = !can.undo
    part<HTMLButtonElement>('redo').disabled = !can.redo
  }

  function showStep(): void {
    const all = steps()
    const step = all[current]
    part('step-count').textContent =
      step === undefined ? '' : fill(says.step, { step: current + 1, steps: all.length })
    part('step-name').textContent = step?.name ?? says.done
    part('step-how').textContent = step?.how ?? ''
    part<HTMLButtonElement>('back').disabled = current === 0
    part<HTMLButtonElement>('skip').disabled = step === undefined
    part<HTMLButtonElement>('next').disabled = step === undefined
    for (const row of ['length-row', 'camera-row']) part<HTMLElement>(row).hidden = usedCard() !== null
    for (const dot of root.querySelectorAll('.mark-sample [data-point]')) {
      dot.classList.toggle('is-now', dot.getAttribute('data-point') === step?.id)
    }
  }

  function showMarks(): void {
    drawMarks(drawn, landmarks(), kept.now().marks, steps()[current]?.id ?? null, board.placeOf)
  }

  function showPoints(): void {
    const { marks } = kept.now()
    part('points').replaceChildren(
      ...steps().map(({ id, name }, i) => {
        const item = document.createElement('li')
        const button = document.createElement('button')
        button.type = 'button'
        button.textContent = name
        button.className = marks[id] ? 'is-set' : ''
        if (i === current) button.setAttribute('aria-current', 'step')
        button.addEventListener('click', () => {
          go(i)
          element.focus({ preventScroll: true })
          root.querySelector('.mark-now')?.scrollIntoView({ block: 'nearest' })
        })
        item.append(button)
        return item
      }),
    )
  }

  const listed = (id: string, lines: readonly string[]) => {
    part(id).replaceChildren(
      ...lines.map((text) => {
        const item = document.createElement('li')
        item.textContent = text
        return item
      }),
    )
  }

  function showResults(): void {
    const marked = landmarks()
    const readings = measureLandmarks(marked, task.view)
    part<HTMLElement>('no-values').hidden = readings.length > 0
    const unitOf = (measure: string) =>
      measure.endsWith('-angle') ? '°' : measure === 'toe-share' ? '' : ' mm'
    listed(
      'values',
      readings.map(({ measure, value, sd }) => {
        const [unit, digits] = [unitOf(measure), measure === 'toe-share' ? 2 : 1]
        const error = `± ${shownHalf(sd).toFixed(digits)}${unit}`
        return `${measure.replaceAll('-', ' ')} ${value.toFixed(digits)}${unit} (${error})`
      }),
    )
    listed('doubts', doubtsOf(marked, task))
    changed(marked, readings)
  }

  /** Where the point of this step is, or is likely to be; null where nothing tells. */
  function placeOfStep(id: string): Point | null {
    const { marks } = kept.now()
    const used = usedCard()
    const { scale } = landmarks()
    const span = (from: Point, to: Point) => Math.hypot(to[0] - from[0], to[1] - from[1])
    const pixelsPerMm = used
      ? span(used.corners[0], used.corners[1]) / cardWidth
      : scale && span(scale.from, scale.to) / scale.length
    return marks[id] ?? nextPlace(id, { view: task.view, foot: task.foot, marks, pixelsPerMm })
  }

  function go(to: number): void {
    const all = steps()
    current = Math.min(all.length, Math.max(0, to))
    const step = all[current]
    const place = step && placeOfStep(step.id)
    if (place) board.look(place)
    else board.whole()
    show()
  }

  function put(point: Point): void {
    const step = steps()[current]
    if (step === undefined) return
    const doubtsNow = () => doubtsOf(landmarks(), task)
    const before = doubtsNow()
    kept.change({ marks: { ...kept.now().marks, [step.id]: clamp(point) } })
    const found = doubtsNow().find((one) => !before.includes(one))
    const [x, y] = kept.now().marks[step.id] ?? point
    say(found ?? fill(says.at, { name: step.name, x, y }))
    show()
  }

  /** Goes on, unless the scale is set and has no length yet. */
  function next(): void {
    const step = steps()[current]
    if (step === undefined) return
    if (!kept.now().marks[step.id]) {
      say(fill(says.notSet, { name: step.name }))
      return
    }
    if (step.id === 'scale to' && landmarks().scale === null) {
      const text = lengthField.value.trim()
      say(text === '' ? says.noLength : fill(says.badLength, { text }))
      lengthField.focus()
      return
    }
    go(current + 1)
  }

  function skip(): void {
    const step = steps()[current]
    if (step === undefined) return
    const { [step.id]: _, ...marks } = kept.now().marks
    kept.change({ marks })
    go(current + 1)
  }

  board.onMove(showMarks)
  board.onTap((at) => {
    if (!board.isFine()) {
      board.look(at)
      say(says.near)
      return
    }
    if (steps()[current] === undefined) return
    put(at)
    const said = part('status').textContent ?? ''
    next()
    if (part('status').textContent === '') say(said)
  })

  const arrows: Readonly<Record<string, Point>> = {
    ArrowLeft: [-1, 0],
    ArrowRight: [1, 0],
    ArrowUp: [0, -1],
    ArrowDown: [0, 1],
  }

  function nudge([dx, dy]: Point, by: number): void {
    const step = steps()[current]
    if (step === undefined) return
    const [x, y] = placeOfStep(step.id) ?? [width / 2, height / 2]
    put([x + dx * by, y + dy * by])
  }

  function retrace(done: boolean): void {
    if (!done) return
    showFields()
    current = Math.min(current, steps().length)
    show()
  }

  element.addEventListener('keydown', (event) => {
    const arrow = arrows[event.key]
    const isUndo = (event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'z'
    if (arrow) nudge(arrow, event.shiftKey ? 10 : 1)
    else if (isUndo) retrace(event.shiftKey ? kept.redo() : kept.undo())
    else if (event.key === 'Enter') next()
    else if (event.key === 'Backspace') go(current - 1)
    else if (event.key === 'Delete') skip()
    else if (event.key === '+') board.zoom(1.5)
    else if (event.key === '-') board.zoom(1 / 1.5)
    else return
    event.preventDefault()
  })

  for (const button of root.querySelectorAll<HTMLElement>('[data-nudge]')) {
    button.addEventListener('click', (event) => {
      const [dx = 0, dy = 0] = (button.dataset.nudge ?? '').split(' ').map(Number)
      nudge([dx, dy], event.shiftKey ? 10 : 1)
    })
  }
  const onClick = (id: string, then: () => void) => part(id).addEventListener('click', then)
  onClick('back', () => go(current - 1))
  onClick('skip', skip)
  onClick('next', next)
  onClick('undo', () => retrace(kept.undo()))
  onClick('redo', () => retrace(kept.redo()))
  onClick('larger', () => board.zoom(1.6))
  onClick('smaller', () => board.zoom(1 / 1.6))
  onClick('whole', board.whole)

  function showFields(): void {
    const { length, nearer, camera, usesCard } = kept.now()
    lengthField.value = length
    nearerField.value = nearer
    cameraField.value = camera
    cardField.checked = usesCard
  }

  lengthField.addEventListener('input', () => {
    kept.change({ length: lengthField.value })
    show()
  })
  lengthField.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter') return
    next()
    element.focus()
  })
  nearerField.addEventListener('input', () => {
    kept.change({ nearer: nearerField.value })
    if (Number.isNaN(nearerWritten(nearerField.value)))
      say(fill(says.badLength, { text: nearerField.value.trim() }))
    show()
  })
  cameraField.addEventListener('change', () => {
    kept.change({ camera: cameraField.value })
    show()
  })
  cardField.addEventListener('change', () => {
    kept.change({ usesCard: cardField.checked })
    go(Math.min(current, steps().length))
  })

  /** Once the picture is there: the card, unless the case file has it or says that there is none. */
  function lookForCard(): void {
    if (card === null && !task.isCardRefused) {
      const found = cardIn(picture, task)
      card = found?.card ?? null
      if (found?.refusal) part('card-said').textContent = says.refusals[found.refusal]
    }
    if (card !== null) part('card-said').textContent = says.cardFound
    part<HTMLElement>('card-row').hidden = card === null && !task.isCardRefused
    go(firstOpen())
    if (kept.isTakenUp) say(says.takenUp)
    element.setAttribute('data-ready', '')
  }

  /** The first point that is not set; the first of all where every one is. */
  function firstOpen(): number {
    const { marks } = kept.now()
    return Math.max(
      0,
      steps().findIndex(({ id }) => !marks[id]),
    )
  }

  showFields()
  show()
  // A turn of the loop lets the page be seen before the picture is searched.
  if (picture.complete) setTimeout(lookForCard)
  else picture.addEventListener('load', () => setTimeout(lookForCard), { once: true })
}
