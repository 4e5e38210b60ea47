/** Wording of the practice's front page. */
export const front = {
  horses: 'Visits',
  reference: 'Measures and sources',
  careful: 'Safety, law and labels',
  made: (date: string) => `The record as of ${date}.`,

  day: (weekday: string, date: string) => `${weekday} ${date}`,
  groups: {
    overdue: 'Overdue',
    today: 'Today',
    tomorrow: 'Tomorrow',
    thisWeek: 'This week',
    nextWeek: 'Next week',
    later: 'Later',
    long: 'Overdue by more than half a year',
    none: 'No next visit',
  },
  groupOf: (group: string, n: number) => `${group}: ${n}`,
  nothingDue: 'No visit is overdue or due by the end of next week.',
  fieldSheet: 'Sheet',
  fieldSheetOf: (name: string) => `Field sheet of ${name}`,
  flags: {
    stop: (feet: string) => (feet === '' ? 'Stop' : `Stop: ${feet}`),
    vet: (feet: string) => (feet === '' ? 'Tell the vet' : `Tell the vet: ${feet}`),
    mind: (feet: string) => (feet === '' ? 'Take care' : `Take care: ${feet}`),
  },
  together: { all: 'all feet', fores: 'both fores', hinds: 'both hinds' },
  calendar: 'All next visits as a calendar file',

  cautions: 'Stop, and tell the vet',
  calm: 'Nothing to stop for, and nothing to tell the vet.',

  all: 'All horses',
  none: 'No horse is on record yet.',
  search: 'Search by horse, owner, finding or problem',
  shown: '{shown} of {all} horses shown',
  noneShown: 'No horse fits. Clear the search.',
  neverSeen: 'Not seen yet.',
  noProblem: 'No open problem.',
  noProblemBeside: 'No open problem besides what the vet is asked.',
  problem: (feet: string, subject: string, state: string) =>
    [feet, subject, state].filter((part) => part !== '').join(' '),
  problemAlso: (feet: string, state: string) => `${feet} ${state}`,
  problems: (told: readonly string[]) => {
    const line = told.join('; ')
    return `${line.slice(0, 1).toUpperCase()}${line.slice(1)}.`
  },
  moreProblems: (n: number) => `${n} more`,
  notRead: 'not read yet',
  notNoted: 'not noted yet',
  gone: 'gone',
  was: (grade: string) => `was ${grade}`,
  beside: (grade: string, beside: string) => `${grade} (${beside})`,
  grownOut: 'grown out: look',
  growOutDue: 'due to be grown out: look',
  growingDown: 'growing down',
  outAbout: (month: string) => `out about ${month}`,

  broken: 'Horses that could not be read',
  brokenHow:
    'Their files hold errors. Their last good pages are kept. Run the check command: it names the lines.',
  brokenOf: (id: string, problems: number) =>
    problems === 1 ? `${id}: 1 problem` : `${id}: ${problems} problems`,
}
