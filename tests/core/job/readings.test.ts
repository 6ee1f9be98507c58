// Readings: repeats, doubt, correction, going back, n/a. Nothing keyed is lost, nothing doubtful counts by itself.

import { describe, expect, it } from 'vitest'
import { lastReopenable } from '../../../src/core/job/admit-change.ts'
import { asKind, stepById } from '../../../src/core/job/definitions.ts'
import { placeResult, placesOf } from '../../../src/core/job/places.ts'
import { boreRecord } from '../../../src/core/job/verdict-record.ts'
import { AFTER_LINES, BORE_LINES, exampleDefs, noOverhauls, Walk } from '../../helpers/example.ts'

const HE_V = 'bore.head_end.vertical'
const at = (walk: Walk) => (walk.prompt.kind === 'read' ? walk.prompt.place.key : walk.prompt.kind)
const result = (walk: Walk, stepId: string, key: string) => {
  const placed = asKind(stepById(walk.engine.defs, stepId), 'read')
  const place = placesOf(placed).find((p) => p.key === key)
  if (place === undefined) throw new Error(key)
  return placeResult(placed, place, walk.state)
}
const verdict = (walk: Walk) => walk.state.verdicts.bore_judged
const seqOf = (walk: Walk, place: string, n = 0) => walk.state.readings[place]?.[n]?.seq ?? -1

describe('repeats', () => {
  it('are done with two that agree within 0.0003 in', () => {
    const walk = new Walk().toBore().keys('9.5033', '9.5036')
    expect(at(walk)).toBe('bore.head_end.horizontal')
    expect(result(walk, 'bore', HE_V).state).toBe('settled')
    expect(result(walk, 'bore', HE_V).si).toBeCloseTo(9.50345 * 0.0254, 12)
  })

  it('ask a third when two do not, and take the middle one', () => {
    const walk = new Walk().toBore().keys('9.5033', '9.5037')
    expect(at(walk)).toBe(HE_V)
    walk.keys('9.5036')
    expect(at(walk)).toBe('bore.head_end.horizontal')
    expect(result(walk, 'bore', HE_V).si).toBeCloseTo(9.5036 * 0.0254, 12)
  })

  it('stop after four that do not agree, and the verdict is HOLD and says where', () => {
    const walk = new Walk().toBore().keys('9.5033', '9.5043', '9.5053', '9.5063')
    expect(at(walk)).toBe('bore.head_end.horizontal')
    expect(result(walk, 'bore', HE_V)).toMatchObject({ state: 'unsettled', si: null })
    walk.keys(...BORE_LINES.slice(2), ...AFTER_LINES)
    expect(verdict(walk)?.verdict.result.verdict).toBe('HOLD')
    expect(verdict(walk)?.verdict.result.holds.join(' ')).toMatch(
      /head_end, vertical \(the repeats do not agree\)/,
    )
  })
})

describe('a doubtful reading', () => {
  it.each(['9.489', '9.561'])(
    '%s, more than 0.010 under or 0.060 over nominal, is asked about and counts for nothing',
    (typed) => {
      const walk = new Walk().toBore().keys(typed)
      expect(walk.last).toMatchObject({
        type: 'reading.doubted',
        typed,
        why: expect.stringMatching(/nominal 9\.500 in/),
      })
      expect(walk.state.readings[HE_V]).toBeUndefined()
      expect(walk.bring({ do: 'read', place: HE_V, typed: '9.5033' })).toBe('not-asked')
    },
  )

  it.each(['9.490', '9.560'])('%s, on the edge of the window, is not doubted', (typed) => {
    // Where no overhaul of before has anything to say.
    expect(new Walk(exampleDefs({ machine: noOverhauls })).toBore().keys(typed).last.type).toBe(
      'reading.taken',
    )
  })

  it.each([
    ['1', 'again'],
    ['2', 'mistyped'],
  ])('%s measures again or keys again, and the figure stays on record only', (line, choice) => {
    const walk = new Walk().toBore().keys('9.60', line)
    expect(walk.last).toMatchObject({ type: 'doubt.settled', choice })
    expect(walk.state.readings[HE_V]).toBeUndefined()
    expect(at(walk)).toBe(HE_V)
  })

  it('3 keeps it only with a reason in words', () => {
    const walk = new Walk().toBore().keys('9.60', '3')
    expect(walk.key('1')).toBe('no-words')
    expect(walk.key('3')).toBeNull()
    expect(walk.key('...')).toBe('no-words')
    expect(walk.state.readings[HE_V]).toBeUndefined()
    walk.keys('3', 'bored out last year')
    expect(walk.state.readings[HE_V]).toMatchObject([{ typed: '9.60', keptBecause: 'bored out last year' }])
  })

  it.each(['', 'y', '4', '9.5033', '33'])('takes nothing else, like %j', (line) => {
    const walk = new Walk().toBore().keys('9.60')
    walk.key(line)
    expect(walk.last.type).toBe('reading.doubted')
  })

  it.each(['', 'nan', '1e999', '0x10', '--', '9,503', '-9.5', '9.503 mmm', '9.503 psi'])(
    '%j is no reading at all',
    (typed) => {
      const walk = new Walk().toBore()
      const before = walk.entries.length
      expect(walk.key(typed)).not.toBeNull()
      expect(walk.entries).toHaveLength(before)
    },
  )
})

