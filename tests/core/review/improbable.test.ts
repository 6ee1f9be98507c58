// Improbable readings: each test asks where it should, is silent below its number and its threshold, and accuses nobody.
import { describe, expect, it } from 'vitest'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import { gasPace } from '../../../src/core/job/gas-pace.ts'
import { gatesOf } from '../../../src/core/job/gate.ts'
import { A_QUESTION } from '../../../src/core/review/kinds/improbable.ts'
import { leaningDigits } from '../../../src/core/review/last-digits.ts'
import type { Review } from '../../../src/core/review/review.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { AFTER_LINES, GAS_LINES, LOCK_LINES, Walk, WORD_LINES } from '../../helpers/example.ts'
import { kindsOf, NEW_BORE, NEW_BORE_LINES, only, reviewed, settled } from '../../helpers/reviewed.ts'

const bore = (lines: readonly string[], defs: Definitions = NEW_BORE, ms = 10_000) => {
  const walk = settled(defs).toBore()
  walk.stepMs = ms
  return walk.keys(...lines)
}
const twice = (...figures: string[]) => figures.flatMap((figure) => [figure, figure])
const asked = (review: Review) =>
  review.exceptions.filter((one) => one.kind === 'improbable').map((one) => one.what)
/** Six places, top to bottom the larger. */
const ROUND = twice('9.5035', '9.5020', '9.5070', '9.5035', '9.5030', '9.5020')

describe('a bore that was measured', () => {
  it('asks nothing', () => {
    const review = reviewed(bore([...NEW_BORE_LINES, ...AFTER_LINES]))
    expect(asked(review)).toEqual([])
  })
})

describe('figures that end only in 0 or 5', () => {
  it('are asked about, with the test, its threshold and its source, as a question', () => {
    const found = only(reviewed(bore(ROUND)), 'improbable')
    expect(found).toMatchObject({ what: 'M-3: 6 of 6 first readings end in 0 or 5', open: false })
    expect(found.sentences.join(' ')).toMatch(
      /1 time in 15624.*exact binomial.*below 0\.001.*from 5 on.*Preece.*no source/s,
    )
    expect(found.sentences.at(-1)).toBe(A_QUESTION)
    expect(found.entries).toHaveLength(6)
  })

  const leaning = (lines: readonly string[], defs = NEW_BORE) => leaningDigits(defs, bore(lines, defs).state)

  it('are not where some end otherwise, and where there are too few', () => {
    expect(leaning(twice('9.5035', '9.5021', '9.5070', '9.5034', '9.5030', '9.5020'))).toEqual([])
    expect(leaning(ROUND.slice(0, 8))).toEqual([])
    expect(leaning(ROUND.slice(0, 10))).toMatchObject([{ instrument: 'M-3', ending: 5 }])
  })

  it('are not where they lie so close that they share a digit, nor of a gauge that steps in fives', () => {
    expect(leaning(twice('9.5015', '9.5010', '9.5015', '9.5010', '9.5015', '9.5010'))).toEqual([])
    const inFives = {
      ...NEW_BORE,
      instruments: {
        instruments: NEW_BORE.instruments.instruments.map((one) =>
          one.kind === 'inside_micrometer'
            ? { ...one, resolution: { ...one.resolution, value: 0.0005 } }
            : one,
        ),
      },
    }
    const fives = bore(twice('9.5050', '9.5025', '9.5125', '9.5075', '9.5150', '9.5100')).state
    expect(leaningDigits(NEW_BORE, fives)).toMatchObject([{ ending: 6 }])
    expect(leaningDigits(inFives, fives)).toEqual([])
  })

  it('count by first readings: repeats are no new draw, and the round size of a standard is none', () => {
    const walk = bore(ROUND)
    const [one] = leaningDigits(NEW_BORE, walk.state)
    expect(one?.readings.map((r) => r.step)).toEqual(Array(6).fill('bore'))
  })
})

describe('what was asked on the sheet', () => {
  it('is told with its test, and that it stands no more once a figure was put right', () => {
    const walk = bore(twice('9.5033', '9.5033', '9.5033', '9.5033', '9.5033', '9.5033'))
    const alike = only(reviewed(walk), 'improbable')
    expect(alike.what).toMatch(/to the last figure/)
    expect(alike.sentences.join(' ')).toMatch(
      /The test: every reading the same.*from 6 places on\. Common practice, no source\./,
    )
    for (const reading of Object.values(walk.state.readings)
      .flat()
      .filter((r) => r.step === 'bore')
      .slice(0, 4))
      walk.bring({ do: 'correct', of: reading.seq, typed: '9.5037', why: 'misread' })
    expect(only(reviewed(walk), 'improbable').sentences[0]).toMatch(/stands no more/)
  })

  it('too quick, is asked of people and never of a file', () => {
    const quick = bore(NEW_BORE_LINES, NEW_BORE, 1000)
    expect(asked(reviewed(quick))).toEqual([expect.stringMatching(/12 readings in 11 s/)])
    expect(only(reviewed(quick), 'improbable').sentences[0]).toBe('It was not asked on the sheet.')
  })
})

describe('the very figure of last time', () => {
  it('is asked about once a step, with the day, and the doubt it raised is told apart', () => {
    // Left 9.5026 at the head end, top to bottom, on the example's record.
    const walk = settled().toBore().keys('9.5026', '3', 'measured twice by two of us', '9.5026')
    const review = reviewed(walk)
    expect(kindsOf(review)).toContain('doubted')
    const same = only(review, 'improbable')
    expect(same.what).toMatch(/1 of 1 as left at the last overhaul, to the last figure$/)
    expect(same.sentences[0]).toMatch(/as left on 2023-11-20/)
  })
})

describe('gas figures of two places', () => {
  const gasAt = (ms: number) => {
    const walk = new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES)
    walk.stepMs = ms
    return walk.keys(...GAS_LINES)
  }
  const shown = ({ engine, state, talk }: Walk) =>
    JSON.stringify(
      promptView(engine.defs, { ...state, scripted: false }, talk, {
        width: 79,
        record: 'EXAMPLE',
        ascii: true,
      }).ask,
    )

  it('keyed sooner than a meter settles are told to the witness and asked of by the lead', () => {
    const walk = gasAt(5000)
    expect(shown(walk)).toContain('Gas of two places, keyed 15 s apart: watch the meter settle.')
    const opened = walk.keys('ML')
    expect(opened.entries.some((e) => e.type === 'gate.opened')).toBe(true)
    const found = only(reviewed(opened), 'improbable')
    expect(found.what).toMatch(/gas figures of two places keyed 15 s apart$/)
    expect(found.sentences.join(' ')).toMatch(/under 60 s from the first figure of one place.*no source/)
    expect(found.sentences.at(-1)).toBe(A_QUESTION)
    expect(found.entries).toHaveLength(3)
  })

  it.each([
    [19_900, true],
    [20_000, false],
  ])('%i ms from figure to figure: asked %s', (ms, isAsked) => {
    const walk = gasAt(ms)
    expect(shown(walk).includes('watch the meter settle')).toBe(isAsked)
    expect(asked(reviewed(walk.keys('ML')))).toHaveLength(isAsked ? 1 : 0)
  })

  it('out of a file are never asked about', () => {
    const walk = gasAt(0)
    const gate = gatesOf(walk.engine.defs)[0]
    if (gate === undefined) throw new Error('no hold point')
    expect(gasPace(walk.engine.defs, { ...walk.state, scripted: false }, gate)).toMatchObject({ seconds: 0 })
    expect(gasPace(walk.engine.defs, { ...walk.state, scripted: true }, gate)).toBeNull()
  })
})
