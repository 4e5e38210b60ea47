/** Opens an owner's page in the browser. Nothing is sent, nothing is stored: closing the tab locks it again. */
import { byId } from './locked/by-id.ts'
import { type UnlockingSays, unlockForm, wholeFile } from './locked/unlocking.ts'

const save = byId('save', HTMLAnchorElement)
const locked = byId('locked', HTMLTextAreaElement)
const says: UnlockingSays = JSON.parse(locked.dataset.says ?? '{}')

/** The page that was locked takes the place of this one. Scripts in it would not run; it has none. */
function replaceWith(page: string): void {
  const next = new DOMParser().parseFromString(page, 'text/html')
  const title = next.title
  document.documentElement.replaceWith(document.adoptNode(next.documentElement))
  document.title = title
  window.scrollTo(0, 0)
  for (const button of document.querySelectorAll<HTMLButtonElement>('[data-lock], [data-print]'))
    button.hidden = false
  document.querySelector('[data-lock]')?.addEventListener('click', () => location.reload())
  for (const button of document.querySelectorAll<HTMLButtonElement>('[data-print]')) {
    button.addEventListener('click', () => printOne(button.dataset.print ?? ''))
  }
  document.getElementById('main')?.focus()
}

/** One list alone on paper. */
function printOne(id: string): void {
  const list = document.getElementById(id)
  document.body.classList.add('one-list')
  list?.classList.add('printing')
  const after = () => {
    document.body.classList.remove('one-list')
    list?.classList.remove('printing')
  }
  window.addEventListener('afterprint', after, { once: true })
  window.print()
}

/** The locked file as a file, made here from the text in the page. */
function offerFile(file: Uint8Array<ArrayBuffer>): void {
  save.href = URL.createObjectURL(new Blob([file], { type: 'application/octet-stream' }))
  save.download = 'record.age'
  save.hidden = false
}

const file = wholeFile(locked.value, locked.dataset.checksum)
unlockForm(file, says, replaceWith)
if (file !== null) offerFile(file)
