// A read step: what is read, where, with what, how often, and what is believed.
import { z } from 'zod'
import { DRAWING_KINDS } from '../drawing/kinds.ts'
import { identifier, line, short, written } from './common.ts'
import { DIFFERENCE_OF, READ_QUANTITIES } from './instruments.ts'
import { common, kind, opening, point } from './step-common.ts'

/** Kinds that differences of what steps read have, each once. */
const DIFFERENCES = [...new Set(READ_QUANTITIES.map((quantity) => DIFFERENCE_OF[quantity]))]

export const station = z.strictObject({
  id: identifier.meta({ description: 'Id of the station.' }),
  label: short.meta({ description: 'Where it is, as the screen says it.' }),
  short: z.string().min(1, 'has no text').max(8, 'is longer than 8 characters').optional().meta({
    description: 'Name for the drawing, a few letters.',
  }),
  at: z.number().min(-1).max(2).meta({
    description:
      'Share of the way from the head end of what is drawn (0) to its crank end (1); of a bore the way is ring travel, and stations lie beyond it too.',
  }),
  in_counterbore: z.boolean().optional().meta({ description: 'true: the station lies in the counterbore.' }),
})

export const axis = z.strictObject({
  id: identifier.meta({ description: 'Id of the axis.' }),
  label: short.meta({ description: 'Direction, as the screen says it, for example: top to bottom.' }),
  from: z.number().min(0.5).max(12).meta({ description: 'Clock position seen from the head end.' }),
  to: z.number().min(0.5).max(12).meta({ description: 'Clock position of the other end, six hours off.' }),
})

const repeats = z.strictObject({
  at_least: z.int().min(1, 'is below 1').meta({ description: 'Readings taken at each place, at least.' }),
  at_most: z
    .int()
    .max(9, 'is above 9')
    .meta({ description: 'After this many that disagree the place is HOLD.' }),
  within: z
    .union(DIFFERENCES.map((one) => written(one)))
    .meta({ description: 'How close the readings must lie.', examples: ['0.0003 in', '1 delta-degF'] }),
})

const below = written('length').meta({ description: 'Further below it than this is doubted.' })
const above = written('length').meta({ description: 'Further above it than this is doubted.' })
/** A figure of any quantity that a step reads, and how far one may be off it. */
const anyFigure = z.union(READ_QUANTITIES.map((one) => written(one, { signed: true })))
const anyDistance = z.union(DIFFERENCES.map((one) => written(one)))
const from =
  'What a reading is compared with before it is believed: nominal bore, counterbore, standard, a range, or a figure of the machine record.'
const plausible = z.discriminatedUnion('from', [
  z.strictObject({ from: z.literal('nominal').meta({ description: from }), below, above }),
  z.strictObject({ from: z.literal('counterbore').meta({ description: from }), below, above }),
  z.strictObject({ from: z.literal('standard').meta({ description: from }), below, above }),
  z.strictObject({
    from: z.literal('range').meta({ description: from }),
    least: anyFigure.meta({
      description: 'Less than this is doubted. Below zero: a reading may have a minus.',
    }),
    most: anyFigure.meta({ description: 'More than this is doubted.' }),
  }),
  z.strictObject({
    from: z.literal('record').meta({ description: from }),
    of: identifier.meta({
      description: 'A figure of the machine record, as rules name it behind machine.',
      examples: ['rod_diameter'],
    }),
    below: anyDistance.meta({ description: 'Further below it than this is doubted.' }),
    above: anyDistance.meta({ description: 'Further above it than this is doubted.' }),
  }),
])

export const read = z.strictObject({
  kind: kind('read', 'Readings at named places, with repeats.'),
  ...common,
  ...opening,
  point,
  quantity: z.enum(READ_QUANTITIES).meta({ description: 'What sort of quantity is read.' }),
  of: short.meta({ description: 'What is measured, for example: bore.' }),
  with: identifier.meta({ description: 'Seat of the instrument.' }),
  drawing: z.enum([...DRAWING_KINDS, 'none']).meta({
    description: 'What is drawn with the place marked on it, or none where a picture tells nothing.',
  }),
  stations: z
    .array(station)
    .min(1, 'has no stations')
    .meta({ description: 'Places along what is drawn, in order.' }),
  axes: z.array(axis).optional().meta({ description: 'Directions across it; each station is read on each.' }),
  how: z.record(z.string(), line).meta({ description: 'The handling words by instrument kind.' }),
  repeats: repeats.meta({
    description: 'How often each place is read, and how close the readings must lie.',
  }),
  plausible: plausible.meta({ description: 'Outside this a reading is doubted and asked about.' }),
  stage: z.enum(['as_found', 'as_left']).optional().meta({
    description:
      'Before anything was disturbed, or after: the two of one `of` stand side by side at the close.',
  }),
  not_applicable: z.enum(['never', 'reason', 'lead']).optional().meta({
    description:
      'Whether a place may be entered as n/a: never, with a reason (without this key), or with a reason and the signature of a lead who is not doing the work.',
  }),
})
