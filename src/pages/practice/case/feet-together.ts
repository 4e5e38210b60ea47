import { type Foot, feet } from '../../../hoof/feet.ts'
import { feetListed } from '../../shared/caution-lines.ts'
import type { HorseCase } from './horse-case.ts'

/** `left fore`, `both hinds`, `all feet`: several feet in as few words as there are. */
export function feetTogether({ format, words }: HorseCase, about: readonly Foot[]): string {
  const { together } = words.front
  if (about.length === feet.length) return together.all
  const isPair = (one: Foot, other: Foot) =>
    about.length === 2 && about.includes(one) && about.includes(other)
  if (isPair('LF', 'RF')) return together.fores
  if (isPair('LH', 'RH')) return together.hinds
  return feetListed(format, about)
}
