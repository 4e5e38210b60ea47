/**
 * What a machine writes down for a word of the trade, and the word that was said. `alone` where the word means nothing
 * else that is said round a horse; the others are taken for it only within a longer name: `left four` but never `four`.
 */
export interface Mishearing {
  readonly heard: string
  readonly meant: string
  readonly alone: boolean
}

export const mishearings: readonly Mishearing[] = [
  { heard: 'four', meant: 'fore', alone: false },
  { heard: '4', meant: 'fore', alone: false },
  { heard: 'hint', meant: 'hind', alone: false },
  { heard: 'heal', meant: 'heel', alone: false },
  { heard: 'heals', meant: 'heels', alone: false },
  { heard: 'hill', meant: 'heel', alone: false },
  { heard: 'hills', meant: 'heels', alone: false },
  { heard: 'tow', meant: 'toe', alone: true },
  { heard: 'soul', meant: 'sole', alone: true },
  { heard: 'souls', meant: 'soles', alone: true },
  { heard: 'thrash', meant: 'thrush', alone: true },
  { heard: 'trush', meant: 'thrush', alone: true },
  { heard: 'flair', meant: 'flare', alone: true },
  { heard: 'flairs', meant: 'flares', alone: true },
  { heard: 'cornet', meant: 'coronet', alone: true },
  { heard: 'sulkus', meant: 'sulcus', alone: true },
  { heard: 'sulcas', meant: 'sulcus', alone: true },
  { heard: 'brake', meant: 'break', alone: false },
  { heard: 'brakeover', meant: 'breakover', alone: true },
  { heard: 'angel', meant: 'angle', alone: true },
  { heard: 'angels', meant: 'angles', alone: true },
  { heard: 'grove', meant: 'groove', alone: false },
  { heard: 'wide', meant: 'white', alone: false },
]
