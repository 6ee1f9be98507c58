// What can be put right, and the questions on the way: readings, places entered as n/a, findings, evidence of hold points.
// Whatever it is, why comes first and what is right second: evidence can only be taken back and asked anew, so there is no other
// order that holds for all. What would become void stands in the first question (would-void.ts).

import { wouldRefuse } from '../job/admit.ts'
import { doubtedCorrection, findReading, isPending } from '../job/admit-change.ts'
import { isBarredAtDesk, notAtDesk } from '../job/admit-desk.ts'
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import { gateState, gatesOf } from '../job/gate.ts'
import { keyLabel } from '../job/item-label.ts'
import { labelsOf, seenAt } from '../job/seen.ts'
import { openStop, PLATE_FIRST, type State, stands, waitsForPlate } from '../job/state.ts'
import { ask, type Heard, input, refused, say } from './heard.ts'
import { bareReading, placeName, placeNumber, placeShort, readingText, repeatName } from './names.ts'
import { pickedOf } from './picked.ts'

interface Listed {
  /** Number on the sheet, `7.3` or `7`. */
  readonly sheet: string
  /** Name and figure, as told in a sentence. */
  readonly text: string
  /** The same with the figure first, for one line of a list that may be cut on a small screen. */
  readonly line: string
}

export type Correctable = Listed &
  (
    | { readonly kind: 'reading'; readonly seq: number }
    | { readonly kind: 'not-applicable'; readonly place: string }
    | { readonly kind: 'finding'; readonly step: string }
    | { readonly kind: 'evidence'; readonly step: string; readonly item: string }
  )

export type CorrectAsk =
  /** `from`: the first that is listed now, from 0. */
  | { readonly kind: 'correct-which'; readonly items: readonly Correctable[]; readonly from: number }
  | { readonly kind: 'correct-why'; readonly of: number }
  | { readonly kind: 'correct-value'; readonly of: number; readonly why: string }
  /** The figure in its place is doubted: words keep it, and nothing that a key of habit could be. */
  | { readonly kind: 'correct-kept'; readonly of: number; readonly why: string; readonly typed: string }
  | { readonly kind: 'take-back-why'; readonly place: string }
  | { readonly kind: 'finding-why'; readonly step: string }
  | { readonly kind: 'finding-which'; readonly step: string; readonly why: string }
  | {
      readonly kind: 'finding-changed-note'
      readonly step: string
      readonly why: string
      readonly condition: string
      readonly also?: readonly string[]
    }
  | { readonly kind: 'evidence-why'; readonly step: string; readonly item: string; readonly shown: string }

/** Readings that stand, in the order they were taken. */
export function standingReadings(
  defs: Definitions,
  state: State,
): Extract<Correctable, { kind: 'reading' }>[] {
  return Object.values(state.readings)
    .flat()
    .filter(stands)
    .sort((a, b) => a.seq - b.seq)
    .map((r) => {
      const which = repeatName(state, r)
      const sheet = placeNumber(defs, r.step, r.place)
      const name = placeName(defs, r.step, r.place)
      const figure = `${bareReading(defs, r)} ${r.unit}${which === null ? '' : `, ${which}`}`
      return {
        kind: 'reading',
        seq: r.seq,
        sheet,
        text: `${sheet} ${name}${which === null ? '' : `, ${which}`}: ${readingText(defs, r)}`,
        line: `sheet ${sheet}: ${figure}, ${placeShort(defs, r.step, r.place)}`,
      }
    })
}

function listed(sheet: string, name: string, figure: string): Listed {
  return { sheet, text: `${sheet} ${name}: ${figure}`, line: `sheet ${sheet}: ${figure}, ${name}` }
}

/** Which reading of its place it was when it was taken: one that was put right keeps its place in the list. */
function firstSeq(state: State, seq: number): number {
  const corrects = findReading(state, seq)?.corrects ?? null
  return corrects === null ? seq : firstSeq(state, corrects)
}

