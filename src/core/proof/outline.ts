// The outline of a state: what can make a difference to which prompt comes next and which gates stand, and nothing else.
// Two states with the same outline are taken for one. What is left out (sizes of readings, wordings, times of day, who of
// two people with one role it is beyond doer and witness) no rule of the engine looks at when it decides on gates; that
// this is so is tested by walking at random and finding every outline, and every step between two, in the explored set.
import type { Definitions } from '../job/definitions.ts'
import { asKind, stepById } from '../job/definitions.ts'
import { gatesOf, lapsesAt } from '../job/gate.ts'
import { applicability, isComplete } from '../job/next.ts'
import { openPlace, placeResult, placesOf } from '../job/places.ts'
import { openStop, type State } from '../job/state.ts'

export function outlineOf(defs: Definitions, state: State): string {
  const stop = openStop(state)
  const parts = [
    state.closed ?? '',
    state.left ? 'left' : '',
    stop === null ? '' : `stop:${stop.by ?? '-'}:${stop.why === null ? 'raised' : 'explained'}`,
    state.doer ?? '-',
    state.machineNamed ? 'named' : '',
    Object.keys(state.seats).sort().join(','),
    state.doubt === null ? '' : `doubt:${state.doubt.place}`,
    state.late === null ? '' : `late:${state.late.place}`,
    gatesOutline(defs, state),
    stepsOutline(defs, state),
  ]
  return parts.join('|')
}

/** Which evidence stands and by whom, and in which order the gas tests of several gates will lapse. */
function gatesOutline(defs: Definitions, state: State): string {
  const gates = gatesOf(defs)
  const order = gates
    .map((gate) => ({ id: gate.id, at: lapsesAt(defs, state, gate) }))
    .filter((g) => g.at !== null)
    .sort((a, b) => (a.at ?? 0) - (b.at ?? 0))
    .map((g) => g.id)
  const each = gates.map((gate) => {
    const g = state.gates[gate.id]
    if (g === undefined) return '-'
    const given = Object.entries(g.given)
      .map(([item, e]) => `${item}~${e.by ?? '-'}~${e.person ?? ''}`)
      .sort()
    return `${g.status}${g.mustClear ? '!' : ''}[${given.join(' ')}]`
  })
  return `${each.join(';')}<${order.join('<')}`
}

function stepsOutline(defs: Definitions, state: State): string {
  return defs.steps
    .map((placed) => {
      const applies = applicability(defs, state, placed)
      if (applies !== 'do') return applies
      const { step, id } = placed
      if (step.kind === 'read') return readOutline(defs, state, id)
      const verdict = state.verdicts[id]
      if (verdict !== undefined) return verdict.void ? 'void' : verdict.verdict.result.verdict
      const disposition = state.dispositions[id]
      if (disposition !== undefined) return disposition.void ? 'void' : 'disposed'
      if (state.done[id] !== undefined) return step.kind === 'observe' ? (state.done[id] ?? '') : 'done'
      return step.kind === 'gate' ? '' : isComplete(state, placed) ? 'done' : '.'
    })
    .join(',')
}

/** How far a read step has come: the place that is asked for and how many readings stand there. */
function readOutline(defs: Definitions, state: State, id: string): string {
  const placed = asKind(stepById(defs, id), 'read')
  const place = openPlace(placed, state)
  const taken = placesOf(placed).some((p) => placeResult(placed, p, state).readings.length > 0)
  if (place === null) return `full${taken ? '' : '0'}`
  return `${place.number}:${placeResult(placed, place, state).readings.length}${taken ? '+' : ''}`
}
