// From the readings on record to a verdict: what is missing, out, contradictory or without a source holds the job.

import { describe, expect, it } from 'vitest'
import type { FileCopy } from '../../../src/core/job/entries.ts'
import { limitsFor } from '../../../src/core/job/limits.ts'
import { boreRecord } from '../../../src/core/job/verdict-record.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { becauseRows } from '../../../src/core/sheet/verdict-block.ts'
import { AFTER_LINES, BORE_LINES, exampleDefs, noOverhauls, Walk } from '../../helpers/example.ts'

type Change = Partial<Record<FileCopy['role'], (text: string) => string>>

const swap = (from: string | RegExp, to: string) => (text: string) => {
  const changed = text.replace(from, to)
  if (changed === text) throw new Error(`nothing to change: ${from}`)
  return changed
}
const judged = (walk: Walk) => {
  const record = boreRecord(walk.state.verdicts.bore_judged?.verdict)
  if (record === undefined) throw new Error(`not judged, at ${walk.prompt.kind}`)
  return record
}
const verdictOf = (change: Change = {}) => judged(new Walk(exampleDefs(change)).toVerdict())
const holds = (record: ReturnType<typeof judged>) => record.result.holds.join(' ')
const inches = (m: number | undefined) => (m ?? Number.NaN) / 0.0254
const ALL = ['out-of-round', 'taper', 'spread', 'largest-diameter'] as const

