/**
 * Case files that grow: every text of the three kinds of file filled with every kind of filling, and every construct of
 * a Markdown body, repeated. A size is about the number of letters.
 */
import type { CasebookFiles } from '../../src/casebook/memory-folder.ts'

/** The texts of a casebook of one horse with two visits. */
interface Texts {
  readonly practice?: string
  readonly horse?: string
  readonly visit?: string
  readonly practiceBody?: string
  readonly horseBody?: string
  readonly visitBody?: string
}

const file = (block: string, body = ''): string => `---\n${block}\n---\n${body}`

/** Blocks that hold what nearly every page is made of; a text that grows takes the place of one of their lines. */
const usual = {
  practice: [
    'practice: Slow Hoof Practice',
    'owners: {abel: {name: Abel Moor}}',
    'terms: {chalk toe: crumbling horn}',
  ],
  horse: [
    'name: Juno Grey',
    'owner: abel',
    'alias: Fern',
    'consent: {owner site: yes, portfolio: yes, photos: yes, given: 2026-01-12}',
    'private words: [Hill Yard]',
  ],
  visit: ['before:', '  toe length: [98, 96, 90, 91]', 'care:', '  - Pick out daily'],
}

/** The usual block with another value for the key that the given one begins with. */
function blockWith(lines: readonly string[], given: string): string {
  const key = /^[a-z ]+:/.exec(given)?.[0]
  const kept: string[] = []
  let isReplaced = false
  for (const line of lines) {
    if (!line.startsWith(' ')) isReplaced = key !== undefined && line.startsWith(key)
    if (!isReplaced) kept.push(line)
  }
  return [...kept, given].join('\n')
}

export function filesWith(texts: Texts): CasebookFiles {
  const { practice = '', horse = '', visit = '', practiceBody, horseBody, visitBody } = texts
  return {
    'practice.md': file(blockWith(usual.practice, practice), practiceBody),
    'juno/horse.md': file(blockWith(usual.horse, horse), horseBody),
    'juno/2026-01-12.md': file(usual.visit.join('\n')),
    'juno/2026-02-16.md': file(blockWith(usual.visit, visit), visitBody),
  }
}

export interface Growing {
  readonly name: string
  readonly files: (size: number) => CasebookFiles
}

/** Each a line or lines of a block in which `@` stands for the text that grows. */
export const fields: Readonly<Record<'practice' | 'horse' | 'visit', readonly string[]>> = {
  practice: [
    'practice: @',
    'units: @',
    'trim cycle: @',
    'feet: @',
    'feet: [LF, @, LH, RH]',
    'owners: {abel: {name: @}}',
    'owners: {abel: @}',
    'owners: {@: {name: Abel}}',
    'local rules: @',
    'contacts: {practice: @}',
    'contacts: {vet: @}',
    'contacts: {vet: {name: @}}',
    'contacts: {vet: {phone: @}}',
    'terms: {chalk toe: @}',
    'terms: {@: crumbling horn}',
    '@: x',
  ],
  horse: [
    'name: @',
    'owner: @',
    'kind: @',
    'sex: @',
    'born: @',
    'height: @',
    'weight: @',
    'started: @',
    'history: @',
    'history: [@]',
    'vet: @',
    'vet: {diagnosis: @}',
    'vet: {name: @}',
    'vet: {phone: @}',
    'vet: {date: @}',
    'vet: {feet: @}',
    'vet: {involved: @}',
    'tetanus: @',
    'consent: @',
    'consent: {owner site: yes, portfolio: yes, given: @}',
    'consent: {portfolio: @}',
    'alias: @',
    'private words: @',
    'private words: [@]',
    'targets: @',
    'targets: {@: [50, 54]}',
    'targets: {toe angle: @}',
    'targets: {toe angle: [@, 54]}',
    'targets: {toe angle: {@: [50, 54]}}',
    'trim limits: @',
    'trim limits: {sole: @}',
    'trim limits: {most per trim: @}',
    '@: x',
  ],
  visit: [
    'date: @',
    'feet: @',
    'footing: @',
    'before: @',
    'before:\n  @: [98, 96, 90, 91]',
    'before:\n  toe length: @',
    'before:\n  toe length: [@, 96, 90, 91]',
    'before:\n  toe angle: [@, 46, 50, 51]',
    'before:\n  toe length: {@: 98}',
    'findings: @',
    'findings: {@: flare}',
    'findings:\n  LF: @',
    'findings:\n  LF: [@]',
    'findings:\n  LF:\n    - flare, toe, 2, @',
    'findings:\n  LF:\n    - @, toe, 2',
    'findings:\n  LF:\n    - flare, @, 2',
    'findings:\n  LF:\n    - flare, toe, @',
    'grow-out:\n  LF:\n    - nail holes, toe, @',
    'grow-out:\n  LF:\n    - @, toe, 42 mm',
    'comfort: @',
    'comfort: {lameness: @}',
    'comfort: {lameness: {LF: @}}',
    'comfort: {lameness: {LF: 1, by: @}}',
    'comfort: {obel: @}',
    'comfort: {landing: @}',
    'comfort: {landing: {LF: @}}',
    'comfort: {digital pulse: {LF: @}}',
    'comfort: {surfaces: {@: easy}}',
    'comfort: {surfaces: {sand: @}}',
    'comfort: {hoof testers: {LF: @}}',
    'comfort: {hoof testers: {LF: [@, 2]}}',
    'comfort: {painkillers: @}',
    'comfort: {onset: @}',
    'body: {weight: @}',
    'body: {condition: @}',
    'stance: @',
    'stance: {LF: @}',
    'stance:\n  LF: "straight, a @"',
    'cleared: @',
    'cleared: {all: @}',
    'care: @',
    'care:\n  - @',
    'care: [@]',
    'next visit: @',
    'photos: @',
    'photos: [{file: @}]',
    'photos: [{file: photos/a.jpg, caption: @}]',
    'photos: [{file: photos/a.jpg, view: @}]',
    'photos: [{file: photos/a.jpg, foot: @}]',
    'photos: [{file: photos/a.jpg, scale: @}]',
    'photos: [{file: photos/a.jpg, toe: [@, 2]}]',
    '@: x',
  ],
}