/**
 * Readings, places entered as n/a, findings, and what was shown for hold points: the newest first, whatever it is, as a slip is mostly
 * seen soon. A correction leaves the order of readings as it was.
 */
export function correctable(defs: Definitions, state: State): Correctable[] {
  const readings = standingReadings(defs, state).map((one): Timed => [one, firstSeq(state, one.seq)])
  // When one was entered no state says: it stands with the readings of its step.
  const ofStep = (step: string) =>
    readings.reduce((last, [one, seq]) => {
      const of = one.kind === 'reading' ? findReading(state, one.seq)?.step : undefined
      return of === step ? Math.max(last, seq) : last
    }, state.doneAt[step]?.seq ?? 0)
  const places = Object.keys(state.notApplicable).map((place): Timed => {
    const step = place.split('.')[0] ?? ''
    const own = listed(placeNumber(defs, step, place), placeName(defs, step, place), 'n/a')
    return [{ kind: 'not-applicable', place, ...own }, ofStep(step)]
  })
  const findings = defs.steps.flatMap(({ id, step, number }): Timed[] => {
    const seen = state.done[id]
    if (step.kind !== 'observe' || seen === undefined) return []
    const label = labelsOf(defs, id, seenAt(state, id))
    const own = listed(String(number), step.title, label)
    return [[{ kind: 'finding', step: id, ...own }, state.doneAt[id]?.seq ?? 0]]
  })
  const shown = gatesOf(defs)
    .flatMap((gate) =>
      Object.entries(gateState(state, gate.id).given).map(([item, g]) => ({ gate, item, ...g })),
    )
    .map(({ gate, item, shown: figure, seq }): Timed => {
      const own = listed(String(gate.number), keyLabel(defs, gate, item), figure)
      return [{ kind: 'evidence', step: gate.id, item, ...own }, seq]
    })
  return [...readings, ...places, ...findings, ...shown].sort(([, a], [, b]) => b - a).map(([one]) => one)
}

/** With the number of the entry it came with first. */
type Timed = readonly [Correctable, number]

/** Why nothing that was said before can be changed now, before anything is asked for it; null where it can. */
export function whyNoChange(state: State): string | null {
  if (waitsForPlate(state)) return PLATE_FIRST
  if (isBarredAtDesk(state)) return notAtDesk(state)
  return openStop(state) === null ? null : 'STOP is open: nothing is changed until it is released.'
}

/** Why no reading or step is changed while a reading waits; evidence and findings may be. Null where none waits. */
export function whySettleFirst(state: State): string | null {
  if (!isPending(state)) return null
  return `A reading waits: say first what becomes of it, where it is asked. ${state.late === null ? 1 : 2} is to measure it again.`
}

export function correct(defs: Definitions, state: State): Heard {
  const no = whyNoChange(state)
  if (no !== null) return say(no)
  const settle = whySettleFirst(state)
  const items = correctable(defs, state).filter(
    ({ kind }) => settle === null || kind === 'evidence' || kind === 'finding',
  )
  if (items.length === 0) return say(settle ?? 'There is nothing to correct yet.')
  return ask(
    { kind: 'correct-which', items, from: 0 },
    ...(settle === null
      ? []
      : [
          `No reading is in this list while one waits: ${state.late === null ? 1 : 2} drops that one, then correct mends any.`,
        ]),
  )
}

/** Listed at a time where the size of the screen is not known, as on plain lines: with the question under it in 15 rows. */
export const LISTED = 8

/** A list is never shorter than this on any screen (sheet/live.ts). */
const LISTED_ANYWHERE = 3

type WhichAsk = Extract<CorrectAsk, { kind: 'correct-which' }>

/** What can be chosen, a line each, from the first of this page on. A screen shows as many as it has room for. */
export function choiceLines({ items, from }: WhichAsk): string[] {
  return items
    .slice(from, from + MOST_LISTED)
    .map(({ line }, i) => `${String(from + i + 1).padStart(2)}  ${line}`)
}

/** More are on no screen that anybody reads. */
const MOST_LISTED = 30

