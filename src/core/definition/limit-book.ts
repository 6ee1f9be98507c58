// A limit book: a named set of fall-back limits, each with its page. Used only where the machine's own book is silent.
import { z } from 'zod'
import { identifier, line, provenance, short, written } from './common.ts'

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
  of: z.enum(['nominal-bore', 'stroke']),
  at_most: written('length').optional().meta({ description: 'A ceiling on the limit, whatever the size.' }),
  rings: z.enum(['metallic', 'ptfe']).optional().meta({ description: 'Only for rings of this material.' }),
  service: z.enum(['ordinary', 'light_or_high']).optional().meta({ description: 'Only for this service.' }),
  inclusive: z.boolean().meta({ description: 'true: a value exactly on the limit is still inside it.' }),
  beyond,
  ...provenance,
})

export const limitBookSchema = z.strictObject({
  limit_book: identifier,
  title: short,
  note: line.optional(),
  /** The published rule that tells light-gas or high-differential service from ordinary. */
  light_or_high: z.strictObject({
    molar_mass_below: z.number().positive('is not above zero').meta({ description: 'g/mol' }),
    ring_differential_above: written('pressure-difference'),
    source: line,
  }),
  limits: z.array(bookLimit).min(1, 'has no limits'),
})

export type LimitBook = z.output<typeof limitBookSchema>
export type BookLimit = LimitBook['limits'][number]