describe('a correction', () => {
  it('adds, points back, and voids verdict and disposition by name, which are given anew', () => {
    const walk = new Walk().toVerdict().keys('1', 'KH', 'read again after 4000 h')
    expect(walk.prompt).toMatchObject({ kind: 'tell', step: { id: 'tidy' } })
    const old = seqOf(walk, 'bore.centre.vertical')
    expect(walk.bring({ do: 'correct', of: old, typed: '9.5070', why: 'read the wrong line' })).toBeNull()
    expect(walk.entries.slice(-2)).toMatchObject([
      { type: 'reading.corrected', of: old, typed: '9.5070', voids: ['bore_judged', 'disposition'] },
      { type: 'verdict.given' },
    ])
    expect(walk.state.readings['bore.centre.vertical']).toMatchObject([
      { typed: '9.5068', correctedBy: walk.entries.at(-2)?.seq },
      { typed: '9.5069', correctedBy: null },
      { typed: '9.5070', corrects: old },
    ])
    expect(verdict(walk)).toMatchObject({ void: false, seq: walk.last.seq })
    expect(verdict(walk)?.verdict.readings).not.toContain(old)
    expect(walk.prompt).toMatchObject({ kind: 'decide' })
  })

  it('warns by name of what it voids in the first question', () => {
    const walk = new Walk().toVerdict().keys('1', 'KH', 'read again after 4000 h')
    walk.keys('correct', 'sheet 7.1', '1')
    expect(walk.warned).toEqual(['This would make void: Bore judged; What is to be done, a lead decides.'])
  })

  it('of a corrected reading is refused, and so is one of no reading', () => {
    const walk = new Walk().toBore().keys('9.5033')
    const old = seqOf(walk, HE_V)
    walk.bring({ do: 'correct', of: old, typed: '9.5035', why: 'misread' })
    expect(walk.bring({ do: 'correct', of: old, typed: '9.5036', why: 'misread' })).toBe('corrected')
    expect(walk.bring({ do: 'correct', of: 0, typed: '9.5036', why: 'misread' })).toBe('no-reading')
    expect(
      walk.bring({ do: 'correct', of: seqOf(walk, HE_V, 1), typed: '9.5036', why: 'misread' }),
    ).toBeNull()
    expect(result(walk, 'bore', HE_V).readings.map((r) => r.typed)).toEqual(['9.5036'])
  })

  it.each([
    ['9.60', 'it is so', 'implausible'],
    ['9,503', 'it is so', 'comma'],
    ['', 'it is so', 'empty'],
    ['9.5035', '', 'no-words'],
    ['9.5035', '1', 'no-words'],
  ])('to %j because %j is refused: %s', (typed, why, code) => {
    const walk = new Walk().toBore().keys('9.5033')
    expect(walk.bring({ do: 'correct', of: seqOf(walk, HE_V), typed, why })).toBe(code)
    expect(walk.state.readings[HE_V]).toMatchObject([{ correctedBy: null }])
  })

  it('that makes repeats part asks for another behind the gate', () => {
    const walk = new Walk().toVerdict()
    walk.bring({ do: 'correct', of: seqOf(walk, HE_V), typed: '9.5050', why: 'misread' })
    expect(verdict(walk)?.void).toBe(true)
    expect(at(walk)).toBe(HE_V)
    walk.wait(31).bring({ do: 'tick' })
    expect(at(walk)).toBe('clear')
  })
})

