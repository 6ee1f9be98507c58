// The shape of a report: plain data, from which every writer makes its own page and none takes anything else. Published as JSON
// Schema by `npm run schemas`.
import { z } from 'zod'
import {
  changeSchema,
  correctionSchema,
  decisionSchema,
  exceptionSchema,
  fallenSchema,
  fileSchema,
  findingSchema,
  gateSchema,
  instrumentSchema,
  limitSchema,
  logSchema,
  personSchema,
  readStepSchema,
  signatureSchema,
  verdictSchema,
} from './schema-parts.ts'
import { plotSchema } from './schema-plots.ts'
import { practiceSchema } from './schema-practice.ts'
import { list, maybe, whole, words, yes } from './schema-words.ts'

/** Raised only when a reader of today would misread the new shape. */
export const REPORT_FORMAT = 1

export const reportSchema = z
  .strictObject({
    report: z.literal(REPORT_FORMAT).meta({ description: 'Version of this shape.' }),
    record: z
      .enum(['REAL', 'PRACTICE', 'EXAMPLE'])
      .meta({ description: 'What sort of record it is: the latter two are no record of work on a machine.' }),
    paper: z.literal(true).optional().meta({
      description:
        'Keyed in from a paper sheet: gates not enforced by Barover. Left out of a job that was live.',
    }),
    job: words('Id of the job.'),
    title: words('Title of the procedure.'),
    machine: z
      .strictObject({
        tag: words('Tag on the plate of the cylinder.'),
        title: words('What people call it.'),
        edition: words('Edition of its record.'),
        invented: yes('true: made up for examples and practice.'),
      })
      .meta({ description: 'The machine, by the record that counted last.' }),
    procedure: z
      .strictObject({
        edition: words('Edition of the procedure.'),
        invented: yes('true: it, or a part of it, is made up for examples and practice.'),
      })
      .meta({ description: 'What the job was opened with.' }),
    standing: words('How it ended, or that it is OPEN, in words.'),
    isClosed: yes('true: the job is closed.'),
    outcome: maybe('The word it closed with, NONE where nothing was to be judged; null while it is open.'),
    asLeft: maybe('The verdict as left in words, where something was done about the one as found.'),
    from: words('Stamp of the first entry.'),
    to: words('Stamp of the close; of an open job, of the last entry.'),
    added: list(z.string(), 'What the log took after the close, in that order.'),
    started: z
      .strictObject({
        what: words('When and by whom, what was undecided then, and what hung on the machine.'),
        hung: list(z.string(), 'Each thing that was on by the record, and what it hung on.'),
      })
      .nullable()
      .meta({ description: 'What the record tells of the start; null where nothing is started.' }),
    zone: words('Time zone of the computer it was opened on.'),
    entries: whole('Entries in the log.'),
    head: words('Head hash of the log, over every entry of it.'),
    opened: words('Version of the program that opened the job.'),
    reported: words('Version of the program that made this report.'),
    checks: list(
      z.strictObject({
        of: words('content, tail, whole, files.'),
        says: words('What could be checked of it.'),
      }),
      'What was checked of the log, and never more.',
    ),
    practice: practiceSchema.optional().meta({
      description: 'The sheet of a practice session on a hidden machine. Left out of every other record.',
    }),
    cautions: list(z.string(), 'What has to be known before anything here is used.'),
    verdicts: list(verdictSchema, 'Every verdict that stands.'),
    fallen: list(fallenSchema, 'Every verdict that fell and was not given anew.'),
    exceptions: list(exceptionSchema, 'What was out of the ordinary, worst first.'),
    usual: list(z.string(), 'What was as usual, counted.'),
    leftOut: list(z.string(), 'Steps left out by their own condition, with the rule.'),
    changes: list(changeSchema, 'As found, as left and the last overhaul.'),
    readings: list(readStepSchema, 'Every step that read something.'),
    gates: list(gateSchema, 'Every hold point.'),
    people: list(personSchema, 'Everybody who was on the job or signed for something.'),
    signatures: list(signatureSchema, 'Every signature.'),
    instruments: list(instrumentSchema, 'Everything that was measured with.'),
    limits: list(limitSchema, 'Every limit that a standing verdict was held against.'),
    gasLimits: list(
      z.strictObject({
        says: words('The limit, and what it is for.'),
        source: words('Where it comes from.'),
        approvedBy: words('Who approved it.'),
      }),
      'Gas limits of the machine record that hold points of this job ask for.',
    ),
    findings: list(findingSchema, 'What was seen, as one of a list.'),
    decisions: list(decisionSchema, 'What did not conform and what a lead decided.'),
    permits: list(z.string(), 'Deviation permits.'),
    corrections: list(correctionSchema, 'What was put right or taken back, with the old and the new.'),
    files: list(fileSchema, 'Attached files.'),
    plots: list(plotSchema, 'What the plots are drawn from.'),
    log: list(logSchema, 'Every entry, as the sheet has it.'),
  })
  .meta({
    title: 'Report of a job',
    description: 'What barover report JOB --to json prints. SI wherever a key does not say otherwise.',
  })

export type Report = z.output<typeof reportSchema>
