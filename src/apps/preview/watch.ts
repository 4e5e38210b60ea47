/** Says when something in a folder has changed, once per burst of changes. */
import { basename } from 'node:path'
import { watch } from 'chokidar'

/**
 * Milliseconds of quiet that end a burst. An editor writes, renames and deletes within one or two of them; what comes
 * later starts one more build, and somebody waits for each that is added here.
 */
const quiet = 8

/** Swap files, backups, locks and hidden files: nothing that a person has finished writing. */
export const isTemporary = (path: string): boolean =>
  /^\.|~$|\.sw[a-p]$|\.tmp$|\.bak$|^4913$|^#.*#$/.test(basename(path))

export interface Watching {
  /** Takes a path as changed, as if it had been seen to change. */
  report(path: string): void
  /** Resolves when `changed` has run for all that was seen so far; null when it has. */
  settled(): Promise<void> | null
  close(): Promise<void>
}

/**
 * Calls `changed` after each burst, never twice at once: changes that come while it runs start it again after.
 * Where the system cannot tell what changed, the folder itself is among the paths.
 * @returns when the folder is being watched
 */
export async function watchFolder(
  folder: string,
  changed: (paths: ReadonlySet<string>) => Promise<void>,
): Promise<Watching> {
  const watcher = watch(folder, {
    ignored: (path) => path !== folder && isTemporary(path),
    ignoreInitial: true,
    followSymlinks: false,
  })
  let pending = new Set<string>()
  let timer: NodeJS.Timeout | undefined
  let running = false
  let settling: { readonly promise: Promise<void>; readonly resolve: () => void } | null = null
  const run = async () => {
    if (running || pending.size === 0) return
    running = true
    const paths = pending
    pending = new Set()
    try {
      await changed(paths)
    } finally {
      running = false
      if (pending.size > 0) timer = setTimeout(run, quiet)
      else settle()
    }
  }
  const settle = () => {
    settling?.resolve()
    settling = null
  }
  const report = (path: string) => {
    settling ??= settlement()
    pending.add(path)
    clearTimeout(timer)
    timer = setTimeout(run, quiet)
  }
  watcher.on('all', (_event, path) => report(path))
  watcher.on('error', () => report(folder))
  await new Promise<void>((resolve) => watcher.once('ready', resolve))
  return {
    report,
    settled: () => settling?.promise ?? null,
    close: async () => {
      clearTimeout(timer)
      settle()
      await watcher.close()
    },
  }
}

function settlement() {
  let resolve = () => {}
  const promise = new Promise<void>((done) => {
    resolve = done
  })
  return { promise, resolve }
}
