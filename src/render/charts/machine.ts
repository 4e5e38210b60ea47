/**
 * Vega as a machine for one shape of chart: a Vega-Lite specification is compiled once, and then draws any data.
 * A drawing depends on its data alone: each starts from a new View, and ids inside are numbered from 0 again.
 */
import type * as VegaLibrary from 'vega'
import type { TopLevelSpec } from 'vega-lite'

/** The chart library, loaded once. */
export interface Vega {
  readonly vega: typeof VegaLibrary
  readonly compile: typeof import('vega-lite').compile
}

/** Public parts of the library that its types leave out: a scene turned to text at once, not in a promise. */
interface SceneToText {
  readonly SVGStringRenderer: new () => {
    initialize(element: null, width: number, height: number, origin: readonly [number, number]): void
    render(scene: unknown): void
    svg(): string
  }
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
export type Machine = (feed: Feed) => string

/**
 * Compiles a specification. It must set `autosize: none` and no padding, for the caller lays the picture out, clip
 * nothing, for Vega numbers its clips by what it drew before, and group no rows, for Vega keeps the order of groups
 * that it has seen.
 *
 * One View is kept and fed anew, three times as fast as a new View each: all rows of before go as the new ones come,
 * so the order of marks is that of the data.
 */
export function createMachine({ vega, compile }: Vega, spec: TopLevelSpec): Machine {
  const { SVGStringRenderer } = vega as unknown as SceneToText
  const runtime = vega.parse(compile(spec, { logger: strictLogger }).spec)
  const view = new vega.View(runtime, { renderer: 'none' }).logLevel(vega.Error)
  return (feed) => {
    view.width(feed.width).height(feed.height)
    for (const [name, value] of Object.entries(feed.params)) view.signal(name, value)
    for (const [name, rows] of Object.entries(feed.data)) view.data(name, [...rows])
    view.run()
    const renderer = new SVGStringRenderer()
    renderer.initialize(null, feed.width, feed.height, [0, 0])
    renderer.render((view.scenegraph() as unknown as { readonly root: unknown }).root)
    return marksOnly(renderer.svg())
  }
}

/** The content of the outer `<svg>`, without Vega's own names and roles, empty shapes, and what the caller's `<svg>` says for all. */
const marksOnly = (svg: string): string =>
  svg.slice(svg.indexOf('>') + 1, svg.lastIndexOf('</svg>')).replace(needless, '$1')

/** Parts that go altogether, and digits after the second of a decimal, before which `$1` stays. */
const needless = new RegExp(
  [
    '<path class="(?:background|foreground)"[^>]*/>',
    ' (?:class|role|aria-[a-z]+|pointer-events|stroke-miterlimit|font-family|font-size)="[^"]*"',
    ' (?:opacity="1"|stroke-dasharray=""|transform="translate\\(0,0\\)"|font-weight="normal")',
    '(\\d\\.\\d\\d)\\d+',
  ].join('|'),
  'g',
)

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
