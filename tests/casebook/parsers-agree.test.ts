/**
 * The block of a case file is read by one parser. A second, independent one (`yaml`) must find the same keys and texts
 * in every fixture and in the demo casebook, so that no file means something else than YAML says it means.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { parseDocument } from 'yaml'
import { reportOn } from '../../src/casebook/report.ts'
import { readYamlTree, type YamlNode } from '../../src/casebook/yaml-tree.ts'

const roots = [join(import.meta.dirname, '../casebooks'), join(import.meta.dirname, '../../cases')]

const blockOf = (text: string): string | null => /^---\n([\s\S]*?)^---[ \t]*$/m.exec(text)?.[1] ?? null

function plain(node: YamlNode): unknown {
  switch (node.kind) {
    case 'text':
      return node.text
    case 'nothing':
      return null
    case 'list':
      return node.items.map(plain)
    case 'map':
      return Object.fromEntries(node.entries.map(({ key, value }) => [key.text, plain(value)]))
  }
}

const nothing = {
  tag: 'tag:yaml.org,2002:null',
  default: true,
  test: /^(?:~|null)?$/,
  resolve: () => null,
  identify: (value: unknown) => value === null,
} as const

/** A bare `?` is a key mark to YAML and an open place to us; the witness is given a letter in its place. */
const open = '\uE001'
const lettered = (block: string): string => block.replace(/(?<=[:[,-] ?)\?(?= *(?:[,\]}]|$))/gm, open)

function byWitness(block: string): unknown {
  const document = parseDocument(lettered(block), { schema: 'failsafe', customTags: [nothing] })
  expect(document.errors).toEqual([])
  return JSON.parse(JSON.stringify(document.toJS() ?? {}).replaceAll(open, '?'))
}

describe('both parsers read the same', () => {
  const files = roots.flatMap((root) =>
    readdirSync(root, { recursive: true, encoding: 'utf8' })
      .filter((path) => path.endsWith('.md'))
      .map((path) => join(root, path)),
  )
  let compared = 0
  for (const path of files) {
    const block = blockOf(readFileSync(path, 'utf8'))
    if (block === null) continue
    const report = reportOn(path, block)
    const written = readYamlTree(block, 0, block.length, report)
    if (!written || report.diagnostics.length > 0) continue
    compared++
    it(path.split(/[/\\]/).slice(-3).join('/'), () => {
      expect(plain(written)).toEqual(byWitness(block))
    })
  }

  it('over a good number of files', () => {
    expect(compared).toBeGreaterThan(30)
  })
})
