// Small jobs are proved (the shipped ones in shipped-*.test.ts); ones with a way past a gate, and engines broken on purpose, are refuted with that way shown.
import { describe, expect, it } from 'vitest'
import { prove } from '../../../src/core/proof/prove.ts'
import { gate, NO_START, readOne, smallDefs, TWO_GATES, tell, WITNESS } from '../../helpers/small-job.ts'

describe('small jobs', () => {
  it('with a gate whose own tests stand behind another are proved', { timeout: 120_000 }, () => {
    expect(prove(smallDefs(TWO_GATES))).toMatchObject({ is: 'proved' })
  })

  it('with rules over figures are searched with the rule true, false and unknown', {
    timeout: 120_000,
  }, () => {
    const rule = (unknown: string) =>
      smallDefs([
        gate('hold', ['start'], [NO_START, WITNESS]),
        readOne('size', { exposes: ['start'] }),
        tell('more', { exposes: ['start'], when: { rule: 'size > length("9.52 in")', unknown } }),
        tell('end'),
      ])
    for (const unknown of ['do', 'skip', 'hold']) expect(prove(rule(unknown))).toMatchObject({ is: 'proved' })
    // A gate that is only put up where a figure says so: on the other branch nothing holds the hazard back.
    const branch = smallDefs([
      readOne('size'),
      gate('hold', ['start'], [NO_START, WITNESS], {
        when: { rule: 'size > length("9.52 in")', unknown: 'skip' },
      }),
      tell('in', { exposes: ['start'] }),
    ])
    // The engine asks for the gate all the same as soon as a step needs it: proved on every branch.
    expect(prove(branch)).toMatchObject({ is: 'proved' })
  })

  it('that are larger than the bound are not proved, and the bound is named', () => {
    expect(prove(smallDefs(TWO_GATES), { mostStates: 100 })).toMatchObject({
      is: 'not-proved',
      bound: '100 states',
    })
  })
})
