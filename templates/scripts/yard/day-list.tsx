/** The day's list: who is to be seen when, reckoned on the day on which it is looked at; and the search over all horses. */
import { useEffect, useMemo, useState } from 'preact/hooks'
import { daysBetween } from '../../../src/hoof/dates.ts'
import {
  type DayGroupId,
  dayGroupOf,
  foldedGroups,
  openGroups,
  weekdayOf,
} from '../../../src/pages/shared/day-groups.ts'
import type { YardHorse } from '../../../src/yard/payload.ts'
import { waitingIn } from './form/index.ts'
import { Age, Careful, type FrameProps, ReadOnly } from './frame.tsx'
import { addressOf } from './opened.ts'

export function DayList(frame: FrameProps) {
  const { yard, words, dates } = frame
  const w = words.yard.page
  const { day, nothingDue, groups: names, groupOf } = words.practice.front
  const today = yard.today()
  const [find, setFind] = useState('')
  const sought = plain(find)
  const groups = useMemo(() => grouped(yard.index.horses, today), [yard.index, today])
  const heading = day(dates.weekdays[weekdayOf(today)] ?? '', dates.date(today))
  return (
    <>
      <header class="list-head">
        <h1 class="day">{heading}</h1>
        <Age {...frame} />
        <ReadOnly {...frame} />
        <NotTaken {...frame} />
        <search>
          <label for="find">{w.find}</label>
          <input
            id="find"
            type="search"
            autocomplete="off"
            value={find}
            onInput={(event) => setFind(event.currentTarget.value)}
          />
        </search>
      </header>
      {sought === '' ? (
        <>
          {openGroups.some((id) => groups.has(id)) ? null : (
            <p>{yard.index.horses.length === 0 ? w.none : nothingDue}</p>
          )}
          {openGroups.map((id) => (
            <Group key={id} {...frame} id={id} head={names[id]} horses={groups.get(id) ?? []} />
          ))}
          {foldedGroups.map((id) => (
            <Folded
              key={id}
              {...frame}
              id={id}
              head={groupOf(names[id], groups.get(id)?.length ?? 0)}
              horses={groups.get(id) ?? []}
            />
          ))}
        </>
      ) : (
        <Found {...frame} sought={sought} />
      )}
      <Careful {...frame} />
    </>
  )
}

/** What was written here and is not in the casebook yet. */
function NotTaken({ yard, words, drafts }: FrameProps) {
  const [count, setCount] = useState(0)
  useEffect(() => {
    drafts?.all().then((kept) => setCount(waitingIn(kept, yard.index).length))
  }, [drafts, yard.index])
  return count === 0 ? null : (
    <p>
      <a class="tap" href={addressOf.drafts}>
        {words.yard.page.notTaken(count)}
      </a>
    </p>
  )
}

type GroupProps = FrameProps & {
  readonly id: DayGroupId
  readonly head: string
  readonly horses: readonly YardHorse[]
}

function Group(props: GroupProps) {
  const { id, head, horses } = props
  return horses.length === 0 ? null : (
    <section class="days" aria-labelledby={id}>
      <h2 id={id}>{head}</h2>
      <Rows {...props} horses={horses} />
    </section>
  )
}

/** What is not for now. Rows are made once it is opened: a large practice has most of its horses here. */
function Folded(props: GroupProps) {
  const [isOpen, setOpen] = useState(false)
  const { head, horses } = props
  return horses.length === 0 ? null : (
    <details class="days" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{head}</summary>
      {isOpen ? <Rows {...props} horses={horses} /> : null}
    </details>
  )
}

/** More rows than these are more than anyone reads. */
const mostFound = 60

function Found(props: FrameProps & { readonly sought: string }) {
  const { yard, words, sought } = props
  const w = words.yard.page
  const parts = sought.split(' ')
  const found = yard.index.horses.filter((horse) => {
    const text = plain(`${horse.name} ${horse.owner ?? ''} ${horse.problems} ${horse.flag?.text ?? ''}`)
    return parts.every((part) => text.includes(part))
  })
  return (
    <section class="days" aria-labelledby="found">
      <h2 id="found">
        <span role="status">{found.length === 0 ? w.foundNone : w.found(found.length)}</span>
      </h2>
      <Rows {...props} id="found" horses={found.slice(0, mostFound)} />
    </section>
  )
}

function Rows({
  horses,
  id,
  ...frame
}: FrameProps & { readonly id: DayGroupId | 'found'; readonly horses: readonly YardHorse[] }) {
  return (
    <ul class="plain rows">
      {horses.map((horse) => (
        <Row key={horse.id} {...frame} horse={horse} id={id} />
      ))}
    </ul>
  )
}

function Row({
  horse,
  id,
  yard,
  words,
  dates,
}: FrameProps & { readonly horse: YardHorse; readonly id: DayGroupId | 'found' }) {
  const { due, flag, owner, name, problems, isBroken } = horse
  const days = due === null ? 0 : daysBetween(due, yard.today())
  const when =
    due === null || id === 'today' || id === 'tomorrow'
      ? null
      : days > 0 && id !== 'found'
        ? dates.span(days)
        : words.practice.front.day(dates.weekdays[weekdayOf(due)] ?? '', dates.shortDate(due))
  return (
    <li>
      <a class="go" href={addressOf.horse(horse.id)}>
        <b>{name}</b> {owner === null ? null : <span class="soft small">{owner}</span>}
        {flag === null && when === null ? null : (
          <span class="under">
            {flag === null ? null : <span class={`flag flag-${flag.level}`}>{flag.text}</span>}{' '}
            {when === null ? null : <span class="soft small">{when}</span>}
          </span>
        )}
        {isBroken ? <span class="under">{words.yard.page.brokenRow}</span> : null}
        {id === 'found' ? <span class="under small">{problems}</span> : null}
      </a>
    </li>
  )
}

function grouped(
  horses: readonly YardHorse[],
  today: string,
): ReadonlyMap<DayGroupId, readonly YardHorse[]> {
  const groups = new Map<DayGroupId, YardHorse[]>()
  for (const horse of horses) {
    const id = dayGroupOf(horse.due, today)
    groups.set(id, [...(groups.get(id) ?? []), horse])
  }
  for (const some of groups.values()) some.sort((a, b) => ((a.due ?? '') < (b.due ?? '') ? -1 : 1))
  return groups
}

/** Small letters without their marks: nobody types the two dots of Zoë with a glove. */
const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .trim()
    .replace(/\s+/g, ' ')
