/** Serves the form's test page: real styles, real words, the demo's horses; the part of the unlocked page is played. */
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { build } from 'esbuild'
import Handlebars from 'handlebars'
import { diskFolder } from '../../../src/build/disk/source-folder.ts'
import { commonStyles, packageRoot, styleSheets, templateSources } from '../../../src/build/program.ts'
import { readCasebook, readPractice } from '../../../src/casebook/read.ts'
import { practiceLanguage, wordsFor } from '../../../src/pages/words/index.ts'
import { assess } from '../../../src/trend/assess.ts'
import { knowledgeOf } from '../../../src/yard/knowledge.ts'
import type { YardHorsePart, YardIndex } from '../../../src/yard/payload.ts'

export const today = '2026-11-27'

export interface FormPage {
  /** @param query `horse=whimbrel&hand=left` */
  url(query?: string): string
  close(): void
}

export async function serveForm(casebook = 'cases'): Promise<FormPage> {
  const html = pageText(casebook, await script())
  const server = createServer((_, response) => {
    response.setHeader('content-type', 'text/html; charset=utf-8')
    response.end(html)
  })
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening))
  const { port } = server.address() as AddressInfo
  return {
    url: (query = '') => `http://127.0.0.1:${port}/?${query}`,
    close: () => {
      server.close()
      server.closeAllConnections()
    },
  }
}

async function script(): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: ['tests/browser/yard-form/harness.tsx'],
    bundle: true,
    write: false,
    format: 'iife',
    target: 'es2022',
    platform: 'browser',
    minify: true,
    alias: { fs: './scripts/no-files.mjs' },
    inject: ['scripts/no-buffer.mjs'],
    jsx: 'automatic',
    jsxImportSource: 'preact',
    logLevel: 'error',
  })
  return outputFiles[0]?.text ?? ''
}

function pageText(casebook: string, code: string): string {
  const root = packageRoot()
  const sheets = styleSheets(root)
  const style = [...commonStyles, 'mark', 'yard-form', 'yard-visit']
    .map((name) => sheets.get(name) ?? '')
    .join('\n')
  const given = JSON.stringify({ ...givenOf(casebook), today }).replaceAll('<', '\\u003c')
  return `<!doctype html><html lang="en"><head><meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1"><title>A visit</title><link rel="icon" href="data:,">
<style>${style}</style></head><body>${board(root)}<main id="yard"></main>
<script type="application/json" id="given">${given}</script>
<script>${code.replaceAll('</script', '<\\/script')}</script></body></html>`
}

/** The board for marking, as the page has it laid by. */
function board(root: string): string {
  const handlebars = Handlebars.create()
  handlebars.registerHelper('eq', (a: unknown, b: unknown) => a === b)
  for (const [path, source] of templateSources(root))
    if (path.startsWith('partials/')) handlebars.registerPartial(path.slice('partials/'.length), source)
  return handlebars.compile('{{> mark/laid-by}}')({ words: wordsFor(practiceLanguage).mark })
}

function givenOf(casebook: string): {
  readonly index: YardIndex
  readonly parts: Record<string, YardHorsePart>
} {
  const folder = diskFolder(casebook)
  const text = (path: string) => new TextDecoder().decode(folder.read(path))
  const { casebook: read } = readCasebook(folder, today)
  const known = new Map(
    read?.horses.map((horse) => [
      horse.id,
      knowledgeOf(horse, read.practice, assess(horse, read.practice, today)),
    ]),
  )
  const parts: Record<string, YardHorsePart> = {}
  for (const { path } of folder.list()) {
    const [id = '', name] = path.split('/')
    const knowledge = known.get(id)
    if (name === undefined || !path.endsWith('.md') || knowledge === undefined) continue
    const part = parts[id] ?? { id, html: '', files: {}, pictures: [], knowledge }
    parts[id] = { ...part, files: { ...part.files, [path]: text(path) } }
  }
  const { practice } = readPractice(folder, today)
  const index: YardIndex = {
    version: 1,
    practice: 'test',
    practiceName: 'A practice',
    people: practice?.people.map(({ id, name }) => ({ id, name: name ?? id })) ?? [],
    asOf: today,
    practiceFile: text('practice.md'),
    horses: Object.keys(parts).map((id) => ({
      id,
      name: id,
      owner: null,
      due: null,
      flag: null,
      problems: '',
      isBroken: false,
    })),
    arrived: [],
    standing: [],
    localRules: null,
    phoneKey: Buffer.from('0123456789abcdef0123456789abcdef').toString('base64'),
  }
  return { index, parts }
}
