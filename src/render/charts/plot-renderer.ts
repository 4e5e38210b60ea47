/**
 * One shape of chart, drawn by Vega: a Vega-Lite specification is compiled once, and then draws any data.
 * A drawing depends on its data alone, whatever was drawn before.
 */
import type * as VegaLibrary from 'vega'
import type { TopLevelSpec } from 'vega-lite'
import { type Geometries, type SceneMark, sceneWriter } from './scene-svg.ts'

/** The chart library, loaded once. */
export interface Vega {
  readonly vega: typeof VegaLibrary
  readonly compile: typeof import('vega-lite').compile
}

export async function loadVega(): Promise<Vega> {
  const [vega, { compile }] = await Promise.all([import('vega'), import('vega-lite')])
  return { vega, compile }
}

/** Values of the specification's parameters, and rows for each of its named data sources. */
export interface Feed {
  readonly width: number
  readonly height: number
  readonly params: Readonly<Record<string, unknown>>
  readonly data: Readonly<Record<string, readonly object[]>>
}

/** Draws a feed as SVG groups, without the `<svg>` round them. */
export type PlotRenderer = (feed: Feed) => string

/**
 * Compiles a specification. It must set `autosize: none` and no padding, for the caller lays the picture out, clip
 * nothing, for Vega numbers its clips by what it drew before, and group no rows, for Vega keeps the order of groups
 * that it has seen.
 *
 * One View is kept and fed anew, three times as fast as a new View each: all rows of before go as the new ones come,
 * so the order of marks is that of the data.
 */
export function createPlotRenderer({ vega, compile }: Vega, spec: TopLevelSpec): PlotRenderer {
  const { Marks } = vega as unknown as { readonly Marks: Geometries }
  const runtime = vega.parse(compile(spec, { logger: strictLogger }).spec)
  const view = new vega.View(runtime, { renderer: 'none' }).logLevel(vega.Error)
  const write = sceneWriter(Marks)
  const full = new Set<string>()
  return (feed) => {
    view.width(feed.width).height(feed.height)
    for (const [name, value] of Object.entries(feed.params)) view.signal(name, value)
    for (const [name, rows] of Object.entries(feed.data)) {
      // What was empty and stays so needs no work.
      if (rows.length > 0 || full.delete(name)) view.data(name, [...rows])
      if (rows.length > 0) full.add(name)
    }
    view.run()
    const { root } = view.scenegraph() as unknown as { readonly root: SceneMark }
    return write(root)
  }
}

const fail = (...reasons: readonly unknown[]): never => {
  throw new Error(`chart specification: ${reasons.join(' ')}`)
}

/** A warning of the compiler is a fault of the specification. */
const strictLogger = {
  level: () => strictLogger,
  error: fail,
  warn: fail,
  info: () => strictLogger,
  debug: () => strictLogger,
}
