/** The people of the practice in practice.md, and the one whom a visit names. */
import { gapIn, type ParseContext, type Reader, readFields, required, wrongForm } from './fields.ts'
import type { Person } from './model.ts'
import { name as nameRead } from './readers.ts'
import { nearest, normal, quote } from './words.ts'
import type { YamlEntry, YamlNode } from './yaml-tree.ts'

const personFields = { name: required<string | null>(nameRead, null, "the person's name") }
const example = 'a list of names, [Ilse, Tom], or a short name for each: {ilse: {name: Ilse Brandt}}'

/** `[Ilse, Tom]`, `{ilse: {name: Ilse Brandt}}` or `{ilse: Ilse Brandt}`. A name alone is its own short name. */
export const people: Reader<readonly Person[]> = (value, context, name) => {
  const read = new Map<string, Person>()
  const add = (written: string, at: YamlNode, fullName: string) => {
    const id = idOf(written)
    if (!read.has(id)) return read.set(id, { id, name: fullName })
    context.report.error('person-twice', at, `${quote(written)} is written twice under ${name}.`, {
      expected: 'each person once',
      advice: 'give two of one name short names of their own: {ilse: {name: Ilse Brandt}}',
    })
    return read
  }
  const addEntry = ({ key, value: of }: YamlEntry) => {
    const id = nameRead(key, context, 'the short name of a person')
    if (id !== undefined) add(id, key, fullNameOf(of, id, context) ?? id)
  }
  const addOne = (item: YamlNode) => {
    if (item.kind === 'map') item.entries.forEach(addEntry)
    else if (item.kind !== 'nothing' && !gapIn(item, `A line of ${name}`, context)) {
      const one = nameRead(item, context, `a line of ${name}`)
      if (one !== undefined) add(one, item, one)
    }
  }
  const isRow = value.kind === 'text' && value.text.includes(',')
  if (isRow) return wrongForm(value, context, name, example, { fix: `[${value.text}]` })
  if (value.kind === 'list') value.items.forEach(addOne)
  else addOne(value)
  return [...read.values()]
}

/** `{name: Ilse Brandt}`, or the name alone; null where there is none. */
function fullNameOf(value: YamlNode, id: string, context: ParseContext): string | null {
  const what = `the name of ${id}`
  if (value.kind === 'nothing' || gapIn(value, what, context)) return null
  if (value.kind === 'map') return readFields(value, personFields, context, 'of a person').name
  return nameRead(value, context, what) ?? null
}

const idOf = (written: string): string => normal(written).replaceAll(' ', '-')

/** The id of a person of the practice, named by short name, by whole name, or by a first name that only one of them has. */
export const person: Reader<string> = (value, context, name) => {
  const written = nameRead(value, context, name)
  if (written === undefined) return undefined
  const { people: known } = context
  const id = idOf(written)
  const first = known.filter((one) => idOf(one.name).split('-')[0] === id)
  const found =
    known.find((one) => one.id === id) ??
    known.find((one) => idOf(one.name) === id) ??
    (first.length === 1 ? first[0] : undefined)
  if (found) return found.id
  const meant = nearest(
    written,
    known.flatMap((one) => [one.id, one.name]),
  )
  context.report.error('person-unknown', value, `${quote(written)} is not among the people of practice.md.`, {
    expected:
      known.length > 0
        ? `one of: ${known.map((one) => one.id).join(', ')}`
        : 'a name listed under people in practice.md',
    fix: meant,
    advice: meant
      ? null
      : `add the name in practice.md: people: [${[...known.map((one) => one.name), written].join(', ')}]`,
  })
  return undefined
}
