/** *All measures* of a horse, for the evening at the desk: every chart, table, verdict, interval and check. */
import { type Foot, feet } from '../../../hoof/feet.ts'
import { type DrawnTogether, drawnTogether } from '../../shared/drawn-together.ts'
import type { AgreementChart, LevelDrawing, SideDrawing, Table, WallDrawing } from '../../shared/figures.ts'
import type { PageView } from '../../shared/page.ts'
import { type ThenAndNow, thenAndNow } from '../../shared/photos.ts'
import type { PageShell } from '../../shared/shell.ts'
import type { Words } from '../../words/index.ts'
import { type HorseCase, type Link, shellOfHorse } from '../case/horse-case.ts'
import { type Fact, heldText } from '../case/profile.ts'
import { heelState, levelOf, sideOf, wallOf } from '../parts/drawings.ts'
import { findingsTable } from '../parts/findings.ts'
import { latestPairTexts, loweringTexts } from '../parts/pairs.ts'
import { worthDrawing } from '../parts/worth-drawing.ts'
import { agreementCharts } from './agreement.ts'
import { checkTexts } from './checks.ts'
import { capsuleTable, type GrowOutView, growOutTable, growOutView, newGrowthText } from './growing-down.ts'
import { growthSentences, growthTables, type WallGrowth } from './growth.ts'
import { type MeasureSection, measureSections, usualDays } from './measure-sections.ts'
import { methodOf } from './measure-table.ts'
import { type PastForecasts, type PlanView, pastForecasts, planView } from './plans.ts'

export interface MeasuresPage {
  readonly w: Words
  readonly page: PageShell
  readonly horse: Link
  readonly heading: string
  /** To each part of the page. */
  readonly index: readonly Link[]
  /** Days and stage of all that says none. */
  readonly usual: string | null
  readonly measures: readonly MeasureSection[]
  /** What the numbers of a measure are, and the rule of every verdict of this page. */
  readonly method: readonly Fact[]
  /** Where it is not known, or a trim may hide in it. */
  readonly growth: readonly string[]
  readonly growthTables: readonly WallGrowth[]
  /** What the horse's own page does not draw. */
  readonly sides: DrawnTogether<SideDrawing>
  /** Which feet it draws; null where none. */
  readonly drawn: string | null
  readonly levels: DrawnTogether<LevelDrawing>
  readonly pairs: readonly string[]
  readonly lowering: readonly string[]
  readonly held: readonly string[]
  readonly plans: readonly PlanView[]
  readonly past: PastForecasts | null
  readonly growing: readonly GrowOutView[]
  readonly growOutTable: Table | null
  readonly walls: DrawnTogether<WallDrawing>
  readonly newGrowth: readonly string[]
  readonly capsules: Table | null
  readonly findings: Table | null
  readonly photos: readonly ThenAndNow[]
  readonly agreement: readonly AgreementChart[]
  readonly remarks: readonly string[]
}

export function measuresPage(of: HorseCase): PageView {
  const { horse, words, format, assessment } = of
  const photos = thenAndNow(of.visits, of.pictures, format)
  const usual = usualDays(of)
  const measures = measureSections(of, usual)
  const once = worthDrawing(of)
  const drawnOnce = (kind: 'side' | 'wall', foot: Foot) =>
    once.some((drawing) => drawing.kind === kind && drawing.foot === foot)
  const model: MeasuresPage = {
    w: format.words,
    page: shellOfHorse(of, words.measures.title(horse.name), photos.length > 0 ? ['compare'] : []),
    horse: { text: horse.name, href: 'index.html' },
    heading: words.measures.title(horse.name),
    index: [
      ...measures.map(({ id, name }) => ({ text: name, href: `#${id}` })),
      ...(measures.length > 0 ? [{ text: words.trend.method, href: '#method' }] : []),
      ...words.measures.index,
    ],
    usual: usual && words.measures.usualDays(usual),
    measures,
    method: methodOf(of),
    growth: growthSentences(of, assessment.growth),
    growthTables: growthTables(of, assessment.growth),
    sides: drawnTogether(
      assessment.geometry.filter(({ foot }) => !drawnOnce('side', foot)).map((view) => sideOf(of, view)),
    ),
    drawn: once.length === 0 ? null : words.measures.drawn(format.list(once.map(({ foot }) => foot))),
    levels: drawnTogether(
      feet.flatMap((foot) => {
        const state = heelState(assessment.trends, foot)
        return state === null ? [] : [levelOf(of, state)]
      }),
    ),
    pairs: latestPairTexts(of),
    lowering: loweringTexts(of),
    held: heldText(of),
    plans: assessment.plans.map((plan) => planView(of, plan)),
    past: pastForecasts(of),
    growing: assessment.growOut.map((one) => growOutView(of, one)),
    growOutTable: growOutTable(of),
    walls: drawnTogether(
      feet.flatMap((foot) => (drawnOnce('wall', foot) ? [] : (wallOf(of, foot, assessment.growOut) ?? []))),
    ),
    newGrowth: assessment.newGrowth.map((one) => newGrowthText(of, one)),
    capsules: capsuleTable(of),
    findings: findingsTable(of),
    photos,
    agreement: agreementCharts(of),
    // What hand and photograph differ by stands in their plot, where there is one.
    remarks: checkTexts(
      of,
      assessment.checks.filter((check) => check.kind !== 'entered against photo' || !check.facts.explained),
    ),
  }
  return { path: `${horse.id}/measures.html`, template: 'practice/measures', model }
}
