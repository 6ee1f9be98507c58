// A limit book: a named set of fall-back limits, each with its page. Used only where the machine's own book is silent.
import { z } from 'zod'
import { identifier, line, provenance, short, source, written } from './common.ts'

export const characteristic = z
  .enum(['out-of-round', 'taper', 'spread', 'largest-diameter'])
  .meta({ description: 'What of the bore the limit bounds.' })

export const beyond = z
  .enum(['REWORK', 'REPLACE'])
  .meta({ description: 'The verdict once the limit is passed by more than the measuring error.' })

const bookLimit = z.strictObject({
  characteristic,
  ratio: z
    .number()
    .positive('is not above zero')
    .meta({ description: 'Length per length, for example 0.00075.' }),
  of: z.enum(['nominal-bore', 'stroke']).meta({ description: 'The length that the ratio is taken of.' }),
  at_most: written('length').optional().meta({ description: 'A ceiling on the limit, whatever the size.' }),
  rings: z.enum(['metallic', 'ptfe']).optional().meta({ description: 'Only for rings of this material.' }),
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
      .meta({
        description: 'The published rule that tells light or high-differential service from ordinary.',
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
