// The instrument register: what each can measure, how well, and until when its calibration stands.
import { z } from 'zod'
import type { QuantityKind } from '../units/index.ts'
import { day, expansion, invented, label, short, source, written } from './common.ts'

const id = label.meta({ description: 'The number on its sticker, as people call it out.', examples: ['M-3'] })
const title = short.meta({ description: 'What it is, as the screen names it.' })
const calibration = z
  .strictObject({
    due: day.meta({
      description: 'The last day its calibration stands; after it the instrument is refused.',
    }),
    certificate: short.meta({ description: 'Number of the certificate.' }),
  })
  .meta({ description: 'Until when it may be used, and on which certificate.' })
const certified = source.meta({ description: 'Certificate or manual the figure comes from.' })
const coverage = z
  .number()
  .min(1, 'is below 1')
  .max(4, 'is above 4')
  .meta({ description: 'Coverage factor of the expanded uncertainty; most certificates state 2.' })

const uncertainty = z.strictObject({
  expanded: written('length').meta({ description: 'Expanded uncertainty U on the certificate.' }),
  k: coverage,
  includes_resolution: z
    .boolean()
    .meta({ description: 'true: U on the certificate already covers reading to the resolution.' }),
  source: certified,
})

const setCheck = z.strictObject({
  standard: short.meta({ description: 'The ring or block it is checked on, by its number.' }),
  size: written('length').meta({ description: 'Certified size of the setting standard at 20 degC.' }),
  expansion: expansion.optional().meta({
    description: "Of the standard; without it the standard counts as the instrument's own material.",
  }),
  within: written('length').meta({ description: 'Largest allowed deviation from it.' }),
  source: source.meta({ description: 'Site rule or manual that sets the deviation.' }),
})

const diameterGauge = z.strictObject({
  id,
  kind: z.enum(['inside_micrometer', 'bore_gauge', 'outside_micrometer']).meta({
    description: 'How it is handled: swung and tilted, rocked for the least, or closed on the part.',
  }),
  title,
  unit: z.enum(['in', 'mm']).meta({ description: 'The unit it shows; readings are keyed in it.' }),
  range: z
    .strictObject({
      from: written('length').meta({ description: 'Least it can measure.' }),
      to: written('length').meta({ description: 'Most it can measure.' }),
    })
    .meta({ description: 'What it spans with the rods or anvils it comes with.' }),
  resolution: written('length').meta({ description: 'Smallest step it shows.' }),
  uncertainty: uncertainty.optional().meta({
    description:
      "Measuring error from its certificate. Leave out when nobody has stated one: then no verdict without the owner's simple acceptance.",
  }),
  expansion: expansion.optional().meta({
    description: 'Thermal expansion of its body; without it nothing measured is brought to 20 degC.',
  }),
  set_check: setCheck.meta({ description: 'What it is checked on before and after each set of readings.' }),
  types_itself: z.boolean().optional().meta({
    description:
      'true: it types what it reads, by wire or radio, so readings may come faster than anyone keys.',
  }),
  calibration,
})

/** An instrument that is read and not set on a standard first: one kind of quantity, one unit, a range, a step. */
function plainGauge<K extends string, U extends string>(
  kinds: readonly [K, ...K[]],
  units: readonly [U, ...U[]],
  quantity: QuantityKind,
  description: string,
) {
  return z.strictObject({
    id,
    kind: z.enum(kinds).meta({ description }),
    title,
    unit: z.enum(units).meta({ description: 'The unit it shows; readings are keyed in it.' }),
    range: z
      .strictObject({
        from: written(quantity, { signed: true }).meta({ description: 'Least it can show.' }),
        to: written(quantity, { signed: true }).meta({ description: 'Most it can show.' }),
      })
      .meta({ description: 'Between which values it reads.' }),
    resolution: written(quantity).meta({
      description: 'Smallest step it shows; of a set of feelers, the smallest step between two packs.',
    }),
    uncertainty: z
      .strictObject({
        expanded: written(quantity).meta({ description: 'Expanded uncertainty U on the certificate.' }),
        k: coverage,
        includes_resolution: z
          .boolean()
          .meta({ description: 'true: U on the certificate already covers reading to the resolution.' }),
        source: certified,
      })
      .optional()
      .meta({ description: 'Measuring error from its certificate. Left out: what it measured is HOLD.' }),
    calibration,
  })
}

