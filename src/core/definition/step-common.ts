// What steps of several kinds have in common: ids and texts, rules, what they let in, points of an inspection plan.
import { z } from 'zod'
import { FIGURE_KINDS } from '../drawing/figures.ts'
import { identifier, line, short, written } from './common.ts'

/** What an unknown rule does is always said: do the step, skip it, or hold the job there. There is no default. */
export const when = z.strictObject({
  rule: line.meta({
    description: 'A rule in CEL over the ids of earlier steps, for example: strip == "present".',
    examples: ['strip == "present"'],
  }),
  unknown: z.enum(['do', 'skip', 'hold']).meta({
    description: 'What happens while the rule cannot be told: do the step, skip it, or hold the job there.',
  }),
})

/** What the kit is gathered from, beside the instruments, which seats and evidence name already. */
export const need = z.strictObject({
  what: short.meta({
    description: 'What it is, in the words the store knows it by; the same words are the same thing.',
    examples: ['Sling and shackles'],
  }),
  kind: z.enum(['lifting', 'tool', 'part', 'consumable', 'permit', 'person']).meta({
    description: 'Under which heading it is listed; person: a role beyond the crew.',
  }),
  note: short.optional().meta({
    description: 'What it has to be, or how many.',
    examples: ['rated for piston and rod'],
  }),
})

export const common = {
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
  takes: written('time')
    .optional()
    .meta({
      description:
        'About how long it takes, for telling how far the job is; left out: a usual time for its kind. No rule rests on it.',
      examples: ['5 min'],
    }),
  needs: z
    .array(need)
    .min(1, 'lists nothing')
    .optional()
    .meta({ description: 'What has to be there before the job, beside instruments; listed in the kit.' }),
}

/** For steps where nothing is read. */
export const pictured = {
  drawing: z
    .enum([...FIGURE_KINDS, 'readings'])
    .optional()
    .meta({
      description:
        'A picture of where people stand and what points where; readings: those read last along a part, before this step. Left out: none.',
    }),
}

/** For steps that are work at the machine. */
export const opening = {
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
export const point = z
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

/** For steps whose answer is about the machine record itself. */
export const byRecord = z.literal(true).optional().meta({
  description:
    'true: the answer is about the machine record. When a changed one is taken in, its hold point is signed anew; without one it is answered anew.',
})

/** The kind of a step, with what it is for: shown where an editor offers the eight of them. */
export function kind<K extends string>(word: K, description: string) {
  return z.literal(word).meta({ description })
}
