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
