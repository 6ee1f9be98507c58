// A procedure as data: what a lead writes in YAML. Eight kinds of step; nothing in it can run code or loop.
import { z } from 'zod'
import { identifier, line, short, written } from './common.ts'
import { characteristic } from './limit-book.ts'

/** What an unknown rule does is always said: do the step, skip it, or hold the job there. There is no default. */
const when = z.strictObject({
  rule: line.meta({
    description: 'A rule in CEL over the ids of earlier steps, for example: strip == "present".',
  }),
  unknown: z.enum(['do', 'skip', 'hold']),
})

const common = {
  id: identifier,
  title: short,
  text: line.optional().meta({ description: 'What to do, where and with what: at most about 40 words.' }),
  why: line.optional().meta({ description: 'Shown when somebody asks why.' }),
  hazard: line.optional().meta({ description: 'What can hurt; always on screen.' }),
  trouble: line.optional().meta({ description: 'What to do when it goes wrong; always on screen.' }),
  exposes: z
    .array(identifier)
    .optional()
    .meta({ description: 'Hazards, by id, that the step exposes people to.' }),
  when: when.optional(),
}

const seat = z.strictObject({
  id: identifier,
  kinds: z
    .array(z.enum(['inside_micrometer', 'bore_gauge', 'contact_thermometer', 'gas_meter']))
    .min(1, 'names no kind'),
  for: short,
})

const station = z.strictObject({
  id: identifier,
  label: short,
  short: z.string().min(1, 'has no text').max(8, 'is longer than 8 characters').optional().meta({
    description: 'Name for the drawing, a few letters.',
  }),
  at: z.number().min(-1).max(2).meta({
    description:
      'Share of ring travel from its head-end limit (0) to its crank-end limit (1); outside ring travel beyond.',
  }),
  in_counterbore: z.boolean().optional().meta({ description: 'The station lies in the counterbore.' }),
})

const axis = z.strictObject({
  id: identifier,
  label: short,
  from: z.number().min(0.5).max(12).meta({ description: 'Clock position seen from the head end.' }),
  to: z.number().min(0.5).max(12),
})

const repeats = z.strictObject({
  at_least: z.int().min(1, 'is below 1'),
  at_most: z.int().max(9, 'is above 9'),
  within: z.union([written('length'), written('temperature-difference')]),
})

const plausible = z.discriminatedUnion('from', [
  z.strictObject({ from: z.literal('nominal'), below: written('length'), above: written('length') }),
  z.strictObject({ from: z.literal('counterbore'), below: written('length'), above: written('length') }),
  z.strictObject({ from: z.literal('standard'), below: written('length'), above: written('length') }),
  z.strictObject({
    from: z.literal('range'),
    least: written('temperature', { signed: true }),
    most: written('temperature', { signed: true }),
  }),
])

const evidence = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('locks'), id: identifier, ask: line }),
  z.strictObject({
    kind: z.literal('words'),
    id: identifier,
    ask: line,
    words: z.string().regex(/^[A-Z]{2,}( [A-Z]+)*$/, 'is not words in capitals, at least two letters'),
  }),
  z.strictObject({
    kind: z.literal('gas'),
    id: identifier,
    ask: line,
    limit: identifier.meta({ description: 'Id of the gas limit in the machine record.' }),
    with: identifier.meta({ description: 'Seat of the gas meter.' }),
    oxygen: identifier
      .optional()
      .meta({ description: 'For flammables: the oxygen evidence taken at the same place.' }),
  }),
  z.strictObject({
    kind: z.literal('witness'),
    id: identifier,
    ask: line,
    roles: z.array(z.enum(['mechanic', 'lead'])).min(1, 'names no role'),
  }),
])

const tell = z.strictObject({ kind: z.literal('tell'), ...common })
const confirm = z.strictObject({
  kind: z.literal('confirm'),
  ...common,
  seen: line.meta({ description: 'What was seen, as a statement the person agrees to.' }),
})
const gate = z.strictObject({
  kind: z.literal('gate'),
  ...common,
  holds: z.array(identifier).min(1, 'holds back no hazard'),
  clear_words: z
    .string()
    .regex(/^[A-Z]{2,}( [A-Z]+)*$/, 'is not words in capitals')
    .meta({
      description: 'Typed when everybody is out and standing clear, before a lapsed gate is asked again.',
    }),
  evidence: z.array(evidence).min(1, 'asks for no evidence'),
})
const read = z.strictObject({
  kind: z.literal('read'),
  ...common,
  quantity: z.enum(['length', 'temperature']),
  of: short.meta({ description: 'What is measured, for example: bore.' }),
  with: identifier,
  drawing: z.enum(['bore', 'none']),
  stations: z.array(station).min(1, 'has no stations'),
  axes: z.array(axis).optional(),
  how: z.record(z.string(), line).meta({ description: 'The handling words by instrument kind.' }),
  repeats,
  plausible,
})
const observe = z.strictObject({
  kind: z.literal('observe'),
  ...common,
  conditions: z
    .array(
      z.strictObject({
        id: identifier,
        label: short,
        note: z.boolean().optional(),
        finding: z.boolean().optional(),
      }),
    )
    .min(2, 'needs at least two conditions'),
})
const judge = z.strictObject({
  kind: z.literal('judge'),
  ...common,
  compute: z.enum(['bore_form']),
  inputs: z.strictObject({
    diameters: identifier,
    datum: identifier.optional(),
    counterbore: identifier.optional(),
    set_before: identifier,
    set_after: identifier,
    part_temperature: z.array(identifier).min(1),
    instrument_temperature: z.array(identifier).min(1),
  }),
  against: z.array(characteristic).min(1, 'judges against nothing'),
})
const decide = z.strictObject({
  kind: z.literal('decide'),
  ...common,
  about: identifier.meta({ description: 'Id of the judge step whose verdict is disposed of.' }),
  choices: z.array(z.enum(['accept', 'rework', 'repair', 'replace', 'concession', 'hold'])).min(2),
})
const part = z.strictObject({ kind: z.literal('part'), ...common, use: identifier })

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

export const procedureSchema = z.strictObject({
  procedure: identifier,
  title: short,
  edition: short,
  summary: line,
  for: z.strictObject({
    orientation: z.array(z.enum(['horizontal', 'vertical'])).min(1),
    acting: z.array(z.enum(['double', 'single'])).min(1),
    lubricated: z.array(z.boolean()).min(1),
    oxidising: z.array(z.boolean()).min(1),
    tandem: z.array(z.boolean()).min(1),
  }),
  not_for: z.array(line),
  hazards: z.array(z.strictObject({ id: identifier, name: short })),
  seats: z.array(seat),
  steps: z.array(stepSchema).min(1, 'has no steps'),
})

export type Procedure = z.output<typeof procedureSchema>
export type Step = z.output<typeof stepSchema>
export type StepOf<K extends Step['kind']> = Extract<Step, { kind: K }>
export type Evidence = z.output<typeof evidence>
export type Station = z.output<typeof station>
export type Axis = z.output<typeof axis>
export type Seat = z.output<typeof seat>
export type Unknown = z.output<typeof when>['unknown']
