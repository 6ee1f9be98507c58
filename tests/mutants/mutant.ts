// One safety rule and one way a careless hand could break it. What is broken, where, and which test is to notice.

export interface Mutant {
  /** What must hold, in one plain sentence. */
  readonly rule: string
  /** From the root of the tree. */
  readonly file: string
  /** Stands in the file exactly once. */
  readonly find: string
  /** What it is broken into. */
  readonly into: string
  readonly test: {
    /** From the root of the tree. */
    readonly in: string
    /** Words of its name, as they stand in the file. */
    readonly title: string
  }
}

interface Row {
  readonly rule: string
  /** Where it is in another source file than its neighbours. */
  readonly file?: string
  readonly find: string
  readonly into: string
  /** Where it is caught in another test file than its neighbours. */
  readonly in?: string
  readonly by: string
}

/** Mutants of one source file, most of them caught in one test file: `core/job/gate` is `src/core/job/gate.ts`. */
export function of(source: string, tests: string, rows: readonly Row[]): Mutant[] {
  return rows.map(({ rule, file, find, into, in: other, by }) => ({
    rule,
    file: `src/${file ?? source}.ts`,
    find,
    into,
    test: { in: `tests/${other ?? tests}.test.ts`, title: by },
  }))
}

/** Why the list does not fit the tree any more, in one line, or null. */
export function staleWhy(
  { file, find, into, rule, test }: Mutant,
  read: (path: string) => string,
): string | null {
  const times = read(file).split(find).length - 1
  if (times !== 1)
    return `The list of rules is stale: in ${file} this stands ${times} times, not once: ${find}`
  if (into === find) return `The list of rules breaks nothing: ${rule}`
  return read(test.in).includes(test.title)
    ? null
    : `The list of rules is stale: ${test.in} has no "${test.title}"`
}

/** Names that have any of the titles in them. */
export function titlePattern(titles: readonly string[]): RegExp {
  return new RegExp(titles.map((title) => title.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('|'))
}
