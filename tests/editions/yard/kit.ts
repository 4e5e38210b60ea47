/** The yard page of a trial, opened as a phone opens it. */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { armor, Decrypter } from 'age-encryption'
import { parse } from 'yaml'
import { openSealed, type SealedPage } from '../../../templates/scripts/yard/sealed-page.ts'
import type { Trial } from '../kit.ts'

export interface YardKey {
  readonly passphrase: string
  readonly token: string
}

export const yardKey = ({ casebook }: Pick<Trial, 'casebook'>): YardKey =>
  parse(readFileSync(join(casebook, 'passphrases.yaml'), 'utf8')).yard

export const yardFolder = (trial: Trial): string => join(trial.site, 'yard', yardKey(trial).token)

export const yardHtml = (trial: Trial): string => readFileSync(join(yardFolder(trial), 'index.html'), 'utf8')

/** Whatever of the yard edition was published, by path within its folder. */
export function yardFiles({ site }: Pick<Trial, 'site'>): ReadonlyMap<string, Buffer> {
  const folder = join(site, 'yard')
  if (!existsSync(folder)) return new Map()
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true })
  return new Map(
    entries
      .filter((entry) => entry.isFile())
      .map((entry) => {
        const path = join(entry.parentPath, entry.name)
        return [path.slice(folder.length + 1).replaceAll('\\', '/'), readFileSync(path)]
      }),
  )
}

export const lockedIn = (html: string): string => elementText(html, 'locked')
export const sealedIn = (html: string): string => elementText(html, 'sealed')

const elementText = (html: string, id: string): string =>
  new RegExp(`<script type="text/plain" id="${id}"[^>]*>([^<]*)</script>`).exec(html)?.[1] ?? ''

/** @throws where the passphrase does not fit, or the page is damaged */
export async function openYard(html: string, passphrase: string): Promise<SealedPage> {
  const decrypter = new Decrypter()
  decrypter.addPassphrase(passphrase)
  const key = await decrypter.decrypt(armor.decode(lockedIn(html)), 'text')
  return openSealed(sealedIn(html), key)
}
