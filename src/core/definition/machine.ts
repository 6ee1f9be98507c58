// The machine record: one cylinder, its site, its limits. Everything a verdict or a gate needs to know about the place.
import { z } from 'zod'
import { POCKET_FITTED } from '../cycle/pocket-words.ts'
import {
  day,
  expansion,
  filePath,
  identifier,
  invented,
  LOCK_ENDS,
  label,
  line,
  provenance,
  short,
  source,
  written,
} from './common.ts'
import { beyond, characteristic, limitQuantity, PISTON_MATERIALS, RING_MATERIALS } from './limit-book.ts'
import { wholeCompressor } from './whole-compressor.ts'

/** A gas limit names its place and purpose: one for one place or purpose never satisfies another. */
const gasLimit = z.strictObject({
  id: identifier.meta({ description: 'Id that gas evidence in a procedure names as its limit.' }),
  gas: z.enum(['oxygen', 'flammable', 'flammable_in_inert', 'hydrogen_sulfide']).meta({
    description:
      'The gas: oxygen in %vol, flammable in %LEL, flammable_in_inert (gas without air, as at the end of a purge) in %vol, hydrogen sulfide in ppm.',
  }),
  place: z.enum(['breathing_zone', 'in_the_opening', 'at_the_vent']).meta({
    description:
      'Where it is measured: where people breathe, inside the opening, or at the vent at the end of a purge.',
  }),
  purpose: short.meta({
    description: 'What the limit lets people do, for example: arms and tools in the bore.',
  }),
  at_least: written('concentration')
    .optional()
    .meta({ description: 'The least that passes; for oxygen only.' }),
  at_most: z
    .union([written('concentration'), written('lel-fraction')])
    .optional()
    .meta({ description: 'The most that passes.' }),
  ...provenance,
})

const gas = z.strictObject({
  life: written('time').meta({ description: 'How long a gas test stands, at most.', examples: ['30 min'] }),
  warn_before: written('time').meta({
    description: 'How long before that the screen warns.',
    examples: ['5 min'],
  }),
  lel_basis: z
    .strictObject({
      gas: short.meta({ description: 'Gas that 100 %LEL stands for here.' }),
      lower_limit: written('concentration').meta({ description: 'Its lower explosive limit.' }),
      source: source.meta({ description: 'Table the lower limit comes from.' }),
    })
    .meta({ description: 'What %LEL means on this site; every meter used must mean the same.' }),
  limits: z
    .array(gasLimit)
    .min(1, 'has no gas limits')
    .meta({ description: 'Limits by gas, place and purpose; one never stands in for another.' }),
  ...provenance,
})

const site = z.strictObject({
  name: short.meta({ description: 'Name of the site.' }),
  barometer: written('pressure-absolute').meta({ description: 'Site barometric pressure, absolute.' }),
  emergency: line.meta({ description: 'Who to call and where to muster; shown at every STOP.' }),
  rescue: z
    .array(line)
    .min(1, 'has no lines')
    .optional()
    .meta({
      description:
        'The rescue plan, line by line; on the make-safe sheet. Needed where the work has hazards.',
      examples: [['Two with air packs from the control room. Nobody else goes in.']],
    }),
  isolation_points: z
    .array(
      z.strictObject({
        id: identifier.meta({ description: 'Id of the point.' }),
        name: short.meta({ description: 'What is locked, with the number on its plate.' }),
        comes_off: z.enum(LOCK_ENDS).optional().meta({
          description:
            'When its lock comes off at the end: before_start for the driver and whatever else turns the machine; left out: before_gas.',
        }),
      }),
    )
    .min(1, 'has no isolation points')
    .meta({ description: 'Everything that is locked out before work; a gate asks for each lock by number.' }),
  gas: gas.meta({ description: 'How long a gas test stands, what %LEL means, and the gas limits.' }),
})