describe('HOLD', () => {
  it.each([
    [
      'before',
      ['1', '1', '71.2', '70.4', '1', '9.5003', '3', 'it stays so'],
      AFTER_LINES,
      /set-check before the readings is out/,
    ],
    [
      'after',
      ['1', '1', '71.2', '70.4', '1', '9.5000'],
      [...AFTER_LINES.slice(0, -1), '9.4997'],
      /set-check after the readings is out/,
    ],
    [
      'before and after apart',
      ['1', '1', '71.2', '70.4', '1', '9.5002'],
      [...AFTER_LINES.slice(0, -1), '9.4999'],
      /the instrument moved/,
    ],
  ])('with the set-check out %s', (_when, first, after, why) => {
    const walk = new Walk().throughGate().keys(...first, ...BORE_LINES, ...after)
    expect(judged(walk).result.verdict).toBe('HOLD')
    expect(holds(judged(walk))).toMatch(why)
  })

  it.each([
    ['part_temp_before', 2],
    ['gauge_temp_before', 3],
  ])('with %s not taken', (_step, index) => {
    const lines: string[][] = [['1'], ['1'], ['71.2'], ['70.4'], ['1'], ['9.5000']]
    lines[index] = ['n/a', 'thermometer broke']
    const walk = new Walk().throughGate().keys(...lines.flat(), ...BORE_LINES, ...AFTER_LINES)
    expect(judged(walk).result.verdict).toBe('HOLD')
    expect(holds(judged(walk))).toMatch(/temperature/)
  })

  it('with the temperature after not taken: known only before is not known', () => {
    const after = [...AFTER_LINES.slice(0, 9), 'n/a', 'thermometer broke', ...AFTER_LINES.slice(10)]
    const walk = new Walk().toBore().keys(...BORE_LINES, ...after)
    expect(judged(walk).inputs.temperaturesKnown).toBe(false)
    expect(judged(walk).result.verdict).toBe('HOLD')
  })

  it('with the set-check after not taken', () => {
    const walk = new Walk()
      .toBore()
      .keys(...BORE_LINES, ...AFTER_LINES.slice(0, -1), 'n/a', 'the ring is lost')
    expect(judged(walk).inputs.setCheck.after).toBeNull()
    expect(judged(walk).result.verdict).toBe('HOLD')
  })

  it('with a set-check made on another gauge than the one that measured', () => {
    const walk = new Walk().toVerdict()
    const readings = Object.fromEntries(
      Object.entries(walk.state.readings).map(([k, list]) => [
        k,
        k.startsWith('set_before') ? list.map((r) => ({ ...r, instrument: 'M-1' })) : list,
      ]),
    )
    walk.state = { ...walk.state, readings }
    const old = walk.state.readings['bore.centre.vertical']?.[0]?.seq ?? -1
    walk.bring({ do: 'correct', of: old, typed: '9.5069', why: 'misread' })
    expect(judged(walk).inputs.setCheck.before).toBeNull()
    expect(judged(walk).result.verdict).toBe('HOLD')
  })

  it('with the gauge in the seat changed since: the one that measured counts, not the one picked now', () => {
    const walk = new Walk().toVerdict()
    walk.state = { ...walk.state, seats: { ...walk.state.seats, gauge: 'M-1' } }
    const before = judged(walk).inputs.readingU
    const old = walk.state.readings['bore.centre.horizontal']?.[0]?.seq ?? -1
    walk.bring({ do: 'correct', of: old, typed: '9.5036', why: 'misread' })
    expect(judged(walk).inputs.readingU).toBeCloseTo(before ?? Number.NaN, 9)
    expect(judged(walk).result.verdict).not.toBe('HOLD')
  })

  it('with an instrument whose error nobody stated', () => {
    const record = verdictOf({
      instruments: swap(/ {4}uncertainty:\n {6}\{\n {8}expanded: 0\.0003 in,[\s\S]*?\n {6}\}\n/, ''),
    })
    expect(record.inputs.readingU).toBeNull()
    expect(record.result.verdict).toBe('HOLD')
    expect(holds(record)).toMatch(/measuring error U is not on record/)
  })

  it('with expansion unknown', () => {
    const record = verdictOf({
      machine: swap(/ {2}expansion:\n {4}per_kelvin: 10\.8e-6\n {4}source: .*\n/, ''),
    })
    expect(record.result.verdict).toBe('HOLD')
  })

  it('with the gas unknown, since a tighter limit could apply', () => {
    const record = verdictOf({ machine: swap('  molar_mass: 18.5\n', '') })
    expect(record.inputs.limits.spread).toBeUndefined()
    expect(record.result.verdict).toBe('HOLD')
    expect(holds(record)).toMatch(/Spread: /)
  })

  it('with the difference across the rings unknown', () => {
    expect(verdictOf({ machine: swap('  ring_differential: 125 psi\n', '') }).result.verdict).toBe('HOLD')
  })

  it('where the book is silent and nobody named a fall-back set', () => {
    const record = verdictOf({ machine: swap(/fallback:\n(?: {2}.*\n)+/, '') })
    expect(Object.keys(record.inputs.limits)).toEqual(['largest-diameter'])
    expect(record.result.verdict).toBe('HOLD')
  })

  it('with two limits of the machine for one thing: no limit, and no fall-back either', () => {
    const defs = exampleDefs()
    const [own] = defs.machine.limits
    if (own === undefined) throw new Error('no limit')
    const two = (characteristic: 'spread' | 'largest-diameter') => ({
      ...defs,
      machine: { ...defs.machine, limits: [own, { ...own, characteristic }, { ...own, characteristic }] },
    })
    expect(limitsFor(two('spread'), ALL).spread).toBeUndefined()
    const walk = new Walk(two('largest-diameter')).toVerdict()
    expect(judged(walk).inputs.limits['largest-diameter']).toBeUndefined()
    expect(judged(walk).result.verdict).toBe('HOLD')
  })

  it('with two rows of the book for one thing: no limit', () => {
    const defs = exampleDefs()
    const twice = defs.limitBooks.map((book) => ({ ...book, limits: [...book.limits, ...book.limits] }))
    expect(Object.keys(limitsFor(defs, ALL))).toContain('spread')
    expect(limitsFor({ ...defs, limitBooks: twice }, ALL).spread).toBeUndefined()
  })

  it('ends the job as HOLD, and a lead cannot accept it away', () => {
    const walk = new Walk(exampleDefs({ machine: swap('  molar_mass: 18.5\n', '') })).toVerdict()
    expect(
      walk.bring({
        do: 'dispose',
        step: 'disposition',
        choice: 'accept',
        person: 'KH',
        proved: true,
        why: 'fine',
      }),
    ).toBe('choice')
    walk.bring({
      do: 'dispose',
      step: 'disposition',
      choice: 'concession',
      person: 'KH',
      proved: true,
      why: 'run to the outage',
      authority: 'maker letter 12',
      until: '2026-09-30',
    })
    walk.keys('')
    expect(walk.state.closed).toBe('HOLD')
  })
})