/**
 * How to come to what is not listed, in the words as they are keyed: the rest, or the sheet of the first by itself. It is said where a
 * screen lists less than all, on a small one without the sheet; null where any screen lists all of them.
 */
export function choiceHint({ items, from }: WhichAsk, isShort = false): string | null {
  if (items.length <= LISTED_ANYWHERE) return null
  const sheets = new Set(items.map(({ sheet }) => wholeSheet(sheet)))
  const [first] = items.slice(from)
  const only =
    sheets.size < 2 || first === undefined ? '' : `, or sheet ${wholeSheet(first.sheet)} for that one alone`
  if (isShort) return `${items.length} in all; more shows others`
  return `${items.length} in all; the word more shows the rest${only}`
}

/** Whether the list is a part of all, however many lines a screen has. */
export function listsPart({ items, from }: WhichAsk): boolean {
  return from > 0 || items.length > MOST_LISTED
}

/** `7` of `7.3`. */
function wholeSheet(sheet: string): string {
  return sheet.split('.')[0] ?? sheet
}

/**
 * A line for a list of which a screen shows so many: `more 5`, `8 of 5`. What is on no screen is not chosen by its number, and the
 * word for more goes on from there.
 */
export function withListed(line: string, listed: number): string {
  const keyed = line.trim()
  if (/^more$/i.test(keyed)) return `more ${listed}`
  return numberIn(keyed) > 0 ? `${keyed} of ${listed}` : line
}

/** What was chosen by a number that stands in the list as it is shown; without a count, as plain lines show it. */
function chosen({ items, from }: WhichAsk, line: string): Correctable | 'not shown' | undefined {
  const [, number = '', shown] = /^(\d{1,3})(?: of (\d{1,3}))?$/.exec(line.trim()) ?? []
  const at = Number(number) - 1
  const item = items[at]
  if (item === undefined) return undefined
  return at >= from && at < from + Number(shown ?? LISTED) ? item : 'not shown'
}

/** `more` is told by the screen how many it showed; without that it goes on by what plain lines show. */
function turned(question: WhichAsk, line: string): WhichAsk | string | null {
  const { items, from } = question
  const more = /^more(?: (\d{1,2}))?$/i.exec(line.trim())
  if (more !== null) {
    const next = from + Math.max(1, Number(more[1] ?? LISTED))
    return { ...question, from: next < items.length ? next : 0 }
  }
  const sheet = /^sheet (\d+(?:\.\d+)?)(?: only| alone)?$/i.exec(line.trim())?.[1]
  if (sheet === undefined) return null
  const of = items.filter((item) => item.sheet === sheet || item.sheet.startsWith(`${sheet}.`))
  return of.length === 0
    ? `Nothing of sheet ${sheet} can be corrected.`
    : { kind: 'correct-which', items: of, from: 0 }
}

