// The parts of a report one by one: what was read, what was shown at hold points, who signed, by which limits, what was changed.
import { z } from 'zod'
import {
  at,
  by,
  figure,
  list,
  maybe,
  maybeFigure,
  maybeReal,
  number,
  real,
  seq,
  step,
  whole,
  words,
  yes,
} from './schema-words.ts'

export const verdictSchema = z.strictObject({
  number,
  step,
  title: words('Title of the step that judged.'),
  word: words('ACCEPT, MONITOR, REWORK, REPLACE, HOLD or STOP.'),
  isAgain: yes('true: the second look at what an earlier step judged.'),
  because: list(z.string(), 'What holds it up, or what governs with its limit and source.'),
  decided: maybe('What a lead decided about it; null where nobody did.'),
  left: maybe('The verdict as left; null where it was worked on and no verdict tells how it went back.'),
  readAgain: yes('true: without a verdict as left, read again and held against no limit.'),
  seq,
  at,
})

export const fallenSchema = z.strictObject({
  number,
  step,
  title: words('Title of the step that judged.'),
  was: words('The verdict before it fell.'),
  by: words('What it fell with.'),
  seq,
  at,
})

export const exceptionSchema = z.strictObject({
  number: whole('Its number in the list, the worst first.'),
  kind: words('What sort of exception it is.'),
  what: words('One line that stands for itself.'),
  sentences: list(z.string(), 'What there is to say of it.'),
  entries: list(z.int(), 'Entries behind it.'),
  open: yes('true: somebody still has to do something about it.'),
})

const wear = z.strictObject({
  perHour: real('Wear per running hour, metres; positive whichever way the reading goes.'),
  U: real('Half the interval about it, metres per hour.'),
  per1000: words('Wear in 1000 h, in the unit of the figures.'),
  interval: words('Give or take, in 1000 h, in the unit of the figures.'),
  basis: words('What the interval accounts for; from two readings it is measuring error only.'),
  readings: whole('How many readings it rests on.'),
})
const hours = z.strictObject({
  earliest: real('Running hours after which the limit may be reached: the end to plan by.'),
  expected: maybeReal('Straight on at the rate found; null when no wear shows.'),
  latest: maybeReal('By when it should have been reached; null when it may never be.'),
  limit: figure('The limit that is reached.'),
  source: words('Where the limit comes from.'),
})
const refused = z.strictObject({ refused: words('Why it cannot be told.') })

export const changeSchema = z.strictObject({
  of: words('What was measured.'),
  place: words('Where: station and axis.'),
  last: z
    .strictObject({ on: words('Day of the overhaul, YYYY-MM-DD.'), value: figure('As it was left then.') })
    .nullable()
    .meta({ description: 'What the last overhaul left at this place; null where none has it.' }),
  found: maybeFigure('As found on this job.'),
  left: maybeFigure('As left on this job.'),
  worn: maybe('Found less what the last overhaul left, with its sign; null where one of them is not there.'),
  change: maybe('Left less found, with its sign; null where one of them is not there.'),
  held: z
    .strictObject({
      found: maybe('Why what was found was measured on HOLD, with its sheet; null: it was not.'),
      left: maybe('Why what was left was measured on HOLD, with its sheet; null: it was not.'),
    })
    .optional()
    .meta({ description: 'Left out where neither was measured on HOLD.' }),
  wear: z
    .union([wear, refused])
    .nullable()
    .meta({ description: 'Rate of wear; null where nothing tells it.' }),
  hoursLeft: z
    .union([hours, refused])
    .nullable()
    .meta({ description: 'Hours to the limit; null where there is no rate.' }),
})

const reading = z.strictObject({
  seq,
  at,
  by,
  typed: words('Exactly what was keyed.'),
  value: figure('What it was taken as.'),
  instrument: words('Id of the instrument.'),
  counts: z.enum(['yes', 'corrected', 'void']).meta({ description: 'Whether it still stands.' }),
  kept: maybe('Why it was kept although it was doubted.'),
  corrects: z.int().nullable().meta({ description: 'Entry of the reading that this one corrects.' }),
  paper: z.string().optional().meta({
    description:
      'Time and initials beside it on the sheet it was keyed from; left out where it was read live.',
  }),
})
const place = z.strictObject({
  number,
  name: words('Where it was read.'),
  state: words('settled, more, unsettled or not-applicable.'),
  value: maybeFigure('What its repeats come to; null where they come to nothing.'),
  spread: maybe('How far its repeats lie apart.'),
  why: maybe('Why there is no figure.'),
  readings: list(reading, 'Every reading taken here, also those that no longer count.'),
})
const sketch = z.strictObject({
  title: words('What is drawn.'),
  told: words('The same in words.'),
  lines: list(z.string(), 'Lines of text in which every sign is as wide as any other.'),
})
export const readStepSchema = z.strictObject({
  number,
  step,
  title: words('Title of the step.'),
  of: words('What was measured.'),
  stage: maybe('as_found, as_left, or null.'),
  places: list(place, 'Its places in the order they were measured.'),
  sketches: list(sketch, 'What was measured, drawn with its figures; none where no place lies along it.'),
})