const quoted = (text: string) => `"${text}"`
const around = (sign: string) => (size: number) => quoted(`a${sign.repeat(size / sign.length)}b`)
const before = (sign: string) => (size: number) => quoted(`${sign.repeat(size / sign.length)}b`)

/** What a text is filled with. */
export const fillings: Readonly<Record<string, (size: number) => string>> = {
  spaces: around(' '),
  'leading spaces': before(' '),
  'bare spaces': (size) => `a${' '.repeat(size)}b`,
  'spaces before a remark': (size) => `a${' '.repeat(size)}# b`,
  'hard spaces': around('\u00a0'),
  tabs: around('\\t'),
  'line ends': around('\\n'),
  'folded lines': (size) => quoted(`a${'\n \n'.repeat(size / 3)} b`),
  slashes: before('/'),
  'dots and slashes': before('../'),
  backslashes: around('\\\\'),
  dots: around('.'),
  hyphens: around('-'),
  underscores: around('_'),
  commas: around(','),
  'commas and spaces': around(', '),
  semicolons: around('; '),
  digits: before('1'),
  'digits and spaces': before('1 '),
  'digits and commas': before('1, '),
  letters: around('a'),
  capitals: around('A'),
  words: around('word '),
  'combined letters': around('e\u0301'),
  'soft hyphens': around('\u00ad'),
  'bare brackets': (size) => `${'['.repeat(Math.min(15, size))}${'x, '.repeat(size / 3)}`,
  brackets: around('['),
  braces: around('{a: '),
  quotes: around("'"),
  hashes: around(' #'),
  entities: around('&amp;'),
  'open tags': around('<'),
  'open remarks': around('<!--'),
  escapes: around('%25'),
  data: around('data:a/a;'),
  dates: around('12.3.2026 '),
  'half dates': around('12 March '),
  names: around('Juno '),
  initials: around('J. '),
  owner: around('Abel Moor '),
  not: around('no laminitis, '),
  diagnosis: around('laminitis '),
  list: (size) => `[${'x, '.repeat(size / 3)}x]`,
  'list of numbers': (size) => `[${'1, '.repeat(size / 3)}1]`,
  'list of nothing': (size) => `[${'~, '.repeat(size / 3)}x]`,
  map: (size) => `{${Array.from({ length: size / 8 }, (_, index) => `k${index}: x`).join(', ')}}`,
}

/** Every text of a case file with every filling. */
export const growingFields: readonly Growing[] = (['practice', 'horse', 'visit'] as const).flatMap((kind) =>
  fields[kind].flatMap((field) =>
    Object.entries(fillings).map(([name, filling]) => ({
      name: `${field.replaceAll('\n', ' ')} with ${name}`,
      files: (size: number) => filesWith({ [kind]: field.replace('@', () => filling(size)) }),
    })),
  ),
)

