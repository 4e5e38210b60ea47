import type { LengthUnit } from '../../hoof/units.ts'
import type { Words } from '../words/index.ts'
import { blank, remarked } from './lines.ts'

export interface StarterFile {
  /** Path within the new casebook. */
  readonly path: string
  readonly text: string
}

/**
 * The files of a new casebook: practice.md to fill in, a guide, and a list of what git must not keep.
 * The guide is plain text, so that the reader of case files leaves it alone.
 */
export function startCasebook(units: LengthUnit, w: Words['starter']): readonly StarterFile[] {
  const practice = [
    '---',
    remarked(`practice: ${blank}`, w.practiceName),
    remarked(`units: ${units}`, w.units),
    remarked('trim cycle: 5 weeks', w.trimCycle),
    remarked('owners:', w.owners),
    `  first-owner: {name: ${blank}}`,
    remarked('# people: []', w.people),
    remarked(`local rules: ${blank}`, w.localRules),
    remarked(`contacts: {practice: ${blank}, vet: {name: ${blank}, phone: ${blank}}}`, w.contacts),
    '---',
    w.practiceNote,
    '',
  ].join('\n')
  return [
    { path: 'practice.md', text: practice },
    { path: 'guide.txt', text: w.guide },
    { path: '.gitignore', text: 'passphrases.yaml\nformer-names.yaml\n' },
  ]
}