export function hearCorrection(defs: Definitions, state: State, question: CorrectAsk, line: string): Heard {
  switch (question.kind) {
    case 'correct-which': {
      const page = turned(question, line)
      if (page !== null) return typeof page === 'string' ? ask(question, page) : ask(page)
      const item = chosen(question, line)
      if (item === 'not shown')
        return ask(
          question,
          `${numberIn(line.split(' ')[0] ?? '')} does not stand in the list as it is shown: the word more shows the rest.`,
        )
      const hint = choiceHint(question) === null ? '' : ', or the word more'
      const count = question.items.length
      return item === undefined
        ? ask(question, `Key a number of the list, ${count === 1 ? '1' : `1 to ${count}`}${hint}, or back.`)
        : correctOne(state, item)
    }
    case 'correct-why':
      return noReason(state, question, line) ?? ask({ kind: 'correct-value', of: question.of, why: line })
    case 'correct-value': {
      const { of, why } = question
      const stands = findReading(state, of)
      // Keyed as it stands it mends nothing, and would make void what rests on it.
      if (stands !== null && line.trim() === bareReading(defs, stands))
        return say(`${line.trim()} is what stands: nothing was changed, and nothing is void.`)
      // A key of habit: a doubt of it, with a figure that may be meant, would be about nothing that anybody read.
      if (stands !== null && /^\d$/.test(line.trim()) && bareReading(defs, stands).includes('.'))
        return ask(question, 'Nothing was changed: a figure is asked for here, not the number of a choice.')
      // What cannot be is refused here: the figure is keyed again, and the old one stands.
      const refusal = wouldRefuse(defs, state, { do: 'correct', of, typed: line, why })
      if (refusal !== null) return refused(refusal, refusal.code === 'not-asked' ? null : question)
      const doubt = doubtedCorrection(defs, state, { of, typed: line })
      return doubt === null
        ? input({ do: 'correct', of, typed: line, why })
        : ask({ kind: 'correct-kept', of, why, typed: line }, doubt)
    }
    case 'correct-kept': {
      const { of, typed, why } = question
      if (!/\p{L}{3}/u.test(line))
        return ask(
          question,
          `${typed.trim()} was not taken: in words, why it is right. back leaves the old one as it was.`,
        )
      return input({ do: 'correct', of, typed, why: `${why.trim()}; ${line.trim()}` })
    }
    case 'take-back-why':
      return input({ do: 'take-back-not-applicable', place: question.place, why: line })
    case 'finding-why':
      return noReason(state, question, line) ?? ask({ kind: 'finding-which', step: question.step, why: line })
    case 'finding-which': {
      const { conditions } = asKind(stepById(defs, question.step), 'observe').step
      const { step, why } = question
      const picked = pickedOf(conditions, line)
      if (picked === null) return ask(question, `Key a number, 1 to ${conditions.length}, or back.`)
      return picked.note
        ? ask({ kind: 'finding-changed-note', step, why, ...picked.found })
        : input({ do: 'correct-finding', step, why, ...picked.found })
    }
    case 'finding-changed-note': {
      const { kind: _kind, ...rest } = question
      return input({ do: 'correct-finding', ...rest, note: line })
    }
    case 'evidence-why':
      return (
        noReason(state, question, line) ??
        input({ do: 'take-back-evidence', step: question.step, item: question.item, why: line })
      )
  }
}

/** What is right, keyed where why is asked, would stand on record as what was wrong. Null: it is a reason. */
function noReason(
  state: State,
  question: Extract<CorrectAsk, { kind: 'correct-why' | 'finding-why' | 'evidence-why' }>,
  line: string,
): Heard | null {
  const shown =
    question.kind === 'evidence-why'
      ? question.shown
      : question.kind === 'correct-why'
        ? (findReading(state, question.of)?.typed.trim() ?? 'it')
        : 'it'
  return /\p{L}{3}/u.test(line) && line.trim().toUpperCase() !== shown.toUpperCase()
    ? null
    : ask(question, `That is no reason: why was ${shown} wrong? What is right is asked after.`)
}

function correctOne(state: State, item: Correctable): Heard {
  switch (item.kind) {
    case 'reading':
      return ask({ kind: 'correct-why', of: item.seq }, `To be corrected: ${item.text}.`)
    case 'not-applicable':
      return ask(
        { kind: 'take-back-why', place: item.place },
        `To be taken back: ${item.text}.`,
        'Its reading is asked again.',
      )
    case 'finding':
      return ask({ kind: 'finding-why', step: item.step }, `To be corrected: ${item.text}.`)
    case 'evidence':
      return ask(
        { kind: 'evidence-why', step: item.step, item: item.item, shown: shownAs(state, item) },
        `To be taken back: ${item.text}.`,
      )
  }
}

/** What was keyed for it, as it stands there. */
function shownAs(state: State, { step, item }: Extract<Correctable, { kind: 'evidence' }>): string {
  return gateState(state, step).given[item]?.shown ?? 'it'
}

/** The number keyed, or 0. */
export function numberIn(line: string): number {
  return /^\d{1,3}$/.test(line.trim()) ? Number(line.trim()) : 0
}
