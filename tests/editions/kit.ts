/** A casebook of two owners on the disk, for tests of the editions that leave the practitioner's machine. */
import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { decide } from '../../src/apps/review/approvals-on-disk.ts'
import { reviewCasebook } from '../../src/apps/review/casebook-review.ts'
import { type Built, buildSite } from '../../src/apps/site/build-site.ts'
import { lazyPageTools } from '../../src/apps/site/site-units.ts'
import { disk } from '../../src/build/disk/real-disk.ts'
import { ownerEdition } from '../../src/editions/owner.ts'
import { portfolio } from '../../src/editions/portfolio.ts'
import { practice } from '../../src/editions/practice.ts'
import { yardEdition } from '../../src/editions/yard.ts'

export const casebook: Readonly<Record<string, string>> = {
  'practice.md': `---
practice: Sandpiper Hoof Care
units: mm
trim cycle: 5 weeks
owners:
  kestrel: {name: Ada Kestrel}
  fenwick: {name: Orla O'Fenwick}
---
`,
  ...horse('zoe', 'Zoë', 'kestrel', 'Bramble', 'Thistledown Yard'),
  ...horse('pip', 'Pipkin', 'kestrel', 'Sorrel', 'Thistledown Yard'),
  ...horse('may', 'May', 'fenwick', 'Fern', 'Hestercombe'),
}

function horse(id: string, name: string, owner: string, alias: string, yard: string): Record<string, string> {
  return {
    [`${id}/horse.md`]: `---
name: ${name}
owner: ${owner}
kind: cob
born: 2014
started: 2026-01-12
consent: {owner site: yes, portfolio: yes, photos: yes, given: 2026-01-12}
alias: ${alias}
private words: [${yard}]
---
PRIVATE-${id.toUpperCase()}
`,
    [`${id}/2026-01-12.md`]: `---
date: 2026-01-12
before:
  toe length:   [98, 96, 90, 91]
  toe angle:    [44, 45, 48, 47]
  heel medial:  [36, 33, 30, 33]
  heel lateral: [30, 31, 31, 32]
after:
  toe length:   [92, 91, 86, 87]
findings:
  LF:
    - flare, medial quarter, 2
---
PRIVATE-${id.toUpperCase()}

## For the owner

LETTER-${id.toUpperCase()} to you.

## For teaching

${name} came from ${yard} on 2026-01-12.
`,
    [`${id}/2026-02-16.md`]: `---
date: 2026-02-16
before:
  toe length:   [98, 97, 91, 92]
  toe angle:    [46, 46, 49, 48]
after:
  toe length:   [90, 89, 85, 86]
care:
  - CARE-${id.toUpperCase()} every day
next visit: in 5 weeks
---
`,
  }
}

/** Warm for all trials of a file, as they are between the builds of a preview. */
const openTools = lazyPageTools()

/** What of a casebook waits for approval, or all of it that leaves. */
export const reviewed = async (casebook: string, asOf = '2026-03-01', withApproved = false) =>
  reviewCasebook(casebook, asOf, withApproved, await openTools())

export interface Trial {
  readonly root: string
  readonly casebook: string
  readonly site: string
  write(path: string, data: string | Uint8Array): void
  /** With all approved that leaves, as a person has read it. */
  build(editions?: readonly string[], asOf?: string): Promise<Built>
  /** With nothing approved but what was before. */
  buildUnread(editions?: readonly string[], asOf?: string): Promise<Built>
  approveAll(asOf?: string): Promise<void>
  /** Keeps casebook and site as they are now; what is given back makes them so again, down to the times of files. */
  keep(): () => void
  done(): void
}

/** @param factor how hard the lock is to turn; the real one takes half a second a page */
export function trial(files: Readonly<Record<string, string | Uint8Array>> = casebook, factor = 8): Trial {
  const root = mkdtempSync(join(tmpdir(), 'growdown-shared-'))
  const at = { casebook: join(root, 'cases'), site: join(root, 'site') }
  const write = (path: string, data: string | Uint8Array) => {
    const file = join(at.casebook, path)
    mkdirSync(dirname(file), { recursive: true })
    writeFileSync(file, data)
  }
  for (const [path, text] of Object.entries(files)) write(path, text)
  const approveAll = async (asOf?: string) => {
    const { cases } = await reviewed(at.casebook, asOf)
    const waiting = cases.flatMap(({ items }) => items.map(({ item }) => item))
    if (waiting.length > 0) decide(at.casebook, waiting, true)
  }
  const buildUnread = (editions: readonly string[] = ['owner', 'portfolio'], asOf = '2026-03-01') => {
    const known = [practice, yardEdition(factor), ownerEdition(factor), portfolio]
    return buildSite(
      { ...at, editions: known.filter(({ name }) => editions.includes(name)), every: known, asOf },
      {
        files: disk,
        threads: 1,
        openTools,
        program: 'test',
        now: () => Date.now() + 60_000,
        report: () => {},
        signal: new AbortController().signal,
      },
    )
  }
  return {
    root,
    ...at,
    write,
    build: async (editions, asOf) => {
      await approveAll(asOf)
      return buildUnread(editions, asOf)
    },
    buildUnread,
    approveAll,
    keep: () => {
      execFileSync('cp', ['-a', root, `${root}-kept`])
      return () => {
        rmSync(root, { recursive: true })
        execFileSync('cp', ['-a', `${root}-kept`, root])
      }
    },
    done: () => {
      for (const folder of [root, `${root}-kept`]) rmSync(folder, { recursive: true, force: true })
    },
  }
}
