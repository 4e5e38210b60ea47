/**
 * Runs a sentence the whole way that teaching text goes: the portfolio's anonymiser, the page as it is rendered, the
 * search of the finished page, and the marks that a person is shown.
 */

import { openPageTools } from '../../src/apps/site/page-tools.ts'
import type { Horse, Practice } from '../../src/casebook/model.ts'
import { portfolio } from '../../src/editions/portfolio.ts'
import { type HorseIdentity, identifiersOf, identityOf } from '../../src/identity/identifiers.ts'
import { marksIn } from '../../src/identity/marks.ts'
import { leakSearch } from '../../src/leaks/search.ts'
import { presentPortfolioCase } from '../../src/pages/portfolio/case.ts'
import { anonymiserFor } from '../../src/pages/portfolio/context.ts'
import { casePage } from '../../src/pages/portfolio/pages.ts'
import { english } from '../english.ts'
import { practice, zoe } from '../owner/zoe.ts'
import { input } from '../owner/zoe-assessed.ts'

/** Who is in the casebook. */
export interface Cast {
  readonly horse: string
  readonly id?: string
  readonly owner: string
  readonly ownerId?: string
  readonly privateWords?: readonly string[]
  readonly files?: readonly string[]
  readonly vet?: { readonly name: string | null; readonly phone: string | null }
  /** Other horses of the practice, each of an owner of its own. */
  readonly others?: readonly {
    readonly horse: string
    readonly id?: string
    readonly owner: string
    readonly ownerId?: string
    readonly files?: readonly string[]
  }[]
}

/** `replaced`: gone from the page. `refused`: the page is not published. `asked`: marked for the review. */
export type Outcome = 'replaced' | 'refused' | 'asked' | 'reached'

/**
 * One form. What is planted stands between « and » in the note. A text that begins with `page:` goes into the finished page as it
 * is, one that begins with `path:` is the path of a file.
 */
export type Form = readonly [outcome: Outcome, text: string]

export interface FormSet {
  readonly kind: string
  readonly cast: Cast
  readonly forms: readonly Form[]
}

export interface HarmlessSet {
  readonly kind: string
  readonly cast: Cast
  readonly sentences: readonly string[]
}

const tools = openPageTools()
const { style, scripts } = tools.assets(portfolio.assets)

/** Nothing to draw: what is planted is looked for in each text of the page, and a drawing would be walked each time. */
const bare: typeof input = {
  ...input,
  assessment: { ...input.assessment, trends: [], geometry: [], growth: [], cautions: [] },
}
const noVet = { name: null, phone: null }

export interface Run {
  /** The text as the anonymiser leaves it. */
  readonly rewritten: string
  /** What the search of the finished page finds. */
  readonly hits: readonly string[]
  readonly marks: readonly { readonly start: number; readonly end: number; readonly text: string }[]
}

export function stage(cast: Cast) {
  const id = cast.id ?? 'h7-x'
  const ownerId = cast.ownerId ?? 'own-7'
  const owners = [
    { id: ownerId, name: cast.owner, language: null },
    ...(cast.others ?? []).map(({ owner, ownerId: other = `${ownerId}-other` }) => ({
      id: other,
      name: owner,
      language: null,
    })),
  ]
  const ofPractice: Practice = { ...practice, owners }
  const horse: Horse = {
    ...zoe,
    id,
    name: cast.horse,
    owner: ownerId,
    privateWords: cast.privateWords ?? [],
    vet: { ...zoe.vet, ...(cast.vet ?? noVet) },
  }
  const own: HorseIdentity = {
    ...identityOf(horse),
    files: cast.files ?? [],
  }
  const others = (cast.others ?? []).map(
    (other): HorseIdentity => ({
      id: other.id ?? 'h8-y',
      name: other.horse,
      owner: other.ownerId ?? `${ownerId}-other`,
      privateWords: [],
      vet: noVet,
      files: other.files ?? [],
      dates: [],
    }),
  )
  const horses = [own, ...others]
  const list = identifiersOf(horses, ofPractice, tools.own)
  const search = leakSearch({
    list,
    horses,
    own: tools.own,
    ownTexts: [style, ...scripts.map(({ text }) => text), practice.name],
  })
  const anonymous = anonymiserFor(horse, ofPractice, '2026-01-12', tools.own, english.portfolio)

  const rendered = async (note: string) => {
    const noted: Horse = {
      ...horse,
      visits: horse.visits.map((visit, i) => ({
        ...visit,
        findings: [],
        body: { ...visit.body, forTeaching: i === 0 ? note : null },
      })),
    }
    const made = presentPortfolioCase({ ...bare, practice: ofPractice, horse: noted }, tools.own)
    if (made === null) throw new Error('the fixture has consent')
    const view = casePage(made.page, made.summary.slug, ofPractice, () => null, input.format.words)
    return tools.renderer.render(view)
  }
  const hitsIn = (text: string, path = 'portfolio/bramble/index.html') =>
    search
      .scan({ path, bytes: Buffer.from(text), reader: { kind: 'everyone' } })
      .map(({ kind, text: found }) => `${kind}: ${found}`)

  return {
    async note(text: string): Promise<Run> {
      const page = await rendered(text)
      return {
        rewritten: anonymous(text),
        hits: hitsIn(page),
        marks: marksIn(text, { identifiers: list.identifiers, own: tools.own }),
      }
    },
    async page(html: string): Promise<readonly string[]> {
      const page = await rendered('Long toes.')
      return hitsIn(page.replace('</main>', `${html}</main>`))
    },
    path: (path: string) => hitsIn('x', path),
    render: rendered,
    scan: (text: string) => hitsIn(text),
  }
}

/** What became of a planted form. */
export async function outcomeOf(on: ReturnType<typeof stage>, text: string): Promise<Outcome> {
  if (text.startsWith('page:')) return (await on.page(text.slice(5))).length > 0 ? 'refused' : 'reached'
  if (text.startsWith('path:')) return on.path(text.slice(5)).length > 0 ? 'refused' : 'reached'
  const [before = '', planted = ''] = text.split(/[«»]/)
  const note = text.replace(/[«»]/g, '')
  const run = await on.note(note)
  if (run.hits.length > 0) return 'refused'
  if (!run.rewritten.includes(planted)) return 'replaced'
  const isMarked = run.marks.some(
    ({ start, end }) => start < before.length + planted.length && end > before.length,
  )
  return isMarked ? 'asked' : 'reached'
}
