// The machine record: one cylinder, its site, its limits. Everything a verdict or a gate needs to know about the place.
import { z } from 'zod'
import { day, expansion, identifier, label, line, provenance, short, written } from './common.ts'
import { beyond, characteristic } from './limit-book.ts'

/** A gas limit names its place and purpose: one for one place or purpose never satisfies another. */
const gasLimit = z.strictObject({
  id: identifier,
  gas: z.enum(['oxygen', 'flammable', 'hydrogen_sulfide']),
  place: z.enum(['breathing_zone', 'in_the_opening']),
  purpose: short,
  at_least: written('concentration').optional(),
  at_most: z.union([written('concentration'), written('lel-fraction')]).optional(),
  ...provenance,
})

const site = z.strictObject({
  name: short,
  barometer: written('pressure-absolute').meta({ description: 'Site barometric pressure, absolute.' }),
  emergency: line.meta({ description: 'Who to call and where to muster; shown at every STOP.' }),
  isolation_points: z
    .array(z.strictObject({ id: identifier, name: short }))
    .min(1, 'has no isolation points'),
  gas: z.strictObject({
    life: written('time').meta({ description: 'How long a gas test stands, at most.' }),
    warn_before: written('time').meta({ description: 'How long before that the screen warns.' }),
    lel_basis: z.strictObject({ gas: short, lower_limit: written('concentration'), source: line }),
    limits: z.array(gasLimit).min(1, 'has no gas limits'),
    ...provenance,
  }),
})

const bore = z.strictObject({
  nominal: written('length'),
  as_made: z.strictObject({ plus: written('length'), minus: written('length'), source: line }).optional(),
  as_bored: z
    .strictObject({ diameter: written('length'), source: line })
    .optional()
    .meta({
      description:
        'As-bored or as-left diameter on record: the datum of wear where no unswept strip is left.',
    }),
  lined: z.boolean(),
  material: short,
  expansion: expansion.optional(),
  counterbore: written('length').optional(),
  stroke: written('length'),
  ring_travel: z.strictObject({ from: written('length'), to: written('length') }).meta({
    description: 'Ends of ring travel, measured from the head-end face of the cylinder.',
  }),
  rings: z.enum(['metallic', 'ptfe']),
})

const machineLimit = z.strictObject({
  characteristic,
  at_most: written('length'),
  inclusive: z.boolean(),
  beyond,
  monitor_from: written('ratio')
    .optional()
    .meta({ description: 'MONITOR from this share of the limit, for example 70 %.' }),
  ...provenance,
})

export const machineSchema = z.strictObject({
  machine: label.meta({ description: 'The tag as it stands on the plate of the cylinder itself.' }),
  title: short,
  edition: short,
  invented: z
    .boolean()
    .optional()
    .meta({ description: 'true: made up for examples and practice; never a real job.' }),
  shop_units: z.strictObject({ length: z.enum(['in', 'mm']), temperature: z.enum(['degF', 'degC']) }),
  decimal_comma: z.boolean().optional(),
  cylinder: z.strictObject({
    throw: z.int().positive('is not above zero'),
    stage: z.int().positive('is not above zero'),
    orientation: z.enum(['horizontal', 'vertical']),
    acting: z.enum(['double', 'single']),
    lubricated: z.boolean(),
    jacket: z.enum(['water', 'air', 'none']),
    tandem: z.boolean(),
  }),
  service: z.strictObject({
    gas: short,
    oxidising: z.boolean().meta({ description: 'Oxygen or another oxidising gas.' }),
    molar_mass: z.number().positive('is not above zero').optional().meta({ description: 'g/mol' }),
    ring_differential: written('pressure-difference')
      .optional()
      .meta({ description: 'Greatest difference across the rings.' }),
  }),
  site,
  bore,
  limits: z.array(machineLimit),
  /** Decision of the lead, per machine: which fall-back set counts where the machine's own book is silent. */
  fallback: z
    .strictObject({
      book: identifier,
      named_by: short,
      since: day,
      monitor_from: written('ratio').optional(),
    })
    .optional(),
  /** Recorded by the owner, by name: judge without allowing for instrument error. Never better than MONITOR. */
  simple_acceptance: z.strictObject({ by: short, since: day }).optional(),
  uses: z.strictObject({
    instruments: short,
    crew: short,
    limit_books: z.array(short),
  }),
})

export type Machine = z.output<typeof machineSchema>
export type GasLimit = Machine['site']['gas']['limits'][number]
