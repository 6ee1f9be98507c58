// A limit book: a named set of fall-back limits, each with its page. Used only where the machine's own book is silent.
import { z } from 'zod'
import { CHARACTERISTIC_IDS } from './characteristics.ts'
import { identifier, line, provenance, short, source, written } from './common.ts'

export const characteristic = z.enum(CHARACTERISTIC_IDS).meta({
  description: 'What the limit bounds. Names that end in -least bound from below, all others from above.',
})

/** A limit in the kind of quantity that its characteristic has; which one that is, is checked with it. */
export const limitQuantity = z.union([
  written('length'),
  written('torque'),
  written('angle'),
  written('power'),
  written('pressure-difference'),
  written('pressure-gauge'),
])

/** Lengths on the machine record that a rule of a book may be a ratio of. */
export const RULE_SIZES = ['nominal-bore', 'stroke', 'rod-diameter', 'ring-width', 'new-ring-gap'] as const
export type RuleSize = (typeof RULE_SIZES)[number]
export const RING_MATERIALS = ['cast-iron', 'bronze', 'carbon', 'ptfe', 'phenolic'] as const
export const PISTON_MATERIALS = ['iron', 'aluminium', 'steel'] as const

export const beyond = z
  .enum(['REWORK', 'REPLACE'])
  .meta({ description: 'The verdict once the limit is passed by more than the measuring error.' })

const bookLimit = z.strictObject({
  characteristic,
  ratio: z
    .number()
    .positive('is not above zero')
    .optional()
    .meta({ description: 'Length per length, for example 0.00075.' }),
  of: z.enum(RULE_SIZES).optional().meta({ description: 'The length that the ratio is taken of.' }),
  plus: written('length').optional().meta({ description: 'Added to the share, whatever the size.' }),
  is: limitQuantity.optional().meta({ description: 'A fixed figure, in place of a ratio.' }),
  at_most: written('length').optional().meta({ description: 'A ceiling on the limit, whatever the size.' }),
  at_least: written('length').optional().meta({ description: 'A floor under the limit, whatever the size.' }),
  up_to_bore: written('length').optional().meta({ description: 'Only for bores up to this one.' }),
  rings: z.enum(['metallic', 'ptfe']).optional().meta({ description: 'Only for rings of this sort.' }),
  ring_material: z.enum(RING_MATERIALS).optional().meta({ description: 'Only for rings of this material.' }),
  piston_material: z
    .enum(PISTON_MATERIALS)
    .optional()
    .meta({ description: 'Only for pistons of this material.' }),
  service: z.enum(['ordinary', 'light_or_high']).optional().meta({ description: 'Only for this service.' }),
  inclusive: z.boolean().meta({ description: 'true: a value exactly on the limit is still inside it.' }),
  beyond,
  ...provenance,
})

export const limitBookSchema = z
  .strictObject({
    limit_book: identifier.meta({ description: 'Id that a machine record names as its fallback.' }),
    title: short.meta({ description: 'Name of the set, with author and year.' }),
    note: line.optional().meta({ description: 'What the source itself says about using it.' }),
    light_or_high: z
      .strictObject({
        molar_mass_below: z
          .number()
          .positive('is not above zero')
          .meta({ description: 'Gas lighter than this is light service, in g/mol.' }),
        ring_differential_above: written('pressure-difference').meta({
          description: 'More pressure across the rings than this is high-differential service.',
        }),
        source: source.meta({ description: 'Page of the rule.' }),
      })
      .optional()
      .meta({
        description:
          'The published rule that tells light or high-differential service from ordinary; needed where a rule names a service.',
      }),
    limits: z
      .array(bookLimit)
      .min(1, 'has no limits')
      .meta({ description: 'For each characteristic, ring material and service at most one rule.' }),
  })
  .meta({
    title: 'Limit book',
    description: "A named set of fall-back limits, used only where the machine's own book is silent.",
  })

export type LimitBook = z.output<typeof limitBookSchema>
export type BookLimit = LimitBook['limits'][number]
