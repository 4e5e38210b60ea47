/** One window writes a draft at a time: a second one waits, or asks for it, and the first then lets go. */

export interface Holding {
  /** Gives it back: another window may write. */
  release(): void
}

/**
 * @param took called once this window may write
 * @param asked called when another window asks for it: keep everything, then resolve
 * @param lost called after it was given away
 */
export function holdDraft(
  id: string,
  took: () => void,
  asked: () => Promise<void>,
  lost: () => void,
): Holding & { ask(): void } {
  const name = `growdown draft ${id}`
  const channel = new BroadcastChannel(name)
  const waiting = new AbortController()
  let release = () => waiting.abort()
  let isHeld = false
  const wait = () => {
    navigator.locks
      .request(name, { signal: waiting.signal }, () => {
        isHeld = true
        took()
        return new Promise<void>((done) => {
          release = done
        })
      })
      .catch(() => {
        // Given up while it waited.
      })
  }
  channel.addEventListener('message', async () => {
    if (!isHeld) return
    await asked()
    isHeld = false
    lost()
    const letGo = release
    release = () => waiting.abort()
    letGo()
    wait()
  })
  wait()
  return {
    ask: () => channel.postMessage('mine'),
    release: () => {
      channel.close()
      release()
      waiting.abort()
    },
  }
}
