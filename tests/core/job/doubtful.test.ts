// A reading doubted although its window lets it through, what is shown with a doubt, and that no doubt changes a figure.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { asKind, stepById } from '../../../src/core/job/definitions.ts'
import { readEntries } from '../../../src/core/job/entry-schema.ts'
import { farFromOthers } from '../../../src/core/job/neighbours.ts'
import { foot } from '../../../src/core/sheet/foot.ts'
import { fitLive } from '../../../src/core/sheet/live.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { AFTER_LINES, BORE_LINES, exampleDefs, noOverhauls, Walk } from '../../helpers/example.ts'

const HE_V = 'bore.head_end.vertical'
const CE_H = 'bore.crank_end.horizontal'
/** Everything but the last place. */
const FIVE = BORE_LINES.slice(0, 10)
const at = (walk: Walk) => (walk.prompt.kind === 'read' ? walk.prompt.place.key : walk.prompt.kind)
const STYLE = { width: 79, record: 'EXAMPLE' as const, ascii: false }
const asked = (walk: Walk) =>
  promptView(walk.engine.defs, walk.state, walk.talk, STYLE).ask.map(({ text }) => text)
/** The example with what an overhaul left written otherwise. */
const withMachine = (change: (text: string) => string) => exampleDefs({ machine: change })
const NO_OVERHAULS = withMachine(noOverhauls)

describe('an entry that cannot be right', () => {
  it.each([
    ['9.053', '9.5030', 'has two figures changed round'],
    ['9503', '9.5030', 'has its point lost or in another place'],
    ['95.03', '9.5030', 'has its point lost or in another place'],
    ['241.38', '241.38 mm', 'was keyed without that unit'],
  ])('%s is doubted, %s is shown, and nothing is taken', (typed, figure, says) => {
    const walk = new Walk().toBore().keys(typed)
    const shown = `${figure} would fit; ${typed} ${says}. If that is what you read: 2, then ${figure} in full.`
    expect(walk.last).toMatchObject({ type: 'reading.doubted', typed, shown })
    expect(asked(walk)).toEqual([
      expect.stringContaining(`${typed} is `),
      '1  measure again',
      '2  mistyped: key it again in full',
      '3  keep it and say why',
    ])
    for (const line of ['', 'y', '4', figure, '9.503', 'yes']) walk.key(line)
    expect(walk.last.type).toBe('reading.doubted')
    walk.keys('2')
    expect(walk.state.readings[HE_V]).toBeUndefined()
    walk.keys('9.5030')
    expect(walk.state.readings[HE_V]).toMatchObject([{ typed: '9.5030', value: 9.503, keptBecause: null }])
    expect(walk.entries.filter((e) => e.type === 'reading.doubted')).toMatchObject([{ typed }])
  })

  it.each(['9,503', '9.50.3', '9..503', '9 503'])('%s is refused and asked anew', (typed) => {
    const walk = new Walk().toBore()
    expect(walk.key(typed)).not.toBeNull()
    expect(walk.state.doubt).toBeNull()
    expect(at(walk)).toBe(HE_V)
  })

  it('shows nothing where nothing would fit, and old journals without it still read', () => {
    const walk = new Walk().toBore().keys('8.1111')
    expect(walk.last.type).toBe('reading.doubted')
    expect(walk.last).not.toHaveProperty('shown')
    const disk = walk.entries.map((e) => ({ ...e, prev: '', hash: '' }))
    expect(readEntries(disk).ok).toBe(true)
  })
})

