/** How things are said: corrections, doubt, what is about another day, what is counted, what carries no meaning here. */
import { combined, listed, type Phrase, phrases } from './sense.ts'

const months = listed(
  'january, february, march, april, june, july, august, september, october, november, december',
)
const seasons = listed('spring, summer, autumn, winter, christmas, easter')

/** What was said last counts no more. */
const takenBack = listed(
  "scratch that, strike that, delete that, forget that, ignore that, cancel that, that's wrong, that is wrong, scrap that, undo that",
)

/** What comes next takes the place of what was said last. */
const putRight = listed(`
  sorry, no sorry, sorry no, no wait, wait, wait no, no hang on, i mean, i meant, no i mean, make that, no make that, make it, correction,
  rather, or rather, actually, no actually, i should say, tell a lie, i tell a lie, my mistake, no no, no it is, no it's, nope`)

const denied = listed(`
  not, not a, not any, none, without, without any, no sign of, no signs of, no trace of, no more, nor, free, free of, clear of, see none, isn't,
  isn't any, aren't, wasn't, weren't, don't, doesn't, didn't, can't, cannot, couldn't, hasn't, haven't, hadn't, won't, never, neither,
  rarely, seldom, hardly, barely`)

const doubted = listed(`
  maybe, perhaps, i think, i guess, i reckon, i suppose, about, roughly, around, probably, possibly, ish, approximately, approx,
  more or less, or so, or thereabouts, not sure, might be, might have, looks like, could be, near enough, if anything, call it, not quite,
  just over, just under, nearly, almost`)

/** Another day, another horse. */
const elsewhere = listed(`
  last time, last visit, last month, last year, last week, last autumn, last spring, last summer, last winter, the last one, used to be,
  used to have, previously, previous, the time before, ago, yesterday, the other day, a while back, earlier, at the start of, the start of, the beginning of, at the end of, by then, usually, normally, next time, his brother, his brother's,
  the other horse, other horse, the other horse's, mum's, his mum, her foal, his mate`)

/** What a number is held against: a wish, a limit, what it was or is less or more than. */
const compared = listed(`
  instead of, i like, i prefer, you want, looking for, down from, up from, target, targets, aim, aiming, i want, want, wants, we want, wanted, should be, ought to be,
  supposed to be, i'd like, would like, like to see, like it at, ideal, ideally, goal, hoping, hope, down to, until, till, less than,
  more than, at least, at most, no more than, average, limit, minimum, maximum, textbook, compared with, compared to, difference, shorter,
  longer, steeper, shallower, higher, lower, took off, taken off, take off, lost, gained`)

/** What is feared, treated, asked, once was, or was said by someone else. */
const hypothetical = listed(`
  if, if there is, if there's any, watch for, watch out for, look out for, look for, keep an eye, in case, risk of, prone to, history of,
  treat, treated, treating, treatment, spray, ointment, cream, powder, prevent, avoid, check for, check on, checked for, tested for, worried about,
  worry about, asked about, had, had an, had a, used to, whether, wondering, wonder, rule out, ruled out, rules out, vet said, farrier said, farrier says, farrier thought, when it was,
  from when, would be, talked about, read about, reminds me, bad for, causes, cause, caused, owner says, owner thinks, owner thought,
  thought it was, thought he had, thought she had`)

/** After a number: time, money, and what is counted. */
const counted = listed(`
  week, weeks, wk, wks, day, days, month, months, year, years, hour, hours, hrs, minute, minutes, mins, second, seconds, o'clock, am, pm,
  quid, euro, euros, dollar, dollars, pence, p, percent, %, times, mile, miles, yards, metres, meters, hands, hh, horse, horses, ponies,
  nail, nails, stitches, people, past, more, bute, sachet, sachets, bag, bags, litre, litres, gram, grams, scoop, scoops, ml, st,
  nd, rd, th, cracks, flares, holes, strokes, passes, rasps, turns, steps, strides, laps, visits, trims, photos, pictures, layers, wedges,
  shoes, boots, pads, sheep, dogs, cats, acres, something, odd, or other, and a bit, and something, or more, or less, and change`)

