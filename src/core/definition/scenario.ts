// A practice scenario as an instructor writes it: which procedure on which machine, what is hidden there, and the instructor's own words.
// It says nothing of limits, hold points, marks or the kind of record: practice it is by what it is, and graded as every session is.
import { z } from 'zod'
import { POCKET_LIMITS } from '../cycle/pocket-limits.ts'
import { filePath, identifier, line, short } from './common.ts'
import { characteristic } from './limit-book.ts'

/** Words that a trainee may decide on; a STOP is called, not judged. */
const VERDICTS = ['ACCEPT', 'MONITOR', 'REWORK', 'REPLACE', 'HOLD'] as const

/** A step, a line of a hold point as `hold_point/block`, or the plate. */
const where = z
  .string()
  .regex(
    /^[a-z][a-z0-9_]*(?:\/[a-z][a-z0-9_]*)?$/,
    'is no place of a procedure: a step, or a hold point and its line, as hold_point/block',
  )

/** Small letters and dashes, as the list of faults has them. */
const fault = z
  .string()
  .regex(/^[a-z][a-z0-9-]*$/, 'is not the id of a fault: small letters, digits and dashes')

const MOST_SEED = 999_999_999

export const scenarioSchema = z
  .strictObject({
    scenario: identifier.meta({ description: 'Id of this scenario.' }),
    title: short.meta({
      description: 'What it is called in the session and on its sheet; it gives nothing away.',
    }),
    procedure: filePath.meta({
      description: 'The procedure that is practised: a file beside this one, or the name of a shipped one.',
      examples: ['bore-inspection'],
    }),
    machine: filePath.meta({
      description:
        'Record that the hidden machine is made after: a file beside this one, or the name of an example.',
      examples: ['tc-401'],
    }),
    seed: z
      .int('is not a whole number')
      .min(0, 'is below 0')
      .max(MOST_SEED, 'has more than nine figures')
      .meta({
        description: 'Number that the machine is drawn by: the same one for everybody who works it.',
      }),
    level: z
      .literal([1, 2, 3, 4, 5])
      .optional()
      .meta({ description: 'Draws what is hidden by level and seed, 1 to 5. Instead of faults.' }),
    faults: z
      .array(fault)
      .max(3, 'are more than three')
      .optional()
      .meta({
        description: 'What is hidden, by the ids of the list; [] for nothing. Instead of level.',
        examples: [['taper']],
      }),
    briefing: z.array(line).min(1, 'says nothing').max(12, 'are more than twelve lines').meta({
      description: 'What the trainee is told before the first step, a line each.',
    }),
    hints: z
      .array(
        z.strictObject({
          at: where.meta({ description: 'Where it is for: a step, hold_point/line, or plate.' }),
          says: line.meta({
            description: 'Where to look there. At a hold point it stands before the hint of the list.',
          }),
        }),
      )
      .max(60, 'are more than sixty')
      .optional()
      .meta({ description: 'Own hints. Each costs what every hint costs, and opens nothing.' }),
    expect: z
      .strictObject({
        stops_at: where.optional().meta({
          description:
            'Where nobody goes on: the step, or hold_point/line. Left out: the work goes to its end.',
        }),
        findings: z
          .array(
            z.strictObject({
              step: identifier.meta({ description: 'An observe step.' }),
              is: z
                .array(identifier)
                .min(1, 'names nothing')
                .meta({ description: 'Conditions of its list that are there.' }),
            }),
          )
          .optional()
          .meta({ description: 'What is to be seen.' }),
        verdicts: z
          .array(
            z.strictObject({
              step: identifier.meta({ description: 'A judge step.' }),
              is: z.enum(VERDICTS).meta({ description: 'The verdict that the part is worth in truth.' }),
              governs: z
                .union([characteristic, z.enum(POCKET_LIMITS)])
                .optional()
                .meta({ description: 'The limit that governs it, as taper, or driver-power of a load.' }),
            }),
          )
          .optional()
          .meta({ description: 'What is to be decided.' }),
      })
      .optional()
      .meta({
        description: 'What the instructor expects to be found. check holds it against the machine itself.',
      }),
    invented: z.literal(true).meta({
      description:
        'true: everything and everybody in it is made up. No scenario is told of real people or a real accident.',
    }),
  })
  .meta({
    title: 'Practice scenario',
    description: 'A hidden machine that an instructor has chosen, with their own words. Always PRACTICE.',
  })

export type Scenario = z.output<typeof scenarioSchema>
