import { describe, expect, it } from 'vitest'
import { hostChanges } from '../../../src/apps/site/host-changes.ts'

const of = (written: readonly string[], removed: readonly string[], all: readonly string[]) =>
  hostChanges(['owners', 'portfolio'], { written, removed, all })

describe('what to do on a host', () => {
  it('is a folder where all in it is new, or gone, and else each file', () => {
    const all = [
      'portfolio/index.html',
      'portfolio/assets/a.css',
      'portfolio/fern/index.html',
      'portfolio/fern/p.jpg',
      'portfolio/reed/index.html',
      'portfolio/reed/p.jpg',
      'owners/robots.txt',
      'practice/index.html',
    ]
    const written = [
      'portfolio/index.html',
      'portfolio/fern/index.html',
      'portfolio/fern/p.jpg',
      'portfolio/reed/index.html',
      'practice/index.html',
    ]
    const removed = ['portfolio/bramble/index.html', 'portfolio/bramble/p.jpg', 'portfolio/reed/q.jpg']
    expect(of(written, removed, all)).toEqual([
      { folder: 'owners', upload: [], remove: [] },
      {
        folder: 'portfolio',
        upload: [
          { path: 'portfolio/fern/', files: 2 },
          { path: 'portfolio/index.html', files: 1 },
          { path: 'portfolio/reed/index.html', files: 1 },
        ],
        remove: [
          { path: 'portfolio/bramble/', files: 2 },
          { path: 'portfolio/reed/q.jpg', files: 1 },
        ],
      },
    ])
  })

  it('is the whole public folder where all of it is new, and where all of it is gone', () => {
    const pages = ['owners/robots.txt', 'owners/ab/index.html']
    expect(of(pages, [], pages)[0]?.upload).toEqual([{ path: 'owners/', files: 2 }])
    expect(of([], pages, [])[0]?.remove).toEqual([{ path: 'owners/', files: 2 }])
  })
})
