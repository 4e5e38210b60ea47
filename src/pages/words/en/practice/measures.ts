/** *All measures* of a horse. */
import type { CheckFacts, CheckKind } from '../../../../trend/assessment.ts'
import type { Formats } from '../../formats.ts'

/** A remark of a kind that was explained above it. */
const again: { readonly [Kind in CheckKind]: (facts: CheckFacts[Kind], f: Formats) => string } = {
  'entered against photo': ({ measure, entered, photo }, f) =>
    `${f.name(measure)} ${f.measure(measure, entered)} by hand, ${f.measure(measure, photo)} from the photo.`,
  'readings do not close': ({ computed, measured }, f) =>
    `the hairline at ${f.angle(computed)} by the other readings, read as ${f.angle(measured)}.`,
  'left out': ({ measure, value }, f) => `${f.name(measure)} ${f.measure(measure, value)} left out as well.`,
  'pace has changed': ({ measure, earlierPerMonth, laterPerMonth }, f) =>
    `${f.name(measure)}, ${f.rate(measure, earlierPerMonth)} before, ${f.rate(measure, laterPerMonth)} after.`,
  'growth out of range': ({ measure, ratePerMonth }, f) =>
    `${f.name(measure)}, growth of ${f.rate(measure, ratePerMonth)}.`,
  'toe length for weight': ({ value, guide }, f) =>
    `toe length ${f.length(value)}, guide ${f.length(guide)}.`,
  'broken axis': ({ value }, f) => `broken ${value > 0 ? 'back' : 'forward'} by ${f.angle(Math.abs(value))}.`,
  'heel gap': ({ value }, f) => `the heel angle ${f.angle(value)} less than the toe angle.`,
  'sheared heels': ({ value }, f) =>
    `the ${value > 0 ? 'inner' : 'outer'} heel ${f.length(Math.abs(value))} higher.`,
  'frog ratio': ({ value }, f) => `the frog ${f.fine('frog-ratio', value)} times as wide as long.`,
  'pair mismatch': ({ value }, f) => `toe angles ${f.angle(Math.abs(value))} apart.`,
  'load index': ({ value }, f) => `${f.measure('load-index', value)}.`,
}

export const measures = {
  title: (name: string) => `All measures: ${name}`,
  how: 'How it is read, and its sources',
  lead: 'Every reading, and how each verdict was reached. A verdict rests on a line through the readings of both stages, with growth between trims taken apart; the shaded strip is its 95 % interval.',
  none: 'Nothing was measured yet.',
  target: (band: string) => `Target: ${band}`,
  rate: (rate: string, interval: string) => `${rate} (95 %: ${interval})`,
  between: (first: string, last: string, stage: string) => `${first} to ${last}, ${stage}`,
  once: (date: string, stage: string) => `${date}, ${stage}`,
  together: (rate: string, interval: string) =>
    `All feet together clearly move: ${rate} (95 % interval ${interval}).`,
  /** Parts after the measures; the ids are those of the template. */
  index: [
    { text: 'Growth and trims', href: '#growth' },
    { text: 'Shape and pairs', href: '#shape' },
    { text: 'Plans and forecasts', href: '#plans' },
    { text: 'What grows down', href: '#grow-out' },
    { text: 'Findings', href: '#findings' },
    { text: 'Pictures', href: '#photos' },
    { text: 'The record itself', href: '#record' },
  ],
  shape: 'Shape and pairs',
  plans: 'Plans and forecasts',
  growOut: 'What grows down',
  pictures: 'Then and now',
  picturesNone: 'No foot was photographed twice from the same side.',
  again,
  recordNone: 'There is nothing to remark.',
  agreement: {
    heading: 'Hand and photograph',
    title: { angle: 'Angles by hand and from photographs', length: 'Lengths by hand and from photographs' },
    table: { angle: 'Every pair of angles', length: 'Every pair of lengths' },
    says: (within: number, of: number, bias: string, limit: string) =>
      `${within} of ${of} pairs agree within the errors of both; photographs read ${bias} on the mean, and 95 % of the differences lie within ${limit} of that.`,
    mean: (unit: string) => `mean of both, ${unit}`,
    difference: (unit: string) => `photograph less hand, ${unit}`,
    bias: (value: string) => `mean ${value}`,
    head: ['Visit', 'Of', 'By hand', 'Photograph', 'Difference', 'Explained'],
    explained: 'yes',
    unexplained: 'no',
  },
}
