// A procedure as data: what a lead writes in YAML. Eight kinds of step; nothing in it can run code or loop.
import { z } from 'zod'
import { QUANTITY_KINDS } from '../units/index.ts'
import { identifier, invented, line, short, written } from './common.ts'
import { evidenceSchema } from './evidence.ts'
import { characteristic } from './limit-book.ts'

/** What an unknown rule does is always said: do the step, skip it, or hold the job there. There is no default. */
const when = z.strictObject({
  rule: line.meta({
    description: 'A rule in CEL over the ids of earlier steps, for example: strip == "present".',
    examples: ['strip == "present"'],
  }),
  unknown: z.enum(['do', 'skip', 'hold']).meta({
    description: 'What happens while the rule cannot be told: do the step, skip it, or hold the job there.',
  }),
})

const common = {
  id: identifier.meta({ description: 'Id of the step, once in the procedure; rules and judges name it.' }),
  title: short.meta({ description: 'A few words at the head of the step.' }),
  text: line.optional().meta({ description: 'What to do, where and with what: at most about 40 words.' }),
  why: line.optional().meta({ description: 'Shown when somebody asks why.' }),
  hazard: line.optional().meta({ description: 'What can hurt; always on screen.' }),
  trouble: line.optional().meta({ description: 'What to do when it goes wrong; always on screen.' }),
  exposes: z
    .array(identifier)
    .optional()
    .meta({ description: 'Hazards, by id, that the step exposes people to; a gate before it holds each.' }),
  when: when.optional().meta({ description: 'Only under this condition; left out: always.' }),
}

/** For steps that are work at the machine. */
const opening = {
  lets_in: z
    .array(identifier)
    .optional()
    .meta({
      description:
        'Hazards, by id, that doing this lets in again: a new opening, a block taken off. Gates that hold them shut.',
      examples: [['bad_air']],
    }),
}

const signers = <R extends 'mechanic' | 'lead'>(roles: readonly R[]) =>
  z
    .array(z.enum(roles).meta({ description: 'A role of the crew list; a trainee never signs.' }))
    .min(1, 'names no role')
    .meta({ description: 'Who may sign it, by role; never whoever did the step.' })

/** Points of an inspection plan. A gate is no such point: it keeps people from harm and has its own kind of step. */
const point = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('hold').meta({ description: 'Work stops after this step until somebody else signs.' }),
      roles: signers(['mechanic', 'lead']),
    }),
    z.strictObject({
      kind: z.literal('witness').meta({
        description: 'The same, but work may go on unattended once notice was given and has run out.',
      }),
      roles: signers(['mechanic', 'lead']),
      notice: written('time').meta({ description: 'How long the notice runs.', examples: ['2 h'] }),
    }),
    z.strictObject({
      kind: z.literal('review').meta({
        description: 'A lead signs that the records of this step were read, before the job closes.',
      }),
      roles: signers(['lead']),
    }),
  ])
  .optional()
  .meta({ description: 'A point of the inspection plan at this step.' })

const seat = z.strictObject({
  id: identifier.meta({ description: 'Id that reads and gas evidence name in `with`.' }),
  kinds: z
    .array(
      z.enum(['inside_micrometer', 'bore_gauge', 'contact_thermometer', 'pressure_gauge', 'gas_meter']).meta({
        description: 'A kind of instrument in the register.',
      }),
    )
    .min(1, 'names no kind')
    .meta({ description: 'Kinds of instrument that may sit here.' }),
  for: short.meta({ description: 'What it is for, as the screen asks for it.' }),
})

const station = z.strictObject({
  id: identifier.meta({ description: 'Id of the station.' }),
  label: short.meta({ description: 'Where it is, as the screen says it.' }),
  short: z.string().min(1, 'has no text').max(8, 'is longer than 8 characters').optional().meta({
    description: 'Name for the drawing, a few letters.',
  }),
  at: z.number().min(-1).max(2).meta({
    description:
      'Share of ring travel from its head-end limit (0) to its crank-end limit (1); outside ring travel beyond.',
  }),
  in_counterbore: z.boolean().optional().meta({ description: 'true: the station lies in the counterbore.' }),
})

const axis = z.strictObject({
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
    .union([written('length'), written('temperature-difference')])
    .meta({ description: 'How close the readings must lie.', examples: ['0.0003 in', '1 delta-degF'] }),
})

const below = written('length').meta({ description: 'Further below it than this is doubted.' })
const above = written('length').meta({ description: 'Further above it than this is doubted.' })
const from =
  'What a reading is compared with before it is believed: nominal bore, counterbore, standard or a range.'
