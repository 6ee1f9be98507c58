// A hold point being filled in: what is shown so far as boxes, and the one thing asked for now.
import type { EvidenceOf } from '../definition/evidence.ts'
import { CAUSES } from '../job/close-causes.ts'
import { type Definitions, gasLimitById, instrumentById } from '../job/definitions.ts'
import type { CloseCause } from '../job/entries.ts'
import { GAS_UNITS } from '../job/evidence-gas.ts'
import { massUnit } from '../job/evidence-lift.ts'
import { waitEndsMs } from '../job/evidence-wait.ts'
import { mayWitness } from '../job/evidence-words.ts'
import { gasPace } from '../job/gas-pace.ts'
import {
  type GateStep,
  gateState,
  type Item,
  inspectedWords,
  itemByKey,
  itemsOf,
  type LiftPart,
  wantsAnother,
} from '../job/gate.ts'
import { itemLabel } from '../job/item-label.ts'
import { stoodBefore } from '../job/locks-on.ts'
import type { Prompt } from '../job/next.ts'
import type { Begun, State } from '../job/state.ts'
import { clockOf, readStamp } from '../lib/instant.ts'
import { capital } from '../lib/wording.ts'
import { falseLines, unprovedLocks } from '../practice/false-lines.ts'
import { dangerNotes } from '../talk/danger-notes.ts'
import { givenLines } from '../talk/gate-list.ts'
import { peopleText } from '../talk/may-sign.ts'
import { instrumentName } from '../talk/names.ts'
import { type Row, row } from './block.ts'
import { gasLimitText } from './gate-block.ts'
import { cellRows } from './little-oxygen.ts'
import type { PromptView } from './prompt-view.ts'

export function evidenceView(
  defs: Definitions,
  state: State,
  prompt: Extract<Prompt, { kind: 'clear' | 'evidence' }>,
): Partial<PromptView> {
  const { gate } = prompt
  const { cause, why: because } = gateState(state, gate.id)
  const base = { margin: String(gate.number), title: gate.step.title, titleMayShorten: true }
  const again = prompt.kind === 'clear' ? cause : fellFor(state, prompt)
  const told = again === cause ? because : null
  const why = again === null ? [] : [row(`Asked again: ${told ?? CAUSES[again]}.`, 'caution')]
  if (prompt.kind === 'clear') {
    return {
      ...base,
      rows: [row(comesThen(defs, state, gate))],
      ask: [
        row('COME OUT AND STAND CLEAR.', 'caution'),
        ...why,
        row(`When everybody is out and clear, type ${gate.step.clear_words}`, 'strong'),
      ],
    }
  }
  return {
    ...base,
    rows: [...why, ...boxes(defs, state, gate, prompt.item)],
    wordsKnown: true,
    ask: askRows(defs, state, gate, prompt.item),
    unit: unitOf(defs, state, prompt.item),
  }
}

/** What is asked once everybody is out; of a reading that failed also how a slip at the keys is put right. */
function comesThen(defs: Definitions, state: State, gate: GateStep): string {
  const { cause, given, struck } = gateState(state, gate.id)
  const keys = [...new Set(struck.map(({ item }) => item))].filter((key) => given[key] === undefined)
  const names = keys.length === 0 ? '' : ` again: ${fewNames(defs, gate, keys)}.`
  if (cause !== 'failed') return names === '' ? 'After that, what fell is asked.' : `After that${names}`
  return `After that the gas is read anew; a slip at the keys is put right by it too.${names === '' ? '' : ` Then${names}`}`
}

/** Why this very line is asked again; null where it was never shown before: then nothing of it was taken back. */
function fellFor(state: State, { gate, item }: Extract<Prompt, { kind: 'evidence' }>): CloseCause | null {
  return gateState(state, gate.id).struck.find((s) => s.item === item.key)?.cause ?? null
}

