/**
 * Draws the pictures of the demo casebook and prints the `photos` entries that go with them. They are drawings, said
 * to be drawings, of feet whose numbers are known; the same drawings are what the tests measure.
 *   npx esbuild scripts/draw-demo-pictures.ts --bundle --platform=node --format=esm --packages=external --outfile=dist/draw-demo-pictures.mjs && node dist/draw-demo-pictures.mjs cases
 */
import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import sharp from 'sharp'
import { landmarkText } from '../src/pages/mark/landmark-block.ts'
import { demoPictures } from './demo-feet.ts'

const folder = process.argv[2]
if (folder === undefined) {
  process.stderr.write('Say where the casebook is: node dist/draw-demo-pictures.mjs cases\n')
  process.exit(2)
}

for (const { horse, visit, file, foot, view, stage, drawn } of demoPictures) {
  const png = await sharp(Buffer.from(drawn.svg)).png({ palette: true, colours: 48, effort: 10 }).toBuffer()
  const path = join(folder, horse, file)
  mkdirSync(dirname(path), { recursive: true })
  writeFileSync(path, png)
  process.stdout.write(
    [
      `${horse}/${visit}.md (${path}, ${Math.ceil(png.length / 1024)} KiB)\n`,
      `  - file: ${file}\n    foot: ${foot}\n    view: ${view}\n    stage: ${stage}\n`,
      '    caption: Drawn from the readings, not a photograph\n',
      `${landmarkText(drawn.landmarks, '    ')}\n`,
    ].join(''),
  )
}