describe('back', () => {
  it('from a reading goes to the reading before', () => {
    const walk = new Walk().toBore().keys('9.5033', 'back')
    expect(walk.talk.ask).toMatchObject({ kind: 'correct-why', of: seqOf(walk, HE_V) })
    walk.keys('misread', '9.5035')
    expect(result(walk, 'bore', HE_V).readings.map((r) => r.typed)).toEqual(['9.5035'])
  })

  it('to an answer says what would be void, and voids it', () => {
    const walk = new Walk().toVerdict()
    expect(lastReopenable(walk.engine.defs, walk.state)?.id).toBe('jacket_side')
    expect(walk.bring({ do: 'reopen', step: 'strip', why: '' })).toBe('no-words')
    expect(walk.bring({ do: 'reopen', step: 'strip', why: 'it was none' })).toBeNull()
    expect(walk.last).toMatchObject({ type: 'step.reopened', voids: ['bore_judged'] })
    expect(walk.prompt).toMatchObject({ kind: 'observe', step: { id: 'strip' } })
  })

  it('over the strip decides its branch anew: gone leaves its readings out', () => {
    const walk = new Walk().toVerdict()
    expect(boreRecord(verdict(walk)?.verdict)?.inputs.datum).toMatchObject({ from: 'unswept strip' })
    walk.bring({ do: 'reopen', step: 'strip', why: 'it was none' })
    walk.keys('3')
    expect(verdict(walk)).toMatchObject({ void: false })
    expect(boreRecord(verdict(walk)?.verdict)?.inputs.datum).toMatchObject({ from: 'as-left record' })
    const strip = Object.entries(walk.state.readings).filter(([k]) => k.startsWith('strip_diameter'))
    const seqs = strip.flatMap(([, l]) => l.map((r) => r.seq))
    expect(seqs.some((s) => verdict(walk)?.verdict.readings.includes(s))).toBe(false)
  })

  it('leaves a question as it was', () => {
    const walk = new Walk().toBore().keys('9.5033', 'correct', '1')
    const before = walk.entries.length
    walk.keys('back')
    expect(walk.talk.ask).toBeNull()
    expect(walk.entries).toHaveLength(before)
  })
})

describe('n/a', () => {
  it('needs a reason, is on record, and turns the verdict to HOLD', () => {
    const walk = new Walk().toBore().keys('n/a', '1')
    expect(walk.state.notApplicable).toEqual({})
    walk.keys('n/a', 'a lamp is in the way', ...BORE_LINES.slice(2), ...AFTER_LINES)
    expect(verdict(walk)?.verdict.result).toMatchObject({ verdict: 'HOLD' })
    expect(verdict(walk)?.verdict.result.holds.join(' ')).toMatch(
      /head_end, vertical \(entered as not applicable\)/,
    )
  })

  it('is taken at a doubt for the place doubted, and nowhere else', () => {
    const walk = new Walk().toBore().keys('9.60')
    expect(walk.bring({ do: 'not-applicable', place: 'bore.centre.vertical', why: 'out of reach' })).toBe(
      'not-asked',
    )
    expect(walk.bring({ do: 'not-applicable', place: HE_V, why: 'out of reach' })).toBeNull()
    expect(walk.state.doubt).toBeNull()
    expect(at(walk)).toBe('bore.head_end.horizontal')
  })
})

describe('an instrument', () => {
  it('whose calibration lapses while it measures is put back, and its readings with another judge to HOLD', () => {
    const another = (t: string) =>
      t
        .replace('due: 2026-09-30', 'due: 2026-03-14')
        .replace('due: 2025-11-30', 'due: 2026-11-30')
        .replace('within: 0.001 in', 'within: 0.002 in')
    const walk = new Walk(exampleDefs({ instruments: another })).toBore().keys(...BORE_LINES.slice(0, 4))
    walk.wait(24 * 60).keys('9.5068')
    walk.keys('ALL OUT', '20.9', '0', '0', '20.9', '0', '0', 'ML')
    expect(walk.prompt).toMatchObject({ kind: 'read', instrument: 'M-3' })
    walk.keys('9.5069')
    expect(walk.last).toMatchObject({ type: 'instrument.put-back', seat: 'gauge' })
    // M-1 reads to three places.
    const rest = [...BORE_LINES.slice(6), ...AFTER_LINES].map((line) => line.replace(/^(9\.\d{3})\d$/, '$1'))
    walk.keys('2', '9.507', '9.507', ...rest)
    expect(verdict(walk)?.verdict.result.verdict).toBe('HOLD')
    expect(verdict(walk)?.verdict.result.holds.join(' ')).toMatch(/more than one instrument: M-1, M-3/)
  })
})
