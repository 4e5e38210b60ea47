/**
 * Wording of every caution, for each of its readers. Each sentence is made from facts and a formatter and stands by
 * itself; limits come with the facts. Plain words, no diagnosis.
 */
import type { WordsOfCautions } from '../../caution-words.ts'
import { body } from './body.ts'
import { found } from './found.ts'
import { going } from './going.ts'
import { measured } from './measured.ts'

export const cautions: WordsOfCautions = { ...going, ...found, ...body, ...measured }
