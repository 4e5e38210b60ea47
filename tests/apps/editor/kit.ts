/** A copy of a casebook, and the program as an editor opened in it. */
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterEach, beforeEach } from 'vitest'
import { type Editor, openEditor } from './client.ts'

/** Of the test that runs. */
export let folder: string
export let editor: Editor

/** Gives each test of a file a folder of its own, and ends its editor. */
export function inEditor(): void {
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'growdown-'))
  })
  afterEach(async () => {
    await editor.close()
    rmSync(folder, { recursive: true })
  })
}

export async function openIn(place: string, capabilities?: object): Promise<void> {
  editor = await openEditor(place, capabilities)
}

export async function lay(casebook: string, capabilities?: object): Promise<void> {
  cpSync(resolve('tests/casebooks', casebook), folder, { recursive: true })
  await openIn(folder, capabilities)
}

export const onDisk = (path: string): string => readFileSync(join(folder, path), 'utf8')

export const visit = 'juno/2026-03-23.md'
