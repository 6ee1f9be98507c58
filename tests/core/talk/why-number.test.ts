// `why` with a number: the same sums as `barover compute`, on what is on record, and the same figures as the verdict.
import { beforeAll, describe, expect, it } from 'vitest'
import { compute, findComputation } from '../../../src/core/compute/registry.ts'
import { asBoreJudge, boreFacts } from '../../../src/core/job/bore-facts.ts'
import { stepById } from '../../../src/core/job/definitions.ts'
import { type BoreVerdictRecord, boreRecord } from '../../../src/core/job/verdict-record.ts'
import { sums } from '../../../src/core/talk/sums.ts'
import { whyNumber } from '../../../src/core/talk/why-number.ts'
import { exampleDefs, Walk } from '../../helpers/example.ts'

let walk: Walk
let record: BoreVerdictRecord
beforeAll(() => {
  walk = new Walk().toVerdict()
  record = walk.state.verdicts.bore_judged?.verdict as BoreVerdictRecord
})
const why = (what: string, at = walk) => whyNumber(at.engine.defs, at.state, what).join('\n')
const inches = (m: number, decimals: number) => (m / 0.0254).toFixed(decimals)

describe('why with a number', () => {
  it('is heard at any prompt and records nothing', () => {
    const before = walk.entries.length
    walk.key('why 7.3')
    expect(walk.said.join('\n')).toContain('Size at 20 C')
    expect(walk.entries).toHaveLength(before)
  })

  it('brings a reading to 20 degC by the figures that the verdict used', () => {
    const used =
      record.inputs.readings.find((r) => r.station === 'centre' && r.axis === 'vertical')?.valueM ?? 0
    expect(why('7.3')).toContain('9.5068')
    expect(why('7.3')).toContain(`= ${inches(used, 6)}`)
    expect(why('7.3')).toContain('None is dropped')
  })

  it.each([
    ['taper', 'taper'],
    ['round', 'out-of-round'],
    ['spread', 'spread'],
  ] as const)('%s comes to the figure of the verdict, with its limit and source', (word, characteristic) => {
    const judged = record.result.judged.find((c) => c.characteristic === characteristic)
    const shown = why(word)
    expect(shown).toContain(inches(judged?.valueM ?? 0, 5).replace(/0+$/, ''))
    expect(shown).toContain(judged?.limit?.source ?? 'nothing')
    expect(shown).toContain('(bore-form)')
    expect(shown).toContain('(guard-band)')
  })

  it('the measuring error comes to the U of the verdict, line by line', () => {
    const judge = asBoreJudge(stepById(walk.engine.defs, 'bore_judged'))
    if (judge === null) throw new Error('no judge of a bore')
    const { error } = boreFacts(walk.engine.defs, walk.state, judge)
    expect(error).not.toBeNull()
    const shown = why('error')
    for (const name of [
      'Instrument',
      'Temperature of the part',
      'Repeats',
      'pooled-repeats',
      '8 degrees of freedom',
    ])
      expect(shown).toContain(name)
    expect(shown).toContain('Places in order: 7.1, 7.2, 7.3, 7.4, 7.5, 7.6, 9.1, 9.2.')
    const found = /\bu\s+([\d.]+(?:e-?\d+)?) in .*expanded/.exec(shown)
    expect(Number(found?.[1]) * 0.0254).toBeCloseTo(record.inputs.readingU ?? 0, 8)
  })

  it('counts the doubt in the expansion where a record states it, in the verdict and in the sums alike', () => {
    const doubted = exampleDefs({
      machine: (text) => text.replace('per_kelvin: 10.8e-6', 'per_kelvin: 10.8e-6\n    u_per_kelvin: 3.0e-6'),
    })
    const other = new Walk(doubted).toVerdict()
    const u = boreRecord(other.state.verdicts.bore_judged?.verdict)?.inputs.readingU ?? 0
    expect(u).toBeGreaterThan(record.inputs.readingU ?? 1)
    const shown = why('u', other)
    expect(shown).toContain('Expansion of the part')
    expect(Number(/\bu\s+([\d.]+) in .*expanded/.exec(shown)?.[1]) * 0.0254).toBeCloseTo(u, 8)
  })

  it('does not pass its sums off as those of a verdict that an earlier version gave by another rule', () => {
    const given = walk.state.verdicts.bore_judged
    if (given === undefined) throw new Error('not judged')
    const inputs = { ...record.inputs, readingU: (record.inputs.readingU ?? 0) * 1.05 }
    const verdicts = { ...walk.state.verdicts, bore_judged: { ...given, verdict: { ...record, inputs } } }
    const old = { ...walk.state, verdicts }
    expect(whyNumber(walk.engine.defs, old, 'error')).toEqual([expect.stringContaining('an earlier version')])
    expect(
      sums(walk.engine.defs, { ...record, inputs }, { state: old, step: 'bore_judged' }).join(),
    ).toContain('an earlier version')
  })

  it('says what it knows when the word is not one', () => {
    expect(why('tapr')).toBe('Did you mean why taper?')
    expect(why('the moon')).toContain('Known are')
  })

  it('says so while nothing is measured or judged', () => {
    const early = new Walk()
    expect(why('taper', early)).toContain('No verdict stands yet')
    expect(why('7.1', early)).toContain('nothing is on record yet')
  })
})

describe('repeats pooled over places', () => {
  it('count with their degrees of freedom, and not beside the repeats themselves', () => {
    const found = findComputation('reading-error')
    if (!found.ok) throw new Error('gone')
    const length = (m: number) => ({ is: 'quantity', quantity: { kind: 'length', si: m } }) as const
    const base = {
      instrument_u: length(0),
      instrument_k: { is: 'number', number: 2 },
      size: length(0.25),
      part_alpha: { is: 'number', number: 0 },
      instrument_alpha: { is: 'number', number: 0 },
      part_temp_u: { is: 'quantity', quantity: { kind: 'temperature-difference', si: 0 } },
      instrument_temp_u: { is: 'quantity', quantity: { kind: 'temperature-difference', si: 0 } },
      resolution: length(1e-6),
      resolution_in_u: { is: 'word', word: 'yes' },
      repeats_u: length(1e-5),
      repeats_dof: { is: 'number', number: 7 },
    } as const
    const computed = compute(found.value, base)
    expect(computed.ok && computed.value.outputs).toMatchObject({
      uc: { quantity: { si: expect.closeTo(1e-5, 12) } },
      dof: { number: expect.closeTo(7, 9) },
    })
    const readings = { is: 'quantities', quantities: [length(0.25).quantity, length(0.25).quantity] } as const
    const refused = (inputs: Parameters<typeof compute>[1]) => compute(found.value, inputs)
    expect(refused({ ...base, readings })).toMatchObject({ ok: false, error: { code: 'repeats-twice' } })
    const { repeats_dof: _dof, ...alone } = base
    expect(refused(alone)).toMatchObject({ ok: false, error: { code: 'repeats-half' } })
    const half = { ...base, part_alpha_u: { is: 'number', number: 1 } } as const
    expect(refused(half)).toMatchObject({ ok: false, error: { code: 'expansion-half' } })
  })
})
