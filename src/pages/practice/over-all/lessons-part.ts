/** What the practice has taught of its readings and of growth, against the literature. */
import type { Person } from '../../../casebook/model.ts'
import { adultPrior } from '../../../hoof/growth.ts'
import { type AnyMeasureId, derivedIds, measureIds } from '../../../hoof/measures.ts'
import { learnedKey } from '../../../trend/model/learned.ts'
import type { Lesson, PracticeLessons } from '../../../trend/model/practice.ts'
import { literatureSd } from '../../../trend/scale.ts'
import { z975 } from '../../../trend/student.ts'
import type { Table } from '../../shared/figures.ts'
import { capital, type Formatter } from '../../shared/format.ts'

export interface LessonsPart {
  /** The measures that were read most, a sentence each; who reads how finely; how fast horn grows here. Empty where nothing was taught. */
  readonly sentences: readonly string[]
  /** Every measure; null where nothing was taught. */
  readonly table: Table | null
}

/** Measures told of in a sentence. */
const mostSentences = 3

const families = ['gauge', 'photo'] as const
const noFoot = 'LF'

export function lessonsPart(
  { lessons, learned, hands }: PracticeLessons,
  people: readonly Person[],
  format: Formatter,
): LessonsPart {
  const w = format.words.reference
  const taught = [...measureIds, ...derivedIds].flatMap((measure) =>
    families.flatMap((family): readonly Taught[] => {
      // A key names single feet or all together, and no foot by itself.
      const lesson = lessons[learnedKey(family, measure, noFoot)]
      return lesson === undefined || lesson.readings === 0 ? [] : [{ measure, family, lesson }]
    }),
  )
  if (taught.length === 0) return { sentences: [], table: null }
  const mostRead = taught.toSorted((a, b) => b.lesson.readings - a.lesson.readings).slice(0, mostSentences)
  return {
    sentences: [
      ...mostRead.map(({ measure, family, lesson }) =>
        w.repeats(
          format.name(measure),
          w.by[family],
          ownText(measure, lesson, format),
          format.fine(measure, literatureSd(measure)),
          lesson.readings,
        ),
      ),
      // In the order of practice.md: nobody is ranked.
      ...people.flatMap(({ id, name }) => {
        const hand = hands[id]
        return hand === undefined ? [] : [w.hand(name, factorText(hand.factor), hand.readings)]
      }),
      ...growthSentences(learned.growOut, format),
    ],
    table: lessonsTable(taught, format),
  }
}

interface Taught {
  readonly measure: AnyMeasureId
  readonly family: (typeof families)[number]
  readonly lesson: Lesson
}

/** A measure a line; a way of reading that nobody used has no column. */
function lessonsTable(taught: readonly Taught[], format: Formatter): Table {
  const w = format.words.reference
  const used = families.filter((family) => taught.some((one) => one.family === family))
  // A figure keeps its unit beside it in a narrow column.
  const unbroken = (text: string) => text.replace(' ', '\u00a0')
  return {
    caption: w.lessonsTable,
    head: [w.lessonsHead.measure, ...used.map((family) => w.lessonsHead[family]), w.lessonsHead.literature],
    rows: [...new Set(taught.map(({ measure }) => measure))].map((measure) => [
      capital(format.name(measure)),
      ...used.map((family) => {
        const found = taught.find((one) => one.measure === measure && one.family === family)
        return found === undefined
          ? w.noLesson
          : w.lesson(unbroken(ownText(measure, found.lesson, format)), found.lesson.readings)
      }),
      unbroken(format.fine(measure, literatureSd(measure))),
    ]),
  }
}

const factorText = (factor: number): string => factor.toFixed(1)

/** The error of one reading, in the measure's unit: what is learned is a multiple of the literature's. */
const ownText = (measure: AnyMeasureId, { e }: Lesson, format: Formatter): string =>
  format.fine(measure, e * literatureSd(measure))

function growthSentences(
  { mean, meanSd, spread }: PracticeLessons['learned']['growOut'],
  format: Formatter,
): readonly string[] {
  const w = format.words.reference
  const aMonth = (mm: number) => format.words.base.perMonth(format.fine('toe-length', mm))
  const half = z975 * meanSd
  return [
    w.growsHere(
      aMonth(mean),
      format.interval('toe-length', mean - half, mean + half),
      aMonth(adultPrior.mean),
    ),
    w.wallsDiffer(format.fine('toe-length', spread)),
  ]
}
