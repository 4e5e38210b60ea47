/** Unlocks the yard page. Apart from all that comes after, so that the passphrase can be typed while that still arrives. */
import { byId } from './locked/by-id.ts'
import { type UnlockingSays, unlockForm, wholeFile } from './locked/unlocking.ts'
import type { YardWindow } from './yard/opened.ts'
import { keptSettings, showLight } from './yard/settings.ts'

interface Says extends UnlockingSays {
  readonly insecure: string
}

const locked = byId('locked', HTMLScriptElement)
const says: Says = JSON.parse(locked.dataset.says ?? '{}')
showLight(keptSettings().light)

const arrived = new Promise<void>((done) => {
  if (document.readyState === 'loading') document.addEventListener('DOMContentLoaded', () => done())
  else done()
})
const file = wholeFile(locked.textContent ?? '', locked.dataset.checksum)
const { tell } = unlockForm(file, says, async (key) => {
  // From here on the list is awaited: what came before is the work of the key, made long on purpose.
  performance.mark('key')
  await arrived
  const { openYard } = window as YardWindow
  if (openYard === undefined) throw new Error('the page did not arrive whole')
  await openYard(key)
})
if (!('subtle' in crypto)) tell(says.insecure)
