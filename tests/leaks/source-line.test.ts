import { describe, expect, it } from 'vitest'
import { sourceLine, textRound } from '../../src/leaks/source-line.ts'

const visit = `---
date: 2026-01-12
---
The owner asked about the hind feet.

## For teaching

The white line was wide on arrival. A neighbour of Ju&#110;o was treated for the same thing, and the
sole was cleaned with salt water and cotton before Wren&shy;ford looked at it again.
`
const texts = [
  {
    path: 'quill/horse.md',
    text: '---\nname: Quill\nalias: Reed\n---\nThe sole was flat before she came.\n',
  },
  { path: 'quill/2026-01-12.md', text: visit },
]
const lineOf = (page: string, hit: string) => sourceLine(page, page.indexOf(hit), texts)

describe('the line that a sentence came from', () => {
  it('is found by the words round it, in whatever form the name stands there', () => {
    expect(lineOf('A neighbour of Juno was treated for the same thing', 'Juno')).toMatchObject({
      file: 'quill/2026-01-12.md',
      line: 8,
    })
    expect(
      lineOf('cleaned with salt water and cotton before Wrenford looked at it again', 'Wrenford'),
    ).toEqual({
      file: 'quill/2026-01-12.md',
      line: 9,
      text: 'sole was cleaned with salt water and cotton before Wren&shy;ford looked at it again.',
    })
  })

  it('is found where other words of the sentence were replaced', () => {
    const page = 'A neighbour of Juno was treated for the (left out) thing, and the frog was cleaned'
    expect(lineOf(page, 'Juno')?.line).toBe(8)
  })

  it('is none where nothing in the casebook reads like that', () => {
    expect(lineOf('Days since the first visit: Juno 35', 'Juno')).toBeNull()
    expect(lineOf('before she went Juno', 'Juno')).toBeNull()
  })

  it('is sought by the text of a page, without its markup', () => {
    const page = `<p>One.</p>\n<p class="a">A neighbour of <b>Ju&#110;o</b> was <a href="x">treated</a> for it</p>`
    const { text, at } = textRound(page, 2, (page.split('\n')[1]?.indexOf('Ju') ?? 0) + 1)
    expect(text.slice(0, at).replace(/\s+/g, ' ')).toMatch(/A neighbour of $/)
    expect(text.slice(at)).toMatch(/^\s*Juno/)
    expect(sourceLine(text, at, texts)?.line).toBe(8)
  })
})
