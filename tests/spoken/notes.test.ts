/**
 * The notes of two halves, held against their truth. The floors are what was measured; of the half that no rule was made
 * for only the totals are looked at (a failing run prints them, not the notes).
 */
import { describe, expect, it } from 'vitest'
import { notesOf, type Score, scoreNote, totals } from './score.ts'

const scored = (half: 'unseen' | 'developing') => {
  const scores = notesOf(half).map(scoreNote)
  const sum = (...kinds: readonly ('readings' | 'findings' | 'others')[]) =>
    totals(scores.flatMap((score): readonly Score[] => kinds.map((kind) => score[kind])))
  return {
    count: scores.length,
    both: sum('readings', 'findings'),
    readings: sum('readings'),
    findings: sum('findings'),
    others: sum('others'),
  }
}

describe('spoken notes that no rule was made for', () => {
  const { count, both, readings, findings, others } = scored('unseen')

  it('are many, and say much', () => {
    expect(count).toBeGreaterThanOrEqual(27)
    expect(both.right + both.missed).toBeGreaterThanOrEqual(185)
  })

  it('give readings and findings that are right, and few are missed', () => {
    expect(both.precision).toBeGreaterThanOrEqual(0.994)
    expect(both.recall).toBeGreaterThanOrEqual(0.957)
    expect(readings.precision).toBe(1)
    expect(readings.recall).toBeGreaterThanOrEqual(0.962)
    expect(findings.precision).toBeGreaterThanOrEqual(0.958)
    expect(findings.recall).toBeGreaterThanOrEqual(0.92)
  })

  it('give comfort, flesh, care, what is followed and the next visit', () => {
    expect(others.precision).toBeGreaterThanOrEqual(0.975)
    expect(others.recall).toBe(1)
  })
})

describe('spoken notes that the rules were made with', () => {
  const { count, both, others } = scored('developing')

  it('give no reading and no finding that is wrong, and few are missed', () => {
    expect(count).toBeGreaterThanOrEqual(49)
    expect(both.precision).toBe(1)
    expect(both.recall).toBeGreaterThanOrEqual(0.996)
  })

  it('give comfort, flesh, care, what is followed and the next visit', () => {
    expect(others.precision).toBe(1)
    expect(others.recall).toBeGreaterThanOrEqual(0.957)
  })
})
