/**
 * Pictures of 12 megapixels: what a build needs for them, against what sharp alone needs to make the same sizes.
 *   npx esbuild scripts/bench-photos.ts --bundle --platform=node --format=cjs --external:sharp --external:heic-decode --outfile=dist/bench-photos.cjs && node dist/bench-photos.cjs 100
 * Ways take turns in processes of their own, so that memory is each one's own (read where Linux tells it) and the disk is as warm for each.
 */
import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { contentHash } from '../src/build/disk/content-hash.ts'
import { disk } from '../src/build/disk/real-disk.ts'
import { diskFolder } from '../src/build/disk/source-folder.ts'
import { findCard, searchedSide } from '../src/card/find-card.ts'
import { readHorse, readPractice } from '../src/casebook/read.ts'
import { processPictures } from '../src/pictures/process.ts'
import { pictureStore } from '../src/pictures/store.ts'

const [first = '100', folder = ''] = process.argv.slice(2)
const own = process.argv[1] ?? ''
const today = '2026-06-01'

/** Light and dark at all scales, as a photograph of ground and horn has them. */
async function photograph(seed: number): Promise<Buffer> {
  const [width, height] = [4032, 3024]
  const layers = await Promise.all(
    [24, 120, 600, 4032].map(async (size, i) => {
      const noise = { type: 'gaussian', mean: 128, sigma: 42 - 8 * i } as const
      const small = sharp({
        create: { width: size, height: Math.round(size * 0.75), channels: 3, background: '#000', noise },
      })
      return sharp(await small.png().toBuffer())
        .resize(width, height, { kernel: 'cubic' })
        .modulate({ hue: 40 * seed })
        .toBuffer()
    }),
  )
  const [ground, ...over] = layers
  if (!ground) throw new Error('no layer')
  return sharp(ground)
    .composite(over.map((input) => ({ input, blend: 'soft-light' as const })))
    .jpeg({ quality: 88 })
    .toBuffer()
}

async function makeCasebook(n: number): Promise<string> {
  const place = mkdtempSync(join(tmpdir(), 'bench-photos-'))
  mkdirSync(join(place, 'cases/juno/photos'), { recursive: true })
  const few = await Promise.all([0, 1, 2, 3].map(photograph))
  writeFileSync(
    join(place, 'cases/practice.md'),
    '---\npractice: Bench\nowners: {abel: {name: Abel Moor}}\n---\n',
  )
  writeFileSync(join(place, 'cases/juno/horse.md'), '---\nname: Juno\nowner: abel\n---\n')
  const entries = Array.from({ length: n }, (_, i) => {
    // Bytes after the end make each picture another one.
    writeFileSync(
      join(place, `cases/juno/photos/${i}.jpg`),
      Buffer.concat([few[i % 4] ?? Buffer.alloc(0), Buffer.from(`${i}`)]),
    )
    return `  - {file: photos/${i}.jpg, foot: LF, view: lateral}\n`
  })
  writeFileSync(join(place, 'cases/juno/2026-01-12.md'), `---\nphotos:\n${entries.join('')}---\n`)
  return place
}

/** The same sizes and forms, from one decoding, and nothing else. */
async function sharpAlone(place: string): Promise<void> {
  const photos = join(place, 'cases/juno/photos')
  mkdirSync(join(place, 'alone'))
  for (const name of readdirSync(photos)) {
    const { data, info } = await sharp(readFileSync(join(photos, name)))
      .autoOrient()
      .resize({ width: 1600, height: 4000, fit: 'inside' })
      .flatten({ background: '#fff' })
      .toColourspace('srgb')
      .raw()
      .toBuffer({ resolveWithObject: true })
    const raw = { width: info.width, height: info.height, channels: info.channels }
    const sized = (width: number) => sharp(data, { raw }).resize({ width })
    for (const width of [480, 960, 1600])
      writeFileSync(
        join(place, `alone/${name}-${width}.webp`),
        await sized(width).webp({ quality: 78, effort: 2 }).toBuffer(),
      )
    writeFileSync(
      join(place, `alone/${name}.jpg`),
      await sized(960).jpeg({ quality: 80, mozjpeg: true }).toBuffer(),
    )
  }
}

async function throughBuild(place: string): Promise<void> {
  const source = diskFolder(join(place, 'cases'))
  const { practice } = readPractice(source, today)
  const horse = practice && readHorse(source, 'juno', practice, today).horse
  if (!horse) throw new Error('the casebook cannot be read')
  const paths = source.list().map(({ path }) => path)
  const hashes = new Map(paths.map((path) => [path, contentHash(source.read(path))] as const))
  const began = performance.now()
  await processPictures(horse, source, pictureStore(disk, join(place, 'kept')), hashes)
  process.stdout.write(`of which pictures: ${Math.round(performance.now() - began)} ms\n`)
}

async function detection(place: string): Promise<void> {
  const photos = join(place, 'cases/juno/photos')
  const times: number[] = []
  for (const name of readdirSync(photos).slice(0, 20)) {
    const { data, info } = await sharp(readFileSync(join(photos, name)))
      .greyscale()
      .resize({ width: searchedSide, height: searchedSide, fit: 'inside' })
      .raw()
      .toBuffer({ resolveWithObject: true })
    const began = process.cpuUsage()
    findCard({ width: info.width, height: info.height, data }, { width: 4032, height: 3024 })
    const { user, system } = process.cpuUsage(began)
    times.push((user + system) / 1000)
  }
  times.sort((a, b) => a - b)
  process.stdout.write(
    `processor time of a picture: median ${times[10]?.toFixed(0)} ms, longest ${times.at(-1)?.toFixed(0)} ms\n`,
  )
}

const ways = { alone: sharpAlone, cold: throughBuild, warm: throughBuild, card: detection }

async function main(): Promise<void> {
  if (folder !== '') {
    const began = performance.now()
    await ways[first as keyof typeof ways](folder)
    const { userCPUTime, systemCPUTime } = process.resourceUsage()
    // Not the system's maxRSS, which counts what the process had that began this one.
    const peak = Number(/VmHWM:\s*(\d+)/.exec(readFileSync('/proc/self/status', 'utf8'))?.[1] ?? 0)
    const seconds = (ms: number) => `${(ms / 1000).toFixed(2)} s`
    process.stdout.write(
      `${first}: ${seconds(performance.now() - began)} wall, ${seconds((userCPUTime + systemCPUTime) / 1000)} processor, ${Math.round(peak / 1024)} MiB\n`,
    )
  } else {
    const place = await makeCasebook(Number(first))
    try {
      for (let turn = 0; turn < 3; turn++) {
        for (const way of ['alone', 'cold', 'warm', 'card'])
          process.stdout.write(execFileSync(process.execPath, [own, way, place], { encoding: 'utf8' }))
        for (const made of ['alone', 'kept']) rmSync(join(place, made), { recursive: true, force: true })
      }
    } finally {
      rmSync(place, { recursive: true })
    }
  }
}

void main()
