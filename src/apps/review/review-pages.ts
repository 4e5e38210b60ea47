/** The page of a local server on which what leaves for the portfolio is read and approved. */
import { z } from 'zod'
import { assetTexts } from '../../build/assets.ts'
import { UserError } from '../../build/disk/errors.ts'
import { commonStyles, packageRoot } from '../../build/program.ts'
import type { PageTools } from '../../editions/edition.ts'
import { isPhoto, type ToApprove } from '../../editions/portfolio/review.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import { reviewPage, type WaitingCase } from '../../pages/review/review-page.ts'
import { type Answer, type AnyAnswer, inWords, type LocalSite, nothingHere } from '../local-server.ts'
import { streamPlainFile } from '../plain-file.ts'
import { decide } from './approvals-on-disk.ts'
import { reviewCasebook } from './casebook-review.ts'

export interface ReviewTools {
  readonly casebook: string
  today(): PlainDate
  open(): Promise<PageTools>
  /** Random, and known to the pages of this server alone. */
  readonly key: string
}

const policy = {
  'content-security-policy':
    "default-src 'none'; img-src 'self'; style-src 'self'; script-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
}

/** Types that a browser shows. */
const pictureTypes: ReadonlyMap<string, string> = new Map([
  ['jpg', 'image/jpeg'],
  ['jpeg', 'image/jpeg'],
  ['png', 'image/png'],
  ['webp', 'image/webp'],
  ['avif', 'image/avif'],
])

/** Everything below `/-/review`. */
export function reviewPages({ casebook, today, open, key }: ReviewTools): LocalSite {
  /** What the page shows, by hash: nothing else is handed out or approved. */
  let shown: ReadonlyMap<string, ToApprove> = new Map()

  const page = async (): Promise<Answer> => {
    const tools = await open()
    const { renderer, words } = tools
    const { cases, broken } = reviewCasebook(casebook, today(), false, tools)
    const all = cases.flatMap(({ items }) => items.map(({ item }) => item))
    shown = new Map(all.map((item) => [item.hash, item]))
    const waiting = cases.map(
      ({ id, alias, items }): WaitingCase => ({
        id,
        alias,
        items: items.map(({ item, marks, place }) =>
          isPhoto(item)
            ? {
                hash: item.hash,
                place,
                photo: `${id}/${item.photo}`,
                src: `/-/review/photo?hash=${item.hash}`,
                shows: [item.foot, item.view].filter((part) => part !== null),
                caption: item.caption,
              }
            : { ...item, place, marks },
        ),
      }),
    )
    const body = await renderer.render(reviewPage(waiting, broken, key, words))
    return { status: 200, type: 'text/html; charset=utf-8', body, headers: policy }
  }
  const photo = (hash: string | null): AnyAnswer => {
    const item = shown.get(hash ?? '')
    if (item === undefined || !isPhoto(item)) return nothingHere
    const ending = item.photo.slice(item.photo.lastIndexOf('.') + 1).toLowerCase()
    const type = pictureTypes.get(ending)
    const file = type === undefined ? null : streamPlainFile(casebook, `${item.scope}/${item.photo}`)
    return type === undefined || file === null ? nothingHere : { type, ...file }
  }
  const asset = async (type: string, which: 'style' | 'script'): Promise<Answer> => {
    const { style, scripts } = assetTexts(packageRoot(), assets)
    return { status: 200, type, body: which === 'style' ? style : scripts.map(({ text }) => text).join('\n') }
  }
  return {
    show: ({ path, query }) => {
      if (path === '/-/review') return page()
      if (path === '/-/review/photo') return photo(query.get('hash'))
      if (path === '/-/review/review.css') return asset('text/css; charset=utf-8', 'style')
      if (path === '/-/review/review.js') return asset('text/javascript; charset=utf-8', 'script')
      return nothingHere
    },
    taker: (path) => (path === '/-/review/approve' ? (json) => approved(json, key, casebook, shown) : null),
  }
}

const assets = { styles: [...commonStyles, 'review'], scripts: ['review'] }

const sent = z.strictObject({ key: z.string(), hashes: z.array(z.string().max(64)).min(1).max(1_000) })

function approved(
  json: string,
  key: string,
  casebook: string,
  shown: ReadonlyMap<string, ToApprove>,
): Answer {
  const given = sentIn(json)
  if (given === null) return inWords(400, 'This says nothing of what is approved.')
  if (given.key !== key) return inWords(403, 'Load the page again: another preview is running by now.')
  const items = given.hashes.flatMap((hash) => shown.get(hash) ?? [])
  if (items.length < given.hashes.length)
    return inWords(409, 'The case files have changed. Load the page again.')
  try {
    decide(casebook, items, true)
    return inWords(200, 'Kept.')
  } catch (error) {
    if (error instanceof UserError) return inWords(409, error.message)
    throw error
  }
}

function sentIn(json: string): z.infer<typeof sent> | null {
  try {
    return sent.parse(JSON.parse(json))
  } catch {
    return null
  }
}
