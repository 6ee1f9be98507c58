// How long steps take, for telling about how much of a job is left. Minutes by kind are common practice, no source, and meant to
// be rough; a procedure says its own with `takes`. No rule rests on any of them.
import { asKind, type Definitions, type PlacedStep } from './definitions.ts'
import { gateState, gatesBefore, type Item, itemsOf } from './gate.ts'
import { isComplete } from './next.ts'
import { placeResult, placesOf } from './places.ts'
import type { State } from './state.ts'

/** Of a step that says nothing of itself; of a read step, each repeat at each place. */
const USUAL_MIN = { tell: 2, confirm: 5, observe: 3, decide: 5, judge: 0, part: 0, read: 1 } as const
/** Of one line at a hold point; a wait lasts as long as it says. */
const USUAL_LINE_MIN = { words: 1, numbers: 1, locks: 2, witness: 3, gas: 3, measured: 2, lift: 2 } as const

/** Minutes of work left at this step; none where it is done. */
export function minutesLeftAt(defs: Definitions, state: State, placed: PlacedStep): number {
  const { step } = placed
  if (isComplete(state, placed) && !(step.kind === 'gate' && isWantedAgain(defs, state, placed))) return 0
  const own = 'takes' in step && step.takes !== undefined ? step.takes.si / 60 : null
  if (step.kind === 'gate') return own ?? gateMinutes(defs, state, placed)
  if (step.kind !== 'read') return own ?? USUAL_MIN[step.kind]
  const read = asKind(placed, 'read')
  const places = placesOf(read)
  const open = places.filter((place) => placeResult(read, place, state).state === 'more').length
  return own === null ? open * step.repeats.at_least * USUAL_MIN.read : (own * open) / places.length
}

/** A hold point that fell is shown anew where a step that is still to come stands behind it. */
function isWantedAgain(defs: Definitions, state: State, placed: PlacedStep): boolean {
  return (
    gateState(state, placed.id).status !== 'open' &&
    defs.steps.some(
      (one) =>
        one.step.kind !== 'gate' &&
        !isComplete(state, one) &&
        gatesBefore(defs, one).some(({ id }) => id === placed.id),
    )
  )
}

function gateMinutes(defs: Definitions, state: State, placed: PlacedStep): number {
  const gate = asKind(placed, 'gate')
  const { given } = gateState(state, gate.id)
  return itemsOf(defs, state, gate)
    .filter(({ key }) => given[key] === undefined)
    .reduce((sum, item) => sum + lineMinutes(item), 0)
}

function lineMinutes({ evidence }: Item): number {
  return evidence.kind === 'wait' ? evidence.lasts.si / 60 : USUAL_LINE_MIN[evidence.kind]
}

/** As people say it: to five minutes, from an hour on to the quarter, from four hours on to the hour. */
export function roughTime(minutes: number): string {
  const to = (step: number) => Math.max(step, Math.round(minutes / step) * step)
  if (minutes < 60) return to(5) >= 60 ? '1 h' : `${to(5)} min`
  const rounded = to(minutes < 240 ? 15 : 60)
  const rest = rounded % 60
  return `${Math.floor(rounded / 60)} h${rest === 0 ? '' : ` ${rest} min`}`
}