const lines = (size: number, line: (index: number) => string): string => {
  const all: string[] = []
  for (let length = 0, index = 0; length < size; index++) {
    const one = line(index)
    all.push(one)
    length += one.length + 1
  }
  return all.join('\n')
}
const repeated = (text: string) => (size: number) => text.repeat(Math.ceil(size / text.length))
const both = (open: string, close: string) => (size: number) => {
  const count = Math.ceil(size / (open.length + close.length))
  return open.repeat(count) + close.repeat(count)
}
/** How many lines, each one further in, make so many letters. */
const steps = (size: number) => Math.ceil(Math.sqrt(size))

/** Markdown that grows. */
export const constructs: Readonly<Record<string, (size: number) => string>> = {
  'blank lines': repeated('\n'),
  'blank lines between words': (size) => `a${'\n'.repeat(size)}b`,
  'lines of spaces': repeated('   \n'),
  'lines of tabs': repeated('\t\n'),
  spaces: (size) => `a${' '.repeat(size)}b`,
  'hard spaces': (size) => `a${'\u00a0'.repeat(size)}b`,
  tabs: (size) => `a${'\t'.repeat(size)}b`,
  'spaces at the end': (size) => `a${' '.repeat(size)}`,
  'Windows line ends': repeated('\r\n'),
  'old line ends': repeated('word\r'),
  'line separators': repeated('\u2028'),
  'one long word': repeated('a'),
  'one long line': repeated('word '),
  'long words': repeated(`${'a'.repeat(60)} `),
  paragraphs: repeated('Some words of a note.\n\n'),
  'lines of a paragraph': repeated('word\n'),
  'list signs in a row': repeated('- '),
  'numbers in a row': repeated('1. '),
  'quotation signs in a row': repeated('>'),
  'quotation signs with spaces': repeated('> '),
  'quotation and list signs': repeated('> - '),
  'flat list': repeated('- item\n'),
  'loose list': repeated('- item\n\n'),
  'numbered list': repeated('1. item\n'),
  'list of changing signs': repeated('- a\n* b\n+ c\n'),
  'list of nothing': repeated('-\n'),
  'list of tasks': repeated('- [ ] task\n'),
  'stairs of lists': (size) =>
    Array.from({ length: steps(size) }, (_, i) => `${' '.repeat(2 * i)}- a`).join('\n'),
  'stairs of quotations': (size) =>
    Array.from({ length: steps(size) }, (_, i) => `${'>'.repeat(i + 1)} a`).join('\n'),
  'deep quotations on each line': (size) => `${'>'.repeat(40)} a\n`.repeat(size / 43),
  'deep lists again and again': (size) => `${'- '.repeat(20)}a\n`.repeat(size / 42),
  'quotations after lists': repeated('> a\n- b\n'),
  'lazy lines': (size) => `> a\n${'b\n'.repeat(size / 2)}`,
  'lazy lines of a deep quotation': (size) => `${'> '.repeat(18)}a\n${'b\n'.repeat(size / 2)}`,
  'blank lines in a list': (size) => `- a\n${'\n'.repeat(size)}  b`,
  'spaced lines in a list': (size) => `- a\n${'  \n'.repeat(size / 3)}  b`,
  headings: repeated('# a\n'),
  'sections for the owner': repeated('## For the owner\n\nx\n\n'),
  'nearly sections': repeated('## For the owners\n\nx\n\n'),
  'lines that name the owner': repeated('For the owner:\n'),
  'paragraphs that name the owner': repeated('For the owner:\n\n'),
  'marked headings': repeated('## For *the* [owner](x)\n'),
  'one heading of marks': (size) => `## owner ${'*a '.repeat(size / 3)}`,
  'one heading of spaces': (size) => `## owner${' '.repeat(size)}x`,
  'one heading of hashes': (size) => `## owner ${'# '.repeat(size / 2)}x`,
  hashes: repeated('#'),
  'hashes and spaces': repeated('# '),
  'lines of hashes': repeated('#\n'),
  'hashes without an end of marks': repeated('#a'),
  'underlined headings': repeated('a\n=\n'),
  'underlined with hyphens': repeated('a\n-\n'),
  'lines of equals': repeated('=\n'),
  'one line of equals': (size) => `a\n${'='.repeat(size)}`,
  'equals and spaces': (size) => `a\n${'='.repeat(3)}${' '.repeat(size)}x`,
  'equals, spaces, again': repeated('=    '),
  'breaks between parts': repeated('---\n'),
  'breaks with spaces': repeated('* * *\n'),
  'one long break': repeated('* '),
  'broken break': (size) => `${'_ '.repeat(size / 2)}x`,
  'columns of a table': (size) => `${'|a'.repeat(size / 4)}|\n${'|-'.repeat(size / 4)}|\n`,
  'rows of a table': (size) => `|a|b|\n|-|-|\n${'|x|y|\n'.repeat(size / 6)}`,
  'rows and columns of a table': (size) => {
    const columns = Math.ceil(Math.sqrt(size / 2))
    return `${'|a'.repeat(columns)}|\n${'|-'.repeat(columns)}|\n${`${'|x'.repeat(columns)}|\n`.repeat(columns)}`
  },
  'rows with one cell': (size) => {
    const columns = Math.ceil(size / 12)
    return `${'|a'.repeat(columns)}|\n${'|-'.repeat(columns)}|\n${'x\n'.repeat(columns * 4)}`
  },
  'tables again and again': repeated('|a|b|\n|-|-|\n|x|y|\n\n'),
  'bars in a row': repeated('|'),
  'bars on lines': repeated('|\n'),
  'heads of tables': repeated('a | b\n-\n'),
  'signs under a head': repeated('|-'),
  links: repeated('[a](b) '),
  'links on lines': repeated('[a](https://notes.example/x)\n\n'),
  'open links': repeated('[a]('),
  'open links in angles': repeated('[a](<b'),
  'open titles': repeated('[a](b "c'),
  'links in links': both('[', '](a)'),
  'open brackets': repeated('['),
  'closed brackets': repeated(']'),
  'brackets in brackets': both('[', ']'),
  'brackets in a row': repeated('[]'),
  'named brackets': repeated('[a] '),
  'brackets and colons': repeated('[a]: b\n'),
  'reference definitions': (size) => lines(size, (index) => `[a${index}]: b${index}`),
  'references of one definition': (size) => `[a]: b\n\n${'[a] '.repeat(size / 4)}`,
  'references of many definitions': (size) =>
    `${lines(size / 2, (index) => `[a${index}]: b`)}\n\n${lines(size / 2, (index) => `[a${index}]`)}`,
  'a long definition used often': (size) => `[a]: ${'b'.repeat(size / 2)}\n\n${'[a] '.repeat(size / 8)}`,
  'a long title used often': (size) => `[a]: b "${'t'.repeat(size / 2)}"\n\n${'[a] '.repeat(size / 8)}`,
  'long names of definitions': (size) => `[${'a'.repeat(900)}]: b\n`.repeat(size / 905),
  'open definitions': repeated('[a]: '),
  'titles of definitions': repeated('[a]: b "\n'),
  parentheses: (size) => `[a](${'('.repeat(size)}`,
  'balanced parentheses': (size) => `[a](${'('.repeat(30)}b${')'.repeat(30)})`.repeat(size / 65),
  footnotes: (size) =>
    `${lines(size / 2, (index) => `a[^${index}]`)}\n\n${lines(size / 2, (index) => `[^${index}]: b\n`)}`,
  'one footnote used often': (size) => `${'a[^1] '.repeat(size / 6)}\n\n[^1]: b`,
  'footnotes in footnotes': (size) => `a[^0]\n\n${lines(size, (index) => `[^${index}]: b[^${index + 1}]\n`)}`,
  'footnotes without an end': repeated('[^a'),
  'calls without notes': repeated('[^a] '),
  'footnotes inside notes': (size) => `${'[^a]: '.repeat(size / 6)}b`,
  pictures: repeated('![a](b) '),
  'open pictures': repeated('!['),
  'pictures in pictures': both('![', '](a)'),
  'open stars': repeated('*a '),
  'closed stars': repeated('a* '),
  'stars around words': repeated('*a* '),
  'double stars': repeated('**a** '),
  'open double stars': repeated('**a '),
  'stars in stars': both('*a ', 'b* '),
  'stars in stars, close': both('*a', 'a*'),
  'one run of stars': repeated('*'),
  'stars and lines': repeated('*a _b '),
  'three stars, two closed': repeated('***a** '),
  'stars that half fit': repeated('a**b*c '),
  underscores: repeated('_a '),
  'underscores in words': repeated('a_b'),
  'words in underscores': repeated('_a_ '),
  tildes: repeated('~~a '),
  'struck words': repeated('~~a~~ '),
  'tildes in tildes': both('~~a ', 'b~~ '),
  'backticks of one length': repeated('`a '),
  'growing backticks': (size) =>
    Array.from({ length: steps(2 * size) }, (_, i) => '`'.repeat(i + 1)).join('a'),
  'one run of backticks': repeated('`'),
  'code in words': repeated('`a` '),
  fences: repeated('```\na\n```\n'),
  'an open fence': (size) => `\`\`\`\n${'a\n'.repeat(size / 2)}`,
  'opening fences': repeated('```a\n'),
  'moved in code': repeated('    a\n'),
  'blank lines in moved in code': (size) => `    a\n${'\n'.repeat(size)}    b`,
  'spaced lines in moved in code': (size) => `    a\n${'     \n'.repeat(size / 6)}    b`,
  autolinks: repeated('<https://a.example> '),
  'open angles': repeated('<'),
  'open autolinks': repeated('<a:'),
  'bare addresses': repeated('https://a.example '),
  'bare www': repeated('www.a.example '),
  'bare www in a row': repeated('www.'),
  'bare address that does not end': (size) => `https://a.example/${'('.repeat(size)}`,
  'bare address with entities': (size) => `https://a.example/${'&amp;'.repeat(size / 5)}`,
  'bare address with marks': (size) => `https://a.example/${'?!.,'.repeat(size / 4)}`,
  'mail addresses': repeated('a@b.example '),
  'mail addresses in a row': repeated('a@'),
  'a long mail address': (size) => `${'a.'.repeat(size / 2)}@b.example`,
  'a long name without a mail': (size) => `x@y.example ${'a-'.repeat(size / 2)}`,
  'schemes in a row': repeated('http:'),
  'html tags': repeated('<b>a</b> '),
  'html blocks': repeated('<div>\n\n'),
  'open remarks': repeated('<!--'),
  'open remarks in words': repeated('a <!-- '),
  remarks: repeated('<!-- a -->'),
  'remarks on lines': repeated('<!-- a -->\n\n'),
  'open processing': repeated('a <? '),
  'open declarations': repeated('a <!X '),
  'open character data': repeated('a <![CDATA[ '),
  'open tag attributes': (size) => `<a ${'b '.repeat(size / 2)}`,
  'open tag value': repeated('<a b="'),
  'tags with spaces': (size) => `<a${' '.repeat(size)}`,
  entities: repeated('&amp;'),
  'numbered entities': repeated('&#65;'),
  'half entities': repeated('&'),
  'entities of nothing': repeated('&#x110000;'),
  backslashes: repeated('\\'),
  'escaped signs': repeated('\\*'),
  'hard breaks': repeated('a\\\n'),
  'hard breaks of spaces': repeated('a  \n'),
  'NUL-like signs': repeated('\uFFFD'),
  'control signs': repeated('\u0001\u001b'),
  'bidi signs': repeated('\u202e\u2066'),
  'half pairs': repeated('\\ud800'),
  emoji: repeated('\u{1F434}'),
  'combined letters': repeated('e\u0301'),
  dates: repeated('12.3.2026 '),
  'half dates': repeated('12 March '),
  'days of months': repeated('March '),
  'dates in a row': repeated('2026-03-12-'),
  digits: repeated('1'),
  'digits and dots': repeated('1.'),
  names: repeated('Juno '),
  'whole names': repeated('Juno Grey '),
  'names on lines': repeated('Juno\n\n'),
  'names in stars': repeated('*Juno* '),
  initials: repeated('J. '),
  'owner and initials': repeated('A.M. '),
  'names of the owner': repeated('Abel Moor '),
  'stops and spaces': repeated('. '),
  'lines before a name': (size) => `a${'\n'.repeat(size)}Juno`,
  'signs before a name': (size) => `a\n${'- '.repeat(size / 2)}Juno`,
  'capital letters': repeated('J'),
  'letters J without an end': repeated("J'"),
  'hidden names': repeated('J\u00adu\u00adno '),
  'percent escapes': repeated('%25'),
  'escapes in escapes': repeated('&amp;amp;'),
  'unicode escapes': repeated('\\u004a'),
  data: repeated('data:'),
  'data addresses': repeated('data:a/a;base64,AAAA '),
  'data parameters': (size) => `data:a/a${';a=b'.repeat(size / 4)}`,
  'data types': repeated('data:a/'),
}

/** Each construct in a visit's notes, and in what the owner and anyone reads. */
export const growingBodies: readonly Growing[] = Object.entries(constructs).flatMap(([name, construct]) => [
  { name: `notes: ${name}`, files: (size) => filesWith({ visitBody: construct(size) }) },
  {
    name: `for others: ${name}`,
    files: (size) => {
      const text = construct(size)
      return filesWith({ visitBody: `## For the owner\n\n${text}\n\n## For teaching\n\n${text}` })
    },
  },
  { name: `practice: ${name}`, files: (size) => filesWith({ practiceBody: construct(size) }) },
])
