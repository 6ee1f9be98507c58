// What the load question asks of instruments and records, before anything is read.
import { describe, expect, it } from 'vitest'
import { kitOf } from '../../../src/core/kit/kit.ts'
import { type Change, pocketDefs } from '../../helpers/pocket-job.ts'

const kit = (change: Change = {}) => kitOf(pocketDefs('rg-27', change), '2026-05-18')
const unfit = (change: Change, id: string) =>
  kit(change).seats.flatMap((seat) =>
    seat.unfit.filter((one) => one.id === id).map(({ why }) => JSON.stringify(why)),
  )

describe('the kit of a load question', () => {
  it('lacks nothing on either machine', () => {
    expect(kit().verdictHolds).toEqual([])
    expect(kit().holds).toEqual([])
    expect(kitOf(pocketDefs('tc-401'), '2026-03-14').verdictHolds).toEqual([])
  })

  it.each([
    ['a figure of a stage', '      k: 1.24\n', 'Stage 1: the exponent k is missing'],
    [
      'the mass of a cylinder',
      '          reciprocating_mass: 230 kg\n',
      'Stage 1, cylinder throw 1: the reciprocating mass',
    ],
    ['the site’s figure for loads', '    loads_agree_within: 8 %\n', 'site figure for agreement of loads'],
    ['the least step', '    least_step: 90 deg\n', 'the least step that the hand-wheel is set to'],
  ])('says before the job that %s is not on record', (_what, part, why) => {
    const { verdictHolds } = kit({ machine: (text) => text.replace(part, '') })
    expect(verdictHolds.join('\n')).toMatch(/^Step 14 comes to HOLD whatever is read: /)
    expect(verdictHolds.join('\n')).toContain(why)
  })

  it('says that a record without the section answers no load question', () => {
    const bare = kit({
      machine: (text) => text.replace(/whole_compressor:\n[\s\S]*?\noverhauls:/, 'overhauls:'),
    })
    expect(bare.verdictHolds).toEqual([expect.stringContaining('nothing of the whole compressor')])
  })
})

describe('an instrument that cannot do it is named', () => {
  it('a power meter further off than the loads may be apart', () => {
    const why = unfit({ instruments: (text) => text.replace('expanded: 3 kW', 'expanded: 30 kW') }, 'B-34')
    expect(why.join(' ')).toContain('have to agree within that')
  })

  it('one whose error nobody stated', () => {
    const bare = (text: string) => text.replace(/( {4}unit: kW\n.*\n.*\n) {4}uncertainty:\n.*\n/, '$1')
    expect(unfit({ instruments: bare }, 'B-34').join(' ')).toContain('nobody has stated')
  })

  it('an angle gauge that does not reach the turns of the wheel, or shows steps coarser than its own', () => {
    const short = (text: string) => text.replace('to: 9999 deg', 'to: 360 deg')
    expect(unfit({ instruments: short }, 'B-33').join(' ')).toContain('the hand-wheel makes 24 turns')
    const fine = (text: string) => text.replace('least_step: 90 deg', 'least_step: 0.5 deg')
    expect(unfit({ machine: fine }, 'B-33').join(' ')).toContain('set in steps of 0.5 deg')
  })
})
