/** Danger signs that this visit brings, answered where they cannot be missed. They never stop the writing. */
import { useEffect, useRef, useState } from 'preact/hooks'
import { feet } from '../../../../src/hoof/feet.ts'
import { standingCautions, wordsOf } from '../../../../src/pages/shared/caution-lines.ts'
import { vetContact } from '../../../../src/pages/shared/contact.ts'
import { capital } from '../../../../src/pages/shared/format.ts'
import type { Caution } from '../../../../src/trend/assessment.ts'
import type { YardChecked } from '../../../../src/yard/open-horse.ts'
import { useWriting } from './writing.ts'

const keyOf = ({ code, feet: of, level }: Caution) => `${code} ${of.join(' ')} ${level}`

/** The first digit of a value is no reading: a sign is shown once the pad has rested so long, milliseconds. */
const padRest = 900

/** Standing, brought by this visit, and not to be passed over. */
const graverOf = (checked: YardChecked | null): readonly Caution[] =>
  standingCautions((checked?.cautions ?? []).filter(({ isNew }) => isNew).map(({ caution }) => caution)).filter(
    ({ level }) => level !== 'mind',
  )

export function Danger() {
  const { checked, isTyping } = useWriting()
  const [graver, setGraver] = useState<readonly Caution[]>([])
  const [read, setRead] = useState<readonly string[]>([])
  useEffect(() => {
    const waited = setTimeout(() => setGraver(graverOf(checked)), isTyping ? padRest : 0)
    return () => clearTimeout(waited)
  }, [checked, isTyping])
  const place = useRef<HTMLDivElement>(null)
  const unread = graver.filter((caution) => !read.includes(keyOf(caution))).length
  useEffect(() => {
    if (unread > 0) place.current?.scrollIntoView({ block: 'nearest' })
  }, [unread])
  return (
    <div ref={place} role="alert" class="yf-dangers">
      {graver.map((caution) => {
        const key = keyOf(caution)
        return (
          <Sign
            key={key}
            caution={caution}
            isRead={read.includes(key)}
            setRead={(isRead) => setRead(isRead ? [...read, key] : read.filter((one) => one !== key))}
          />
        )
      })}
    </div>
  )
}

interface SignProps {
  readonly caution: Caution
  readonly isRead: boolean
  setRead(isRead: boolean): void
}

function Sign({ caution, isRead, setRead }: SignProps) {
  const { words, format, opened } = useWriting()
  const w = words.yardForm
  const says = wordsOf(format, caution)
  const about = caution.feet.length === feet.length ? '' : format.list(caution.feet.map(format.foot))
  const name = [capital(says.name(caution.facts)), about].filter((part) => part !== '').join(', ')
  const contact = opened && vetContact(opened.horse, opened.practice)
  const level = caution.level === 'stop' ? w.stop : w.vet
  if (isRead)
    return (
      <button type="button" class={`yf-danger is-${caution.level} is-read`} onClick={() => setRead(false)}>
        <b>{level}</b> {name} <span class="yf-sr">{w.readAgain}</span>
      </button>
    )
  return (
    <div class={`yf-danger is-${caution.level}`}>
      <p class="yf-danger-level">{level}</p>
      <p class="yf-danger-text">
        <b>{name}.</b> {says.practice(caution.facts, format)}
      </p>
      {contact?.phone ? (
        <a class="yf-ring" href={`tel:${contact.phone.replace(/[^+\d]/g, '')}`}>
          {w.ring(contact.name)} <span class="yf-number">{contact.phone}</span>
        </a>
      ) : (
        <p>{w.noNumber}</p>
      )}
      <button type="button" onClick={() => setRead(true)}>
        {w.seen}
      </button>
    </div>
  )
}