const bore = z.strictObject({
  nominal: written('length').meta({ description: 'Nominal bore, from the drawing.' }),
  as_made: z
    .strictObject({
      plus: written('length').meta({ description: 'Allowed above nominal when new.' }),
      minus: written('length').meta({ description: 'Allowed below nominal when new.' }),
      source: source.meta({ description: 'Drawing or machine book.' }),
    })
    .optional()
    .meta({ description: 'Tolerance the bore was made to.' }),
  as_bored: z
    .strictObject({
      diameter: written('length').meta({ description: 'Diameter on record.' }),
      day: day.optional().meta({
        description:
          'Day it was bored, YYYY-MM-DD. Left out: it is not used once an overhaul renewed bore or liner.',
      }),
      u: written('length').optional().meta({ description: 'Its measuring error U at k = 2.' }),
      material: short.optional().meta({
        description:
          'Material it was bored in, where that is not the material of today: then it is not used.',
      }),
      source: source.meta({ description: 'Record it comes from.' }),
    })
    .optional()
    .meta({
      description:
        'As-bored diameter on record, at 20 degC: the datum of wear where no unswept strip is left. Else an overhaul tells it as left.',
    }),
  lined: z.boolean().meta({ description: 'true: the cylinder has a liner.' }),
  material: short.meta({ description: 'Material of the running surface.' }),
  expansion: expansion
    .optional()
    .meta({ description: 'Thermal expansion of the cylinder; without it nothing is brought to 20 degC.' }),
  counterbore: written('length')
    .optional()
    .meta({ description: 'Counterbore diameter; larger than the bore by design.' }),
  stroke: written('length').meta({ description: 'Length of the stroke, from the machine book.' }),
  ring_travel: z
    .strictObject({
      from: written('length').meta({ description: 'Head-end limit of the outermost ring.' }),
      to: written('length').meta({ description: 'Crank-end limit of the outermost ring.' }),
    })
    .meta({ description: 'Ends of ring travel, measured from the head-end face of the cylinder.' }),
  rings: z.enum(['metallic', 'ptfe']).meta({ description: 'Material of the piston rings.' }),
})

const pistonRecord = z.strictObject({
  construction: z.enum(['hollow', 'solid', 'unknown']).meta({
    description: 'As the drawing has it. unknown is handled as hollow; so is solid until it is proved.',
  }),
  material: z.enum(PISTON_MATERIALS).meta({ description: 'Material of its body.' }),
  mass: written('mass').optional().meta({ description: 'Mass of the piston alone, from the drawing.' }),
  diameter: written('length').optional().meta({ description: 'Outside diameter at the lands.' }),
  length: written('length').optional().meta({ description: 'Length over its faces.' }),
  cavities: z.int().min(0).optional().meta({ description: 'Cavities inside, each apart from the others.' }),
  plugs: z.int().min(0).optional().meta({ description: 'Plugs in its faces.' }),
  vents: z
    .int()
    .min(0)
    .optional()
    .meta({ description: 'Vent holes, as a rule at the bottom of ring grooves.' }),
  expansion: expansion.optional().meta({ description: 'Thermal expansion of its body.' }),
  source: source.meta({ description: 'Drawing or machine book.' }),
})

const rodRecord = z.strictObject({
  diameter: written('length').meta({ description: 'Nominal diameter where it runs in the packing.' }),
  length: written('length')
    .optional()
    .meta({ description: 'Crosshead pin to middle of piston, for the runout to expect.' }),
  mass: written('mass').optional().meta({ description: 'Mass of the rod alone.' }),
  expansion: expansion.optional().meta({ description: 'Thermal expansion of its steel.' }),
  source: source.meta({ description: 'Drawing or machine book.' }),
})

const ringsRecord = z.strictObject({
  material: z.enum(RING_MATERIALS).meta({ description: 'Material of the piston rings.' }),
  joint: z
    .enum(['butt', 'step', 'angle_cut', 'segmental'])
    .meta({ description: 'How the ends meet, or that the ring is of segments.' }),
  count: z.int().positive('is not above zero').meta({ description: 'Rings on the piston.' }),
  width: written('length').meta({ description: 'Axial width of a new ring.' }),
  radial: written('length').optional().meta({ description: 'Radial thickness of a new ring.' }),
  new_gap: written('length').optional().meta({ description: 'End gap of a new ring in a new bore.' }),
  rider_thickness: written('length').optional().meta({ description: 'Thickness of a new rider band.' }),
  source: source.meta({ description: 'Drawing, parts list or machine book.' }),
})

