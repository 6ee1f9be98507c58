// A size that was measured on HOLD is no baseline and no sure wear; one whose HOLD is only about a limit is, and the HOLD stands beside it.
import { describe, expect, it } from 'vitest'
import { withOverhaul } from '../../../src/authoring/add-overhaul.ts'
import { instrumentSchema } from '../../../src/core/definition/instruments.ts'
import { type LeftFigures, leftFigures } from '../../../src/core/job/adopt.ts'
import { changesOf } from '../../../src/core/job/changes.ts'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import type { Input } from '../../../src/core/job/input.ts'
import { leftFigureText } from '../../../src/core/sheet/adopted-block.ts'
import { changeLines } from '../../../src/core/talk/changes.ts'
import { BORE_LINES, exampleDefs, Walk } from '../../helpers/example.ts'
import { afterWith, conceded, offGauge, toCheck } from '../../helpers/off-gauge.ts'
import { MICROMETER, machineWith } from '../../helpers/records.ts'
import { type Raw, readOne, smallDefs } from '../../helpers/small-job.ts'

const left = (walk: Walk): LeftFigures => leftFigures(walk.engine.defs, walk.state)
const adopting: Input = {
  do: 'adopt',
  hours: 61_000,
  renewed: [],
  without: [],
  file: { name: 'next.yaml', sha256: '00' },
  person: 'PB',
  proved: true,
}
describe('a bore that was measured on HOLD', () => {
  it('leaves no baseline, and is named with its sheet, the check, by how much, who kept it and why', () => {
    const walk = offGauge()
    expect(walk.state.closed).toBe('HOLD')
    expect(left(walk).figures).toEqual([])
    expect(left(walk).not).toMatchObject([{ of: 'bore diameter', measuring: true }])
    expect(left(walk).not[0]?.why).toMatch(
      /^it was measured on HOLD, 18 Bore judged \(entry \d+\): The set-check before .* out by more than is allowed; The set-check after .*; 6 Set-check before: 0\.0006 in off, 0\.0002 in allowed, kept by RO: the ring is scratched \(entry \d+\); 17 Set-check after: 0\.0006 in off/,
    )
    expect(walk.bring(adopting)).toBe('nothing')
    expect(walk.said.at(-1)).toBe(
      'No figure of this job is left to adopt. What was measured on HOLD is no baseline: it is measured anew, on a job of its own, or the record stays as it is.',
    )
  })

  it.each([
    ['a check after that is out', '9.5000', afterWith('9.5004')],
    ['a check that moved between', '9.5002', afterWith('9.4998')],
  ])('leaves none with %s', (_what, before, lines) => {
    const walk = conceded(toCheck().keys(before, ...BORE_LINES, ...lines))
    expect(walk.state.verdicts.bore_judged?.verdict.result.verdict).toBe('HOLD')
    expect([left(walk).figures, left(walk).not[0]?.measuring]).toEqual([[], true])
  })

  it('leaves none with repeats that do not agree at one place: the others went into the same verdict', () => {
    const lines = ['9.5033', '9.5043', '9.5053', '9.5063', '9.5073', ...BORE_LINES.slice(2)]
    const walk = conceded(toCheck().keys('9.5000', ...lines, ...afterWith('9.5000')))
    if (walk.state.closed === null) throw new Error(`not closed, at ${walk.prompt.kind}`)
    expect(left(walk).figures).toEqual([])
    expect(left(walk).not[0]?.why).toContain('There is no settled reading at head_end, vertical')
  })

  it('leaves none once the thermometer behind it is found out: nothing says how warm it was', () => {
    const walk = new Walk().toVerdict().keys('1', 'KH', 'read again, none given', '')
    expect(left(walk).figures).toHaveLength(6)
    walk.bring(doubt('T-2'))
    expect(left(walk).figures).toEqual([])
  })

  it('says that it fell with its gauge, where that was found out', () => {
    const walk = new Walk().toVerdict().keys('1', 'KH', 'read again, none given', '')
    walk.bring(doubt('M-3'))
    expect(left(walk).not).toContainEqual({
      of: 'bore diameter',
      measuring: true,
      why: expect.stringMatching(/^M-3, which read it, was found out of calibration \(entry \d+\): 7 Bore$/),
    })
  })

  it('has it beside its wear', () => {
    const walk = offGauge()
    const held = changesOf(walk.engine.defs, walk.state).map((one) => one.held)
    expect(held).toHaveLength(6)
    for (const one of held)
      expect(one).toEqual({ found: expect.stringMatching(/^18 Bore judged/), left: null })
    expect(changeLines(walk.engine.defs, walk.state)).toContainEqual(
      expect.stringMatching(/^ {2}FOUND ON HOLD: 18 Bore judged \(entry \d+\)$/),
    )
    const sound = new Walk().toVerdict().keys('1', 'KH', 'read again, none given', '')
    for (const one of changesOf(sound.engine.defs, sound.state))
      expect(one.held).toEqual({ found: null, left: null })
  })
})

describe('a HOLD that is only about a limit', () => {
  const noLimit = (text: string) =>
    text.replace(/ {2}- characteristic: largest-diameter[\s\S]*?(?=\n {2}- )\n/, '')
  const tight = (text: string) => text.replace('at_most: 9.530 in', 'at_most: 9.5068 in')

  it.each([
    ['no limit on record', noLimit],
    ['too near to call', tight],
  ])('takes the size along, and tells the HOLD and the decision beside it: %s', (_what, machine) => {
    const walk = conceded(new Walk(exampleDefs({ machine })).toVerdict())
    expect(walk.state.verdicts.bore_judged?.verdict.result.verdict).toBe('HOLD')
    const { figures, not } = left(walk)
    expect([figures.length, not]).toEqual([6, []])
    for (const one of figures) {
      expect(one.judged).toBe('HOLD, concession by KH')
      expect(leftFigureText(one)).toMatch(/; its verdict: HOLD, concession by KH$/)
    }
    expect(walk.bring(adopting)).toBeNull()
    const written = withOverhaul('a: 1\n', {
      day: '2026-03-14',
      hours: 61_000,
      report: 'r',
      renewed: [],
      figures,
    })
    expect(written.match(/judged: HOLD, concession by KH/g)).toHaveLength(6)
  })
})

