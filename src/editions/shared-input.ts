import type { Horse } from '../casebook/model.ts'
import type { HorseInput } from '../pages/shared/horse-input.ts'
import { assess } from '../trend/assess.ts'
import { type Edition, isForOthers } from './edition.ts'

/** The horse as others may know it: a draft has not happened yet. */
export const withoutDrafts = (horse: Horse): Horse =>
  horse.visits.some(({ draft }) => draft)
    ? { ...horse, visits: horse.visits.filter(({ draft }) => !draft) }
    : horse

/** What an edition is given of a horse. One for others is given no draft, and an assessment that rests on none. */
export function inputsOf(
  input: HorseInput,
): (edition: Pick<Edition, 'protection' | 'isPractitioners'>) => HorseInput {
  const horse = withoutDrafts(input.horse)
  const shared = horse === input.horse ? input : { ...input, horse, assessment: assessedAgain(horse, input) }
  return (edition) => (isForOthers(edition) ? shared : input)
}

const assessedAgain = (horse: Horse, { practice, assessment: { asOf, learned } }: HorseInput) =>
  assess(horse, practice, asOf, learned)
