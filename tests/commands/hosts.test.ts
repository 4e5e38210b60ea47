import { describe, expect, it } from 'vitest'
import type { Built } from '../../src/apps/site/build-site.ts'
import { printHosts, printWithdrawn } from '../../src/commands/hosts.ts'
import { portfolio } from '../../src/editions/portfolio.ts'

const path = (name: string, files = 1) => ({ path: name, files })

describe('what a build says of a host', () => {
  it('is what to upload and what to delete, folders with the number of their files', () => {
    const hosts = [
      { folder: 'owners', upload: [path('owners/ab12/', 1)], remove: [path('owners/cd34/', 1)] },
      {
        folder: 'portfolio',
        upload: [path('portfolio/fern/', 12), path('portfolio/index.html')],
        remove: [],
      },
    ]
    expect(printHosts(hosts, 'site')).toBe(
      `To upload from site:
  owners/ab12/ (1 file)
  portfolio/fern/ (12 files)
  portfolio/index.html
To delete on the host:
  owners/cd34/ (1 file)
`,
    )
  })

  it('is short where there is much, and says where there is nothing', () => {
    const upload = Array.from({ length: 15 }, (_, n) => path(`portfolio/c${n}/`, 2))
    const hosts = [
      { folder: 'owners', upload: [], remove: [] },
      { folder: 'portfolio', upload, remove: [] },
    ]
    const lines = printHosts(hosts, 'site').split('\n')
    expect(lines.length).toBe(16)
    expect(lines.slice(12)).toEqual([
      '  portfolio/c11/ (2 files)',
      '  and 6 more files',
      'Nothing to upload and nothing to delete: owners/',
      '',
    ])
  })

  it('is nothing after a build of the practice alone', () => {
    expect(printHosts([], 'site')).toBe('')
  })

  it('names what rested on a consent that has ended', () => {
    const paths = { written: [], removed: [], all: ['owners/ab12/index.html'] }
    const built: Built = {
      diagnostics: [],
      published: { written: 0, removed: 0, total: 1, left: [], paths },
      exceptions: [],
      waiting: [],
      horses: { made: 0, unchanged: 0, broken: 0 },
      refusals: [],
      withdrawn: [
        { folder: 'portfolio/fern', ended: ['zoe: portfolio', 'zoe: photos'] },
        { folder: 'owners/ab12', ended: ['zoe: owner site of ada'] },
      ],
      hosts: [],
      alsoBuilt: [portfolio],
    }
    expect(printWithdrawn(built)).toBe(
      `No longer consented to (zoe: portfolio; zoe: photos): portfolio/fern/ is removed.
No longer consented to (zoe: owner site of ada): owners/ab12/ is made without it.
Built as well, though not asked for: the portfolio edition.
`,
    )
  })
})
