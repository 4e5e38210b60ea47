/** What the reader of case files says of a field, where it was written. */
import type { YardField } from '../../../../src/yard/field.ts'
import { messagesOf, useWriting } from './writing.ts'

interface SaidProps {
  readonly field: YardField
  /** Writes the text that would be right. */
  fix?(text: string): void
}

export function Said({ field, fix }: SaidProps) {
  const { checked, words } = useWriting()
  const messages = messagesOf(checked, field)
  return (
    <div class="yf-said" role="status">
      {messages.map(({ code, level, message, advice, fix: right }) => (
        <p key={code + message} class={`yf-message is-${level}`}>
          <b>{words.yardForm.level[level]}</b> {message} {right === null && advice}
          {right !== null && fix && (
            <button type="button" onClick={() => fix(right)}>
              {words.yardForm.fix(right)}
            </button>
          )}
        </p>
      ))}
    </div>
  )
}
