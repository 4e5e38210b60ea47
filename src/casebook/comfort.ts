/** `comfort` and `body` of a visit: the scales. */
import type { PlainDate } from '../hoof/dates.ts'
import type { Foot, PerFoot } from '../hoof/feet.ts'
import { scales } from '../hoof/scales.ts'
import { cellsByFoot, perFoot } from './by-foot.ts'
import { field, gapIn, type Reader, readFields, wrongForm } from './fields.ts'
import { placeRead } from './findings.ts'
import type { BodyState, Comfort, Stance } from './model.ts'
import { date, grade, isTooLong, name as nameRead, oneOf, weight } from './readers.ts'
import { either, nearest, normal, quote } from './words.ts'
import type { YamlNode, YamlText } from './yaml-tree.ts'

export const noComfort: Comfort = {
  lameness: {},
  lamenessBy: null,
  obel: null,
  landing: {},
  digitalPulse: {},
  surfaces: {},
  hoofTesters: {},
  painkillers: null,
  onset: null,
}

export const noBodyState: BodyState = { weightKg: null, condition: null, crest: null }

const levelsOf = (scale: keyof typeof scales): readonly string[] =>
  scales[scale].levels.map((one) => one.level)

interface Lameness {
  readonly grades: PerFoot<number>
  readonly by: string | null
}

/** Grades by foot, and beside the feet `by`: who judged. */
const lameness: Reader<Lameness> = (value, context, name) => {
  let by: string | null = null
  const noteBy = (written: YamlNode) => {
    if (!gapIn(written, 'by', context)) by = nameRead(written, context, `${name} by`)?.toLowerCase() ?? null
  }
  const cells = cellsByFoot(value, context, name, { by: noteBy })
  if (!cells) return undefined
  const grades: PerFoot<number> = {}
  for (const cell of cells) {
    const read = grade(0, 5)(cell.value, context, `${name} ${cell.foot}`)
    if (read !== undefined) grades[cell.foot] = read
  }
  return { grades, by }
}

const surfaces: Reader<Readonly<Record<string, string>>> = (value, context, name) => {
  if (value.kind !== 'map')
    return wrongForm(value, context, name, 'surfaces and comfort: {sand: easy, gravel: short}')
  const level = oneOf(levelsOf('surfaces'))
  return Object.fromEntries(
    value.entries.flatMap((entry) => {
      if (entry.value.kind === 'nothing') {
        if (!entry.value.said) context.report.gap(entry.key, `${quote(entry.key.text)} holds nothing.`)
        return []
      }
      if (gapIn(entry.value, entry.key.text, context)) return []
      if (isTooLong(entry.key.text, entry.key, context, 'The name of a surface')) return []
      const read = level(entry.value, context, entry.key.text)
      return read ? [[normal(entry.key.text), read]] : []
    }),
  )
}

type Tested = NonNullable<Comfort['hoofTesters'][Foot]>

/** `[toe, 2]` or `toe 2`: where, and how much. A grade alone is the whole foot. */
const testers: Reader<Tested> = (value, context, name) => {
  const parts = testerParts(value)
  const wrong = () => wrongForm(value, context, name, 'where and a grade from 0 to 3: [toe, 2]')
  if (!parts) return wrong()
  const [placePart, gradePart] = parts
  const where = placePart === null ? 'whole foot' : placeRead(placePart, context)
  const degree = grade(0, 3)(gradePart, context, name)
  return where === null || degree === undefined ? undefined : { place: where, grade: degree }
}

function testerParts(value: YamlNode): readonly [YamlText | null, YamlText] | null {
  if (value.kind === 'list') {
    const [where, degree, ...more] = value.items
    return where?.kind === 'text' && degree?.kind === 'text' && more.length === 0 ? [where, degree] : null
  }
  if (value.kind !== 'text') return null
  const written = value.text.trim()
  // A grade has one figure; one that has more is told of as no grade.
  const degree = /\d{1,12}$/.exec(written.slice(-12))?.[0]
  if (degree === undefined) return null
  const where = written.slice(0, -degree.length).replace(/[ ,]{1,12}$/, '')
  const part = (text: string): YamlText => ({ ...value, verbatim: false, text })
  return [where === '' ? null : part(where), part(degree)]
}

