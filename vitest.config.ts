import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    testTimeout: 30_000,
    // A screen arrives in pieces: what is looked for on it is waited for, as long as in Screen.until.
    expect: { poll: { timeout: 10_000 } },
    // Two cores is the smallest machine the suite has to be quick on.
    maxWorkers: 2,
  },
})
