/**
 * Sides of paper. What goes on a side is reckoned in millimetres before it is printed, so that the first side is
 * full and never more than full on A4 and on US letter; what does not fit goes to further sides under its heading.
 */
import type { CautionLevel } from '../../../trend/assessment.ts'
import type { ShownReading } from '../case/shown-reading.ts'

/** A part of a side: a heading and items, of which any number may move to the next side. */
export type Block =
  | (Head & { readonly kind: 'cautions'; readonly items: readonly CautionLine[] })
  | (Head & { readonly kind: 'list'; readonly items: readonly string[] })
  | (Head & {
      readonly kind: 'readings'
      readonly feet: readonly string[]
      readonly items: readonly ReadingRow[]
    })
  | (Head & {
      readonly kind: 'boxes'
      readonly feet: readonly string[]
      readonly stages: readonly string[]
      /** Rows are lower where there are many. */
      readonly isDense: boolean
      readonly items: readonly BoxRow[]
    })
  | (Head & { readonly kind: 'ticks'; readonly items: readonly TickRow[] })
  /** Empty lines to write on, each after its word. */
  | (Head & { readonly kind: 'blanks'; readonly items: readonly string[] })

interface Head {
  readonly heading: string
  readonly note: string | null
}

interface CautionLine {
  readonly level: CautionLevel
  /** Null where the line before has said it. */
  readonly word: string | null
  readonly text: string
}

export interface ReadingRow {
  readonly name: string
  /** One a foot: the value and what it changed by, in columns of their own; null where nothing was read. */
  readonly cells: readonly ({ readonly now: ShownReading; readonly change: string } | null)[]
}

export interface BoxRow {
  readonly name: string
  /** One box to write in, or one before the trim and one after. */
  readonly cells: readonly { readonly last: ShownReading | null; readonly single: boolean }[]
}

export interface TickRow {
  readonly text: string
  /** What stands in the boxes: grades to ring, or one empty place to write in. */
  readonly boxes: readonly string[]
}

export interface Side {
  /** Null on the first side, which has the title. */
  readonly heading: string | null
  readonly wide: readonly Block[]
  readonly left: readonly Block[]
  readonly right: readonly Block[]
}

export interface Sheet {
  readonly wide: readonly Block[]
  readonly left: readonly Block[]
  readonly right: readonly Block[]
  /** Width of the left column, of 1. */
  readonly share: number
  readonly title: string
  /** Lines below the title. */
  readonly lead: readonly string[]
  /** At the foot of every side. */
  readonly smallPrint: string
  /** Millimetres on the first side for a line to fill in under the title and for notes by hand. */
  readonly toWriteIn: number
  readonly second: string
  readonly continued: (heading: string) => string
}

/** What both papers leave at margins of 10 mm: US letter is 279 mm high, A4 210 mm wide. */
const usableHeight = 253
const usableWidth = 190
const gutter = 6
/** A line to write on. */
const blankLine = 6.8

/** Lays the blocks out; one side where all fits. */
export function sidesOf(sheet: Sheet): readonly Side[] {
  const sides: Side[] = []
  const smallPrint = linesOf(sheet.smallPrint, usableWidth / smallLetter) * smallLine + 3
  const lead = sheet.lead.reduce((sum, text) => sum + linesOf(text, usableWidth), 0) * (line + 0.6)
  const further = linesOf(sheet.second, usableWidth / headingLetter) * headingLine + 3
  const head = linesOf(sheet.title, usableWidth / titleLetter) * titleLine + lead + sheet.toWriteIn
  let rest: Omit<Side, 'heading'> = sheet
  do {
    const first = sides.length === 0
    const height = usableHeight - smallPrint - (first ? head : further)
    const columns = usableWidth - gutter
    const wide = fill(rest.wide, height, usableWidth, sheet.continued, true)
    const widths = [columns * sheet.share, columns * (1 - sheet.share)] as const
    const bare = wide.placed.length === 0
    const left = fill(rest.left, wide.left, widths[0], sheet.continued, bare)
    const full = fill(rest.right, wide.left, widths[1], sheet.continued, bare)
    // What one column cannot hold goes on in the other, if that has room. The left is read first: a block that the right
    // would divide goes there as a whole, where it can.
    const ahead = movedWhole(full, rest.right)
    const aheadInLeft = fill(ahead.rest, left.left, widths[0], sheet.continued)
    const right = aheadInLeft.rest.length === 0 ? ahead : full
    const leftInRight = fill(left.rest, right.left, widths[1], sheet.continued)
    const rightInLeft =
      right === ahead ? aheadInLeft : fill(right.rest, left.left, widths[0], sheet.continued)
    sides.push({
      heading: first ? null : sheet.second,
      wide: wide.placed,
      left: [...left.placed, ...rightInLeft.placed],
      right: [...right.placed, ...leftInRight.placed],
    })
    rest = { wide: wide.rest, left: leftInRight.rest, right: rightInLeft.rest }
  } while (rest.wide.length + rest.left.length + rest.right.length > 0)
  return sides
}

