// What the load question of a clearance pocket needs to know of the whole compressor, not of one cylinder. Almost all of it may
// be left out: what is missing is named and holds the verdict, so that a record can be filled in bit by bit.
import { z } from 'zod'
import { FRICTION_WORDS } from '../cycle/machine-model.ts'
import { VE_FORMS } from '../cycle/volumetric-efficiency.ts'
import { provenance, source, written } from './common.ts'

const running = z.strictObject({
  speed: written('rotation')
    .optional()
    .meta({ description: 'Turns of the crankshaft.', examples: ['400 rpm'] }),
  connecting_rod: written('length').optional().meta({ description: 'Between its centres.' }),
  mechanical_efficiency: written('ratio')
    .optional()
    .meta({ description: 'Indicated over shaft power.', examples: ['95 %'] }),
  friction: z.enum(FRICTION_WORDS).optional().meta({
    description: 'Whether friction stays what it is while the pocket opens, or falls with the load.',
  }),
  volumetric_efficiency: z.enum(VE_FORMS).optional().meta({
    description: 'Which published form is used; they differ by several per cent.',
  }),
  source: source.meta({ description: 'Data sheet or machine book.' }),
})

const siteRules = z.strictObject({
  margin: written('ratio')
    .optional()
    .meta({ description: 'Part of the rating of the driver kept free.', examples: ['5 %'] }),
  loads_agree_within: written('ratio')
    .optional()
    .meta({
      description: 'By how much of the measured load the computed one may differ.',
      examples: ['8 %'],
    }),
  reversal_arc: written('angle')
    .optional()
    .meta({ description: 'Least arc of the turn with the load at the crosshead pin reversed.' }),
  reversal_share: written('ratio')
    .optional()
    .meta({ description: 'Least peak of the reversed load as a share of the other.' }),
  volumetric_efficiency_least: written('ratio')
    .optional()
    .meta({ description: 'Below it an end draws so little that it is said.' }),
  ...provenance,
})

const pocketPlace = z.strictObject({
  end: z
    .enum(['head', 'crank'])
    .optional()
    .meta({ description: 'The end of this cylinder that the pocket is on.' }),
  least_step: written('angle')
    .optional()
    .meta({
      description: 'Least turn of the hand-wheel that it is set to; settings are named in whole steps.',
      examples: ['90 deg'],
    }),
  stem: z
    .strictObject({
      shut: written('length').meta({
        description: 'From the face of the book to the end of the stem, shut.',
      }),
      open: written('length').meta({ description: 'The same, fully open.' }),
    })
    .optional()
    .meta({ description: 'Where the setting can be told by the stem.' }),
  source: source.meta({ description: 'Drawing or machine book.' }),
})

const end = z.strictObject({
  acts: z.boolean().optional().meta({
    description: 'false: its suction valves are held off or taken out, so it moves no gas.',
  }),
  clearance: written('ratio')
    .optional()
    .meta({
      description: 'Clearance of this end over what this end sweeps, pocket shut.',
      examples: ['14 %'],
    }),
})

const throwRecord = z.strictObject({
  throw: z.int().positive('is not above zero').meta({ description: 'Throw number, from the driver.' }),
  bore: written('length').optional().meta({ description: 'Nominal bore.' }),
  rod: written('length').optional().meta({ description: 'Diameter of the piston rod.' }),
  tail_rod: written('length')
    .optional()
    .meta({ description: 'Diameter of the tail rod, where there is one.' }),
  head: end.optional().meta({ description: 'Head end.' }),
  crank: end.optional().meta({ description: 'Crank end.' }),
  reciprocating_mass: written('mass')
    .optional()
    .meta({ description: 'Piston, rod, nut and crosshead together; not the connecting rod.' }),
  compression_limit: written('force').optional().meta({ description: 'Most gas load that pushes the rod.' }),
  tension_limit: written('force').optional().meta({ description: 'Most gas load that pulls the rod.' }),
  pin_limit: written('force').optional().meta({
    description: 'Most load of gas and inertia together at the crosshead pin, where the maker names it.',
  }),
  source: source.meta({ description: 'Data sheet, drawing or machine book.' }),
})

const stage = z.strictObject({
  stage: z
    .int()
    .positive('is not above zero')
    .max(8, 'is above 8')
    .meta({ description: 'Compression stage.' }),
  k: z.number().positive('is not above zero').optional().meta({ description: 'Exponent k of the gas here.' }),
  z_suction: z
    .number()
    .positive('is not above zero')
    .optional()
    .meta({ description: 'Compressibility at suction.' }),
  z_discharge: z
    .number()
    .positive('is not above zero')
    .optional()
    .meta({ description: 'Compressibility at discharge.' }),
  loss: written('ratio').optional().meta({
    description: 'Leakage and friction loss L, for the forms of volumetric efficiency that have it.',
  }),
  compression_efficiency: written('ratio')
    .optional()
    .meta({ description: 'Ideal over actual indicated power: valves and passages as one factor.' }),
  suction_valve_drop: written('ratio')
    .optional()
    .meta({ description: 'Pressure lost in the suction valves, of the suction pressure.' }),
  discharge_valve_rise: written('ratio')
    .optional()
    .meta({ description: 'Pressure lost in the discharge valves, of the discharge pressure.' }),
  hottest_discharge: written('temperature')
    .optional()
    .meta({ description: 'The hottest that the gas may leave this stage.' }),
  cylinders: z
    .array(throwRecord)
    .optional()
    .meta({ description: 'Every cylinder of this stage; they share its suction and discharge.' }),
  source: source.meta({ description: 'Gas analysis, data sheet or machine book.' }),
})

const between = z.strictObject({
  after: z
    .int()
    .positive('is not above zero')
    .max(7, 'is above 7')
    .meta({ description: 'The stage before.' }),
  drop: written('ratio').optional().meta({
    description: 'Pressure lost in cooler and pipe, of the absolute discharge pressure of the stage before.',
  }),
  passed_on: written('ratio').optional().meta({
    description: 'Gas passed on: below 100 % where liquid is knocked out or gas taken off.',
  }),
  source: source.meta({ description: 'Data sheet, or readings with their day.' }),
})

export const wholeCompressor = z.strictObject({
  stages_in_all: z
    .int()
    .min(1)
    .max(8, 'is above 8')
    .meta({ description: 'How many stages the compressor has; one that is not listed holds the verdict.' }),
  cylinders_in_all: z.int().min(1).meta({ description: 'How many cylinders it has, for the same reason.' }),
  running: running.optional().meta({ description: 'How it runs.' }),
  site_rules: siteRules.optional().meta({ description: 'What the site asks of a setting.' }),
  pocket: pocketPlace
    .optional()
    .meta({ description: 'Where the pocket of this record is, and how it is set.' }),
  stages: z.array(stage).min(1, 'has no stages').meta({ description: 'Stage by stage.' }),
  between: z.array(between).optional().meta({ description: 'Coolers and pipes between stages.' }),
})

export type WholeCompressor = z.output<typeof wholeCompressor>
