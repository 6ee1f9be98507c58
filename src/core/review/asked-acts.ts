// Questions at a review about what people did: STOPs and their release, decisions, who may decide, what keeps the job open, locks and
// tags, the course of it. Each is answered from entries of the log, with their numbers.

import { type Definitions, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { next } from '../job/next.ts'
import { nonconformances } from '../job/nonconformance.ts'
import { openWords } from '../job/open-words.ts'
import { openStop, type State } from '../job/state.ts'
import { barredFromRelease } from '../job/stop-causes.ts'
import { type Block, row } from '../sheet/block.ts'
import { deskOf, takenUp } from '../talk/desk-words.ts'
import { mayDecide, mayRelease, peopleText } from '../talk/may-sign.ts'
import { nonconformanceText } from '../talk/names.ts'
import {
  asItem,
  entriesText,
  entryLine,
  heading,
  linesWhere,
  type OnRecord,
  said,
  toldOf,
} from './asked-entries.ts'
import { offTexts } from './asked-gauge.ts'
import { wordsAsked } from './asked-words.ts'
import { howDecided } from './decided.ts'
import { byWhom, clause, movesOf, named } from './look.ts'
import { namesStep } from './part-named.ts'

export function stopsTold(record: OnRecord): Block[] {
  const stops = record.review.exceptions.filter(({ kind }) => kind === 'stop')
  if (stops.length === 0) return [heading('No STOP is in this log, so none was released')]
  const danger = record.review.exceptions.filter(({ kind }) => kind === 'danger')
  return [
    heading('STOPs of this log, who called each, and who released it'),
    ...stops.map((one): Block => {
      const [first] = asItem(one).rows
      return {
        margin: String(one.number),
        rows: [
          ...(first === undefined ? [] : [first]),
          ...one.sentences.map((text) => row(`  ${text}`)),
          ...onAgain(record, one.entries.at(-1) ?? -1).map((text) => row(`  ${text}`)),
        ],
      }
    }),
    ...(danger.length === 0
      ? []
      : [
          said('Told of danger on this job; whether a STOP was for it only its own words say:'),
          ...danger.map(asItem),
        ]),
  ]
}

/** By what it went on after a release: the next time that a hold point was complete, and its witness. */
function onAgain(record: OnRecord, after: number): string[] {
  const { entries } = record
  const opened = entries.find((e) => e.type === 'gate.opened' && e.seq > after)
  if (opened?.type !== 'gate.opened') return ['No hold point was complete after it.']
  const signs = entries.filter(
    (e) =>
      e.type === 'evidence.given' &&
      e.step === opened.step &&
      e.person !== undefined &&
      e.seq > after &&
      e.seq < opened.seq,
  )
  return [
    'After it, what let work go on:',
    ...linesWhere(
      record,
      ({ entry }) => entry.seq === opened.seq || signs.some(({ seq }) => seq === entry.seq),
    ),
  ]
}

/** Every decision in its words, the last one last; void ones are said to be. */
export function decisionsTold(record: OnRecord, asked = ''): Block[] {
  const { entries, defs, state } = record
  const all = entries.filter((e) => e.type === 'disposition.set')
  if (all.length === 0) return [heading('No decision of a lead is in this log')]
  const ncs = nonconformances(defs, state)
  const words = wordsAsked(asked)
  // Of the part that is named, where one is: a decision about the rod is not looked for among twenty.
  const meant = all.filter(({ about, step }) => [about, step].some((id) => namesStep(record, id, words) > 0))
  const set = meant.length === 0 ? all : meant
  return [
    heading('Who decided what and why, in the words of the log'),
    ...set.map((d): Block => {
      const nc = ncs.findLast(({ step, seq }) => step === d.about && seq < d.seq)
      const about = nc === undefined ? named(stepById(defs, d.about)) : nonconformanceText(defs, nc)
      const stands = state.dispositions[d.step]
      const isVoid = stands === undefined || stands.seq !== d.seq || stands.void
      const signs = entries.flatMap((e) =>
        e.type === 'disposition.countersigned' && e.step === d.step && e.seq > d.seq ? [e.seq] : [],
      )
      return {
        margin: '',
        rows: [
          row(
            `${about}: ${d.choice}, by ${d.person}${howDecided({ entries }, d)} ${timeOf(record, d)} (${entriesText([d.seq, ...signs.slice(0, 1)])})`,
            'strong',
          ),
          row(`  Why: ${clause(d.why)}.`),
          ...(isVoid ? [row('  It does not stand any more.', 'caution')] : []),
        ],
      }
    }),
  ]
}

const timeOf = ({ entries }: OnRecord, entry: Entry) =>
  byWhom({ entries }, { at: entry.at, by: 'X' }).replace(/^X /, '')

/** Names are of the crew file, as the job would take their signature now; nobody is told that it is right to. */
export function whoMayTold(record: OnRecord): Block[] {
  const { defs, state, entries } = record
  if (state.closed !== null) {
    const close = entries.findLast((e) => e.type === 'job.closed')
    return [
      heading('Nobody any more: the job is closed'),
      said(
        `A closed job takes no decision${close === undefined ? '' : ` (${entriesText([close.seq])})`}. A lead puts words beside it, by remark.`,
      ),
      ...decisionsTold(record),
    ]
  }
  if (openStop(state) !== null)
    return [heading('Who may release the STOP'), said(...releaseLines(defs, state))]
  const open = nonconformances(defs, state).filter(({ stands, decided }) => stands && decided === null)
  const words = openWords(state)
  return [
    heading('Who may decide, by the crew file and by who measured'),
    said(
      ...nowLines(defs, state),
      ...open.map((nc) => `Not decided: ${nonconformanceText(defs, nc)} (${entriesText([nc.seq])}).`),
      ...words.map(
        ({ lead, step }) => `${named(stepById(defs, step))}: ${lead} alone signs what was said by radio.`,
      ),
      `Leads of the crew file: ${peopleText(leadsOf(defs))}. None of them decides on what they measured or keyed.`,
    ),
  ]
}

const leadsOf = ({ crew }: Definitions) => crew.crew.filter(({ role }) => role === 'lead')

function releaseLines(defs: Definitions, state: State): string[] {
  const barred = barredFromRelease(state)
  const may = mayRelease(defs, state)
  const leads = leadsOf(defs).flatMap(({ id }) => {
    const why = barred.people.get(id)
    return why === undefined ? [] : [`Not ${id}: ${id} ${why}.`]
  })
  return [
    may.length === 0 ? 'Nobody of the crew file may.' : `${peopleText(may)}.`,
    ...leads,
    ...deskOf(defs, state).toClose.filter((text) => text.startsWith('STOP')),
  ]
}

/** Where a decision is what the job asks next. */
function nowLines(defs: Definitions, state: State): string[] {
  // Nobody is at the keyboard of a review: whoever comes on only to decide has keyed nothing.
  const then = { ...takenUp(state), doer: '', plateAgain: false }
  const prompt = next(defs, then)
  const asked =
    prompt.kind === 'decide'
      ? { step: prompt.step.id, name: named(prompt.step) }
      : prompt.kind === 'findings'
        ? { step: prompt.open[0]?.step ?? '', name: 'the findings' }
        : null
  if (asked === null) return ['No decision is what the job asks next; who may is told when it does.']
  // Which choice it is does not change who may; one of them is always open.
  const may = ['rework', 'accept', 'hold', 'repair', 'replace', 'concession']
    .map((choice) => mayDecide(defs, then, { step: asked.step, choice }))
    .find((people) => people.length > 0)
  return [
    may === undefined
      ? `Asked next is ${asked.name}: nobody of the crew file may decide it.`
      : `Asked next is ${asked.name}: ${peopleText(may)}.`,
  ]
}

export function whyOpenTold({ defs, state, entries }: OnRecord): Block[] {
  if (state.closed !== null) {
    const close = entries.findLast((e) => e.type === 'job.closed')
    return [
      heading('It is closed'),
      said(
        close === undefined
          ? `It ended with ${state.closed}.`
          : entryLine({ entries }, close, `closed with ${state.closed}`),
      ),
    ]
  }
  const lines = deskOf(defs, state).toClose
  return [
    heading(
      lines.length === 0
        ? 'Nothing stands in the way: it closes when it is taken up'
        : 'In the way of its close',
    ),
    said(...lines),
  ]
}

/** What makes the course of a job: not each reading, and not each line of a hold point. */
const COURSE: readonly Entry['type'][] = [
  ...(['job.opened', 'person.signed-on', 'person.came-on', 'person.signed-off', 'job.handed-over'] as const),
  ...([
    'machine.named',
    'machine.mismatched',
    'instrument.doubted',
    'step.objected',
    'step.reopened',
  ] as const),
  ...(['evidence.failed', 'gate.closed', 'reading.corrected'] as const),
  ...(['finding.observed', 'finding.corrected', 'not-applicable.taken-back', 'branch.left'] as const),
  ...(['verdict.given', 'disposition.set', 'disposition.countersigned', 'deviation.permitted'] as const),
  ...(['point.signed', 'point.not-attended', 'note.written', 'stop.raised', 'stop.explained'] as const),
  ...([
    'stop.released',
    'stop.stands',
    'record.taken-in',
    'job.left',
    'job.taken-up',
    'clock.moved',
  ] as const),
  ...(['job.closed', 'left.adopted', 'remark.made'] as const),
]

export function courseTold(record: OnRecord): Block[] {
  const moves = movesOf(record.entries)
  const raised = new Set(nonconformances(record.defs, record.state).map(({ seq }) => seq))
  const off = offTexts(record)
  const lines = moves.flatMap((move) => {
    if (!isOfCourse(move.entry, raised) && !off.has(move.entry.seq)) return []
    const text = off.get(move.entry.seq) ?? toldOf(record, move)
    return text === null ? [] : [entryLine(record, move.entry, text)]
  })
  return [
    heading(`In the order of the log, ${lines.length} of its ${moves.length} entries`),
    said(
      ...lines,
      'Left out are readings but for those kept in doubt or off a standard, what was found as it should be, lines of hold points, and their falls by a step that is meant to let something in: barover show has all of it. The order is that of keying.',
    ),
  ]
}

function isOfCourse(entry: Entry, raised: ReadonlySet<number>): boolean {
  if (isKept(entry) || isInPlace(entry)) return true
  if (!COURSE.includes(entry.type)) return false
  if (entry.type === 'gate.closed') return entry.cause !== 'opening'
  return entry.type !== 'finding.observed' || raised.has(entry.seq)
}

/** A figure that was doubted, or late, and counts all the same. */
const isKept = (entry: Entry) =>
  (entry.type === 'doubt.settled' && entry.choice === 'kept') || (entry.type === 'late.settled' && entry.kept)

/** Another lock, blind or tag than was keyed there before. */
const isInPlace = (entry: Entry) => entry.type === 'evidence.given' && entry.was !== undefined
