/** Text of case files, names of files and words of the command line, as the program prints and publishes them. */
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import ICAL from 'ical.js'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { exportShape } from '../../src/pages/export.ts'
import { growdownProcess } from './run.ts'

const files: Readonly<Record<string, string>> = {
  'practice.md':
    '---\npractice: "Reed\\r\\nEND:VCALENDAR\\u202e Bank\\e[31m\\x9b2K"\nowners:\n  ash: {name: "Ash\\u202e Tern\\0"}\nlocal rules: "Dry\\u2066 \\a ground"\n---\nNote\u001b[2J of\u202e ours, &#x202e; &#27; &#x9b;\n',
  'juno/horse.md':
    '---\nname: "Ju\\u202eno\\e[31m"\nowner: ash\nalias: "=reed\\e[31m\\u202e"\nhistory: ["Came\\u009b lame"]\nconsent: {owner site: yes, portfolio: yes, photos: yes}\n---\nA\u0007 note\u202e of &#x202d;hers\n',
  'juno/2026-03-02.md':
    '---\nfooting: "so\\u202eft\\x7f"\nbefore:\n  toe length: [96, 95, 91, 90]\nfindings: {LF: ["flare, toe, 2, wor\\e[31mds\\u2067"]}\ngrow-out: {LF: ["ri\\e[31mng\\u202e, toe, 30 mm"]}\ncare: ["Pick\\e[31m out\\u202e"]\nnext visit: in 5 weeks\n---\nOwn\u001b[31m\n\n## For the owner\n\nHel\u202elo &#x202e;&#27;`&#27;` [x\u0007](http://a.example/\u202e "t&#x202e;t")\n\n## For teaching\n\nLong\u001b toes &#x2066;here\n',
  'juno/2026-04-06.md':
    '---\nbefore:\n  toe length: [94, 93, 89, 88]\ngrow-out: {LF: ["ri\\e[31mng\\u202e, toe, 38 mm"]}\nnext visit: in 5 weeks\n---\n',
}
const strayName = '2026-05-04\u001b[2K\u202e.txt'

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
const steering = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/

let folder: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'growdown-'))
  const write = (path: string, text: string) => {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }
  for (const [path, text] of Object.entries(files)) write(`cases/${path}`, text)
  write(`cases/juno/${strayName}`, 'x')
  write('readings.csv', 'horse,date,foot,measure,value\nNell,2026-03-14,L\u001b[2KF,toe length,98\n')
})
afterAll(() => rmSync(folder, { recursive: true }))

describe('what is published', () => {
  it('holds no control character and no turn of direction, in any file of any edition', () => {
    const reviewed = growdownProcess(folder, 'review', '--list', '--as-of', '2026-04-10')
    expect(reviewed.err + reviewed.out).not.toMatch(steering)
    expect(reviewed.out).toContain('Teaching text: Long toes &#x2066;here')
    growdownProcess(folder, 'review', '--approve-all', '--as-of', '2026-04-10')
    const ran = growdownProcess(folder, 'build', '--edition', 'all', '--as-of', '2026-04-10', '--out', 'site')
    expect(ran.err + ran.out).not.toMatch(steering)
    expect(ran.out).toContain('1 horse made')
    const published = readdirSync(join(folder, 'site'), { recursive: true, encoding: 'utf8' }).filter(
      (path) => /\.(?:html|csv|ics|txt|css|js|webmanifest)$/.test(path) && !path.startsWith('.growdown'),
    )
    const kinds = new Set(published.map((path) => path.replace(/^(\w+)\/.*\.(\w+)$/, '$1 $2')))
    expect([...kinds]).toEqual(
      expect.arrayContaining([
        'practice html',
        'practice ics',
        'portfolio html',
        'portfolio csv',
        'owners html',
        'yard html',
        'yard webmanifest',
      ]),
    )
    for (const path of published) {
      expect(path).not.toMatch(steering)
      expect(readFileSync(join(folder, 'site', path), 'utf8'), path).not.toMatch(steering)
    }
  })

  it('says the rest of each text whole', () => {
    const page = (path: string) => readFileSync(join(folder, 'site', path), 'utf8')
    expect(page('practice/juno/index.html')).toContain('Juno[31m')
    expect(page('practice/juno/2026-03-02.html')).toContain('Hello')
    expect(page('portfolio/reed-31-m/readings.csv')).toContain(
      "'=reed[31m,0,before,LF,toe-length,96,mm,entered",
    )
    const calendar = new ICAL.Component(ICAL.parse(page('practice/visits.ics')))
    expect(calendar.getAllSubcomponents().map((event) => event.getFirstPropertyValue('summary'))).toEqual([
      'Hooves of Juno[31m',
    ])
  })
})

describe('the search for names', () => {
  it('reads what is published: a name that a page makes whole again stops everything', () => {
    const told = (path: string) => join(folder, 'told', path)
    mkdirSync(told('nell'), { recursive: true })
    writeFileSync(told('practice.md'), '---\npractice: Reed Bank\nowners: {ash: {name: Ash Tern}}\n---\n')
    writeFileSync(
      told('nell/horse.md'),
      '---\nname: Brockweir\nowner: ash\nalias: Bramble\nconsent: {portfolio: yes}\n---\n',
    )
    writeFileSync(
      told('nell/2026-03-02.md'),
      '---\nbefore: {toe length: [96, 95, 91, 90]}\n---\n## For teaching\n\nBrock&#x202d;weir has long toes.\n',
    )
    growdownProcess(folder, 'review', 'told', '--approve-all', '--as-of', '2026-04-10')
    const { status, err } = growdownProcess(
      folder,
      ...['build', 'told', '--edition', 'portfolio', '--as-of', '2026-04-10', '--out', 'told-site'],
    )
    expect(status).toBe(1)
    expect(err).toContain('name of a horse: "Brockweir"')
    expect(existsSync(join(folder, 'told-site', 'portfolio'))).toBe(false)
  })
})

describe('what is printed', () => {
  it('shows what would steer a terminal, in names of files too', () => {
    const { out, err } = growdownProcess(folder, 'check', '--as-of', '2026-04-10')
    expect(out + err).not.toMatch(steering)
    expect(out).toContain('juno/2026-05-04\\u001b[2K\\u202e.txt  warning: ')
  })

  it('says the same as JSON, which means the raw text', () => {
    const { out } = growdownProcess(folder, 'check', '--as-of', '2026-04-10', '--format', 'json')
    expect(out).not.toMatch(steering)
    const { diagnostics } = JSON.parse(out) as { diagnostics: { file: string }[] }
    expect(diagnostics.map(({ file }) => file)).toContain(`juno/${strayName}`)
    const exported = growdownProcess(folder, 'export', '--as-of', '2026-04-10').out
    expect(exported).not.toMatch(steering)
    expect(exportShape.parse(JSON.parse(exported)).horses[0]?.name).toBe('Ju\u202eno\u001b[31m')
  })

  it.each([
    [['add', 'horse', 'x\u001b[31m\u202e'], '"x\\u001b[31m\\u202e" cannot be a folder'],
    [['check', '\u009b2K'], 'There is no folder \\u009b2K here.'],
    [['fly\u001b[31m'], "unknown command 'fly\\u001b[31m'"],
    [['import', 'readings.csv'], '"L\\u001b[2KF" is not a known foot'],
  ])('shows it where %j goes wrong', (args, message) => {
    const { out, err } = growdownProcess(folder, ...args)
    expect(out + err).not.toMatch(steering)
    expect(err).toContain(message)
  })
})
