import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { type PutOff, putOff } from '../../../src/apps/preview/put-off.ts'
import { UserError } from '../../../src/build/disk/errors.ts'

let done: string[]
let rest: PutOff
const later = (...names: string[]) => {
  for (const name of names) rest.later(() => void done.push(name))
}
const failing = (error: Error) =>
  rest.later(() => {
    throw error
  })

beforeEach(() => {
  vi.useFakeTimers()
  done = []
  rest = putOff()
})
afterEach(() => vi.useRealTimers())

it('does in order what was put off, once, a while after it is asked to', () => {
  later('list', 'lock')
  rest.soon()
  expect(done).toEqual([])
  vi.runAllTimers()
  expect(done).toEqual(['list', 'lock'])
  rest.now()
  expect(done).toEqual(['list', 'lock'])
})

it('does it before the next build, and not once more after that', () => {
  later('list')
  rest.soon()
  rest.now()
  later('of the next build')
  vi.runAllTimers()
  expect(done).toEqual(['list'])
})

it('gives the lock back whatever the disk refuses, and keeps a fault of the program for the next build to tell', () => {
  failing(new UserError('the disk is full'))
  failing(new TypeError('a fault'))
  later('lock')
  rest.soon()
  vi.runAllTimers()
  expect(done).toEqual(['lock'])
  expect(() => rest.now()).toThrow('a fault')
  expect(() => rest.now()).not.toThrow()
})
