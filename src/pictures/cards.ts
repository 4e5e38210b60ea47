/** Cards that were found in pictures, put with the points that are marked on them. */
import type { CardRefusal, CardSearch } from '../card/find-card.ts'
import type { Diagnostic } from '../casebook/diagnostic.ts'
import type { CasebookFolder } from '../casebook/folder.ts'
import type { Horse, Photo, Visit } from '../casebook/model.ts'
import { isUpright, type PlacedCard } from '../hoof/card.ts'
import { wantsCard } from './process.ts'
import { reportAt } from './refusal.ts'

/** The same horse, its marked points measured by the card where one was found beside them. */
export function withCards(horse: Horse, cards: ReadonlyMap<string, CardSearch>): Horse {
  const withCard = (photo: Photo): Photo => {
    const found = wantsCard(photo) ? cards.get(photo.file) : undefined
    const { landmarks } = photo
    if (!found?.card || !landmarks || !stands(photo, found.card)) return photo
    const told = landmarks.cardTold
    const nearer = told === undefined || told === 'none' ? null : told.nearer
    return { ...photo, landmarks: { ...landmarks, card: { ...found.card, nearer } } }
  }
  if (![...cards.values()].some(({ card }) => card)) return horse
  return {
    ...horse,
    visits: horse.visits.map((visit) => ({ ...visit, photos: visit.photos.map(withCard) })),
  }
}

/** In all views but that of a sole its lower edge is the ground. */
const stands = ({ view }: Photo, card: PlacedCard): boolean => view === 'solar' || isUpright(card)

type Reason = Exclude<CardRefusal, 'none'> | 'not upright'

const refusals: Readonly<Record<Reason, { readonly why: string; readonly advice: string }>> = {
  'other markers': {
    why: 'shows markers, but none of the card that "growdown card" prints',
    advice: 'print that card, or write card: none',
  },
  'two cards': {
    why: 'shows two cards',
    advice: 'keep the one beside the foot; write card: none to use the scale',
  },
  'half a card': {
    why: 'shows only a part of the card',
    advice: 'take it again with the whole card in the picture; write card: none to use the scale',
  },
  'corners disagree': {
    why: 'shows a card whose markers do not lie in one plane: it is bent, or not the one that is printed',
    advice: 'glue the card to a stiff board; write card: none to use the scale',
  },
  'not upright': {
    why: 'shows the card on another edge than the one with the arrow, so that it tells no ground',
    advice: 'take it again with the arrow of the card down; write card: none to use the scale',
  },
  screen: {
    why: 'shows a card on a screen, or one that is stained: its true size is not known',
    advice: 'print the card; write card: none to use the scale',
  },
}

/** What was seen of a card and is not used, at the line that names the picture. */
export function refusedCards(
  horse: Horse,
  cards: ReadonlyMap<string, CardSearch>,
  folder: CasebookFolder,
): readonly Diagnostic[] {
  return horse.visits.flatMap((visit) =>
    visit.photos.flatMap((photo) => {
      const found = wantsCard(photo) ? cards.get(photo.file) : undefined
      const refusal = found?.card && !stands(photo, found.card) ? 'not upright' : found?.refusal
      if (!refusal) return []
      if (refusal !== 'none') {
        const { why, advice } = refusals[refusal]
        return remark(
          visit,
          photo,
          folder,
          `card-${refusal.replaceAll(' ', '-')}`,
          `${photo.file} ${why}.`,
          advice,
        )
      }
      if (photo.landmarks?.cardTold === undefined) return []
      const advice = 'mark the picture anew, or take the line away'
      return remark(visit, photo, folder, 'card-none', `No card is to be found in ${photo.file}.`, advice)
    }),
  )
}

function remark(
  visit: Visit,
  { file }: Photo,
  folder: CasebookFolder,
  code: string,
  message: string,
  advice: string,
): readonly Diagnostic[] {
  const { report, span } = reportAt(file, visit.file, folder)
  report.warning(code, span, message, { advice })
  return report.diagnostics
}
