/** Against crying wolf: how many lines of cautions the demo casebook's pages show. */
import { describe, expect, it } from 'vitest'
import type { HorsePage } from '../../src/pages/practice/horse/horse-page.ts'
import { presentHorse, summarise } from '../../src/pages/practice/index.ts'
import { type FrontPage, frontPage } from '../../src/pages/practice/over-all/front-page.ts'
import { demoCasebook, inputsOf } from '../editions/demo-inputs.ts'
import { formatIn } from '../english.ts'

const asOf = '2026-11-27'
const casebook = demoCasebook(asOf)
const { practice } = casebook
const inputs = inputsOf(casebook, asOf)
const front = frontPage(practice, inputs.map(summarise), [], asOf, formatIn(practice.units))
  .model as FrontPage

describe('the front page of the demo', () => {
  it('tells of two of its ten horses that a vet should hear something, each matter once', () => {
    const said = front.cautions.flatMap(({ horse, items }) =>
      items.map(({ text }) => `${horse.text}: ${text}`),
    )
    expect(new Set(front.cautions.map(({ horse }) => horse.text))).toEqual(new Set(['Eider', 'Turnstone']))
    expect(new Set(said).size).toBe(said.length)
  })

  it('says stop of the one horse that a vet must see, and of no other', () =>
    expect(front.cautions.filter(({ level }) => level === 'stop').map(({ horse }) => horse.text)).toEqual([
      'Eider',
    ]))
})

describe('a horse’s page of the demo', () => {
  it('folds what no visit has spoken of: at most one line a level', () => {
    for (const input of inputs) {
      const page = [...presentHorse(input)].find(({ template }) => template === 'practice/horse')
        ?.model as HorsePage
      for (const { items } of page.cautionsInFull)
        expect(items.filter(({ text }) => text.startsWith('Not spoken of since')).length).toBeLessThanOrEqual(
          1,
        )
    }
  })

  it('has at most one line of cautions a foot, and one of the whole horse', () => {
    for (const input of inputs) {
      const page = [...presentHorse(input)].find(({ template }) => template === 'practice/horse')
        ?.model as HorsePage
      expect(page.cautions.length).toBeLessThanOrEqual(5)
      expect(new Set(page.cautions.map(({ about }) => about)).size).toBe(page.cautions.length)
    }
  })
})
