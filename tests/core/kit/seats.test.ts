// Which instruments of the register can do what the steps ask of them, and why the others cannot.
import { describe, expect, it } from 'vitest'
import type { DiameterGauge, Instrument } from '../../../src/core/definition/instruments.ts'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import { type Kit, kitOf } from '../../../src/core/kit/kit.ts'
import { kitLines } from '../../../src/core/kit/words.ts'
import { exampleDefs } from '../../helpers/example.ts'
import { shippedDefs } from '../../helpers/shipped-jobs.ts'
import { gate, type Raw, smallDefs, tell } from '../../helpers/small-job.ts'

const DAY = '2026-03-14'
const example = exampleDefs()

const seat = (kit: Kit, id: string) => {
  const found = kit.seats.find((one) => one.id === id)
  if (found === undefined) throw new Error(`no seat ${id}`)
  return found
}
const whys = (kit: Kit, id: string, instrument: string) =>
  seat(kit, id)
    .unfit.find((one) => one.id === instrument)
    ?.why.map((why) => why.say)
    .join('; ')

/** The example with some of its instruments changed, found by their ids. */
function changed(change: Partial<Record<string, (one: Instrument) => Instrument>>): Definitions {
  const { instruments } = example.instruments
  return {
    ...example,
    instruments: { instruments: instruments.map((one) => change[one.id]?.(one) ?? one), invented: true },
  }
}
const metres = (inches: number) =>
  ({ text: `${inches} in`, kind: 'length', value: inches, unit: 'in', si: inches * 0.0254 }) as const
type Gauge = DiameterGauge
const gauge = (change: Partial<Gauge>) => (one: Instrument) => ({ ...one, ...change }) as Instrument
const off = (inches: number) => ({
  expanded: metres(inches),
  k: 2,
  includes_resolution: true,
  source: 'test',
})

const read = (id: string, more: Raw = {}): Raw => ({
  id,
  kind: 'read',
  title: id,
  quantity: 'length',
  of: 'bore',
  with: 'gauge',
  drawing: 'none',
  stations: [{ id: 'a', label: 'a', at: 0.5 }],
  how: { inside_micrometer: 'Swing.', bore_gauge: 'Rock.' },
  repeats: { at_least: 1, at_most: 3, within: '0.0003 in' },
  plausible: { from: 'nominal', below: '0.01 in', above: '0.06 in' },
  ...more,
})
const measured = (more: Raw = {}): Raw => ({
  id: 'zero',
  kind: 'measured',
  ask: 'Read it.',
  place: 'head end',
  quantity: 'pressure-gauge',
  with: 'low',
  at_least: '-0.5 psig',
  at_most: '0.5 psig',
  source: 'test',
  approved_by: 'test',
  since: '2026-01-01',
  life: '1 h',
  ...more,
})
const LOW = { id: 'low', kinds: ['pressure_gauge'], for: 'the ends' }
const zeroed = (more: Raw = {}, defs: Partial<Definitions> = {}) => {
  const small = smallDefs([gate('point', ['start'], [measured(more)]), tell('end')])
  const seats = [...small.seats, { ...LOW, kinds: ['pressure_gauge' as const] }]
  return { ...small, ...defs, seats }
}

