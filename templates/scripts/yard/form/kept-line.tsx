/** Whether what is written is kept, and whether the phone has room for more. */
import { useEffect, useState } from 'preact/hooks'
import type { Room } from './drafts.ts'
import type { FormFrame } from './frame.ts'
import type { SaveState } from './saver.ts'
import { useWriting } from './writing.ts'

export function KeptLine({ saved }: { readonly saved: SaveState }) {
  const { words, show } = useWriting()
  const w = words.yardForm
  if (saved === 'kept' || saved === 'keeping')
    return (
      <p class="yf-kept" data-saved={saved}>
        {w.saved[saved]}
      </p>
    )
  return (
    <div role="alert" class="yf-message is-error yf-not-kept" data-saved={saved}>
      <p>{w.saved[saved]}</p>
      <button type="button" onClick={() => show('finish')}>
        {w.give}
      </button>
    </div>
  )
}

/** Some thirty pictures: while that much is left nothing is said. */
const little = 25_000_000

/** @param asked anew whenever it changes */
export function RoomLeft({ drafts, words, asked }: Pick<FormFrame, 'drafts' | 'words'> & { readonly asked: number }) {
  const [room, setRoom] = useState<Room>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked anew with each picture
  useEffect(() => {
    drafts.room().then(setRoom)
  }, [drafts, asked])
  if (room === null || room > little) return null
  return (
    <p role="status" class="yf-message is-warning">
      {words.yardForm.nearlyFull((room / 1_000_000).toFixed(room < 10_000_000 ? 1 : 0))}
    </p>
  )
}
