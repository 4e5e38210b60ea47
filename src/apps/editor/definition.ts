/** From a word to where it is set: an owner or a word of the practice's own, a picture, else the horse. */
import type { Location, Position } from 'vscode-languageserver/node'
import { normal } from '../../casebook/words.ts'
import { placeAt } from './place.ts'
import type { WrittenFile } from './written-file.ts'

export function definitionAt(
  file: WrittenFile,
  position: Position,
  uriOf: (path: string) => string,
): Location | null {
  const place = placeAt(file.outline, position.line, position.character)
  const [id = '', name] = file.path.split('/')
  if (name === undefined) return null
  const word = place?.word ?? ''
  const isOwner = place?.role === 'value' && place.path.length === 1 && place.path[0] === 'owner'
  if (isOwner || Object.hasOwn(file.around.practice.terms, normal(word)))
    return beginning(uriOf('practice.md'))
  if (file.around.files.includes(word)) return beginning(uriOf(`${id}/${word}`))
  return name === 'horse.md' ? null : beginning(uriOf(`${id}/horse.md`))
}

const beginning = (uri: string): Location => ({
  uri,
  range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
})
