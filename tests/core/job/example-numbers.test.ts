// The example's verdict worked by plain arithmetic, step by step, and compared with what the engine came to.
// Nothing of ours is called for the figures below, only to get the engine's own.
import { expect, it } from 'vitest'
import { boreRecord } from '../../../src/core/job/verdict-record.ts'
import { Walk } from '../../helpers/example.ts'

it('comes to the figures of a pencil', () => {
  const walk = new Walk().toVerdict()
  const record = boreRecord(walk.state.verdicts.bore_judged?.verdict)
  if (record === undefined) throw new Error('not judged')
  const { result, inputs } = record
  const inch = (m: number | null | undefined) => (m ?? Number.NaN) / 0.0254

  // Means of two, in inches, as keyed in BORE_LINES: top to bottom, side to side.
  const headEnd = { v: (9.5033 + 9.5034) / 2, h: (9.5021 + 9.502) / 2 }
  const centre = { v: (9.5068 + 9.5069) / 2, h: (9.5034 + 9.5035) / 2 }
  const crankEnd = { v: 9.5027, h: (9.5018 + 9.5019) / 2 }

  // Mean temperatures: bore 71.2 and 71.6 degF, gauge 70.4 and 70.8 degF, as degrees C above 20.
  const boreOver = ((71.2 + 71.6) / 2 - 32) / 1.8 - 20
  const gaugeOver = ((70.4 + 70.8) / 2 - 32) / 1.8 - 20
  // GUM H.1: what the gauge shows, longer by its own expansion, shorter by the bore's. Steel 11.5e-6, iron 10.8e-6 per K.
  const to20 = (1 + 11.5e-6 * gaugeOver) / (1 + 10.8e-6 * boreOver)

  const sizes = [headEnd.v, headEnd.h, centre.v, centre.h, crankEnd.v, crankEnd.h].map((d) => d * to20)
  const largest = Math.max(...sizes)
  const smallest = Math.min(...sizes)
  const outOfRound = Math.max(headEnd.v - headEnd.h, centre.v - centre.h, crankEnd.v - crankEnd.h) * to20
  const taper = (centre.v - crankEnd.v) * to20
  const spread = largest - smallest

  expect(inch(result.form?.worstRound.outOfRoundM)).toBeCloseTo(outOfRound, 9)
  expect(outOfRound).toBeCloseTo(0.0034, 6)
  expect(inch(result.form?.worstTaper.taperM)).toBeCloseTo(taper, 9)
  expect(taper).toBeCloseTo(0.00415, 6)
  expect(inch(result.form?.spreadM)).toBeCloseTo(spread, 9)
  expect(spread).toBeCloseTo(0.005, 6)
  expect(inch(result.form?.largest.valueM)).toBeCloseTo(largest, 9)
  expect(result.form?.largest).toMatchObject({ station: 'centre', axis: 'vertical' })
  expect(result.form?.smallest).toMatchObject({ station: 'crank_end', axis: 'horizontal' })

  // Wear: from nominal, and from the unswept strip on its own axis (9.5008 top to bottom, 9.5007 side to side).
  expect(inch(result.wearFromNominalM)).toBeCloseTo(centre.v * to20 - 9.5, 9)
  const wear = Object.fromEntries((result.wearFromDatum?.perAxis ?? []).map((a) => [a.axis, inch(a.wearM)]))
  expect(wear.vertical).toBeCloseTo((centre.v - 9.5008) * to20, 9)
  expect(wear.horizontal).toBeCloseTo((centre.h - 9.5007) * to20, 9)

  // U of one diameter, k = 2, in inches. Certificate 0.0003 (k = 2, resolution inside). Temperature: the thermometer
  // 0.8 degF (k = 2) and half the drift of 0.4 degF taken as evenly likely. Repeats: five of six places 0.0001 apart, one not
  // at all, and the strip read twice alike on both axes: s of one reading squared is 5 x 0.0001^2 / 2 over 8 degrees of freedom.
  const uTemperature = Math.hypot(0.8 / 1.8 / 2, 0.4 / 1.8 / 2 / Math.sqrt(3))
  const terms = [
    0.0003 / 2,
    9.5 * 10.8e-6 * uTemperature,
    9.5 * 11.5e-6 * uTemperature,
    Math.sqrt((5 * 0.0001 ** 2) / 2 / 8) / Math.sqrt(2),
  ]
  const uc = Math.sqrt(terms.reduce((sum, t) => sum + t * t, 0))
  // Effective degrees of freedom (GUM G.4.1): so many that t at 95.45 in 100 is 2 and the first term of its expansion
  // (Abramowitz & Stegun 26.7.5).
  const dof = Math.floor(8 * (uc / (terms[3] ?? 0)) ** 4)
  expect(dof).toBe(2091)
  const u = (2 + (2 ** 3 + 2) / 4 / dof) * uc
  expect(inch(inputs.readingU)).toBeCloseTo(u, 9)
  expect(inch(inputs.differenceU)).toBeCloseTo(u * Math.sqrt(2), 9)
  expect(u).toBeCloseTo(0.00032, 5)

  // Limits: 0.001 of the bore, 0.0005 of the stroke, 0.00075 of the bore; the machine's own 9.530.
  const limits = { 'out-of-round': 0.0095, taper: 0.0055, spread: 0.007125, 'largest-diameter': 9.53 }
  const shares = {
    'out-of-round': outOfRound / 0.0095,
    taper: taper / 0.0055,
    spread: spread / 0.007125,
    'largest-diameter': (largest - 9.5) / (9.53 - 9.5),
  }
  for (const one of result.judged) {
    expect(inch(one.limit?.value)).toBeCloseTo(limits[one.characteristic], 9)
    expect(one.judgement.used).toBeCloseTo(shares[one.characteristic], 6)
  }
  // Each stands inside its limit by more than its U; taper and spread use over 70 % of theirs, taper most.
  expect(taper + u * Math.sqrt(2)).toBeLessThan(0.0055)
  expect(spread + u * Math.sqrt(2)).toBeLessThan(0.007125)
  expect(Object.fromEntries(result.judged.map((j) => [j.characteristic, j.judgement.verdict]))).toEqual({
    'out-of-round': 'ACCEPT',
    taper: 'MONITOR',
    spread: 'MONITOR',
    'largest-diameter': 'ACCEPT',
  })
  expect(result.governs?.characteristics).toEqual(['taper'])
  expect(result.verdict).toBe('MONITOR')
})
