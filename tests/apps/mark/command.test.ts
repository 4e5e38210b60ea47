import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type MarkTarget, writeLandmarks } from '../../../src/apps/mark/write.ts'
import { diskFolder } from '../../../src/build/disk/source-folder.ts'
import { readCasebook, readHorse, readPractice } from '../../../src/casebook/read.ts'
import { mark } from '../../../src/commands/mark.ts'
import type { Landmarks } from '../../../src/hoof/landmarks.ts'
import { horseText, practiceText } from '../../casebook/read-one.ts'

let casebook = ''
const put = (path: string, data: string | Uint8Array) => {
  mkdirSync(join(casebook, path, '..'), { recursive: true })
  writeFileSync(join(casebook, path), data)
}
const visitText = (photos: string) => `---\nphotos:\n${photos}---\nNotes.\n`

beforeEach(async () => {
  casebook = mkdtempSync(join(tmpdir(), 'mark-'))
  put('practice.md', practiceText)
  put('juno/horse.md', horseText)
  const picture = sharp({ create: { width: 400, height: 300, channels: 3, background: '#7a5' } })
  put('juno/photos/a.jpg', await picture.jpeg().withMetadata({ orientation: 6 }).toBuffer())
  put('juno/2026-01-12.md', visitText('  - {file: photos/a.jpg, foot: LF, view: lateral}\n'))
})
afterEach(() => rmSync(casebook, { recursive: true }))

async function run(photo: string, options: Readonly<Record<string, string>> = {}) {
  const stop = new AbortController()
  const said: string[] = []
  const writer = {
    isTerminal: false,
    write: (text: string) => {
      said.push(text)
      if (text.startsWith('Open ')) stop.abort()
    },
  }
  const status = await mark.run([photo], new Map([['port', '0'], ...Object.entries(options)]), {
    cwd: casebook,
    stdout: writer,
    stderr: writer,
    keys: async function* () {},
    today: () => '2026-06-01',
    now: Date.now,
    signal: stop.signal,
  })
  return { status, said: said.join('') }
}

describe('growdown mark', () => {
  it('says where to open the page', async () => {
    const { status, said } = await run('juno/photos/a.jpg')
    expect(status).toBe(0)
    expect(said).toMatch(
      /^Open http:\/\/127\.0\.0\.1:\d+\/[\w-]{24}\/\nOnly this machine can open it\. Ctrl-C ends\.\n$/,
    )
  })

  it('opens a picture that no visit names yet', async () => {
    put('juno/2026-01-12.md', visitText('  []\n'))
    expect((await run('juno/photos/a.jpg', { view: 'solar' })).status).toBe(0)
  })

  it.each([
    ['juno/photos/none.jpg', {}, 'There is no picture juno/photos/none.jpg.'],
    ['juno/photos', {}, 'There is no picture juno/photos.'],
    ['juno/photos/a.jpg', { port: 'x' }, '--port x is no port: 0 to 65535.'],
    [
      'juno/photos/a.jpg',
      { view: 'solar' },
      'No entry of this picture fits. There are:\n  --visit 2026-01-12 --view lateral',
    ],
  ])('says what is wrong with %s %j', async (photo, options, message) => {
    await expect(run(photo, options)).rejects.toMatchObject({ name: 'WrongUse', message })
  })

  it('asks which entry is meant', async () => {
    put('juno/2026-02-16.md', visitText('  - {file: photos/a.jpg, view: lateral}\n'))
    await expect(run('juno/photos/a.jpg')).rejects.toThrow(
      'Several entries name this picture. There are:\n  --visit 2026-01-12 --view lateral\n  --visit 2026-02-16 --view lateral',
    )
    expect((await run('juno/photos/a.jpg', { visit: '2026-02-16' })).status).toBe(0)
  })

  it('knows which views are measured', async () => {
    put('juno/2026-01-12.md', visitText('  - {file: photos/a.jpg, view: front}\n'))
    await expect(run('juno/photos/a.jpg')).rejects.toThrow(
      'The entry in juno/2026-01-12.md has the view front, which is not measured. Write there one of: lateral, medial, solar, behind.',
    )
  })

  it('takes no picture from outside a horse', async () => {
    put('a.jpg', 'x')
    await expect(run('a.jpg')).rejects.toThrow("a.jpg lies in no horse's folder.")
  })

  it('says why a picture cannot be shown, or the files not read', async () => {
    put('juno/photos/a.jpg', 'no picture')
    expect(await run('juno/photos/a.jpg')).toEqual({
      status: 1,
      said: 'photos/a.jpg is no picture that can be read. Expected: a picture as JPEG, PNG, WebP, AVIF or HEIC. What to do: save it as JPEG.\n',
    })
    put('juno/2026-01-12.md', visitText('  - {fle: photos/a.jpg}\n'))
    const broken = await run('juno/photos/a.jpg')
    expect(broken.status).toBe(1)
    expect(broken.said).toContain('"fle" is not a key of a photo.')
    expect(broken.said).toContain('The files of juno must be put right first')
  })
})

