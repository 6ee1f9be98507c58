// Of the parts, asked at a review: what was renewed, how bad the wear is, what is near its limit, what was judged of a thing that somebody
// asks to be right, and whether gas was in a piston. From verdicts, decisions and findings of the log; that a thing is right is never said.
import { stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { type Block, row } from '../sheet/block.ts'
import {
  asItem,
  entriesText,
  entryLine,
  heading,
  isTag,
  linesWhere,
  notTold,
  type OnRecord,
  said,
  tagsIn,
} from './asked-entries.ts'
import { judgedOn, offLines, readBy, saidBlock } from './asked-gauge.ts'
import { asAsked, heldIn, wordsAsked } from './asked-words.ts'
import { changesInWords } from './changes-rows.ts'
import { decisionLine } from './decided.ts'
import { isWatched, type Judged, judgedIn, shareText } from './judged.ts'
import { clause, count, named, when } from './look.ts'
import { namesStep, namesVerdict } from './part-named.ts'
import { FOUND_AND_LEFT, sectionsOf } from './sections.ts'
import { keyedIn } from './whole-text.ts'

type Given = Extract<Entry, { type: 'verdict.given' }>
type Decision = Extract<Entry, { type: 'disposition.set' }>

const CHANGES = ['replace', 'repair', 'rework']
/** Steps that put in what is new, or take out what was. */
const NEW = /\b(?:new|renew\w*|replac\w*)\b/i

/** What a lead decided to have made new, and each step answered that has new parts in its name. */
export function renewedTold(record: OnRecord, asked: string): Block[] | null {
  const { defs, entries, review } = record
  // A gauge is put aside, and what took its place is told with it.
  if (tagsIn(asked).some((tag) => defs.instruments.instruments.some(({ id }) => isTag(id, tag)))) return null
  const words = wordsAsked(asked).filter((word) => !/^(?:renew|replac|chang|old|new|go|fit)/.test(word))
  const all = entries.filter((e): e is Decision => e.type === 'disposition.set' && CHANGES.includes(e.choice))
  const lines = linesWhere(
    record,
    ({ entry }) =>
      (entry.type === 'step.confirmed' ||
        entry.type === 'step.done' ||
        entry.type === 'finding.observed' ||
        entry.type === 'verdict.given') &&
      NEW.test(stepById(defs, entry.step).step.title),
  )
  const has = (text: string) => words.length === 0 || heldIn(text, words) > 0
  const isOf = (d: Decision) => words.length === 0 || namesStep(record, d.about, words) > 0 || has(d.why)
  const decided = all.filter(isOf)
  const done = lines.filter(has)
  if (all.length + lines.length === 0)
    return [notTold('of anything renewed: no decision of it, and no step of a new part')]
  const isMeant = decided.length + done.length > 0
  const open = review.exceptions.filter(
    ({ kind, what, entries: seqs }) =>
      kind === 'unmeasured' &&
      (words.length === 0 || has(what) || decided.some(({ seq }) => seqs.includes(seq))),
  )
  return [
    heading(
      isMeant
        ? decided.length > 0
          ? 'What was decided to be renewed, repaired or reworked, and what was keyed of new parts'
          : 'No decision to renew it is in this log. What was keyed of new parts'
        : `No decision to renew it and no step of a new one is in this log: ${asAsked(asked, words)}. What was decided of others`,
    ),
    ...(isMeant ? decided : all).map(
      (d): Block => ({
        margin: '',
        rows: [row(decisionLine(record, d), 'strong'), row(`  Why: ${clause(d.why)}.`)],
      }),
    ),
    said(...(isMeant ? done : lines)),
    ...open.map(asItem),
    said(
      'That it was decided is no word that it was done; an old part that went back in no entry tells of, unless it was keyed.',
    ),
  ]
}

/** Wear since the last overhaul, place by place, after whatever speaks against its figures. */
export function wearTold(record: OnRecord): Block[] {
  const { review, defs, entries } = record
  const section = sectionsOf(review).find(({ name }) => name === FOUND_AND_LEFT)
  const held = entries.filter(
    (e): e is Given => e.type === 'verdict.given' && e.verdict.result.verdict === 'HOLD',
  )
  const off = offLines(record)
  if (section === undefined)
    return [
      notTold('of wear: no figure of an earlier overhaul stands beside one of this job'),
      said(...off, 'Each reading: barover report.'),
    ]
  return [
    heading(
      off.length + held.length > 0
        ? 'Wear by figures that are in doubt: read what speaks against them first'
        : review.changes.some(({ last }) => last !== null)
          ? 'Wear since the last overhaul, as read; whether it is too much a verdict says, and no list'
          : 'No size of the last overhaul stands beside these, so none of it tells a wear; as read',
    ),
    said(
      ...off,
      ...held.map(
        (e) => `${named(stepById(defs, e.step))} is HOLD (entry ${e.seq}): no verdict tells how bad it is.`,
      ),
    ),
    said(...changesInWords(defs, review.changes).map(({ text }) => text)),
    said(`Place by place, with what is behind it: ${section.number}.`),
  ]
}

/** What is within its error of a limit, or used so far that it is to be watched; then the rest by the share that is used. */
export function nearTold(record: OnRecord, asked: string): Block[] {
  const { review, defs } = record
  const items = review.exceptions.filter(({ kind }) => kind === 'close')
  const shares = standing(record).flatMap((e) =>
    judgedIn(e.verdict).flatMap((one) => {
      const text = shareText(defs, one)
      return one.used === null || one.used > 1 || text === null ? [] : [{ e, one, text, used: one.used }]
    }),
  )
  const watched = shares.filter(({ one }) => isWatched(one))
  const rest = shares.filter(({ one }) => !isWatched(one)).sort((a, b) => b.used - a.used)
  const line = ({ e, one, text }: { e: Given; one: Judged; text: string }) =>
    `${named(stepById(defs, e.step))}: ${one.name} ${text} (entry ${e.seq}).`
  const words = wordsAsked(asked).filter((word) => !OF_NEAR.test(word))
  const ofNamed = shares.filter(
    ({ e, one }) => namesStep(record, e.step, words) + heldIn(one.name, words) > 0,
  )
  const held = standing(record).filter((e) => e.verdict.result.verdict === 'HOLD')
  return [
    heading(
      items.length + watched.length > 0
        ? 'Near its limit by this record: within its error of it, or to be watched; a number opens it'
        : held.length > 0
          ? `Judged HOLD, so that no verdict tells near or far: ${held.map((e) => named(stepById(defs, e.step))).join('; ')}. Its figures, as they were read`
          : 'Nothing that was judged is as near its limit as its error, or to be watched, by this record',
    ),
    ...(ofNamed.length === 0
      ? []
      : [said(`Of what is named, ${asAsked(asked, words)}:`, ...ofNamed.map(line))]),
    ...items.map(asItem),
    ...(watched.length === 0 ? [] : [said('To be watched:', ...watched.map(line))]),
    ...(rest.length === 0
      ? []
      : [
          said(
            `Nearest of the rest, ${Math.min(NEAREST, rest.length)} of ${rest.length}:`,
            ...rest.slice(0, NEAREST).map(line),
          ),
        ]),
    ...held.map((e) =>
      said(
        `${named(stepById(defs, e.step))} is HOLD (entry ${e.seq}): of its figures none is judged near or far.`,
      ),
    ),
  ]
}

/** A line for each judged figure of what the words name, by its sheet or its own name; none where they name nothing judged. */
export function judgedFigures(record: OnRecord, words: readonly string[]): string[] {
  return standing(record).flatMap((e) =>
    judgedIn(e.verdict).flatMap((one) => {
      const text = shareText(record.defs, one)
      return text === null || namesStep(record, e.step, words) + heldIn(one.name, words) === 0
        ? []
        : [
            `${named(stepById(record.defs, e.step))}: ${e.verdict.result.verdict}, ${one.name} ${text} (entry ${e.seq}).`,
          ]
    }),
  )
}

const NEAREST = 5
const OF_NEAR = /^(?:near|clos|far|almost|borderlin|margin|tight|edge|over|out|past)/

/** Verdicts that are not void, in the order of the log. */
function standing({ entries, state }: OnRecord): Given[] {
  return entries.filter(
    (e): e is Given =>
      e.type === 'verdict.given' &&
      Object.values(state.verdicts).some((one) => one.seq === e.seq && !one.void),
  )
}

const OF_ASKING =
  /^(?:alright|right|good|bad|judg|read$|again|afterward|anew|twice|weren|wasn|didn|isn|aren|hasn|fine|okay|toler|limit|within|tight|bent|worn|straight|round|after|now|loos|big|small|spec)/

/** Of a thing that somebody asks to be right: each verdict and finding of it, the last one last. Null: nothing of that name was judged. */
export function judgedTold(record: OnRecord, asked: string): Block[] | null {
  const { entries, defs, state, review } = record
  const words = wordsAsked(asked).filter((word) => !OF_ASKING.test(word))
  const isNew = /\bnew\b/.test(asked)
  if (words.length === 0) return null
  const scored = entries.flatMap((e) => {
    if (e.type !== 'verdict.given') return []
    const { title } = stepById(defs, e.step).step
    const score = namesVerdict(record, e, words)
    return score === 0
      ? []
      : [{ e, figures: judgedIn(e.verdict), score: score + (isNew && NEW.test(title) ? 1 : 0) }]
  })
  const most = Math.max(0, ...scored.map(({ score }) => score))
  if (most === 0) return null
  const meant = scored.filter(({ score }) => score === most)
  const seqs = meant.map(({ e }) => e.seq)
  const items = review.exceptions.filter(
    ({ kind, entries: all }) =>
      (kind === 'unmeasured' || kind === 'close') && all.some((seq) => seqs.includes(seq)),
  )
  return [
    heading(
      `That it is right no record tells. What was judged of it, the last one last: ${asAsked(asked, words)}`,
    ),
    ...meant.map(({ e, figures }): Block => {
      const raised = state.raised.find(({ seq }) => seq === e.seq)?.voidBy ?? null
      const own = figures.filter(({ name }) => heldIn(name, words) > 0)
      return {
        margin: '',
        rows: [
          row(
            `${when(record, e)} ${named(stepById(defs, e.step))}: ${e.verdict.result.verdict} (entry ${e.seq})${raised === null ? '' : `, void since entry ${raised}`}`,
            'strong',
          ),
          ...(own.length === 0 ? figures : own).flatMap((one) => {
            const text = shareText(defs, one)
            return text === null ? [] : [row(`  ${one.name} ${text}.`)]
          }),
          ...decisionsOn(record, e).map((text) => row(`  ${text}`)),
        ],
      }
    }),
    ...items.map(
      (one): Block => ({
        ...asItem(one),
        rows: [...asItem(one).rows, ...one.sentences.map((text) => row(`  ${text}`))],
      }),
    ),
    said('What no verdict looks at, nobody judged.'),
  ]
}

function decisionsOn(record: OnRecord, e: Given): string[] {
  const next = record.entries.find((o) => o.type === 'verdict.given' && o.step === e.step && o.seq > e.seq)
  return record.entries.flatMap((d) =>
    d.type === 'disposition.set' &&
    d.about === e.step &&
    d.seq > e.seq &&
    d.seq < (next?.seq ?? Number.POSITIVE_INFINITY)
      ? [`${d.choice}, by ${d.person} (entry ${d.seq}): ${clause(d.why)}.`]
      : [],
  )
}

/** Facts by which a piston is told to be solid, hollow, vented or plugged, by the names that steps and answers have for them. */
const INSIDE =
  /\b(?:hollow|solid|vented\b.*\bpiston|piston\b.*\bvented|plugs?|cavit\w+|the knock|gas inside|the mass|vent holes?|hiss\w*)\b/i
/** Of the same words, and of other parts. */
const NOT_PISTON = /\b(?:pockets?|jackets?|water|cylinder|blinds?|runs on)\b/i

/** What was keyed of gas inside a piston; whether it was empty nobody keys. */
export function pistonTold(record: OnRecord): Block[] {
  const { defs } = record
  const lines = linesWhere(record, ({ entry }) => {
    if (
      entry.type !== 'finding.observed' &&
      entry.type !== 'evidence.given' &&
      entry.type !== 'evidence.failed' &&
      entry.type !== 'step.confirmed' &&
      entry.type !== 'note.written'
    )
      return false
    const title = 'step' in entry && entry.step !== null ? stepById(defs, entry.step).step.title : ''
    const shown = keyedIn(entry)
    return INSIDE.test(`${title} ${shown}`) && !NOT_PISTON.test(title)
  })
  const judged = record.entries.filter(
    (e): e is Given => e.type === 'verdict.given' && INSIDE.test(stepById(defs, e.step).step.title),
  )
  if (lines.length + judged.length === 0)
    return [notTold('of gas inside a piston: nothing was keyed of one being hollow, solid or vented')]
  return [
    heading('Whether it was empty, hollow or solid these words tell, and nothing else in the log'),
    said(
      ...lines,
      ...judged.map((e) =>
        entryLine(record, e, `${named(stepById(defs, e.step))}: ${e.verdict.result.verdict}`),
      ),
    ),
    said('That it was vented, or solid, is somebody’s word by that entry.'),
  ]
}

/** What fell with an instrument, or hangs on one that reads off: void, and taken again with what. Null: no instrument is meant. */
export function fellTold(record: OnRecord, ids: readonly string[]): Block[] | null {
  if (ids.length === 0) return null
  const { review, entries } = record
  const items = review.exceptions.filter(
    ({ kind, what }) => kind === 'instrument' && ids.some((id) => what.startsWith(`${id} `)),
  )
  const own = entries.filter(
    (e) => 'instrument' in e && e.instrument !== undefined && ids.includes(e.instrument),
  )
  const doubted = entries.flatMap((e) =>
    e.type === 'instrument.doubted' && ids.includes(e.instrument) ? [e] : [],
  )
  const off = offLines(
    record,
    own.map(({ seq }) => seq),
  )
  return [
    heading(
      doubted.length > 0
        ? `Void with ${ids.join(', ')}: ${count(doubted.flatMap(({ readings }) => readings).length, 'figure')}, and what rested on them`
        : off.length > 0
          ? `No entry voids what ${ids.join(', ')} read, and it read OFF its standard: what is judged by it is HOLD`
          : `No entry voids anything read with ${ids.join(', ')}: its figures stand in this log`,
    ),
    ...items.map(
      (one): Block => ({
        margin: String(one.number),
        rows: [
          row(`${one.what} (${entriesText(one.entries)})`, 'strong'),
          ...one.sentences.map((text) => row(`  ${text}`)),
        ],
      }),
    ),
    ...(off.length === 0
      ? []
      : [said('Off its standard:', ...off, ...(doubted.length > 0 ? [] : judgedOn(record, ids)))]),
    ...saidBlock(record, ids),
    ...(doubted.length > 0 ? [] : readBy(record, ids)),
  ]
}
