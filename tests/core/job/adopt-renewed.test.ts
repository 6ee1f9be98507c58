// What was read before a part was made new or cut is not what went back; that it was cannot be denied; the day and the hours of an overhaul.
import { describe, expect, it } from 'vitest'
import { leftFigures, notSaidRenewed } from '../../../src/core/job/adopt.ts'
import { renewedByLog, renewedWith } from '../../../src/core/job/renewed-parts.ts'
import { workDay } from '../../../src/core/job/work-day.ts'
import { Walk } from '../../helpers/example.ts'

describe('a bore that a lead had cut', () => {
  const cut = () => new Walk().toVerdict().keys('2', 'KH', 'hone it', '')

  it('is told from the decision, by its entry', () => {
    const walk = cut()
    const [one] = renewedByLog(walk.engine.defs, walk.state)
    expect(one).toMatchObject({ parts: ['bore', 'liner'], choice: 'rework', person: 'KH' })
    expect(walk.entries[one?.seq ?? 0]?.type).toBe('disposition.set')
    expect(renewedByLog(new Walk().toVerdict().engine.defs, new Walk().toVerdict().state)).toEqual([])
  })

  it('takes the ridge and every other figure of the bore along, and none of the rod', () => {
    const walk = cut()
    const renewed = renewedByLog(walk.engine.defs, walk.state)
    expect(leftFigures(walk.engine.defs, walk.state).figures).toEqual([])
    for (const of of ['ridge at the end of ring travel', 'piston running clearance', 'counterbore diameter'])
      expect(renewedWith(renewed, of)).toMatchObject({ choice: 'rework' })
    expect(renewedWith(renewed, 'unworn rod diameter')).toBeNull()
  })
})

describe('the day of an overhaul', () => {
  it('is that of its work, and no remark moves it', () => {
    const walk = new Walk().toVerdict().keys('1', 'KH', 'read again, none given', '')
    walk.now = { ...walk.now, ms: walk.now.ms + 250 * 24 * 3_600_000 }
    expect(walk.bring({ do: 'remark', text: 'seen', person: 'KH', proved: true })).toBeNull()
    expect(walk.entries.at(-1)?.at.slice(0, 7)).toBe('2026-11')
    expect(workDay(walk.entries)).toBe('2026-03-14')
  })

  it('is not that of a decision at the desk weeks later', () => {
    const walk = new Walk().toVerdict()
    walk.now = { ...walk.now, ms: walk.now.ms + 30 * 24 * 3_600_000 }
    walk.keys('1', 'KH', 'read again, none given')
    expect(workDay(walk.entries)).toBe('2026-03-14')
  })
})

describe('that it was made new or cut', () => {
  it('is not denied, nor passed over by naming another part', () => {
    // A figure is left to adopt, so that what is refused is the denial alone.
    for (const renewed of [[], ['rings', 'rod']] as const) {
      const walk = new Walk().toVerdict().keys('1', 'KH', 'read again, none given', '')
      const { dispositions } = walk.state
      const reworked = Object.fromEntries(
        Object.entries(dispositions).map(([id, d]) => [id, { ...d, choice: 'rework' }]),
      )
      walk.state = { ...walk.state, dispositions: reworked }
      expect(notSaidRenewed(walk.engine.defs, walk.state, [...renewed])).toMatch(
        /^By entry \d+ KH decided rework on Bore judged, so the bore or liner was made new or cut: name it, or nothing is adopted\.$/,
      )
      expect(notSaidRenewed(walk.engine.defs, walk.state, ['bore'])).toBeNull()
      expect(notSaidRenewed(walk.engine.defs, walk.state, ['liner'])).toBeNull()
    }
  })
})
