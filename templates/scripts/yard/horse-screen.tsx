/** One horse: what to heed, what may be taken today, its problems; and the way to write the visit. */
import { useEffect, useState } from 'preact/hooks'
import type { YardHorsePart } from '../../../src/yard/payload.ts'
import { begunDraft, startDraft } from './form/index.ts'
import { Age, Careful, type FrameProps, ReadOnly } from './frame.tsx'
import { addressOf } from './opened.ts'

type Part = YardHorsePart | 'opening' | 'missing' | 'damaged'

export function HorseScreen(frame: FrameProps & { readonly id: string }) {
  const { yard, words, drafts, id } = frame
  const w = words.yard.page
  const horse = yard.index.horses.find((one) => one.id === id)
  const [part, setPart] = useState<Part>('opening')
  useEffect(() => {
    yard.part(id).then(
      (found) => setPart(found ?? 'missing'),
      () => setPart('damaged'),
    )
  }, [id])
  const [isBegun, setBegun] = useState(false)
  useEffect(() => {
    drafts?.all().then((kept) => setBegun(begunDraft(kept, id, yard.today()) !== null))
  }, [drafts, id, yard])
  const [isFull, setFull] = useState(false)
  const write = async () => {
    if (drafts === null) return
    try {
      location.hash = addressOf.write(await startDraft(drafts, id, yard.today(), yard.settings.by))
    } catch {
      setFull(true)
    }
  }
  const isRead = typeof part === 'object'
  return (
    <>
      <main id="main" tabIndex={-1} class="screen">
        <h1>{horse?.name ?? w.unknown}</h1>
        {horse?.owner ? <p class="soft owner">{horse.owner}</p> : null}
        <ReadOnly {...frame} />
        <div role="alert">{isFull ? <p class="notice">{w.keepsNoMore}</p> : null}</div>
        {horse?.isBroken ? <p class="notice">{isRead ? w.broken : w.brokenGone}</p> : null}
        {part === 'damaged' ? <p class="notice">{w.unopened}</p> : null}
        {part === 'opening' && horse !== undefined ? <p role="status">{w.opening}</p> : null}
        {isRead ? (
          // Made at the build by the same templates as all pages, which escape what people wrote.
          <div class="horse-part" dangerouslySetInnerHTML={{ __html: part.html }} />
        ) : null}
        <Age {...frame} />
        <Careful {...frame} />
      </main>
      <nav class="bar-below" aria-label={w.menu}>
        <a href={addressOf.list}>{w.day}</a>
        {isRead && drafts !== null ? (
          <button type="button" class="main-act" onClick={() => void write()}>
            {isBegun ? w.goOn : w.write}
          </button>
        ) : null}
      </nav>
    </>
  )
}