const plausible = z.discriminatedUnion('from', [
  z.strictObject({ from: z.literal('nominal').meta({ description: from }), below, above }),
  z.strictObject({ from: z.literal('counterbore').meta({ description: from }), below, above }),
  z.strictObject({ from: z.literal('standard').meta({ description: from }), below, above }),
  z.strictObject({
    from: z.literal('range').meta({ description: from }),
    least: written('temperature', { signed: true }).meta({ description: 'Colder than this is doubted.' }),
    most: written('temperature', { signed: true }).meta({ description: 'Hotter than this is doubted.' }),
  }),
])

/** The kind of a step, with what it is for: shown where an editor offers the eight of them. */
function kind<K extends string>(word: K, description: string) {
  return z.literal(word).meta({ description })
}

const places = z
  .array(
    z.strictObject({
      id: identifier.meta({ description: 'Id of the thing, once in the procedure; leaves names it.' }),
      what: short.meta({
        description: 'What is put in and has to come out again.',
        examples: ['the turning block'],
      }),
    }),
  )
  .optional()
  .meta({
    description: 'Temporary things the step puts in; where each is goes into the register when it is done.',
  })

const tell = z.strictObject({ kind: kind('tell', 'Do this.'), ...common, ...opening, places, point })
const confirm = z.strictObject({
  kind: kind('confirm', 'Do this, and say that it was seen.'),
  ...common,
  ...opening,
  places,
  point,
  seen: line.meta({ description: 'What was seen, as a statement the person agrees to.' }),
})
const gate = z.strictObject({
  kind: kind('gate', 'A hold point: nothing it holds is faced until all its evidence is in.'),
  ...common,
  holds: z
    .array(identifier)
    .min(1, 'holds back no hazard')
    .meta({ description: 'Hazards, by id, that it keeps people from.' }),
  clear_words: z
    .string()
    .regex(/^[A-Z]{2,}( [A-Z]+)*$/, 'is not words in capitals')
    .meta({
      description: 'Typed when everybody is out and standing clear, before a lapsed gate is asked again.',
      examples: ['ALL OUT'],
    }),
  evidence: z
    .array(evidenceSchema)
    .min(1, 'asks for no evidence')
    .meta({ description: 'Everything that must be in before it opens, in the order it is asked.' }),
})
const read = z.strictObject({
  kind: kind('read', 'Readings at named places, with repeats.'),
  ...common,
  ...opening,
  point,
  quantity: z.enum(['length', 'temperature']).meta({ description: 'What sort of quantity is read.' }),
  of: short.meta({ description: 'What is measured, for example: bore.' }),
  with: identifier.meta({ description: 'Seat of the instrument.' }),
  drawing: z
    .enum(['bore', 'none'])
    .meta({ description: 'Whether the bore is drawn, with the place marked.' }),
  stations: z
    .array(station)
    .min(1, 'has no stations')
    .meta({ description: 'Places along the bore, in order.' }),
  axes: z.array(axis).optional().meta({ description: 'Directions across it; each station is read on each.' }),
  how: z.record(z.string(), line).meta({ description: 'The handling words by instrument kind.' }),
  repeats: repeats.meta({
    description: 'How often each place is read, and how close the readings must lie.',
  }),
  plausible: plausible.meta({ description: 'Outside this a reading is doubted and asked about.' }),
  not_applicable: z.enum(['never', 'reason', 'lead']).optional().meta({
    description:
      'Whether a place may be entered as n/a: never, with a reason (without this key), or with a reason and the signature of a lead who is not doing the work.',
  }),
})
const observe = z.strictObject({
  kind: kind('observe', 'What is seen, as one of a list.'),
  ...common,
  ...opening,
  point,
  conditions: z
    .array(
      z.strictObject({
        id: identifier.meta({ description: 'Id of the condition; the word a rule compares with.' }),
        label: short.meta({ description: 'What is seen, as the screen lists it.' }),
        note: z.boolean().optional().meta({ description: 'true: words are asked for as well.' }),
        finding: z.boolean().optional().meta({ description: 'true: it goes to the list of findings.' }),
      }),
    )
    .min(2, 'needs at least two conditions')
    .meta({ description: 'Everything it could be; one of them is chosen.' }),
})
const inputs = z.strictObject({
  diameters: identifier.meta({ description: 'Read step of the bore, two stations and two axes or more.' }),
  datum: identifier.optional().meta({ description: 'Read step of the unswept strip, the datum of wear.' }),
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
const judge = z.strictObject({
  kind: kind('judge', 'A verdict, worked out from what was read.'),
  ...common,
  point,
  compute: z
    .enum(['bore_form'])
    .meta({ description: 'Which of the computations of the program works it out.' }),
  inputs: inputs.meta({ description: 'Which earlier read steps go in.' }),
  against: z.array(characteristic).min(1, 'judges against nothing').meta({
    description: 'Which limits it is held against; they come from the machine record or its fallback.',
  }),
})
const decide = z.strictObject({
  kind: kind('decide', "A lead's decision on a verdict."),
  ...common,
  point,
  about: identifier.meta({ description: 'Id of the judge step whose verdict is disposed of.' }),
  choices: z
    .array(
      z
        .enum(['accept', 'rework', 'repair', 'replace', 'concession', 'hold'])
        .meta({ description: 'accept never shows for a HOLD; hold only for a HOLD.' }),
    )
    .min(2)
    .meta({ description: 'What the lead may choose from.' }),
})
const part = z.strictObject({
  kind: kind('part', 'Another procedure, inside this one.'),
  ...common,
  use: identifier.meta({ description: 'Id of that procedure; its file lies beside this one.' }),
})

export const stepSchema = z.discriminatedUnion('kind', [
  tell,
  confirm,
  gate,
  read,
  observe,
  judge,
  decide,
  part,
])

const suits = z.strictObject({
  orientation: z
    .array(z.enum(['horizontal', 'vertical']))
    .min(1)
    .meta({ description: 'How the cylinder may lie.' }),
  acting: z
    .array(z.enum(['double', 'single']))
    .min(1)
    .meta({ description: 'Whether both ends may compress.' }),
  lubricated: z
    .array(z.boolean())
    .min(1)
    .meta({ description: 'With oil in the cylinder, without, or both.' }),
  oxidising: z
    .array(z.boolean())
    .min(1)
    .meta({ description: 'For oxygen or another oxidising gas, for other gases, or both.' }),
  tandem: z.array(z.boolean()).min(1).meta({ description: 'For tandem pistons, for others, or both.' }),
})

/** A figure worked out from others. It is known as soon as everything it refers to is, and unknown until then. */
const value = z.strictObject({
  id: identifier.meta({ description: 'Id of the value; rules and later values name it by this.' }),
  title: short.meta({ description: 'What it is, as shown.' }),
  kind: z
    .enum([...QUANTITY_KINDS, 'number'])
    .meta({ description: 'What it is a figure of; number: without a unit.' }),
  is: line.meta({
    description: 'An expression in CEL over steps, facts of the machine and earlier values.',
    examples: ['max(bore) - machine.nominal'],
  }),
  unit: z
    .string()
    .optional()
    .meta({ description: 'The unit it is shown in; without one, the first of its kind.' }),
})

export const procedureSchema = z
  .strictObject({
    procedure: identifier.meta({ description: 'Id of the procedure; other procedures use it by this.' }),
    title: short.meta({ description: 'Name of the work.' }),
    edition: short.meta({ description: 'Edition, in quotes: "1".', examples: ['1'] }),
    summary: line.meta({ description: 'What it does, in a sentence or two.' }),
    for: suits.meta({ description: 'Which machines it is written for; others are refused.' }),
    not_for: z.array(line).meta({ description: 'What it is not for, in words; [] for nothing.' }),
    invented,
    hazards: z
      .array(
        z.strictObject({
          id: identifier.meta({ description: 'Id that steps expose people to and gates hold.' }),
          name: short.meta({ description: 'What can hurt.' }),
        }),
      )
      .meta({ description: 'Everything in this work that can hurt; [] for nothing.' }),
    make_safe: z
      .array(line)
      .min(1, 'has no lines')
      .optional()
      .meta({
        description:
          'What to do at once to make this work safe; on the make-safe sheet. Needed with hazards.',
        examples: [['Let the crane down to the floor before you go, if that takes one move.']],
      }),
    leaves: z.array(identifier).optional().meta({
      description:
        'Ids of places whose things stay when the job ends; a part’s with the id of its step and two underscores before it. All others are accounted for.',
    }),
    seats: z.array(seat).meta({ description: 'Places for instruments; who walks it picks one for each.' }),
    values: z
      .array(value)
      .optional()
      .meta({ description: 'Figures worked out from others; a rule uses those known before its own step.' }),
    steps: z.array(stepSchema).min(1, 'has no steps').meta({ description: 'The steps, in order.' }),
  })
  .meta({ title: 'Procedure', description: 'A guided procedure: steps that a crew is walked through.' })

export type Procedure = z.output<typeof procedureSchema>
export type Step = z.output<typeof stepSchema>
export type StepOf<K extends Step['kind']> = Extract<Step, { kind: K }>
export type Point = NonNullable<z.output<typeof point>>
export type { Evidence, EvidenceOf } from './evidence.ts'
export type Station = z.output<typeof station>
export type Axis = z.output<typeof axis>
export type Seat = z.output<typeof seat>
export type Unknown = z.output<typeof when>['unknown']
