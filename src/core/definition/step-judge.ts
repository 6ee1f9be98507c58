// A judge step: the form of a bore or the setting of a clearance pocket, worked out by the program, or figures worked out by
// expressions of the procedure.
import { z } from 'zod'
import { FORM_CHARACTERISTICS } from './characteristics.ts'
import { identifier, line } from './common.ts'
import { characteristic } from './limit-book.ts'
import { common, kind, point } from './step-common.ts'

const inputs = z.strictObject({
  diameters: identifier.meta({ description: 'Read step of the bore, two stations and two axes or more.' }),
  datum: z
    .union([identifier, z.array(identifier).min(1)])
    .optional()
    .meta({
      description:
        'Read step of the unswept strip, the datum of wear; of several the first that was read counts.',
    }),
  counterbore: identifier
    .optional()
    .meta({ description: 'Read step of the counterbore; it bounds reboring.' }),
  set_before: identifier.meta({ description: 'Read step of the setting standard, before the readings.' }),
  set_after: identifier.meta({ description: 'Read step of the setting standard, after the readings.' }),
  part_temperature: z
    .array(identifier)
    .min(1)
    .meta({ description: 'Read steps of the temperature of the metal measured.' }),
  instrument_temperature: z
    .array(identifier)
    .min(1)
    .meta({ description: 'Read steps of the temperature of the instrument.' }),
})
const compute =
  'How it is worked out: bore_form and pocket_setting by the program, figures from expressions of the procedure.'
const judgeForm = z.strictObject({
  kind: kind('judge', 'A verdict, worked out from what was read.'),
  ...common,
  point,
  compute: z.literal('bore_form').meta({ description: compute }),
  inputs: inputs.meta({ description: 'Which earlier read steps go in.' }),
  against: z.array(z.enum(FORM_CHARACTERISTICS)).min(1, 'judges against nothing').meta({
    description: 'Which limits it is held against; they come from the machine record or its fallback.',
  }),
})
const figure = z.strictObject({
  characteristic,
  is: line.meta({
    description: 'An expression in CEL over steps before it, facts of the machine and values.',
    examples: ['machine.rod_diameter - min(rod_sizes)'],
  }),
})
/** Sizes that a micrometer measured, brought to 20 degC and bracketed by its set-checks. */
const at20 = z.strictObject({
  readings: z
    .array(identifier)
    .min(1, 'names no readings')
    .meta({ description: 'Read steps that it is for.' }),
  of: z
    .enum(['bore', 'rod', 'piston'])
    .meta({ description: 'Whose expansion in the machine record counts.' }),
  part: z
    .array(identifier)
    .min(1)
    .meta({ description: 'Read steps of the temperature of the metal measured.' }),
  instrument: z
    .array(identifier)
    .min(1)
    .meta({ description: 'Read steps of the temperature of the instrument.' }),
  set_before: identifier.meta({ description: 'Read step of the setting standard, before the readings.' }),
  set_after: identifier.meta({ description: 'Read step of the setting standard, after the readings.' }),
})
const judgeFigures = z.strictObject({
  kind: kind('judge', 'A verdict, worked out from what was read.'),
  ...common,
  point,
  compute: z.literal('figures').meta({ description: compute }),
  figures: z.array(figure).min(1, 'judges nothing').meta({
    description:
      'What is judged: a figure for each limit, which comes from the machine record or its fallback.',
  }),
  at_20: at20
    .optional()
    .meta({ description: 'For what a micrometer measured: temperatures and set-checks.' }),
  also_at_20: z
    .array(at20)
    .optional()
    .meta({ description: 'The same for what other instruments measured, each with its own checks.' }),
})
const pocketInputs = z.strictObject({
  fitted: identifier.meta({
    description:
      'Observe step of the kind of pocket fitted: its conditions hand_wheel, two_position, open and none count, any other holds.',
  }),
  wheel: identifier
    .optional()
    .meta({ description: 'Read step of the hand-wheel, degrees from shut, 360 a turn.' }),
  stem: identifier.optional().meta({ description: 'Read step of the stem, from the face of the book.' }),
  position: identifier.optional().meta({
    description: 'Observe step with the conditions open and shut, for a pocket that is one or the other.',
  }),
  suction: identifier.meta({ description: 'Read step of the suction pressure of the first stage.' }),
  discharge: identifier.meta({ description: 'Read step of the discharge pressure of the last stage.' }),
  suction_temperatures: z
    .array(identifier)
    .min(1, 'names no reading')
    .meta({ description: 'Read steps of the gas temperature at each suction, stage by stage.' }),
  driver_load: identifier.meta({ description: 'Read step of the load on the driver.' }),
})
const judgePocket = z.strictObject({
  kind: kind('judge', 'A verdict, worked out from what was read.'),
  ...common,
  point,
  compute: z.literal('pocket_setting').meta({ description: compute }),
  inputs: pocketInputs.meta({ description: 'Which earlier read and observe steps go in.' }),
})
export const judge = z.discriminatedUnion('compute', [judgeForm, judgeFigures, judgePocket])

export type FormJudge = z.output<typeof judgeForm>
export type FormInputs = FormJudge['inputs']
export type FiguresJudge = z.output<typeof judgeFigures>
export type PocketJudge = z.output<typeof judgePocket>
export type At20 = z.output<typeof at20>

/** What is brought to 20 degC, one entry for each instrument. */
export function at20Of({ at_20: at, also_at_20: also = [] }: FiguresJudge): readonly At20[] {
  return at === undefined ? also : [at, ...also]
}
