/** Pictures of the visit: taken, scaled, told with few taps, marked, removed. */
import { useEffect, useRef, useState } from 'preact/hooks'
import { photoViews } from '../../../../src/hoof/landmarks.ts'
import { capital } from '../../../../src/pages/shared/format.ts'
import { isMarkedView } from '../../../../src/pages/mark/mark-task.ts'
import type { YardPhoto } from '../../../../src/yard/draft.ts'
import { sha256Of } from '../../../../src/yard/parcel.ts'
import { Choice } from './choice.tsx'
import { StoreFull } from './drafts.ts'
import { Marking } from './marking.tsx'
import { nextView, photoName, retold } from './photo-lines.ts'
import { scaledPicture } from './picture.ts'
import { Said } from './said.tsx'
import { useWriting, type Writing } from './writing.ts'

export function Pictures() {
  const writing = useWriting()
  const { draft, words, foot, stage, drafts, change } = writing
  const w = words.yardForm
  const [left, setLeft] = useState(0)
  const [trouble, setTrouble] = useState('')
  const [removed, setRemoved] = useState<readonly YardPhoto[]>([])
  const gone = useRef(removed)
  gone.current = removed
  // A picture can be brought back until this part is left.
  useEffect(
    () => () => {
      for (const { sha256 } of gone.current) drafts.dropPicture(draft.id, sha256)
    },
    [drafts, draft.id],
  )
  const remove = (photo: YardPhoto) => {
    change((now) => ({ ...now, photos: now.photos.filter(({ sha256 }) => sha256 !== photo.sha256) }))
    setRemoved([...removed, photo])
  }
  const bringBack = (photo: YardPhoto) => {
    change((now) => ({ ...now, photos: [...now.photos, photo] }))
    setRemoved(removed.filter(({ sha256 }) => sha256 !== photo.sha256))
  }
  /** One at a time: a phone has no memory for several large pictures at once. */
  const take = async (files: readonly File[]) => {
    setTrouble('')
    for (const [i, file] of files.entries()) {
      setLeft(files.length - i)
      const bytes = await scaledPicture(file)
      if (bytes === null) setTrouble(w.noPicture(file.name))
      else {
        const sha256 = await sha256Of(bytes)
        try {
          await drafts.keepPicture(draft.id, sha256, bytes)
        } catch (error) {
          setTrouble(error instanceof StoreFull ? w.saved.full : w.saved.failed)
          break
        }
        change((now) => {
          if (now.photos.some((photo) => photo.sha256 === sha256)) return now
          const shown = { sha256, foot, view: nextView(now.photos, foot, stage) }
          const photo = { ...shown, name: photoName(now.date, shown), stage, landmarks: null }
          return { ...now, photos: [...now.photos, photo] }
        })
      }
    }
    setLeft(0)
  }
  const here = draft.photos.filter((photo) => photo.foot === foot || photo.foot === null)
  const elsewhere = draft.photos.length - here.length
  return (
    <section class="yf-pictures" aria-label={w.tabs.pictures}>
      <div class="yf-take">
        <FileButton text={w.takePicture} isCamera take={take} isBusy={left > 0} />
        <FileButton text={w.choosePicture} take={take} isBusy={left > 0} />
      </div>
      <p role="status" class="yf-was">
        {left > 0 && w.scaling(left)}
      </p>
      {trouble !== '' && (
        <p role="alert" class="yf-message is-error">
          {trouble}
        </p>
      )}
      {removed.map((photo) => (
        <div key={photo.sha256} role="status" class="yf-message">
          <p>{w.pictureRemoved(pictureName(photo, writing))}</p>
          <button type="button" onClick={() => bringBack(photo)}>
            {w.undo}
          </button>
        </div>
      ))}
      {here.map((photo) => (
        <Shot
          key={photo.sha256}
          photo={photo}
          index={draft.photos.indexOf(photo)}
          remove={() => remove(photo)}
        />
      ))}
      {elsewhere > 0 && <p class="yf-was">{w.picturesElsewhere(elsewhere)}</p>}
    </section>
  )
}

interface FileButtonProps {
  readonly text: string
  readonly isCamera?: boolean
  readonly isBusy: boolean
  take(files: readonly File[]): void
}

const FileButton = ({ text, isCamera = false, isBusy, take }: FileButtonProps) => (
  <label class={`yf-file ${isCamera ? 'is-main' : ''}`}>
    {text}
    <input
      type="file"
      accept="image/*"
      capture={isCamera ? 'environment' : undefined}
      multiple={!isCamera}
      disabled={isBusy}
      onChange={({ currentTarget }) => {
        take([...(currentTarget.files ?? [])])
        currentTarget.value = ''
      }}
    />
  </label>
)

/** Address of a picture that the phone keeps, while it is shown. */
export function usePicture(sha256: string): string | 'lost' | null {
  const { drafts, draft } = useWriting()
  const [address, setAddress] = useState<string | 'lost' | null>(null)
  useEffect(() => {
    let made: string | null = null
    let isGone = false
    drafts.picture(draft.id, sha256).then((bytes) => {
      if (isGone) return
      if (bytes) made = URL.createObjectURL(new Blob([bytes], { type: 'image/jpeg' }))
      setAddress(made ?? 'lost')
    })
    return () => {
      isGone = true
      if (made !== null) URL.revokeObjectURL(made)
    }
  }, [drafts, draft.id, sha256])
  return address
}

const pictureName = ({ foot, view }: YardPhoto, { format, words }: Writing): string =>
  `${foot ? format.foot(foot) : words.yardForm.noFoot}, ${words.yardForm.views[view]}`

interface ShotProps {
  readonly photo: YardPhoto
  readonly index: number
  remove(): void
}

function Shot({ photo, index, remove }: ShotProps) {
  const writing = useWriting()
  const { words, change, format, knowledge } = writing
  const w = words.yardForm
  const address = usePicture(photo.sha256)
  const [isMarking, setMarking] = useState(false)
  const what = pictureName(photo, writing)
  const tell = (to: Partial<YardPhoto>) => change((now) => retold(now, photo.sha256, to))
  return (
    <figure class="yf-shot">
      {address === 'lost' ? <p>{w.lostPicture}</p> : address && <img src={address} alt={what} />}
      <figcaption>
        {capital(what)}
        {photo.landmarks !== null && `. ${w.pointsMarked}.`}
      </figcaption>
      <Choice
        label={w.view}
        options={photoViews.map((value) => ({ value, text: w.views[value] }))}
        chosen={photo.view}
        choose={(view) => view && tell({ view })}
      />
      <details class="yf-fold">
        <summary>{w.pictureOf}</summary>
        <Choice
          label={w.pictureOf}
          options={knowledge.feetOrder.map((value) => ({ value, text: value, name: format.foot(value) }))}
          chosen={photo.foot}
          choose={(foot) => tell({ foot })}
        />
        <Choice
          label={w.stage}
          options={(['before', 'after'] as const).map((value) => ({ value, text: w.stages[value] }))}
          chosen={photo.stage}
          choose={(stage) => tell({ stage })}
        />
      </details>
      <div class="yf-keys">
        {isMarkedView(photo.view) && address !== 'lost' && (
          <button type="button" onClick={() => setMarking(true)}>
            {w.markPoints}
          </button>
        )}
        <button type="button" aria-label={w.removeName(what)} onClick={remove}>
          {w.remove}
        </button>
      </div>
      <Said field={{ part: 'photos', index }} />
      {isMarking && address !== null && isMarkedView(photo.view) && (
        <Marking photo={photo} view={photo.view} address={address} what={what} close={() => setMarking(false)} />
      )}
    </figure>
  )
}
