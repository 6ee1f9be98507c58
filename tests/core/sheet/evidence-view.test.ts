// What a hold point shows of evidence that no longer stands.
import { describe, expect, it } from 'vitest'
import { entryBlock } from '../../../src/core/sheet/entry-block.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { GATE_LINES, Walk } from '../../helpers/example.ts'

function rows(walk: Walk): string[] {
  const view = promptView(walk.engine.defs, walk.state, walk.talk, {
    width: 79,
    record: 'EXAMPLE',
    ascii: true,
  })
  return view.rows.map((r) => r.text)
}

describe('evidence that fell', () => {
  it('is shown as void, the item asked for now among it, when the hold point is asked again whole', () => {
    const walk = new Walk().toGate().keys('L-101', 'L-102')
    walk.bring({ do: 'take-up' })
    walk.keys('RO', 'TC-401-1')
    const shown = rows(walk).join('\n')
    expect(shown).toContain('[void] lock at main driver breaker, E-1, lock at barring motor breaker, E-2')
    expect(shown).toContain('[ ] lock at main driver breaker, E-1')
  })

  it('is told as taken back at that line alone, not at those that were never shown', () => {
    const walk = new Walk().toGate().keys('L-101', 'L-102', 'back', 'yes')
    expect(rows(walk)[0]).toBe('Asked again: what was keyed is taken back.')
    walk.keys('L-102')
    expect(rows(walk).join(' ')).not.toContain('Asked again')
    expect(rows(walk)[0]).toBe('[x] 2 of 17 shown')
  })

  it('is told at each line that fell with it, and with its own cause', () => {
    const walk = new Walk()
      .toGate()
      .keys('L-101', 'L-102', 'stop', '8', 'slipped', '?', 'release', 'KH', 'put right')
    expect(rows(walk)[0]).toMatch(/^Asked again: /)
    const [why] = rows(walk)
    walk.keys('L-101', 'back', 'yes', 'L-101')
    expect(rows(walk)[0]).toBe(why)
    walk.keys('L-102')
    expect(rows(walk).join(' ')).not.toContain('Asked again')
  })

  it('is named while people are called out, with what puts a slip right where a gas failed', () => {
    const walk = new Walk().throughGate().keys('1').wait(31)
    walk.bring({ do: 'tick' })
    expect(rows(walk).join('\n')).toMatch(/^After that again: oxygen where people breathe, /)
    const failed = new Walk().toGate().keys(...GATE_LINES.slice(0, 11), '2.09')
    expect(rows(failed)).toEqual([
      'After that the gas is read anew; a slip at the keys is put right by it too.',
    ])
  })

  it('is not said twice when it was just taken back and is asked for', () => {
    const walk = new Walk().toGate().keys('L-101', 'L-102', 'back', 'yes')
    expect(rows(walk).filter((text) => text.includes('E-2'))).toEqual([
      '[ ] lock at barring motor breaker, E-2',
    ])
  })
})

describe('oxygen inside an opening', () => {
  const inside = (oxygen: string) => {
    const walk = new Walk().toGate()
    const lines = GATE_LINES.slice(0, -1)
    walk.keys(...lines.slice(0, -3))
    return walk.keys(oxygen)
  }
  const told = (walk: Walk) =>
    (entryBlock(walk.engine.defs, walk.state, walk.last)?.rows ?? []).map((r) => r.text).join('\n')

  it.each(['18', '3.0'])('at %s passes its limit, and it is said that nobody breathes there', (oxygen) => {
    const walk = inside(oxygen)
    expect(walk.last).toMatchObject({ type: 'evidence.given', item: 'oxygen_inside' })
    expect(told(walk)).toMatch(/20\.9 %vol of air: something drives the air out/)
    expect(told(walk)).toMatch(/NOBODY BREATHES THERE OR PUTS A HEAD IN; whoever is in comes out/)
  })

  it('at 20.9 says nothing, and a meter that is blind at 3 says what to do', () => {
    expect(told(inside('20.9'))).not.toMatch(/NOBODY/)
    const walk = inside('3.0').keys('0')
    const failed = walk.entries.findLast((e) => e.type === 'evidence.failed')
    if (failed === undefined) throw new Error('not failed')
    const rows = entryBlock(walk.engine.defs, walk.state, failed)?.rows.map((r) => r.text) ?? []
    expect(rows.join(' ')).toMatch(/needs .* of oxygen to see flammables.*air it, then back: oxygen anew/)
  })
})
