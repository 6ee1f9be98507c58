// Which limit a load comes down to: asked of the trainee before the sheet tells it, HOLD included, and judged by the machine in truth.
import { describe, expect, it } from 'vitest'
import type { CylinderAt, PocketRow } from '../../../src/core/cycle/pocket-judge-input.ts'
import type { PocketVerdictRecord } from '../../../src/core/job/verdict-record.ts'
import { lessonOn } from '../../../src/core/practice/lesson.ts'
import { pocketGoverns } from '../../../src/core/practice/pocket-governs.ts'
import type { Walk } from '../../helpers/example.ts'
import { careful, defsOf, seedHiding, session } from '../../helpers/trainees.ts'

function toVerdict(id: string, level: 1 | 3): Walk {
  const defs = defsOf('pocket-load')
  return session(
    seedHiding(id, level, defs),
    level,
    (walk) => (walk.prompt.kind === 'judge' ? false : careful(walk)),
    defs,
  ).walk
}

/** Marks of judging for what was keyed, and what was said. */
function answered(from: Walk, line: string) {
  const walk = from.copy()
  walk.key(line)
  const entry = walk.entries.findLast(({ type }) => type === 'verdict.given')
  if (entry === undefined) throw new Error(`no verdict: ${walk.said.at(-1)}`)
  const lesson = lessonOn(walk.engine.defs, walk.state, entry)
  return { marks: lesson?.marks.map(({ isRight }) => isRight), says: lesson?.says.join(' ') ?? '' }
}

describe('a driver that no opening can save', () => {
  const walk = toVerdict('no-opening', 3)

  it('is judged by whether the trainee says what holds it', { timeout: 240_000 }, () => {
    expect(answered(walk, 'HOLD driver-power').marks).toEqual([true, true])
    expect(answered(walk, 'HOLD driver power').marks).toEqual([true, true])
    const nothing = answered(walk, 'HOLD nothing')
    expect(nothing.marks).toEqual([true, false])
    expect(nothing.says).toContain('Wrong: what governs is driver power')
    expect(answered(walk, 'REWORK rod-load').marks).toEqual([false, false])
  })

  it('is not answered by a word alone, HOLD neither', () => {
    for (const word of ['HOLD', 'REWORK', '5', 'HOLD taper']) {
      const twin = walk.copy()
      twin.key(word)
      expect(twin.entries.length, word).toBe(walk.entries.length)
      expect(twin.said.at(-1)).toMatch(/^Say as well/)
    }
  })

  it('is told in figures for three settings by a look, and not by a verdict', () => {
    const twin = walk.copy()
    twin.key('look')
    const told = twin.said.join('\n')
    expect(told).toMatch(/^shut: driver .* kW with the errors, rod load \d+\u00a0% of its limit/m)
    expect(told).toMatch(/, as it stands: driver/)
    expect(told).toMatch(/^open: driver|100\.0\u00a0% open: driver/m)
    expect(told).not.toMatch(/HOLD|REWORK|No opening|governs/)
    expect(twin.entries.length).toBe(walk.entries.length)
  })
})

it('a wheel and a stem that disagree are held by no limit, and a trainee who names one is wrong', () => {
  const walk = toVerdict('pocket-half', 3)
  expect(answered(walk, 'HOLD nothing').marks).toEqual([true, true])
  const named = answered(walk, 'HOLD driver-power')
  expect(named.marks).toEqual([true, false])
  expect(named.says).toContain('no limit governs here')
})

describe('what governs', () => {
  const cylinder: CylinderAt = {
    stage: 1,
    cylinder: 'throw 1',
    compressionN: 70e3,
    tensionN: 60e3,
    compressionLimitN: 100e3,
    tensionLimitN: 100e3,
    share: 0.7,
    pinN: 55e3,
    pinLimitN: 110e3,
    reversalAngle: 3,
    reversalShare: 0.8,
    dischargeK: 380,
    dischargeLimitK: 423,
  }
  const rowOf = (opening: number, change: Partial<PocketRow> = {}): PocketRow => ({
    opening,
    turns: null,
    capacityShare: 1,
    loadW: 90e3,
    cylinders: [cylinder],
    faults: [],
    ...change,
  })
  const recordOf = (result: Partial<PocketVerdictRecord['result']>): PocketVerdictRecord =>
    ({
      compute: 'pocket_setting',
      inputs: { record: { stages: [{ suctionK: 300 }], reversal: { leastAngle: 0.26, leastShare: 0.03 } } },
      result: { verdict: 'ACCEPT', targetW: 100e3, present: 0, at: 0, table: [rowOf(0)], ...result },
    }) as unknown as PocketVerdictRecord
  const fault = (about: PocketRow['faults'][number]['about']) => ({
    grade: 'hold' as const,
    about,
    stage: 1,
    cylinder: 'throw 1',
    say: '',
  })

  it.each<[string, Partial<PocketVerdictRecord['result']>, readonly string[]]>([
    ['the share that is greatest, where all is well', {}, ['driver-power']],
    ['the rod, where it is nearer to its limit', { table: [rowOf(0, { loadW: 60e3 })] }, ['rod-load']],
    [
      'both, where they are nearer to each other than readings tell',
      { table: [rowOf(0, { loadW: 70.5e3 })] },
      ['driver-power', 'rod-load'],
    ],
    [
      'the rise of the gas, where that is most of what its limit allows',
      { table: [rowOf(0, { loadW: 60e3, cylinders: [{ ...cylinder, dischargeK: 415 }] })] },
      ['discharge-temperature'],
    ],
    [
      'the reversal, where it is nearly gone',
      { table: [rowOf(0, { loadW: 60e3, cylinders: [{ ...cylinder, reversalAngle: 0.28 }] })] },
      ['reversal'],
    ],
    [
      'the driver, where an opening brings it down',
      { verdict: 'REWORK', at: 0.5, table: [rowOf(0, { loadW: 105e3 }), rowOf(0.5, { loadW: 99e3 })] },
      ['driver-power'],
    ],
    [
      'the driver, where none does',
      { verdict: 'HOLD', at: 1, table: [rowOf(0, { loadW: 120e3 }), rowOf(1, { loadW: 108e3 })] },
      ['driver-power'],
    ],
    [
      'the rod, where the opening that is enough for the driver is too much for it',
      {
        verdict: 'HOLD',
        at: 0.5,
        table: [rowOf(0, { loadW: 105e3 }), rowOf(0.5, { loadW: 99e3, faults: [fault('rod-load')] })],
      },
      ['rod-load'],
    ],
    [
      'what an end draws, where it draws nothing at the setting that stands',
      { verdict: 'HOLD', table: [rowOf(0, { faults: [fault('volumetric-efficiency')] })] },
      ['capacity'],
    ],
    [
      'nothing, where nothing was worked out',
      { verdict: 'HOLD', targetW: null, present: null, at: null, table: [] },
      [],
    ],
  ])('is %s', (_what, result, governs) => {
    expect(pocketGoverns(recordOf(result))).toEqual(governs)
  })
})
