/** Filters of the list of cases. Without this script the list stands whole. */

const form = document.querySelector<HTMLFormElement>('#filters')
const shown = document.querySelector<HTMLElement>('#shown')
const cards = [...document.querySelectorAll<HTMLElement>('#cards > .card')]

function sift(): void {
  if (!form || !shown) return
  const wanted = [...new FormData(form)].filter(([, value]) => value !== '')
  let count = 0
  for (const card of cards) {
    const fits = wanted.every(([name, value]) =>
      (card.dataset[name] ?? '').split('|').includes(String(value)),
    )
    card.hidden = !fits
    if (fits) count++
  }
  const { all = '', some = '', none = '' } = shown.dataset
  shown.textContent = count === 0 ? none : count === cards.length ? all : some.replace('#', String(count))
}

if (form) {
  form.hidden = false
  form.addEventListener('change', sift)
  form.addEventListener('reset', () => setTimeout(sift))
  // A browser may bring back what was chosen before.
  sift()
}
