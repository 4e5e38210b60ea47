import { defineConfig } from 'vitest/config'

/**
 * `unit` mirrors src/, `reference` holds the checks against published sources, `browser` runs real Chromium.
 * Loading the program anew for each file took as long as a sixth of all tests, so files of `unit` and `reference` share
 * what one process has loaded: a test leaves nothing behind in it. As many processes run as there are processors.
 */
export default defineConfig({
  test: {
    maxWorkers: '100%',
    projects: [
      {
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', 'tests/reference/**'],
          globalSetup: ['tests/bundled.ts'],
          isolate: false,
          testTimeout: 30_000,
        },
      },
      {
        test: {
          name: 'reference',
          include: ['tests/reference/**/*.test.ts'],
          isolate: false,
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/bundled.ts'],
          testTimeout: 120_000,
          hookTimeout: 180_000,
          fileParallelism: false,
        },
      },
    ],
  },
})
