/** What to do about something that was found. */
export function hintFor({ kind, horse }: { readonly kind: string; readonly horse: string | null }): string {
  if (kind.startsWith('metadata'))
    return 'Pictures must come out of processing bare. Delete the cache and build again.'
  if (kind.startsWith('date')) return 'Say it in days or weeks since the first visit.'
  if (kind.startsWith('former name'))
    return 'Someone of that name was in this casebook once. Say it in other words; if it is no name, write it in lower case.'
  const where = horse === null ? 'practice.md' : `${horse}/horse.md`
  if (kind.includes('another owner')) return `Take it out of the text under "For the owner", or see ${where}.`
  return `Take it out of the text under "For teaching", add it to the private words of the horse whose page it is, or see ${where}.`
}
