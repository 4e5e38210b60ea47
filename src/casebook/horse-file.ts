/** horse.md: who the horse is, and what its owner has consented to. */
import { type PlainDate, parseDate } from '../hoof/dates.ts'
import type { Foot } from '../hoof/feet.ts'
import { parseHeight, parseNumber } from '../hoof/units.ts'
import { readBody } from './body.ts'
import { feetNamed } from './by-foot.ts'
import {
  field,
  isMistyped,
  type ParseContext,
  type Reader,
  readFields,
  required,
  wrongForm,
} from './fields.ts'
import type { CaseFile } from './front-matter.ts'
import { limits } from './limits.ts'
import type { Consent, FollowedFeature, Horse, HorseVet, Practice } from './model.ts'
import { type ProblemLine, problemLines, problemsOf } from './problems.ts'
import { date, likelyDate, lines, name, names, text, weight, yesNo, yesOrNo } from './readers.ts'
import type { Report, TextRange } from './report.ts'
import { targets, trimLimits } from './targets.ts'
import { rangeOf } from './visit-file.ts'
import { nearest, normal, quote } from './words.ts'
import { isUnfilled, readYamlTree, type YamlMap } from './yaml-tree.ts'

/** The horse without its visits. */
export interface PlacedHorse {
  readonly horse: Omit<Horse, 'visits'>
  readonly report: Report
  readonly startedRange: TextRange | null
  readonly weightRange: TextRange | null
}

const height: Reader<number> = (value, context, name) => {
  const cm = value.kind === 'text' ? parseHeight(value.text) : null
  const expected = 'a height with its unit: 14.2 hh, 148 cm or 58 in; a hand has 4 inches, so .0 to .3'
  if (cm === null) {
    const bare = value.kind === 'text' ? parseNumber(value.text) : null
    const fix = bare === null ? null : bare < 20 ? `${bare} hh` : `${bare} cm`
    const meant = fix === null ? null : parseHeight(fix)
    return wrongForm(value, context, name, expected, {
      fix: meant !== null && isLikelyHeight(meant) ? fix : null,
    })
  }
  if (!isLikelyHeight(cm)) {
    context.report.warning(
      'height-unlikely',
      value,
      `A height of ${Math.round(cm)} cm is unlikely for a horse.`,
      { expected },
    )
  }
  return cm
}

const isLikelyHeight = (cm: number): boolean => cm >= 50 && cm <= 220

const born: Reader<string> = (value, context, name) => {
  const written = value.kind === 'text' ? value.text.trim() : ''
  if (/^(19|20|21)\d\d$/.test(written) || parseDate(written)) return written
  return wrongForm(value, context, name, 'a year or a date: 2014 or 2014-05-02', { fix: likelyDate(written) })
}

const noVet: HorseVet = { involved: false, diagnosis: null, name: null, phone: null, date: null, feet: [] }
const vetFields = {
  involved: field<boolean | null>(yesNo, null),
  diagnosis: field<string | null>(text, null),
  name: field<string | null>(name, null),
  phone: field<string | null>(name, null),
  date: field<PlainDate | null>(date, null),
  feet: field<readonly Foot[]>(feetNamed, []),
}
/** `{involved: yes, diagnosis: ...}`, or only whether one is involved. A diagnosis says that one is. */
const vet: Reader<HorseVet> = (value, context, name) => {
  if (value.kind === 'map') {
    const read = readFields(value, vetFields, context, 'of vet')
    return { ...read, involved: read.involved ?? read.diagnosis !== null }
  }
  const involved = yesOrNo(value)
  return involved === null
    ? wrongForm(value, context, name, '{involved: yes, diagnosis: what the vet said}')
    : { ...noVet, involved }
}

const noConsent: Consent = { ownerSite: false, portfolio: false, photos: false, given: null }
const consentFields = {
  'owner site': field<boolean>(yesNo, false),
  portfolio: field<boolean>(yesNo, false),
  photos: field<boolean>(yesNo, false),
  given: field<PlainDate | null>(date, null),
}
const consent: Reader<Consent> = (value, context, name) => {
  if (value.kind !== 'map') {
    return wrongForm(
      value,
      context,
      name,
      'each consent by name: {owner site: yes, portfolio: no, photos: no, given: 2026-01-12}',
    )
  }
  const read = readFields(value, consentFields, context, 'of consent')
  return { ownerSite: read['owner site'], portfolio: read.portfolio, photos: read.photos, given: read.given }
}