describe('a temperature in the other unit than those it belongs with', () => {
  const toTemperatures = () => new Walk().throughGate().keys('1', '1')
  const MIC = 'gauge_temp_before.body'

  it('is doubted beside the first, with what would fit, and keyed again only after 2', () => {
    const walk = toTemperatures().keys('71.2', '22')
    expect(walk.last).toMatchObject({
      type: 'reading.doubted',
      why: '49.2 degF under sheet 4, Bore temperature, before',
      shown:
        '22 degC would fit; 22 was keyed without that unit. If that is what you read: 2, then 22 degC in full.',
    })
    for (const line of ['', 'yes', '22 degC', '71.6']) walk.key(line)
    expect(walk.last.type).toBe('reading.doubted')
    walk.keys('2', '22 degC')
    expect(walk.state.readings[MIC]).toMatchObject([{ typed: '22 degC', keptBecause: null }])
  })

  it('is doubted too where the slip was in the one that stands, and that is said', () => {
    const walk = toTemperatures().keys('22', '71.2')
    expect(walk.last).toMatchObject({
      type: 'reading.doubted',
      why: '49.2 degF over sheet 4, Bore temperature, before',
      shown: 'There 22 degF stands; 22 degC would fit. If the slip is there: 1, then correct.',
    })
    walk.keys('1', 'correct', '1', 'keyed without its unit', '22 degC', '71.2')
    expect(walk.state.readings[MIC]).toMatchObject([{ typed: '71.2', keptBecause: null }])
  })

  it.each([
    // Two figures changed round in the second, and in the first.
    [
      '71.2',
      '17.2',
      '54.0 degF under',
      /^71\.2 would fit; 17\.2 has two figures changed round\. So would 17\.2 degC; /,
    ],
    [
      '17.2',
      '71.2',
      '54.0 degF over',
      /^There 17\.2 degF stands; 71\.2 or 17\.2 degC would fit\. If the slip is there: 1, then correct\./,
    ],
    // Nothing brings them together: a warm part and a cold gauge.
    [
      '120',
      '70',
      '50.0 degF under',
      /^Metal and instrument that have lain together differ by less than 18\.0 degF\. There 120 degF stands\. Were part and instrument changed round\? If the slip is there: 1, then correct\.$/,
    ],
  ])(
    '%s and then %s, far from each other are doubted, whichever came first, with what would fit',
    (first, second, apart, shown) => {
      const walk = toTemperatures().keys(first, second)
      expect(walk.last).toMatchObject({
        type: 'reading.doubted',
        why: `${apart} sheet 4, Bore temperature, before`,
        shown: expect.stringMatching(shown),
      })
      walk.keys('3', 'it lay in the sun')
      expect(walk.state.readings[MIC]).toMatchObject([{ typed: second, keptBecause: 'it lay in the sun' }])
    },
  )

  it('put right with one that lies far off is doubted, kept in words alone, and on record', () => {
    const walk = toTemperatures().keys('71.2', '70.4', 'correct', '1', 'misread', '17.4', '1')
    expect(walk.said.join(' ')).toMatch(
      /17\.4 is doubted: it is 53\.8 degF under sheet 4, Bore temperature, before\. 71\.4 would fit\. If it is right, say why; else back\./,
    )
    expect(walk.talk.ask).toMatchObject({ kind: 'correct-kept', typed: '17.4' })
    walk.keys('it stood in the shade')
    expect(walk.last).toMatchObject({
      type: 'reading.corrected',
      doubt: expect.stringContaining('53.8 degF'),
    })
    expect(walk.state.readings[MIC]?.at(-1)).toMatchObject({
      typed: '17.4',
      keptBecause: 'misread; it stood in the shade',
    })
    walk.keys('correct', '1', 'misread', '70.6')
    expect(walk.last).not.toHaveProperty('doubt')
    expect(walk.state.readings[MIC]?.at(-1)).toMatchObject({ typed: '70.6', keptBecause: null })
  })

  it.each(['9.5', '9.5000', '9.50'])(
    '%s, a size of this job, is doubted where a temperature is asked',
    (typed) => {
      const walk = toTemperatures().keys(typed)
      expect(walk.last).toMatchObject({
        type: 'reading.doubted',
        why: 'a size, where a temperature is asked: the nominal bore, 9.500 in',
        shown: 'If it was meant for another sheet: 2, then the temperature in full.',
      })
      walk.keys('3', 'a cold morning', typed)
      expect(walk.last).toMatchObject({ type: 'reading.doubted', typed })
    },
  )

  it.each(['9.5033', '9.47', '9.7502'])(
    '%s is near a size, with more places than the thermometer shows',
    (typed) => {
      const walk = toTemperatures().keys(typed)
      const near = typed === '9.7502' ? 'the counterbore' : 'the nominal bore'
      expect(walk.last).toMatchObject({
        type: 'reading.doubted',
        why: expect.stringContaining(`a size, where a temperature is asked: near ${near}, 9.`),
      })
      walk.keys('2', '71.2')
      expect(walk.last).toMatchObject({ type: 'reading.taken', typed: '71.2' })
    },
  )

  it('a figure that the thermometer shows, or one far from every size, is a temperature', () => {
    for (const typed of ['9.6', '71.25', '9.5033 degF'])
      expect(toTemperatures().keys(typed).last).toMatchObject({ type: 'reading.taken', typed })
  })

  it('is not blamed where the other one is the size: both are named, and how the other is put right', () => {
    const walk = toTemperatures().keys('9.5', '3', 'so it says', '70.4')
    expect(walk.last).toMatchObject({
      type: 'reading.doubted',
      why: '60.9 degF over sheet 4, Bore temperature, before',
      shown:
        'There 9.5 degF stands, which is the nominal bore, 9.500 in. If the slip is there: 1, then correct.',
    })
    walk.keys('3', 'it shows that', 'correct', '1', 'misread', '70.6')
    expect(walk.said.at(-1)).toBe(
      '70.6 is doubted: it is 61.1 degF over sheet 4, Bore temperature, before. There 9.5 degF stands, which is the nominal bore, 9.500 in. If the slip is there: correct that one next. If it is right, say why; else back.',
    )
  })

  it.each(['9.6', '9.0', '9.5 degF'])('%s is no size that can be told', (typed) => {
    expect(toTemperatures().keys(typed).last).toMatchObject({ type: 'reading.taken', typed })
  })

  it('put right with words, or with what cannot be, is refused, and the figure asked again', () => {
    const walk = toTemperatures().keys('71.2', '70.4', 'correct', '1', '70.6')
    expect(walk.talk.ask).toMatchObject({ kind: 'correct-why' })
    expect(walk.said.at(-1)).toBe('That is no reason: why was 70.4 wrong? What is right is asked after.')
    walk.keys('misread', 'it was misread')
    expect(walk.talk.ask).toMatchObject({ kind: 'correct-value' })
    walk.keys('700')
    expect(walk.talk.ask).toMatchObject({ kind: 'correct-value' })
    walk.keys('70.6')
    expect(walk.last).toMatchObject({ type: 'reading.corrected', typed: '70.6', why: 'misread' })
  })

  it('after is held against before, and believed beside a gap that was kept', () => {
    const walk = toTemperatures().keys('104', '68', '3', 'it lay in the sun')
    walk.keys('1', '9.5000', ...BORE_LINES, ...AFTER_LINES.slice(0, -3), '103', '69')
    expect(walk.entries.filter((e) => e.type === 'reading.doubted')).toHaveLength(1)
  })

  it.each([
    ['71.2', '62'],
    // Just within 18 degF.
    ['71.2', '53.3'],
    ['71.2', '22 C'],
  ])('%s and then %s are believed', (first, second) => {
    const walk = toTemperatures().keys(first, second)
    const doubts = walk.entries.filter((e) => e.type === 'reading.doubted' && e.typed === second)
    expect(doubts).toEqual([])
  })
})