interface Filled {
  readonly placed: readonly Block[]
  readonly rest: readonly Block[]
  /** Height that is left. */
  readonly left: number
}

/**
 * Places blocks in order until one does not fit; that one is divided, and all later ones wait.
 * @param isNeeded places one item even where it is taller than the side, so that no side stays empty
 */
function fill(
  blocks: readonly Block[],
  height: number,
  width: number,
  continued: Sheet['continued'],
  isNeeded = false,
): Filled {
  let left = height
  const placed: Block[] = []
  for (const [i, block] of blocks.entries()) {
    const costs = itemCosts(block, width)
    const headCost = headCosts[block.kind] + linesOf(block.note ?? '', width / smallLetter) * smallLine
    let fitting = 0
    let used = headCost
    const must = isNeeded && placed.length === 0 ? 1 : 0
    while (fitting < costs.length && (fitting < must || used + (costs[fitting] ?? 0) <= left)) {
      used += costs[fitting] ?? 0
      fitting++
    }
    const whole = fitting === costs.length && (used <= left || fitting <= must)
    if (fitting > 0 || whole) {
      placed.push(sliced(block, 0, fitting))
      left -= used
    }
    if (!whole) {
      const rest = fitting === 0 ? block : { ...sliced(block, fitting), heading: continued(block.heading) }
      return { placed, rest: [rest, ...blocks.slice(i + 1)], left: 0 }
    }
  }
  return { placed, rest: [], left }
}

/** The column without the block that its end divides, which waits whole with those after it. */
function movedWhole(column: Filled, blocks: readonly Block[]): Filled {
  const at = blocks.length - column.rest.length
  const isDivided = column.rest.length > 0 && column.placed.length > at
  return isDivided ? { ...column, placed: column.placed.slice(0, at), rest: blocks.slice(at) } : column
}

/** The same block with some of its items. The copy keeps its kind, which the compiler cannot see of a slice. */
const sliced = (block: Block, from: number, to?: number): Block =>
  ({ ...block, items: block.items.slice(from, to) }) as Block

/**
 * Millimetres of the printed style: a line of text at 8.5 points, of a note at 7, and the mean width of a letter,
 * as measured with a wide font, so that narrower ones only leave more room.
 */
const line = 4.1
const smallLine = 3.2
const letter = 1.58
/** Lines of the title and of a further side's heading, and how much wider or narrower letters are than in the text. */
const titleLine = 7.6
const titleLetter = 2.2
const headingLine = 5.4
const headingLetter = 1.55
const smallLetter = 0.82
const headCosts: Readonly<Record<Block['kind'], number>> = {
  cautions: 1,
  list: 7.4,
  readings: 12.6,
  boxes: 15,
  ticks: 7.4,
  blanks: 7.4,
}

const linesOf = (text: string, width: number): number =>
  text === '' ? 0 : Math.ceil((text.length * letter) / width)

function itemCosts(block: Block, width: number): readonly number[] {
  switch (block.kind) {
    case 'cautions':
      return block.items.map(({ level, word, text }) => {
        const lines = linesOf(`${word ?? ''} ${text}`, width - 8)
        return level === 'stop' ? lines * 5 + 3.2 : lines * line + 2
      })
    case 'list':
      return block.items.map((text) => linesOf(text, width - 5) * line + 0.6)
    case 'readings':
      return block.items.map(({ name, cells }) => {
        const lines = Math.max(
          linesOf(name, width * 0.28),
          ...cells.flatMap((cell) =>
            cell === null ? [] : [linesOf(cell.now.text, width * 0.1), linesOf(cell.change, width * 0.08)],
          ),
        )
        return lines * line + 0.7
      })
    case 'boxes':
      return block.items.map(({ name }) => Math.max(block.isDense ? 5 : 6.4, linesOf(name, 27) * 3.1 + 0.4))
    case 'blanks':
      // Two abreast.
      return block.items.map((_, i) => (i % 2 === 0 ? blankLine : 0))
    case 'ticks':
      return block.items.map(({ text, boxes }) =>
        Math.max(5.9, linesOf(text, width - boxes.length * 7 - 4) * line + 1.4),
      )
  }
}
