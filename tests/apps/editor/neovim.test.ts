/** A real Neovim, where one is installed: a mistake, a look at a word, the fix, and nothing wrong any more. */
import { execFile, spawnSync } from 'node:child_process'
import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { promisify } from 'node:util'
import { expect, it } from 'vitest'

const hasNeovim = spawnSync('nvim', ['--version']).status === 0

it.skipIf(!hasNeovim)('is served as the protocol says (needs nvim on the path)', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'growdown-'))
  try {
    cpSync(resolve('tests/casebooks/good-plain'), folder, { recursive: true })
    const visit = 'juno/2026-03-23.md'
    writeFileSync(
      join(folder, visit),
      '---\nbefore:\n  toe length: [98, 96, 95, 96]\n  heel latral: [30, 31, 36, 32]\n---\n',
    )
    const command = [process.execPath, resolve('dist/cli.js'), 'lsp', '--stdio', '--as-of', '2026-06-01']
    const { stdout } = await promisify(execFile)(
      'nvim',
      [
        '--headless',
        '-u',
        'NONE',
        '-n',
        '-i',
        'NONE',
        '-c',
        `luafile ${resolve('tests/apps/editor/neovim.lua')}`,
      ],
      {
        env: {
          ...process.env,
          COMMAND: JSON.stringify(command),
          ROOT: folder,
          VISIT: visit,
          HOVER_LINE: '2',
        },
      },
    )
    expect(stdout).toContain('SEEN ')
    const seen = JSON.parse(/SEEN (.*)/.exec(stdout)?.[1] ?? '{}')
    expect(seen.message).toContain('"heel latral" is not a measure.')
    expect(seen.line).toBe(3)
    expect(seen.hover).toContain('last 93 mm on 16 February 2026')
    expect(seen.fix).toBe('Likely fix: heel lateral')
    expect(seen.lines[3]).toBe('  heel lateral: [30, 31, 36, 32]')
  } finally {
    rmSync(folder, { recursive: true })
  }
})
