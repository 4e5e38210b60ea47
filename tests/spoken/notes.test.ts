/**
 * Spoken notes held against what a person would type up from them. The floors are what was measured. Of the notes that no
 * rule was made for only the totals are looked at, so a failing run prints those and not the notes.
 */
import { describe, expect, it } from 'vitest'
import { notesOf, type Score, scoreNote, totals } from './score.ts'

type Kind = 'readings' | 'findings' | 'others'

function scored(...sets: readonly Parameters<typeof notesOf>[0][]) {
  const scores = sets.flatMap(notesOf).map(scoreNote)
  const sum = (...kinds: readonly Kind[]) =>
    totals(scores.flatMap((score): readonly Score[] => kinds.map((kind) => score[kind])))
  return {
    count: scores.length,
    both: sum('readings', 'findings'),
    readings: sum('readings'),
    others: sum('others'),
  }
}

describe('spoken notes that no rule was made for', () => {
  it('written before the rules: precise, and few are missed', () => {
    const { count, both, readings, others } = scored('unseen')
    expect(count).toBeGreaterThanOrEqual(27)
    expect(both.right + both.missed).toBeGreaterThanOrEqual(187)
    expect(both.precision).toBeGreaterThanOrEqual(0.994)
    expect(both.recall).toBeGreaterThanOrEqual(0.957)
    expect(readings.precision).toBe(1)
    expect(others.precision).toBeGreaterThanOrEqual(0.975)
    expect(others.recall).toBe(1)
  })

  it('written after them: as precise, and more are missed', () => {
    const { count, both, readings, others } = scored('later')
    expect(count).toBeGreaterThanOrEqual(20)
    expect(both.right + both.missed).toBeGreaterThanOrEqual(127)
    expect(both.precision).toBeGreaterThanOrEqual(0.982)
    expect(both.recall).toBeGreaterThanOrEqual(0.881)
    expect(readings.precision).toBeGreaterThanOrEqual(0.989)
    expect(others.precision).toBeGreaterThanOrEqual(0.9)
    expect(others.recall).toBe(1)
  })

  it('both together', () => {
    const { both } = scored('unseen', 'later')
    expect(both.precision).toBeGreaterThanOrEqual(0.989)
    expect(both.recall).toBeGreaterThanOrEqual(0.926)
  })
})

it('spoken notes that the rules were made with: no reading is wrong', () => {
  const { count, both, readings, others } = scored('developing')
  expect(count).toBeGreaterThanOrEqual(100)
  expect(readings.precision).toBe(1)
  expect(both.precision).toBeGreaterThanOrEqual(0.995)
  expect(both.recall).toBeGreaterThanOrEqual(0.958)
  expect(others.precision).toBe(1)
  expect(others.recall).toBeGreaterThanOrEqual(0.975)
})