/** The portfolio names a folder by it. */
const alias: Reader<string> = (value, context, what) => {
  const read = name(value, context, what)
  if (read === undefined || bytesOf(read) <= limits.aliasBytes) return read
  context.report.error('too-long', value, `The alias ${quote(read)} is too long for the name of a folder.`, {
    expected: `at most ${limits.aliasBytes} bytes in UTF-8, accents and parts of letters counted apart`,
    advice: 'take a shorter one',
  })
  return undefined
}

const bytesOf = (text: string): number => new TextEncoder().encode(text.normalize('NFKD')).length

const horseFields = {
  name: required<string | null>(name, null, "the horse's name"),
  owner: field<string | null>(name, null),
  'owner since': field<PlainDate | null>(date, null),
  kind: field<string | null>(name, null),
  sex: field<string | null>(name, null),
  born: field<string | null>(born, null),
  height: field<number | null>(height, null),
  weight: field<number | null>(weight, null),
  started: field<PlainDate | null>(date, null),
  history: field<readonly string[]>(lines, []),
  vet: field<HorseVet>(vet, noVet),
  tetanus: field<PlainDate | null>(date, null),
  consent: field<Consent>(consent, noConsent),
  alias: field<string | null>(alias, null),
  'private words': field<readonly string[]>(names, []),
  targets: field<Horse['targets']>(targets, {}),
  'trim limits': field<Horse['trimLimits']>(trimLimits, { sole: {}, mostPerTrim: null }),
  problems: field<readonly ProblemLine[]>(problemLines, []),
}

export type HorseKey = keyof typeof horseFields
export type VetKey = keyof typeof vetFields
export type ConsentKey = keyof typeof consentFields

/**
 * Reads an opened horse.md; null when its block is unusable (reported).
 * @param followed what the horse's visits follow as it grows down the wall
 */
export function readHorseFile(
  file: CaseFile,
  id: string,
  practice: Practice,
  contextOfPractice: Omit<ParseContext, 'report'>,
  asOf: PlainDate,
  followed: readonly FollowedFeature[],
): PlacedHorse | null {
  const { report } = file
  const map = readYamlTree(file.text, file.blockStart, file.blockEnd, report)
  if (!map) return null
  const context: ParseContext = { ...contextOfPractice, report }
  const read = readFields(map, horseFields, context, 'of a horse', null)
  checkOwner(read.owner, map, practice, report)
  checkOwnerSince(read, map, asOf, report)
  checkConsent(read.consent, read.alias, map, asOf, report)
  if (read.alias !== null && read.name !== null && normal(read.alias) === normal(read.name)) {
    report.warning('alias-name', rangeOf(map, 'alias'), "The alias is the horse's own name.", {
      expected: 'a name by which nobody knows the horse: the portfolio shows it',
    })
  }
  checkDays(read, map, asOf, report)
  const horse = {
    id,
    name: read.name ?? id,
    owner: read.owner,
    ownerSince: read['owner since'],
    kind: read.kind,
    sex: read.sex,
    born: read.born,
    heightCm: read.height,
    weightKg: read.weight,
    started: read.started,
    history: read.history,
    vet: read.vet,
    tetanus: read.tetanus,
    consent: read.consent,
    alias: read.alias,
    privateWords: read['private words'],
    targets: read.targets,
    trimLimits: read['trim limits'],
    problems: problemsOf(read.problems, followed, context),
    body: readBody(file.text, file.bodyStart, report),
    file: report.file,
  }
  return { horse, report, startedRange: rangeOf(map, 'started'), weightRange: rangeOf(map, 'weight') }
}

function checkOwner(owner: string | null, map: YamlMap, practice: Practice, report: Report): void {
  const known = practice.owners.map((one) => one.id)
  const written = rangeOf(map, 'owner')
  if (owner === null) {
    if ((written && written.kind !== 'nothing') || isMistyped(report, 'owner')) return
    report.warning('owner-missing', null, 'No owner is named, so this horse is on no owner site.', {
      expected: 'owner: an id from practice.md',
    })
    return
  }
  if (known.includes(owner)) return
  const byName = practice.owners.find((one) => one.name.toLowerCase() === owner.toLowerCase())?.id
  const meant = byName ?? nearest(owner, known)
  report.error('owner-unknown', written, `${quote(owner)} is no owner in practice.md.`, {
    expected: known.length > 0 ? `one of: ${known.join(', ')}` : 'an id listed under owners in practice.md',
    fix: meant,
    advice: meant ? null : `add it in practice.md: owners: {${owner}: {name: ...}}`,
  })
}

