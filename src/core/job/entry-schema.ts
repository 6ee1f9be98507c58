// The shape of an entry as read back from a journal. The hash chain proves that a line is as it was written, not that it
// was written by Barover: what comes from disk is checked like anything else from outside.

import { z } from 'zod'
import { readStamp } from '../lib/instant.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { RENEWED } from './adopt.ts'
import { isFileSize, isGivenName, isKeptName, isSha256 } from './attachment.ts'
import { CLOSE_CAUSES, type Entry, FORMAT } from './entries.ts'
import { strays } from './paper-allowed.ts'
import { LEVELS, MANNERS } from './practice.ts'
import { QUESTIONS_ABOUT } from './questions.ts'
import { CAUSE_IDS } from './stop-causes.ts'

const text = z.string()
const finite = z.number()
const place = {
  seq: z.int().min(0),
  at: text.refine((t) => readStamp(t) !== null, 'is a time with its offset'),
  by: text.optional(),
  prev: text,
  hash: text,
}
const onSheet = z.strictObject({
  time: text.nullable(),
  who: text.nullable(),
  says: text.optional(),
  back: z.literal(true).optional(),
})
const fromPaper = onSheet.optional()
const typed = { typed: text, value: finite, unit: text, si: finite }
const reading = { ...typed, step: text, place: text, instrument: text, paper: fromPaper }
const measured = z.strictObject(typed).optional()
const voids = z.array(text)
const valid = z.union([
  z.strictObject({ until: text }),
  z.strictObject({ hours: finite, from: finite.optional() }),
])
const signed = z.enum(['pin', 'initials']).optional()
const recordKind = z.enum(['REAL', 'PRACTICE', 'EXAMPLE'])
const hazards = z.array(z.strictObject({ id: text, name: text }))
const doing = z.discriminatedUnion('what', [
  z.strictObject({ what: z.literal('let-in'), seq: z.int(), step: text, hazards }),
  z.strictObject({ what: z.literal('stop'), seq: z.int() }),
  z.strictObject({
    what: z.literal('removed'),
    seq: z.int(),
    clause: text,
    numbers: z.array(text),
    told: z.boolean(),
  }),
])
const leftFigure = z.strictObject({
  of: text,
  station: text,
  axis: text.optional(),
  value: text,
  u: text.optional(),
  wears: z.enum(['larger', 'smaller']).optional(),
  from: z.enum(['left', 'found']),
  judged: text.optional(),
})
const copy = { name: text, sha256: text, text }
const of = <T extends string, S extends z.ZodRawShape>(type: T, shape: S) =>
  z.strictObject({ type: z.literal(type), ...place, ...shape })

const opened = of('job.opened', {
  format: z.literal(FORMAT),
  record: recordKind,
  job: text,
  program: z.strictObject({ name: text, version: text }),
  zone: text,
  clock: z.enum(['system', 'set']),
  answers: z.enum(['person', 'script']),
  files: z.array(
    z.strictObject({
      role: z.enum(['procedure', 'part', 'machine', 'limit-book', 'instruments', 'crew', 'scenario']),
      ...copy,
    }),
  ),
  paper: z.literal(true).optional(),
  practice: z
    .strictObject({ seed: z.int().min(0), level: z.literal(LEVELS), edition: text.optional() })
    .optional(),
})

const verdictWord = z.enum(['ACCEPT', 'MONITOR', 'REWORK', 'REPLACE', 'HOLD', 'STOP'])

/** A verdict's insides are read by the version that shows them; the outline is what everything else rests on. */
const result = {
  verdict: verdictWord,
  judged: z.array(z.looseObject({})),
  holds: z.array(text),
}
const verdict = z.discriminatedUnion('compute', [
  z.looseObject({
    compute: z.literal('bore_form'),
    version: text,
    inputs: z.looseObject({ readings: z.array(z.looseObject({})), limits: z.looseObject({}) }),
    result: z.looseObject({ ...result, proposals: z.array(z.looseObject({})) }),
    readings: z.array(z.int()),
  }),
  z.looseObject({
    compute: z.literal('figures'),
    version: text,
    inputs: z.looseObject({ figures: z.array(z.looseObject({})), holds: z.array(text) }),
    result: z.looseObject(result),
    readings: z.array(z.int()),
  }),
  z.looseObject({
    compute: z.literal('pocket_setting'),
    version: text,
    inputs: z.looseObject({
      record: z.looseObject({}),
      choice: z.looseObject({}),
      holds: z.array(text),
      errors: z.looseObject({ suctionK: z.array(finite.nullable()) }),
    }),
    result: z.looseObject({
      ...result,
      cautions: z.array(text),
      table: z.array(
        z.looseObject({ cylinders: z.array(z.looseObject({})), faults: z.array(z.looseObject({})) }),
      ),
    }),
    readings: z.array(z.int()),
  }),
])

