/** The pages of one horse in each edition: made, or where something waits for approval, as they were last published. */
import type { Output } from '../../build/disk/staging.ts'
import type { UnitOutput } from '../../build/unit.ts'
import type { Edition, HorseTools } from '../../editions/edition.ts'
import { editions as everyEdition } from '../../editions/index.ts'
import { inputsOf } from '../../editions/shared-input.ts'
import { practiceScope, type Reviewed } from '../../identity/approvals.ts'
import type { HorseInput } from '../../pages/shared/horse-input.ts'
import type { ApprovedPages, HorseJob, HorseRecord } from './horse-job.ts'

export interface PagesTools extends HorseTools {
  /** Takes files at paths within the site. */
  readonly put: UnitOutput['put']
  readonly keepOn: UnitOutput['keepOn']
  /** The place on this disk of a file of the site; null where it is not as it was published. */
  publishedAt(file: ApprovedPages['files'][number]): string | null
}

type Approved = Pick<HorseJob, 'approved' | 'lastApproved'>
export type MadePages = Pick<HorseRecord, 'kept' | 'waiting' | 'lastApproved'>

/** @param hashOf hash of the bytes of a file in the horse's folder; null where there is none */
export async function pagesOfHorse(
  input: HorseInput,
  editions: readonly Edition[],
  job: Approved,
  hashOf: (file: string) => string | null,
  tools: PagesTools,
): Promise<MadePages> {
  const approved = new Set(job.approved)
  const kept: Record<string, unknown> = {}
  const lastApproved: Record<string, ApprovedPages> = {}
  const waiting = { own: 0, ofPractice: 0 }
  const inputFor = inputsOf(input)
  for (const edition of new Set([...editions, ...everyEdition])) {
    const { name } = edition
    const review = (await edition.review?.(inputFor(edition), tools.own, hashOf)) ?? null
    const waits = review?.items.filter(({ hash }) => !approved.has(hash)) ?? []
    for (const { scope } of waits) waiting[scope === practiceScope ? 'ofPractice' : 'own'] += 1
    const last = job.lastApproved[name]
    if (!editions.includes(edition)) {
      if (review !== null && last?.fragments.every(tools.keepOn)) lastApproved[name] = last
      continue
    }
    const pages =
      review !== null && waits.length > 0
        ? lastPages(last, review, tools)
        : await newPages(edition, review, inputFor(edition), approved, tools)
    if (pages === null) continue
    kept[name] = pages.kept
    if (review !== null) lastApproved[name] = pages
  }
  return { kept, waiting, lastApproved }
}

async function newPages(
  edition: Edition,
  review: Reviewed | null,
  input: HorseInput,
  approved: ReadonlySet<string>,
  { publishedAt: _, keepOn: __, put, keep, ...tools }: PagesTools,
): Promise<ApprovedPages | null> {
  const files: Pick<Output, 'path' | 'hash'>[] = []
  const putBelow: UnitOutput['put'] = (file) => {
    const output = put({ ...file, path: `${edition.folder}/${file.path}` })
    files.push({ path: output.path, hash: output.hash })
    return output
  }
  const fragments: string[] = []
  const keeping: UnitOutput['keep'] = (text) => {
    const fragment = keep(text)
    fragments.push(fragment)
    return fragment
  }
  // Where a picture cannot be used an older one would take its place, which nobody was asked about.
  const mayShow = (file: string) => review === null || approved.has(review.photoHash(file) ?? '')
  const pictures = new Map([...input.pictures].filter(([file]) => mayShow(file)))
  const kept = await edition.ofHorse({ ...input, pictures }, { ...tools, keep: keeping, put: putBelow })
  return kept === null ? null : { kept, files, fragments, madeUnder: review?.madeUnder ?? '' }
}

/** Null where there were none, where they may not stay, or where the site does not have them any more. */
function lastPages(
  last: ApprovedPages | undefined,
  { mayStay }: Reviewed,
  { put, keepOn, publishedAt }: PagesTools,
): ApprovedPages | null {
  if (last === undefined || !mayStay.includes(last.madeUnder)) return null
  const places = last.files.flatMap((file) => {
    const copyFrom = publishedAt(file)
    return copyFrom === null ? [] : [{ path: file.path, copyFrom }]
  })
  if (places.length < last.files.length || !last.fragments.every(keepOn)) return null
  places.forEach(put)
  return last
}
