import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join, relative } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { casebook, type Trial, trial } from '../kit.ts'

let at: Trial
beforeEach(() => {
  at = trial()
})
afterEach(() => at.done())

const filesBelow = (folder: string) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((path) => join(folder, path))
    .filter((path) => statSync(path).isFile())
    .sort()

/** Pages and tables of the portfolio, as text, by path. */
const published = (of: Trial = at) =>
  new Map(
    filesBelow(join(of.site, 'portfolio'))
      .filter((path) => /\.(?:html|csv)$/.test(path))
      .map((path) => [relative(of.site, path), readFileSync(path, 'utf8')]),
  )
const page = (slug: string) => published().get(join('portfolio', slug, 'index.html')) ?? ''
const patient = (slug: string) =>
  Object.fromEntries(
    [
      ...(/<dl class="facts">([\s\S]*?)<\/dl>/
        .exec(page(slug))?.[1]
        ?.matchAll(/<dt>(.*?)<\/dt><dd>(.*?)<\/dd>/g) ?? []),
    ].map(([, name, value]) => [name, value]),
  )
const choices = (text: string) =>
  at.write('practice.md', (casebook['practice.md'] ?? '').replace(/\n---\n$/, `\nportfolio: ${text}\n---\n`))

/** A cob of the age and weight of the three of the kit. */
const another = (id: string, alias: string) => ({
  [`${id}/horse.md`]: (casebook['may/horse.md'] ?? '')
    .replace('name: May', `name: ${id}`)
    .replace('alias: Fern', `alias: ${alias}`),
  [`${id}/2026-01-12.md`]: '---\ndate: 2026-01-12\nbefore:\n  toe length: [98, 96, 90, 91]\n---\n',
})

describe('the patient of a case', () => {
  it('is told in the widest bands while there are few cases, named by the build in one line', async () => {
    const { diagnostics } = await at.build(['portfolio'])
    expect(patient('bramble')).toMatchObject({
      Kind: 'horse or pony',
      'Age at the first visit': '4 years or more',
    })
    expect(page('bramble')).toContain('Told in wide bands only')
    expect(page('bramble')).not.toContain('<!--')
    const alone = diagnostics.filter(({ code }) => code === 'portfolio-alone')
    expect(alone.map(({ file, level }) => [file, level])).toEqual([['may/horse.md', 'warning']])
    expect(alone[0]?.message).toBe(
      'In the portfolio no more cases are told alike than Bramble, Fern and Sorrel, known by age and kind: whoever knows the horse may know it there.',
    )
    // What is wrong with the portfolio is told again though nothing is made again.
    const again = await at.build(['portfolio'])
    expect(again.diagnostics).toEqual(diagnostics)
    expect(again.horses.made).toBe(0)
  })

  it('is told closer in every page once there are enough, though no other horse is made again', async () => {
    await at.build(['portfolio'])
    for (const [path, text] of Object.entries({ ...another('brockel', 'Oak'), ...another('tarnet', 'Elm') }))
      at.write(path, text)
    const { horses, diagnostics } = await at.build(['portfolio'])
    expect(horses.made).toBe(2)
    expect(diagnostics.filter(({ code }) => code === 'portfolio-alone')).toEqual([])
    for (const slug of ['bramble', 'fern', 'sorrel', 'oak', 'elm'])
      expect(patient(slug)).toMatchObject({ Kind: 'cob', 'Age at the first visit': '9 to 13 years' })
    expect(page('bramble')).toContain('Told only as closely as 5 cases or more share it')
    const fresh = trial({ ...casebook, ...another('tarnet', 'Elm'), ...another('brockel', 'Oak') })
    await fresh.build(['portfolio'])
    expect(published(fresh)).toEqual(published())
    fresh.done()
  })
})

