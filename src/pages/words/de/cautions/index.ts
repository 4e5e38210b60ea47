/** What an owner is told of each caution. Each sentence stands by itself. Plain words, no diagnosis. */
import type { OwnerWordsOfCautions } from '../../caution-words.ts'
import { body } from './body.ts'
import { found } from './found.ts'
import { going } from './going.ts'
import { measured } from './measured.ts'

export const cautions: OwnerWordsOfCautions = { ...going, ...found, ...body, ...measured }
