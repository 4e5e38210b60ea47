/**
 * Grades of a finding as tone and pattern: 0 open, 1 dotted, 2 hatched, 3 cross-hatched, each over its own tone.
 * The lines are dark in every mode, because the tones are.
 */
import { element, shape } from './html.ts'
import { gradeColour, onGrade } from './ink.ts'

export type Grade = 0 | 1 | 2 | 3

/** Paint of a grade; its pattern must be in the same page, see `gradePatterns`. */
export const gradeFill = (id: string, grade: Grade): string =>
  grade === 0 ? 'none' : `url(#${id}-grade-${grade})`

const side = 8

/** Definitions of the patterns of grades 1 to 3, with ids that begin with the figure's. */
export const gradePatterns = (id: string): string => definitions.replaceAll(idMark, id)

const pattern = (id: string, grade: Grade, marks: string): string =>
  element(
    'pattern',
    { id, width: side, height: side, patternUnits: 'userSpaceOnUse' },
    shape('rect', { width: side, height: side, fill: gradeColour(grade) }),
    marks,
  )

const idMark = '\0'
const lines = (d: string) =>
  shape('path', { d, stroke: onGrade, 'stroke-width': 1.3, 'stroke-opacity': 0.75, fill: 'none' })
const dot = (at: number) => shape('circle', { cx: at, cy: at, r: 1, fill: onGrade, 'fill-opacity': 0.8 })

const definitions = element(
  'defs',
  {},
  pattern(`${idMark}-grade-1`, 1, dot(2) + dot(6)),
  pattern(`${idMark}-grade-2`, 2, lines('M-2 2L2 -2M-1 9L9 -1M6 10L10 6')),
  pattern(`${idMark}-grade-3`, 3, lines('M-1 9L9 -1M-1 -1L9 9')),
)
