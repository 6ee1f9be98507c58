// Which limit counts, of the shipped handbook and of the machine's own: shares, multiples, fixed figures, and the conditions under
// which a row is for another machine. Figures: H. P. Bloch & J. J. Hoefner, Reciprocating Compressors, Gulf 1996, pages as named.
import { describe, expect, it } from 'vitest'
import type { CharacteristicId } from '../../../src/core/definition/characteristics.ts'
import { limitsFor } from '../../../src/core/job/limits.ts'
import { exampleDefs } from '../../helpers/example.ts'
import { machineWith } from '../../helpers/records.ts'
import type { Raw } from '../../helpers/small-job.ts'

const base = exampleDefs()
const IN = 0.0254
const provenance = { source: 'Machine book (invented)', approved_by: 'KH', since: '2026-01-01' }
const piston = { construction: 'solid', material: 'iron', source: 'Drawing (invented)' }
const rings = {
  material: 'cast-iron',
  joint: 'butt',
  count: 3,
  width: '0.375 in',
  new_gap: '0.020 in',
  source: 'Drawing (invented)',
}
const bore = (nominal: string, more: Raw = {}) => ({
  nominal,
  lined: true,
  material: 'grey cast iron',
  stroke: '11.00 in',
  ring_travel: { from: '3.10 in', to: '14.10 in' },
  rings: 'metallic',
  ...more,
})
function limit(characteristic: CharacteristicId, more: Raw) {
  const machine = machineWith({ limits: [], bore: bore('10.000 in'), piston, rings, ...more })
  return limitsFor({ ...base, machine }, [characteristic])[characteristic] ?? null
}
const inches = (characteristic: CharacteristicId, more: Raw = {}) =>
  (limit(characteristic, more)?.value ?? Number.NaN) / IN
const none = (characteristic: CharacteristicId, more: Raw) => expect(limit(characteristic, more)).toBeNull()

describe('the handbook, by example at 10 in', () => {
  it('three times the new gap (p. 261 and 281), and the least gap of iron (table 4-4, p. 272)', () => {
    expect(inches('ring-end-gap')).toBeCloseTo(0.06, 12)
    expect(inches('ring-end-gap-least')).toBeCloseTo(0.02, 12)
    const ptfe = { rings: { ...rings, material: 'ptfe' }, bore: bore('10.000 in', { rings: 'ptfe' }) }
    expect(inches('ring-end-gap-least', ptfe)).toBeCloseTo(0.17, 12)
  })

  it('a share and an addition: riders of an iron and of an aluminium piston (p. 269)', () => {
    expect(inches('rider-clearance-least')).toBeCloseTo(0.02, 12)
    expect(inches('rider-clearance-least', { piston: { ...piston, material: 'aluminium' } })).toBeCloseTo(
      0.03,
      12,
    )
  })

  it('a floor: side clearance of a 0.25 in iron ring is 0.002 in, not 0.0015 (table 4-4, p. 272)', () => {
    expect(inches('ring-side-clearance-least', { rings: { ...rings, width: '0.500 in' } })).toBeCloseTo(
      0.003,
      12,
    )
    expect(inches('ring-side-clearance-least', { rings: { ...rings, width: '0.250 in' } })).toBeCloseTo(
      0.002,
      12,
    )
  })

  it('a fixed figure: rod straight within 0.001 in (p. 290)', () => {
    expect(inches('rod-straightness')).toBeCloseTo(0.001, 12)
  })

  it('liners up to 16 in (p. 262) and none above', () => {
    expect(inches('liner-interference', { bore: bore('16.000 in') })).toBeCloseTo(0.002, 12)
    none('liner-interference', { bore: bore('16.001 in') })
  })
})

describe('none at all', () => {
  it.each([
    ['of a ring whose material nobody put on record', 'ring-end-gap-least', { rings: undefined }],
    [
      'of a multiple of a gap that is not on record',
      'ring-end-gap',
      { rings: { ...rings, new_gap: undefined } },
    ],
    ['of a piston whose material nobody put on record', 'piston-clearance-least', { piston: undefined }],
    ['of what the book does not speak of', 'nut-torque', {}],
    ['without a book that a lead named', 'rod-straightness', { fallback: undefined }],
  ] as const)('%s', (_what, characteristic, more) => none(characteristic, more))
})

describe('the machine’s own', () => {
  const own = (more: Raw) => ({
    limits: [{ characteristic: 'rod-undersize', inclusive: true, beyond: 'REPLACE', ...provenance, ...more }],
  })
  it('comes before the book, and one that cannot be applied is none: the book does not step in', () => {
    expect(inches('rod-undersize', own({ at_most: '0.003 in' }))).toBeCloseTo(0.003, 12)
    none('rod-undersize', own({ at_least: '0.003 in' }))
    none('rod-undersize', own({ at_most: '0.003 in', at_least: '0.001 in' }))
    none('rod-undersize', own({ at_most: '3 deg' }))
  })

  it('two for one thing are none', () => {
    const [one] = own({ at_most: '0.003 in' }).limits
    none('rod-undersize', { limits: [one, one] })
  })
})

it('the share to watch from that goes with a book counts for limits from above only', () => {
  expect(limit('ring-end-gap', {})?.monitorFrom).toBeCloseTo(0.7, 12)
  expect(limit('ring-end-gap-least', {})?.monitorFrom).toBeUndefined()
})
