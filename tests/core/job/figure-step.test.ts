// A judge by figures, walked: readings on a micrometer and on feelers, limits of the record, and everything that holds it.
import { describe, expect, it } from 'vitest'
import { instrumentSchema } from '../../../src/core/definition/instruments.ts'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import { hangsOn } from '../../../src/core/job/values.ts'
import { figureRecord } from '../../../src/core/job/verdict-record.ts'
import { whyLines } from '../../../src/core/talk/tell-about.ts'
import { exampleDefs, Walk } from '../../helpers/example.ts'
import { MICROMETER, machineWith } from '../../helpers/records.ts'
import { type Raw, readOne, smallDefs, tryAssemble } from '../../helpers/small-job.ts'

const base = exampleDefs()
const uncertainty = {
  expanded: '0.0001 in',
  k: 2,
  includes_resolution: true,
  source: 'Certificate (invented)',
}
const calibration = { due: '2027-01-01', certificate: 'C-1 (invented)' }
const FEELERS: Raw = {
  id: 'F-1',
  kind: 'feeler_gauge',
  title: 'Feelers',
  unit: 'in',
  range: { from: '0.001 in', to: '0.200 in' },
  resolution: '0.0005 in',
  uncertainty: { ...uncertainty, expanded: '0.0005 in' },
  calibration,
}
const provenance = { source: 'Machine book (invented)', approved_by: 'KH', since: '2026-01-01' }
const LIMITS: Raw[] = [
  { characteristic: 'rod-undersize', at_most: '0.005 in', inclusive: true, beyond: 'REPLACE', ...provenance },
  {
    characteristic: 'rod-out-of-round',
    at_most: '0.001 in',
    inclusive: true,
    beyond: 'REWORK',
    ...provenance,
  },
  { characteristic: 'ring-end-gap', at_most: '0.057 in', inclusive: true, beyond: 'REPLACE', ...provenance },
  {
    characteristic: 'ring-end-gap-least',
    at_least: '0.019 in',
    inclusive: true,
    beyond: 'REWORK',
    ...provenance,
  },
]

const machine = (limits = LIMITS, more: Raw = {}) =>
  machineWith({
    limits,
    rod: {
      diameter: '2.250 in',
      expansion: { per_kelvin: 11.5e-6, source: 'a table' },
      source: 'Drawing (invented)',
    },
    ...more,
  })

const SEATS = [
  { id: 'thermometer', kinds: ['contact_thermometer'], for: 'temperatures' },
  { id: 'micrometer', kinds: ['outside_micrometer'], for: 'the rod' },
  { id: 'feelers', kinds: ['feeler_gauge'], for: 'gaps' },
]
const places = (n: number) =>
  Array.from({ length: n }, (_, i) => ({ id: `s${i + 1}`, label: `place ${i + 1}`, at: i / 10 }))
const temp = (id: string): Raw =>
  readOne(id, {
    quantity: 'temperature',
    of: id,
    with: 'thermometer',
    repeats: { at_least: 1, at_most: 2, within: '1 delta-degF' },
    plausible: { from: 'range', least: '0 degF', most: '160 degF' },
  })
const size = (id: string, count: number): Raw =>
  readOne(id, {
    of: 'rod diameter',
    with: 'micrometer',
    stations: places(count),
    plausible: { from: 'record', of: 'rod_diameter', below: '0.1 in', above: '0.01 in' },
  })
const check = (id: string): Raw =>
  readOne(id, { with: 'micrometer', plausible: { from: 'standard', below: '0.01 in', above: '0.01 in' } })