const schema = z.discriminatedUnion('type', [
  opened,
  of('person.signed-on', { person: text, signed }),
  of('person.came-on', { person: text, signed }),
  of('person.signed-off', { person: text, signed }),
  of('job.handed-over', {
    from: text,
    to: text,
    signedFrom: z.enum(['pin', 'initials']),
    signedTo: z.enum(['pin', 'initials']),
    summary: z.array(text),
  }),
  of('pin.missed', { person: text }),
  of('pin.fitted', { person: text, signed }),
  of('machine.named', { typed: text }),
  of('machine.mismatched', { typed: text }),
  of('instrument.picked', { seat: text, instrument: text }),
  of('instrument.put-back', { seat: text, why: text, mispicked: text.optional() }),
  of('instrument.doubted', {
    instrument: text,
    why: text,
    says: text,
    readings: z.array(z.int()),
    temperatures: z.array(z.int()).optional(),
    voids,
    person: text.optional(),
    signed,
  }),
  of('step.done', { step: text, paper: fromPaper }),
  of('step.confirmed', { step: text, paper: fromPaper }),
  of('step.objected', { step: text, remark: text }),
  of('step.reopened', { step: text, why: text, voids }),
  of('evidence.given', {
    step: text,
    item: text,
    shown: text,
    reading: measured,
    instrument: text.optional(),
    person: text.optional(),
    signed,
    notes: text.optional(),
    off_by: text.optional(),
    was: text.optional(),
    why: text.optional(),
  }),
  of('evidence.failed', {
    step: text,
    item: text,
    shown: text,
    reading: measured,
    instrument: text.optional(),
    why: text,
    unlike: text.optional(),
  }),
  of('gate.opened', {
    step: text,
    looked: z.array(z.strictObject({ job: text, upTo: z.int(), head: text })).optional(),
  }),
  of('gate.closed', {
    step: text,
    cause: z.enum(CLOSE_CAUSES),
    items: voids,
    why: text.optional(),
    nobody_in: z.literal(true).optional(),
  }),
  of('wait.begun', { step: text, item: text, shown: text }),
  of('people.clear', { step: text, words: text }),
  of('reading.taken', reading),
  of('reading.doubted', { ...reading, why: text, shown: text.optional() }),
  of('reading.late', reading),
  of('doubt.settled', { choice: z.enum(['again', 'mistyped', 'kept', 'unreadable']), why: text.optional() }),
  of('late.settled', { kept: z.boolean() }),
  of('reading.dropped', { step: text, place: text }),
  of('reading.corrected', { ...reading, of: z.int(), why: text, doubt: text.optional(), voids }),
  of('reading.not-applicable', { step: text, place: text, why: text, person: text.optional(), signed }),
  of('not-applicable.taken-back', { step: text, place: text, why: text, voids }),
  of('finding.observed', {
    step: text,
    condition: text,
    also: z.array(text).optional(),
    note: text.optional(),
    paper: fromPaper,
  }),
  of('finding.corrected', {
    step: text,
    was: text,
    was_also: z.array(text).optional(),
    condition: text,
    also: z.array(text).optional(),
    note: text.optional(),
    why: text,
    voids,
  }),
  of('branch.left', { voids, test: text.optional() }),
  of('verdict.given', { step: text, verdict }),
  of('disposition.set', {
    step: text,
    about: text,
    choice: text,
    why: text,
    person: text,
    signed,
    radio: z.strictObject({ by: text }).optional(),
    authority: text.optional(),
    valid: valid.optional(),
  }),
  of('disposition.countersigned', { step: text, person: text, agrees: z.boolean(), voids, signed }),
  of('deviation.permitted', {
    step: text,
    what: text,
    why: text,
    authority: text,
    valid,
    person: text,
    signed,
  }),
  of('point.signed', { step: text, point: z.enum(['hold', 'witness', 'review']), person: text, signed }),
  of('point.notice-given', { step: text, whom: text }),
  of('point.not-attended', { step: text, whom: text, notice: z.int() }),
  of('note.written', { text, step: text.nullable() }),
  of('file.attached', {
    step: text.nullable(),
    name: text.refine(isKeptName),
    given: text.refine(isGivenName),
    size: finite.refine(isFileSize),
    sha256: text.refine(isSha256),
    caption: text,
  }),
  of('stop.raised', { step: text.nullable() }),
  of('stop.explained', {
    of: z.int().optional(),
    cause: z.enum(CAUSE_IDS).optional(),
    why: text,
    called_by: text.optional(),
    signed,
  }),
  of('stop.released', { person: text, answer: text, signed }),
  of('stop.stands', { person: text, first: text, signed }),
  of('thing.placed', {
    what: text,
    where: text,
    step: text.nullable(),
    number: text.optional(),
    place: text.optional(),
  }),
  of('thing.seen', { of: z.int(), person: text, signed }),
  of('thing.accounted', { of: z.int(), people: z.array(text), person: text, signed }),
  of('things.handed-on', { of: z.array(z.int()), to: text, person: text, signed }),
  of('elsewhere.seen', {
    job: text,
    record: recordKind,
    procedure: text,
    tag: text,
    told: z.boolean(),
    upTo: z.int(),
    head: text,
    written: text,
    people: z.array(text),
    left: z.boolean(),
    stop: text.nullable(),
    inside: hazards,
    names: hazards,
    letting: z.strictObject({ step: text, hazards }).nullable(),
    closed: text.nullable(),
    unread: text.nullable(),
    placed: z.array(text).optional(),
    since: z.array(doing).optional(),
  }),
  of('elsewhere.gone', { job: text, record: recordKind }),
  of('readings.questioned', { step: text, about: z.enum(QUESTIONS_ABOUT), text }),
  of('job.left', {}),
  of('job.taken-up', { desk: z.literal(true).optional() }),
  of('record.taken-in', {
    file: z.strictObject({ role: z.literal('machine'), ...copy }),
    changed: z.array(z.strictObject({ field: text, was: text.nullable(), now: text.nullable() })),
    why: text,
    gates: z.array(text),
    voids,
    undecided: z.array(text),
    anew: z.array(text),
    tests: z.array(text),
    dropped: z.array(z.int()),
    person: text,
    signed,
  }),
  of('left.adopted', {
    hours: finite,
    renewed: z.array(z.enum(RENEWED)),
    figures: z.array(leftFigure),
    without: z.array(leftFigure),
    file: z.strictObject({ name: text, sha256: text }),
    person: text,
    signed,
  }),
  of('remark.made', { text, person: text, signed }),
  of('paper.row', {
    step: text.nullable(),
    row: text,
    says: text.nullable(),
    paper: onSheet,
    of: z.int().optional(),
    why: text.optional(),
  }),
  of('paper.unread', {
    step: text,
    place: text,
    is: z.enum(['blank', 'unreadable', 'instrument']),
    says: text.optional(),
    why: text.optional(),
    paper: onSheet,
    of: z.int().optional(),
    voids,
  }),
  of('paper.signed', {
    as: z.enum(['keyed', 'compared']),
    person: text,
    signed: z.enum(['pin', 'initials']),
  }),
  of('practice.asked', {
    step: text.nullable(),
    of: text,
    manner: z.enum(MANNERS),
    shown: text,
    figure: text.optional(),
    instrument: text.optional(),
    alarm: z.literal(true).optional(),
    corrects: z.int().optional(),
  }),
  of('practice.called', { step: text, verdict: verdictWord, governs: z.array(text) }),
  of('practice.named', {
    step: text.nullable(),
    faults: z.array(text),
    hidden: z.array(text).optional(),
  }),
  of('practice.hinted', { step: text.nullable(), text }),
  of('clock.moved', { seconds: finite }),
  of('job.closed', { outcome: text, as_left: text.optional() }),
])

