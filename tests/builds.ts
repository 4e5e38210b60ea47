import { mkdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { TestProject } from 'vitest/node'

declare module 'vitest' {
  interface ProvidedContext {
    /** Folder of what several test files look at and none changes. */
    builds: string
  }
}

/** Gives all tests of one run a folder in common, for sites that are built once. */
export default function setup({ provide }: TestProject): () => void {
  const folder = join(tmpdir(), `growdown-builds-${process.pid}`)
  mkdirSync(folder, { recursive: true })
  provide('builds', folder)
  return () => rmSync(folder, { recursive: true, force: true })
}
