// Keying in a filled-in sheet: each box as it stands, with the time and the initials written beside it. Nothing here looks at a hold
// point or opens one; what is doubtful is asked about with the ways out that are left when nobody can measure again.
import { readStamp } from '../lib/instant.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { list } from '../lib/wording.ts'
import { readingFrom } from './admit-reading.ts'
import { condition } from './admit-step.ts'
import { asKind, type Definitions } from './definitions.ts'
import { doubtOf } from './doubtful.ts'
import type { Body } from './entries.ts'
import type { SheetInput } from './input.ts'
import { next } from './next.ts'
import { hasMark, type OnSheet, type PaperState, rowOf } from './paper.ts'
import { atNoon, sheetInstrument } from './paper-instrument.ts'
import { BLANK, isBlank, type LineContext, readSheetDay, readSheetLine, sheetMs } from './paper-line.ts'
import { thingSays } from './paper-register.ts'
import { FRONT, type SheetBox } from './paper-rows.ts'
import { notAsked } from './refusals.ts'
import { signer } from './signature.ts'
import type { State } from './state.ts'
import { wouldVoid } from './voids.ts'

type Of<K extends SheetInput['do']> = Extract<SheetInput, { do: K }>

/** Nothing stands beside it. */
export const NOTHING: OnSheet = { time: null, who: null }
/** Why a doubtful figure is kept: the words of the second way out. */
export const AS_WRITTEN = 'it is what the sheet says'

/** Refuses with `not-from-paper` what would bring anything keyed from a sheet to a live job. */
export function paperOf(state: State): Result<PaperState> {
  return state.paper === null
    ? refuse('not-from-paper', 'This job is live: nothing from a sheet comes into it.')
    : ok(state.paper)
}

export function admitSheetRow(
  defs: Definitions,
  state: State,
  input: Of<'sheet-row'>,
): Result<readonly Body[]> {
  const paper = paperOf(state)
  if (!paper.ok) return paper
  const prompt = next(defs, state)
  if (prompt.kind !== 'sheet') return notAsked()
  const { box } = prompt
  if ((box.placed?.id ?? null) !== input.step || box.row !== input.row) return notAsked()
  return box.takes === 'figure'
    ? figureOf(defs, state, paper.value, box, input.typed)
    : bodyOf(defs, state, paper.value, box, input.typed, input.sure === true)
}

/** What a line at a box makes: also of one that is keyed again because it was keyed wrong. */
export function bodyOf(
  defs: Definitions,
  state: State,
  paper: PaperState,
  box: SheetBox,
  typed: string,
  sure: boolean,
): Result<readonly Body[]> {
  const step = box.placed?.id ?? null
  const at = contextOf(state, paper)
  const row = (says: string | null, on: OnSheet = NOTHING): Result<readonly Body[]> =>
    ok([{ type: 'paper.row', step, row: box.row, says, paper: on }])
  if (typed.trim() === '')
    return refuse('sheet-empty', `Nothing was keyed. A box that is blank on the sheet is ${BLANK}.`)
  if (isBlank(typed)) return row(box.takes === 'thing' ? thingSays(box, null) : null)
  if (box.takes === 'day') {
    const day = readSheetDay(typed, at.now)
    return day.ok ? row(day.value) : day
  }
  if (box.takes === 'copy')
    return typed.trim() === '1'
      ? row('there is one')
      : refuse('sheet-line', `Key 1 where there is another copy, ${BLANK} where there is none.`)
  if (box.takes === 'words') {
    if (box.row === FRONT.marks && !sure && !hasMark(typed, paper.mark))
      return refuse('sheet-mark', OTHER_MARK)
    if (isInstrumentBox(box.row) && !sure && !isRegistered(defs, typed))
      return refuse(
        'sheet-unknown',
        `${typed.trim()} is not in the register of instruments: what was read with it gives no value.`,
      )
    return wordsOf(box, typed.trim(), at, row)
  }
  const line = readSheetLine(typed, at, sure)
  if (!line.ok) return line
  const { rest } = line.value
  const on = line.value.paper
  switch (box.takes) {
    case 'line':
      if (rest === '' && wantsMore(box)) return refuse('sheet-rest', NO_REST)
      if (rest === BLANK) return row(null, on)
      if (box.row === FRONT.plate && rest !== '' && !isTag(defs, rest))
        return refuse(
          'sheet-machine',
          `The sheet names ${rest}, and this record is of ${defs.machine.machine}: nothing of another machine is keyed here.`,
        )
      return row(rest === '' ? null : rest, on)
    case 'thing':
      return row(thingSays(box, rest), on)
    case 'place':
      return rest === ''
        ? row('', on)
        : refuse('sheet-line', 'Time and initials of the line first; its figures are asked after.')
    case 'done':
      return doneOf(defs, box, rest, on, row)
    case 'seen':
      return seenOf(defs, box, rest, on, row)
    default:
      return notAsked()
  }
}

