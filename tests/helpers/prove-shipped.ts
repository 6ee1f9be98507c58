// The shipped procedures as safety proofs, dealt out over several test files so that they run side by side.
import { basename } from 'node:path'
import { describe, expect, it } from 'vitest'
import { definitionsFrom } from '../../src/authoring/definitions.ts'
import type { Definitions } from '../../src/core/job/definitions.ts'
import type { FileCopy } from '../../src/core/job/entries.ts'
import { gatesOf } from '../../src/core/job/gate.ts'
import { barriers } from '../../src/core/proof/barriers.ts'
import { unheldVerdict } from '../../src/core/proof/gaps.ts'
import { freshJob, prove, searchSlice } from '../../src/core/proof/prove.ts'
import { slices } from '../../src/core/proof/reduce.ts'
import { fileCopies } from './example.ts'
import { SHIPPED } from './shipped.ts'

const PROCEDURES = SHIPPED.filter(({ text }) => /^procedure:/m.test(text))

/**
 * Where the gate of isolation, with much work behind it, takes half a minute or more: that gate is left out here.
 * `barover check procedures examples/tc-401` searches it in each of them, and no REAL job opens without that search.
 */
const LONG: readonly string[] = [
  'clearance-pocket.yaml',
  'liner-fit.yaml',
  'lift-out-piston.yaml',
  'liner-in.yaml',
  'open-cylinder.yaml',
  'put-back.yaml',
  'renew-liner.yaml',
  'ridge-and-finish.yaml',
  'rings-in-bore.yaml',
]

/** The others, as files that it may use as parts. */
function partsOf(path: string): FileCopy[] {
  return PROCEDURES.filter((one) => one.path !== path).map((one) => ({
    role: 'part',
    name: one.path,
    sha256: '',
    text: one.text,
  }))
}

function defsOf(path: string, text: string): Definitions {
  const files = definitionsFrom([...fileCopies({ procedure: () => text }), ...partsOf(path)])
  if (!files.ok) throw new Error(files.diagnostics.map((d) => d.message).join('\n'))
  return files.defs
}

/** Every `of`-th of them from the `first`, counted from nought, on the machine TC-401-1. */
export function proveShipped(first: number, of: number): void {
  const mine = PROCEDURES.filter((_, n) => n % of === first).map((one) => [one.path, one.text] as const)
  const isLong = ([path]: readonly [string, string]) => LONG.includes(basename(path))
  describe('what is shipped', () => {
    const whole = mine.filter((one) => !isLong(one))
    if (whole.length > 0)
      it.each(whole)('is proved: %s', { timeout: 480_000 }, (path, text) => {
        const proof = prove(defsOf(path, text))
        expect(proof).toMatchObject({ is: 'proved' })
        expect(proof.states).toBeGreaterThan(20)
        expect(proof.moves).toBeGreaterThan(500)
      })
    const long = mine.filter(isLong)
    if (long.length > 0)
      it.each(long)('is proved but for isolation: %s', { timeout: 480_000 }, (path, text) => {
        const defs = defsOf(path, text)
        const all = slices(defs)
        const own = all.filter((small) => gatesOf(small)[0]?.id !== 'isolated__isolation')
        expect(own).toHaveLength(all.length - 1)
        for (const small of own) expect(searchSlice(small)).toMatchObject({ breach: null, bound: null })
        const engine = { defs, version: 'proof' }
        expect(barriers(engine, freshJob())).toEqual({ is: 'sound' })
        expect(unheldVerdict(engine, freshJob())).toBeNull()
      })
  })
}
