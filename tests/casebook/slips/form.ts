/** Slips in the form of a file: lists and braces, the lines of dashes, dates. */
import { inHorse, key, raw, rest, type Slip } from './slip.ts'

export const form: readonly Slip[] = [
  key(
    'before:\ntoe length: [98, 96, 95, 94]\ntoe angle: [44, 45, 46, 47]',
    'not-moved-in',
    'before:\n  toe length: [98, 96, 95, 94]\n  toe angle: [44, 45, 46, 47]',
  ),
  key(
    'findings:\nLF:\n  - flare, toe, 2\n  - crack, toe, 1',
    'not-moved-in',
    'findings:\n  LF:\n    - flare, toe, 2\n    - crack, toe, 1',
  ),
  key(
    'before:\nbefore:\n  toe length: [98, 96, 95, 94]',
    'key-twice',
    'before:\n  toe length: [98, 96, 95, 94]',
  ),
  key('before:\n  LF: 98\n  RF: 96', 'measure-unknown'),
  key('date:2026-02-16', 'block-form', 'date: 2026-02-16'),
  key('footing:soft', 'block-form', 'footing: soft'),
  key('footing soft', 'block-form'),
  key('date 2026-02-16', 'block-form', 'date: 2026-02-16'),
  key('before\n  toe length: [98, 96, 95, 94]', 'block-form', 'before:\n  toe length: [98, 96, 95, 94]'),
  key('before:\n  toe length [98, 96, 95, 94]', 'value-form', 'before:\n  toe length: [98, 96, 95, 94]'),
  key('before:\n  toe length 98, 96, 95, 94', 'value-form', 'before:\n  toe length: [98, 96, 95, 94]'),
  key('before:\n\ttoe length: [98, 96, 95, 94]', 'block-form', 'before:\n  toe length: [98, 96, 95, 94]'),
  key('findings:\n\tLF:\n\t\t- flare, toe, 2', 'block-form', 'findings:\n  LF:\n    - flare, toe, 2'),
  key(
    'before:\n\u00a0\u00a0toe length: [98, 96, 95, 94]',
    'block-form',
    'before:\n  toe length: [98, 96, 95, 94]',
  ),
  key('before:\n    toe length: [98, 96, 95, 94]\n  toe angle: [44, 45, 46, 47]', 'block-form'),
  key('footing: @ the barn', 'block-form', 'footing: "@ the barn"'),
  key('footing: *very* soft', 'block-form', 'footing: "*very* soft"'),
  key('footing: "soft and wet', 'block-form', 'footing: "soft and wet"'),
  key('footing: soft: wet below', 'block-form', 'footing: "soft: wet below"'),
  key('footing: !important', 'yaml-tag'),
  key('footing: &soft', 'yaml-alias'),
  raw(
    `date: 2026-02-16\n${rest}\n---\nNotes.\n`,
    'block-start',
    `---\ndate: 2026-02-16\n${rest}\n---\nNotes.\n`,
  ),
  raw('date: 2026-02-16\nfooting: soft\n', 'block-start'),
  raw('---\ndate: 2026-02-16\nfootings: soft\n', 'block-end'),
]

const marks = ['\u2014', '\u2013', '\u2014-', '--', '\u2013-', '- - -']
const wholeVisit = (open: string, close: string) => `${open}\ndate: 2026-02-16\n${rest}\n${close}\nNotes.\n`
export const fences: readonly Slip[] = [
  ...marks.map((mark) => raw(wholeVisit(mark, '---'), 'block-start', wholeVisit('---', '---'))),
  ...marks.map((mark) => raw(wholeVisit('---', mark), 'block-end', wholeVisit('---', '---'))),
  raw(wholeVisit('----', '---'), 'block-language', wholeVisit('---', '---')),
  raw(wholeVisit('---', '----'), 'block-end', wholeVisit('---', '---')),
  raw(wholeVisit('---yaml x', '---'), 'block-language', wholeVisit('---', '---')),
  raw(wholeVisit('---', '---').replace('---\n', '---'), 'block-language', wholeVisit('---', '---')),
  raw(
    `Juno, second visit\n${wholeVisit('---', '---')}`,
    'block-start',
    `${wholeVisit('---', '---').replace('Notes.', 'Juno, second visit\nNotes.')}`,
  ),
  raw(
    `# Juno\n\n${wholeVisit('---', '---')}`,
    'block-start',
    `${wholeVisit('---', '---').replace('Notes.', '# Juno\nNotes.')}`,
  ),
  raw(` ${wholeVisit('---', '---')}`, 'block-start', wholeVisit('---', '---')),
  raw(`\n${wholeVisit('---', '---')}`, 'block-start', wholeVisit('---', '---')),
]

