// The instrument register: what each can measure, how well, and until when its calibration stands.
import { z } from 'zod'
import { day, expansion, label, line, short, written } from './common.ts'

const calibration = z.strictObject({ due: day, certificate: short })

const diameterGauge = z.strictObject({
  id: label,
  kind: z.enum(['inside_micrometer', 'bore_gauge']),
  title: short,
  unit: z.enum(['in', 'mm']),
  range: z.strictObject({ from: written('length'), to: written('length') }),
  resolution: written('length'),
  /** Left out when nobody has stated one: then no verdict without the owner's recorded simple acceptance. */
  uncertainty: z
    .strictObject({
      expanded: written('length'),
      k: z.number().min(1, 'is below 1').max(4, 'is above 4'),
      includes_resolution: z.boolean(),
      source: line,
    })
    .optional(),
  expansion: expansion.optional(),
  set_check: z.strictObject({
    standard: short,
    size: written('length').meta({ description: 'Certified size of the setting standard at 20 degC.' }),
    expansion: expansion.optional().meta({
      description: "Of the standard; without it the standard counts as the instrument's own material.",
    }),
    within: written('length').meta({ description: 'Largest allowed deviation from it.' }),
    source: line,
  }),
  calibration,
})

const thermometer = z.strictObject({
  id: label,
  kind: z.literal('contact_thermometer'),
  title: short,
  unit: z.enum(['degF', 'degC']),
  range: z.strictObject({
    from: written('temperature', { signed: true }),
    to: written('temperature', { signed: true }),
  }),
  resolution: written('temperature-difference'),
  uncertainty: z.strictObject({
    expanded: written('temperature-difference'),
    k: z.number().min(1, 'is below 1').max(4, 'is above 4'),
    source: line,
  }),
  calibration,
})

const gasMeter = z.strictObject({
  id: label,
  kind: z.literal('gas_meter'),
  title: short,
  flammable_sensor: z.enum(['catalytic', 'infrared']),
  /** Below this oxygen the flammables reading means nothing on this sensor. 0 %vol where it needs none. */
  needs_oxygen: z.strictObject({ at_least: written('concentration'), source: line }),
  lel_basis: z.strictObject({ gas: short, lower_limit: written('concentration') }),
  calibration,
})

export const instrumentSchema = z.discriminatedUnion('kind', [diameterGauge, thermometer, gasMeter])
export const instrumentsSchema = z.strictObject({
  instruments: z.array(instrumentSchema).min(1, 'has no instruments'),
})

export type Instruments = z.output<typeof instrumentsSchema>
export type Instrument = z.output<typeof instrumentSchema>
export type DiameterGauge = z.output<typeof diameterGauge>
export type Thermometer = z.output<typeof thermometer>
export type GasMeter = z.output<typeof gasMeter>
