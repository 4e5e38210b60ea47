import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import sharp from 'sharp'
import { afterEach, beforeEach, expect, it } from 'vitest'
import type { Answer, LocalSite } from '../../../src/apps/local-server.ts'
import { reviewPages } from '../../../src/apps/review/review-pages.ts'
import { lazyPageTools } from '../../../src/apps/site/site-units.ts'
import { casebook, type Trial, trial } from '../../editions/kit.ts'

let at: Trial
let pages: LocalSite
beforeEach(async () => {
  at = trial()
  const picture = sharp({ create: { width: 30, height: 20, channels: 3, background: '#842' } }).png()
  at.write('zoe/photos/a.png', await picture.toBuffer())
  at.write('zoe/photos/unnamed.png', await picture.toBuffer())
  const photos = 'photos:\n  - {file: photos/a.png, foot: LF, view: lateral}\nfindings:'
  at.write('zoe/2026-01-12.md', (casebook['zoe/2026-01-12.md'] ?? '').replace('findings:', photos))
  pages = reviewPages({
    casebook: at.casebook,
    today: () => '2026-03-01',
    open: lazyPageTools(),
    key: 'the key',
  })
})
afterEach(() => at.done())

const show = async (address: string) => {
  const { pathname, searchParams } = new URL(address, 'http://127.0.0.1')
  return pages.show({ path: pathname, query: searchParams, isFromHere: true })
}
const shown = async () => String(((await show('/-/review')) as Answer).body)
const approve = (body: unknown) =>
  pages.taker('/-/review/approve')?.(typeof body === 'string' ? body : JSON.stringify(body))
const hashesOn = (page: string) => [...page.matchAll(/data-hash="([\w-]{43})"/g)].map(([, hash = '']) => hash)

it('keeps what is approved with the key of this server, and shows it no more', async () => {
  const hashes = hashesOn(await shown())
  expect(hashes).toHaveLength(8)
  expect(approve({ key: 'the key', hashes: hashes.slice(0, 4) })).toMatchObject({ status: 200 })
  expect(hashesOn(await shown())).toEqual(hashes.slice(4))
})

it('keeps nothing for another key, nor what it has not shown, nor what it cannot read', async () => {
  const hashes = hashesOn(await shown())
  const strange = 'A'.repeat(43)
  expect(approve({ key: 'another', hashes })).toMatchObject({ status: 403 })
  expect(approve({ key: 'the key', hashes: [...hashes, strange] })).toMatchObject({ status: 409 })
  for (const body of [
    '',
    '{',
    '[]',
    { hashes },
    { key: 'the key', hashes: [] },
    { key: 'the key', hashes: [1] },
  ])
    expect(approve(body)).toMatchObject({ status: 400 })
  expect(() => readFileSync(join(at.casebook, 'approvals.txt'))).toThrow('ENOENT')
  expect(pages.taker('/-/review')).toBeNull()
})

it('approves the very sentence that was shown, whatever the case file says by then', async () => {
  const hashes = hashesOn(await shown())
  const visit = join(at.casebook, 'pip/2026-01-12.md')
  writeFileSync(visit, readFileSync(visit, 'utf8').replace('came from', 'was stolen from'))
  approve({ key: 'the key', hashes })
  const page = await shown()
  expect(hashesOn(page)).toHaveLength(1)
  expect(page).toContain('was stolen from')
})

it('hands out the photographs that it asks about, and no other file', async () => {
  const page = await shown()
  const [, src = ''] = /<img src="([^"]+)"/.exec(page) ?? []
  const photo = await show(src.replace('&#x3D;', '='))
  expect(photo).toMatchObject({ type: 'image/png' })
  if ('stream' in photo) photo.stream.destroy()
  for (const path of ['photo?hash=x', 'photo', 'photo?hash=zoe/photos/unnamed.png', '../practice.md', 'x'])
    expect(await show(`/-/review/${path}`)).toMatchObject({ status: 404 })
})
