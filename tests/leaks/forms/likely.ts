/** Names that stand nowhere in the casebook: a person is asked. */
import type { FormSet } from '../battery.ts'

export const likelyNames: FormSet = {
  kind: 'likely names',
  cast: { horse: 'Juno', owner: 'Ada Quillfeather' },
  forms: [
    ['asked', 'Her daughter «Xenia» held the foot.'],
    ['asked', 'We moved to «Ullersthwaite» then.'],
    ['asked', 'The vet «Dr Harrowgill» came.'],
    ['asked', 'The farrier «Mr Smith» came.'],
    ['asked', 'She was bought at «Bramley Stables» then.'],
    ['asked', 'She was bought at «Mill Farm» then.'],
    ['asked', 'She won at the «Royal Show» then.'],
    ['asked', 'She went to the «Valley Equine Hospital» then.'],
    ['asked', 'She is kept in «Rose Livery» now.'],
    ['asked', 'Bought as «Tarkandrel’s» foal.'],
    ['asked', 'Tagged «#hooflove» that week.'],
    ['asked', 'The «McAllendar» boot fits.'],
  ],
}

/** Written when the nets were done, to try them on forms that they were not made with. */
export const afterwards: FormSet = {
  kind: 'forms of later',
  cast: {
    horse: 'Bramblewick',
    owner: 'Sally Ferrington',
    privateWords: ['Copse Hill Livery'],
    others: [{ horse: 'Trouble', owner: 'Rose Hunter' }],
  },
  forms: [
    ['replaced', 'We rang «01234 567890» again.'],
    ['replaced', 'Seen «Monday 9th» again.'],
    ['replaced', 'Seen on «9/3/26» again.'],
    ['replaced', 'Seen in «late summer 2025» again.'],
    ['replaced', 'At «Copse Hill» she lived.'],
    ['replaced', 'Mail «sally.ferrington@example.com» now.'],
    ['replaced', 'See «example.com/bramblewick» now.'],
    ['replaced', 'In «Jan 2026» it grew.'],
    ['replaced', 'Seen on the «4th March» again.'],
    ['replaced', 'The «ferrington-lf.jpg» file.'],
    ['replaced', 'Code «WR14 4AA» there.'],
    ['replaced', 'Plate «WX19 ABC» outside.'],
    ['replaced', 'Seen «mid May» again.'],
    ['asked', 'Told «Sal» it.'],
  ],
}
