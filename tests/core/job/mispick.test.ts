// A wrong pick goes back plainly while nothing rests on it: on record, nobody and nothing doubted, and the list comes again.
import { describe, expect, it } from 'vitest'
import { gateState } from '../../../src/core/job/gate.ts'
import { standing } from '../../../src/core/job/state.ts'
import { entryBlocks } from '../../../src/core/sheet/shown-block.ts'
import { LOCK_LINES, Walk, WORD_LINES } from '../../helpers/example.ts'
import { violations } from './invariants.ts'
import { momentOf } from './schedules.ts'

const STYLE = { width: 79, record: 'EXAMPLE' as const, ascii: true }
const given = (walk: Walk) => Object.keys(gateState(walk.state, 'hold_point').given)
/** G-9 picked where G-7 was meant. */
const wrongMeter = () => new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES.slice(0, 3), '2')
/** M-3 just picked, at the set-check before. */
const atSetCheck = () => new Walk().throughGate().keys('1', '1', '71.2', '70.4', '1')

describe('a wrong pick', () => {
  it('of a meter goes back by back, and nothing that was shown falls', () => {
    const walk = wrongMeter()
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'bump' } })
    const before = given(walk)
    expect(walk.key('back')).toBeNull()
    expect(walk.last).toMatchObject({
      type: 'instrument.put-back',
      seat: 'meter',
      mispicked: 'G-9',
      by: 'RO',
    })
    expect(walk.prompt).toMatchObject({ kind: 'pick', seat: { id: 'meter' } })
    expect(given(walk)).toEqual(before)
    expect(walk.state.doubted).toEqual({})
    // It stays in the list, and is offered again like any other.
    expect(walk.key('2')).toBeNull()
    expect(walk.state.seats.meter).toBe('G-9')
    expect(violations(momentOf(walk))).toEqual([])
  })

  it('says on record what it was, without a word of doubt', () => {
    const walk = wrongMeter().keys('back')
    const rows = entryBlocks(walk.engine.defs, walk.state, walk.last, STYLE).flatMap((one) => one.rows)
    expect(rows.map(({ text }) => text).join(' ')).toBe('G-9 put back: picked by mistake, had read nothing.')
    expect(rows.some(({ tone }) => tone === 'caution')).toBe(false)
  })

  it('of a gauge goes back too, also with what was answered before it', () => {
    const walk = atSetCheck()
    expect(walk.prompt).toMatchObject({ kind: 'read', instrument: 'M-3' })
    walk.keys('back')
    expect(walk.prompt).toMatchObject({ kind: 'pick', seat: { id: 'gauge' } })
    expect(standing(walk.state, 'gauge_temp_before.body')).toHaveLength(1)
    // There back goes to what was answered before.
    walk.keys('back')
    expect(walk.talk.ask?.kind).toBe('correct-why')
  })

  it('is offered by the word instrument as well, which says first what it does', () => {
    const walk = atSetCheck().keys('instrument')
    expect(walk.said.join('\n')).toMatch(
      /puts on record that an instrument is out of calibration: all that it read on this job falls.*back leaves it/,
    )
    const last = walk.said.at(-1) ?? ''
    expect(last).toMatch(/^\d {2}M-3 was only picked by mistake: it goes back, nothing is doubted$/)
    walk.keys(last.charAt(0))
    expect(walk.last).toMatchObject({ type: 'instrument.put-back', mispicked: 'M-3' })
    expect(walk.prompt.kind).toBe('pick')
    const told = walk.said.length
    walk.keys('instrument')
    expect(walk.said.slice(told).join('\n')).not.toMatch(/M-3/)
  })
})

describe('what was used is no wrong pick any more', () => {
  it('once it has read something, whatever became of that', () => {
    const failed = wrongMeter().keys('METER ANSWERED', '18.0', 'ALL OUT')
    expect(failed.entries.map(({ type }) => type)).toContain('evidence.failed')
    expect(failed.bring({ do: 'put-back', seat: 'meter' })).toBe('in-use')
    const doubted = atSetCheck().keys('9.5500', '1')
    expect(standing(doubted.state, 'set_before.standard')).toEqual([])
    expect(doubted.bring({ do: 'put-back', seat: 'gauge' })).toBe('in-use')
    doubted.keys('back')
    expect(doubted.state.seats.gauge).toBe('M-3')
    expect(doubted.said.join('\n')).toContain('taken by the word instrument, not by back')
    expect(doubted.keys('back', 'instrument').said.at(-1)).not.toContain('by mistake')
  })

  it('nor while words that were said of it stand: those go back first', () => {
    const walk = wrongMeter().keys('METER ANSWERED')
    expect(walk.bring({ do: 'put-back', seat: 'meter' })).toBe('in-use')
    walk.keys('back', '1')
    expect(given(walk)).not.toContain('bump')
    walk.keys('back')
    expect(walk.last).toMatchObject({ type: 'instrument.put-back', mispicked: 'G-9' })
  })

  it('nor where it is not what is asked with, or under STOP', () => {
    expect(atSetCheck().bring({ do: 'put-back', seat: 'meter' })).toBe('not-asked')
    const stopped = wrongMeter().keys('stop')
    expect(stopped.bring({ do: 'put-back', seat: 'meter' })).toBe('stopped')
    expect(stopped.state.seats.meter).toBe('G-9')
  })
})
