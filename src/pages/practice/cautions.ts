/** Cautions as the practice's pages show them: the word of the level first, then the matters, each with its visit. */
import type { Visit } from '../../casebook/model.ts'
import { type Caution, type CautionLevel, withoutCovered } from '../../trend/assessment.ts'
import { cautionLevels, cautionLines, standingCautions, wordsOf } from '../shared/caution-lines.ts'
import { contactText, vetContact } from '../shared/contact.ts'
import { dateOfVisit, type HorseCase, type Link, visitHref } from './horse-case.ts'

/** All of one level under one word. */
export interface CautionGroup {
  readonly level: CautionLevel
  readonly word: string
  readonly items: readonly CautionItem[]
}

interface CautionItem {
  readonly text: string
  /** Null on that visit's own page. */
  readonly visit: Link | null
}

/** The cautions in force; what no visit has spoken of for a while in one line a level. */
export const standingGroups = (of: HorseCase): readonly CautionGroup[] =>
  groupsOf(of, standingCautions(of.assessment.cautions), (id) =>
    id === null
      ? null
      : { text: of.words.horse.seenAt(of.format.date(dateOfVisit(of, id))), href: visitHref(id) },
  )

/** What one visit found, as it found it. */
export function groupsOfVisit(of: HorseCase, visit: Visit): readonly CautionGroup[] {
  const found = of.assessment.cautions.flatMap((caution): readonly Caution[] => {
    const here = caution.seen.find((one) => one.visit === visit.id)
    return here === undefined ? [] : [{ ...caution, ...here, isLower: false, silentVisits: 0 } as Caution]
  })
  return groupsOf(of, withoutCovered(found), () => null)
}

function groupsOf(
  of: HorseCase,
  cautions: readonly Caution[],
  linkTo: (visit: string | null) => Link | null,
): readonly CautionGroup[] {
  const lines = cautionLines(cautions, of.format, (one) =>
    wordsOf(of.format, one).practice(one.facts, of.format),
  )
  return cautionLevels.flatMap((level) => {
    const items = lines
      .filter((line) => line.level === level)
      .map(({ text, visit, folded }) => ({ text, visit: folded > 0 ? null : linkTo(visit) }))
    return items.length === 0 ? [] : [{ level, word: of.words.horse.flagged[level], items }]
  })
}

/** Whom to ring, where a caution asks for a vet and the casebook knows whom. */
export function ringText(of: HorseCase): string | null {
  const asks = standingCautions(of.assessment.cautions).some(({ level }) => level !== 'mind')
  const contact = asks ? vetContact(of.horse, of.practice) : null
  return contact === null ? null : of.words.horse.ring(contactText(contact))
}
