/** A horse that is hard on any page: forty visits, a name of forty letters, much that got worse, letters at each visit. */
import { addDays } from '../../src/hoof/dates.ts'

export const longName = 'Wolkenreiterin-von-der-Hohenstaufenheide'
const started = '2022-10-08'
export const lastOfForty = addDays(started, 39 * 35)

const row = (...values: readonly number[]) => `[${values.join(', ')}]`

/** Casebook files below the folder of that horse. */
export function fortyVisits(id: string, owner: string, alias: string): Readonly<Record<string, string>> {
  const visits = Array.from({ length: 40 }, (_, i): readonly [string, string] => {
    const date = addDays(started, i * 35)
    const wobble = [0, 0.8, -0.6, 0.4, -0.9][i % 5] ?? 0
    const way = i * 0.35 + wobble
    return [
      `${id}/${date}.md`,
      `---
date: ${date}
before:
  toe length:   ${row(93 + way, 92 + way, 88 + wobble, 87 + wobble)}
  toe angle:    ${row(50 - way / 2, 50 - way / 2, 52 + wobble, 52 + wobble)}
after:
  toe length:   ${row(86 + way, 85 + way, 82 + wobble, 81 + wobble)}
  toe angle:    ${row(52 - way / 2, 52 - way / 2, 53 + wobble, 53 + wobble)}
  heel medial:  ${row(38 + wobble, 37 + wobble, 36 + wobble, 35 + wobble)}
  heel lateral: ${row(33, 33, 34, 34)}
findings:
  LF:
    - flare, medial quarter, ${i < 20 ? 1 : 2}
    - crack, toe, ${i < 36 ? 1 : 2}
  RF:
    - underrun heels, lateral heel, ${i < 30 ? 1 : 2}
    - white line stretched, white line, ${i < 39 ? 2 : 1}
  LH:
    - thrush, central sulcus, ${i < 38 ? 1 : 0}
comfort:
  lameness: {LF: ${i < 39 ? 0 : 1}, by: practitioner}
care:
  - Pick out and brush all four feet every evening and look at the crack at the left fore toe
  - Twenty minutes on firm ground
  - Hay by the scales
next visit: in 5 weeks
---
Private.

## For the owner

The toes of both front feet go on running away from us between the visits, and the heels follow them. Please keep to the
five weeks. The crack at the left toe is a little longer than it was.

## For teaching

The toes went on running forward.
`,
    ]
  })
  return {
    [`${id}/horse.md`]: `---
name: ${longName}
owner: ${owner}
kind: cob
sex: mare
born: 2012
started: ${started}
consent: {owner site: yes, portfolio: yes, photos: no, given: ${started}}
alias: ${alias}
targets:
  toe length: {LF: [~, 84], RF: [~, 84]}
  toe angle: {LF: [50, 54], RF: [50, 54]}
trim limits: {sole: cupped}
---
Private.

## For the owner

About this horse.

## For teaching

Forty visits to two feet that would not turn.
`,
    ...Object.fromEntries(visits),
  }
}
