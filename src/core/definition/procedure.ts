// A procedure as data: what a lead writes in YAML. Eight kinds of step; nothing in it can run code or loop.
import { z } from 'zod'
import { QUANTITY_KINDS } from '../units/index.ts'
import { identifier, invented, line, short, written } from './common.ts'
import { evidenceSchema } from './evidence.ts'
import { INSTRUMENT_KINDS } from './instruments.ts'
import { byRecord, common, kind, type need, opening, pictured, point, type when } from './step-common.ts'
import { type FiguresJudge, type FormJudge, judge, type PocketJudge } from './step-judge.ts'
import { type axis, read, type station } from './step-read.ts'

const seat = z.strictObject({
  id: identifier.meta({ description: 'Id that reads and gas evidence name in `with`.' }),
  kinds: z
    .array(
      z.enum(INSTRUMENT_KINDS).meta({
        description: 'A kind of instrument in the register.',
      }),
    )
    .min(1, 'names no kind')
    .meta({ description: 'Kinds of instrument that may sit here.' }),
  for: short.meta({ description: 'What it is for, as the screen asks for it.' }),
})

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

const tell = z.strictObject({
  kind: kind('tell', 'Do this.'),
  ...common,
  ...pictured,
  ...opening,
  places,
  point,
})
const confirm = z.strictObject({
  kind: kind('confirm', 'Do this, and say that it was seen.'),
  ...common,
  ...opening,
  places,
  point,
  by_record: byRecord,
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
const observe = z.strictObject({
  kind: kind('observe', 'What is seen, as one of a list.'),
  ...common,
  ...pictured,
  ...opening,
  point,
  by_record: byRecord,
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
    .meta({
      description: 'Everything it could be; one of them is chosen, or several where `several` says so.',
    }),
  several: z.boolean().optional().meta({
    description:
      'true: conditions that are findings may be chosen together, each a finding; then no rule may name the step.',
  }),
})
const choice = z.enum(['accept', 'rework', 'repair', 'replace', 'concession', 'hold'])
const decide = z.strictObject({
  kind: kind('decide', "A lead's decision on a verdict."),
  ...common,
  point,
  about: identifier.meta({ description: 'Id of the judge step whose verdict is disposed of.' }),
  choices: z
    .array(choice.meta({ description: 'accept never shows for a HOLD; hold only for a HOLD.' }))
    .min(2)
    .meta({ description: 'What the lead may choose from.' }),
  waits_on: z
    .array(choice.meta({ description: 'One of the choices, not the first.' }))
    .min(1, 'names no choice')
    .optional()
    .meta({
      description:
        'Choices after which nothing goes on from here: the work is done, what was judged is read anew by correct, and a lead decides on the new verdict.',
    }),
})
const omitted = z
  .string()
  .regex(/^[a-z][a-z0-9_]*(\.[a-z][a-z0-9_]*)*$/, 'is not an id, nor a part and an id with a point between')
  .max(200)
// How long a part takes is said at its own steps.
const { takes: _takes, ...whole } = common
const part = z.strictObject({
  kind: kind('part', 'Another procedure, inside this one.'),
  ...whole,
  use: identifier.meta({ description: 'Id of that procedure; its file lies beside this one.' }),
  omits: z.array(omitted).min(1, 'omits nothing').optional().meta({
    description:
      'Ids of its steps that are left out here, since the whole has them already; part.step for one in a part of it.',
  }),
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

/** A reading, a stand and a reading again: worth something only where the clock tells that it was done in one go. */
const overTime = z.strictObject({
  id: identifier.meta({ description: 'Id of the test, once in the procedure.' }),
  title: short.meta({ description: 'What is tried, as the sheet says it when it begins anew.' }),
  from: identifier.meta({
    description: 'The step that it begins with: gas on, pressure up. What is asked anew begins there.',
  }),
  settles: written('time')
    .optional()
    .meta({
      description: 'Time from that step until the start may be read; counted by the program.',
      examples: ['10 min'],
    }),
  start: z
    .array(identifier)
    .min(1, 'names no step')
    .meta({ description: 'The readings at the start, by id of their steps.' }),
  stand: identifier.meta({
    description: 'The gate whose wait lies between: begun after the start was read, and before the end is.',
  }),
  end: z
    .array(identifier)
    .min(1, 'names no step')
    .meta({ description: 'What is read, seen or tried at the end, by id of the steps.' }),
  until: identifier.optional().meta({
    description:
      'The step that ends it, gas off or pressure out: once it is done, nothing of the test is asked anew by itself.',
  }),
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
    over_time: z.array(overTime).optional().meta({
      description:
        'Tests that have a start, a stand and an end: where the start is read anew, the stand and the end come again.',
    }),
    steps: z.array(stepSchema).min(1, 'has no steps').meta({ description: 'The steps, in order.' }),
  })
  .meta({ title: 'Procedure', description: 'A guided procedure: steps that a crew is walked through.' })

export type Procedure = z.output<typeof procedureSchema>
export type Step = z.output<typeof stepSchema>
export type StepOf<K extends Step['kind']> = Extract<Step, { kind: K }>
export type { FiguresJudge, FormJudge, PocketJudge }
export type OverTime = z.output<typeof overTime>
export type Point = NonNullable<z.output<typeof point>>
export type { Evidence, EvidenceOf } from './evidence.ts'
export type Station = z.output<typeof station>
export type Axis = z.output<typeof axis>
export type Seat = z.output<typeof seat>
export type Need = z.output<typeof need>
export type Unknown = z.output<typeof when>['unknown']