const pocketRecord = z.strictObject({
  kind: z
    .enum(POCKET_FITTED)
    .meta({ description: 'None; always open; open or shut by hand; or set by a hand-wheel.' }),
  volume: written('volume').optional().meta({ description: 'Clearance it adds when fully open.' }),
  turns: z.number().positive().optional().meta({ description: 'Turns of the hand-wheel from shut to open.' }),
  source: source.meta({ description: 'Drawing or machine book.' }),
})

const driverRecord = z.strictObject({
  kind: z.enum(['motor', 'engine']).meta({ description: 'What drives the compressor.' }),
  rating: written('power').meta({ description: 'What it may be loaded to, for good.' }),
  source: source.meta({ description: 'Plate or machine book.' }),
})

/** An overhaul of before: what was left then, so that wear has a beginning and a rate. */
const overhaul = z.strictObject({
  day: day.meta({ description: 'Day of the overhaul, YYYY-MM-DD.' }),
  hours: written('time').meta({
    description: 'Running hours of the machine on that day.',
    examples: ['41200 h'],
  }),
  report: short.meta({ description: 'Number of its report.' }),
  renewed: z
    .array(z.enum(['bore', 'liner', 'rings', 'riders', 'rod', 'piston']))
    .optional()
    .meta({
      description:
        'What was made new or cut then: no rate of wear reaches across it, and across bore or liner no wear.',
    }),
  bore_material: short.optional().meta({
    description:
      'Material of the running surface as left then, where it was another than today: no wear is told from it.',
  }),
  left: z
    .array(
      z.strictObject({
        of: short.meta({ description: 'What was measured, as `of` in the read step has it.' }),
        station: identifier.optional().meta({ description: 'Station, as in the read step.' }),
        axis: identifier.optional().meta({ description: 'Axis, as in the read step.' }),
        value: z
          .union([written('length', { signed: true }), written('mass'), written('torque'), written('angle')])
          .meta({ description: 'The figure as left.' }),
        u: written('length').optional().meta({
          description: 'Its measuring error U at k = 2; left out, no rate of wear is told from it.',
        }),
        wears: z
          .enum(['larger', 'smaller'])
          .optional()
          .meta({ description: 'Which way wear takes it; left out, no rate of wear is told from it.' }),
        judged: short.optional().meta({
          description:
            'What was said of it, where its verdict was HOLD though it was measured well, and who let it go back.',
        }),
      }),
    )
    .min(1, 'has no figures')
    .meta({ description: 'Figures as left, one for each place.' }),
})

const share = written('ratio').optional().meta({
  description: 'MONITOR from this share of the limit, for example 70 %.',
})

const machineLimit = z.strictObject({
  characteristic,
  at_most: limitQuantity.optional().meta({ description: 'The limit itself, where it bounds from above.' }),
  at_least: limitQuantity.optional().meta({ description: 'The limit itself, where it bounds from below.' }),
  inclusive: z.boolean().meta({ description: 'true: a value exactly on the limit is still inside it.' }),
  beyond,
  monitor_from: share,
  ...provenance,
})

const cylinder = z.strictObject({
  throw: z.int().positive('is not above zero').meta({ description: 'Throw number, from the driver.' }),
  stage: z.int().positive('is not above zero').meta({ description: 'Compression stage.' }),
  orientation: z.enum(['horizontal', 'vertical']).meta({ description: 'How the cylinder lies.' }),
  acting: z.enum(['double', 'single']).meta({ description: 'Whether both ends compress.' }),
  lubricated: z.boolean().meta({ description: 'true: oil is fed to the cylinder.' }),
  jacket: z.enum(['water', 'air', 'none']).meta({ description: 'What cools the cylinder.' }),
  tandem: z.boolean().meta({ description: 'true: two pistons on one rod.' }),
})