describe('time in the portfolio', () => {
  it('is weeks in every file of the demo, and nowhere days', async () => {
    const demo = trial(
      Object.fromEntries(filesBelow('cases').map((path) => [relative('cases', path), readFileSync(path)])),
    )
    await demo.build(['portfolio'], '2026-11-25')
    const files = published(demo)
    demo.done()
    expect(files.size).toBeGreaterThanOrEqual(14)
    for (const [path, text] of files) {
      expect(text.match(/\bday \d|\bdays (?:from|since)|\d\s*days?\b/i)?.[0], path).toBeUndefined()
      expect(text.match(/\b20\d\d-\d\d-\d\d\b/)?.[0], path).toBeUndefined()
    }
    for (const text of [...files].flatMap(([path, one]) => (path.endsWith('.csv') ? [one] : []))) {
      const weeks = text
        .split('\n')
        .slice(1, -1)
        .map((line) => Number(line.split(',')[1]))
      expect(Math.max(...weeks)).toBeLessThan(60)
      expect(text.startsWith('case,week,')).toBe(true)
    }
  })

  it('is days in text, table and file where they are asked for', async () => {
    choices('{days: days}')
    await at.build(['portfolio'])
    expect(page('bramble')).toContain('2 visits over 35 days.')
    expect(page('bramble')).toContain('Bramble came from (left out) on day 0.')
    expect(page('bramble')).not.toMatch(/\bweek/i)
    expect(published().get(join('portfolio', 'index.html'))).toContain('counted in days from the first visit')
  })
})

describe("the practice's name", () => {
  it('stands in each page unless it is hidden, and then nowhere', async () => {
    await at.build(['portfolio'])
    expect(page('fern')).toContain('From the records of Sandpiper Hoof Care')
    choices('{practice name: hidden}')
    await at.build(['portfolio'])
    for (const [path, text] of published()) expect(text, path).not.toMatch(/Sandpiper/)
  })

  it('is taken out of the text where it is hidden, and refused where it is left', async () => {
    choices('{practice name: hidden}')
    const text = casebook['may/2026-01-12.md'] ?? ''
    at.write('may/2026-01-12.md', text.replace('May came from', 'May came to Sandpiper Hoof Care from'))
    await at.build(['portfolio'])
    expect(page('fern')).toContain('Fern came to (left out) from')
    at.write('may/2026-01-12.md', text.replace('May came from', 'May came to Sand&#112;iper Hoof Care from'))
    const { refusals } = await at.build(['portfolio'])
    expect(refusals.map(({ folder }) => folder)).toEqual(['portfolio'])
    expect(page('fern')).toContain('Fern came to (left out) from')
  })

  it("may stand in owners' pages all the same", async () => {
    choices('{practice name: hidden}')
    const built = await at.build(['owner'])
    expect(built.published).not.toBeNull()
  })
})

describe('a case that is held back', () => {
  it('is told as it stood some weeks ago, and not at all before', async () => {
    choices('{hold back: 6 weeks}')
    await at.build(['portfolio'], '2026-02-22')
    expect([...published().keys()]).toEqual([
      join('portfolio', 'index.html'),
      join('portfolio', 'summary.html'),
    ])
    await at.build(['portfolio'], '2026-02-23')
    expect(page('bramble')).toContain('1 visit over 0 weeks.')
    await at.build(['portfolio'], '2026-03-29')
    expect(page('bramble')).toContain('1 visit over 0 weeks.')
    expect(published().get(join('portfolio', 'bramble', 'readings.csv'))).not.toMatch(/^Bramble,5,/m)
    await at.build(['portfolio'], '2026-03-30')
    expect(page('bramble')).toContain('2 visits over 5 weeks.')
  })

  it.each(['{hold back: some time}', '{holdback: 6 weeks}', '{practice name: secret}', 'weeks'])(
    'shows no case while the wish %j cannot be read',
    async (wish) => {
      choices(wish)
      const { diagnostics } = await at.build(['portfolio'], '2026-06-01')
      expect(diagnostics.some(({ file, level }) => file === 'practice.md' && level === 'error')).toBe(true)
      expect([...published().keys()]).toEqual([
        join('portfolio', 'index.html'),
        join('portfolio', 'summary.html'),
      ])
      for (const [path, text] of published()) expect(text, path).not.toContain('Sandpiper')
    },
  )
})
