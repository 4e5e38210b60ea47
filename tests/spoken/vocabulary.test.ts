/** Every word of the trade can be said. */
import { describe, expect, it } from 'vitest'
import { findingAliases, findingMeanings, places } from '../../src/hoof/findings.ts'
import { measureIds, measures } from '../../src/hoof/measures.ts'
import { mishearings } from '../../src/spoken/vocabulary/mishearings.ts'
import { findingsOf, readingsOf } from './said.ts'

/** A likely number of a measure, in the practice's millimetres or in degrees. */
const likely = (id: (typeof measureIds)[number]) =>
  Math.round((measures[id].likely[0] + measures[id].likely[1]) / 2)

describe('the vocabulary', () => {
  it.each(measureIds)('has the measure %s by its name', (id) => {
    const text = `Left hind ${measures[id].name} ${likely(id)}.`
    expect(readingsOf(text)).toEqual([`before LH ${id} ${likely(id)}`])
  })

  const everyday = new Set(['growth', 'nail', 'blood'])
  const names = [...Object.keys(findingMeanings), ...Object.keys(findingAliases)].filter(
    (name) => !everyday.has(name),
  )
  it.each(names)('has the finding %s', (name) => {
    const what = findingAliases[name] ?? name
    expect(findingsOf(`Right fore, ${name}, whole foot, moderate.`)).toEqual([`RF ${what}, whole foot, 2`])
  })

  it.each(places)('has the place %s', (place) => {
    expect(findingsOf(`Right fore, scar, ${place}, mild.`)).toEqual([`RF scar, ${place}, 1`])
  })

  it.each(mishearings)('takes $heard for $meant within a longer name', ({ heard, meant }) => {
    const names: Record<string, readonly [string, string]> = {
      fore: ['Left fore toe length 95.', 'before LF toe-length 95'],
      hind: ['Left hind toe length 95.', 'before LH toe-length 95'],
      heel: ['Left fore heel angle 40.', 'before LF heel-angle 40'],
      heels: ['Left fore heels angle 40.', 'before LF heel-angle 40'],
      toe: ['Left fore toe length 95.', 'before LF toe-length 95'],
      coronet: ['Left fore coronet girth 360.', 'before LF coronet-girth 360'],
      sulcus: ['Left fore sulcus depth 9.', 'before LF sulcus-depth 9'],
      break: ['Left fore break over 34.', 'before LF breakover 34'],
      breakover: ['Left fore breakover 34.', 'before LF breakover 34'],
      angle: ['Left fore heel angle 40.', 'before LF heel-angle 40'],
      angles: ['Left fore toe angles 45.', 'before LF toe-angle 45'],
      groove: ['Left fore groove apex 9.', 'before LF groove-apex 9'],
      white: ['Left fore white line width 4.', 'before LF white-line 4'],
      line: ['Left fore white line width 4.', 'before LF white-line 4'],
    }
    const found: Record<string, readonly [string, string]> = {
      sole: ['Left fore sole is flat, mild.', 'LF flat sole, sole, 1'],
      soles: ['Left fore soles are flat, mild.', 'LF flat sole, sole, 1'],
      thrush: ['Left fore thrush, mild.', 'LF thrush, frog, 1'],
      flare: ['Left fore flare, toe, mild.', 'LF flare, toe, 1'],
      flares: ['Left fore flares, toe, mild.', 'LF flare, toe, 1'],
    }
    const [text, line] = names[meant] ?? found[meant] ?? ['', '']
    expect(text).toMatch(new RegExp(`\\b${meant}\\b`))
    const misheard = text.replace(new RegExp(`\\b${meant}\\b`), heard)
    expect([...readingsOf(misheard), ...findingsOf(misheard)]).toEqual([line])
  })
})
