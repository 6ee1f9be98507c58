// Why something was put on hold, asked at a review: what holds each verdict up comes before what a lead decided of it, as the decision is
// no reason for the word. Also what a corrected figure changed, as far as the log has it.
import { stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { type Block, row } from '../sheet/block.ts'
import { becauseRows } from '../sheet/verdict-block.ts'
import { asItem, entriesText, heading, type OnRecord, said } from './asked-entries.ts'
import { offLines } from './asked-gauge.ts'
import { correctionsTold } from './asked-readings.ts'
import { wordsAsked } from './asked-words.ts'
import { howDecided } from './decided.ts'
import { clause, named, when } from './look.ts'
import { namesVerdict } from './part-named.ts'

type Given = Extract<Entry, { type: 'verdict.given' }>

const isHeld = (entry: Entry): entry is Given =>
  entry.type === 'verdict.given' && entry.verdict.result.verdict === 'HOLD'

/** Of those that the question names, where it names any; a hold that nobody judged, as a lead's own, is told too. */
export function whyHoldTold(record: OnRecord, asked: string): Block[] {
  const { entries, defs } = record
  const all = entries.filter(isHeld)
  const words = wordsAsked(asked)
  const meant = all.filter((e) => namesVerdict(record, e, words) > 0)
  const held = meant.length === 0 ? all : meant
  const put = entries.filter((e) => e.type === 'disposition.set' && e.choice === 'hold')
  const open = /\bnot\b.*\bjudged\b/.test(asked)
    ? record.review.exceptions.filter(({ kind }) => kind === 'unmeasured')
    : []
  if (open.length > 0)
    return [
      heading('Read again and judged by no verdict, by this record'),
      ...open.map(
        (one): Block => ({
          ...asItem(one),
          rows: [...asItem(one).rows, ...one.sentences.map((text) => row(`  ${text}`))],
        }),
      ),
    ]
  if (held.length + put.length === 0)
    return [
      heading('Nothing was put on hold by this log: no verdict of it is HOLD, and no lead decided to hold'),
      said('Why a hold point fell is another question: why did the hold point fall.'),
    ]
  return [
    heading('Why it is HOLD: what holds each verdict up, and after that what was decided'),
    ...held.map((e) => heldBlock(record, e)),
    ...put.flatMap((d): Block[] =>
      d.type === 'disposition.set' && !held.some(({ step }) => step === d.about)
        ? [
            {
              margin: '',
              rows: [row(named(stepById(defs, d.about)), 'strong'), row(`  ${decisionText(record, d)}`)],
            },
          ]
        : [],
    ),
  ]
}

function heldBlock(record: OnRecord, e: Given): Block {
  const { defs, state, entries } = record
  const voidBy = state.raised.find(({ seq }) => seq === e.seq)?.voidBy ?? null
  const decisions = entries.filter((d) => d.type === 'disposition.set' && d.about === e.step && d.seq > e.seq)
  return {
    margin: '',
    rows: [
      row(
        `${named(stepById(defs, e.step))}: HOLD (entry ${e.seq})${voidBy === null ? '' : `, void since entry ${voidBy}`}`,
        'strong',
      ),
      ...holdsOf(record, e).map((text) => row(`  ${text}`)),
      ...offLines(record, e.verdict.readings).map((text) => row(`  ${text}`)),
      ...(decisions.length === 0
        ? [row('  No decision of a lead about it is in this log.', 'caution')]
        : decisions.flatMap((d) =>
            d.type === 'disposition.set' ? [row(`  ${decisionText(record, d)}`)] : [],
          )),
    ],
  }
}

/** All of what holds it up: in few lines some are only counted. */
function holdsOf({ defs }: OnRecord, { verdict }: Given): string[] {
  const { result } = verdict
  const holds = 'holds' in result ? result.holds : []
  return holds.length > 0 ? [...holds] : becauseRows(defs, verdict).map(({ text }) => text.trim())
}

function decisionText(record: OnRecord, d: Extract<Entry, { type: 'disposition.set' }>): string {
  return `Decided after it, and no reason for the HOLD: ${d.choice}, by ${d.person}${howDecided(record, d)} ${when(record, d)} (entry ${d.seq}): ${clause(d.why)}.${d.authority === undefined ? '' : ` On the authority of ${d.authority}.`}`
}

/** What would have come of another figure: the log has what was judged, and judges nothing anew. */
export function wouldHavePassedTold(record: OnRecord): Block[] {
  const { entries, defs } = record
  const given = entries.filter((e): e is Given => e.type === 'verdict.given')
  const corrected = entries.filter((e) => e.type === 'reading.corrected')
  const lines = corrected.flatMap((c) => {
    const after = given.filter((e) => e.seq > c.seq && e.verdict.readings.includes(c.seq))
    const before = given.findLast(
      (e) => c.type === 'reading.corrected' && e.verdict.readings.includes(c.of) && e.seq < c.seq,
    )
    const first = after[0]
    const now =
      first === undefined ? 'no verdict rests on it' : `${wordText(record, first)} rests on the new one`
    const was =
      before === undefined
        ? 'no verdict was given on the old figure'
        : `with the old one it was ${wordText(record, before)}`
    return [`The correction of ${entriesText([c.seq])}: ${was}; ${now}.`]
  })
  const held = given.filter(isHeld)
  return [
    heading('No entry tells what another figure would have come to: nothing is judged anew here'),
    said(...lines),
    ...(held.length === 0
      ? []
      : [
          said(
            ...held.map(
              (e) =>
                `${named(stepById(defs, e.step))} is HOLD, by the log for this: ${holdsOf(record, e).map(clause).join('; ')} (entry ${e.seq}).`,
            ),
          ),
        ]),
    ...correctionsTold(record),
  ]
}

const wordText = ({ defs }: OnRecord, e: Given) =>
  `${named(stepById(defs, e.step))}: ${e.verdict.result.verdict} (entry ${e.seq})`
