/** What of a casebook waits for a person's approval before it leaves for the portfolio, and what has it. */
import { contentHash } from '../../build/disk/content-hash.ts'
import { UserError } from '../../build/disk/errors.ts'
import { diskFolder } from '../../build/disk/source-folder.ts'
import type { Diagnostic } from '../../casebook/diagnostic.ts'
import type { CasebookFolder } from '../../casebook/folder.ts'
import { readCasebook } from '../../casebook/read.ts'
import type { PageTools } from '../../editions/edition.ts'
import { isPhoto, reviewOf, type SentenceToApprove, type ToApprove } from '../../editions/portfolio/review.ts'
import { withoutDrafts } from '../../editions/shared-input.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import { approvedIn } from '../../identity/approvals.ts'
import { identifiersOf, identityOf } from '../../identity/identifiers.ts'
import { type Mark, marker } from '../../identity/marks.ts'
import { lineOf } from '../../identity/sentences.ts'
import type { Words } from '../../pages/words/index.ts'
import { openPageTools } from '../site/page-tools.ts'
import { approvalsIn } from './approvals-on-disk.ts'

export interface ReviewedItem {
  readonly item: ToApprove
  readonly isApproved: boolean
  /** What in the sentence as published looks as if it told who or where. */
  readonly marks: readonly Mark[]
  /** Where to change it: `juno/2026-03-14.md:31`. */
  readonly place: string
}

export interface ReviewedCase {
  readonly id: string
  readonly alias: string
  /** What looks like a name first, then in the order of the page. */
  readonly items: readonly ReviewedItem[]
}

export interface CasebookReview {
  /** Those with anything to show; the ones in which something looks like a name first. */
  readonly cases: readonly ReviewedCase[]
  /** Of the file of approvals. */
  readonly diagnostics: readonly Diagnostic[]
  /** Horses with errors in their files, which cannot be looked at. */
  readonly broken: readonly string[]
  /** What it is called, for the terminal. */
  readonly words: Words['review']
}

/**
 * @param asOf visits after this day are not shown yet
 * @param withApproved whether what is approved is wanted as well
 * @throws UserError when the casebook cannot be read
 */
export function reviewCasebook(
  casebook: string,
  asOf: PlainDate,
  withApproved: boolean,
  { formatIn, own, words }: Pick<PageTools, 'formatIn' | 'own' | 'words'> = openPageTools(),
): CasebookReview {
  const folder = diskFolder(casebook)
  const read = readCasebook(folder, asOf)
  const approvals = approvalsIn(casebook)
  if (read.casebook === null)
    throw new UserError('practice.md must be put right first: growdown check says what is wrong with it.')
  const { practice, horses } = read.casebook
  const format = formatIn(practice.units)
  const mark = marker({ identifiers: identifiersOf(horses.map(identityOf), practice, own).identifiers, own })
  const seen = new Set<string>()
  /** What belongs to the practice is asked once. */
  const isNew = ({ hash }: ToApprove) => !seen.has(hash) && seen.add(hash).has(hash)
  const cases = horses.flatMap((horse): readonly ReviewedCase[] => {
    if (!horse.consent.portfolio || horse.alias === null) return []
    const hashOf = (file: string) => hashIn(folder, `${horse.id}/${file}`)
    const review = reviewOf({ horse: withoutDrafts(horse), practice, format }, asOf, own, hashOf)
    const approved = approvedIn(approvals, horse.id)
    const items = (review?.items ?? [])
      .filter((item) => (withApproved || !approved.has(item.hash)) && isNew(item))
      .map((item) => ({
        item,
        isApproved: approved.has(item.hash),
        marks: isPhoto(item) || isChosen(item) ? [] : mark(item.published),
        place: placeOf(item, folder),
      }))
    return items.length === 0 ? [] : [{ id: horse.id, alias: horse.alias, items: markedFirst(items) }]
  })
  const ids = new Set(horses.map(({ id }) => id))
  const withErrors = read.diagnostics.flatMap(({ level, file }) =>
    level === 'error' && file.includes('/') ? [file.slice(0, file.indexOf('/'))] : [],
  )
  return {
    cases: cases.toSorted((a, b) => Number(isMarked(b)) - Number(isMarked(a))),
    words: words.review,
    diagnostics: approvals.report.diagnostics,
    broken: [...new Set(withErrors)].filter((id) => !ids.has(id)),
  }
}

/** A name that is there to be shown. */
const isChosen = ({ what }: SentenceToApprove): boolean => what === 'practice' || what === 'alias'

const isMarked = ({ items }: ReviewedCase): boolean => (items[0]?.marks.length ?? 0) > 0

const markedFirst = (items: readonly ReviewedItem[]): readonly ReviewedItem[] =>
  items.toSorted((a, b) => Number(b.marks.length > 0) - Number(a.marks.length > 0))

function hashIn(folder: CasebookFolder, path: string): string | null {
  const bytes = read(folder, path)
  return bytes === null ? null : contentHash(bytes)
}

function placeOf(item: ToApprove, folder: CasebookFolder): string {
  if (isPhoto(item)) return item.file
  const bytes = read(folder, item.file)
  const line = bytes === null ? null : lineOf(new TextDecoder().decode(bytes), item.original)
  return line === null ? item.file : `${item.file}:${line}`
}

function read(folder: CasebookFolder, path: string): Uint8Array | null {
  try {
    return folder.read(path)
  } catch (error) {
    if (error instanceof UserError) return null
    throw error
  }
}
