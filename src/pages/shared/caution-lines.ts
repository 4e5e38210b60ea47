/** Cautions as lines of a page: what is said of several feet stands once, and what nobody speaks of any more is folded. */
import type { PlainDate } from '../../hoof/dates.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import type { Caution, CautionLevel } from '../../trend/assessment.ts'
import type { CautionWords, OwnerCautionWords } from '../words/caution-words.ts'
import type { OwnerWords, Words } from '../words/index.ts'
import { capital, type OwnerFormatter } from './format.ts'

/** Gravest first. */
export const cautionLevels: readonly CautionLevel[] = ['stop', 'vet', 'mind']

/** From so many visits on that did not speak of it a caution is folded. */
const foldedFrom = 2

export const isFolded = ({ silentVisits }: Caution): boolean => silentVisits >= foldedFrom

/** The words of a caution's code; its facts are those that they ask for. */
export function wordsOf(
  format: { readonly words: Pick<Words, 'cautions'> },
  caution: Pick<Caution, 'code'>,
): CautionWords<Caution['facts']>
export function wordsOf(
  format: { readonly words: Pick<OwnerWords, 'cautions'> },
  caution: Pick<Caution, 'code'>,
): OwnerCautionWords<Caution['facts']>
export function wordsOf(
  { words }: { readonly words: Pick<OwnerWords, 'cautions'> },
  { code }: Pick<Caution, 'code'>,
): unknown {
  return words.cautions[code]
}

export interface CautionLine {
  readonly level: CautionLevel
  readonly text: string
  /** Day and visit that last spoke of it; for a fold the latest of them. */
  readonly date: PlainDate
  readonly visit: string | null
  /** How many cautions are folded in it; 0 for a line of its own. */
  readonly folded: number
  /** First of its level: the level's word is said here, and the lines below stand in the same frame. */
  readonly opensLevel: boolean
}

/**
 * In the order given, `stop` first: a line for each matter with all its feet, and for each level one line for those of
 * which no visit has spoken for a while.
 * @param sentence what the reader is told of a caution
 */
export function cautionLines(
  cautions: readonly Caution[],
  format: OwnerFormatter,
  sentence: (caution: Caution) => string,
): readonly CautionLine[] {
  return cautionLevels.flatMap((level) => {
    const here = cautions.filter((caution) => caution.level === level)
    const lines = [
      ...freshLines(
        here.filter((one) => !isFolded(one)),
        format,
        sentence,
      ),
      ...foldedLine(here.filter(isFolded), format),
    ]
    return lines.map((line, i) => ({ ...line, opensLevel: i === 0 }))
  })
}

function freshLines(
  cautions: readonly Caution[],
  format: OwnerFormatter,
  sentence: (caution: Caution) => string,
): readonly Omit<CautionLine, 'opensLevel'>[] {
  const lower = format.words.base.lowerNotGone
  const alike = new Map<string, { readonly caution: Caution; readonly text: string; readonly feet: Foot[] }>()
  for (const caution of cautions) {
    const said = sentence(caution)
    const text = caution.isLower ? `${said} ${lower}` : said
    const key = [caution.visit, text].join('|')
    const line = alike.get(key) ?? { caution, text, feet: [] }
    line.feet.push(...caution.feet)
    alike.set(key, line)
  }
  return [...alike.values()].map(({ caution, text, feet: about }) => ({
    level: caution.level,
    text: feet.every((foot) => about.includes(foot))
      ? text
      : format.words.base.remark(feetText(format, about), text),
    date: caution.date,
    visit: caution.visit,
    folded: 0,
  }))
}

function foldedLine(
  cautions: readonly Caution[],
  format: OwnerFormatter,
): readonly Omit<CautionLine, 'opensLevel'>[] {
  const byDate = cautions.toSorted((a, b) => (a.date < b.date ? -1 : 1))
  const oldest = byDate[0]
  const latest = byDate.at(-1)
  if (oldest === undefined || latest === undefined) return []
  const feetByName = new Map<string, Foot[]>()
  for (const caution of cautions) {
    const name = wordsOf(format, caution).name(caution.facts)
    feetByName.set(name, [...(feetByName.get(name) ?? []), ...caution.feet])
  }
  const matters = [...feetByName].map(([name, about]) =>
    feet.every((foot) => about.includes(foot))
      ? name
      : format.words.base.matterAt(name, feetListed(format, about)),
  )
  return [
    {
      level: latest.level,
      text: format.words.base.notSpokenOf(format.date(oldest.date), matters.join('; ')),
      date: latest.date,
      visit: latest.visit,
      folded: cautions.length,
    },
  ]
}

/** `Left fore and right fore`, each once, in the usual order. */
export const feetText = (format: OwnerFormatter, about: readonly Foot[]): string =>
  capital(feetListed(format, about))

/** `left fore and right fore`. */
export const feetListed = ({ foot, list }: OwnerFormatter, about: readonly Foot[]): string =>
  list(feet.filter((one) => about.includes(one)).map(foot))

/** In force, gravest first. */
export const standingCautions = (cautions: readonly Caution[]): readonly Caution[] =>
  cautions.filter(({ standing }) => standing)
