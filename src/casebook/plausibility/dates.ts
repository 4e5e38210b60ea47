/** Dates against each other, against the file's name and against today. */
import type { PlainDate } from '../../hoof/dates.ts'
import type { PlacedHorse } from '../horse-file.ts'
import type { PlacedVisit } from '../visit-file.ts'

export function checkDates(visits: readonly PlacedVisit[], horse: PlacedHorse | null, asOf: PlainDate): void {
  for (const placed of visits) {
    const { visit, report, dateRange } = placed
    const named = visit.id.slice(0, 10)
    if (named !== visit.date) {
      report.error(
        'date-not-file',
        dateRange,
        `The date is ${visit.date}, but the file is named ${visit.id}.md.`,
        {
          expected: 'the same date in both',
          advice: `write ${named}, or rename the file to ${visit.date}.md (${visit.date}-b.md for a second visit that day)`,
        },
      )
    } else if (visit.date > asOf) {
      report.warning('date-in-future', dateRange, `The visit of ${visit.date} lies in the future.`, {
        expected: `a date up to ${asOf}`,
      })
    }
    const started = horse?.horse.started ?? null
    if (started !== null && visit.date < started) {
      report.warning(
        'visit-before-start',
        dateRange,
        `The visit of ${visit.date} is before ${started}, when the case started.`,
        {
          expected: `a date from ${started} on, or an earlier started in horse.md`,
        },
      )
    }
    if (started !== null && visit.date >= started) checkCleared(placed, started)
    if (saysNothing(placed)) {
      report.warning('visit-empty', null, `The visit of ${visit.date} holds no reading and no finding.`, {
        expected: 'at least one line under before, after, findings, grow-out, comfort or photos',
      })
    }
  }
}

/** What was cleared before the case began was never open in it. */
function checkCleared({ visit, report, clearedRange }: PlacedVisit, started: PlainDate): void {
  const { feet, all } = visit.cleared
  const early = [...Object.values(feet), all].find((day) => day !== null && day < started)
  if (!early) return
  report.warning(
    'cleared-early',
    clearedRange,
    `The vet's all-clear of ${early} lies before ${started}, when the case started.`,
    { expected: `a day from ${started} to ${visit.date}`, advice: 'check the year and the month' },
  )
}

/** Nothing read, and nothing on its way to be: what was reported in the file was at least meant. */
function saysNothing({ visit, report }: PlacedVisit): boolean {
  const { comfort, bodyState } = visit
  return (
    report.diagnostics.every((one) => one.level === 'warning') &&
    [visit.readings, visit.findings, visit.growOut, visit.photos].every((list) => list.length === 0) &&
    [
      comfort.lameness,
      comfort.landing,
      comfort.digitalPulse,
      comfort.surfaces,
      comfort.hoofTesters,
      visit.stance,
      visit.cleared.feet,
    ].every((one) => Object.keys(one).length === 0) &&
    [comfort.obel, bodyState.weightKg, bodyState.condition, bodyState.crest, visit.cleared.all].every(
      (one) => one === null,
    )
  )
}
