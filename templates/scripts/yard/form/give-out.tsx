/** The keys by which visits leave the phone. */
import { useEffect, useState } from 'preact/hooks'
import type { YardDraft } from '../../../../src/yard/draft.ts'
import type { WritingPractice } from '../../../../src/yard/parcel.ts'
import type { FormFrame } from './frame.ts'
import { type Parcel, parcelOf, saveFile, share } from './give.ts'

interface GiveOutProps extends FormFrame {
  readonly given: readonly YardDraft[]
  readonly practice: WritingPractice
  readonly title: string
  /** Called once they are out. */
  out(): void
}

/** A parcel is made again when what is in it has rested so long, milliseconds. */
const rest = 300

export function GiveOut({ given, practice, title, out, drafts, words }: GiveOutProps) {
  const w = words.yardForm
  const [parcel, setParcel] = useState<Parcel | null>(null)
  const [isRefused, setRefused] = useState(false)
  const [isFailed, setFailed] = useState(false)
  const state = given.map(({ id, version, changed }) => `${id} ${version} ${changed}`).join()
  // biome-ignore lint/correctness/useExhaustiveDependencies: made anew when what is in it changes
  useEffect(() => {
    let isOld = false
    setParcel(null)
    setFailed(false)
    const waited = setTimeout(async () => {
      try {
        const made = await parcelOf(given, practice, drafts)
        if (!isOld) setParcel(made)
      } catch {
        setFailed(true)
      }
    }, rest)
    return () => {
      isOld = true
      clearTimeout(waited)
    }
  }, [state])
  return (
    <div>
      <p class="yf-was" role="status">
        {isFailed ? w.notPrepared : parcel === null ? w.preparing : w.giveHow}
      </p>
      {parcel?.shared && (
        <button
          type="button"
          class="yf-wide yf-next"
          onClick={async () => {
            const outcome = await share(parcel.shared ?? [], title)
            setRefused(outcome === 'refused')
            if (outcome === 'given') out()
          }}
        >
          {w.share}
        </button>
      )}
      {parcel && (parcel.shared === null || isRefused) && <p role="status">{w.notShared}</p>}
      <button
        type="button"
        class={`yf-wide ${parcel?.shared ? '' : 'yf-next'}`}
        disabled={parcel === null}
        onClick={() => {
          if (parcel === null) return
          saveFile(parcel.zip)
          out()
        }}
      >
        {w.saveFile}
      </button>
    </div>
  )
}
