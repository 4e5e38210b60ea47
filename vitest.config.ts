import { availableParallelism } from 'node:os'
import { defineConfig } from 'vitest/config'

/**
 * `unit` mirrors src/, `reference` holds the checks against published sources, `browser` runs real Chromium.
 * Loading the program anew for each file took as long as a sixth of all tests, so files share what one process has
 * loaded: a test leaves nothing behind in it. There is a process more than there are processors, since some wait: for
 * the program that they started, for a page, for a bound to pass.
 */
export default defineConfig({
  test: {
    maxWorkers: availableParallelism() + 1,
    projects: [
      {
        test: {
          name: 'unit',
          isolate: false,
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', 'tests/reference/**'],
          globalSetup: ['tests/bundled.ts', 'tests/builds.ts'],
          testTimeout: 30_000,
        },
      },
      {
        test: {
          name: 'reference',
          isolate: false,
          include: ['tests/reference/**/*.test.ts'],
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'browser',
          isolate: false,
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/bundled.ts', 'tests/builds.ts'],
          // A real browser on a busy machine may be late once; what is wrong is wrong twice.
          retry: 1,
          testTimeout: 120_000,
          hookTimeout: 180_000,
        },
      },
    ],
  },
})
