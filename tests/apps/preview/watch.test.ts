import { mkdtempSync, renameSync, rmSync, unlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { isTemporary, type Watching, watchFolder } from '../../../src/apps/preview/watch.ts'
import { eventually } from './eventually.ts'

describe('watchFolder', () => {
  let folder: string
  let watching: Watching
  let bursts: string[][]

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'growdown-'))
    bursts = []
    watching = await watchFolder(folder, async (paths) => {
      bursts.push([...paths].map((path) => basename(path)))
    })
  })
  afterEach(async () => {
    await watching.close()
    rmSync(folder, { recursive: true })
  })

  it('tells of a save that an editor does by rename, and of a deletion', async () => {
    writeFileSync(join(folder, '.visit.md.swp'), 'half')
    writeFileSync(join(folder, 'visit.md~'), 'half')
    renameSync(join(folder, 'visit.md~'), join(folder, 'visit.md'))
    await eventually(() => expect(bursts.flat()).toContain('visit.md'))
    expect(bursts.flat()).not.toContain('.visit.md.swp')
    const before = bursts.length
    unlinkSync(join(folder, 'visit.md'))
    await eventually(() => expect(bursts.length).toBeGreaterThan(before))
  })

  it('takes it from others that something changed', async () => {
    watching.report(join(folder, 'visit.md'))
    watching.report(join(folder, 'horse.md'))
    await eventually(() => expect(bursts).toEqual([['visit.md', 'horse.md']]))
  })

  it('knows files that are passing', () => {
    for (const name of ['.visit.md.swp', 'visit.md~', '4913', '#visit.md#', 'visit.md.tmp', '.hidden']) {
      expect(isTemporary(`cases/juno/${name}`), name).toBe(true)
    }
    expect(isTemporary('cases/juno/2026-03-14.md')).toBe(false)
  })
})
