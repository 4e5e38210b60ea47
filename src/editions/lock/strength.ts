/**
 * How well a passphrase withstands guessing, by the estimator of a kept library: it knows words, names, dates and
 * keyboards. The library and its word lists are large, so whoever needs this file loads it then.
 */
import { ZxcvbnFactory } from '@zxcvbn-ts/core'
import * as common from '@zxcvbn-ts/language-common'
import * as english from '@zxcvbn-ts/language-en'
import { fewestBits } from './passphrases.ts'

/** Ranking its words takes a fifth of a second. */
const estimator = new ZxcvbnFactory({
  dictionary: { ...common.dictionary, ...english.dictionary },
  graphs: common.adjacencyGraphs,
})

/** Whether a passphrase is weak. */
export const isWeak = (passphrase: string): boolean =>
  estimator.check(passphrase).guessesLog10 * Math.log2(10) < fewestBits
