/** What the front page and the office page keep of a horse. */
import { feet } from '../../../hoof/feet.ts'
import type { Caution } from '../../../trend/assessment.ts'
import { cautionLevels, cautionLines, standingCautions, wordsOf } from '../../shared/caution-lines.ts'
import type { HorseSummary } from '../../shared/summary.ts'
import { feetTogether } from '../case/feet-together.ts'
import type { HorseCase } from '../case/horse-case.ts'
import { ownerName } from '../case/profile.ts'
import { openFindingsOf } from '../parts/findings.ts'
import { newsOf } from './news.ts'
import { problemStates, problemsLine } from './problems-line.ts'

export function summaryOf(of: HorseCase): HorseSummary {
  const { horse, assessment, practice, visits, format } = of
  const { due, overdueDays } = assessment.nextVisit
  const { made, held, open } = assessment.backtest
  // A visit that is overdue has its place in the list by day.
  const standing = standingCautions(assessment.cautions).filter(({ code }) => code !== 'visit-overdue')
  const grave = standing.filter(({ level }) => level !== 'mind')
  const states = problemStates(of)
  return {
    id: horse.id,
    name: horse.name,
    owner: ownerName(horse, practice.owners),
    ownerId: horse.owner,
    lastVisit: visits.at(-1)?.date ?? null,
    due,
    overdueDays,
    worst: worstOf(of, standing),
    problems: problemsLine(of, states, grave.length > 0),
    find: [
      ...new Set([
        ...openFindingsOf(of).map(({ what }) => what),
        ...states.flatMap(({ subject, state }) => [subject, state]),
      ]),
    ],
    cautions: cautionLines(grave, format, (one) => wordsOf(format, one).practice(one.facts, format)).map(
      ({ level, text, date, folded }) => ({ level, text, date, folded }),
    ),
    news: newsOf(of),
    backtest: { made, held, open },
  }
}

/** The level that counts, and all feet at which it is in force. */
function worstOf(of: HorseCase, standing: readonly Caution[]): HorseSummary['worst'] {
  const level = cautionLevels.find((one) => standing.some((caution) => caution.level === one))
  if (level === undefined) return null
  const here = standing.filter((caution) => caution.level === level)
  const isOfHorse = here.some(({ foot, feet: about }) => foot === null && about.length === feet.length)
  const about = feet.filter((foot) => here.some((caution) => caution.feet.includes(foot)))
  return { level, feet: isOfHorse ? '' : feetTogether(of, about) }
}