const AT_20 = {
  readings: ['rod'],
  of: 'rod',
  part: ['rod_temp'],
  instrument: ['mic_temp'],
  set_before: 'before',
  set_after: 'after',
}
const judge = (figures: Raw[], more: Raw = {}): Raw => ({
  id: 'judged',
  kind: 'judge',
  title: 'Rod judged',
  compute: 'figures',
  figures,
  ...more,
})
const decide: Raw = {
  id: 'decided',
  kind: 'decide',
  title: 'Decided',
  about: 'judged',
  choices: ['accept', 'replace', 'hold'],
}
const ROD = [
  { characteristic: 'rod-undersize', is: 'machine.rod_diameter - min(rod)' },
  { characteristic: 'rod-out-of-round', is: 'spread(rod)' },
]
const rodSteps = (at20: Raw | undefined = AT_20): Raw[] => [
  temp('rod_temp'),
  temp('mic_temp'),
  check('before'),
  size('rod', 2),
  check('after'),
  judge(ROD, at20 === undefined ? {} : { at_20: at20 }),
  decide,
]
const gapSteps: Raw[] = [
  readOne('gaps', {
    of: 'gap',
    with: 'feelers',
    stations: places(2),
    plausible: { from: 'range', least: '0.001 in', most: '0.150 in' },
  }),
  judge([
    { characteristic: 'ring-end-gap', is: 'max(gaps)' },
    { characteristic: 'ring-end-gap-least', is: 'min(gaps)' },
  ]),
  decide,
]
/** Wear of the feelers' own register changes nothing here: other instruments stay as in the example. */
function defsOf(
  steps: readonly Raw[],
  change: { machine?: Definitions['machine']; instruments?: Raw[] } = {},
) {
  const instruments = (change.instruments ?? [MICROMETER, FEELERS]).map((one) => instrumentSchema.parse(one))
  const sources = {
    machine: change.machine ?? machine(),
    // Of the example's own only what the steps beside it take.
    instruments: {
      instruments: [
        ...base.instruments.instruments.filter((one) => one.kind === 'contact_thermometer'),
        ...instruments,
      ],
    },
  }
  const seats = { seats: SEATS }
  return smallDefs(steps, [], sources as Partial<Definitions>, seats)
}
const walk = (steps: readonly Raw[], lines: readonly string[], change: Parameters<typeof defsOf>[1] = {}) =>
  new Walk(defsOf(steps, change)).keys('RO', 'TC-401-1', ...lines)
const verdict = (one: Walk) => {
  const record = figureRecord(one.state.verdicts.judged?.verdict)
  if (record === undefined) throw new Error(`not judged, at ${one.prompt.kind}`)
  return record
}

// The thermometer is picked, then rod and micrometer temperature; the micrometer is picked, then the set-check.
const BEGIN = ['1', '68.0', '68.0', '1', '2.0000']

describe('a rod on a micrometer', () => {
  it('comes to the figures of a pencil, with the measuring error of each', () => {
    const record = verdict(walk(rodSteps(), [...BEGIN, '2.2480', '2.2484', '2.0000']))
    const [undersize, round] = record.inputs.figures
    const inch = (m: number | null | undefined) => (m ?? Number.NaN) / 0.0254
    expect(inch(undersize?.value)).toBeCloseTo(0.002, 7)
    expect(inch(round?.value)).toBeCloseTo(0.0004, 7)
    // One reading: certificate 0.0001 (k = 2); temperatures 0.8 degF (k = 2) on 2.25 in of steel, rod and micrometer.
    const t = 0.8 / 1.8 / 2
    const u = 2 * Math.hypot(0.0001 / 2, 2.248 * 11.5e-6 * t, 2.248 * 11.5e-6 * t)
    expect(inch(undersize?.expandedU)).toBeCloseTo(u, 8)
    expect(inch(round?.expandedU)).toBeCloseTo(u * Math.SQRT2, 7)
    expect(record.result.verdict).toBe('ACCEPT')
    expect(record.result.governs?.characteristics).toEqual(['rod-undersize', 'rod-out-of-round'])
    expect(record.readings).toHaveLength(6)
  })

  it('is brought to 20 degC: a rod 36 degF warmer than the micrometer reads large', () => {
    const warm = verdict(
      walk(rodSteps(), [
        ...['1', '104.0', '68.0', '3', 'it lay in the sun', '1', '2.0000'],
        ...['2.2480', '2.2480', '2.0000'],
      ]),
    )
    expect((warm.inputs.figures[0]?.value ?? 0) / 0.0254).toBeCloseTo(2.25 - 2.248 / (1 + 11.5e-6 * 20), 7)
  })

  it.each([
    [
      'a set-check after that is off',
      rodSteps(),
      [...BEGIN, '2.2480', '2.2484', '2.0002'],
      {},
      /set-check after/,
    ],
    [
      'no expansion of the rod on record',
      rodSteps(),
      [...BEGIN, '2.2480', '2.2484', '2.0000'],
      { machine: machine(LIMITS, { rod: { diameter: '2.250 in', source: 'x' } }) },
      /expansion of the rod/,
    ],
    [
      'no limit',
      rodSteps(),
      [...BEGIN, '2.2480', '2.2484', '2.0000'],
      { machine: machine(LIMITS.slice(1), { fallback: undefined }) },
      /no limit/,
    ],
    [
      'no stated error',
      rodSteps(),
      [...BEGIN, '2.2480', '2.2484', '2.0000'],
      { instruments: [{ ...MICROMETER, uncertainty: undefined }] },
      /measuring error/,
    ],
    [
      'a micrometer that nobody checked',
      [size('rod', 2), judge(ROD), decide],
      ['1', '2.2480', '2.2484'],
      {},
      /without a set-check/,
    ],
    ['a rod over its nominal', rodSteps(), [...BEGIN, '2.2503', '2.2504', '2.0000'], {}, /below zero/],
  ] as const)('holds on %s', (_what, steps, lines, change, why) => {
    const record = verdict(walk(steps, lines, change as Parameters<typeof defsOf>[1]))
    expect(record.result.verdict).toBe('HOLD')
    expect(record.result.holds.join(' ')).toMatch(why)
  })

  it('holds on a reading entered as not applicable, and says which', () => {
    const one = walk(rodSteps(), [...BEGIN, '2.2480'])
    one.keys('n/a', 'could not get at it', '2.0000')
    expect(verdict(one).result.verdict).toBe('HOLD')
    expect(verdict(one).result.holds.join(' ')).toContain('rod is not known')
  })

  it('falls with a correction, by name, and with an instrument found out of calibration', () => {
    expect(hangsOn(defsOf(rodSteps()), 'rod')).toEqual(['judged', 'decided'])
    expect(hangsOn(defsOf(rodSteps()), 'mic_temp')).toEqual(['judged', 'decided'])
    const one = walk(rodSteps(), [...BEGIN, '2.2480', '2.2484', '2.0000'])
    one.bring({ do: 'doubt-instrument', instrument: 'M-5', why: 'dropped', says: 'the shop' })
    expect(one.state.verdicts.judged?.void).toBe(true)
  })
})

