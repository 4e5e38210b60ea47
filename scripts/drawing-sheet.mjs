// node scripts/drawing-sheet.mjs: writes pages with drawings of all kinds of feet and findings, small and large, light,
// dark and in grey print, into dist/drawings/, and says where.
import { build } from 'esbuild'
import { root, run } from './install.mjs'

process.chdir(root)
await build({
  entryPoints: ['scripts/sheet-feet.ts'],
  bundle: true,
  platform: 'node',
  format: 'esm',
  outfile: 'dist/sheet-feet.mjs',
  logLevel: 'warning',
})
run(process.execPath, ['dist/sheet-feet.mjs'])
