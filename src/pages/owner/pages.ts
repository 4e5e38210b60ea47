import type { Owner, Practice } from '../../casebook/model.ts'
import type { PageView } from '../shared/page.ts'
import type { OwnerWords } from '../words/index.ts'
import type { HorseBrief, OwnerHorse, PhotoPair } from './view.ts'

/** One horse's part of its owner's page: markup, made apart from the other horses. */
export interface OwnerPart {
  /** Id of the part on the page. */
  readonly anchor: string
  readonly name: string
  readonly brief: HorseBrief
  readonly html: string
}

/**
 * The part of one horse.
 * @param bytes a picture as a data URI; a picture without one is left out
 */
export function ownerPart(
  h: OwnerHorse,
  anchor: string,
  bytes: (picture: string) => string | null,
  words: OwnerWords,
): PageView {
  const shown = ({ head, shots }: PhotoPair) => ({
    head,
    shots: shots.flatMap(({ picture, ...shot }) => {
      const src = bytes(picture)
      return src === null ? [] : [{ ...shot, src }]
    }),
  })
  const photos = h.photos.map(shown).filter(({ shots }) => shots.length > 0)
  const pair = h.thenAndNow && shown(h.thenAndNow)
  const thenAndNow = pair !== null && pair.shots.length > 0 ? pair : null
  const drawing = h.drawing && { ...h.drawing, id: `${anchor}-${h.drawing.id}` }
  return {
    path: `${anchor}.html`,
    template: 'owner/horse',
    model: { h: { ...h, photos, thenAndNow, drawing }, anchor, w: words.owner },
  }
}

/** Style and script of a page that carries its own, with the policy that allows these and nothing else. */
export interface Inlined {
  readonly style: string
  readonly policy: string
}

/** One owner's whole page before it is locked: every part, in the order of the horses' names. */
export function ownerRecord(
  practice: Practice,
  owner: Owner,
  parts: readonly OwnerPart[],
  { style, policy }: Inlined,
  words: OwnerWords,
): PageView {
  const { owner: w } = words
  const horses = [...parts].sort((a, b) =>
    a.name < b.name ? -1 : a.name > b.name ? 1 : a.anchor < b.anchor ? -1 : 1,
  )
  return {
    path: 'record.html',
    template: 'owner/record',
    model: {
      lang: words.base.lang,
      title: w.title(practice.name),
      practice: practice.name,
      forOwner: w.forOwner(owner.name),
      localRules: practice.localRules,
      madeWith: w.madeWith(practice.name),
      several: horses.length > 1,
      horses,
      style,
      policy,
      w,
    },
  }
}

/** What anyone who comes by may see: the practice's name, how to unlock, and the locked part. */
export function lockedPage(
  practice: Practice,
  token: string,
  locked: { readonly armored: string; readonly checksum: string },
  inlined: Inlined & { readonly script: string },
  words: OwnerWords,
): PageView {
  const { owner: w } = words
  const { opening, empty, wrong, damaged, weak } = w.locked
  return {
    path: `${token}/index.html`,
    template: 'owner/locked',
    model: {
      lang: words.base.lang,
      title: w.locked.title(practice.name),
      practice: practice.name,
      payload: locked.armored,
      checksum: locked.checksum,
      says: JSON.stringify({ opening, empty, wrong, damaged, weak }),
      ...inlined,
      w: w.locked,
    },
  }
}

/** Tells search engines to stay away; the pages say so too. */
export const robots = 'User-agent: *\nDisallow: /\n'