describe('sizes of two instruments in one figure', () => {
  const SECOND: Raw = {
    ...MICROMETER,
    id: 'B-9',
    kind: 'inside_micrometer',
    range: { from: '1 in', to: '20 in' },
    set_check: { standard: 'R-2', size: '2.0000 in', within: '0.0001 in', source: 'Site rule (invented)' },
  }
  const seat = { id: 'inside', kinds: ['inside_micrometer'], for: 'the seat' }
  const inside = (id: string): Raw =>
    readOne(id, { with: 'inside', plausible: { from: 'range', least: '1 in', most: '3 in' } })
  const steps = (also: Raw | undefined): Raw[] => [
    ...rodSteps().slice(0, 5),
    inside('in_before'),
    inside('seat'),
    inside('in_after'),
    judge([{ characteristic: 'piston-clearance', is: 'seat - min(rod)' }], {
      at_20: AT_20,
      ...(also === undefined ? {} : { also_at_20: [also] }),
    }),
    decide,
  ]
  const ALSO = { ...AT_20, readings: ['seat'], set_before: 'in_before', set_after: 'in_after' }
  const limit = {
    characteristic: 'piston-clearance',
    at_most: '0.010 in',
    inclusive: true,
    beyond: 'REWORK',
    ...provenance,
  }
  const at = (also: Raw | undefined, after = '2.0000') => {
    const defs = smallDefs(
      steps(also),
      [],
      {
        machine: machine([limit]),
        instruments: {
          instruments: [
            ...base.instruments.instruments.filter((one) => one.kind === 'contact_thermometer'),
            ...[MICROMETER, SECOND].map((one) => instrumentSchema.parse(one)),
          ],
        },
      },
      { seats: [...SEATS, seat] },
    )
    const lines = [...BEGIN, '2.2480', '2.2484', '2.0000', '1', '2.0000', '2.2500', after]
    return verdict(new Walk(defs).keys('RO', 'TC-401-1', ...lines))
  }

  it('is judged with each bracketed by its own checks, errors of both added as squares', () => {
    const record = at(ALSO)
    expect((record.inputs.figures[0]?.value ?? 0) / 0.0254).toBeCloseTo(2.25 - 2.248, 6)
    const moves = record.inputs.figures[0]?.parts.map((part) => part.moves ?? Number.NaN) ?? []
    expect(moves.filter((m) => m > 0)).toHaveLength(2)
    expect(record.inputs.figures[0]?.expandedU).toBeCloseTo(Math.hypot(...moves), 12)
    expect(record.result.verdict).toBe('ACCEPT')
  })

  it('holds where the second has no checks, or one that is off', () => {
    expect(at(undefined).result.holds.join(' ')).toContain('B-9 measured here without a set-check')
    expect(at(ALSO, '2.0003').result.holds.join(' ')).toContain('set-check after')
  })
})

