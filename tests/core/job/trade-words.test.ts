// The tables of hazards that set the machine going and of parts that figures are of cover every procedure that is shipped.
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { goingOf, isGoingKnown, PARTS_OF, partsOf } from '../../../src/core/job/trade-words.ts'
import { SHIPPED } from '../../helpers/shipped.ts'

interface RawStep {
  readonly kind: string
  readonly title: string
  readonly of?: string
  readonly quantity?: string
  readonly exposes?: readonly string[]
  readonly lets_in?: readonly string[]
}

interface RawProcedure {
  readonly procedure?: string
  readonly hazards?: readonly { readonly id: string; readonly name: string }[]
  readonly steps?: readonly RawStep[]
}

const procedures = SHIPPED.map(({ text }) => parse(text) as RawProcedure).filter((one) => one.procedure)
const hazards = new Map(procedures.flatMap((one) => (one.hazards ?? []).map(({ id, name }) => [id, name])))
const steps = procedures.flatMap((one) => one.steps ?? [])

const goingsOf = ({ title, exposes = [], lets_in = [] }: RawStep) =>
  lets_in.flatMap((id) =>
    exposes.includes(id) ? (goingOf({ id, name: hazards.get(id) ?? id }, title) ?? []) : [],
  )

describe('hazards that set something going', () => {
  it('are in the table, of every shipped procedure: none of them is told by words', () => {
    const byWords = [...hazards].filter(
      ([id, name]) => !isGoingKnown(id) && goingOf({ id, name }, 'First start') !== null,
    )
    expect(byWords).toEqual([])
  })

  it('of all shipped steps start the machine at the first start alone, and let gas in at one more', () => {
    const start = steps.filter((one) => goingsOf(one).includes('start')).map(({ title }) => title)
    const gas = steps.filter((one) => goingsOf(one).includes('on-the-way')).map(({ title }) => title)
    expect(start).toEqual(['First start, unloaded'])
    expect(gas).toEqual(['Gas in, slowly'])
  })

  it('of other names are told by words, and by the title of the step whether it runs then', () => {
    const engine = { id: 'e', name: 'the engine being started' }
    expect(goingOf(engine, 'Started, unloaded')).toBe('start')
    expect(goingOf(engine, 'Locks lent to the shop')).toBe('on-the-way')
    expect(goingOf({ id: 'start', name: 'the driver being started' }, 'Bored and honed')).toBeNull()
    expect(goingOf({ id: 'x', name: 'a sling that slips' }, 'First start')).toBeNull()
  })
})

describe('parts that a figure is of', () => {
  /** Quantities that go into the next baseline. */
  const kept = new Set(['length', 'mass', 'torque', 'angle'])

  it('are in the table for all that the shipped procedures read and a baseline keeps', () => {
    const read = steps.flatMap(({ kind, of = '', quantity = '' }) =>
      kind === 'read' && kept.has(quantity) ? [of.toLowerCase()] : [],
    )
    expect(read.length).toBeGreaterThan(30)
    expect([...new Set(read)].filter((of) => !Object.hasOwn(PARTS_OF, of))).toEqual([])
  })

  it('are all of those that make a clearance, and of other names the one that its words name', () => {
    expect(partsOf('Piston running clearance')).toEqual(['piston', 'riders', 'bore', 'liner'])
    expect(partsOf('counterbore diameter')).toEqual(['bore', 'liner'])
    expect(partsOf('third ring, gap')).toEqual(['rings'])
    expect(partsOf('dial of the coupling')).toEqual([])
    expect(partsOf('constructor')).toEqual([])
  })
})