const lengthGauge = plainGauge(
  ['feeler_gauge', 'depth_gauge', 'dial_indicator', 'caliper', 'roughness_comparator'],
  ['in', 'mm', 'mil', 'um'],
  'length',
  'What it is: feelers, a depth gauge, a dial, a caliper, or a comparator for the finish of a surface.',
)
const scale = plainGauge(['scale'], ['lb', 'kg'], 'mass', 'A scale or a load cell on the hook.')
const torqueWrench = plainGauge(
  ['torque_wrench'],
  ['ft-lb', 'N.m'],
  'torque',
  'A wrench or a tensioner that shows torque.',
)
const angleGauge = plainGauge(['angle_gauge'], ['deg'], 'angle', 'A protractor on a nut or a hand-wheel.')
const powerMeter = plainGauge(['power_meter'], ['hp', 'kW'], 'power', 'What shows the load on the driver.')
const timer = plainGauge(['hour_counter', 'stop_watch'], ['h', 'min', 's'], 'time', 'What counts time.')

const degrees = written('temperature', { signed: true })

const thermometer = z.strictObject({
  id,
  kind: z.literal('contact_thermometer').meta({ description: 'A thermometer pressed on the metal.' }),
  title,
  unit: z.enum(['degF', 'degC']).meta({ description: 'The unit it shows.' }),
  range: z
    .strictObject({
      from: degrees.meta({ description: 'Coldest it can read.' }),
      to: degrees.meta({ description: 'Hottest it can read.' }),
    })
    .meta({ description: 'Between which temperatures it reads.' }),
  resolution: written('temperature-difference').meta({ description: 'Smallest step it shows.' }),
  uncertainty: z
    .strictObject({
      expanded: written('temperature-difference').meta({
        description: 'Expanded uncertainty U on the certificate, as a difference: 0.8 delta-degF.',
      }),
      k: coverage,
      source: certified,
    })
    .meta({ description: 'Measuring error from its certificate.' }),
  calibration,
})

const gaugePressure = written('pressure-gauge', { signed: true })

const pressureGauge = z.strictObject({
  id,
  kind: z.literal('pressure_gauge').meta({ description: 'A gauge for pressure above the air outside.' }),
  title,
  unit: z
    .enum(['psig', 'barg', 'kPag', 'MPag'])
    .meta({ description: 'The unit it shows; readings are keyed in it.' }),
  range: z
    .strictObject({
      from: gaugePressure.meta({ description: 'Lowest mark on its face.' }),
      to: gaugePressure.meta({ description: 'Highest mark on its face.' }),
    })
    .meta({ description: 'Between which pressures it reads.' }),
  resolution: written('pressure-difference').meta({ description: 'Smallest step that can be read on it.' }),
  uncertainty: z
    .strictObject({
      expanded: written('pressure-difference').meta({
        description: 'Expanded uncertainty U on the certificate, as a difference: 0.1 psi.',
      }),
      k: coverage,
      source: certified,
    })
    .meta({ description: 'Measuring error from its certificate.' }),
  calibration,
})

const gasMeter = z.strictObject({
  id,
  kind: z.literal('gas_meter').meta({ description: 'A portable meter for oxygen, flammables and toxics.' }),
  title,
  flammable_sensor: z
    .enum(['catalytic', 'infrared'])
    .meta({ description: 'How it senses what burns; a catalytic one needs oxygen to do so.' }),
  needs_oxygen: z
    .strictObject({
      at_least: written('concentration').meta({
        description:
          'Below this oxygen its reading of flammables means nothing; 0 %vol for a sensor that needs none.',
      }),
      source: source.meta({ description: 'Manual of the meter.' }),
    })
    .meta({ description: 'Oxygen that its flammables sensor needs.' }),
  reads_in_inert: z
    .strictObject({ source: source.meta({ description: 'Manual of the meter.' }) })
    .optional()
    .meta({
      description:
        'Stands here if it reads what burns in % of the volume, and does so in gas without air, as at the end of a purge.',
    }),
  lel_basis: z
    .strictObject({
      gas: short.meta({ description: 'Gas that its 100 %LEL is set to.' }),
      lower_limit: written('concentration').meta({
        description: 'Lower explosive limit it takes for that gas.',
      }),
    })
    .meta({ description: 'What its %LEL means; it must be what the machine record states.' }),
  calibration,
})

