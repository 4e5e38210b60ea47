/** What several cautions say alike. */

/** ` (toe)`; nothing where the place is the whole foot or stands in the finding's own name. */
export const at = ({ place, finding = '' }: { readonly place: string; readonly finding?: string }): string =>
  place === 'whole foot' || finding.includes(place) ? '' : ` (${place})`

export const ringNow = 'Ring your vet now'
export const beforeWork = 'Ring your vet before anyone works on it'
export const tell = 'Tell your vet'
