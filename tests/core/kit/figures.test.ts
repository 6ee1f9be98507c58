// What a judge by figures asks of instruments and records, before anything is read.
import { describe, expect, it } from 'vitest'
import { instrumentSchema } from '../../../src/core/definition/instruments.ts'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import { kitOf } from '../../../src/core/kit/kit.ts'
import { exampleDefs } from '../../helpers/example.ts'
import { MICROMETER, machineWith } from '../../helpers/records.ts'
import { type Raw, readOne, smallDefs } from '../../helpers/small-job.ts'

const base = exampleDefs()
const others = base.instruments.instruments.filter((one) => one.kind !== 'outside_micrometer')
const off = (expanded: string) => ({ expanded, k: 2, includes_resolution: true, source: 'C (invented)' })
const limit = (characteristic: string, at_most: string): Raw => ({
  characteristic,
  at_most,
  inclusive: true,
  beyond: 'REPLACE',
  source: 'Machine book (invented)',
  approved_by: 'KH',
  since: '2026-01-01',
})
const LIMITS = [limit('rod-undersize', '0.005 in'), limit('rod-out-of-round', '0.001 in')]
const EXPANSION = { expansion: { per_kelvin: 11.5e-6, source: 'a table' } }

const machine = (limits = LIMITS, rod: Raw | null = EXPANSION) =>
  machineWith({
    limits,
    fallback: undefined,
    rod: rod === null ? undefined : { diameter: '2.250 in', source: 'Drawing (invented)', ...rod },
  })

const standard = { plausible: { from: 'standard', below: '0.01 in', above: '0.01 in' } }
const temperature = (id: string): Raw =>
  readOne(id, {
    quantity: 'temperature',
    with: 'thermometer',
    repeats: { at_least: 1, at_most: 2, within: '1 delta-degF' },
    plausible: { from: 'range', least: '0 degF', most: '160 degF' },
  })
const AT_20 = {
  readings: ['rod'],
  of: 'rod',
  part: ['rod_temp'],
  instrument: ['mic_temp'],
  set_before: 'before',
  set_after: 'after',
}

function kit(change: { mic?: Raw; machine?: Definitions['machine']; judge?: Raw } = {}) {
  const steps = [
    temperature('rod_temp'),
    temperature('mic_temp'),
    readOne('before', { with: 'micrometer', ...standard }),
    readOne('rod', {
      with: 'micrometer',
      stations: [1, 2].map((n) => ({ id: `s${n}`, label: `place ${n}`, at: n / 10 })),
      plausible: { from: 'record', of: 'rod_diameter', below: '0.1 in', above: '0.01 in' },
    }),
    readOne('after', { with: 'micrometer', ...standard }),
    {
      id: 'judged',
      kind: 'judge',
      title: 'Rod judged',
      compute: 'figures',
      figures: [
        { characteristic: 'rod-undersize', is: 'machine.rod_diameter - min(rod)' },
        { characteristic: 'rod-out-of-round', is: 'spread(rod)' },
      ],
      at_20: AT_20,
      ...change.judge,
    },
  ]
  const seats = [
    { id: 'thermometer', kinds: ['contact_thermometer'], for: 'temperatures' },
    { id: 'micrometer', kinds: ['outside_micrometer'], for: 'the rod' },
  ]
  const mic = instrumentSchema.parse({ ...MICROMETER, ...change.mic })
  const sources: Partial<Definitions> = {
    machine: change.machine ?? machine(),
    instruments: { instruments: [...others, mic] },
  }
  return kitOf(smallDefs(steps, [], sources, { seats }), '2026-03-14')
}
const whys = (one: ReturnType<typeof kit>) =>
  one.seats
    .find((seat) => seat.id === 'micrometer')
    ?.unfit.flatMap(({ why }) => why.map(({ say }) => say))
    .join('; ')

describe('a judge by figures', () => {
  it('asks its limits of the instruments behind each figure', () => {
    const found = kit()
    expect(found.holds).toEqual([])
    expect(found.verdictHolds).toEqual([])
    const mic = found.seats.find((seat) => seat.id === 'micrometer')
    expect(mic?.asks.map((one) => one.what)).toContain('rod undersize judged at 0.005 in')
    expect(mic?.fit).toMatchObject([{ id: 'M-5', standard: 'S-2, 2.0000 in' }])
    expect(mic?.steps.numbers).toEqual([3, 4, 5, 6])
  })

  it('holds a seat whose instrument may be off by the whole of a limit', () => {
    expect(kit({ mic: { uncertainty: off('0.0009 in') } }).holds).toEqual([])
    const coarse = kit({ mic: { uncertainty: off('0.0011 in') } })
    expect(coarse.holds).toHaveLength(1)
    expect(whys(coarse)).toBe(
      'it may be off by as much as the limit of rod out of round, which leaves nothing to accept',
    )
  })

  it('holds one without a stated error, expansion, set-check or span for it', () => {
    expect(whys(kit({ mic: { uncertainty: undefined } }))).toContain('nobody has stated how far off')
    expect(whys(kit({ mic: { expansion: undefined } }))).toContain('thermal expansion is not on record')
    expect(whys(kit({ judge: { at_20: undefined } }))).toContain('no set-check brackets what it reads')
    const large = { range: { from: '2 in', to: '2.2 in' } }
    expect(whys(kit({ mic: large }))).toContain('the rod diameter is 2.250 in')
  })

  it('says what the record lacks for a verdict', () => {
    expect(kit({ machine: machine(LIMITS.slice(0, 1)) }).verdictHolds).toEqual([
      'Step 6 comes to HOLD whatever is read: there is no limit for the rod out of round.',
    ])
    const { verdictHolds } = kit({ machine: machine(LIMITS, null) })
    expect(verdictHolds.join()).toContain('machine.rod_diameter is not on record')
    expect(kit({ machine: machine(LIMITS, {}) }).verdictHolds.join()).toContain(
      'the thermal expansion of the rod is not on record',
    )
  })
})