describe('a reading far from its neighbours', () => {
  it('9.530 is doubted though its window lets it through, and 9.503 is shown', () => {
    const walk = new Walk().toBore().keys(...FIVE, '9.530')
    expect(walk.last).toMatchObject({
      type: 'reading.doubted',
      place: CE_H,
      why: 'far from its neighbours',
      shown:
        'It is 0.0232 in over the most of the other 5 places, which lie within 0.0048 in. ' +
        '9.5030 would fit; 9.530 has two figures changed round. If that is what you read: 2, then 9.5030 in full.',
    })
    expect(walk.state.readings[CE_H]).toBeUndefined()
    walk.keys('3', 'measured three times, it is so')
    expect(walk.state.readings[CE_H]).toMatchObject([
      { typed: '9.530', value: 9.53, keptBecause: 'measured three times, it is so' },
    ])
  })

  it.each([
    ['just at four times the spread', '9.52605', 'reading.taken'],
    ['just beyond', '9.5262', 'reading.doubted'],
  ])('%s: %s', (_what, typed, type) => {
    expect(new Walk().toBore().keys(...FIVE, typed).last.type).toBe(type)
  })

  it('is never told from fewer than four others, nor of a repeat', () => {
    expect(new Walk().toBore().keys(...BORE_LINES.slice(0, 6), '9.530').last.type).toBe('reading.taken')
    expect(new Walk().toBore().keys(...BORE_LINES.slice(0, 8), '9.530').last.type).toBe('reading.doubted')
    const repeat = new Walk().toBore().keys(...BORE_LINES.slice(0, 9), '9.530')
    expect(repeat.last.type).toBe('reading.taken')
  })

  it('in an even bore is one that is off by more than four times what repeats may be', () => {
    const even = (typed: string) => new Walk(NO_OVERHAULS).toBore().keys(...even5(), typed).last.type
    const even5 = () => [
      '9.5001',
      '9.5001',
      '9.5002',
      '9.5002',
      '9.5001',
      '9.5001',
      '9.5002',
      '9.5002',
      '9.5001',
      '9.5001',
    ]
    expect(even('9.5014')).toBe('reading.taken')
    expect(even('9.5015')).toBe('reading.doubted')
    expect(even('9.4989')).toBe('reading.taken')
    expect(even('9.4988')).toBe('reading.doubted')
  })

  it('is told of lengths, on what the repeats came to', () => {
    const walk = new Walk().toBore().keys(...FIVE)
    const bore = asKind(stepById(walk.engine.defs, 'bore'), 'read')
    const far = (si: number) => farFromOthers(walk.state, bore, CE_H, si)
    expect(far(9.5 * 0.0254)).toBeNull()
    expect(far(9.54 * 0.0254)).toMatchObject({ others: 5 })
    expect(far(9.54 * 0.0254)?.beyond).toBeCloseTo((9.54 - 9.50685) * 0.0254, 12)
    expect(far(9.46 * 0.0254)?.beyond).toBeCloseTo((9.46 - 9.5021) * 0.0254, 4)
    const warm = { ...bore, step: { ...bore.step, quantity: 'temperature' as const } }
    expect(farFromOthers(walk.state, warm, CE_H, 9.54 * 0.0254)).toBeNull()
  })
})