const doubt = (instrument: string): Input => ({
  do: 'doubt-instrument',
  instrument,
  why: 'reads long',
  says: 'the laboratory',
  person: 'ML',
  proved: true,
})

// A rod as left, on a micrometer that is set on a standard, judged by figures or by nobody.
const base = exampleDefs()
const temp = (id: string): Raw =>
  readOne(id, {
    quantity: 'temperature',
    of: id,
    with: 'thermometer',
    repeats: { at_least: 1, at_most: 2, within: '1 delta-degF' },
    plausible: { from: 'range', least: '0 degF', most: '160 degF' },
  })
const check = (id: string): Raw =>
  readOne(id, { with: 'micrometer', plausible: { from: 'standard', below: '0.01 in', above: '0.01 in' } })
const ROD: Raw = readOne('rod', {
  of: 'rod diameter',
  with: 'micrometer',
  stage: 'as_left',
  plausible: { from: 'record', of: 'rod_diameter', below: '0.1 in', above: '0.01 in' },
})
const JUDGED: Raw = {
  id: 'judged',
  kind: 'judge',
  title: 'Rod judged',
  compute: 'figures',
  figures: [{ characteristic: 'rod-undersize', is: 'machine.rod_diameter - rod' }],
  at_20: {
    readings: ['rod'],
    of: 'rod',
    part: ['rod_temp'],
    instrument: ['mic_temp'],
    set_before: 'before',
    set_after: 'after',
  },
}
const END: Raw = { id: 'end', kind: 'confirm', title: 'end', seen: 'Tidy.' }
const DECIDE: Raw = {
  id: 'decided',
  kind: 'decide',
  title: 'Decided',
  about: 'judged',
  choices: ['accept', 'hold'],
}
const LIMIT: Raw = {
  characteristic: 'rod-undersize',
  at_most: '0.005 in',
  inclusive: true,
  beyond: 'REPLACE',
  source: 'Machine book (invented)',
  approved_by: 'KH',
  since: '2026-01-01',
}
function rod(steps: readonly Raw[], ...lines: string[]): Walk {
  const sources = {
    machine: machineWith({
      limits: [LIMIT],
      rod: {
        diameter: '2.250 in',
        expansion: { per_kelvin: 11.5e-6, source: 'a table' },
        source: 'Drawing (invented)',
      },
    }),
    instruments: {
      instruments: [
        ...base.instruments.instruments.filter((one) => one.kind === 'contact_thermometer'),
        instrumentSchema.parse(MICROMETER),
      ],
    },
  }
  const seats = {
    seats: [
      { id: 'thermometer', kinds: ['contact_thermometer'], for: 'temperatures' },
      { id: 'micrometer', kinds: ['outside_micrometer'], for: 'the rod' },
    ],
  }
  const defs = smallDefs(steps, [], sources as Partial<Definitions>, seats)
  return new Walk(defs).keys('RO', 'TC-401-1', ...lines)
}

describe('a rod as left', () => {
  const whole = [
    temp('rod_temp'),
    temp('mic_temp'),
    check('before'),
    ROD,
    check('after'),
    JUDGED,
    DECIDE,
    END,
  ]
  const BEGIN = ['1', '68.0', '68.0', '1', '2.0000']

  it('is left where its verdict trusts it, and not where a check was out', () => {
    expect(left(rod(whole, ...BEGIN, '2.2480', '2.0000')).figures).toHaveLength(1)
    const out = left(rod(whole, ...BEGIN, '2.2480', '2.0002'))
    expect(out.figures).toEqual([])
    expect(out.not[0]?.why).toMatch(
      /Rod judged \(entry \d+\): the set-check after the readings is off by more/,
    )
  })

  it('is not left where it comes to less than none', () => {
    const out = left(rod(whole, ...BEGIN, '2.2504', '2.0000'))
    expect([out.figures, out.not[0]?.why]).toEqual([
      [],
      expect.stringContaining('comes to less than nothing'),
    ])
  })

  it('is not left before any verdict on it was given', () => {
    const out = left(rod(whole, ...BEGIN, '2.2480'))
    expect([out.figures, out.not[0]?.why]).toEqual([[], expect.stringContaining('no verdict on it stands')])
  })

  it.each([
    [
      'a check before and after',
      [check('before'), ROD, check('after'), END],
      ['1', '2.0000', '2.2480', '2.0000'],
      null,
    ],
    [
      'a check after that is out',
      [check('before'), ROD, check('after'), END],
      ['1', '2.0000', '2.2480', '2.0002'],
      /check after .*is out/,
    ],
    ['no check after', [check('before'), ROD, END], ['1', '2.0000', '2.2480'], /no set-check of M-5 after/],
    ['no check at all', [ROD, END], ['1', '2.2480'], /no set-check of M-5 before/],
  ] as const)('that no verdict looks at goes by its own checks: %s', (_what, steps, lines, why) => {
    const { figures, not } = left(rod(steps, ...lines))
    expect(figures).toHaveLength(why === null ? 1 : 0)
    if (why !== null) expect(not[0]?.why).toMatch(why)
  })
})
