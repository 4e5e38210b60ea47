import type { PlainDate } from '../../hoof/dates.ts'
import type { Words } from '../words/index.ts'
import { blank, remarked, scalar } from './lines.ts'

/**
 * Text of a new horse.md: every key, each with a blank to fill in and a remark on what it wants.
 * Consent starts as no: silence never publishes anything.
 *
 * @param name the horse's name if it is known already
 * @param started date of the first visit
 */
export function startHorse(name: string | null, started: PlainDate, w: Words['starter']): string {
  return [
    '---',
    `name: ${name === null ? blank : scalar(name)}`,
    remarked(`owner: ${blank}`, w.owner),
    remarked(`kind: ${blank}`, w.kind),
    `sex: ${blank}`,
    remarked(`born: ${blank}`, w.born),
    remarked(`height: ${blank}`, w.height),
    remarked(`weight: ${blank}`, w.weight),
    remarked(`started: ${started}`, w.started),
    remarked('history:', w.history),
    `  - ${blank}`,
    remarked(`vet: {involved: ${blank}}`, w.vet),
    remarked(`tetanus: ${blank}`, w.tetanus),
    remarked('consent: {owner site: no, portfolio: no, photos: no}', w.consent),
    remarked('# alias: ', w.alias),
    remarked('# private words: []', w.privateWords),
    remarked('# targets: {toe angle: [50, 54], toe length: [~, 84]}', w.targets),
    remarked(`trim limits: {sole: ${blank}}`, w.sole),
    remarked('# problems: [RH heel balance, LF thrush]', w.problems),
    '---',
    w.horseNote,
    '',
  ].join('\n')
}
