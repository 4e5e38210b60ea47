/** Slips in what a case is about, who works on it, and which visit still waits. */
import {
  horse,
  inFile,
  inHorse,
  inPractice,
  key,
  practice,
  type Slip,
  sound,
  visit,
  visitPath,
} from './slip.ts'

const withPeople = inFile(visitPath, visit, {
  ...sound,
  'practice.md': practice(
    'practice: Slow Hoof Practice\nowners: {abel: {name: Abel Moor}}\npeople: {ilse: {name: Ilse Brandt}, tom: Tom Ek}',
  ),
})

export const problems: readonly Slip[] = [
  inHorse('problems: [RH heel balence]', 'problem-unknown', 'problems: [RH heel balance]'),
  inHorse('problems: [fores toe angel]', 'problem-unknown', 'problems: [fores toe angle]'),
  inHorse('problems:\n  - LF thrsh, frog', 'problem-unknown', 'problems:\n  - LF thrush, frog'),
  inHorse(
    'problems:\n  - LF thrush, cental sulcus',
    'problem-unknown',
    'problems:\n  - LF thrush, central sulcus',
  ),
  inHorse('problems: [thrsh]', 'problem-unknown', 'problems: [thrush]'),
  inHorse('problems: [FL heel balance]', 'foot-unknown', 'problems: [LF heel balance]'),
  inHorse('problems: [foers heel balance]', 'foot-unknown', 'problems: [fores heel balance]'),
  inHorse('problems: [LG heel balance]', 'foot-unknown'),
  inHorse('problems: [LF thrush, central sulcus]', 'problem-place'),
  inHorse('problems: [LF thrush, left fore thrush]', 'written-twice'),
  inHorse(`problems: [${Array.from({ length: 41 }, (_, i) => `word ${i}`).join(', ')}]`, 'too-long'),
  inHorse(`problems: [${'very '.repeat(40)}sore]`, 'too-long'),
  inHorse('problems:', 'not-filled-in'),
  inHorse('problems: [_]', 'not-filled-in'),
  inHorse('problms: [LF thrush]', 'key-unknown', 'problems: [LF thrush]'),
  inHorse('problems: {LF: thrush, chronic: yes}', 'value-form'),
  inHorse(
    'problems:\n  LF thrush\n  - RH heel balance',
    'dash-missing',
    'problems:\n  - LF thrush\n  - RH heel balance',
  ),
]

export const people: readonly Slip[] = [
  inPractice('people: Ilse, Tom', 'value-form', 'people: [Ilse, Tom]'),
  inPractice('people: [Ilse, ilse]', 'person-twice'),
  inPractice('people: {ilse: {nam: Ilse Brandt}}', 'key-unknown', 'people: {ilse: {name: Ilse Brandt}}'),
  inPractice('people: {ilse: {}}', 'key-missing'),
  inPractice('people:', 'not-filled-in'),
  inPractice('poeple: [Ilse]', 'key-unknown', 'people: [Ilse]'),
  key('by: Ilse', 'person-unknown'),
  withPeople('by: isle', 'person-unknown', 'by: ilse'),
  withPeople('by: Tom Eck', 'person-unknown', 'by: Tom Ek'),
  withPeople('by: zoe', 'person-unknown'),
  withPeople('by: [ilse, tom]', 'value-form'),
  withPeople('by:', 'not-filled-in'),
]

/** Days, limits, pictures and names that cannot all be right together. */
export const together: readonly Slip[] = [
  inFile(visitPath, visit, {
    ...sound,
    'juno/horse.md': horse('name: Juno\nowner: abel\nstarted: 2026-01-05'),
  })('cleared: {LH: 2025-01-14}', 'cleared-early'),
  inHorse('vet: {diagnosis: old laminitis, date: 2052-03-01}', 'date-in-future'),
  inHorse('trim limits: {most per trim: 15 mm}', 'limit-unlikely', 'trim limits: {most per trim: 1.5 mm}'),
  inHorse('trim limits: {most per trim: 7 mm}', 'limit-unlikely'),
  key(
    'photos:\n  - {file: photos/LF-side.jpg, foot: LF, view: lateral}\n  - {file: photos/LF-side.jpg, foot: LF, view: solar}',
    'written-twice',
  ),
  key(
    'photos:\n  - {file: photos/LF-side.jpg, foot: LF, view: lateral}\n  - {file: photos/LF-side.jpg, foot: RF, view: lateral}',
    'written-twice',
  ),
  inHorse('alias: juno', 'alias-name'),
]

export const drafts: readonly Slip[] = [
  key('draft: yes', 'draft'),
  key('draft: yess', 'value-form'),
  key('draft:', 'not-filled-in'),
  key('darft: yes', 'key-unknown'),
]
