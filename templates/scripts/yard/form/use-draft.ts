/** A draft while it is open: read once this window may write it, kept at every change, given away when another asks. */
import { useEffect, useRef, useState } from 'preact/hooks'
import type { Drafts, KeptDraft } from './drafts.ts'
import { type Holding, holdDraft } from './held.ts'
import { type Saver, type SaveState, saverOf } from './saver.ts'

export type DraftState =
  | { readonly is: 'opening' | 'missing' }
  /** Another window writes it. */
  | { readonly is: 'elsewhere' }
  | { readonly is: 'open'; readonly kept: KeptDraft }

export interface OpenDraft {
  readonly state: DraftState
  readonly saved: SaveState
  /** Takes what stands and gives what is to stand. */
  change(how: (kept: KeptDraft) => KeptDraft): void
  /** From the other window. */
  takeOver(): void
  /** Once nothing is being written any more: whether all is kept. */
  settled(): Promise<boolean>
}

/** How long another window may take to say that it has the draft, milliseconds. */
const patience = 250

export function useDraft(drafts: Drafts, id: string): OpenDraft {
  const [state, setState] = useState<DraftState>({ is: 'opening' })
  const [saved, setSaved] = useState<SaveState>('kept')
  const now = useRef<KeptDraft | null>(null)
  const saver = useRef<Saver<KeptDraft> | null>(null)
  const holding = useRef<Holding | null>(null)
  useEffect(() => {
    const keeper = saverOf<KeptDraft>(drafts.write, setSaved)
    saver.current = keeper
    let isTaken = false
    const held = holdDraft(id, {
      took: async () => {
        isTaken = true
        const kept = await drafts.read(id)
        now.current = kept
        setState(kept === null ? { is: 'missing' } : { is: 'open', kept })
      },
      asked: async () => void (await keeper.settled()),
      lost: () => {
        now.current = null
        setState({ is: 'elsewhere' })
      },
    })
    holding.current = held
    const waited = setTimeout(() => {
      if (!isTaken) setState({ is: 'elsewhere' })
    }, patience)
    return () => {
      clearTimeout(waited)
      keeper.settled().then(held.release)
    }
  }, [drafts, id])
  return {
    state,
    saved,
    change: (how) => {
      if (now.current === null) return
      const kept = how(now.current)
      if (kept === now.current) return
      now.current = kept
      setState({ is: 'open', kept })
      saver.current?.save(kept)
    },
    takeOver: () => holding.current?.ask(),
    settled: async () => (await saver.current?.settled()) ?? true,
  }
}
