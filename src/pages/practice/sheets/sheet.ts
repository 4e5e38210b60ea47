/** What every printed sheet of a horse has: title, sides of paper, cautions in force, small print. */
import { cautionLines, standingCautions, wordsOf } from '../../shared/caution-lines.ts'
import type { PageShell } from '../../shared/shell.ts'
import type { Words } from '../../words/index.ts'
import { type HorseCase, type Link, shellOfHorse } from '../case/horse-case.ts'
import { ringText } from '../parts/cautions.ts'
import { type Block, type Sheet, type Side, sidesOf } from './paper-sides.ts'

export interface SheetPage {
  readonly w: Words
  readonly page: PageShell
  readonly horse: Link
  readonly title: string
  /** How it is printed. */
  readonly print: string
  readonly standing: readonly string[]
  readonly localRules: string | null
  readonly sides: readonly Side[]
}

/** The cautions in force go before all else; `lead` are the lines below the title. */
export function sheetPage(
  of: HorseCase,
  title: string,
  lead: readonly string[],
  { wide, left, right, toWriteIn }: Pick<Sheet, 'wide' | 'left' | 'right' | 'toWriteIn'>,
): SheetPage {
  const { horse, practice, words, format } = of
  const w = words.sheets
  const shell = shellOfHorse(of, title)
  const sides = sidesOf({
    wide: [cautionBlock(of), ...wide],
    left,
    right,
    share: 0.6,
    toWriteIn,
    title,
    lead,
    smallPrint: [...shell.standing, practice.localRules ?? ''].join(' '),
    second: w.second(title),
    continued: w.continued,
  })
  return {
    w: format.words,
    page: { ...shell, kind: 'sheet' },
    horse: { text: horse.name, href: 'index.html' },
    title,
    print: sides.length === 1 ? w.print : w.printMore(sides.length),
    standing: shell.standing,
    localRules: practice.localRules,
    sides,
  }
}

/** The cautions in force, each with its visit where that is not the last. */
function cautionBlock(of: HorseCase): Block {
  const { format, words } = of
  const last = of.visits.at(-1)
  const items = cautionLines(standingCautions(of.assessment.cautions), format, (one) =>
    wordsOf(format, one).practice(one.facts, format),
  ).map(({ level, text, date, visit, folded, opensLevel }) => ({
    level,
    word: opensLevel ? words.horse.flagged[level] : null,
    text:
      folded > 0 || visit === (last?.id ?? null)
        ? text
        : words.sheets.cautionFrom(text, words.horse.seenAt(format.date(date))),
  }))
  return { kind: 'cautions', heading: words.sheets.cautions, note: ringText(of), items }
}

/** A list under its heading; no block where there is nothing to list. */
export const blockOf = (
  heading: string,
  items: readonly string[],
  note: string | null = null,
): readonly Block[] => (items.length === 0 ? [] : [{ kind: 'list', heading, note, items }])
