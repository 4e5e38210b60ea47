/** The form by itself, handed what the unlocked page would hand it: `#write/<id>`, `#drafts`, else a new visit. */
import { render } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { practiceLanguage, wordsFor } from '../../../src/pages/words/index.ts'
import type { YardHorsePart, YardIndex } from '../../../src/yard/payload.ts'
import { DraftsList, type Drafts, openDrafts, startDraft, VisitForm } from '../../../templates/scripts/yard/form/index.ts'
import type { OpenedYard } from '../../../templates/scripts/yard/opened.ts'

interface Given {
  readonly index: YardIndex
  readonly parts: Readonly<Record<string, YardHorsePart>>
  readonly today: string
}

const given: Given = JSON.parse(document.querySelector('#given')?.textContent ?? '')
const asked = new URLSearchParams(location.search)
const horse = asked.get('horse') ?? given.index.horses[0]?.id ?? ''
const phoneKey = asked.get('key')
const yard: OpenedYard = {
  index: {
    ...given.index,
    ...(phoneKey && { phoneKey }),
    arrived: JSON.parse(asked.get('arrived') ?? '[]'),
  },
  part: async (id) => given.parts[id] ?? null,
  today: () => given.today,
  settings: { hand: asked.get('hand') === 'left' ? 'left' : 'right', by: given.index.people[0]?.id ?? null, light: 'phone' },
  cannotKeep: null,
  busy: () => {},
  beforeLock: () => () => {},
}
const words = wordsFor(practiceLanguage)

function Screens({ drafts }: { readonly drafts: Drafts }) {
  const [place, setPlace] = useState(location.hash)
  useEffect(() => {
    addEventListener('hashchange', () => setPlace(location.hash))
    if (location.hash === '')
      startDraft(drafts, horse, given.today, yard.settings.by).then((id) => {
        location.hash = `#write/${id}`
      })
  }, [drafts])
  const [, id] = /^#write\/(.+)$/.exec(place) ?? []
  if (id !== undefined) return <VisitForm yard={yard} drafts={drafts} words={words} draft={id} key={id} />
  return place === '#drafts' ? <DraftsList yard={yard} drafts={drafts} words={words} /> : null
}

const root = document.querySelector('#yard')
if (root) openDrafts(yard.index).then((drafts) => render(<Screens drafts={drafts} />, root))
