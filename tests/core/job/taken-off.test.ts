// Locks and blinds that come off: each by its number and by whose hand, those of pipes before gas and those of what turns last.
import { describe, expect, it } from 'vitest'
import { gatesOf } from '../../../src/core/job/gate.ts'
import { keyLabel } from '../../../src/core/job/item-label.ts'
import { hanging, offLines } from '../../../src/core/job/locks-on.ts'
import { makeSafeLines } from '../../../src/core/talk/make-safe.ts'
import { Walk } from '../../helpers/example.ts'
import { gate, smallDefs, tell, WITNESS, withValve } from '../../helpers/small-job.ts'
import { changed, takenIn } from '../../helpers/taken-in.ts'

const BLIND = { kind: 'numbers', of: 'blind', per: 'once' }
const defs = withValve(
  smallDefs([
    gate(
      'hung',
      ['start'],
      [
        { id: 'locks', kind: 'locks', notes: 'lock', ask: 'Lock.' },
        { id: 'blind', notes: 'blind', ask: 'Blind.', ...BLIND },
        WITNESS,
      ],
    ),
    tell('work', { exposes: ['start'] }),
    gate(
      'gas',
      ['bad_air'],
      [
        { id: 'blind_gone', same_as: 'blind', taken_off: true, ask: 'Gone?', ...BLIND },
        { id: 'pipes', kind: 'locks', same_as: 'lock', taken_off: 'before_gas', ask: 'By its owner.' },
        WITNESS,
      ],
    ),
    tell('let_in', { exposes: ['bad_air'] }),
    gate(
      'go',
      ['fall'],
      [{ id: 'driver', kind: 'locks', same_as: 'lock', taken_off: 'before_start', ask: 'Last.' }, WITNESS],
    ),
    tell('run', { exposes: ['fall'] }),
  ]),
)

const hung = () => new Walk(defs).keys('RO', 'TC-401-1', 'L-1', 'L-2', 'L-3', 'B-1', 'ML', '')
const item = ({ prompt }: Walk) => (prompt.kind === 'evidence' ? prompt.item.key : prompt.kind)

describe('what comes off', () => {
  it('is asked with the initials of somebody on the job, and is held against what hung', () => {
    const walk = hung()
    expect(walk.key('B-1')).toBe('off-by')
    expect(walk.key('B-1 ZZ')).toBe('off-by')
    expect(walk.key('B-1 KH')).toBe('off-by')
    expect(walk.said.at(-1)).toContain('B-1 RO')
    walk.key('b-1 ro')
    expect(walk.last).toMatchObject({
      type: 'evidence.given',
      item: 'blind_gone',
      shown: 'B-1',
      off_by: 'RO',
    })
    walk.key('L-9 RO')
    expect(walk.last).toMatchObject({ type: 'evidence.failed', unlike: 'lock.suction' })
  })

  it('is of the pipes first, and of what turns the machine last, the last on first off', () => {
    const walk = hung().keys('B-1 RO')
    expect(item(walk)).toBe('pipes.suction')
    walk.keys('L-3 RO', 'ML', '')
    expect(item(walk)).toBe('driver.barring')
    walk.keys('L-2 RO')
    expect(item(walk)).toBe('driver.breaker')
    walk.keys('L-1 RO', 'ML')
    expect(walk.prompt).toMatchObject({ kind: 'tell', step: { id: 'run' } })
  })

  it('hangs nowhere any more, and is told with whose hand it was', () => {
    const walk = hung().keys('B-1 RO', 'L-3 RO')
    const found = hanging(defs, walk.state)
    expect(found.on.map(({ shown }) => shown)).toEqual(['L-1', 'L-2'])
    expect(offLines(defs, found).join('\n')).toMatch(/B-1, 2026-03-14 \d\d:\d\d by RO, at 3 gas/)
    expect(makeSafeLines(defs, walk.state).filter((line) => /L-3/.test(line))).toHaveLength(0)
  })

  it('stays off by the record, and keeps its name, where another record has it come off last', () => {
    const walk = hung().keys('B-1 RO', 'L-3 RO', 'leave')
    const { site } = defs.machine
    const isolation_points = site.isolation_points.map((one) => ({
      ...one,
      comes_off: one.id === 'suction' ? ('before_start' as const) : ('before_gas' as const),
    }))
    const after = takenIn(walk, changed(walk, { site: { ...site, isolation_points } }))
    const found = hanging(after.engine.defs, after.state)
    expect(found.on.map(({ shown }) => shown)).toEqual(['L-1', 'L-2'])
    const gas = gatesOf(defs).find(({ id }) => id === 'gas')
    if (gas === undefined) throw new Error('no gate gas')
    expect(keyLabel(after.engine.defs, gas, 'pipes.suction')).toMatch(/suction block valve, V-11$/)
    after.bring({ do: 'take-up' })
    after.keys('RO', 'TC-401-1', 'B-1 RO')
    expect(item(after)).toBe('pipes.barring')
  })
})