export const instrumentSchema = z.discriminatedUnion('kind', [
  diameterGauge,
  lengthGauge,
  thermometer,
  pressureGauge,
  scale,
  torqueWrench,
  angleGauge,
  powerMeter,
  timer,
  gasMeter,
])
export const instrumentsSchema = z
  .strictObject({
    instruments: z
      .array(instrumentSchema)
      .min(1, 'has no instruments')
      .meta({ description: 'Every instrument that may be used, one entry each.' }),
    invented,
  })
  .meta({
    title: 'Instrument register',
    description: 'What each instrument measures, how well, and until when.',
  })

export type Instruments = z.output<typeof instrumentsSchema>
export type Instrument = z.output<typeof instrumentSchema>
export type DiameterGauge = z.output<typeof diameterGauge>
export type Thermometer = z.output<typeof thermometer>
export type PressureGauge = z.output<typeof pressureGauge>
export type GasMeter = z.output<typeof gasMeter>

/** Whatever is read as it stands, without a standard to set it on. */
export type PlainGauge = z.output<
  | typeof lengthGauge
  | typeof scale
  | typeof torqueWrench
  | typeof angleGauge
  | typeof powerMeter
  | typeof timer
>
/** Whatever shows one figure with a step and an error of its own. */
export type Reader = Exclude<Instrument, GasMeter>

/** Kinds of quantity that a step may read. */
export const READ_QUANTITIES = [
  'length',
  'temperature',
  'pressure-gauge',
  'mass',
  'torque',
  'angle',
  'power',
  'time',
] as const
export type ReadQuantity = (typeof READ_QUANTITIES)[number]

/** Which kinds of instrument read a quantity. */
export const READS: Readonly<Record<ReadQuantity, readonly Reader['kind'][]>> = {
  length: [
    'inside_micrometer',
    'bore_gauge',
    'outside_micrometer',
    'feeler_gauge',
    'depth_gauge',
    'dial_indicator',
    'caliper',
    'roughness_comparator',
  ],
  temperature: ['contact_thermometer'],
  'pressure-gauge': ['pressure_gauge'],
  mass: ['scale'],
  torque: ['torque_wrench'],
  angle: ['angle_gauge'],
  power: ['power_meter'],
  time: ['hour_counter', 'stop_watch'],
}

/** All kinds that a seat may take. */
export const INSTRUMENT_KINDS: readonly [Instrument['kind'], ...Instrument['kind'][]] = [
  'gas_meter',
  ...READ_QUANTITIES.flatMap((quantity) => READS[quantity]),
]

/** The kind that a difference of two readings of a quantity has. */
export const DIFFERENCE_OF: Readonly<Record<ReadQuantity, QuantityKind>> = {
  length: 'length',
  temperature: 'temperature-difference',
  'pressure-gauge': 'pressure-difference',
  mass: 'mass',
  torque: 'torque',
  angle: 'angle',
  power: 'power',
  time: 'time',
}

const ON_A_STANDARD: readonly string[] = ['inside_micrometer', 'bore_gauge', 'outside_micrometer']

/** Whether it is set on a standard, and so has to be checked on it before and after what it measures. */
export function isSetOnStandard(instrument: Instrument): instrument is DiameterGauge {
  return ON_A_STANDARD.includes(instrument.kind)
}

/** How far past its first and last mark a gauge that is set on a standard still turns, as a share of its span: our own figure, no source. */
const PAST_ITS_MARKS = 0.01

/** Between which figures an instrument can show anything, SI: a standard at its last mark is read a little past it too. */
export function reachOf(instrument: Reader): { readonly from: number; readonly to: number } {
  const { from, to } = instrument.range
  const past = isSetOnStandard(instrument) ? (to.si - from.si) * PAST_ITS_MARKS : 0
  return { from: from.si - past, to: to.si + past }
}
