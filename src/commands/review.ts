import { relative } from 'node:path'
import { decide } from '../apps/review/approvals-on-disk.ts'
import type { CasebookReview, ReviewedCase, ReviewedItem } from '../apps/review/casebook-review.ts'
import { asOfDay, asOfOption, casebookFolder } from './arguments.ts'
import { type CommandEntry, exit, type World, WrongUse } from './command.ts'
import { counted, printAll } from './report.ts'

export const review: CommandEntry = {
  usage: 'review [folder]',
  does: 'Shows each sentence and photograph that is about to leave for the portfolio, and keeps what you approve.',
  options: [
    { flags: '--list', does: 'print what waits and ask nothing; exit status 1 where anything does' },
    { flags: '--all', does: 'show what is approved as well; an approval can be taken back' },
    {
      flags: '--approve-all',
      does: 'approve all that waits, unread: for scripts and for casebooks without people',
    },
    asOfOption,
  ],
  run: async ([folder], options, world) => {
    const isOn = (name: string) => options.get(name) === true
    if (isOn('approve-all') && (isOn('list') || isOn('all'))) {
      throw new WrongUse('--approve-all asks and shows nothing, so it goes with no other way to review.')
    }
    const casebook = casebookFolder(folder, world)
    const { reviewCasebook } = await import('../apps/review/casebook-review.ts')
    const found = reviewCasebook(casebook, asOfDay(options, world), isOn('all'))
    world.stderr.write(printAll(found.diagnostics))
    if (found.broken.length > 0) {
      world.stderr.write(
        `Not looked at, because of problems that growdown check names: ${found.broken.join(', ')}\n`,
      )
    }
    if (isOn('approve-all')) return approveAll(found, casebook, world)
    return isOn('list') ? list(found, world) : ask(found, casebook, world)
  },
}

function approveAll({ cases, words }: CasebookReview, casebook: string, world: World): number {
  const items = cases.flatMap((one) => one.items)
  decide(
    casebook,
    items.map(({ item }) => item),
    true,
  )
  world.stdout.write(
    items.length === 0
      ? 'Nothing waits.\n'
      : `Approved unread: ${countOfItems(items, words)} of ${counted(cases.length, 'case')}. The next build publishes them as they are.\n`,
  )
  return exit.clean
}

function list({ cases, words }: CasebookReview, world: World): number {
  for (const one of cases) {
    world.stdout.write(`${one.id} (${one.alias}): ${countOfItems(one.items, words)}\n`)
    for (const item of one.items) world.stdout.write(`  ${lineOf(one, item, words)}\n`)
  }
  const waiting = cases.flatMap(({ items }) => items.filter(({ isApproved }) => !isApproved))
  world.stdout.write(`${waiting.length === 0 ? 'Nothing' : countOfItems(waiting, words)} to approve.\n`)
  return waiting.length > 0 ? exit.problems : exit.clean
}

function lineOf({ id }: ReviewedCase, { item, isApproved, marks, place }: ReviewedItem, words: Says): string {
  const state = isApproved ? 'approved, ' : ''
  if ('photo' in item) return `${place}  ${state}photograph ${id}/${item.photo}`
  const looks = marks.length === 0 ? '' : `  (${marks.map(looksLike).join('; ')})`
  return `${place}  ${state}${words.kinds[item.what]}: ${item.published}${looks}`
}

const looksLike = ({ why, text }: ReviewedItem['marks'][number]): string => `${why}: ${JSON.stringify(text)}`

type Says = CasebookReview['words']

/** `3 sentences, 1 photograph`. */
function countOfItems(items: readonly Pick<ReviewedItem, 'item'>[], words: Says): string {
  const photos = items.filter(({ item }) => 'photo' in item).length
  return words.count(items.length - photos, photos)
}

