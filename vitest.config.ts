import { defineConfig } from 'vitest/config'

/** Pure code and the checker: nothing in them is left behind that another file could see, so they share their modules. */
const PURE = ['tests/{core,authoring,mutants}/**/*.test.ts']
/** What runs the program, or has files, and leaves none of its modules changed: they share theirs too. */
const AROUND = ['tests/!(core|authoring|mutants)/**/*.test.{ts,tsx}', 'tests/*.test.{ts,tsx}']
/** What is drawn in a terminal that stands in for one: the renderer is read once for all of it. */
const DRAWN = ['tests/{ui,plain}/**/*.test.{ts,tsx}']
/**
 * But not where a module is replaced for one test, or where a long search fills the memory, or where jsdom takes over the globals it
 * finds: one that another file's library filled in, as Iterator on Node 20, no new page has.
 */
const APART = [
  'tests/core/proof/**/*.test.ts',
  'tests/core/job/{search,safety,pull-walk}.test.ts',
  'tests/authoring/check-command.test.ts',
  'tests/cli/{compute,doubt-sign}.test.ts',
  'tests/report/{html,practice}.test.ts',
]

export default defineConfig({
  test: {
    testTimeout: 30_000,
    // A screen arrives in pieces: what is looked for on it is waited for, as long as in Screen.until.
    expect: { poll: { timeout: 10_000 } },
    // Two cores is the smallest machine the suite has to be quick on. What only computes has a worker for each; where programs are
    // waited for a third has the cores meanwhile.
    projects: [
      {
        extends: true,
        test: {
          name: 'around',
          include: AROUND,
          exclude: [...APART, ...DRAWN],
          isolate: false,
          maxWorkers: 3,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: 'pure',
          include: PURE,
          exclude: APART,
          isolate: false,
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: true,
        test: {
          name: 'drawn',
          include: DRAWN,
          isolate: false,
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
      { extends: true, test: { name: 'apart', include: APART, maxWorkers: 2, sequence: { groupOrder: 1 } } },
    ],
  },
})
