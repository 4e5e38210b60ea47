/** The numbers behind what is said of the course of one measure at one foot. */
import type { Standing } from '../../../../trend/assessment.ts'

export const trend = {
  verdict: 'Verdict',
  month: 'A month',
  expected: 'Expected',
  when: 'Read',
  readings: 'Readings',
  fromPhotos: (n: number) => `${n}, from photos`,
  smallest: 'Real from',
  scatter: 'Scatter',
  freedom: 'Degrees of freedom',
  level: 'The line now',
  leftOut: 'Left out',
  allFeet: (text: string) => `all feet: ${text}`,
  method: 'How a verdict is reached',
  /** What the rows of the tables are. */
  steps: [
    ['Real from', 'the smallest real change between two readings.'],
    ['Scatter', 'of one reading about the line, from this foot and from what the practice has taught.'],
    ['A month', 'the slope of the line, with its 95 % interval: both stages together, growth apart.'],
    ['The line now', 'where it is at the last reading, with its 95 % interval.'],
    ['Left out', 'readings that no error explains.'],
    ['Expected', 'where the line crosses the edge of the target, with Fieller’s 95 % interval.'],
  ] as readonly (readonly [string, string])[],
  verdictText: {
    'on target': 'the line is in the target with 80 % at the least',
    held: 'in the target or near it, which is not called so while a vet is waited for',
    improving: 'the 97 % interval of the slope leaves 0 out, and the line moves toward the target',
    worsening: 'the 97 % interval of the slope leaves 0 out, and the line moves away from the target',
    steady: 'the 90 % interval of the slope leaves out every change that matters',
    rising: 'the 97 % interval of the slope leaves 0 out; there is no target to move to',
    falling: 'the 97 % interval of the slope leaves 0 out; there is no target to move to',
    'not worsening': 'a move away from the target that matters is ruled out with 95 %',
    'not improving': 'a move toward the target that matters is ruled out with 95 %',
    'too early to tell': 'neither a move nor its absence can be told yet',
  } satisfies Record<Standing, string>,
}
