/** A whole file to fill in, offered where there is nothing yet: the same that `add` would write. */
import {
  type CompletionItem,
  CompletionItemKind,
  InsertTextFormat,
  type Position,
} from 'vscode-languageserver/node'
import { startCasebook } from '../../pages/starter/casebook.ts'
import { startHorse } from '../../pages/starter/horse.ts'
import { blank } from '../../pages/starter/lines.ts'
import { startVisit } from '../../pages/starter/visit.ts'
import type { WrittenFile } from './written-file.ts'

export function wholeFile(
  file: WrittenFile,
  position: Position,
  hasSnippets: boolean,
): readonly CompletionItem[] {
  const offered = textFor(file)
  if (!offered) return []
  const { label, detail, text } = offered
  const last = file.outline.lines.length - 1
  const end =
    last > position.line ? { line: last, character: file.outline.lines[last]?.length ?? 0 } : position
  return [
    {
      label,
      detail,
      kind: CompletionItemKind.Snippet,
      ...(hasSnippets && { insertTextFormat: InsertTextFormat.Snippet }),
      textEdit: {
        range: { start: { line: position.line, character: 0 }, end },
        newText: hasSnippets ? asSnippet(text) : text,
      },
    },
  ]
}

function textFor(
  file: WrittenFile,
): { readonly label: string; readonly detail: string; readonly text: string } | null {
  const { path, around, format, day } = file
  const words = format.words.starter
  if (path === 'practice.md') {
    const text = startCasebook('mm', words).find((one) => one.path === path)?.text ?? ''
    return { label: 'practice', detail: 'practice.md to fill in', text }
  }
  if (path.endsWith('/horse.md'))
    return { label: 'horse', detail: 'horse.md to fill in', text: startHorse(null, day, words) }
  const numbers = file.numbers()
  if (!around.horse || !numbers) return null
  const horse = { ...around.horse, visits: around.past }
  return {
    label: 'visit',
    detail: 'a visit to fill in, from the last one',
    text: startVisit(horse, numbers.assessment, around.practice, day, format),
  }
}

/** Each blank becomes a place that the editor stops at, in turn. */
function asSnippet(text: string): string {
  let stop = 0
  return text
    .replace(/[\\$}]/g, '\\$&')
    .replace(new RegExp(`(?<=[\\[{,:-] ?)${blank}(?=[\\],}\\s\\\\]|$)`, 'gm'), () => `\${${++stop}:${blank}}`)
}
