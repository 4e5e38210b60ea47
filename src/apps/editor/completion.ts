/** What may be written at a place: keys that are not there yet, words of the vocabulary, a whole file where there is none. */
import {
  type CompletionItem,
  CompletionItemKind,
  InsertTextFormat,
  InsertTextMode,
  type Position,
} from 'vscode-languageserver/node'
import { normal } from '../../casebook/words.ts'
import { sectionHeadings } from '../../pages/starter/lines.ts'
import { type Place, partsOf, placeAt } from './place.ts'
import { findShape } from './shapes/find.ts'
import type { Choice, Shape } from './shapes/shape.ts'
import { footNames } from './shapes/vocabulary.ts'
import { wholeFile } from './whole-file.ts'
import type { WrittenFile } from './written-file.ts'

export function completionsAt(
  file: WrittenFile,
  position: Position,
  hasSnippets: boolean,
): readonly CompletionItem[] {
  if (!file.shape) return []
  if (file.outline.lines.every((line) => line.trim() === '' || /^[a-z]*$/.test(line)))
    return wholeFile(file, position, hasSnippets)
  const place = placeAt(file.outline, position.line, position.character)
  if (!place) return headings(file, position)
  const found = findShape(file.shape, place.path, file.around.feetOrder)
  if (!found) return []
  if (place.role === 'key') return keys(found.shape, place, position, hasSnippets, after(file, position))
  const part = place.part + found.part
  const words = found.shape.words?.[part]
  const at = { foot: found.foot, before: partsOf(place.whole).slice(0, part), typed: place.typed }
  return (words?.(file.around, at) ?? []).map((choice, index) => wordItem(choice, index, place, position))
}

const after = ({ outline }: WrittenFile, { line, character }: Position): string =>
  (outline.lines[line] ?? '').slice(character)

function wordItem(
  { word, about, isLikely }: Choice,
  index: number,
  place: Place,
  position: Position,
): CompletionItem {
  return {
    label: word,
    kind: CompletionItemKind.Value,
    ...(about && { detail: about }),
    ...typedOver(word, place),
    sortText: sortText(index, isLikely === true),
    textEdit: { range: rangeOf(place, position), newText: word },
  }
}

function keys(
  shape: Shape,
  place: Place,
  position: Position,
  hasSnippets: boolean,
  rest: string,
): readonly CompletionItem[] {
  const named: readonly (readonly [string, Shape])[] = Object.entries(shape.keys ?? {})
  const ofFeet = shape.feet
    ? footNames.map(({ word, about }) => [word, { ...shape.feet, about: about ?? '' }] as const)
    : []
  const hasColon = /^[^,}\]]*?:(?:\s|$)/.test(rest)
  return [...named, ...ofFeet]
    .filter(([key]) => !place.taken.has(normal(key)) || normal(key) === normal(place.word))
    .map(([key, { about, snippet = '$1' }], index): CompletionItem => {
      // In brackets everything stays on its line.
      const value = place.isFlow && snippet.includes('\n') ? '$1' : snippet
      const withValue = value.startsWith('\n') ? `${key}:${value}` : `${key}: ${value}`
      const newText = hasColon ? key : hasSnippets ? withValue : `${key}: `
      return {
        label: key,
        kind: CompletionItemKind.Property,
        ...(about !== '' && { detail: about }),
        ...typedOver(key, place),
        sortText: sortText(index, false),
        ...(hasSnippets && {
          insertTextFormat: InsertTextFormat.Snippet,
          insertTextMode: InsertTextMode.adjustIndentation,
        }),
        textEdit: { range: rangeOf(place, position), newText },
      }
    })
}

/** An editor offers what begins like the word that is there; a blank to be filled in begins like nothing. */
const typedOver = (word: string, { typed }: Place): Pick<CompletionItem, 'filterText'> =>
  /^[_?]$/.test(typed) ? { filterText: `${typed}${word}` } : {}

const rangeOf = ({ line, start, word }: Place, position: Position) => ({
  start: { line, character: start },
  end: { line, character: /^[_?]$/.test(word) ? start + 1 : position.character },
})

/** Kept in the order given, likely ones first. */
const sortText = (index: number, isLikely: boolean): string =>
  `${isLikely ? 0 : 1}${String(index).padStart(3, '0')}`

/** Below the block: the two headings that open a section for others. */
function headings({ outline, path }: WrittenFile, { line, character }: Position): readonly CompletionItem[] {
  const typed = (outline.lines[line] ?? '').slice(0, character)
  if (path === 'practice.md' || !outline.block || line <= outline.block.to || !/^#{0,2} ?[\w ]*$/.test(typed))
    return []
  return Object.values(sectionHeadings)
    .filter((name) => !outline.headings.some(({ text }) => normal(text) === normal(name)))
    .map((name) => ({
      label: `## ${name}`,
      kind: CompletionItemKind.Snippet,
      detail: 'opens a section for others; all else is private',
      textEdit: {
        range: { start: { line, character: 0 }, end: { line, character } },
        newText: `## ${name}\n\n`,
      },
    }))
}
