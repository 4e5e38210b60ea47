/** A row of large keys of which one is chosen; a tap on the chosen one takes it back. */
import type { ComponentChildren } from 'preact'

export interface Option<T> {
  readonly value: T
  readonly text: ComponentChildren
  /** Said instead of a text that is too short to be understood. */
  readonly name?: string
}

interface ChoiceProps<T> {
  readonly label: string
  /** Whether the label is shown, or said alone. */
  readonly isShown?: boolean
  /** Whether the keys stand in one row, all of one width: few and short. */
  readonly isScale?: boolean
  readonly options: readonly Option<T>[]
  readonly chosen: T | null
  choose(value: T | null): void
}

export function Choice<T extends string | number>({
  label,
  isShown = false,
  isScale = false,
  options,
  chosen,
  choose,
}: ChoiceProps<T>) {
  return (
    <div role="group" aria-label={label}>
      {isShown && (
        <p class="yf-label" aria-hidden="true">
          {label}
        </p>
      )}
      <div class={`yf-keys ${isScale ? 'is-scale' : ''}`} style={isScale ? { '--keys': options.length } : undefined}>
        {options.map(({ value, text, name }) => (
          <button
            key={value}
            type="button"
            aria-pressed={value === chosen}
            aria-label={name}
            onClick={() => choose(value === chosen ? null : value)}
          >
            {text}
          </button>
        ))}
      </div>
    </div>
  )
}
