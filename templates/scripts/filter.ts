/** Search and filters of the front page's list of horses. Without this script the list stands whole. */
const finder = document.querySelector<HTMLElement>('#finder')
const field = document.querySelector<HTMLInputElement>('#find')
const shown = document.querySelector<HTMLElement>('#shown')
const rows = [...document.querySelectorAll<HTMLElement>('#horse-list > li')]
const buttons = [...document.querySelectorAll<HTMLButtonElement>('#finder button[data-tag]')]

/** Letters alone count: `Zoë` is found by `zoe`. */
const bare = (text: string) => text.toLowerCase().normalize('NFD').replace(/\p{M}/gu, '')

function show(): void {
  const words = bare(field?.value ?? '').split(/\s+/)
  const wanted = buttons
    .filter((button) => button.ariaPressed === 'true')
    .map((button) => button.dataset.tag ?? '')
  let count = 0
  for (const row of rows) {
    const text = bare(row.dataset.find ?? '')
    const tags = (row.dataset.tags ?? '').split(' ')
    const fits = words.every((word) => text.includes(word)) && wanted.every((tag) => tags.includes(tag))
    row.hidden = !fits
    if (fits) count += 1
  }
  if (!shown) return
  const { text = '', none = '' } = shown.dataset
  shown.textContent =
    count === 0 ? none : text.replace('{shown}', String(count)).replace('{all}', String(rows.length))
}

if (finder && rows.length > 1) {
  finder.hidden = false
  field?.addEventListener('input', show)
  for (const button of buttons) {
    button.addEventListener('click', () => {
      button.ariaPressed = button.ariaPressed === 'true' ? 'false' : 'true'
      show()
    })
  }
  // A browser may bring the words back when it goes back to this page.
  show()
}
