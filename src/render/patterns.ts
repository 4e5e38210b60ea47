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
export function gradePatterns(id: string): string {
  const lines = (d: string) =>
    shape('path', { d, stroke: onGrade, 'stroke-width': 1.3, 'stroke-opacity': 0.75, fill: 'none' })
  const marks = {
    1:
      shape('circle', { cx: 2, cy: 2, r: 1, fill: onGrade, 'fill-opacity': 0.8 }) +
      shape('circle', { cx: 6, cy: 6, r: 1, fill: onGrade, 'fill-opacity': 0.8 }),
    2: lines('M-2 2L2 -2M-1 9L9 -1M6 10L10 6'),
    3: lines('M-1 9L9 -1M-1 -1L9 9'),
  } as const
  return element(
    'defs',
    {},
    ...([1, 2, 3] as const).map((grade) => pattern(`${id}-grade-${grade}`, grade, marks[grade])),
  )
}

const pattern = (id: string, grade: Grade, marks: string): string =>
  element(
    'pattern',
    { id, width: side, height: side, patternUnits: 'userSpaceOnUse' },
    shape('rect', { width: side, height: side, fill: gradeColour(grade) }),
    marks,
  )
