/** `comfort` and `body` of a visit: the scales. */
import type { PerFoot } from '../hoof/feet.ts'
import { scales } from '../hoof/scales.ts'
import { cellsByFoot, perFoot } from './by-foot.ts'
import { field, gapIn, type Reader, readFields, wrongForm } from './fields.ts'
import type { BodyState, Comfort } from './model.ts'
import { grade, oneOf, text, weight } from './readers.ts'
import { normal } from './words.ts'
import type { Written } from './written.ts'

export const noComfort: Comfort = {
  lameness: {},
  lamenessBy: null,
  obel: null,
  landing: {},
  digitalPulse: {},
  surfaces: {},
}

export const noBodyState: BodyState = { weightKg: null, condition: null, crest: null }

const levelsOf = (scale: keyof typeof scales): readonly string[] =>
  scales[scale].levels.map((one) => one.level)

interface Lameness {
  readonly grades: PerFoot<number>
  readonly by: string | null
}

/** Grades by foot, and beside the feet `by`: who judged. */
const lameness: Reader<Lameness> = (value, sheet, name) => {
  let by: string | null = null
  const noteBy = (written: Written) => {
    if (!gapIn(written, 'by', sheet)) by = text(written, sheet, `${name} by`)?.toLowerCase() ?? null
  }
  const cells = cellsByFoot(value, sheet, name, { by: noteBy })
  if (!cells) return undefined
  const grades: PerFoot<number> = {}
  for (const cell of cells) {
    const read = grade(0, 5)(cell.value, sheet, `${name} ${cell.foot}`)
    if (read !== undefined) grades[cell.foot] = read
  }
  return { grades, by }
}

const surfaces: Reader<Readonly<Record<string, string>>> = (value, sheet, name) => {
  if (value.kind !== 'map')
    return wrongForm(value, sheet, name, 'surfaces and comfort: {sand: easy, gravel: short}')
  const level = oneOf(levelsOf('surfaces'))
  return Object.fromEntries(
    value.entries.flatMap((entry) => {
      if (entry.value.kind === 'nothing' || gapIn(entry.value, entry.key.text, sheet)) return []
      const read = level(entry.value, sheet, entry.key.text)
      return read ? [[normal(entry.key.text), read]] : []
    }),
  )
}

const none: Lameness = { grades: {}, by: null }

const comfortFields = {
  lameness: field<Lameness>(lameness, none),
  obel: field<number | null>(grade(0, 4, ['0', 'I', 'II', 'III', 'IV']), null),
  landing: field<PerFoot<string>>(perFoot(oneOf(levelsOf('landing'))), {}),
  'digital pulse': field<PerFoot<number>>(perFoot(grade(0, 3, ['none', 'faint', 'clear', 'bounding'])), {}),
  surfaces: field<Readonly<Record<string, string>>>(surfaces, {}),
}

export const comfort: Reader<Comfort> = (value, sheet, name) => {
  if (value.kind !== 'map')
    return wrongForm(value, sheet, name, 'keys such as lameness, landing and digital pulse')
  const read = readFields(value, comfortFields, sheet, 'of comfort')
  return {
    lameness: read.lameness.grades,
    lamenessBy: read.lameness.by,
    obel: read.obel,
    landing: read.landing,
    digitalPulse: read['digital pulse'],
    surfaces: read.surfaces,
  }
}

const bodyFields = {
  weight: field<number | null>(weight, null),
  condition: field<number | null>(grade(1, 9, [], 0.5), null),
  crest: field<number | null>(grade(0, 5, [], 0.5), null),
}

export const bodyState: Reader<BodyState> = (value, sheet, name) => {
  if (value.kind !== 'map')
    return wrongForm(value, sheet, name, 'weight, condition and crest: {weight: 505 kg, condition: 6}')
  const read = readFields(value, bodyFields, sheet, 'of body')
  return { weightKg: read.weight, condition: read.condition, crest: read.crest }
}
