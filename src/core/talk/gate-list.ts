// All that a hold point asks for, by sort: what was shown, with its figure or number, and what is open. For whoever wants to know it
// before it is asked, and for a witness, who compares it with what hangs and stands there. A lock is named by its number first, as that is
// what is read at it. Nothing that fell is told with its number: whoever keys it anew reads it anew.
import type { EvidenceOf } from '../definition/evidence.ts'
import { gateBeingAsked } from '../job/admit-gate.ts'
import type { Definitions } from '../job/definitions.ts'
import { type GateStep, gateState, gatesOf, type Item, itemByKey, itemsOf } from '../job/gate.ts'
import { itemLabel } from '../job/item-label.ts'
import { next } from '../job/next.ts'
import type { Given, State } from '../job/state.ts'
import { falseLines } from '../practice/false-lines.ts'

const NUMBERS: Readonly<Record<EvidenceOf<'numbers'>['of'], string>> = {
  permit: 'permits',
  blind: 'blinds',
  tag: 'tags',
  personal_lock: 'personal locks',
  part: 'part numbers',
}

/** Where a gas is read stands with its sort: each place is a test of its own. */
const GAS_PLACE = /(?:where people breathe|inside the opening|at the vent)$/

/** The word `show`. */
export function showLines(defs: Definitions, state: State): string[] {
  const prompt = next(defs, state)
  const gate = gateBeingAsked(defs, state) ?? (prompt.kind === 'clear' ? prompt.gate : null)
  if (gate !== null) return gateLines(defs, state, gate)
  const last = gatesOf(defs).findLast(({ id }) => gateState(state, id).status !== 'never')
  return last === undefined
    ? ['show lists what a hold point asks for; none is asked here yet.']
    : ['No hold point is asked here; the last one:', ...gateLines(defs, state, last)]
}

function gateLines(defs: Definitions, state: State, gate: GateStep): string[] {
  const { given } = gateState(state, gate.id)
  const items = itemsOf(defs, state, gate)
  const open = items.filter(({ key }) => given[key] === undefined)
  const done = items.length - open.length
  const untrue = falseLines(defs, state, gate)
  return [
    `Hold point ${gate.number}: ${done} of ${items.length} shown.`,
    ...bySort(
      defs,
      items.filter(({ key }) => untrue.includes(key)),
      (item) => nameOf(defs, item),
    ).map((line) => `FALSE, as you keyed it: ${line}`),
    ...givenLines(defs, state, gate).map((line) => `Shown, ${line}`),
    ...bySort(defs, open, (item) => nameOf(defs, item)).map((line) => `Open, ${line}`),
  ]
}

/** `locks: L-101 main driver breaker, E-1; ...`, a line for each sort of evidence that was shown. */
export function givenLines(defs: Definitions, state: State, gate: GateStep): string[] {
  const { given } = gateState(state, gate.id)
  const shown = Object.entries(given)
    .sort(([, a], [, b]) => a.seq - b.seq)
    .flatMap(([key, one]) => {
      const item = itemByKey(defs, gate, key)
      return item === null ? [] : [{ item, one }]
    })
  const figures = new Map(shown.map(({ item, one }) => [item.key, one]))
  const meter = ({ key }: Item) => figures.get(key)?.instrument ?? null
  return bySort(
    defs,
    shown.map(({ item }) => item),
    (item) => givenText(defs, item, figures.get(item.key)),
    meter,
  )
}

function bySort(
  defs: Definitions,
  items: readonly Item[],
  text: (item: Item) => string,
  meter: (item: Item) => string | null = () => null,
): string[] {
  const sorts = new Map<string, string[]>()
  for (const item of items) {
    const read = meter(item)
    const sort = `${sortOf(defs, item)}${read === null ? '' : ` with ${read}`}`
    sorts.set(sort, [...(sorts.get(sort) ?? []), text(item)])
  }
  return [...sorts].map(([sort, texts]) => (sort === texts[0] ? `${sort}.` : `${sort}: ${texts.join('; ')}.`))
}

function sortOf(defs: Definitions, item: Item): string {
  const { evidence } = item
  switch (evidence.kind) {
    case 'locks':
      return evidence.taken_off === undefined ? 'locks' : 'locks off'
    case 'numbers':
      return `${NUMBERS[evidence.of]}${evidence.taken_off === undefined ? '' : ' off'}`
    case 'words':
    case 'wait':
      return 'keyed in words'
    case 'gas':
      return `gas ${GAS_PLACE.exec(itemLabel(defs, item))?.[0] ?? ''}`.trim()
    case 'measured':
      return 'measured'
    case 'lift':
      return 'the lift'
    case 'witness':
      return 'witness'
  }
}

/** The line by what tells it from the others of its sort. */
function nameOf(defs: Definitions, item: Item): string {
  return item.point?.name ?? item.person ?? itemLabel(defs, item).replace(GAS_PLACE, '').trim()
}

function givenText(defs: Definitions, item: Item, one: Given | undefined): string {
  const shown = one?.shown ?? '?'
  const off = one?.offBy === undefined ? '' : `, off by ${one.offBy}`
  const { kind } = item.evidence
  if (kind === 'words' || kind === 'wait' || kind === 'witness') return shown
  // A figure and its unit are not parted at the end of a line.
  return `${shown.replaceAll(' ', '\u00a0')} ${nameOf(defs, item)}${off}`
}

/** Where each lock goes, as the machine record has the isolation points; `which lock goes where`. */
export function pointLines({ machine }: Definitions): string[] {
  const names = (before: 'before_start' | 'before_gas') =>
    machine.site.isolation_points
      .filter((point) => (point.comes_off ?? 'before_gas') === before)
      .map(({ name }) => name)
  const turns = names('before_start')
  const others = names('before_gas')
  return [
    'From the machine record, one lock at each point; the number is that of the lock you hang there:',
    ...(turns.length === 0 ? [] : [`What turns the machine: ${turns.join('; ')}.`]),
    ...(others.length === 0 ? [] : [`Gas and whatever else is shut off: ${others.join('; ')}.`]),
    'Each point by the tag on its plate. Where the site’s isolation list has another point, stop and ask: the record is short of it.',
  ]
}
