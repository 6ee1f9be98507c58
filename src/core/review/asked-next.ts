// When something is to be looked at again, asked at a review: a lead says when, and nothing here works out a day. Of a part that the
// question names what was decided and judged of that part, and not what is near another.
import { type Definitions, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { validityText } from '../job/validity.ts'
import { list } from '../lib/wording.ts'
import { type Block, row } from '../sheet/block.ts'
import { placeName, placeNumber } from '../talk/names.ts'
import { asItem, heading, type OnRecord, said } from './asked-entries.ts'
import { asAsked, wordsAsked } from './asked-words.ts'
import { reachedText } from './changes-rows.ts'
import { decisionLine } from './decided.ts'
import type { Kind } from './exception.ts'
import { clause, named, when } from './look.ts'
import { namesStep, namesVerdict } from './part-named.ts'
import type { Changed } from './review.ts'
import { FOUND_AND_LEFT, sectionsOf } from './sections.ts'

type Given = Extract<Entry, { type: 'verdict.given' }>
type Decision = Extract<Entry, { type: 'disposition.set' }>

/** Words of the asking, that name no part. */
const OF_TIME =
  /^(?:next|overhaul|open|due|look|inspect|again|must|hour|left|day|date|run|last|until|judg|soon|long|time|when|due|schedul|plan|need)/

const HEADING = 'No day of it is worked out here: a lead says when. What this record has of it'

export function nextOverhaul(record: OnRecord, asked: string): Block[] {
  return ofPart(record, asked) ?? ofWhole(record)
}

/** Null: the question names no part of this job. */
function ofPart(record: OnRecord, asked: string): Block[] | null {
  const { entries, review, state } = record
  const words = wordsAsked(asked).filter((word) => !OF_TIME.test(word))
  if (words.length === 0) return null
  const verdicts = entries.filter(
    (e): e is Given =>
      e.type === 'verdict.given' &&
      state.raised.find(({ seq }) => seq === e.seq)?.voidBy == null &&
      namesVerdict(record, e, words) > 0,
  )
  const decisions = entries.filter(
    (e): e is Decision => e.type === 'disposition.set' && namesStep(record, e.about, words) > 0,
  )
  const seqs = new Set([...verdicts, ...decisions].map(({ seq }) => seq))
  const items = review.exceptions.filter(
    ({ kind, open, entries: all }) =>
      (kind === 'deadline' || kind === 'unmeasured' || (open && NOT_FIT.includes(kind))) &&
      all.some((seq) => seqs.has(seq)),
  )
  if (seqs.size === 0) return null
  return [
    heading(`${HEADING}: ${asAsked(asked, words)}`),
    ...items.map(asItem),
    ...verdicts.map((e) =>
      said(
        `${when(record, e)} ${named(stepById(record.defs, e.step))}: ${e.verdict.result.verdict} (entry ${e.seq}).`,
      ),
    ),
    ...decisions.map((d) => decisionBlock(record, d)),
    said(
      ...(decisions.length === 0 ? ['No decision of a lead about it is in this log.'] : []),
      'Of the whole machine: when is the next overhaul.',
    ),
  ]
}

function decisionBlock(record: OnRecord, d: Decision): Block {
  return {
    margin: '',
    rows: [
      row(decisionLine(record, d), 'strong'),
      row(`  Its words: ${clause(d.why)}.`),
      row(
        `  ${d.valid === undefined ? 'No end is keyed beside its words' : `It holds ${validityText(d.valid)}`}.`,
      ),
    ],
  }
}

function ofWhole({ review, defs }: OnRecord): Block[] {
  const section = sectionsOf(review).find(({ name }) => name === FOUND_AND_LEFT)
  const due = review.changes
    .flatMap((one) => (one.hoursLeft?.ok === true ? [{ one, left: one.hoursLeft.value }] : []))
    .sort((a, b) => a.left.earliest - b.left.earliest)[0]
  const why = [
    ...new Set(
      review.changes.flatMap(({ rate, hoursLeft }) =>
        [refusal(rate), refusal(hoursLeft)].flatMap((text) => text ?? []),
      ),
    ),
  ]
  const words = review.exceptions.filter(
    ({ kind, sentences }) => kind === 'deadline' || sentences.some((text) => TIMED.test(text)),
  )
  const now = review.exceptions.filter(
    ({ kind, open }) => kind === 'unmeasured' || (open && NOT_FIT.includes(kind)),
  )
  return [
    heading(HEADING),
    ...(now.length === 0
      ? []
      : [said('NOT FIT, OR NOT DECIDED, NOW: that comes before any hours:'), ...now.map(asItem)]),
    said(
      due === undefined
        ? `Hours left to a limit: none told${why.length === 0 ? ', as no wear is on record' : `: ${list(why.map((text) => text.replace(/[.]$/, '')))}`}.`
        : `Earliest: ${due.one.of}, ${whereOf(defs, due.one)}: ${reachedText(defs, due.left)}, by wear that goes straight on.`,
      ...(due?.left.now == null
        ? []
        : [`It is of the size alone; as it is now, ${due.left.now}: those hours say nothing of that.`]),
      ...(section === undefined ? [] : [`Place by place: behind ${section.number}.`]),
      ...(words.length === 0 ? [] : ['What was decided with a time in it:']),
    ),
    ...words.map(asItem),
  ]
}

/** What is open of these is not as it should be, or nobody has decided. */
const NOT_FIT: readonly Kind[] = ['started', 'stop', 'danger', 'verdict', 'finding', 'missing']

/** `CENTRE of ring travel, TOP TO BOTTOM`, with the number of its place. */
function whereOf(defs: Definitions, { found, left }: Changed): string {
  const one = found ?? left
  if (one === null) throw new Error('a change has a reading')
  const { step, place } = one
  return `${placeNumber(defs, step.id, place.key)} ${placeName(defs, step.id, place.key)}`
}

/** A time to come in the words of a decision. */
const TIMED = /decision.*\b(?:next (?:opening|overhaul)|not later than|until|before|\d{3,6} ?h\b)/i

const refusal = (result: { ok: boolean; error?: { say: string } } | null) =>
  result !== null && !result.ok ? (result.error?.say ?? null) : null
