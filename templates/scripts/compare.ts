/**
 * Then and now: lays the latest picture over the first, with a line between them that a finger, the mouse or the
 * arrow keys move. Without this script the two pictures stand side by side.
 */
function prepare(section: HTMLElement): void {
  const button = section.querySelector<HTMLButtonElement>('.compare-switch')
  const template = section.querySelector('template')
  if (!button || !template) return
  let stage: HTMLElement | null = null
  button.hidden = false
  button.addEventListener('click', () => {
    const on = button.ariaPressed !== 'true'
    button.ariaPressed = String(on)
    // The pictures are asked for when they are first wanted.
    stage ??= setUp(template)
    stage.hidden = !on
  })
}

function setUp(template: HTMLTemplateElement): HTMLElement {
  template.before(template.content.cloneNode(true))
  const stage = template.previousElementSibling
  const svg = stage?.querySelector('svg')
  const slider = stage?.querySelector('input')
  const shown = stage?.querySelector('clipPath rect')
  const edge = stage?.querySelector('.compare-edge')
  if (!(stage instanceof HTMLElement) || !svg || !slider || !shown || !edge) {
    throw new Error('the page has no pictures to lay over each other')
  }
  const width = svg.viewBox.baseVal.width
  const show = () => {
    const first = Number(slider.value)
    const at = String((width * first) / 100)
    shown.setAttribute('width', at)
    edge.setAttribute('x1', at)
    edge.setAttribute('x2', at)
    const text = slider.dataset.text ?? ''
    slider.ariaValueText = text.replace('{first}', String(first)).replace('{latest}', String(100 - first))
  }
  const follow = (event: PointerEvent) => {
    const box = svg.getBoundingClientRect()
    slider.value = String(Math.round(((event.clientX - box.left) / box.width) * 100))
    show()
  }
  slider.addEventListener('input', show)
  svg.addEventListener('pointerdown', (event) => {
    svg.setPointerCapture(event.pointerId)
    follow(event)
  })
  svg.addEventListener('pointermove', (event) => {
    if (svg.hasPointerCapture(event.pointerId)) follow(event)
  })
  show()
  return stage
}

for (const section of document.querySelectorAll<HTMLElement>('.compare')) prepare(section)