/** The mark that would fit is not told: it is read off the paper, and not off the screen. */
const OTHER_MARK =
  'That is not the check mark of the files this is keyed with: keyed wrong, or the sheet was printed from others.'

const NO_REST = `Time and initials, and nothing behind them: if nothing stands there either, key them with ${BLANK} behind: 06:52 RO ${BLANK}.`

/** Lines that are signatures and nothing else. */
const BARE: readonly string[] = ['point', 'worker', 'lead']

/**
 * Whether the line has a figure, a number or words beside its initials. Nothing there is never taken as blank by itself: what comes
 * behind it would be keyed one line too high, all the way down.
 */
function wantsMore({ row, item }: SheetBox): boolean {
  return item?.evidence.kind !== 'witness' && !BARE.includes(row) && !/^register\..*\.(?:out|and)$/.test(row)
}

type Row = (says: string | null, on?: OnSheet) => Result<readonly Body[]>

function wordsOf(box: SheetBox, text: string, at: LineContext, row: Row): Result<readonly Body[]> {
  if (text.length > 200) return refuse('sheet-line', 'At most 200 signs of this box: the rest as a note.')
  if (box.row !== FRONT.ended && box.row !== FRONT.begun) return row(text)
  const line = readSheetLine(text, { ...at, last: null }, true)
  const time = line.ok ? line.value.paper.time : null
  if (!line.ok && line.error.code === 'sheet-future') return line
  return time === null || sheetMs(time) === null
    ? refuse(
        'sheet-line',
        `Key it as ${box.row === FRONT.begun ? '06:20' : '2026-03-14 16:30'}; ${BLANK} where the box is blank.`,
      )
    : row(time)
}

/** A step that was signed; a tick that is missing says that nobody saw it so. */
function doneOf(
  defs: Definitions,
  { placed }: SheetBox,
  rest: string,
  on: OnSheet,
  row: Row,
): Result<readonly Body[]> {
  if (placed === null) return notAsked()
  const { step } = defs.steps.find(({ id }) => id === placed.id) ?? placed
  if (step.kind === 'confirm' && /^(?:un|not )ticked\b/i.test(rest)) return row(rest, on)
  const paper = rest === '' ? on : { ...on, says: rest }
  return ok([{ type: step.kind === 'confirm' ? 'step.confirmed' : 'step.done', step: placed.id, paper }])
}

function seenOf(
  defs: Definitions,
  { placed }: SheetBox,
  rest: string,
  on: OnSheet,
  row: Row,
): Result<readonly Body[]> {
  if (placed === null) return notAsked()
  if (rest === '') return refuse('sheet-rest', NO_REST)
  if (rest === BLANK) return row(null, on)
  const { conditions } = asKind(placed, 'observe').step
  const found = /^(\d{1,2}(?:,\d{1,2})*)(?:\s+(.*))?$/.exec(rest)
  const ids = (found?.[1] ?? '').split(',').map((number) => conditions[Number(number) - 1]?.id)
  const [first, ...also] = ids
  if (found === null || first === undefined || ids.includes(undefined))
    return refuse(
      'sheet-line',
      `Behind time and initials the number that is ticked, 1 to ${conditions.length}: 06:52 RO 1, and the words beside it.`,
    )
  const words = found[2] ?? ''
  const wants = conditions.some(({ id, note }) => note === true && ids.includes(id))
  const note = words !== '' ? words : wants ? 'no words on the sheet' : undefined
  const made = condition(defs, {
    step: placed.id,
    condition: first,
    ...(also.length === 0 ? {} : { also: also.filter((id) => id !== undefined) }),
    ...(note === undefined ? {} : { note }),
  })
  return made.ok ? ok([{ type: 'finding.observed', step: placed.id, ...made.value, paper: on }]) : made
}