describe('the seats of a kit', () => {
  it('has one line for each seat that is read from, with what fits', () => {
    const kit = kitOf(example, DAY)
    expect(kit.seats.map((one) => [one.id, one.fit.map((fit) => fit.id)])).toEqual([
      ['meter', ['G-7', 'G-9']],
      ['thermometer', ['T-2']],
      ['gauge', ['M-3']],
    ])
    expect(kit.holds).toEqual([])
    expect(kit.verdictHolds).toEqual([])
    expect(seat(kit, 'gauge').fit[0]?.standard).toBe('ring R-95, 9.5000 in')
  })

  it('says the scale of one that what is read may lie beyond, and of no other', () => {
    const kit = kitOf(shippedDefs('running-data.yaml'), DAY)
    const { fit } = seat(kit, 'line_gauge')
    expect(fit.find((one) => one.id === 'P-7')?.scale).toMatch(/^\S+ psig to \S+ psig$/)
    expect(kitLines(kit).join('\n')).toMatch(
      /fit only if what is read there lies within \S+ psig to \S+ psig: P-7,/,
    )
    // Its window goes as far as the instrument does.
    expect(seat(kitOf(example, DAY), 'thermometer').fit[0]?.scale).toBeNull()
  })

  it('leaves out a seat that nothing is read from', () => {
    expect(kitOf(smallDefs([tell('a')]), DAY).seats).toEqual([])
    expect(kitOf(smallDefs([read('a')]), DAY).seats.map((one) => one.id)).toEqual(['gauge'])
  })

  it('holds where every calibration is past due; on the last day it stands', () => {
    expect(seat(kitOf(example, '2026-09-30'), 'gauge').held).toBeNull()
    const late = kitOf(example, '2026-10-01')
    expect(seat(late, 'gauge').fit).toEqual([])
    expect(whys(late, 'gauge', 'M-3')).toBe('its calibration lapsed on 2026-09-30')
    expect(late.holds.join('\n')).toMatch(
      /^an inside micrometer or bore gauge for the bore .*none in the register is fit\. M-3: its cal/m,
    )
    expect(seat(late, 'gauge').unfit.every((one) => one.refused)).toBe(true)
  })

  it('holds all of them on a day that cannot be read', () => {
    expect(kitOf(example, 'soon').holds).toHaveLength(3)
  })

  it('holds where the register has no such kind', () => {
    const none = zeroed({}, { instruments: { instruments: [], invented: true } })
    expect(kitOf(none, DAY).holds).toEqual(['a pressure gauge for the ends (step 1): none in the register.'])
  })

  it('names an instrument that shows coarser steps than repeats have to agree in', () => {
    const coarse = gauge({ resolution: metres(0.0004) })
    const kit = kitOf(changed({ 'M-3': coarse }), DAY)
    expect(whys(kit, 'gauge', 'M-3')).toContain('too coarse to agree within 0.0003 in')
    expect(seat(kit, 'gauge').unfit.find((one) => one.id === 'M-3')?.refused).toBe(false)
    expect(kit.holds).toHaveLength(1)
    // The last place of a double makes nothing coarser.
    const step = { ...metres(0.0002), si: 0.0002 * 0.0254 * (1 + 1e-12) }
    const just = kitOf(changed({ 'M-3': gauge({ resolution: step }) }), DAY)
    expect(just.holds).toEqual([])
  })

  it('names one that does not take in what is to be measured', () => {
    const short = gauge({ range: { from: metres(8), to: metres(9.4) } })
    expect(whys(kitOf(changed({ 'M-3': short }), DAY), 'gauge', 'M-3')).toContain('does not take in 9.500 in')
    const noBore = gauge({ range: { from: metres(8), to: metres(9.6) } })
    expect(whys(kitOf(changed({ 'M-3': noBore }), DAY), 'gauge', 'M-3')).toContain(
      'the counterbore is 9.750 in',
    )
  })

  it('names a thermometer whose scale lies elsewhere', () => {
    const hot = (from: string, to: string) => ({ from: 'range', least: from, most: to })
    const step = (plausible: Raw) =>
      smallDefs([
        read('a', {
          quantity: 'temperature',
          with: 'thermometer',
          how: { contact_thermometer: 'Press.' },
          repeats: { at_least: 1, at_most: 3, within: '1 delta-degF' },
          plausible,
        }),
      ])
    expect(whys(kitOf(step(hot('500 degF', '600 degF')), DAY), 'thermometer', 'T-2')).toContain(
      '500 degF to 600 degF is expected',
    )
    expect(kitOf(step(hot('300 degF', '600 degF')), DAY).holds).toEqual([])
  })

  it('names one of a kind that does not read it', () => {
    const kit = kitOf(smallDefs([read('a', { with: 'thermometer' })]), DAY)
    expect(whys(kit, 'thermometer', 'T-2')).toBe('it does not read length')
    expect(kit.holds).toHaveLength(1)
  })

  it('asks of a measured value what the hold point will ask', () => {
    const { instruments } = example.instruments
    const lowOnly = instruments.filter((one) => one.kind !== 'pressure_gauge' || one.id === 'P-4')
    const low = { instruments: { instruments: lowOnly, invented: true as const } }
    expect(kitOf(zeroed({}, low), DAY).holds).toEqual([])
    expect(whys(kitOf(zeroed({ at_least: '-0.1 psig', at_most: '0.1 psig' }, low), DAY), 'low', 'P-4')).toBe(
      'P-4 may be off by 0.2 psi (k = 2), too coarse for a limit of -0.1 psig to 0.1 psig',
    )
    expect(whys(kitOf(zeroed({ at_least: '20 psig', at_most: '30 psig' }, low), DAY), 'low', 'P-4')).toBe(
      'below 20 psig',
    )
    expect(kitOf(zeroed({ at_least: undefined, at_most: '0.2 psig' }, low), DAY).holds).toEqual([])
    expect(kitOf(zeroed({ at_least: undefined, at_most: '0.19 psig' }, low), DAY).holds).toHaveLength(1)
    expect(kitOf(zeroed({ at_least: '14.8 psig', at_most: undefined }, low), DAY).holds).toEqual([])
    expect(kitOf(zeroed({ at_least: '14.9 psig', at_most: undefined }, low), DAY).holds).toHaveLength(1)
  })

  it('names a meter that means nothing in inert gas, or means another LEL', () => {
    const gas = (limit: string) => [
      gate('point', ['start'], [{ id: 'g', kind: 'gas', ask: 'Read.', limit, with: 'meter' }]),
    ]
    const purge = kitOf(smallDefs(gas('purge_end')), DAY)
    expect(whys(purge, 'meter', 'G-7')).toBe('it does not read in gas without air')
    expect(seat(purge, 'meter').fit.map((one) => one.id)).toEqual(['G-9'])
    const other = changed({
      'G-9': (one) =>
        one.kind === 'gas_meter' ? { ...one, lel_basis: { ...one.lel_basis, gas: 'propane' } } : one,
    })
    expect(whys(kitOf(other, DAY), 'meter', 'G-9')).toContain('reads % LEL of propane')
    expect(kitOf(smallDefs(gas('nowhere')), DAY).holds).toHaveLength(1)
  })
})

