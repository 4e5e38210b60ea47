/** How well a passphrase withstands guessing, by the estimator of a kept library: it knows words, names, dates, keyboards. */
import { fewestBits } from './passphrases.ts'

export type Estimator = (passphrase: string) => boolean

/** Whether a passphrase is weak. The library and its word lists are large, so they are loaded when first needed. */
export async function weaknessEstimator(): Promise<Estimator> {
  const [{ ZxcvbnFactory }, common, english] = await Promise.all([
    import('@zxcvbn-ts/core'),
    import('@zxcvbn-ts/language-common'),
    import('@zxcvbn-ts/language-en'),
  ])
  const estimator = new ZxcvbnFactory({
    dictionary: { ...common.dictionary, ...english.dictionary },
    graphs: common.adjacencyGraphs,
  })
  return (passphrase) => estimator.check(passphrase).guessesLog10 * Math.log2(10) < fewestBits
}
