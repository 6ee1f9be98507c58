// The shipped procedures as safety proofs, dealt out over several test files so that they run side by side.
import { basename } from 'node:path'
import { describe, expect, it } from 'vitest'
import { definitionsFrom } from '../../src/authoring/definitions.ts'
import type { Definitions } from '../../src/core/job/definitions.ts'
import type { FileCopy } from '../../src/core/job/entries.ts'
import { gatesOf } from '../../src/core/job/gate.ts'
import { barriers } from '../../src/core/proof/barriers.ts'
import { unheldVerdict } from '../../src/core/proof/gaps.ts'
import { freshJob, piecesOf, proofOf } from '../../src/core/proof/prove.ts'
import { fileCopies } from './example.ts'
import { SHIPPED } from './shipped.ts'

const PROCEDURES = SHIPPED.filter(({ text }) => /^procedure:/m.test(text) && !/^scenario:/m.test(text))

/**
 * Too long for here: its parts are searched each by itself, and of the whole only what lies between its gates is looked at.
 * `barover check procedures examples` searches all of it, and no REAL job opens without that search.
 */
const LONG = 'piston-pull.yaml'

/** The others, as files that it may use as parts. */
function partsOf(path: string): FileCopy[] {
  return PROCEDURES.filter((one) => one.path !== path).map((one) => ({
    role: 'part',
    name: one.path,
    sha256: '',
    text: one.text,
  }))
}

/** Gates of a job by their procedure and id there: `isolated__isolation` is the gate isolation of the part isolation. */
function gateOf(defs: Definitions, small: Definitions | null): string | null {
  const gate = small === null ? undefined : gatesOf(small)[0]
  if (gate === undefined) return null
  const inside = gate.inside.at(-1)?.step
  return inside?.kind === 'part'
    ? `${inside.use}:${gate.id.split('__').at(-1)}`
    : `${defs.procedure.procedure}:${gate.id}`
}

/**
 * A part's gate is searched in that part by itself and in the longest procedure that uses it, where most comes before and
 * after it; in the others only their own. `barover check procedures examples` searches all.
 */
function longestUsers(): ReadonlyMap<string, string> {
  const longest = new Map<string, { readonly path: string; readonly steps: number }>()
  for (const { path, text } of PROCEDURES.filter((one) => basename(one.path) !== LONG)) {
    const defs = defsOf(path, text)
    for (const { small } of piecesOf(defs)) {
      const gate = gateOf(defs, small)
      if (gate === null || gate.startsWith(`${defs.procedure.procedure}:`)) continue
      const known = longest.get(gate)
      if (known === undefined || known.steps < defs.steps.length)
        longest.set(gate, { path, steps: defs.steps.length })
    }
  }
  return new Map([...longest].map(([gate, { path }]) => [gate, path]))
}

let users: ReadonlyMap<string, string> | undefined
function usersOnce(): ReadonlyMap<string, string> {
  users ??= longestUsers()
  return users
}

function defsOf(path: string, text: string): Definitions {
  const files = definitionsFrom([...fileCopies({ procedure: () => text }), ...partsOf(path)])
  if (!files.ok) throw new Error(files.diagnostics.map((d) => d.message).join('\n'))
  return files.defs
}

/** Every `of`-th of them from the `first`, counted from nought, on the machine TC-401-1. */
export function proveShipped(first: number, of: number): void {
  const mine = PROCEDURES.filter((_, n) => n % of === first).map((one) => [one.path, one.text] as const)
  const isLong = ([path]: readonly [string, string]) => basename(path) === LONG
  describe('what is shipped', () => {
    const whole = mine.filter((one) => !isLong(one))
    if (whole.length > 0)
      it.each(whole)('is proved: %s', { timeout: 480_000 }, (path, text) => {
        const defs = defsOf(path, text)
        const longest = usersOnce()
        const own = `${defs.procedure.procedure}:`
        const mine = piecesOf(defs).filter(({ small }) => {
          const gate = gateOf(defs, small)
          return gate === null || gate.startsWith(own) || longest.get(gate) === path
        })
        const proof = proofOf(mine.map((piece) => piece.search()))
        expect(proof).toMatchObject({ is: 'proved' })
        expect(proof.states).toBeGreaterThan(20)
        expect(proof.moves).toBeGreaterThan(500)
      })
    const long = mine.filter(isLong)
    if (long.length > 0)
      it.each(long)(
        'waits at every step for all of its gates, and holds without its readings: %s',
        { timeout: 480_000 },
        (path, text) => {
          const defs = defsOf(path, text)
          const engine = { defs, version: 'proof' }
          expect(barriers(engine, freshJob())).toEqual({ is: 'sound' })
          expect(unheldVerdict(engine, freshJob())).toBeNull()
        },
      )
  })
}
