// The search may only be believed if it misses nothing: every step of many random jobs, done on the whole procedure with
// all its locks, places, people and instruments, has to be a step, or what a state leaves open, of what was searched.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { definitionsFrom } from '../../../src/authoring/definitions.ts'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import type { Input } from '../../../src/core/job/input.ts'
import { NOTHING_SEEN, type Watch, watched } from '../../../src/core/proof/account.ts'
import { type Explored, whereIs } from '../../../src/core/proof/explore.ts'
import { searchSlice } from '../../../src/core/proof/prove.ts'
import { projected, projectedWatch, slices } from '../../../src/core/proof/reduce.ts'
import { BORE_LINES, exampleDefs, fileCopies, ROOT, Walk } from '../../helpers/example.ts'
import { smallDefs, TWO_GATES } from '../../helpers/small-job.ts'
import { perform, schedule } from '../job/schedules.ts'

/** Fixed, so that the suite says the same every time; change it to search elsewhere. */
const SEED = 20260315

class Checked {
  readonly whole: Definitions
  readonly small: Definitions
  readonly found: Explored
  readonly #reach = new Map<string, ReadonlySet<string>>()
  steps = 0
  readonly lines = new Set<string>()

  constructor(whole: Definitions, small: Definitions) {
    this.whole = whole
    this.small = small
    this.found = searchSlice(small)
  }

  /** Everything that a state leaves open, and itself. */
  open(outline: string): ReadonlySet<string> {
    const known = this.#reach.get(outline)
    if (known !== undefined) return known
    const reach = new Set([outline])
    for (const one of reach) for (const next of this.found.open.get(one) ?? []) reach.add(next)
    this.#reach.set(outline, reach)
    return reach
  }

  isStep(from: string, to: string): boolean {
    if (this.open(from).has(to)) return true
    return [...this.open(from)].some((a) =>
      [...(this.found.edges.get(a) ?? [])].some((b) => this.open(b).has(to)),
    )
  }

  /** Follows one job, entry batch by entry batch. */
  follow(walk: Walk): () => void {
    let watch: Watch = NOTHING_SEEN
    let seen = 0
    const here = () => {
      for (const e of walk.entries.slice(seen)) watch = watched(this.whole, watch, e)
      seen = walk.entries.length
      const { whole, small } = this
      const account = projectedWatch(whole, small, walk.state, watch)
      return whereIs(small, projected(whole, small, walk.state), account)
    }
    let at = here()
    const bring = walk.bring.bind(walk)
    walk.bring = (input: Input) => {
      const code = bring(input)
      const to = here()
      this.steps++
      this.lines.add(to)
      if (!this.isStep(at, to)) throw new Error(`not searched, ${JSON.stringify(input)}:\n${at}\n${to}`)
      at = to
      return code
    }
    return () => {
      walk.bring = bring
    }
  }
}

function walkAll(checked: Checked, runs: number): void {
  fc.assert(
    fc.property(fc.nat(3), schedule, (start, actions) => {
      const walk = new Walk(checked.whole)
      checked.follow(walk)
      // From further in too, so that the end of the job is walked as often as its start.
      if (checked.whole.procedure.procedure === 'bore_inspection') {
        if (start === 1) walk.throughGate()
        if (start === 2) walk.toBore()
        if (start === 3) walk.toBore().keys(...BORE_LINES, '1')
      }
      const inputs: Input[] = []
      for (const a of actions) perform(walk, a, inputs)
    }),
    { numRuns: runs, seed: SEED },
  )
}

/** A procedure of many gates, with openings and people counted. */
function openCylinder(): Definitions {
  const read = (name: string) => readFileSync(join(ROOT, 'procedures', name), 'utf8')
  const part = { role: 'part', name: 'isolation.yaml', sha256: '', text: read('isolation.yaml') } as const
  const files = definitionsFrom([...fileCopies({ procedure: () => read('open-cylinder.yaml') }), part])
  if (!files.ok) throw new Error(files.diagnostics.map((d) => d.message).join('\n'))
  return files.defs
}

function checkAll(whole: Definitions, runs: number): void {
  for (const small of slices(whole)) {
    const checked = new Checked(whole, small)
    expect(checked.found.bound).toBeNull()
    walkAll(checked, runs)
    expect(checked.steps).toBeGreaterThan(runs * 20)
    expect(checked.lines.size).toBeGreaterThan(10)
  }
}

describe('every step of a random job was searched', () => {
  it('of the shipped procedure', { timeout: 240_000 }, () => checkAll(exampleDefs(), 120))

  it('of a job with a gate whose own tests stand behind another', { timeout: 240_000 }, () =>
    checkAll(smallDefs(TWO_GATES), 120),
  )

  it('of a procedure of many gates, with openings and people counted', { timeout: 240_000 }, () =>
    checkAll(openCylinder(), 30),
  )
})
