/** The preview as a person starts it. */
import { spawn } from 'node:child_process'
import { resolve } from 'node:path'

export interface Started {
  /** `http://127.0.0.1:4174/`. */
  readonly address: string
  stop(): Promise<void>
}

/** @param cwd holds the folder `cases` */
export async function startPreview(cwd: string): Promise<Started> {
  const child = spawn(process.execPath, [resolve('dist/cli.js'), 'preview', '--port', '0'], { cwd })
  const ended = new Promise<void>((done) => child.once('close', () => done()))
  let heard = ''
  const address = await new Promise<string>((found, failed) => {
    const hear = (part: Buffer) => {
      heard += part
      const match = /Open (\S+)\n/.exec(heard)
      if (match?.[1]) found(match[1])
    }
    child.stdout.on('data', hear)
    child.stderr.on('data', hear)
    child.once('exit', (status) => failed(new Error(`preview ended with ${status}: ${heard}`)))
  })
  return {
    address,
    stop: async () => {
      child.kill('SIGINT')
      await ended
    },
  }
}