describe('writing the points', () => {
  const landmarks: Landmarks = {
    scale: null,
    lines: {
      ground: [
        [10, 250],
        [290, 250],
      ],
    },
    points: { 'toe-at-ground': [50, 250] },
  }
  const file = () => join(casebook, 'juno', '2026-01-12.md')

  function target(): MarkTarget {
    const folder = diskFolder(casebook)
    const { practice } = readPractice(folder, '2026-06-01')
    const visit = practice && readHorse(folder, 'juno', practice, '2026-06-01').horse?.visits[0]
    if (!practice || !visit) throw new Error('the casebook cannot be read')
    const entry = { file: 'photos/a.jpg', nth: 0 }
    return { casebook, horse: 'juno', practice, visit, entry, asOf: '2026-06-01' }
  }

  it('keeps the old file, its rights, and leaves nothing else behind', () => {
    const before = readFileSync(file())
    chmodSync(file(), 0o640)
    expect(writeLandmarks(target(), landmarks)).toBe(
      'juno/2026-01-12.md has the points; as it was, it is kept as juno/2026-01-12.md.before-mark.',
    )
    expect(readFileSync(`${file()}.before-mark`)).toEqual(before)
    expect(statSync(file()).mode & 0o777).toBe(0o640)
    expect(readdirSync(join(casebook, 'juno')).sort()).toEqual([
      '2026-01-12.md',
      '2026-01-12.md.before-mark',
      'horse.md',
      'photos',
    ])
    expect(target().visit.photos[0]?.landmarks?.points).toEqual({ 'toe-at-ground': [50, 250] })
  })

  it('never loses an older file: each is kept under a name of its own, the same bytes once only', () => {
    const write = (x: number) =>
      writeLandmarks(target(), { ...landmarks, points: { 'toe-at-ground': [x, 250] } })
    const first = readFileSync(file())
    write(50)
    const second = readFileSync(file())
    writeFileSync(file(), readFileSync(file(), 'utf8').replace('Notes.', 'More notes.'))
    const third = readFileSync(file())
    expect(write(60)).toContain('it is kept as juno/2026-01-12.md.before-mark-2.')
    writeFileSync(file(), second)
    expect(write(70)).toContain('it is kept as juno/2026-01-12.md.before-mark-3.')
    writeFileSync(file(), third)
    expect(write(80)).toContain('it is kept as juno/2026-01-12.md.before-mark-2.')
    const kept = ['', '-2', '-3'].map((number) => readFileSync(`${file()}.before-mark${number}`))
    expect(kept).toEqual([first, third, second])
    expect(readdirSync(join(casebook, 'juno'))).toHaveLength(6)
    const { diagnostics } = readCasebook(diskFolder(casebook), '2026-06-01')
    expect(diagnostics.filter((one) => one.file.includes('before-mark'))).toEqual([])
  })

  it('takes no name that something else has: a link, a folder', () => {
    symlinkSync(join(casebook, 'elsewhere.md'), `${file()}.before-mark`)
    mkdirSync(`${file()}.before-mark-2`)
    expect(writeLandmarks(target(), landmarks)).toContain('before-mark-3.')
    expect(readdirSync(casebook)).not.toContain('elsewhere.md')
  })

  it('gives the new file the rights of the old, whatever new files usually get', () => {
    chmodSync(file(), 0o666)
    writeLandmarks(target(), landmarks)
    expect(statSync(file()).mode & 0o777).toBe(0o666)
    expect(statSync(`${file()}.before-mark`).mode & 0o777).toBe(0o666)
  })

  it('writes nothing when the file is saved while the points are put in', () => {
    const names = readdirSync(join(casebook, 'juno'))
    const saved = visitText('  - {file: photos/a.jpg, foot: RF, view: lateral}\n')
    const slow: Landmarks = {
      ...landmarks,
      get lines() {
        writeFileSync(file(), saved)
        return landmarks.lines
      },
    }
    expect(() => writeLandmarks(target(), slow)).toThrow(
      'Nothing was written: the file was changed meanwhile.',
    )
    expect(readFileSync(file(), 'utf8')).toBe(saved)
    expect(readdirSync(join(casebook, 'juno'))).toEqual(names)
  })

  it('works on the file as it stands now, not as it was when the page was opened', () => {
    const opened = target()
    writeFileSync(file(), readFileSync(file(), 'utf8').replace('Notes.', 'More notes, added meanwhile.'))
    writeLandmarks(opened, landmarks)
    expect(readFileSync(file(), 'utf8')).toContain('More notes, added meanwhile.')
  })

  it('touches nothing when the file is a link, is not UTF-8, or names the picture no more', () => {
    const opened = target()
    const text = readFileSync(file())
    const refuses = (why: string) => {
      const names = readdirSync(join(casebook, 'juno'))
      expect(() => writeLandmarks(opened, landmarks)).toThrow(why)
      expect(readdirSync(join(casebook, 'juno'))).toEqual(names)
    }
    writeFileSync(file(), Buffer.concat([text, Buffer.from([0xff])]))
    refuses('Nothing was written: the file is not in UTF-8.')
    writeFileSync(file(), visitText('  []\n'))
    refuses('Nothing was written: the visit names the picture photos/a.jpg no more.')
    rmSync(file())
    put('elsewhere.md', text)
    symlinkSync(join(casebook, 'elsewhere.md'), file())
    refuses('could not be read')
    expect(readFileSync(join(casebook, 'elsewhere.md'))).toEqual(text)
  })
})