/** A figure of a place: taken, doubted, or none. What was read with an instrument that may not be used is kept as words. */
function figureOf(
  defs: Definitions,
  state: State,
  paper: PaperState,
  { placed, place }: SheetBox,
  typed: string,
): Result<readonly Body[]> {
  if (placed === null || place === undefined) return notAsked()
  const text = typed.trim()
  const on = lineOf(paper, placed.id, place.key)
  const none = (is: 'blank' | 'unreadable' | 'instrument', more: { says?: string; why?: string } = {}) =>
    ok<readonly Body[]>([
      { type: 'paper.unread', step: placed.id, place: place.key, is, ...more, paper: on, voids: [] },
    ])
  if (isBlank(text)) return none('blank')
  if (text === '?') return none('unreadable')
  const instrument = sheetInstrument(defs, state, paper, placed)
  if (!instrument.ok) {
    return /\d/.test(text) && text.length <= 40
      ? none('instrument', { says: text, why: instrument.why })
      : refuse('sheet-figure', `Key the figure as it stands; ${BLANK} for blank, ? where it cannot be read.`)
  }
  const read = readingFrom(defs, onDay(state, paper), asKind(placed, 'read'), place.key, instrument.id, typed)
  if (!read.ok) return read
  const reading = { ...read.value, paper: on }
  const doubt = doubtOf(defs, state, asKind(placed, 'read'), reading)
  return ok([
    doubt === null
      ? { type: 'reading.taken', ...reading }
      : { type: 'reading.doubted', ...reading, ...doubt },
  ])
}

/** Calibration is asked of the day on the sheet. */
export function onDay(state: State, paper: PaperState): State {
  const day = rowOf(paper, null, FRONT.day)?.text ?? null
  return { ...state, lastAt: day === null ? '' : atNoon(day) }
}

/** What stands beside the figures of a place. */
export function lineOf(paper: PaperState, step: string, place: string): OnSheet {
  const row = rowOf(paper, step, place)
  return row === undefined ? NOTHING : { time: row.time, who: row.who }
}

export function admitSheetDoubt(
  defs: Definitions,
  state: State,
  input: Of<'sheet-doubt'>,
): Result<readonly Body[]> {
  const paper = paperOf(state)
  if (!paper.ok) return paper
  const prompt = next(defs, state)
  if (prompt.kind !== 'sheet-doubt') return notAsked()
  const { step, place, typed } = prompt.doubt
  switch (input.choice) {
    case 'mistyped':
      return ok([{ type: 'doubt.settled', choice: 'mistyped' }])
    case 'kept':
      return ok([{ type: 'doubt.settled', choice: 'kept', why: AS_WRITTEN }])
    case 'unreadable':
      return ok([
        { type: 'doubt.settled', choice: 'unreadable' },
        {
          type: 'paper.unread',
          step,
          place,
          is: 'unreadable',
          says: typed.trim(),
          paper: lineOf(paper.value, step, place),
          voids: wouldVoid(defs, state, step),
        },
      ])
  }
}

/** At the end: whoever keyed it signs for all of it, then a lead who keyed none of it, with the sheet beside. */
export function admitSheetSign(
  defs: Definitions,
  state: State,
  input: Of<'sheet-sign'>,
): Result<readonly Body[]> {
  const paper = paperOf(state)
  if (!paper.ok) return paper
  const prompt = next(defs, state)
  if (prompt.kind !== 'sheet-sign' || prompt.as !== input.as) return notAsked()
  const who = signer(defs, state, input)
  if (!who.ok) return who
  const { person, signed } = who.value
  const { keyers, keyedBy } = paper.value
  const keyed = keyedBy === person.id || keyers.includes(person.id)
  if (input.as === 'keyed' && person.id !== state.doer)
    return refuse('not-on', `Whoever is at the keyboard signs for what was keyed: ${state.doer ?? 'nobody'}.`)
  if (input.as === 'keyed' && keyers.length > 0 && !keyers.includes(person.id))
    return refuse(
      'not-keyer',
      `${person.id} keyed nothing of it: ${list(keyers, 'or')}, who did, comes to the keyboard and signs for that.`,
    )
  if (input.as === 'compared' && person.role !== 'lead')
    return refuse('not-lead', `${person.id} is a ${person.role}, and the sheet is compared by a lead.`)
  if (input.as === 'compared' && keyed)
    return refuse(
      'same-person',
      `${person.id} ${keyers.includes(person.id) ? 'keyed from this sheet' : 'signed that it is keyed'}, so another lead compares it.`,
    )
  return ok([{ type: 'paper.signed', as: input.as, person: person.id, signed }])
}

export function contextOf(state: State, paper: PaperState): LineContext {
  return {
    day: rowOf(paper, null, FRONT.day)?.text ?? null,
    last: paper.last,
    now: readStamp(state.lastAt) ?? { ms: Number.NEGATIVE_INFINITY, offsetMin: 0 },
  }
}

const isInstrumentBox = (row: string) => row === 'instrument' || row.startsWith('seat.')

function isRegistered({ instruments }: Definitions, typed: string): boolean {
  const number = typed.trim().toUpperCase()
  return instruments.instruments.some(({ id }) => id.toUpperCase() === number)
}

const plain = (tag: string) => tag.toUpperCase().replace(/[^A-Z0-9]/g, '')

function isTag(defs: Definitions, text: string): boolean {
  return plain(text) === plain(defs.machine.machine)
}
