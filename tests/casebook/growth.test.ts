/**
 * Nothing that stands in a case file takes a time that grows faster than its length: not in reading, nor in any page that
 * is made of it, nor in the search of those pages. How long it takes is asked nowhere; what is held against each other
 * is the processor's time for a text and for one four times as long. The short run takes each field with one or two of
 * its fillings, others for each of two lengths, every fifth construct of Markdown in what others read, and all that was
 * once slow, of a smaller size.
 */
import { beforeAll, describe, expect, it } from 'vitest'
import { limits } from '../../src/casebook/limits.ts'
import { isLong } from '../runs.ts'
import { growingBodies } from './growing/bodies.ts'
import { growingFields } from './growing/fields.ts'
import { filesWith, type Growing } from './growing/files.ts'
import { journey } from './journey.ts'

/** Below this, in milliseconds, for the longest text, growth cannot be told from chance. */
const floor = 60
/** Four times the length may take so many times as long; a square would take sixteen. */
const mostGrowth = 8
/** What no text takes less than, in milliseconds, however short it is: nothing is held against less. */
const leastTime = 6
/** So often is a growth measured anew before it counts. */
const attempts = 5

/** Milliseconds of this process on a processor, whatever else the machine does. */
const processorTime = (): number => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

async function timeOf(one: Growing, size: number): Promise<number> {
  const files = one.files(size)
  const start = processorTime()
  await journey(files)
  return processorTime() - start
}

/** What a casebook takes in which nothing grows: a text of whatever size takes no less. */
let leastOfAll = 0
beforeAll(async () => {
  const nothing: Growing = { name: 'nothing', files: () => filesWith({}) }
  leastOfAll = await timeOf(nothing, 0)
  for (let again = 0; again < 9; again++) leastOfAll = Math.min(leastOfAll, await timeOf(nothing, 0))
})

/** Null where the time grows no faster than the length; else what was measured at each size. */
async function excessOf(one: Growing, size: number): Promise<string | null> {
  const sizes = [size, 2 * size, 4 * size]
  const least = sizes.map(() => Infinity)
  for (let attempt = 0; attempt < attempts; attempt++) {
    // The longest first: most texts are done with before anything is to be compared.
    for (const [index, length] of [...sizes.entries()].reverse()) {
      least[index] = Math.min(least[index] ?? Infinity, await timeOf(one, length))
      if ((least[2] ?? 0) < Math.max(floor, mostGrowth * leastOfAll)) return null
    }
    const [short = 0, , long = 0] = least
    if (long < mostGrowth * Math.max(short, leastTime)) return null
  }
  return `${one.name}: ${least.map((time, index) => `${sizes[index]} letters ${time.toFixed(0)} ms`).join(', ')}`
}

/**
 * In the short run one of 41, from the given one on. That is a prime and there are more fillings, so that each field is
 * among them, and each filling with several fields.
 */
const sample = (from: number): readonly Growing[] =>
  isLong ? growingFields : growingFields.filter((_, index) => index % 41 === from)

/** One test for all texts of which the name begins alike. */
function groups(
  all: readonly Growing[],
  of: (one: Growing) => string,
): readonly [string, readonly Growing[]][] {
  const found = new Map<string, Growing[]>()
  for (const one of all) found.set(of(one), [...(found.get(of(one)) ?? []), one])
  return [...found]
}

async function excesses(all: readonly Growing[], size: number): Promise<readonly string[]> {
  const told: string[] = []
  for (const one of all) {
    const excess = await excessOf(one, size)
    if (excess !== null) told.push(excess)
  }
  return told
}

const timeout = 600_000

describe('the time for a text of the block grows with its length alone', () => {
  const fields = (from: number) => groups(sample(from), ({ name }) => name.replace(/ with .*$/, ''))

  it.each(fields(0))(
    '%s, up to the longest that is read',
    async (_, all) => {
      expect(await excesses(all, limits.text / 4)).toEqual([])
    },
    timeout,
  )

  it.each(fields(15))(
    '%s, in a file of the largest kind',
    async (_, all) => {
      expect(await excesses(all, isLong ? 60_000 : 8_000)).toEqual([])
    },
    timeout,
  )
})

describe('the time for Markdown grows with its length alone', () => {
  // What others read is read, made into pages of each kind, rewritten and searched; notes are a part of that. Constructs
  // that are alike stand together, so that every fifth is of every kind.
  const forOthers = growingBodies.filter(({ name }) => name.startsWith('for others'))
  const bodies = groups(
    isLong ? growingBodies : forOthers.filter((_, index) => index % 5 === 0),
    ({ name }) => name.replace(/^[^:]*: /, ''),
  )

  it.each(bodies)(
    '%s',
    async (_, all) => {
      expect(await excesses(all, isLong ? 16_000 : 1000)).toEqual([])
    },
    timeout,
  )
})

/** Each once took minutes. */
const known: readonly Growing[] = [
  {
    name: 'empty lines in the block',
    files: (size) => filesWith({ visit: `care: [a]${'\n'.repeat(size)}footing: b` }),
  },
  {
    name: 'lines of spaces in the block',
    files: (size) => filesWith({ horse: `kind: a${'\n '.repeat(size / 2)}\nsex: b` }),
  },
  {
    name: 'empty lines above the block',
    files: (size) => ({ ...filesWith({}), 'juno/2026-02-16.md': `${'\n'.repeat(size)}---\n` }),
  },
  {
    name: 'empty lines in the notes',
    files: (size) => filesWith({ visitBody: `owner${'\n'.repeat(size)}b` }),
  },
  { name: 'spaces in a name', files: (size) => filesWith({ horse: `name: "a${' '.repeat(size)}b"` }) },
  {
    name: 'slashes in a path',
    files: (size) => filesWith({ visit: `photos: [{file: "a${'/'.repeat(size)}"}]` }),
  },
]

describe('the time for what was once slow grows with its length alone, up to the largest file', () => {
  it.each(known)(
    '$name',
    async (one) => {
      expect(await excesses([one], isLong ? 60_000 : 16_000)).toEqual([])
    },
    timeout,
  )
})
