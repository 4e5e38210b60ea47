/** How the horse goes, how it stands in flesh, what is asked of the owner: as it is said. */
import { combined, type Phrase, phrases } from './sense.ts'

const level = (words: readonly string[], scale: 'pulse' | 'landing' | 'ease', of: string) =>
  phrases(words, { kind: 'level', scale, level: of })

const surface = (words: readonly string[], of: string) => phrases(words, { kind: 'surface', surface: of })

export const comfortPhrases: readonly Phrase[] = [
  ...phrases(['digital pulse', 'digital pulses', 'pulse', 'pulses', 'dp', 'digital pulse is'], { kind: 'scale', scale: 'pulse' }),
  ...level(['none', 'nothing', 'no pulse', 'no pulses', 'no digital pulse', 'no digital pulses', 'nil', 'absent'], 'pulse', '0'),
  ...level(['faint', 'weak', 'just there'], 'pulse', '1'),
  ...level(['clear', 'strong', 'easy to feel'], 'pulse', '2'),
  ...level(['bounding', 'pounding', 'throbbing', 'banging'], 'pulse', '3'),
  ...phrases(['landing', 'lands', 'land', 'landed', 'he lands', 'she lands'], { kind: 'scale', scale: 'landing' }),
  ...level(['heel first', 'heels first', 'heel-first'], 'landing', 'heel'),
  ...level(['flat'], 'landing', 'flat'),
  ...level(['toe first', 'toes first'], 'landing', 'toe'),
  ...level(['inside first', 'medial first', 'inner side first', 'inside wall first'], 'landing', 'medial'),
  ...level(['outside first', 'lateral first', 'outer side first', 'outside wall first'], 'landing', 'lateral'),
  ...phrases(['lame', 'lameness', 'lameness score', 'lameness grade', 'aaep', 'aaep grade', 'lame on'], { kind: 'scale', scale: 'lame' }),
  ...phrases(['out of five', 'out of 5', 'over five', 'of five'], { kind: 'out-of-five' }),
  ...phrases(['condition', 'condition score', 'body condition', 'body condition score', 'bcs', 'body score'], { kind: 'scale', scale: 'condition' }),
  ...phrases(['crest', 'crest score', 'cresty neck score', 'neck score'], { kind: 'scale', scale: 'crest' }),
  ...phrases(
    ['weight', 'weighs', 'weigh tape', 'weight tape', 'tape says', 'the tape says', 'weighed', 'tape', 'weighs in at', 'on the tape', 'on the weigh tape', 'scales say', 'weighbridge'],
    { kind: 'scale', scale: 'weight' },
  ),
  ...phrases(['the vet', 'vet', "vet's"], { kind: 'judge', by: 'vet' }),
  ...phrases(
    ["i'd give", "i'd say", "i'd score", "i'd call", 'i make', 'i score', 'in my eyes', 'to my eye', 'by my eye', 'i would give', 'i would say', 'i give', 'i see', 'my score'],
    { kind: 'judge', by: 'practitioner' },
  ),
  ...surface(['gravel', 'on gravel', 'the gravel'], 'gravel'),
  ...surface(['sand', 'the sand'], 'sand'),
  ...surface(['stones', 'stony ground', 'stony track', 'stony'], 'stones'),
  ...surface(['concrete', 'the concrete'], 'concrete'),
  ...surface(['tarmac', 'the tarmac'], 'tarmac'),
  ...surface(['road', 'the road'], 'road'),
  ...surface(['grass', 'the grass'], 'grass'),
  ...surface(['arena', 'the arena', 'school', 'the school'], 'arena'),
  ...surface(['hard ground', 'the hard'], 'hard ground'),
  ...level(['easy', 'easily', 'comfortable', 'strides out', 'striding out', 'freely', 'happy'], 'ease', 'easy'),
  ...level(['short', 'shortens', 'short striding', 'a bit short', 'shortening', 'a little short'], 'ease', 'short'),
  ...level(['careful', 'carefully', 'picks his way', 'picks her way', 'picking his way', 'picking her way', 'tiptoes', 'tiptoeing'], 'ease', 'careful'),
  ...level(['unwilling', "won't go", 'refuses', 'refused', 'unwillingly'], 'ease', 'unwilling'),
  ...phrases(
    [
      ...combined(['see', 'back to see', 'see you and'], ['him', 'her', 'them', 'you', 'it'], ['again in', 'in', 'again on', 'on', 'next in']),
      'next visit',
      'next visit in',
      'next visit on',
      'next appointment',
      'next appointment on',
      'next appointment in',
      'next trim',
      'next trim in',
      'next trim on',
      'back in',
      'back on',
      "i'm back in",
      'coming back in',
      'again in',
      'rebook in',
      'rebook for',
      'booked again for',
      'booked him in for',
      'booked her in for',
    ],
    { kind: 'next-visit' },
  ),
]
