/** What a word in a case file means, and for a measure what was read last and what counts as a change. */
import { type Hover, MarkupKind, type Position } from 'vscode-languageserver/node'
import { findingNamed } from '../../casebook/finding-words.ts'
import { normal } from '../../casebook/words.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import { type AnyMeasureId, derivedMeasures, isMeasureId, measures } from '../../hoof/measures.ts'
import { type Place, partsOf, placeAt } from './place.ts'
import { type Found, findShape } from './shapes/find.ts'
import type { WrittenFile } from './written-file.ts'

export function hoverAt(file: WrittenFile, position: Position): Hover | null {
  const place = file.shape && placeAt(file.outline, position.line, position.character)
  if (!file.shape || !place || place.word.trim() === '') return null
  const path = place.role === 'key' ? [...place.path, place.word] : place.path
  const found = findShape(file.shape, path, file.around.feetOrder)
  if (!found) return null
  const { shape, foot } = found
  const text = shape.measure
    ? ofMeasure(file, shape.measure, foot)
    : place.role === 'key'
      ? titled(place.word, shape.about)
      : ofWord(file, place, found)
  if (text === null) return null
  return {
    contents: { kind: MarkupKind.Markdown, value: text },
    range: {
      start: { line: place.line, character: place.start },
      end: { line: place.line, character: place.start + place.word.length },
    },
  }
}

const titled = (word: string, about: string): string | null => (about === '' ? null : `**${word}**: ${about}`)

/** A word of the vocabulary; a finding also with what was seen of it on this foot. */
function ofWord(file: WrittenFile, place: Place, found: Found): string | null {
  const { shape, foot } = found
  const meaning = meaningOf(file, place, found)
  if (meaning === null) return shape.about === '' ? null : shape.about
  const finding =
    foot && place.path[0] === 'findings' ? findingNamed(place.word, file.around.practice.terms) : null
  const seen = finding === null ? [] : seenBefore(file, foot, finding)
  return [titled(place.word, meaning), ...seen].filter((line) => line !== null).join('\n\n')
}

/** What the vocabulary says of a word, by its own name or another that is read as it. */
function meaningOf({ around }: WrittenFile, place: Place, { shape, foot, part }: Found): string | null {
  const at = place.part + part
  const words = shape.words?.[at]
  const known = words?.(around, { foot, before: partsOf(place.whole).slice(0, at), typed: '' }) ?? []
  const named = findingNamed(place.word, around.practice.terms)
  return (
    known.find(({ word }) => normal(word) === normal(place.word))?.about ??
    known.find(({ word }) => word === named)?.about ??
    null
  )
}

/** The last few times that a finding was noted on a foot. */
function seenBefore({ around, format }: WrittenFile, foot: Foot | null, what: string): readonly string[] {
  const seen = around.past.flatMap(({ date, findings }) =>
    findings
      .filter((one) => one.foot === foot && one.what === what)
      .map(({ grade, place }) => ({ date, grade, place })),
  )
  const lines = seen
    .slice(-mostSeen)
    .map(({ date, grade, place }) => `- ${format.date(date)}: ${place}, ${grade}`)
  return lines.length === 0 ? [] : [`On ${foot} before:`, lines.join('\n')]
}

const mostSeen = 5

function ofMeasure(file: WrittenFile, id: AnyMeasureId, foot: Foot | null): string {
  const { format } = file
  const { reference: w } = format.words
  const lines = feet.filter((one) => foot === null || one === foot).flatMap((one) => ofFoot(file, id, one))
  const definition = isMeasureId(id)
    ? [
        `**${measures[id].name}**: ${measures[id].how}.`,
        `${w.facts(
          format.band(id, { low: measures[id].likely[0], high: measures[id].likely[1] }),
          format.fine(id, measures[id].sd),
          format.measure(id, measures[id].matters),
        )} ${w.scatterFrom(w.marks[measures[id].sdEvidence.mark])}`,
      ]
    : [`**${derivedMeasures[id].name}**: ${derivedMeasures[id].formula}. ${derivedMeasures[id].reading}.`]
  return [...definition, lines.join('\n')].filter((part) => part !== '').join('\n\n')
}

/** Last reading, smallest real change and target of one foot. */
function ofFoot(file: WrittenFile, id: AnyMeasureId, foot: Foot): readonly string[] {
  const numbers = file.numbers()
  if (!numbers) return []
  const { around, format } = file
  const last = around.past
    .flatMap(({ date, readings }) => readings.map((reading) => ({ date, ...reading })))
    .findLast((one) => one.foot === foot && one.measure === id)
  const change = numbers.smallestRealChange(foot, id)
  const target = numbers.target(foot, id)
  const parts = [
    last
      ? `last ${format.measure(id, last.value)} on ${format.date(last.date)}, ${last.stage} the trim`
      : null,
    change === null ? null : `smallest real change ${format.fine(id, change)}`,
    target
      ? `target ${format.band(id, target)}`
      : numbers.isHeld(foot)
        ? 'no target while a vet is waited for'
        : null,
  ].filter((part) => part !== null)
  return parts.length === 0 ? [] : [`- ${foot}: ${parts.join('; ')}`]
}
