// Which instrument is taken: where none may be, it is said what is to be done, and only there.
import { describe, expect, it } from 'vitest'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { exampleDefs, Walk } from '../../helpers/example.ts'

/** The gas meters due on these days, in their order. */
function withMeters(...due: readonly string[]): Definitions {
  const defs = exampleDefs()
  let at = 0
  const instruments = defs.instruments.instruments.map((one) =>
    one.kind === 'gas_meter'
      ? { ...one, calibration: { ...one.calibration, due: due[at++] ?? due[0] ?? '' } }
      : one,
  )
  return { ...defs, instruments: { ...defs.instruments, instruments } }
}

const asked = (defs: Definitions) => {
  const walk = new Walk(defs).toGate()
  walk.keys('L-101', 'L-102', 'L-103', 'L-104', 'L-105', 'L-106')
  walk.keys('NO START', 'NO FLOW', 'BLOCKED BOTH WAYS')
  expect(walk.prompt.kind).toBe('pick')
  const view = promptView(defs, walk.state, walk.talk, { width: 79, record: 'EXAMPLE', ascii: true })
  // What is faint has no room on a low screen, where somebody alone needs it most.
  expect(view.ask.filter(({ tone }) => tone === 'faint')).toEqual([])
  return view.ask.map(({ text }) => text)
}

describe('instruments to pick from', () => {
  it('that are all past due say that the job is opened anew with one that is not', () => {
    const rows = asked(withMeters('2026-03-13'))
    expect(rows.filter((text) => text.includes('NOT TO BE USED: its calibration lapsed'))).toHaveLength(2)
    expect(rows.at(-1)).toMatch(/^None of these may be used.*open the job anew\.$/)
  })

  it('with one among them that may be used say nothing of the kind', () => {
    const rows = asked(withMeters('2026-03-13', '2026-03-14'))
    expect(rows).toHaveLength(4)
    expect(rows[0]).toBe('This log has no inert gas let in. In doubt take a meter that reads without air.')
    expect(rows[3]).toBe('A wrong pick: back, before anything is read with it.')
    expect(rows[2]).not.toContain('NOT TO BE USED')
  })
})