describe('gaps on feelers', () => {
  const at = (a: string, b: string) => verdict(walk(gapSteps, ['1', a, b]))
  it('needs no set-check, and bounds from both sides', () => {
    expect(at('0.030', '0.035').result.verdict).toBe('ACCEPT')
    expect(at('0.030', '0.062').result.verdict).toBe('REPLACE')
    expect(at('0.012', '0.035').result.verdict).toBe('REWORK')
    expect(at('0.0190', '0.035').result.verdict).toBe('HOLD')
  })

  it('shows the sums: the expression, the readings behind it, limit and source', () => {
    const one = walk(gapSteps, ['1', '0.030', '0.062'])
    const said = whyLines(one.engine.defs, one.state, one.prompt).join('\n')
    for (const part of [
      'ring end gap: max(gaps) = 0.06200 in',
      '1.2',
      'F-1',
      'at most 0.05700 in',
      'Machine book (invented)',
    ])
      expect(said).toContain(part)
    one.key('why ring end gap')
    expect(one.said.join('\n')).toContain('max(gaps)')
  })
})

describe('what is refused', () => {
  const refusal = (figures: Raw[]) => tryAssemble([...gapSteps.slice(0, 1), judge(figures), decide])
  it('an expression of another kind than its characteristic, or of a name that is not there', () => {
    expect(refusal([{ characteristic: 'nut-torque', is: 'max(gaps)' }])).toMatchObject({
      ok: false,
      error: { code: 'value-kind' },
    })
    expect(refusal([{ characteristic: 'ring-end-gap', is: 'max(gap)' }])).toMatchObject({ ok: false })
  })
})

describe('repeats of figures', () => {
  const twice: Raw[] = [
    readOne('gaps', {
      of: 'gap',
      with: 'feelers',
      stations: places(6),
      repeats: { at_least: 2, at_most: 3, within: '0.001 in' },
      plausible: { from: 'range', least: '0.001 in', most: '0.150 in' },
    }),
    judge([
      { characteristic: 'ring-end-gap', is: 'max(gaps)' },
      { characteristic: 'ring-end-gap-least', is: 'min(gaps)' },
    ]),
    decide,
  ]
  const inch = (m: number | null | undefined) => (m ?? Number.NaN) / 0.0254
  const EVEN = [
    '0.0280',
    '0.0285',
    '0.0310',
    '0.0315',
    '0.0320',
    '0.0325',
    '0.0330',
    '0.0335',
    '0.0340',
    '0.0345',
  ]

  it('are pooled over the places that one instrument read', () => {
    const [gap] = verdict(walk(twice, ['1', ...EVEN, '0.0350', '0.0355'])).inputs.figures
    // Six places 0.0005 apart: s = 0.0005 / sqrt 2 with 6 degrees of freedom; on the median of two s / sqrt 2.
    const [b, a] = [0.0005 / 2, 0.0005 / 2]
    const dof = Math.floor(6 * (Math.hypot(a, b) / a) ** 4 + 1e-9)
    expect(dof).toBe(24)
    // t at 95.45 in 100 for 24: 2.11 (GUM Table G.2 has 2.13 for 20 and 2.11 for 25, from memory).
    expect(inch(gap?.expandedU) / Math.hypot(a, b)).toBeCloseTo(2.11, 2)
  })

  it('of one place that stands out widen only the figure that is told from it', () => {
    const [most, least] = verdict(walk(twice, ['1', ...EVEN, '0.0350', '0.0380', '0.0355'])).inputs.figures
    expect(inch(least?.expandedU)).toBeLessThan(0.002)
    expect(inch(most?.expandedU)).toBeGreaterThan(0.004)
  })
})