/** Locks and the rest of the list in as few lines as will say it: done, asked now, and how many are still open. */
function boxes(defs: Definitions, state: State, gate: GateStep, now: Item): Row[] {
  const { given, struck } = gateState(state, gate.id)
  const items = itemsOf(defs, state, gate)
  const wrong = falseLines(defs, state, gate)
  const unproved = unprovedLocks(defs, state, gate).filter((key) => !wrong.includes(key))
  const isBad = ({ key }: Item) => wrong.includes(key) || unproved.includes(key)
  const done = items.filter((i) => given[i.key] !== undefined && !isBad(i))
  const open = items.filter((i) => given[i.key] === undefined && i.key !== now.key)
  // What was just taken back is the line being asked; the same line twice would only be read twice.
  const fallen = struck.filter(
    (s) => given[s.item] === undefined && !(s.item === now.key && s.cause === 'again'),
  )
  const rows: Row[] = []
  if (done.length > 0) rows.push(row(`[x] ${done.length} of ${items.length} shown`))
  if (wrong.length > 0) rows.push(row(`[FALSE] ${fewNames(defs, gate, wrong)}`, 'caution'))
  if (unproved.length > 0)
    rows.push(
      row(
        `[unproved] ${unproved.length} ${unproved.length === 1 ? 'lock' : 'locks'}: the start was tried, and it turned`,
        'caution',
      ),
    )
  if (fallen.length > 0) {
    const keys = fallen.map(({ item }) => item)
    rows.push(row(`[void] ${fewNames(defs, gate, keys)}`, 'caution'))
  }
  rows.push(row(`[ ] ${itemLabel(defs, now)}`, 'strong'))
  // Which word lists them is said at the first of them.
  const hint = done.length === 0 ? ' (word: show)' : ''
  if (open.length > 0) rows.push(row(`[ ] then ${open.length} more${hint}`, 'faint'))
  return rows
}

/** Beside what is keyed there, in a practice session: nobody signs for a list that hides it. */
function falseRows(defs: Definitions, state: State, gate: GateStep): Row[] {
  const wrong = falseLines(defs, state, gate)
  return wrong.length === 0
    ? []
    : [row(`FALSE among these: ${fewNames(defs, gate, wrong)}. Nobody signs for that.`, 'caution')]
}

function fewNames(defs: Definitions, gate: GateStep, keys: readonly string[]): string {
  const names = keys.flatMap((key) => itemByKey(defs, gate, key) ?? [])
  const few = names.slice(0, 3).map((item) => itemLabel(defs, item))
  return `${few.join(', ')}${names.length > 3 ? ` and ${names.length - 3} more` : ''}`
}

function askRows(defs: Definitions, state: State, gate: GateStep, item: Item): Row[] {
  const { evidence } = item
  if (evidence.kind === 'lift') return liftRows(evidence, item.part ?? 'load')
  const ask = row(evidence.ask, 'strong')
  switch (evidence.kind) {
    case 'locks':
      return evidence.taken_off === undefined
        ? [ask, row(`Lock number at ${item.point?.name ?? ''}`)]
        : [ask, row(`Lock number off ${item.point?.name ?? ''}, and the initials of whose hand took it off`)]
    case 'numbers':
      return wantsAnother(item)
        ? [ask, row('Nobody does this alone: whoever works with you comes on first, by the words sign on')]
        : [
            ask,
            row(
              `Number: ${itemLabel(defs, item)}${evidence.taken_off === undefined ? '' : ', and the initials of who took it off'}`,
            ),
          ]
    case 'words':
      return [ask, row(`Type: ${evidence.words}`)]
    case 'witness': {
      const people = mayWitness(defs, state, gate, evidence)
      const pace = gasPace(defs, state, gate)
      return [
        // Compared with what hangs and stands there before anybody signs for it.
        ...givenLines(defs, state, gate).map((line) => row(capital(line))),
        ...otherNumbers(defs, state, gate),
        ...falseRows(defs, state, gate),
        // Whoever signs looks whether it is put right.
        ...dangerNotes(state).map((line) => row(line, 'caution')),
        ...(pace === null
          ? []
          : [row(`Gas of two places, keyed ${pace.seconds} s apart: watch the meter settle.`)]),
        ask,
        people.length === 0
          ? row('Nobody else in the crew file may witness here: it stays shut.', 'caution')
          : row(`May witness: ${peopleText(people)}`),
      ]
    }
    case 'wait':
      return [ask, waitRow(evidence, gateState(state, gate.id).begun[item.key])]
    case 'measured':
      return [
        ask,
        row(`Must be ${boundsText(evidence)}: ${evidence.place}. ${evidence.source}`),
        row(`With ${instrumentName(defs, state.seats[evidence.with] ?? '')}`, 'faint'),
      ]
    case 'gas':
      return [
        ask,
        row(`Must be ${gasLimitText(defs, evidence.limit)}`),
        ...cellRows(defs, state, gate, evidence),
        row(meterText(defs, state, gate, item)),
      ]
  }
}

