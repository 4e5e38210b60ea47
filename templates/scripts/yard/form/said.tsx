/** What the reader of case files says of a field, where it was written. */
import { capital } from '../../../../src/pages/shared/format.ts'
import { keyOf, type YardField } from '../../../../src/yard/field.ts'
import { messagesOf, useWriting } from './writing.ts'

interface SaidProps {
  readonly field: YardField
  /** Named before what is said, where the field is not in sight. */
  readonly about?: string
  /** Writes the text that would be right. */
  fix?(text: string): void
}

export function Said({ field, about, fix }: SaidProps) {
  const { checked, words } = useWriting()
  const messages = messagesOf(checked, field)
  return (
    <div class="yf-said" role="status">
      {messages.map(({ code, level, message, advice, changes }) => {
        const [right] = changes
        const isHere = changes.length === 1 && right && keyOf(right.field) === keyOf(field)
        return (
          <div key={code + message} class={`yf-message is-${level}`}>
            <p>
              <b>{words.yardForm.level[level]}</b> {about} {message} {advice !== null && `${capital(advice)}.`}
            </p>
            {isHere && fix && (
              <button type="button" onClick={() => fix(right.text)}>
                {words.yardForm.fix(right.text)}
              </button>
            )}
          </div>
        )
      })}
    </div>
  )
}