/** One after the other, each answer written down before the next is asked. */
async function ask({ cases, words }: CasebookReview, casebook: string, world: World): Promise<number> {
  const total = cases.reduce((sum, { items }) => sum + items.length, 0)
  if (total === 0) {
    world.stdout.write('Nothing waits: all that leaves has been approved.\n')
    return exit.clean
  }
  world.stdout.write(
    `${countOfItems(
      cases.flatMap(({ items }) => items),
      words,
    )} to look at. Each answer is kept at once.\n`,
  )
  const keys = world.keys()[Symbol.asyncIterator]()
  const answers = { approved: 0, skipped: 0 }
  try {
    for (const one of cases) if (!(await askCase(one, { keys, casebook, world, answers, words }))) break
  } finally {
    await keys.return?.()
  }
  const { approved, skipped } = answers
  world.stdout.write(
    `\nApproved ${approved}, skipped ${skipped}, ${total - approved - skipped} not looked at.\n`,
  )
  return exit.clean
}

interface Asking {
  readonly keys: AsyncIterator<string>
  readonly casebook: string
  readonly world: World
  readonly words: Says
  readonly answers: { approved: number; skipped: number }
}

/** @returns false where the person stops */
async function askCase(
  one: ReviewedCase,
  { keys, casebook, world, answers, words }: Asking,
): Promise<boolean> {
  const { items } = one
  let isRestApproved = false
  const approve = (given: ReviewedItem) => {
    decide(casebook, [given.item], true)
    answers.approved += 1
  }
  for (const [index, given] of items.entries()) {
    // What looks like a name is asked about whatever was said of the rest.
    if (isRestApproved && given.marks.length === 0) {
      if (!given.isApproved) approve(given)
      continue
    }
    world.stdout.write(`\n${one.id}, ${index + 1} of ${items.length}${screenOf(one, given, words)}`)
    world.stdout.write(keysFor(given))
    for (let isAnswered = false; !isAnswered; ) {
      const { value: key, done } = await keys.next()
      if (done) return false
      isAnswered = true
      const answer = key.toLowerCase()
      if (answer === 'q') return false
      if (answer === 'a') isRestApproved = true
      if (answer === 'y' || answer === 'a') approve(given)
      else if (answer === 't' && given.isApproved) {
        decide(casebook, [given.item], false)
        answers.skipped += 1
      } else if (answer === 's') answers.skipped += 1
      else if (answer === 'e') {
        world.stdout.write(
          `Change it in ${relative(world.cwd, casebook)}/${given.place}; it is asked about again then.\n`,
        )
        answers.skipped += 1
      } else isAnswered = false
    }
  }
  return true
}

/** What a person needs to see before saying yes. */
function screenOf(
  { id }: ReviewedCase,
  { item, isApproved, marks, place }: ReviewedItem,
  words: Says,
): string {
  const state = isApproved ? ' (approved)' : ''
  const rows: (readonly [string, string])[] = []
  if ('photo' in item) {
    rows.push(
      ['look at', `${id}/${item.photo}: faces, names, plates, places?`],
      ['shows', [item.foot, item.view].filter((part) => part !== null).join(', ')],
      ...(item.caption === null ? [] : [['caption', `${item.caption} (stays here)`] as const]),
      ['named in', place],
    )
    return `: ${words.kinds.photo}${state}\n${tableOf(rows)}`
  }
  const { original, published, what } = item
  if (original !== published) rows.push(['written', original])
  rows.push(['leaves as', marked(published, marks)])
  if (marks.length > 0) rows.push(['LOOK', marks.map(looksLike).join('; ')])
  rows.push(['stands in', place])
  return `: ${words.kinds[what]}${state}\n${tableOf(rows)}`
}

const tableOf = (rows: readonly (readonly [string, string])[]): string =>
  rows.map(([name, text]) => `  ${name.padEnd(9)}  ${text}\n`).join('')

/** `seen by »Mrs Smith« at the show`. */
const marked = (text: string, marks: ReviewedItem['marks']): string =>
  [...marks]
    .toSorted((a, b) => b.start - a.start)
    .reduce(
      (out, { start, end }) => `${out.slice(0, start)}»${out.slice(start, end)}«${out.slice(end)}`,
      text,
    )

const keysFor = ({ isApproved }: ReviewedItem): string =>
  isApproved
    ? 'y keep   t take the approval back   e edit   q stop\n'
    : 'y approve   s skip   e edit   a approve all the rest of this case   q stop\n'
