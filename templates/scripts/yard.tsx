/** The yard page: opened with a passphrase, kept on the phone by a worker, read and written with no network. */
import { render } from 'preact'
import { practiceLanguage } from '../../src/pages/words/practice-language.ts'
import { yardWordsFor } from '../../src/pages/words/yard.ts'
import type { YardIndex } from '../../src/yard/payload.ts'
import { byId, type UnlockingSays, unlockForm, wholeFile } from './locked/unlocking.ts'
import { App } from './yard/app.tsx'
import { type Drafts, openDrafts } from './yard/form/index.ts'
import { newerPage } from './yard/newer.ts'
import type { CannotKeep } from './yard/opened.ts'
import { openSealed } from './yard/sealed-page.ts'
import { keptSettings, showLight } from './yard/settings.ts'

interface Says extends UnlockingSays {
  readonly insecure: string
}

const isFile = location.protocol === 'file:'
const gate = byId('gate', HTMLElement)
const screen = byId('yard', HTMLDivElement)
const locked = byId('locked', HTMLScriptElement)
const says: Says = JSON.parse(locked.dataset.says ?? '{}')
const settings = keptSettings()
showLight(settings.light)

/** The form is there before the rest of the page has arrived. */
const arrived = new Promise<void>((done) => {
  if (document.readyState === 'loading') document.addEventListener('DOMContentLoaded', () => done())
  else done()
})

const newer = newerPage(() => !gate.isConnected)
if (!isFile) {
  const link = Object.assign(document.createElement('link'), { rel: 'manifest', href: 'manifest.webmanifest' })
  const icon = Object.assign(document.createElement('link'), { rel: 'icon', href: 'icon-192.png' })
  document.head.append(link, icon)
}

const file = wholeFile(locked.textContent ?? '', locked.dataset.checksum)
const { tell } = unlockForm(file, says, async (key) => {
  // From here on the list is awaited: what came before is the work of the key, made long on purpose.
  performance.mark('key')
  await arrived
  const page = await openSealed(byId('sealed', HTMLScriptElement).textContent ?? '', key)
  const { drafts, cannotKeep } = await store(page.index)
  gate.remove()
  screen.hidden = false
  const words = yardWordsFor(practiceLanguage)
  render(
    <App page={page} words={words} settings={settings} drafts={drafts} cannotKeep={cannotKeep} newer={newer} />,
    screen,
  )
})
if (!('subtle' in crypto)) tell(says.insecure)

async function store(
  index: YardIndex,
): Promise<{ readonly drafts: Drafts | null; readonly cannotKeep: CannotKeep | null }> {
  if (isFile) return { drafts: null, cannotKeep: 'file' }
  try {
    return { drafts: await openDrafts(index), cannotKeep: null }
  } catch {
    return { drafts: null, cannotKeep: 'storage' }
  }
}