describe('limits', () => {
  it('takes the ordinary spread row: 0.00075 of 9.500 in (Bloch and Hoefner 1996, p. 259)', () => {
    const { spread } = verdictOf().inputs.limits
    expect(inches(spread?.value)).toBeCloseTo(0.00075 * 9.5, 9)
    expect(spread).toMatchObject({ from: 'fallback', source: 'Bloch and Hoefner 1996, p. 259' })
  })

  it.each([
    ['a gas lighter than 17', '  molar_mass: 18.5\n', '  molar_mass: 16.9\n'],
    ['more than 700 psi across the rings', 'ring_differential: 125 psi', 'ring_differential: 701 psi'],
    [
      'that, with the gas unknown',
      '  molar_mass: 18.5\n  ring_differential: 125 psi',
      '  ring_differential: 701 psi',
    ],
  ])('takes the tighter row, 0.0005 of the bore, for %s', (_what, from, to) => {
    expect(inches(verdictOf({ machine: swap(from, to) }).inputs.limits.spread?.value)).toBeCloseTo(
      0.0005 * 9.5,
      9,
    )
  })

  it.each([
    ['exactly 17', '  molar_mass: 18.5\n', '  molar_mass: 17\n'],
    ['exactly 700 psi', 'ring_differential: 125 psi', 'ring_differential: 700 psi'],
  ])('takes the ordinary row at %s', (_what, from, to) => {
    expect(inches(verdictOf({ machine: swap(from, to) }).inputs.limits.spread?.value)).toBeCloseTo(
      0.00075 * 9.5,
      9,
    )
  })

  it('takes the row for the rings fitted', () => {
    const bands = swap('rings: metallic', 'rings: ptfe')
    const set = swap('  material: cast-iron\n', '  material: ptfe\n')
    const ptfe = verdictOf({ machine: (text) => set(bands(text)) }).inputs.limits['out-of-round']
    expect(inches(ptfe?.value)).toBeCloseTo(0.018, 9)
  })

  it("lets the machine's own limit beat the fall-back, though it is the looser one", () => {
    const own = `  - characteristic: spread
    at_most: 0.009 in
    inclusive: true
    beyond: REWORK
    source: Machine book (invented)
    approved_by: KH, lead (invented)
    since: 2024-02-01
fallback:`
    const { spread } = verdictOf({ machine: swap(/^fallback:/m, own) }).inputs.limits
    expect(spread).toMatchObject({ from: 'machine', source: 'Machine book (invented)' })
    expect(inches(spread?.value)).toBeCloseTo(0.009, 9)
  })
})

describe('simple acceptance', () => {
  it('is never better than MONITOR, and says that the error is not allowed for', () => {
    const fine = BORE_LINES.map(() => '9.5010')
    const noU = (t: string) =>
      swap(/ {4}uncertainty:\n {6}\{\n {8}expanded: 0\.0003 in,[\s\S]*?\n {6}\}\n/, '')(t)
    const plain = {
      instruments: noU,
      machine: (t: string) =>
        swap(/^fallback:/m, 'simple_acceptance: { by: KH, since: 2026-03-01 }\nfallback:')(noOverhauls(t)),
    }
    const walk = new Walk(exampleDefs(plain)).toBore().keys(...fine, '3', ...AFTER_LINES.slice(5))
    expect(judged(walk).result.verdict).toBe('MONITOR')
    for (const one of judged(walk).result.judged) expect(one.judgement.note).toMatch(/not allowed for/)
    const withU = new Walk(exampleDefs({ machine: noOverhauls }))
      .toBore()
      .keys(...fine, '3', ...AFTER_LINES.slice(5))
    expect(judged(withU).result.verdict).toBe('ACCEPT')
  })
})

describe('the measuring error', () => {
  it('of a difference is that of a difference, which is larger', () => {
    const { differenceU, readingU } = verdictOf().inputs
    expect(readingU).toBeGreaterThan(0)
    expect(differenceU).toBeCloseTo(Math.SQRT2 * (readingU ?? Number.NaN), 12)
  })
})

