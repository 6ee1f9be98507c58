// A signature counts only with the PIN of the one who signs, where the crew file holds a key for them; and a PIN is
// nowhere in what is kept or said.
import { describe, expect, it } from 'vitest'
import { MISSES_ALLOWED, WAIT_AFTER_MISSES_MS } from '../../../src/core/job/signature.ts'
import { entryBlock } from '../../../src/core/sheet/entry-block.ts'
import { exampleDefs, GAS_LINES, LOCK_LINES, pinOf, Walk, WORD_LINES } from '../../helpers/example.ts'

const withKeys = exampleDefs()
const withoutKeys = exampleDefs({ crew: (text) => text.replaceAll(/^ {4}pin: .*\n/gm, '') })

function closedJob(): Walk {
  const walk = new Walk(withKeys).toVerdict().keys('1', 'KH', 'fit to run, none given', 'done')
  expect(walk.state.closed).not.toBeNull()
  return walk
}

function keyed(): Walk {
  const walk = new Walk(withKeys)
  walk.autoPin = false
  return walk
}

describe('signing with a PIN', () => {
  it('is asked after the initials, and signs on only when it fits', () => {
    const walk = keyed()
    expect(walk.key('RO')).toBe(null)
    expect(walk.state.doer).toBe(null)
    walk.key('0000')
    expect(walk.last).toMatchObject({ type: 'pin.missed', person: 'RO' })
    expect(walk.state.doer).toBe(null)
    walk.key(pinOf('RO'))
    expect(walk.last).toMatchObject({ type: 'person.signed-on', person: 'RO', signed: 'pin' })
    expect(walk.state.pinMisses).toEqual({})
  })

  it('keeps no PIN in any entry or in anything said', () => {
    const walk = keyed().keys('RO', '98765', pinOf('RO'), 'TC-401-1')
    const kept = JSON.stringify(walk.entries.slice(1)) + walk.said.join(' ')
    expect(kept).not.toContain('98765')
    expect(kept).not.toContain(pinOf('RO'))
  })

  it('is not shown back when it is keyed where initials are asked', () => {
    const walk = keyed().keys('98765')
    expect(walk.said.join(' ')).toBe('Key initials here; the PIN is asked after them.')
  })

  it('hears STOP where the PIN is asked', () => {
    const walk = keyed().keys('RO', 'stop')
    expect(walk.last.type).toBe('stop.raised')
  })

  it('waits after three wrong ones, by name, and the right one does not count until then', () => {
    const walk = keyed().keys('RO', ...Array(MISSES_ALLOWED).fill('0000'))
    expect(walk.key(pinOf('RO'))).toBe('pin-wait')
    walk.keys('RO', pinOf('RO'))
    expect(walk.state.doer).toBe(null)
    expect(walk.key('ML')).toBe(null)
    walk.key(pinOf('ML'))
    expect(walk.state.doer).toBe('ML')
    const late = keyed().keys('RO', ...Array(MISSES_ALLOWED).fill('0000'))
    late.now = { ...late.now, ms: late.now.ms + WAIT_AFTER_MISSES_MS }
    late.keys('back', 'RO', pinOf('RO'))
    expect(late.state.doer).toBe('RO')
  })

  it('cannot be waited for less by trying again meanwhile', () => {
    const walk = keyed().keys('RO', ...Array(MISSES_ALLOWED).fill('0000'))
    const { count } = walk.state.pinMisses.RO ?? { count: 0 }
    walk.keys('RO', '0000')
    expect(walk.state.pinMisses.RO?.count).toBe(count)
  })

  it('is counted on the sheet, and the third says until when no other is looked at', () => {
    const walk = keyed().keys('RO', '0000')
    const shown = () => entryBlock(withKeys, walk.state, walk.last)?.rows.map(({ text }) => text)
    expect(shown()).toEqual([
      "A PIN was keyed that is not RO's: 1 of 3 in a row; after 3 none of RO's is looked at for 5 min.",
    ])
    walk.keys('0000', '0000')
    expect(shown()?.[0]).toMatch(/RO's: 3 in a row\. No other of theirs is looked at until 06:25\./)
  })

  it('is none of the wrong ones where it can be no PIN at all, as the initials of another', () => {
    const walk = keyed().keys('RO', 'ML', '12', 'ML')
    expect(walk.state.pinMisses).toEqual({})
    expect(walk.said.at(-1)).toMatch(/^A PIN is 4 to 12 figures: this was none/)
    expect(walk.talk.ask).toMatchObject({ kind: 'pin', person: 'RO' })
  })

  it('ends a row of wrong ones also where it signs only the half of something', () => {
    const walk = keyed().keys('RO', pinOf('RO'), 'TC-401-1', 'hand over', '0000', '0000', pinOf('RO'))
    expect(walk.last).toMatchObject({ type: 'pin.fitted', person: 'RO', signed: 'pin' })
    expect(walk.state.pinMisses).toEqual({})
    expect(walk.talk.ask).toMatchObject({ kind: 'hand-over-to', fromProved: true })
    walk.bring({ do: 'pin-fitted', person: 'RO' })
    expect(walk.entries.filter((e) => e.type === 'pin.fitted')).toHaveLength(1)
  })

  it('goes on record on a closed job too, of nobody known, and three hold its person back there', () => {
    const walk = closedJob()
    const said = { do: 'doubt-instrument', instrument: 'M-3', why: 'dropped', says: 'certificate' } as const
    for (let n = 0; n < MISSES_ALLOWED; n++) expect(walk.bring({ do: 'pin-missed', person: 'KH' })).toBeNull()
    expect(walk.last).toEqual({
      type: 'pin.missed',
      person: 'KH',
      seq: walk.state.seq,
      at: walk.state.lastAt,
    })
    expect(walk.bring({ ...said, person: 'KH', proved: true })).toBe('pin-wait')
    expect(walk.bring({ ...said, person: 'PB', proved: true })).toBeNull()
    walk.wait(-60)
    expect(walk.bring({ do: 'pin-missed', person: 'PB' })).toBe('clock')
  })

  it('is not asked of who may not sign: that is told first, and the question stands', () => {
    const walk = keyed()
    expect(walk.key('TS')).toBe('trainee')
    expect(walk.talk.ask).toBeNull()
    const judged = new Walk(withKeys).toVerdict().keys('1')
    expect(judged.talk.ask).toMatchObject({ kind: 'dispose-who' })
    for (const [who, code] of [
      ['RO', 'not-lead'],
      ['XX', 'unknown-person'],
    ] as const) {
      expect(judged.key(who)).toBe(code)
      expect(judged.talk.ask).toMatchObject({ kind: 'dispose-who' })
    }
    judged.autoPin = false
    judged.keys('KH', '4')
    expect(judged.talk.ask).toMatchObject({ kind: 'dispose-why', person: 'KH' })
    expect(judged.said.at(-1)).toMatch(/^The reason needs words/)
    judged.keys('fit to run, none given')
    expect(judged.talk.ask).toMatchObject({ kind: 'pin', person: 'KH' })
  })

  it('is refused for a witness without it, at the gate itself', () => {
    const walk = keyed()
    walk.autoPin = true
    walk.keys('RO', 'TC-401-1', '', ...LOCK_LINES, ...WORD_LINES, ...GAS_LINES)
    expect(
      walk.bring({ do: 'evidence', step: 'hold_point', item: 'witness', typed: 'ML', proved: false }),
    ).toBe('pin-needed')
    expect(
      walk.bring({ do: 'evidence', step: 'hold_point', item: 'witness', typed: 'RO', proved: true }),
    ).toBe('self-witness')
    expect(
      walk.bring({ do: 'evidence', step: 'hold_point', item: 'witness', typed: 'ML', proved: true }),
    ).toBe(null)
    expect(walk.entries.find((e) => e.type === 'evidence.given' && e.item === 'witness')).toMatchObject({
      person: 'ML',
      signed: 'pin',
    })
  })

  it('is refused without it for releasing a STOP and for a disposition', () => {
    const walk = keyed().keys('RO', pinOf('RO'), 'stop', '2', 'a hiss at the valve', '?')
    expect(walk.bring({ do: 'release-stop', person: 'KH', answer: 'valve closed' })).toBe('pin-needed')
    const judged = new Walk(withKeys).toVerdict()
    expect(
      judged.bring({
        do: 'dispose',
        step: 'disposition',
        choice: 'accept',
        person: 'KH',
        proved: false,
        why: 'fine',
      }),
    ).toBe('pin-needed')
  })

  it('says in the log when somebody signed by initials alone', () => {
    const walk = new Walk(withoutKeys).keys('RO')
    expect(walk.last).toMatchObject({ type: 'person.signed-on', signed: 'initials' })
  })
})
