/** One window writes a draft at a time: a second one waits, or asks for it, and the first then lets go. */

export interface Holding {
  /** From the window that has it: it is taken where that window does not answer, being asleep. */
  ask(): void
  /** Gives it back: another window may write. */
  release(): void
}

/** How long the other window may take to answer, milliseconds. */
const patience = 2000

interface Holder {
  /** Called once this window may write. */
  took(): void
  /** Called when another window asks: keep everything, then resolve. */
  asked(): Promise<void>
  /** Called once this window may write no more. */
  lost(): void
}

export function holdDraft(id: string, { took, asked, lost }: Holder): Holding {
  const name = `growdown draft ${id}`
  const channel = new BroadcastChannel(name)
  const end = new AbortController()
  let letGo: (() => void) | null = null
  const hold = () => {
    took()
    return new Promise<void>((done) => {
      letGo = done
    })
  }
  /** Waits for its turn, or takes it by force; and waits again where it was taken by force from here. */
  const request = async (isForced: boolean): Promise<void> => {
    try {
      await navigator.locks.request(name, isForced ? { steal: true } : { signal: end.signal }, hold)
    } catch {
      if (letGo === null || end.signal.aborted) return
      letGo = null
      lost()
      void request(false)
    }
  }
  channel.addEventListener('message', async () => {
    if (letGo === null) return
    await asked()
    const done = letGo
    letGo = null
    lost()
    done()
    void request(false)
  })
  void request(false)
  return {
    ask: () => {
      channel.postMessage('mine')
      setTimeout(() => {
        if (letGo === null && !end.signal.aborted) void request(true)
      }, patience)
    },
    release: () => {
      channel.close()
      end.abort()
      letGo?.()
    },
  }
}
