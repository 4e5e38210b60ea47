/** Digits for a wet thumb. The key beside them lies where the thumb of the writing hand is. */
import type { YardWords } from '../../../../src/pages/words/yard.ts'

interface KeypadProps {
  /** Eighths, for a tape in inches. */
  readonly isInches: boolean
  /** Of the language: a point or a comma. */
  readonly sign: string
  readonly words: YardWords['yardForm']['keys']
  readonly isEmpty: boolean
  press(key: string): void
  erase(): void
  next(): void
  back(): void
}

const digits = ['7', '8', '9', '4', '5', '6', '1', '2', '3']
const eighths = ['1/8', '1/4', '3/8', '5/8', '3/4', '7/8']
const printed: Readonly<Record<string, string>> = {
  '1/8': '⅛',
  '1/4': '¼',
  '3/8': '⅜',
  '5/8': '⅝',
  '3/4': '¾',
  '7/8': '⅞',
}

export function Keypad({ isInches, sign, words, isEmpty, press, erase, next, back }: KeypadProps) {
  return (
    <div class="yf-pad" role="group" aria-label={words.pad}>
      <div class="yf-digits">
        {digits.map((digit) => (
          <Key key={digit} text={digit} press={press} />
        ))}
        <Key text={sign} press={press} />
        <Key text="0" press={press} />
        {isInches ? <Key text="1/2" shown="½" name="1/2" press={press} /> : <Key text={`${sign}5`} press={press} />}
      </div>
      <div class="yf-side">
        <button type="button" aria-label={words.erase} onClick={erase} disabled={isEmpty}>
          ⌫
        </button>
        <button type="button" onClick={back}>
          {words.back}
        </button>
        <button type="button" class="yf-next" onClick={next}>
          {isEmpty ? words.skip : words.next}
        </button>
      </div>
      {isInches && (
        <div class="yf-eighths">
          {eighths.map((part) => (
            <Key key={part} text={part} shown={printed[part] ?? part} name={part} press={press} />
          ))}
        </div>
      )}
    </div>
  )
}

interface KeyProps {
  readonly text: string
  readonly shown?: string
  readonly name?: string
  press(key: string): void
}

const Key = ({ text, shown = text, name, press }: KeyProps) => (
  <button type="button" aria-label={name} onClick={() => press(text)}>
    {shown}
  </button>
)
