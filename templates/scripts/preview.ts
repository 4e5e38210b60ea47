/** Runs in a previewed page: loads it again when its files change, and shows problems over it. */
import type { ShownProblem, ShownProblems } from '../../src/apps/preview/news.ts'

const given = document.currentScript?.dataset ?? {}

const scrollKey = `scroll ${location.pathname}`
const kept = sessionStorage.getItem(scrollKey)
if (kept !== null) {
  sessionStorage.removeItem(scrollKey)
  requestAnimationFrame(() => window.scrollTo({ top: Number(kept), behavior: 'instant' }))
}

const levels = { error: 'error', warning: 'warning', gap: 'to fill in' } as const

const counted = (count: number, thing: string) => `${count} ${thing}${count === 1 ? '' : 's'}`

/** An element with these texts and elements in it. */
function made(name: string, className: string, ...inside: readonly (string | Node)[]): HTMLElement {
  const element = document.createElement(name)
  if (className !== '') element.className = className
  element.append(...inside)
  return element
}

function itemOf({ level, place, message, expected, fix, advice }: ShownProblem): HTMLElement {
  const notes = [
    ['expected', expected],
    ['likely fix', fix],
    ['what to do', advice],
  ] as const
  return made(
    'li',
    `is-${level}`,
    made('p', 'where', made('b', 'level', levels[level]), ' ', made('bdi', '', place)),
    made('p', '', made('bdi', '', message)),
    ...notes.flatMap(([name, text]) =>
      text === null ? [] : made('p', 'note', `${name}: `, made('bdi', '', text)),
    ),
  )
}

/** Whether the person opened or closed the list of warnings. */
const openKey = 'warnings open'

/** What nobody has read yet does not leave. */
function waitingLine(waiting: number): HTMLElement {
  const link = document.createElement('a')
  link.href = '/-/review'
  link.textContent = 'Read and approve'
  const waits = waiting === 1 ? 'One text or photograph waits' : `${waiting} texts and photographs wait`
  const line = made('p', '', `${waits} to be read before the portfolio is made of them. `, link)
  line.id = 'preview-waiting'
  line.setAttribute('role', 'status')
  return line
}

/** Errors stand open, since a horse with one keeps its last pages; warnings alone are a line that opens. */
function show({ errors, warnings, waiting, first }: ShownProblems): void {
  document.getElementById('preview-problems')?.remove()
  document.getElementById('preview-waiting')?.remove()
  if (waiting > 0) document.body.append(waitingLine(waiting))
  if (first.length === 0) return
  const counts = [
    errors > 0 ? counted(errors, 'problem') : [],
    warnings > 0 ? counted(warnings, 'warning') : [],
  ]
  const rest = errors + warnings - first.length
  const fold = document.createElement('details')
  fold.open = errors > 0 || sessionStorage.getItem(openKey) === 'yes'
  fold.append(
    made('summary', '', counts.flat().join(', ')),
    made('ul', '', ...first.map(itemOf)),
    ...(rest > 0 ? [made('p', '', `And ${rest} more: growdown check names them all.`)] : []),
  )
  fold.addEventListener('toggle', () => {
    if (errors === 0) sessionStorage.setItem(openKey, fold.open ? 'yes' : 'no')
  })
  const panel = made('div', errors > 0 ? 'has-errors' : '', fold)
  panel.id = 'preview-problems'
  panel.setAttribute('role', errors > 0 ? 'alert' : 'status')
  document.body.append(panel)
}

/** The page says of which build it is, so that it is told at once where there is a newer one. */
function listen(): EventSource {
  const news = new EventSource(`/-/news?build=${given.build ?? ''}`)
  news.addEventListener('reload', () => {
    sessionStorage.setItem(scrollKey, String(window.scrollY))
    location.reload()
  })
  news.addEventListener('problems', (event) => show(JSON.parse((event as MessageEvent<string>).data)))
  return news
}

/** A page that nobody sees does not listen, since a browser has only a few connections for all its tabs together. */
let news: EventSource | null = null
function listenWhileSeen(): void {
  if (document.visibilityState === 'visible') news ??= listen()
  else beDeaf()
}
function beDeaf(): void {
  news?.close()
  news = null
}
document.addEventListener('visibilitychange', listenWhileSeen)
listenWhileSeen()

/** Milliseconds after which a person who followed a link would be elsewhere: it was a download, or was stopped. */
const stillHere = 6_000

// Loading this page again would take a person back who is on the way to another.
window.addEventListener('beforeunload', () => {
  beDeaf()
  setTimeout(listenWhileSeen, stillHere)
})

/** Each picture that a case file names can be marked from here. */
const visitShown = /(\d{4}-\d\d-\d\d(?:-[b-z])?)\.html$/.exec(location.pathname)?.[1]
for (const figure of document.querySelectorAll<HTMLElement>('figure[data-photo]')) {
  const query = new URLSearchParams({ photo: figure.dataset.photo ?? '', key: given.key ?? '' })
  if (visitShown !== undefined) query.set('visit', visitShown)
  const link = document.createElement('a')
  link.href = `/-/mark?${query}`
  link.textContent = given.mark ?? ''
  const line = document.createElement('p')
  line.append(link)
  figure.append(line)
}
