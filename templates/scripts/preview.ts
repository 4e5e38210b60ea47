/** Runs in a previewed page: loads it again when its files change, and shows problems over it. */

interface Problem {
  readonly place: string
  readonly text: string
}

const scrollKey = `scroll ${location.pathname}`
const kept = sessionStorage.getItem(scrollKey)
if (kept !== null) {
  sessionStorage.removeItem(scrollKey)
  requestAnimationFrame(() => window.scrollTo({ top: Number(kept), behavior: 'instant' }))
}

function show(problems: readonly Problem[]): void {
  document.getElementById('preview-problems')?.remove()
  if (problems.length === 0) return
  const panel = document.createElement('aside')
  panel.id = 'preview-problems'
  panel.setAttribute('role', 'alert')
  for (const { place, text } of problems) {
    const line = document.createElement('p')
    const where = document.createElement('b')
    where.textContent = place
    line.append(where, ` ${text}`)
    panel.append(line)
  }
  document.body.append(panel)
}

const news = new EventSource('/-/news')
news.addEventListener('reload', () => {
  sessionStorage.setItem(scrollKey, String(window.scrollY))
  location.reload()
})
news.addEventListener('problems', (event) => show(JSON.parse((event as MessageEvent<string>).data)))

/** Each picture that a case file names can be marked from here. */
const visitShown = /(\d{4}-\d\d-\d\d(?:-[b-z])?)\.html$/.exec(location.pathname)?.[1]
const markWord = document.currentScript?.dataset.mark ?? ''
for (const figure of document.querySelectorAll<HTMLElement>('figure[data-photo]')) {
  const link = document.createElement('a')
  link.href = `/-/mark/${figure.dataset.photo ?? ''}${visitShown ? `?visit=${visitShown}` : ''}`
  link.textContent = markWord
  const line = document.createElement('p')
  line.append(link)
  figure.append(line)
}