/** Before a number: a price, a time, a name. */
const labelled = listed(`
  £, $, €, stable, box, gate, number, room, page, size, age, aged, passport, microchip, charged, paid, cost, costs, owe, owes, price, born,
  year, phone, ring, rang, paddock, field, chapter, junction, route, bus, platform, half past, quarter past, quarter to, ten to, ten past,
  five to, five past, twenty to, twenty past, since the, minus, temperature`)

/** What sounds like something of the trade and is nothing of it here. */
const harmless = listed(`
  in the heat, on heat, in heat, the heat, heat wave, growth rate, new growth, good growth, microchip, feed dish, not bad, bit better,
  a bit better, bit worse, a bit worse, a little better, a little worse, a bit more, a bit less, a bit of a, the bit, blood test, bloods,
  before lunch, after lunch, after that, before that, left him, left her, left it, in my book, nothing much, as well, all right, right so,
  right then, off we go, foot up, no worries, no problem, no hurry, no rush, no idea, no good, no bother, no matter, no doubt, on this one,
  this one, that one, again, starting, kind of, sort of`)

const fillers = listed(`
  let me see, let me think, hang on, hold on, stand still, stand up, you know, come on, thank you, good boy, good girl, good lad,
  moving on to, moving round to, on to, come out at, comes out at, comes in at, works out at, is reading, that's, what's, there's, there is,
  there are, he has, she has, got a, he's got, she's got, i've got, to the, and then, um, uh, er, erm, ah, hmm, mm, ok, okay, alright, like,
  oh, yes, yeah, yep, look, ooh, lovely, good, completely, totally, fully, entirely, finally, definitely, certainly, absolutely, please, thanks, mate, lad, lass, boy, girl`)

const weightless = `
  a an the this that these those there here it its is it's are was were be been being 's i i'm i've i'd he he's she she's her his him they
  they're them we we've you your my me of on in at for to with from by as so then now just only really quite say says said read reads reading
  readings measure measures measured measuring comes come coming came gets get got gives give giving shows showing sits stands makes make
  call calls too very has have having do does did going gone which what where when let value equals side first moving round over onto
  up out back one's foot's old new`
  .trim()
  .split(/\s+/)

export const mannerPhrases: readonly Phrase[] = [
  ...phrases(takenBack, { kind: 'correct', strong: true }),
  ...phrases(putRight, { kind: 'correct', strong: false }),
  ...phrases(['no'], { kind: 'no' }),
  ...phrases(denied, { kind: 'not' }),
  ...phrases(doubted, { kind: 'doubt' }),
  ...phrases(elsewhere, { kind: 'elsewhere' }),
  ...phrases(compared, { kind: 'compared' }),
  ...phrases(combined(['in', 'by', 'since', 'last', 'back in', 'of'], [...months, ...seasons, 'may']), {
    kind: 'elsewhere',
  }),
  ...phrases(listed("today, now, this time, this visit, at the moment, currently, today it is, today it's"), {
    kind: 'today',
  }),
  ...phrases(hypothetical, { kind: 'hypothetical' }),
  ...phrases(counted, { kind: 'counted' }),
  ...phrases(labelled, { kind: 'labelled' }),
  ...phrases(listed('between, somewhere between, either, anywhere between, anything from'), {
    kind: 'range',
  }),
  ...phrases(listed('and, &, plus'), { kind: 'and' }),
  ...phrases(['or'], { kind: 'or' }),
  ...phrases(listed('comma, colon, semicolon, dash'), { kind: 'pause', pause: 'comma' }),
  ...phrases(listed('full stop, period, new line, newline, new paragraph, exclamation mark'), {
    kind: 'pause',
    pause: 'stop',
  }),
  ...phrases([...harmless, ...fillers, ...weightless], { kind: 'neutral' }),
]
