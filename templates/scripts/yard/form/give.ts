/** Visits leave the phone: through its share sheet, or as a file. */
import type { YardDraft } from '../../../../src/yard/draft.ts'
import {
  type OutFile,
  type PictureBytes,
  sharedFiles,
  type WritingPractice,
  zipOf,
} from '../../../../src/yard/parcel.ts'
import type { Drafts } from './drafts.ts'

/** Made before the key is pressed: a share sheet opens only while the press is fresh. */
export interface Parcel {
  readonly zip: OutFile
  /** For the share sheet; null where the phone shares no such files. */
  readonly shared: readonly File[] | null
}

export async function parcelOf(
  given: readonly YardDraft[],
  practice: WritingPractice,
  drafts: Drafts,
): Promise<Parcel> {
  const keeper = new Map(given.flatMap(({ id, photos }) => photos.map(({ sha256 }) => [sha256, id] as const)))
  const pictures: PictureBytes = (sha256) => drafts.picture(keeper.get(sha256) ?? '', sha256)
  const zip = await zipOf(given, practice, pictures)
  const out = await Promise.all(given.map((draft) => sharedFiles(draft, practice, pictures)))
  const files = out.flat().map(({ name, type, bytes: content }) => new File([content], name, { type }))
  const isShared = typeof navigator.canShare === 'function' && navigator.canShare({ files })
  return { zip, shared: isShared ? files : null }
}

export type Outcome = 'given' | 'given up' | 'refused'

/** @param files of a parcel, which was made before */
export async function share(files: readonly File[], title: string): Promise<Outcome> {
  try {
    await navigator.share({ files: [...files], title })
    return 'given'
  } catch (error) {
    return error instanceof DOMException && error.name === 'AbortError' ? 'given up' : 'refused'
  }
}

export function saveFile({ name, type, bytes }: OutFile): void {
  const address = URL.createObjectURL(new Blob([bytes], { type }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  // A browser reads the file after the click, at a time of its own.
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}
