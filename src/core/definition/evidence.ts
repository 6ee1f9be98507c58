// The evidence of a gate: what must be shown before it opens, kind by kind. Nothing in it can be waved through.
import { z } from 'zod'
import { identifier, LOCK_ENDS, line, provenance, short, written } from './common.ts'

/** Quantities that some kind of instrument in the register reads. Names are those of the kinds of quantity. */
export const MEASURED_QUANTITIES = ['pressure-gauge', 'length', 'temperature'] as const

/** What is typed over a sling that was looked at, where the lift plan has no words of its own. */
export const INSPECTED_WORDS = 'INSPECTED TODAY'

const id = identifier.meta({ description: 'Id of this line of evidence, once in the gate.' })
const ask = line.meta({ description: 'What the screen asks for, and where to stand to get it.' })
const against = z
  .array(identifier)
  .min(1, 'proves nothing')
  .optional()
  .meta({
    description: 'Which hazards of its gate this proves, by id; left out: all of them.',
    examples: [['bad_air']],
  })
const common = { id, ask, against }

/** A number noted once and held against it wherever it is keyed again: by a name, as parts do not see one another's steps. */
const compared = {
  notes: identifier.optional().meta({
    description:
      'Name that the number is kept under for the rest of the job; keyed here anew, the new one is kept.',
    examples: ['piston_tag'],
  }),
  same_as: identifier.optional().meta({
    description: 'Name that it was kept under before: another number is no evidence, and goes on record.',
    examples: ['piston_tag'],
  }),
}

const capitals = z.string().regex(/^[A-Z]{2,}( [A-Z]+)*$/, 'is not words in capitals, at least two letters')

const life = written('time').meta({
  description: 'Age at which it is stale and is asked again.',
  examples: ['8 h'],
})

const locks = z.strictObject({
  kind: z.literal('locks').meta({ description: 'The number on each lock of the machine record.' }),
  ...common,
  ...compared,
  taken_off: z.enum(LOCK_ENDS).optional().meta({
    description:
      'Each lock that comes off then, last on first off: its number, and the initials of who took it off behind it.',
  }),
})

const words = z.strictObject({
  kind: z
    .literal('words')
    .meta({ description: 'Words typed out in full, once something was done and seen.' }),
  ...common,
  words: capitals.meta({ description: 'The words, in capitals.', examples: ['NO START'] }),
  life: life.optional(),
  seat: identifier.optional().meta({
    description:
      'Seat of the instrument that they are said of: it is picked before, and they fall when another is.',
    examples: ['meter'],
  }),
  register: z.literal('clear').optional().meta({
    description:
      'clear: the words count only while nothing temporary that was placed on this job is open in the register.',
  }),
  findings: z.literal('decided').optional().meta({
    description:
      'decided: the words count only while a lead has decided on every nonconformance of this job, and holds none.',
  }),
})

const gas = z.strictObject({
  kind: z.literal('gas').meta({ description: 'A gas reading inside a limit of the machine record.' }),
  ...common,
  limit: identifier.meta({ description: 'Id of the gas limit in the machine record.' }),
  with: identifier.meta({ description: 'Seat of the gas meter.' }),
  oxygen: identifier
    .optional()
    .meta({ description: 'For flammables: the oxygen evidence taken at the same place.' }),
})

const bound = z.union([
  written('pressure-gauge', { signed: true }),
  written('length'),
  written('temperature', { signed: true }),
])

const measured = z.strictObject({
  kind: z.literal('measured').meta({ description: 'A value read on an instrument, inside a limit.' }),
  ...common,
  place: short.meta({ description: 'Where it is read, in a few words.', examples: ['head-end space'] }),
  quantity: z.enum(MEASURED_QUANTITIES).meta({ description: 'What sort of quantity is read.' }),
  with: identifier.meta({ description: 'Seat of the instrument.' }),
  at_least: bound.optional().meta({ description: 'Least that passes.', examples: ['-0.5 psig'] }),
  at_most: bound.optional().meta({ description: 'Most that passes.', examples: ['0.5 psig'] }),
  ...provenance,
  life,
})

const numbers = z.strictObject({
  kind: z.literal('numbers').meta({ description: 'Numbers read off papers or devices.' }),
  ...common,
  ...compared,
  of: z.enum(['permit', 'blind', 'tag', 'personal_lock', 'part']).meta({
    description: 'What carries the number. A permit may cover several; one device is in one place.',
  }),
  per: z.enum(['once', 'isolation_point', 'person']).meta({
    description: 'How many: one, one for each isolation point, or one for each person on the job.',
  }),
  taken_off: z.literal(true).optional().meta({
    description: 'It was taken off: the initials of who did it are keyed behind the number.',
  }),
  at_least: z.literal(2).optional().meta({
    description: 'Of one for each person: with fewer than two people on the job the gate stays shut.',
  }),
})

const wait = z.strictObject({
  kind: z.literal('wait').meta({ description: 'A wait that has really gone by, and what is seen then.' }),
  ...common,
  lasts: written('time').meta({
    description: 'How long it lasts from its first words.',
    examples: ['10 min'],
  }),
  begin_words: capitals.meta({
    description: 'Typed when it begins, in capitals.',
    examples: ['ALL SHUT IN'],
  }),
  words: capitals.meta({
    description: 'Typed for what is seen at its end, in capitals.',
    examples: ['NO RISE'],
  }),
})

const lift = z.strictObject({
  kind: z.literal('lift').meta({ description: 'A lift plan: load, rating, which sling, inspected today.' }),
  id,
  against,
  load: line.meta({ description: 'How the screen asks for the weight to be lifted.' }),
  rating: line.meta({ description: 'How it asks for what the sling is rated to carry, rigged as it is.' }),
  sling: line.meta({ description: 'How it asks for the number or tag of the sling.' }),
  inspected: line.meta({ description: 'How it asks for the look over the sling, today.' }),
  words: capitals.optional().meta({
    description: `Typed for a sling looked over today; left out: ${INSPECTED_WORDS}.`,
    examples: [INSPECTED_WORDS],
  }),
})

/** A witness vouches for all the rest, so it never says what it proves and falls with whatever falls. */
const witness = z.strictObject({
  kind: z.literal('witness').meta({ description: 'Initials of somebody who did none of it.' }),
  id,
  ask,
  roles: z
    .array(z.enum(['mechanic', 'lead']).meta({ description: 'A role of the crew list.' }))
    .min(1, 'names no role')
    .meta({ description: 'Who may witness, by role.' }),
})

export const evidenceSchema = z.discriminatedUnion('kind', [
  locks,
  words,
  gas,
  measured,
  numbers,
  wait,
  lift,
  witness,
])

export type Evidence = z.output<typeof evidenceSchema>
export type EvidenceOf<K extends Evidence['kind']> = Extract<Evidence, { kind: K }>
