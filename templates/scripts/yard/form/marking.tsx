/** Points marked on a picture of the visit, on the same board as at the desk. */
import { useEffect, useRef } from 'preact/hooks'
import { landmarkText } from '../../../../src/pages/mark/landmark-block.ts'
import { isMirrored, type MarkedView, markTask } from '../../../../src/pages/mark/mark-task.ts'
import type { YardPhoto } from '../../../../src/yard/draft.ts'
import { partOf, startMarking } from '../../marking/tool.ts'
import { changedDraft, useWriting } from './writing.ts'

interface MarkingProps {
  readonly photo: YardPhoto
  readonly view: MarkedView
  readonly address: string
  readonly what: string
  close(): void
}

/** The board's elements, from the page's template (templates/partials/mark/laid-by.hbs), with the drawing of a view. */
function boardElements(view: MarkedView): DocumentFragment {
  const template = document.querySelector<HTMLTemplateElement>('#marking')
  if (template === null) throw new Error('the page has no board for marking')
  const board = document.importNode(template.content, true)
  for (const sample of board.querySelectorAll<HTMLElement>('[data-sample]')) {
    if (!sample.dataset.sample?.split(' ').includes(view)) sample.remove()
  }
  return board
}

export function Marking({ photo, view, address, what, close }: MarkingProps) {
  const { words, kept, changeKept } = useWriting()
  const w = words.yardForm
  const dialog = useRef<HTMLDialogElement>(null)
  const place = useRef<HTMLDivElement>(null)
  const known = useRef(kept.marks[photo.sha256] ?? null)
  useEffect(() => {
    dialog.current?.showModal()
    const root = place.current
    if (root === null) return
    root.replaceChildren(boardElements(view))
    const { foot, sha256 } = photo
    if (foot !== null && isMirrored(view, foot))
      root.querySelector('.mark-sample g')?.setAttribute('transform', 'translate(200 0) scale(-1 1)')
    const picture = partOf<HTMLImageElement>(root, 'picture')
    picture.src = address
    picture.decode().then(() => {
      const { naturalWidth: width, naturalHeight: height } = picture
      const landmarks = known.current
      startMarking(
        root,
        markTask({ view, foot, landmarks, width, height, focalLength: null }, null, words.mark),
        (marked) => {
          const text = landmarkText(marked, '')
          const isEmpty = text === ''
          changeKept((now) => {
            const photos = now.draft.photos.map((one) =>
              one.sha256 === sha256 ? { ...one, landmarks: isEmpty ? null : text } : one,
            )
            const isSame = now.draft.photos.every((one, i) => one.landmarks === photos[i]?.landmarks)
            if (isSame) return now
            return {
              ...now,
              draft: changedDraft({ ...now.draft, photos }),
              marks: { ...now.marks, [sha256]: marked },
            }
          })
        },
      )
    })
    // biome-ignore lint/correctness/useExhaustiveDependencies: the board works by itself once it stands
  }, [])
  return (
    <dialog ref={dialog} class="yf-marking mark" aria-label={w.marking(what)} onClose={close}>
      <div class="yf-marking-head">
        <h2>{w.marking(what)}</h2>
        <button type="button" onClick={() => dialog.current?.close()}>
          {w.doneMarking}
        </button>
      </div>
      <div ref={place} />
    </dialog>
  )
}
