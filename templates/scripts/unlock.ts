/** Opens an owner's page in the browser. Nothing is sent, nothing is stored: closing the tab locks it again. */
import { armor, Decrypter } from 'age-encryption'
import { checksum } from '../../src/editions/lock/checksum.ts'

interface Says {
  readonly opening: string
  readonly empty: string
  readonly wrong: string
  readonly damaged: string
  readonly weak: string
}

const byId = <T extends HTMLElement>(id: string, kind: new () => T): T => {
  const found = document.getElementById(id)
  if (!(found instanceof kind)) throw new Error(`the page has no ${id}`)
  return found
}

const form = byId('unlock', HTMLFormElement)
const field = byId('words', HTMLInputElement)
const show = byId('show', HTMLInputElement)
const save = byId('save', HTMLAnchorElement)
const said = byId('said', HTMLParagraphElement)
const locked = byId('locked', HTMLTextAreaElement)
const says: Says = JSON.parse(locked.dataset.says ?? '{}')

/** The age file, or null where the page did not arrive whole. */
function readFile(): Uint8Array<ArrayBuffer> | null {
  try {
    const bytes = Uint8Array.from(armor.decode(locked.value))
    return checksum(bytes) === locked.dataset.checksum ? bytes : null
  } catch {
    return null
  }
}

/** As typed with single spaces; then in small letters, since phones like to begin with a capital. */
function readings(typed: string): string[] {
  const plain = typed.normalize('NFC').trim().replace(/\s+/g, ' ')
  return [...new Set([plain, plain.toLowerCase()])]
}

/** Lets the page show what it says before the long work begins. */
const shown = () => new Promise<void>((done) => requestAnimationFrame(() => setTimeout(done, 30)))

async function opened(file: Uint8Array, typed: string): Promise<string | null> {
  for (const words of readings(typed)) {
    const decrypter = new Decrypter()
    decrypter.addPassphrase(words)
    try {
      return await decrypter.decrypt(file, 'text')
    } catch (error) {
      // The library says so when no passphrase fits; anything else is no matter of the words.
      if (!(error instanceof Error && error.message.startsWith('no identity matched'))) throw error
    }
  }
  return null
}

async function unlock(): Promise<void> {
  if (field.value.trim() === '') return tell(says.empty)
  if (file === null) return tell(says.damaged)
  const button = form.querySelector('button')
  if (button) button.disabled = true
  tell(says.opening)
  await shown()
  try {
    const page = await opened(file, field.value)
    if (page === null) tell(says.wrong)
    else replaceWith(page)
  } catch (error) {
    tell(error instanceof RangeError ? says.weak : says.damaged)
  } finally {
    if (button) button.disabled = false
    if (field.isConnected) field.focus()
  }
}

function tell(text: string): void {
  said.textContent = text
}

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

const file = readFile()
form.addEventListener('submit', (event) => {
  event.preventDefault()
  void unlock()
})
show.addEventListener('change', () => {
  field.type = show.checked ? 'text' : 'password'
})
form.hidden = false
if (file === null) tell(says.damaged)
else offerFile(file)
field.focus()
