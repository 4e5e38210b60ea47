/** What of a case a person approves before it leaves: each free sentence, each photograph. */
import { cacheKey } from '../../build/cache-key.ts'
import { contentHash } from '../../build/disk/content-hash.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import {
  type Approval,
  photoApproval,
  practiceScope,
  type Reviewed,
  sentenceApproval,
} from '../../identity/approvals.ts'
import type { OwnWords } from '../../identity/common-words.ts'
import { identityOf } from '../../identity/identifiers.ts'
import { type FreeText, sentencesOf } from '../../identity/sentences.ts'
import { caseSubject } from '../../pages/portfolio/context.ts'
import { freeTexts } from '../../pages/portfolio/free-texts.ts'
import { photosShown } from '../../pages/portfolio/shots.ts'
import type { HorseInput } from '../../pages/shared/horse-input.ts'

export interface SentenceToApprove extends FreeText, Approval {}

export interface PhotoToApprove extends Approval {
  /** Path in the horse's folder. */
  readonly photo: string
  /** Visit that names it. */
  readonly file: string
  readonly foot: string | null
  readonly view: string
  readonly caption: string | null
}

export type ToApprove = SentenceToApprove | PhotoToApprove

export const isPhoto = (item: ToApprove): item is PhotoToApprove => 'photo' in item

export interface CaseReview extends Reviewed {
  /** Each once, in the order of the page. */
  readonly items: readonly ToApprove[]
}

/**
 * Null where the case may not be shown at all.
 * @param asOf day of the page
 * @param hashOf hash of the bytes of a file in the horse's folder; null where there is none
 */
export function reviewOf(
  input: Pick<HorseInput, 'horse' | 'practice' | 'format'>,
  asOf: PlainDate,
  own: OwnWords,
  hashOf: (file: string) => string | null,
): CaseReview | null {
  const subject = caseSubject(input, asOf, own)
  if (subject === null) return null
  const { horse } = input
  const sentences = freeTexts(subject)
    .flatMap(sentencesOf)
    .map((sentence): SentenceToApprove => {
      const scope = sentence.isOfPractice ? practiceScope : horse.id
      return { ...sentence, scope, hash: sentenceApproval(contentHash, scope, sentence.published) }
    })
  const photoHash = (file: string) => {
    const content = hashOf(file)
    return content === null ? null : photoApproval(contentHash, horse.id, content)
  }
  const { first, later } = photosShown(subject, (file) => hashOf(file) !== null)
  const photos = [...first, ...later].flatMap(({ photo, visit }): readonly PhotoToApprove[] => {
    const hash = photoHash(photo.file)
    const { file, foot, view, caption } = photo
    return hash === null
      ? []
      : [{ photo: file, file: visit.file, foot, view, caption, scope: horse.id, hash }]
  })
  // Whose names are taken out, and whether photographs may be shown: what was published under anything else does not stay.
  const under = (withPhotos: boolean) => cacheKey(namesOf(input), withPhotos)
  return {
    items: eachOnce([...sentences, ...photos]),
    madeUnder: under(horse.consent.photos),
    photoHash,
    mayStay: horse.consent.photos ? [under(true), under(false)] : [under(false)],
  }
}

/** The names that rewriting takes out, without dates and file names, which every visit brings. */
function namesOf({ horse, practice }: Pick<HorseInput, 'horse' | 'practice'>): unknown {
  const { id, name, owner, privateWords, vet } = identityOf(horse)
  const told = [practice.portfolio, practice.portfolio.hidesPractice ? practice.name : null]
  return [
    id,
    name,
    privateWords,
    vet,
    practice.owners.find((one) => one.id === owner) ?? null,
    told,
    ...practice.people,
  ]
}

function eachOnce(items: readonly ToApprove[]): readonly ToApprove[] {
  const seen = new Set<string>()
  return items.filter(({ hash }) => {
    const isNew = !seen.has(hash)
    seen.add(hash)
    return isNew
  })
}
