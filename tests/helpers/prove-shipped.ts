// The shipped procedures as safety proofs, dealt out over several test files so that they run side by side.
import { describe, expect, it } from 'vitest'
import { definitionsFrom } from '../../src/authoring/definitions.ts'
import type { FileCopy } from '../../src/core/job/entries.ts'
import { prove } from '../../src/core/proof/prove.ts'
import { fileCopies } from './example.ts'
import { SHIPPED } from './shipped.ts'

const PROCEDURES = SHIPPED.filter(({ text }) => /^procedure:/m.test(text))

/** The others, as files that it may use as parts. */
function partsOf(path: string): FileCopy[] {
  return PROCEDURES.filter((one) => one.path !== path).map((one) => ({
    role: 'part',
    name: one.path,
    sha256: '',
    text: one.text,
  }))
}

/** Every `of`-th of them from the `first`, counted from nought, on the machine TC-401-1. */
export function proveShipped(first: number, of: number): void {
  const mine = PROCEDURES.filter((_, n) => n % of === first)
  describe('what is shipped', () => {
    it.each(mine.map((one) => [one.path, one.text] as const))(
      'is proved: %s',
      { timeout: 480_000 },
      (path, text) => {
        const files = definitionsFrom([...fileCopies({ procedure: () => text }), ...partsOf(path)])
        if (!files.ok) throw new Error(files.diagnostics.map((d) => d.message).join('\n'))
        const proof = prove(files.defs)
        expect(proof).toMatchObject({ is: 'proved' })
        expect(proof.states).toBeGreaterThan(20)
        expect(proof.moves).toBeGreaterThan(500)
      },
    )
  })
}