const none: Lameness = { grades: {}, by: null }

const comfortFields = {
  lameness: field<Lameness>(lameness, none),
  obel: field<number | null>(grade(0, 4, ['0', 'I', 'II', 'III', 'IV']), null),
  landing: field<PerFoot<string>>(perFoot(oneOf(levelsOf('landing'))), {}),
  'digital pulse': field<PerFoot<number>>(perFoot(grade(0, 3, ['none', 'faint', 'clear', 'bounding'])), {}),
  surfaces: field<Readonly<Record<string, string>>>(surfaces, {}),
  'hoof testers': field<Comfort['hoofTesters']>(perFoot(testers), {}),
  painkillers: field<PlainDate | null>(date, null),
  onset: field<PlainDate | null>(date, null),
}

export type ComfortKey = keyof typeof comfortFields
export type BodyKey = keyof typeof bodyFields

export const comfort: Reader<Comfort> = (value, context, name) => {
  if (value.kind !== 'map')
    return wrongForm(value, context, name, 'keys such as lameness, landing and digital pulse')
  const read = readFields(value, comfortFields, context, 'of comfort')
  return {
    lameness: read.lameness.grades,
    lamenessBy: read.lameness.by,
    obel: read.obel,
    landing: read.landing,
    digitalPulse: read['digital pulse'],
    surfaces: read.surfaces,
    hoofTesters: read['hoof testers'],
    painkillers: read.painkillers,
    onset: read.onset,
  }
}

const bodyFields = {
  weight: field<number | null>(weight, null),
  condition: field<number | null>(grade(1, 9, [], 0.5), null),
  crest: field<number | null>(grade(0, 5, [], 0.5), null),
}

export const bodyState: Reader<BodyState> = (value, context, name) => {
  if (value.kind !== 'map')
    return wrongForm(value, context, name, 'weight, condition and crest: {weight: 505 kg, condition: 6}')
  const read = readFields(value, bodyFields, context, 'of body')
  return { weightKg: read.weight, condition: read.condition, crest: read.crest }
}

const stanceWords: Readonly<Record<string, string>> = {
  square: 'straight',
  'toed out': 'toe-out',
  'toes out': 'toe-out',
  'toed in': 'toe-in',
  'toes in': 'toe-in',
  under: 'camped under',
  'under him': 'camped under',
  'under her': 'camped under',
  forward: 'camped out',
  'leans back': 'leaning back',
  'rocked back': 'leaning back',
  'rocking back': 'leaning back',
  sawhorse: 'leaning back',
  'sawhorse stance': 'leaning back',
  points: 'pointing',
  'points it': 'pointing',
  rests: 'resting',
  'rests it': 'resting',
}

/** A word of the scale, then free words after a comma. */
const stanceOfFoot: Reader<Stance> = (value, context, name) => {
  const known = levelsOf('stance')
  const expected = `${either(known)}; free words may follow a comma`
  if (value.kind !== 'text') return wrongForm(value, context, name, expected)
  const [head = '', ...rest] = value.text.split(',')
  const word = normal(head)
  const position = known.find((one) => normal(one) === word) ?? stanceWords[word]
  if (position === undefined) {
    const meant = nearest(head, known)
    return wrongForm(
      value,
      context,
      name,
      expected,
      meant === null ? undefined : [meant, ...rest.map((one) => one.trim())].join(', '),
    )
  }
  return { position, words: rest.join(',').trim() || null }
}

export const stance: Reader<PerFoot<Stance>> = perFoot(stanceOfFoot, ({ kind }) => kind === 'text')
