/** A locked page is an age file like any other: the age command-line program opens it, where it is installed. */
import { spawn, spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { lockPage } from '../../../src/editions/lock/lock.ts'
import { padded } from '../../../src/editions/lock/padding.ts'

const page = '<!doctype html>\n<p>Zoë stands well on day 35.</p>\n'
const key = { passphrase: 'abacus abdomen abdominal abide abiding ability', token: 't', secret: 's' }

/** age asks on a terminal alone; `script` of util-linux lends it one. */
const isHere = (command: string, option: string) => spawnSync(command, [option]).status === 0
const canRun = isHere('age', '--version') && isHere('script', '--version')

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'growdown-age-'))
})
afterEach(() => rmSync(folder, { recursive: true }))

function openedByAge(
  file: string,
  passphrase: string,
): Promise<{ status: number | null; text: string | null }> {
  const out = join(folder, 'page.html')
  const child = spawn('script', ['-qefc', `age --decrypt --output '${out}' '${file}'`, '/dev/null'])
  return new Promise((resolve, reject) => {
    child.on('error', reject)
    // Once it asks, so that the terminal does not echo.
    child.stdout.once('data', () => child.stdin.write(`${passphrase}\n`))
    child.on('exit', (status) => resolve({ status, text: status === 0 ? readFileSync(out, 'utf8') : null }))
  })
}

describe.skipIf(!canRun)('the age program', () => {
  it('opens a locked page with the words, and gives it byte for byte', async () => {
    const full = padded(page, 40_000, 10)
    const { armored } = await lockPage(full, key, null, 10)
    const file = join(folder, 'page.age')
    writeFileSync(file, armored)
    expect(await openedByAge(file, key.passphrase)).toEqual({ status: 0, text: full })
    expect(full.startsWith(page)).toBe(true)
  })

  it('does not with others', async () => {
    const { armored } = await lockPage(page, key, null, 10)
    const file = join(folder, 'page.age')
    writeFileSync(file, armored)
    expect((await openedByAge(file, 'other words')).status).not.toBe(0)
  })
})
