/** *All measures* of a horse. */
export const measures = {
  title: (name: string) => `All measures: ${name}`,
  how: 'How it is read',
  lead: 'Every reading, and how each verdict was reached. A verdict rests on a line through the readings of both stages, with growth between trims taken apart; the shaded strip is its 95 % interval.',
  none: 'Nothing was measured yet.',
  target: (band: string) => `Target: ${band}`,
  usual: (band: string) => `${band}, the usual band`,
  /** A figure with its 95 % interval. */
  rate: (rate: string, interval: string) => `${rate} (${interval})`,
  between: (first: string, last: string, stage: string) => `${first} to ${last}, ${stage}`,
  usualDays: (days: string) => `Where no days are named, the readings are of ${days}.`,
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
  drawn: (feet: string) => `Drawn on the horse’s own page: ${feet}.`,
  plans: 'Plans and forecasts',
  growOut: 'What grows down',
  pictures: 'Then and now',
  picturesNone: 'No foot was photographed twice from the same side.',
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