describe('of two limits that are passed', () => {
  // Centre, top to bottom, far above: taper uses more of its limit, and the largest diameter asks for more.
  const lines = [...BORE_LINES]
  const at = lines.indexOf('9.5068')
  const walk = new Walk().toBore()
  for (const line of [
    ...lines.slice(0, at),
    '9.5680',
    '3',
    'read twice',
    '9.5680',
    '3',
    'read twice',
    ...lines.slice(at + 2),
  ])
    walk.key(line)
  walk.keys(...AFTER_LINES)

  it('the one that makes the verdict is named before the one that governs', () => {
    const record = judged(walk)
    expect(record.result.verdict).toBe('REPLACE')
    const because = becauseRows(walk.engine.defs, record).map(({ text }) => text)
    expect(because).toEqual([
      expect.stringMatching(/^ {2}largest makes it REPLACE: 9\.56\d+ of 9\.5300.*Machine book/),
      expect.stringMatching(/^ {2}taper governs: .*fallback/),
    ])
  })

  it('the way to measure again stands with the choices', () => {
    const view = promptView(walk.engine.defs, walk.state, walk.talk, {
      width: 79,
      record: 'EXAMPLE',
      ascii: true,
    })
    expect(view.ask.map(({ text }) => text)).toContain('To measure again first: correct, or back.')
  })
})

describe('the datum', () => {
  it('is the strip, else the record, else none; never the counterbore', () => {
    const recorded = swap(
      '  lined: false',
      '  as_bored: { diameter: 9.501 in, source: record (invented) }\n  lined: false',
    )
    const gone = (change: Change) =>
      judged(new Walk(exampleDefs(change)).toBore().keys(...BORE_LINES, '3', ...AFTER_LINES.slice(5))).inputs
        .datum
    expect(verdictOf({ machine: recorded }).inputs.datum).toMatchObject({ from: 'unswept strip' })
    expect(gone({ machine: recorded })).toMatchObject({ from: 'as-bored record' })
    expect(gone({})).toMatchObject({ from: 'as-left record', since: '2019-05-14' })
    expect(gone({ machine: noOverhauls })).toBeNull()
  })

  it('is the strip at the crank end where there is none at the head end, and the sheet shows that end', () => {
    const walk = new Walk().toBore().keys(...BORE_LINES, '2')
    expect(walk.prompt).toMatchObject({ kind: 'read', step: { id: 'strip_diameter_crank' } })
    walk.keys('9.5011', '9.5011', '9.5013', '9.5013', ...AFTER_LINES.slice(5))
    const { datum } = judged(walk).inputs
    expect(datum).toMatchObject({ from: 'unswept strip' })
    // Brought to 20 degC from 71.2 degF: less by about 1 part in 10^5.
    expect((datum?.byAxisM?.vertical ?? 0) / 0.0254).toBeCloseTo(9.5011, 3)
    expect((datum?.byAxisM?.horizontal ?? 0) / 0.0254).toBeCloseTo(9.5013, 3)
    expect(judged(walk).readings).toContain(
      walk.state.readings['strip_diameter_crank.strip.vertical']?.[0]?.seq,
    )
    // Corrected to the head end, it is told from there, and the other end counts no more.
    walk.bring({ do: 'correct-finding', step: 'strip', condition: 'present', why: 'there is one here too' })
    expect(walk.state.verdicts.bore_judged).toMatchObject({ void: true })
    walk.keys('9.5001', '9.5001', '9.5002', '9.5002')
    expect((judged(walk).inputs.datum?.byAxisM?.vertical ?? 0) / 0.0254).toBeCloseTo(9.5001, 3)
  })

  it('leaves the branch of the strip out when nobody can tell, with a note', () => {
    const walk = new Walk().toBore().keys(...BORE_LINES, '4')
    expect(walk.talk.ask?.kind).toBe('finding-note')
    walk.keys('too dark')
    expect(walk.state.findings.strip).toBe('too dark')
    expect(walk.prompt).toMatchObject({ kind: 'read', step: { id: 'counterbore' } })
  })
})
