/** Titles, text alternatives and tables of charts and drawings. */
export const chart = {
  time: 'date',
  /** The title says what was found. */
  changed: (measure: string, feet: string) => `${measure}: ${feet} clearly moved`,
  noneChanged: (measure: string) => `${measure}: no foot has clearly moved`,
  /** What lies above 0 of heel balance. */
  heels: 'above 0 the inner heel is higher',
  targetBeside: (verdict: string, band: string) => `${verdict}; target ${band}`,
  says: (measure: string, feet: string) => `${measure}, foot by foot. ${feet}`,
  foot: (foot: string, first: string, last: string, note: string) =>
    `${foot}: ${first} at first, ${last} now; ${note}.`,
  caption: (measure: string) => `${measure}, all readings`,
  head: ['Date', 'Stage'] as readonly [string, string],
  stages: { before: 'on arrival', after: 'after the trim' },

  findingsTitle: (open: number, gone: number, shown: number | null) =>
    `${open === 1 ? '1 finding' : `${open} findings`} open, ${gone} resolved${shown === null ? '' : `; ${shown} shown`}`,
  findingsSays: (list: string) => `Grade of each finding at each visit, 0 resolved to 3 severe. ${list}`,
  findingsRow: (label: string, grades: string) => `${label}: ${grades}.`,
  findingsCaption: 'Grades by visit',
  findingsHead: 'Finding',
  notNoted: '–',

  sideTitle: (foot: string, length: string, angle: string) => `${foot}: toe ${length}, ${angle}`,
  sideTitleTwo: (foot: string, length: string, toLength: string, angle: string, toAngle: string) =>
    `${foot}: toe ${length} to ${toLength}, ${angle} to ${toAngle}`,
  side: {
    drawingTitle: (foot: string) => foot,
    drawingCaption: (foot: string) => `${foot}, first and latest`,
    drawingHead: ['', 'First', 'Latest'],
    drawingToeAngle: 'toe angle',
    drawingToeLength: 'toe length',
    drawing: (foot: string, first: string, latest: string) =>
      `The ${foot} hoof from the side. First: ${first}. Latest: ${latest}.`,
    drawingOnce: (foot: string, first: string) => `The ${foot} hoof from the side: ${first}.`,
    drawingSays: (length: string, angle: string) => `toe ${length} at ${angle}`,
  },
  sideFirst: (date: string) => `first, ${date}`,
  sideLatest: (date: string) => `latest, ${date}`,
}
