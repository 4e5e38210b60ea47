/** The desk's marking page: the block for the case file follows every change; nothing leaves the page unless asked. */
import type { Landmarks } from '../../src/hoof/landmarks.ts'
import { landmarkText } from '../../src/pages/mark/landmark-block.ts'
import type { DeskMarkTask } from '../../src/pages/mark/mark-page.ts'
import { partOf, startMarking } from './marking/tool.ts'

const part = <T extends Element>(id: string) => partOf<T>(document, id)

const task: DeskMarkTask = JSON.parse(part('task').textContent ?? '')
const { says } = task
const outcome = part('outcome')
const block = part<HTMLTextAreaElement>('block')
let marked: Landmarks | null = null

startMarking(document, task, (landmarks) => {
  marked = landmarks
  block.value = task.head + landmarkText(landmarks, '    ')
})

part('copy').addEventListener('click', async () => {
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
      body: JSON.stringify(marked),
    })
    const text = await response.text()
    outcome.textContent = response.ok ? `${says.written} ${text}` : text
  } catch {
    outcome.textContent = says.lost
  }
})