describe('an instrument for a verdict', () => {
  it('is not fit where its error leaves nothing of a limit to accept', () => {
    // U of a difference is the root of 2 of it: 0.0055 in of taper is used up from 0.0039 in on.
    const taper = kitOf(changed({ 'M-3': gauge({ uncertainty: off(0.004) }) }), DAY)
    expect(whys(taper, 'gauge', 'M-3')).toMatch(
      /off by 0\.005\d in at best, which leaves nothing to accept of taper 0\.0055 in$/,
    )
    expect(kitOf(changed({ 'M-3': gauge({ uncertainty: off(0.0037) }) }), DAY).holds).toEqual([])
    const size = kitOf(changed({ 'M-3': gauge({ uncertainty: off(0.031) }) }), DAY)
    expect(whys(size, 'gauge', 'M-3')).toContain('largest-diameter 9.5300 in')
  })

  it('says why a limit cannot be judged by it at all', () => {
    const limits = example.machine.limits.map((limit) => ({ ...limit, at_most: metres(9.4) }))
    const kit = kitOf({ ...example, machine: { ...example.machine, limits } }, DAY)
    expect(whys(kit, 'gauge', 'M-3')).toContain('largest-diameter cannot be judged by it: the size that use')
  })

  it('is not fit where nobody stated its error, but for an owner who accepts that', () => {
    const { uncertainty: _, ...bare } = example.instruments.instruments.find(
      (one) => one.id === 'M-3',
    ) as Gauge
    const defs = changed({ 'M-3': () => bare })
    expect(whys(kitOf(defs, DAY), 'gauge', 'M-3')).toBe('nobody has stated how far off it may be')
    const machine = { ...defs.machine, simple_acceptance: { by: 'KH', since: '2026-01-01' } }
    expect(kitOf({ ...defs, machine }, DAY).holds).toEqual([])
  })

  it('is not fit without its thermal expansion', () => {
    const { expansion: _, ...bare } = example.instruments.instruments.find((one) => one.id === 'M-3') as Gauge
    expect(whys(kitOf(changed({ 'M-3': () => bare }), DAY), 'gauge', 'M-3')).toBe(
      'its thermal expansion is not on record',
    )
  })

  it('cannot help where the record has no limit or no expansion', () => {
    const { fallback: _, ...machine } = example.machine
    const { expansion: __, ...bore } = machine.bore
    const kit = kitOf({ ...example, machine: { ...machine, bore } }, DAY)
    expect(kit.verdictHolds).toHaveLength(4)
    expect(kit.verdictHolds.join()).toContain('there is no limit for the taper')
    expect(kit.verdictHolds.join()).toContain('the thermal expansion of the cylinder is not on record')
    expect(kit.holds).toEqual([])
  })
})

describe('a seat that no one instrument serves', () => {
  it('is held only where some use has none; else it says to change over', () => {
    const p4 = example.instruments.instruments.find((one) => one.id === 'P-4')
    if (p4?.kind !== 'pressure_gauge') throw new Error('no gauge')
    const psi = (n: number) =>
      ({ text: `${n} psig`, kind: 'pressure-gauge', value: n, unit: 'psig', si: n * 6894.757 }) as const
    const p9: Instrument = { ...p4, id: 'P-9', range: { from: psi(100), to: psi(300) } }
    const small = smallDefs([
      gate('low', ['start'], [measured()]),
      gate('high', ['fall'], [measured({ at_least: '150 psig', at_most: '200 psig' })]),
    ])
    const seats = [{ ...LOW, kinds: ['pressure_gauge' as const] }]
    const both = kitOf({ ...small, seats, instruments: { instruments: [p4, p9] } }, DAY)
    expect(both.holds).toEqual([])
    expect(seat(both, 'low')).toMatchObject({ fit: [], changesOver: true })
    const one = kitOf({ ...small, seats, instruments: { instruments: [p4] } }, DAY)
    expect(one.holds[0]).toContain(
      '(step 2): none in the register can do head end, 150 psig to 200 psig. P-4: below 150 psig',
    )
    expect(seat(one, 'low').changesOver).toBe(false)
  })
})
