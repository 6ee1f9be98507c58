// What makes most of the error of a verdict that is too close to call, named beside it; and temperatures held against each other.
import { describe, expect, it } from 'vitest'
import { errorRows } from '../../../src/core/sheet/error-rows.ts'
import { AFTER_LINES, BORE_LINES, exampleDefs, noOverhauls, Walk } from '../../helpers/example.ts'

const DEFS = exampleDefs({ machine: noOverhauls })
/** Taper so near its limit that the measuring error decides nothing. */
const NEAR = ['9.5017', '9.5017', ...BORE_LINES.slice(2)]
const judge = (walk: Walk) => {
  const step = walk.engine.defs.steps.find(({ id }) => id === 'bore_judged')
  const record = walk.state.verdicts.bore_judged?.verdict
  if (step === undefined || record === undefined) throw new Error(`not judged, at ${walk.prompt.kind}`)
  return { step, record }
}
const rows = (walk: Walk) => {
  const { step, record } = judge(walk)
  return errorRows(walk.engine.defs, walk.state, step.id, record).map(({ text }) => text)
}
/** From the strip to the end, the bore temperature after as given. */
const after = (temperature: readonly string[], gauge: readonly string[] = ['70.8']) => [
  ...AFTER_LINES.slice(0, -3),
  ...temperature,
  ...gauge,
  '9.5001',
]

describe('too close to call', () => {
  it('names the instrument where its certificate is most of the error', () => {
    const walk = new Walk(DEFS).toBore().keys(...NEAR, ...AFTER_LINES)
    expect(rows(walk)).toEqual([
      'Too close to call: most of the measuring error is the error of M-3 by its certificate, U 0.0003 in.',
    ])
  })

  it('names a temperature that moved between before and after, and how far', () => {
    const walk = new Walk(DEFS).toBore().keys(...NEAR, ...after(['17.6', '3', 'as it stands there']))
    expect(rows(walk)).toEqual([
      'Too close to call: most of the measuring error is the temperature of the bore: before and after lie 53.6 degF apart. If one was a slip: correct. The bore and M-3 lie 26.2 degF apart.',
    ])
  })

  it('names the repeats of all places where the gauge is finer than its hands, 0.0003 in apart everywhere', () => {
    const finer = (text: string) => text.replaceAll('expanded: 0.0003 in', 'expanded: 0.0001 in')
    const defs = exampleDefs({ machine: noOverhauls, instruments: finer })
    const places = [
      ['9.5015', '9.5018'],
      ['9.5020', '9.5023'],
      ['9.5068', '9.5071'],
      ['9.5034', '9.5037'],
    ]
    const rest = [
      ['9.5024', '9.5027'],
      ['9.5019', '9.5022'],
    ]
    const strip = ['1', '9.5008', '9.5011', '9.5007', '9.5010']
    const walk = new Walk(defs)
      .toBore()
      .keys(...places.flat(), ...rest.flat(), ...strip, ...AFTER_LINES.slice(5))
    expect(rows(walk)).toEqual([
      'Too close to call: most of the measuring error is how far repeats of one place lie apart.',
    ])
  })

  it('says nothing beside a verdict that is not', () => {
    expect(rows(new Walk(DEFS).toVerdict())).toEqual([])
  })
})
