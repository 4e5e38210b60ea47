/** Wording of the page on which what leaves for the portfolio is approved; the terminal says the same. */
const counted = (n: number, thing: string) => `${n} ${thing}${n === 1 ? '' : 's'}`

export const review = {
  title: 'Before it leaves',
  intro:
    'What is about to leave for the portfolio and nobody has read yet. Read each as a stranger from the next village would: who could tell the horse, the owner or the yard by it? Approve it, or change the case file and read it again.',
  nothing: 'Nothing waits: all that leaves has been approved.',
  count: (sentences: number, photos: number) =>
    [
      ...(sentences > 0 ? [counted(sentences, 'sentence')] : []),
      ...(photos > 0 ? [counted(photos, 'photograph')] : []),
    ].join(', '),
  ofCase: (id: string) => `folder ${id}`,
  kinds: {
    alias: 'Name of the case',
    practice: 'Name of the practice',
    finding: 'Finding',
    teaching: 'Teaching text',
    ownerView: 'Owner’s view',
    photo: 'Photograph',
  },
  written: 'Written',
  leaves: 'Leaves as',
  looks: 'Look twice',
  why: {
    name: 'a name',
    pattern: 'an address or a number',
    date: 'a date',
    'likely name': 'likely a name',
    title: 'a title',
    place: 'a place',
  },
  photoLook: 'Faces, names, plates, places?',
  caption: 'Caption, which stays here',
  place: 'Change it in',
  approve: 'Approve',
  approveRest: 'Approve all of this case that nothing is marked in',
  broken: (ids: string) => `Not looked at, because of problems that growdown check names: ${ids}.`,
  back: 'To the practice',
  noScript: 'Approving here needs JavaScript; growdown review does the same in a terminal.',
  /** Read by the script; `{...}` is filled in there. */
  script: {
    left: '{count} still to read.',
    done: 'All is read. The next build publishes it.',
    lost: 'The preview has ended, so nothing was kept. Start it again and load this page.',
  },
}
