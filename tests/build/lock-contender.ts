/**
 * A process that takes a lock again and again for a while, and often enough on a busy machine, writes down when it is
 * inside, and now and then dies there.
 */
import { appendFileSync } from 'node:fs'
import { disk } from '../../src/build/disk/real-disk.ts'

const [place = '', log = '', milliseconds] = process.argv.slice(2)
const me = String(process.pid)
const until = Date.now() + Number(milliseconds)

for (let times = 0; Date.now() < until || times < 40; ) {
  const lock = disk.lock(place, me)
  if ('by' in lock) {
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 1)
    continue
  }
  times++
  appendFileSync(log, `in ${me}\n`)
  for (const out = performance.now() + Math.random() * 3; performance.now() < out; );
  if (Math.random() < 0.02) process.kill(process.pid, 'SIGKILL')
  appendFileSync(log, `out ${me}\n`)
  lock.giveBack()
}