/** A number that was keyed in place of one that stood before the hold point fell: whoever signs looks where the old one is. */
function otherNumbers(defs: Definitions, state: State, gate: GateStep): Row[] {
  const { given } = gateState(state, gate.id)
  return stoodBefore(state, gate).flatMap((was) => {
    const item = itemByKey(defs, gate, was.item)
    const now = given[was.item]
    return item === null || now === undefined || now.shown === was.shown
      ? []
      : [
          row(
            `${now.shown} IN PLACE OF ${was.shown}, ${itemLabel(defs, item)}: nobody told ${was.shown} off.`,
            'caution',
          ),
        ]
  })
}

/**
 * One that was picked for a round before is named as that: nobody is asked for it again, and none is to be keyed. What is to be read with it
 * stands beside it, as a low screen may show nothing else of the line.
 */
function meterText(defs: Definitions, state: State, gate: GateStep, item: Item): string {
  const { evidence } = item
  if (evidence.kind !== 'gas') return ''
  const id = state.seats[evidence.with] ?? ''
  const isOld = gateState(state, gate.id).struck.some(
    ({ item }) => itemByKey(defs, gate, item)?.evidence.kind === 'gas',
  )
  const gas = gasLimitById(defs, evidence.limit)?.gas
  const unit = gas === undefined ? '' : `, ${GAS_UNITS[gas]}`
  return isOld ? `Meter ${id} as before: ${itemLabel(defs, item)}${unit}` : `With ${instrumentName(defs, id)}`
}

function liftRows(lift: EvidenceOf<'lift'>, part: LiftPart): Row[] {
  const ask = row(lift[part], 'strong')
  return part === 'inspected' ? [ask, row(`Type: ${inspectedWords(lift)}`)] : [ask]
}

/** When it began and when it ends; how long is left stands in the foot, which follows the clock. */
function waitRow(wait: EvidenceOf<'wait'>, begun: Begun | undefined): Row {
  const began = begun === undefined ? null : readStamp(begun.at)
  if (begun === undefined || began === null)
    return row(`It lasts ${wait.lasts.text}. To begin it, type ${wait.begin_words}`)
  const endMs = waitEndsMs(wait, begun)
  if (!Number.isFinite(endMs))
    return row(`A wait of ${wait.lasts.text} has no end: this stays shut.`, 'caution')
  const ends = clockOf({ ms: endMs, offsetMin: began.offsetMin })
  return row(`Began ${clockOf(began)}, over at ${ends}. Then type ${wait.words}, only if it is so`)
}

/** `at most 0.5 psig`. */
function boundsText({ at_least: least, at_most: most }: EvidenceOf<'measured'>): string {
  if (least !== undefined && most !== undefined) return `${least.text} to ${most.text}`
  return most !== undefined ? `at most ${most.text}` : `at least ${least?.text ?? '?'}`
}

function unitOf(defs: Definitions, state: State, { evidence, part }: Item): string {
  if (evidence.kind === 'lift') return part === 'load' || part === 'rating' ? massUnit(defs) : ''
  if (evidence.kind === 'measured') {
    const instrument = instrumentById(defs, state.seats[evidence.with] ?? '')
    return instrument === undefined || !('unit' in instrument) ? '' : instrument.unit
  }
  if (evidence.kind !== 'gas') return ''
  const limit = gasLimitById(defs, evidence.limit)
  return limit === undefined ? '' : GAS_UNITS[limit.gas]
}