export const dates: readonly Slip[] = [
  key('cleared: {LH: 14 Jan 2026}', 'value-form', 'cleared: {LH: 2026-01-14}'),
  key('cleared: {LH: 2026-12-20}', 'cleared-late'),
  key('cleared: {LG: 2026-01-14}', 'foot-unknown'),
  key('comfort: {onset: 3 Feb 2026}', 'value-form', 'comfort: {onset: 2026-02-03}'),
  key('comfort: {onset: 2062-02-03}', 'day-after-visit'),
  key('comfort: {painkillers: 2026-02-21}', 'day-after-visit'),
  inHorse('tetanus: 2052-05-02', 'date-in-future'),
  inHorse('owner since: 2052-05-02', 'date-in-future'),
  key('comfort: {surfaces: {sand, gravel: short}}', 'not-filled-in'),
  key('care:\n  -Pick out\n  - Walk', 'dash-missing', 'care:\n  - Pick out\n  - Walk'),
  key('care:\n  Pick out\n  - Walk', 'dash-missing', 'care:\n  - Pick out\n  - Walk'),
  key('before: {toe length: [91 93, 84, 85]}', 'four-feet', 'before: {toe length: [91, 93, 84, 85]}'),
  inHorse('tetanus: 3.2.2025', 'value-form', 'tetanus: 2025-02-03'),
  ...(
    [
      ['2026-2-16', '2026-02-16'],
      ['2026/02/16', '2026-02-16'],
      ['20260216', '2026-02-16'],
      ['16.2.2026', '2026-02-16'],
      ['16/02/2026', '2026-02-16'],
      ['2/16/2026', '2026-02-16'],
      ['2026-16-02', '2026-02-16'],
      ['16 Feb 2026', '2026-02-16'],
      ['16th February 2026', '2026-02-16'],
      ['February 16, 2026', '2026-02-16'],
      ['2026-02-16T10:00', '2026-02-16'],
      ['2026-02-30', null],
      ['yesterday', null],
      ['16 Feb', null],
      ['2026-02-16 morning', null],
    ] as const
  ).map(([wrong, right]) => key(`date: ${wrong}`, 'value-form', right && `date: ${right}`)),
  key('date: 2026-02-17', 'date-not-file'),
  key('date: 2025-02-16', 'date-not-file'),
  ...(
    [
      ['next visit: in 5 wks', 'next visit: 5 weeks'],
      ['next visit: 6w', 'next visit: 6 weeks'],
      ['next visit: 5', 'next visit: 5 weeks'],
      ['next visit: in 5 weks', 'next visit: 5 weeks'],
      ['next visit: 23 March 2026', 'next visit: 2026-03-23'],
      ['next visit: soon', null],
      ['next visit: in 5-6 weeks', null],
      ['next visit: spring', null],
    ] as const
  ).map(([wrong, right]) => key(wrong, 'value-form', right)),
  key('next visit: 2025-03-23', 'next-visit-early', 'next visit: 2026-03-23'),
  key('next visit: 2026-01-23', 'next-visit-early'),
  inHorse('born: 2.5.2014', 'value-form', 'born: 2014-05-02'),
  inHorse('born: spring 2014', 'value-form'),
  inHorse('born: 2041', 'born-late'),
  inHorse('born: 1914', 'born-early'),
  inHorse('started: 2026-03-01', 'visit-before-start'),
  inHorse('started: 1 Jan 2026', 'value-form', 'started: 2026-01-01'),
]
