// What was keyed wrong from a sheet is put right in the open: the old stays, the new points back to it, and what hung on it falls by name.
import { ok, type Result, refuse } from '../lib/result.ts'
import { findReading } from './admit-change.ts'
import { bodyOf, lineOf, onDay, paperOf } from './admit-paper.ts'
import { readingFrom } from './admit-reading.ts'
import { asKind, type Definitions, type PlacedStep, stepById } from './definitions.ts'
import { doubtOfCorrection } from './doubtful.ts'
import type { Body } from './entries.ts'
import type { SheetInput } from './input.ts'
import { type PaperState, rowOf, type SheetRow } from './paper.ts'
import { isBlank } from './paper-line.ts'
import { registerBoxAt } from './paper-register.ts'
import { FRONT, frontBoxes, type SheetBox, stepBoxes } from './paper-rows.ts'
import { implausible } from './plausible.ts'
import { notAsked, words } from './refusals.ts'
import { type State, stands } from './state.ts'
import { wouldVoid } from './voids.ts'

type Correct = Extract<SheetInput, { do: 'sheet-correct' }>

export function admitSheetCorrect(defs: Definitions, state: State, input: Correct): Result<readonly Body[]> {
  const paper = paperOf(state)
  if (!paper.ok) return paper
  if (state.doer === null) return notAsked()
  if (state.doubt !== null)
    return refuse(
      'pending',
      'A figure waits to be settled: say first what becomes of it, then change others.',
    )
  const why = words(input.why, 'A correction')
  if (!why.ok) return why
  if (findReading(state, input.of) !== null) return figure(defs, state, paper.value, input, why.value)
  const unread = Object.entries(paper.value.unread).find(([, { seq }]) => seq === input.of)
  if (unread !== undefined) return anew(defs, state, unread[0], why.value)
  const row = Object.values(paper.value.rows).find(({ seq }) => seq === input.of)
  return row === undefined
    ? refuse('no-reading', 'There is nothing of that number to be put right.')
    : box(defs, state, paper.value, row, input, why.value)
}

/** A doubtful one is taken with its doubt: there is nothing else to go by than what stands on the sheet. */
function figure(
  defs: Definitions,
  state: State,
  paper: PaperState,
  { of, typed }: Correct,
  why: string,
): Result<readonly Body[]> {
  const old = findReading(state, of)
  if (old === null || !stands(old))
    return refuse('corrected', 'That figure does not stand any more: put right the one that does.')
  const placed = asKind(stepById(defs, old.step), 'read')
  const on = lineOf(paper, old.step, old.place)
  const voids = wouldVoid(defs, state, old.step)
  if (isBlank(typed) || typed.trim() === '?')
    return ok([
      {
        type: 'paper.unread',
        step: old.step,
        place: old.place,
        is: isBlank(typed) ? 'blank' : 'unreadable',
        why,
        of,
        paper: on,
        voids,
      },
    ])
  const read = readingFrom(defs, onDay(state, paper), placed, old.place, old.instrument, typed)
  if (!read.ok) return read
  const doubt =
    implausible(defs, placed, read.value) ?? doubtOfCorrection(defs, state, placed, read.value)?.why ?? null
  return ok([
    {
      type: 'reading.corrected',
      ...read.value,
      of,
      why,
      ...(doubt === null ? {} : { doubt }),
      voids,
      paper: on,
    },
  ])
}

/** A place that was said to be blank, or not to be read: its figures are asked again. */
function anew(defs: Definitions, state: State, place: string, why: string): Result<readonly Body[]> {
  const step = place.slice(0, place.indexOf('.'))
  if (state.notApplicable[place] === undefined) return refuse('corrected', 'That place is asked already.')
  return ok([{ type: 'not-applicable.taken-back', step, place, why, voids: wouldVoid(defs, state, step) }])
}

function box(
  defs: Definitions,
  state: State,
  paper: PaperState,
  row: SheetRow,
  { of, typed }: Correct,
  why: string,
): Result<readonly Body[]> {
  const placed = row.step === null ? null : stepById(defs, row.step)
  // Answered, it is asked again at its place; blank, it is keyed in place of the blank.
  if (placed !== null && row.row === 'done' && state.done[placed.id] !== undefined)
    return ok([{ type: 'step.reopened', step: placed.id, why, voids: wouldVoid(defs, state, placed.id) }])
  const asked = boxAt(defs, paper, placed, row)
  if (asked === null) return refuse('no-reading', 'That box is not on this sheet any more.')
  const barred = barsChange(state, paper, placed, row)
  if (barred !== null) return refuse('sheet-hangs', barred)
  // Its time may well lie before the last that was keyed: it stands further up.
  const made = bodyOf(defs, state, { ...paper, last: null }, asked, typed, true)
  if (!made.ok) return made
  return ok(made.value.map((body) => (body.type === 'paper.row' ? { ...body, of, why } : body)))
}

/** The day stands under every time, and an instrument under its figures: those are not changed under them. */
function barsChange(
  state: State,
  paper: PaperState,
  placed: PlacedStep | null,
  { row }: SheetRow,
): string | null {
  const hasTimes = Object.values(paper.rows).some(({ time }) => time !== null)
  if (row === FRONT.day && hasTimes)
    return 'Times are keyed by that day already: leave this job, and key the sheet in anew with the right day.'
  const readings = Object.values(state.readings).flat().filter(stands)
  const hangs =
    row.startsWith('seat.') || (row === 'instrument' && readings.some(({ step }) => step === placed?.id))
  return hangs && readings.length > 0
    ? 'Figures are keyed as read with it already. Doubt it with instrument, or key the sheet in anew.'
    : null
}

function boxAt(
  defs: Definitions,
  paper: PaperState,
  placed: PlacedStep | null,
  { row, step }: SheetRow,
): SheetBox | null {
  if (placed !== null) return stepBoxes(defs, paper, placed).find((one) => one.row === row) ?? null
  const front = frontBoxes(defs).find((one) => one.row === row)
  if (front !== undefined) return front
  const line = registerBoxAt(defs, row)
  if (line !== null) return line
  return rowOf(paper, step, row) === undefined
    ? null
    : { placed: null, row, takes: 'line', label: row.replace(/\.\d+$/, '') }
}
