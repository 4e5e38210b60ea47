#!/usr/bin/env node
/** The program as it is started: the world handed to the command line. */
import { controlsShown } from './casebook/control-characters.ts'
import { clearLine, exit, type World, type Writer } from './commands/command.ts'
import { runCommandLine } from './commands/command-line.ts'

function writer(stream: NodeJS.WriteStream): Writer {
  // A reader that has heard enough, such as `head`, closes the pipe: no fault of anyone's.
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error
  })
  return {
    write: (text) => {
      const own = text.startsWith(clearLine) ? clearLine : ''
      stream.write(own + controlsShown(text.slice(own.length)))
    },
    isTerminal: stream.isTTY === true,
  }
}

/** The calendar date where the person is. */
function localDate(): string {
  const now = new Date()
  const two = (number: number) => String(number).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

/** A first wish to stop is passed on; a second one ends the program at once, which harms nothing. */
function wishToStop(): AbortSignal {
  const controller = new AbortController()
  const ask = () => {
    if (controller.signal.aborted) process.exit(exit.stopped)
    controller.abort()
  }
  for (const name of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(name, ask)
  return controller.signal
}

/** Keys as they are pressed. A terminal is set to hand on each at once, and set back at the end. */
async function* keysOf(stream: NodeJS.ReadStream, signal: AbortSignal): AsyncGenerator<string> {
  const isTerminal = stream.isTTY === true
  const stop = () => void stream.destroy()
  signal.addEventListener('abort', stop, { once: true })
  if (isTerminal) stream.setRawMode(true)
  stream.setEncoding('utf8')
  try {
    for await (const chunk of stream) {
      const text = String(chunk)
      if (!isTerminal) yield* text
      else if (['\u0003', '\u0004'].includes(text.slice(0, 1))) return
      // An arrow is several signs at once; of a key held down the first counts, since the rest answers what nobody has read.
      else if (!text.startsWith('\u001b')) yield text.slice(0, 1)
    }
  } catch (error) {
    if (!signal.aborted) throw error
  } finally {
    signal.removeEventListener('abort', stop)
    if (isTerminal) stream.setRawMode(false)
    stream.destroy()
  }
}

function openWorld(): World {
  const signal = wishToStop()
  return {
    cwd: process.cwd(),
    stdout: writer(process.stdout),
    stderr: writer(process.stderr),
    today: localDate,
    now: Date.now,
    signal,
    keys: () => keysOf(process.stdin, signal),
  }
}

process.exitCode = await runCommandLine(process.argv.slice(2), openWorld())
