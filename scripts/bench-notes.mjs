/**
 * Notes as people write them, for the benchmark: paragraphs with emphasis and links, lists in lists and by number, a
 * table, a quotation, headings, and in some visits sections for the owner and for teaching. Seeded, so that every run
 * reads the same.
 */

const subjects = [
  ...[
    'the left fore',
    'the right fore',
    'the left hind',
    'the right hind',
    'the toe',
    'the frog',
    'the medial heel',
  ],
  ...[
    'the lateral quarter',
    'the white line',
    'the sole at the tip of the frog',
    'the old separation',
    'the lateral bar',
  ],
]
const happenings = [
  'came back a little since last time',
  'held up better than I had feared',
  'is as it was, no better and no worse',
  'wore unevenly, more on the outside',
  'flares again where the wall is thin',
  'looks drier after the week of wind',
  'had packed mud in it, clean underneath',
  'was short on the stony lane and sound on grass',
]
const doings = [
  'rasped the edge round and left the rest alone',
  'took the toe back from the top only',
  'kept every bit of sole',
  'lowered the long heel by two strokes',
  'opened the central cleft so that air gets in',
  'left it for next time',
]
const asides = [
  'The *white line* is tight from heel to heel, which it was not in spring.',
  'She stood **square** without being asked.',
  'I would **not** go further before the new angle is half-way down.',
  'Landing was *heel first* on three feet, flat on the fourth.',
  "Weather: 12 days of rain, then frost; the yard isn't drained (yet).",
  'Asked about the hay: 9 kg, soaked; "a bit of balancer" besides.',
  'See [the note on wet ground](https://notes.example/wet-ground) for what I mean by drying out.',
  'Photographs before and after, all taken from [the same spot](https://notes.example/spot "where to stand").',
  'The vet wrote on Monday; her number is [on the card](tel:+15550142).',
  'Steps of `2 mm` at most, I wrote in March, and that still stands.',
]
const points = [
  'pick out daily, dry the cleft with a cloth',
  'walk in hand on the **hard track**, ten minutes',
  'hay before turn-out, every day',
  'look at the *lateral* wall of the right fore again',
  'boots only on stones',
  'send pictures if the heel opens',
  'weigh with the tape on the first of the month',
]
const topics = ['Feet', 'What changed', 'Ground and weather', 'Movement', 'Next time', 'Questions']
const sayings = [
  'shorter on the left since the weekend',
  'happier on stones than I have seen her',
  'flat out in the field',
]

/** One visit's notes. `roll` gives numbers from 0 up to 1, the same ones for the same seed. */
export function ordinaryNotes(roll) {
  const from = (list) => list[Math.floor(roll() * list.length)]
  const chance = (share) => roll() < share
  const times = (least, most, work) =>
    Array.from({ length: least + Math.floor(roll() * (most - least + 1)) }, (_, i) => work(i))

  const sentence = () => `${capital(from(subjects))} ${from(happenings)}; I ${from(doings)}.`
  const paragraph = () =>
    times(2, 4, () => (chance(0.4) ? from(asides) : sentence())).join(chance(0.5) ? ' ' : '\n')
  const bullets = () =>
    times(
      2,
      4,
      () => `- ${from(points)}${chance(0.4) ? `\n  - ${from(points)}\n  - ${from(points)}` : ''}`,
    ).join('\n')
  const numbered = () => times(3, 5, (i) => `${i + 1}. ${capital(from(points))}`).join('\n')
  const quotation = () => `> She is ${from(sayings)}.\n>\n> The rider, on the telephone`
  const table = () =>
    `| Ground | Before | After |\n|---|---|---:|\n${['Grass', 'Gravel', 'Tarmac']
      .map((ground) => `| ${ground} | ${from(['sound', 'short', 'careful'])} | ${Math.floor(roll() * 4)} |`)
      .join('\n')}`

  const own = [
    paragraph(),
    ...(chance(0.7) ? [`## ${from(topics)}`] : []),
    paragraph(),
    bullets(),
    paragraph(),
    ...(chance(0.5) ? [`### ${from(topics)}`] : []),
    chance(0.5) ? table() : quotation(),
    chance(0.5) ? numbered() : paragraph(),
    paragraph(),
  ]
  const owner = ['## For the owner', paragraph(), chance(0.5) ? bullets() : numbered()]
  const teaching = ['## For teaching', paragraph(), ...(chance(0.5) ? [quotation()] : [])]
  return [...own, ...(chance(0.6) ? owner : []), ...(chance(0.3) ? teaching : [])].join('\n\n')
}

const capital = (text) => text[0].toUpperCase() + text.slice(1)
