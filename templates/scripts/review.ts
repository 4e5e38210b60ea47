/** Sends what a person approves; what is kept goes from the page. */
import type { Words } from '../../src/pages/words/index.ts'

const task: { key: string; says: Words['review']['script'] } = JSON.parse(
  document.getElementById('task')?.textContent ?? '{}',
)
const count = document.getElementById('count')

/** As many as fit the size of a request that the server takes. */
const atOnce = 300

const items = (within: ParentNode = document): HTMLElement[] => [
  ...within.querySelectorAll<HTMLElement>('.review-item'),
]

function tell(text: string): void {
  if (count !== null) count.textContent = text
}

/** Takes what was kept from the page, and a case of which nothing is left. */
function took(approved: readonly HTMLElement[]): void {
  const next = approved.at(-1)?.nextElementSibling?.querySelector<HTMLElement>('button')
  for (const item of approved) item.remove()
  for (const section of document.querySelectorAll('.review-case')) {
    const left = items(section).length
    if (left === 0) section.remove()
    else if (approved.length > 0) section.querySelector('.of-case')?.replaceChildren(String(left))
  }
  const left = items().length
  tell(left === 0 ? task.says.done : task.says.left.replace('{count}', String(left)))
  ;(next ?? document.querySelector<HTMLElement>('.review-item button'))?.focus()
}

async function approve(wanted: readonly HTMLElement[]): Promise<void> {
  for (let from = 0; from < wanted.length; from += atOnce) {
    const some = wanted.slice(from, from + atOnce)
    const body = JSON.stringify({ key: task.key, hashes: some.map(({ dataset }) => dataset.hash ?? '') })
    try {
      const headers = { 'content-type': 'application/json' }
      const answer = await fetch('/-/review/approve', { method: 'POST', headers, body })
      if (!answer.ok) return tell(await answer.text())
    } catch {
      return tell(task.says.lost)
    }
    took(some)
  }
}

document.addEventListener('click', (event) => {
  const button = event.target instanceof Element ? event.target.closest('button') : null
  if (button === null) return
  const item = button.closest<HTMLElement>('.review-item')
  if (item !== null) void approve([item])
  const section = button.classList.contains('approve-rest') ? button.closest('section') : null
  if (section !== null) void approve(items(section).filter((one) => !one.classList.contains('is-marked')))
})