const service = z.strictObject({
  gas: short.meta({ description: 'Gas compressed.' }),
  oxidising: z.boolean().meta({ description: 'Oxygen or another oxidising gas.' }),
  molar_mass: z
    .number()
    .positive('is not above zero')
    .optional()
    .meta({ description: 'Molar mass of the gas in g/mol.' }),
  ring_differential: written('pressure-difference')
    .optional()
    .meta({ description: 'Greatest difference across the rings.' }),
})

const fallback = z.strictObject({
  book: identifier.meta({ description: 'Id of the limit book.' }),
  named_by: short.meta({ description: 'The lead who named it.' }),
  since: day.meta({ description: 'Since when, YYYY-MM-DD.' }),
  monitor_from: share,
})

export const machineSchema = z
  .strictObject({
    machine: label.meta({ description: 'The tag as it stands on the plate of the cylinder itself.' }),
    compressor: label.optional().meta({
      description:
        'Tag of the whole compressor, the same in the records of all its cylinders: jobs on it void what the others take off. Left out: it cannot be told from any other machine.',
      examples: ['TC-401'],
    }),
    title: short.meta({ description: 'What people call it.' }),
    edition: short.meta({ description: 'Edition of this record, in quotes: "4".', examples: ['4'] }),
    invented,
    shop_units: z
      .strictObject({
        length: z.enum(['in', 'mm']).meta({ description: 'Unit of lengths on the sheet.' }),
        temperature: z.enum(['degF', 'degC']).meta({ description: 'Unit of temperatures on the sheet.' }),
      })
      .meta({ description: 'Units that the sheet is written in.' }),
    decimal_comma: z
      .boolean()
      .optional()
      .meta({ description: 'true: people here key decimals with a comma.' }),
    cylinder: cylinder.meta({
      description: 'What sort of cylinder it is; procedures say which they are for.',
    }),
    service: service.meta({ description: 'What it compresses.' }),
    site: site.meta({ description: 'The place: barometer, emergency words, locks and gas rules.' }),
    bore: bore.meta({ description: 'Sizes and materials of the bore.' }),
    piston: pistonRecord.optional().meta({ description: 'The piston; left out, nothing of it is known.' }),
    rod: rodRecord.optional().meta({ description: 'The piston rod.' }),
    rings: ringsRecord.optional().meta({ description: 'Piston rings and riders.' }),
    pocket: pocketRecord.optional().meta({ description: 'The clearance pocket.' }),
    driver: driverRecord.optional().meta({ description: 'What drives it.' }),
    whole_compressor: wholeCompressor.optional().meta({
      description:
        'All stages of the compressor, for working out its clearance pocket. Left out: no load question is answered.',
    }),
    overhauls: z.array(overhaul).optional().meta({ description: 'Overhauls of before, the latest last.' }),
    limits: z
      .array(machineLimit)
      .meta({ description: "The machine's own limits; they always come before a fallback." }),
    fallback: fallback.optional().meta({
      description: "Decision of the lead: the one set that counts where the machine's own book is silent.",
    }),
    simple_acceptance: z
      .strictObject({
        by: short.meta({ description: 'Who decided it, by name.' }),
        since: day.meta({ description: 'Since when, YYYY-MM-DD.' }),
      })
      .optional()
      .meta({
        description:
          'Recorded by the owner: judge without allowing for instrument error. Never better than MONITOR.',
      }),
    uses: z
      .strictObject({
        instruments: filePath.meta({ description: 'The instrument register, beside this file.' }),
        crew: filePath.meta({ description: 'The crew list, beside this file.' }),
        limit_books: z.array(filePath).meta({ description: 'Limit books, beside this file; [] for none.' }),
      })
      .meta({ description: 'The other files of a job on this machine, found beside this one.' }),
  })
  .meta({ title: 'Machine record', description: 'One cylinder, its site and its limits.' })

export type Machine = z.output<typeof machineSchema>
export type GasLimit = Machine['site']['gas']['limits'][number]

/** From this share of its lower explosive limit on a gas in air burns, by what the limit means. */
export const BURNS = 1