/** Before that day letters and photographs were another owner's. */
function checkOwnerSince(
  {
    owner,
    born,
    'owner since': since,
  }: { owner: string | null; born: string | null; 'owner since': PlainDate | null },
  map: YamlMap,
  asOf: PlainDate,
  report: Report,
): void {
  if (since === null) return
  const range = rangeOf(map, 'owner since')
  if (owner === null && !isMistyped(report, 'owner')) {
    report.warning('owner-since-alone', range, 'A day of hand-over is given, but no owner.', {
      expected: 'owner: the id from practice.md of whoever has had the horse since',
    })
  }
  if (since > asOf) {
    report.warning(
      'date-in-future',
      range,
      `The hand-over, ${since}, lies in the future: until then the owner's page shows no letter and no photograph.`,
      { expected: `a date up to ${asOf}`, advice: 'change owner and this day when the horse has gone' },
    )
  } else if (born !== null && since < born) {
    report.warning(
      'owner-since-early',
      range,
      `The hand-over, ${since}, lies before the birth of the horse, ${born}.`,
      {
        expected: "the day from which the horse is its owner's",
      },
    )
  }
}

function checkConsent(
  consent: Consent,
  alias: string | null,
  map: YamlMap,
  asOf: PlainDate,
  report: Report,
): void {
  const range = rangeOf(map, 'consent')
  const any = consent.ownerSite || consent.portfolio || consent.photos
  if (any && consent.given === null && !isMistyped(report, 'given')) {
    report.warning('consent-undated', range, 'Consent is noted without the day on which it was given.', {
      expected: 'given: 2026-01-12',
    })
  }
  if (consent.given !== null && consent.given > asOf) {
    report.warning('date-in-future', range, `Consent given on ${consent.given} lies in the future.`, {
      expected: `a date up to ${asOf}`,
    })
  }
  const written = rangeOf(map, 'alias')
  const isRefused = written?.kind === 'text' && !isUnfilled(written)
  if (consent.portfolio && alias === null && !isRefused && !isMistyped(report, 'alias')) {
    report.warning('alias-missing', range, 'The portfolio may show this horse, but it has no alias.', {
      expected: 'alias: the name to show instead',
    })
  }
}

function checkDays(
  { born, started, vet: { date: diagnosed } }: Pick<Horse, 'born' | 'started' | 'vet'>,
  map: YamlMap,
  asOf: PlainDate,
  report: Report,
): void {
  if (started !== null && started > asOf) {
    report.warning('date-in-future', rangeOf(map, 'started'), `The start, ${started}, lies in the future.`, {
      expected: `a date up to ${asOf}`,
    })
  }
  const tetanus = rangeOf(map, 'tetanus')
  const vaccinated = tetanus?.kind === 'text' ? parseDate(tetanus.text) : null
  if (vaccinated !== null && vaccinated > asOf) {
    report.warning(
      'date-in-future',
      tetanus,
      `The tetanus vaccination of ${vaccinated} lies in the future.`,
      {
        expected: `a date up to ${asOf}`,
      },
    )
  }
  const vetRange = rangeOf(map, 'vet')
  if (diagnosed !== null && diagnosed > asOf) {
    report.warning(
      'date-in-future',
      (vetRange?.kind === 'map' && rangeOf(vetRange, 'date')) || vetRange,
      `The vet's diagnosis of ${diagnosed} lies in the future.`,
      { expected: `a date up to ${asOf}` },
    )
  }
  if (born === null) return
  const latest = started !== null && started < asOf ? started : asOf
  if (born > latest.slice(0, born.length)) {
    report.warning('born-late', rangeOf(map, 'born'), `The horse is born in ${born}, after ${latest}.`, {
      expected: 'a year or date before the first visit',
    })
  }
  if (Number(latest.slice(0, 4)) - Number(born.slice(0, 4)) > 50) {
    report.warning(
      'born-early',
      rangeOf(map, 'born'),
      `Born in ${born}, the horse would be over 50 years old.`,
    )
  }
}
