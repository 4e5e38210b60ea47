/** One open file of a casebook with all that is known round it: what each answer to an editor starts from. */

import { footNamed } from '../../casebook/by-foot.ts'
import type { Horse, Visit } from '../../casebook/model.ts'
import { normal } from '../../casebook/words.ts'
import { type PlainDate, parseDate } from '../../hoof/dates.ts'
import type { Foot } from '../../hoof/feet.ts'
import { type Formatter, formatter } from '../../pages/shared/format.ts'
import { practiceLanguage, wordsFor } from '../../pages/words/index.ts'
import { type Numbers, numbersOf } from './engine.ts'
import type { LiveCasebook } from './live-casebook.ts'
import { type Outline, outlineOf } from './outline.ts'
import { shapeOfFile } from './shapes/find.ts'
import type { Around, Shape } from './shapes/shape.ts'

export interface WrittenFile {
  /** Path within the casebook. */
  readonly path: string
  readonly outline: Outline
  /** Null for a file in no known place. */
  readonly shape: Shape | null
  readonly around: Around
  /** Day of the visit, or today. */
  readonly day: PlainDate
  readonly format: Formatter
  /** Null where there is no horse. */
  numbers(): Numbers | null
}

/** Numbers of horses, each for as long as the visits and targets that they were made from are the same. */
export interface NumbersKept {
  of(path: string, horse: Horse, past: readonly Visit[], make: () => Numbers): Numbers
}

export function keepNumbers(): NumbersKept {
  const kept = new Map<string, { readonly from: readonly unknown[]; readonly numbers: Numbers }>()
  return {
    of: (path, horse, past, make) => {
      const from = [horse.targets, horse.trimLimits, ...past]
      const before = kept.get(path)
      if (before?.from.length === from.length && before.from.every((one, index) => one === from[index]))
        return before.numbers
      const numbers = make()
      kept.set(path, { from, numbers })
      return numbers
    },
  }
}

export function writtenFile(
  casebook: LiveCasebook,
  path: string,
  text: string,
  today: PlainDate,
  kept: NumbersKept,
): WrittenFile {
  const outline = outlineOf(text)
  const id = path.includes('/') ? (path.split('/')[0] ?? '') : null
  const practice = casebook.practice()
  const horse = id === null ? null : casebook.horse(id)
  const past = horse ? visitsBefore(horse, path) : []
  const feetOrder = feetIn(outline) ?? practice.feetOrder
  const day = parseDate((path.split('/')[1] ?? '').slice(0, 10)) ?? today
  return {
    path,
    outline,
    shape: shapeOfFile(path),
    around: { practice, horse, past, feetOrder, files: id === null ? [] : casebook.filesOf(id) },
    day,
    format: formatter(practice.units, wordsFor(practiceLanguage)),
    numbers: () => horse && kept.of(path, horse, past, () => numbersOf(horse, past, practice, day)),
  }
}

/** The visits before the one that a file holds, oldest first; all of them for a file that is no visit. */
function visitsBefore(horse: Horse, path: string): readonly Visit[] {
  const id = path.replace(/^.*\//, '').replace(/\.md$/, '')
  return /^\d/.test(id) ? horse.visits.filter((visit) => visit.id < id) : horse.visits
}

/** The order of the feet that the file itself sets. */
function feetIn({ rows, lines }: Outline): readonly Foot[] | null {
  const row = rows.find(({ key, parent }) => parent === null && normal(key ?? '') === 'feet')
  const value = row ? (lines[row.line] ?? '').slice(row.valueAt) : ''
  const named = value
    .split(/[[\],\s]+/)
    .map(footNamed)
    .filter((foot) => foot !== null)
  return new Set(named).size === 4 ? named : null
}
