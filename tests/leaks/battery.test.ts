/** Every planted form comes to what the battery says of it; no harmless sentence is changed or refused. */
import { describe, expect, it } from 'vitest'
import { outcomeOf, stage } from './battery.ts'
import * as dates from './forms/dates.ts'
import * as likely from './forms/likely.ts'
import * as names from './forms/names.ts'
import * as patterns from './forms/patterns.ts'
import * as scripts from './forms/scripts.ts'
import * as notes from './harmless/notes.ts'

const sets = [names, scripts, patterns, dates, likely].flatMap((file) => Object.values(file))
const harmless = Object.values(notes)

describe.each(sets)('planted: $kind', ({ cast, forms }) => {
  const on = stage(cast)
  it.each(forms)('%s: %s', async (outcome, text) => {
    expect(await outcomeOf(on, text)).toBe(outcome)
  })
})

describe.each(harmless)('harmless: $kind', ({ cast, sentences }) => {
  const on = stage(cast)
  it.each(sentences)('%s', async (sentence) => {
    const { rewritten, hits } = await on.note(sentence)
    expect({ rewritten, hits }).toEqual({ rewritten: sentence, hits: [] })
  })
})

it('is as large as it should be', () => {
  expect(sets.flatMap(({ forms }) => forms).length).toBeGreaterThanOrEqual(211)
  expect(harmless.flatMap(({ sentences }) => sentences).length).toBeGreaterThanOrEqual(100)
})