describe('a reading against the last overhaul', () => {
  it('smaller than it was left by more than both errors is doubted, and the prompt before names no old figure', () => {
    const walk = new Walk().toBore()
    const before = promptView(walk.engine.defs, walk.state, walk.talk, STYLE)
    expect(JSON.stringify(before)).not.toContain('9.5026')
    walk.keys('9.5018')
    expect(walk.last).toMatchObject({
      type: 'reading.doubted',
      why: 'less worn than last time',
      shown: '9.5026 in was left on 2023-11-20: this is 0.0008 in smaller, and wear makes it larger.',
    })
    expect(walk.state.readings[HE_V]).toBeUndefined()
  })

  it.each([
    ['by both errors and no more', '9.5020', 'reading.taken'],
    ['the very figure', '9.5026', 'reading.doubted'],
    ['the very figure, keyed in the other system', '241.36604 mm', 'reading.doubted'],
    ['one step off it', '9.5027', 'reading.taken'],
  ])('%s: %s', (_what, typed, type) => {
    expect(new Walk().toBore().keys(typed).last.type).toBe(type)
  })

  it('is asked of the first reading of a place only', () => {
    const walk = new Walk().toBore().keys('9.5027', '9.5026')
    expect(walk.last.type).toBe('reading.taken')
  })

  it('goes by the latest overhaul that has the place, and the way the record says it wears', () => {
    const smaller = withMachine((t) => t.replaceAll('wears: larger', 'wears: smaller'))
    const walk = new Walk(smaller).toBore().keys('9.5034')
    expect(walk.last).toMatchObject({
      shown: expect.stringContaining('this is 0.0008 in larger, and wear makes it smaller'),
    })
  })

  it('without a stated error or a way of wear tells nothing but the very figure', () => {
    const errorless = withMachine((t) => t.replaceAll(/\s+u: 0\.0003 in,/g, ''))
    expect(new Walk(errorless).toBore().keys('9.4950').last.type).toBe('reading.taken')
    expect(new Walk(errorless).toBore().keys('9.5026').last.type).toBe('reading.doubted')
    expect(new Walk(NO_OVERHAULS).toBore().keys('9.5026').last.type).toBe('reading.taken')
  })

  it('is not asked of what is left now: it may have been made new', () => {
    const asLeft = exampleDefs({ procedure: (t) => t.replace('stage: as_found', 'stage: as_left') })
    expect(new Walk(asLeft).toBore().keys('9.5018').last.type).toBe('reading.taken')
  })
})

