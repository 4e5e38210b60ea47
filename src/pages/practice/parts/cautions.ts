/** Cautions as the practice's pages show them: the word of the level first, then the matters, each with its visit. */
import type { Visit } from '../../../casebook/model.ts'
import { type Foot, feet } from '../../../hoof/feet.ts'
import { type Caution, type CautionLevel, withoutCovered } from '../../../trend/assessment.ts'
import {
  cautionLevels,
  cautionLines,
  feetText,
  isFolded,
  standingCautions,
  wordsOf,
} from '../../shared/caution-lines.ts'
import { contactText, vetContact } from '../../shared/contact.ts'
import { capital } from '../../shared/format.ts'
import { dateOfVisit, type HorseCase, type Link, visitHref } from '../case/horse-case.ts'

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

/** All that stands over a foot, or over the whole horse, in one line. */
export interface CautionOfFoot {
  /** The gravest of them. */
  readonly level: CautionLevel
  readonly word: string
  readonly about: string
  readonly text: string
}

/** One line a foot, worst first; feet of which the same is said share one, and what is of all four is the horse's. */
export function linesByFoot(of: HorseCase): readonly CautionOfFoot[] {
  const standing = standingCautions(of.assessment.cautions)
  const ofHorse = standing.filter((caution) => caution.feet.length === feet.length)
  const lines = new Map<string, Omit<CautionOfFoot, 'about'> & { readonly feet: Foot[] }>()
  const add = (cautions: readonly Caution[], about: readonly Foot[]) => {
    const [level] = cautionLevels.filter((one) => cautions.some((caution) => caution.level === one))
    if (level === undefined) return
    const text = mattersText(of, cautions)
    const line = lines.get(text) ?? { level, word: of.words.horse.flagged[level], text, feet: [] }
    line.feet.push(...about)
    lines.set(text, line)
  }
  add(ofHorse, feet)
  for (const foot of feet) {
    add(
      standing.filter((caution) => caution.feet.length < feet.length && caution.feet.includes(foot)),
      [foot],
    )
  }
  return [...lines.values()]
    .toSorted((a, b) => cautionLevels.indexOf(a.level) - cautionLevels.indexOf(b.level))
    .map(({ feet: about, ...line }) => ({
      ...line,
      about: about.length === feet.length ? of.words.horse.wholeHorse : feetText(of.format, about),
    }))
}

/** The matters, gravest first; what is of an older visit with its day, and what nobody speaks of any more at the end. */
function mattersText(of: HorseCase, cautions: readonly Caution[]): string {
  const { format, visits, words } = of
  const last = visits.at(-1)?.id ?? null
  const name = (caution: Caution) => {
    const said = wordsOf(format, caution).name(caution.facts)
    return caution.visit === last || caution.visit === null
      ? said
      : words.horse.matterOn(said, format.shortDate(caution.date))
  }
  const named = (some: readonly Caution[]) => [...new Set(some.map(name))].join(', ')
  const [gravest] = cautionLevels.filter((level) => cautions.some((one) => one.level === level))
  const fresh = cautions.filter((one) => !isFolded(one))
  const grave = named(fresh.filter(({ level }) => level === gravest))
  const lower = named(
    cautionLevels.flatMap((level) => fresh.filter((one) => one.level === level && level !== gravest)),
  )
  const folded = named(cautions.filter(isFolded))
  const said = grave === '' || lower === '' ? `${grave}${lower}` : words.horse.also(grave, lower)
  return capital(
    [said, folded === '' ? '' : words.horse.silent(folded)].filter((part) => part !== '').join('; '),
  )
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
