import type { Builder } from '../../build/builder.ts'
import { cacheKey } from '../../build/cache-key.ts'
import type { Unit } from '../../build/unit.ts'
import { markOf } from './lock.ts'
import type { OwnerKeys } from './passphrases.ts'

/**
 * Entries whose passphrases could be guessed; judged again only where one has changed.
 * @param edition whose pages they lock
 */
export async function weakPassphrases(
  edition: string,
  keys: OwnerKeys,
  secret: string,
  builder: Pick<Builder, 'build'>,
): Promise<readonly string[]> {
  const marks = [...keys].map(([id, key]) => [id, markOf({ ...key, secret })])
  const unit: Unit<readonly string[]> = {
    name: `${edition}: weak passphrases`,
    key: cacheKey(marks),
    make: async () => {
      const { isWeak } = await import('./strength.ts')
      return [...keys].flatMap(([id, { passphrase }]) => (isWeak(passphrase) ? [id] : []))
    },
  }
  const [weak] = keys.size === 0 ? [] : await builder.build([unit])
  return weak?.notes ?? []
}