const shownAt = z.strictObject({
  item: words('What was asked.'),
  shown: words('What was keyed for it.'),
  value: maybeFigure('The figure, where one was read.'),
  instrument: maybe('Id of the instrument.'),
  person: maybe('Who witnessed it.'),
  at,
  by,
  age: maybeReal(
    'Seconds from when it was given to when the hold point was complete; null where a time cannot be read.',
  ),
  life: maybeReal('Seconds that it stands; null where time alone does not void it.'),
})
export const gateSchema = z.strictObject({
  number,
  step,
  title: words('Title of the hold point.'),
  holds: list(z.string(), 'Hazards that it keeps people from.'),
  status: words('How it stands at the end of the log: never complete, complete, or fallen.'),
  openings: list(
    z.strictObject({ seq, at, by, evidence: list(shownAt, 'What stood when it was complete.') }),
    'Each time it was complete.',
  ),
  falls: list(
    z.strictObject({
      seq,
      at,
      lapsed: z.string().optional().meta({
        description:
          'Stamp of when it was past its life, where that was a minute or more before anybody noted it; else left out.',
      }),
      why: words('Why it fell.'),
      void: list(z.string(), 'What fell with it.'),
    }),
    'Each time it fell.',
  ),
  failed: list(
    z.strictObject({
      seq,
      at,
      by,
      item: words('What was asked.'),
      shown: words('What was keyed.'),
      why: words('Why it is no evidence.'),
    }),
    'What was keyed and was no evidence.',
  ),
})

export const personSchema = z.strictObject({
  id: words('Initials.'),
  name: words('Name, by the crew file of the job.'),
  role: words('mechanic, trainee or lead.'),
  onJob: yes('true: was signed on at some time.'),
  since: yes('true: signed only for what the log took after the close, and was no part of the job.'),
  signed: whole('How many signatures of theirs the log holds.'),
})
export const signatureSchema = z.strictObject({
  seq,
  at,
  person: words('Initials of who signed.'),
  how: z
    .enum(['PIN', 'initials only'])
    .meta({ description: 'With a PIN that fitted, or by initials alone.' }),
  keyedBy: by,
  what: words('What was signed for.'),
})

export const instrumentSchema = z.strictObject({
  id: words('Number on its sticker.'),
  title: words('What it is.'),
  kind: words('Its kind.'),
  due: maybe('Last day of its calibration; null for one that is in no register of the job.'),
  certificate: maybe('Number of its certificate.'),
  error: words('Its stated measuring error, or that nobody has stated one.'),
  readings: whole('Readings with it that still count.'),
  evidence: whole('Things shown with it at hold points.'),
  doubted: maybe('Why it was found out of calibration on this job.'),
})

export const limitSchema = z.strictObject({
  number,
  judged: words('What was held against it.'),
  bound: z.enum(['at most', 'at least']).meta({ description: 'Which way it bounds.' }),
  limit: figure('The limit.'),
  value: maybeFigure('What was judged; null where it could not be worked out.'),
  U: maybeFigure('Measuring error allowed for, at k = 2.'),
  used: maybeReal('Share of the limit used, 1 on it; null where it cannot be said.'),
  countedFrom: maybeFigure('What that share is counted from; null where it is from nothing.'),
  watchedFrom: maybeReal(
    'Share of the limit from which the owner wants it watched; null where none is on record.',
  ),
  word: words('The word for this figure alone; of a driver load that of the whole question of the pocket.'),
  governs: yes('true: it uses the largest share of its limit; of a driver load, that it is over.'),
  from: z
    .enum(['machine', 'fallback'])
    .meta({ description: "The machine's own record and book, or the fall-back set a lead named." }),
  book: words('The book.'),
  source: words('Title, edition and page, as whoever wrote the book put it.'),
  page: maybe('Page, sheet, table or clause in the source; null where none is named.'),
  rule: maybe('The rule it was reckoned from.'),
  approvedBy: words('Who approved it.'),
  since: words('Since when, YYYY-MM-DD.'),
})

export const findingSchema = z.strictObject({
  number,
  title: words('What was looked at.'),
  found: words('What was seen.'),
  note: maybe('What was written of it.'),
  isFinding: yes('true: it does not conform, and a lead has to decide on it.'),
  at,
  by,
})
export const decisionSchema = z.strictObject({
  name: maybe('NC-1: number of what does not conform; null for a verdict of ACCEPT.'),
  about: words('What was decided on.'),
  word: words('The verdict, or what was found.'),
  choice: maybe('accept, rework, repair, replace, concession or hold; null: open.'),
  why: maybe('The reason.'),
  person: maybe('Who decided.'),
  terms: maybe('On whose authority a concession is given, and how long it stands.'),
  radio: maybe('Who keyed what was said by radio; null where the lead signed.'),
  countersigned: yes('true: the lead who said it by radio has signed for it since.'),
  open: yes('true: nobody decided, or it was said by radio and is not countersigned.'),
  seq: z.int().nullable().meta({ description: 'Entry of the decision.' }),
})

export const correctionSchema = z.strictObject({
  seq,
  at,
  by,
  what: words('What was put right or taken back.'),
  was: maybe('What it was before.'),
  now: maybe('What it is now; null where it was only taken back.'),
  why: words('The reason.'),
  voids: list(z.string(), 'Steps that fell with it.'),
})

export const fileSchema = z.strictObject({
  seq,
  name: words('Name in the folder of the files.'),
  caption: words('What it shows.'),
  size: whole('Bytes.'),
  sha256: words('Hash of its bytes.'),
  is: words('as-attached, changed or gone.'),
})

export const logSchema = z.strictObject({
  seq,
  at,
  by,
  type: words('Type of the entry.'),
  number: maybe('Number on the sheet.'),
  told: list(z.string(), 'What the sheet says of it.'),
  right: words('Who and when, as beside it on the sheet.'),
})