describe('the question of a doubt', () => {
  const screens = (walk: Walk, columns: number, rows: number) => {
    const style = { width: columns - 1, record: 'EXAMPLE' as const, ascii: true }
    const { defs } = walk.engine
    const view = promptView(defs, walk.state, walk.talk, style)
    const shown = { view, foot: foot(defs, walk.state, walk.now), style, rows, columns, notice: null }
    const of = fitLive(shown).turn?.of ?? 1
    return Array.from({ length: of }, (_, n) => fitLive({ ...shown, side: { of: 'front', n } }))
  }

  it.each([
    ['window', [], '9.053'],
    ['neighbours', FIVE, '9.530'],
    ['last overhaul', [], '9.5018'],
    ['very figure', [], '9.5026'],
  ])('fits both screens, with hazard and all three answers: %s', (_what, before, typed) => {
    const walk = new Walk().toBore().keys(...before, typed)
    expect(walk.prompt.kind).toBe('doubt')
    for (const [columns, rows] of [
      [80, 24],
      [40, 15],
    ] as const) {
      const sides = screens(walk, columns, rows)
      if (columns === 80) expect(sides).toHaveLength(1)
      for (const live of sides) {
        expect(live.tooSmall).toBe(false)
        expect(live.above.length + 1 + live.below.length).toBeLessThan(rows)
        for (const line of live.above) expect(line.text).toMatch(/^[ -~]*$/)
      }
      const text = sides.flatMap(({ above }) => above.map((line) => line.text)).join(' ')
      for (const must of ['Hazard: ', 'In trouble: ', `${typed} is `, '1  ', '2  ', '3  keep it'])
        expect(text).toContain(must)
    }
  })
})

describe('whatever is keyed', () => {
  const figures = fc.oneof(
    fc.integer({ min: 94000, max: 96500 }).map((n) => (n / 10000).toFixed(4)),
    fc.integer({ min: 0, max: 99999 }).map((n) => (n / 1000).toFixed(3)),
    fc.constantFrom('9.053', '9503', '95.03', '241.38', '241.38 mm', '9.5026'),
  )

  it('is what stands on record, to the last sign, and a doubt counts for nothing until it is settled', () => {
    const start = new Walk().toBore()
    const late = start.copy().keys(...FIVE)
    fc.assert(
      fc.property(figures, fc.boolean(), fc.constantFrom('1', '2', '3'), (typed, isLate, choice) => {
        const walk = (isLate ? late : start).copy()
        const place = isLate ? CE_H : HE_V
        walk.key(typed)
        const { last } = walk
        if (walk.talk.ask?.kind === 'places-sure') {
          // With fewer places than the instrument reads to, nothing is taken until it is keyed again.
          expect(walk.state.readings[place]).toBeUndefined()
          return
        }
        if (last.type !== 'reading.taken' && last.type !== 'reading.doubted') throw new Error(last.type)
        expect(last.typed).toBe(typed)
        expect(last.value).toBe(Number.parseFloat(typed))
        if (last.type === 'reading.taken') return
        expect(walk.state.readings[place]).toBeUndefined()
        walk.key(choice)
        if (choice === '3') walk.key('because it is so')
        const readings = walk.state.readings[place] ?? []
        expect(readings.map((r) => [r.typed, r.value, r.si])).toEqual(
          choice === '3' ? [[typed, last.value, last.si]] : [],
        )
      }),
      { numRuns: 150, examples: [['9.502', false, '1']] },
    )
  })

  it('leaves the readings of the example as they were', () => {
    const walk = new Walk().toBore().keys(...BORE_LINES, ...AFTER_LINES)
    expect(walk.entries.some((e) => e.type === 'reading.doubted')).toBe(false)
    expect(walk.entries.some((e) => e.type === 'readings.questioned')).toBe(false)
  })
})