/** Refuses, naming the line, what is no entry of this version: code `newer` for a newer journal, else `shape`. */
export function readEntries(stored: readonly unknown[]): Result<readonly Entry[]> {
  const entries: Entry[] = []
  let isPaper = false
  for (const [i, one] of stored.entries()) {
    const format = (one as { format?: unknown } | null)?.format
    if (i === 0 && typeof format === 'number' && format > FORMAT) {
      return refuse('newer', 'This job was written by a newer Barover: read it with that one.')
    }
    const parsed = schema.safeParse(one)
    if (!parsed.success) {
      const issue = parsed.error.issues[0]
      const where = issue === undefined || issue.path.length === 0 ? 'its kind' : `"${issue.path.join('.')}"`
      return refuse(
        'shape',
        `Line ${i + 1} is not an entry that Barover writes: ${where} is not as it should be.`,
      )
    }
    if ((i === 0) !== (parsed.data.type === 'job.opened')) {
      return refuse('shape', `Line ${i + 1} is out of place: a job is opened once, on its first line.`)
    }
    const { prev: _prev, hash: _hash, ...rest } = parsed.data
    const entry = rest as unknown as Entry
    if (entry.type === 'job.opened') isPaper = entry.paper === true
    const stray = strays(isPaper, entry)
    if (stray !== null) return refuse('shape', `Line ${i + 1} is out of place: ${stray}.`)
    entries.push(entry)
  }
  return entries.length === 0 ? refuse('shape', 'There is no entry in this journal.') : ok(entries)
}
