/** Opening an age file with what someone types: what every locked page does alike. */
import { armor, Decrypter } from 'age-encryption'
import { checksum } from '../../../src/editions/lock/checksum.ts'
import { byId } from './by-id.ts'

/** What a page says while it is opened. */
export interface UnlockingSays {
  readonly opening: string
  readonly empty: string
  readonly wrong: string
  readonly damaged: string
  readonly weak: string
}

/** The age file from its text form; null where it did not arrive whole. */
export function wholeFile(text: string, sum: string | undefined): Uint8Array<ArrayBuffer> | null {
  try {
    const bytes = Uint8Array.from(armor.decode(text))
    return checksum(bytes) === sum ? bytes : null
  } catch {
    return null
  }
}

/** As typed with single spaces; then in small letters, since phones like to begin with a capital. */
function readings(typed: string): string[] {
  const plain = typed.normalize('NFC').trim().replace(/\s+/g, ' ')
  return [...new Set([plain, plain.toLowerCase()])]
}

/** What is in the file; null where the words do not fit. */
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

/** Lets the page show what it says before the long work begins. */
const shown = () => new Promise<void>((done) => requestAnimationFrame(() => setTimeout(done, 30)))

/** The form with the field `words`, the box `show` and the line `said`. */
export interface UnlockForm {
  readonly form: HTMLFormElement
  tell(text: string): void
}

/**
 * Lets someone open the page.
 * @param file null where it did not arrive whole
 * @param use takes what was locked; a throw says that it is damaged
 */
export function unlockForm(
  file: Uint8Array | null,
  says: UnlockingSays,
  use: (plain: string) => void | Promise<void>,
): UnlockForm {
  const form = byId('unlock', HTMLFormElement)
  const field = byId('words', HTMLInputElement)
  const show = byId('show', HTMLInputElement)
  const said = byId('said', HTMLParagraphElement)
  const tell = (text: string) => {
    said.textContent = text
  }
  const unlock = async () => {
    if (field.value.trim() === '') return tell(says.empty)
    if (file === null) return tell(says.damaged)
    const button = form.querySelector('button')
    if (button) button.disabled = true
    tell(says.opening)
    await shown()
    try {
      const plain = await opened(file, field.value)
      if (plain === null) tell(says.wrong)
      else await use(plain)
    } catch (error) {
      tell(error instanceof RangeError ? says.weak : says.damaged)
    } finally {
      if (button) button.disabled = false
      if (field.isConnected) field.focus()
    }
  }
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    void unlock()
  })
  show.addEventListener('change', () => {
    field.type = show.checked ? 'text' : 'password'
  })
  form.hidden = false
  if (file === null) tell(says.damaged)
  field.focus()
  return { form, tell }
}
