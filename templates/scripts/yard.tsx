/** The yard page once it is unlocked (`yard-gate.ts`): kept on the phone by a worker, read and written with no network. */
import { render } from 'preact'
import { practiceLanguage } from '../../src/pages/words/practice-language.ts'
import { yardWordsFor } from '../../src/pages/words/yard.ts'
import type { YardIndex } from '../../src/yard/payload.ts'
import { byId } from './locked/by-id.ts'
import { App } from './yard/app.tsx'
import { type Drafts, openDrafts } from './yard/form/index.ts'
import { newerPage } from './yard/newer.ts'
import type { CannotKeep, YardWindow } from './yard/opened.ts'
import { openSealed } from './yard/sealed-page.ts'
import { keptSettings } from './yard/settings.ts'

const isFile = location.protocol === 'file:'
const gate = byId('gate', HTMLElement)
const screen = byId('yard', HTMLDivElement)

/** Someone who is typing the passphrase is not to begin again. */
const newer = newerPage(() => !gate.isConnected || byId('words', HTMLInputElement).value !== '')
if (!isFile) {
  const link = Object.assign(document.createElement('link'), { rel: 'manifest', href: 'manifest.webmanifest' })
  const icon = Object.assign(document.createElement('link'), { rel: 'icon', href: 'icon-192.png' })
  document.head.append(link, icon)
}

const yardWindow: YardWindow = window
yardWindow.openYard = async (key) => {
  const page = await openSealed(byId('sealed', HTMLScriptElement).textContent ?? '', key)
  const { drafts, cannotKeep } = await store(page.index)
  gate.remove()
  screen.hidden = false
  render(
    <App
      page={page}
      words={yardWordsFor(practiceLanguage)}
      settings={keptSettings()}
      drafts={drafts}
      cannotKeep={cannotKeep}
      newer={newer}
    />,
    screen,
  )
}

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
