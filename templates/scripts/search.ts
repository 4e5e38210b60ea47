/** Search in the front page's list of horses. Without this script the list is there whole. */
const finder = document.querySelector<HTMLElement>('#finder')
const field = document.querySelector<HTMLInputElement>('#find')
const shown = document.querySelector<HTMLElement>('#shown')
const rows = [...document.querySelectorAll<HTMLElement>('#horse-list > li')]

/** Letters alone count: `Zoë` is found by `zoe`. */
const bare = (text: string) => text.toLowerCase().normalize('NFD').replace(/\p{M}/gu, '')

function show(): void {
  const words = bare(field?.value ?? '').split(/\s+/)
  let count = 0
  for (const row of rows) {
    const text = bare(row.dataset.find ?? '')
    row.hidden = !words.every((word) => text.includes(word))
    if (!row.hidden) count += 1
  }
  if (!shown) return
  const { text = '', none = '' } = shown.dataset
  const isSearching = words.some((word) => word !== '')
  const counted = text.replace('{shown}', String(count)).replace('{all}', String(rows.length))
  shown.textContent = !isSearching ? '' : count === 0 ? none : counted
}

if (finder && rows.length > 1) {
  finder.hidden = false
  field?.addEventListener('input', show)
  // A browser may bring the words back when it goes back to this page.
  show()
}
