// What stays on the machine when a job ends: said before its last sheet is answered, and once more where it is closed.
import type { Definitions } from '../job/definitions.ts'
import { gateState, gatesOf, itemByKey } from '../job/gate.ts'
import { hanging, hangsText } from '../job/locks-on.ts'
import { next } from '../job/next.ts'
import { nonconformances } from '../job/nonconformance.ts'
import { openThings, thingText } from '../job/register.ts'
import type { State } from '../job/state.ts'
import { list } from '../lib/wording.ts'
import { stepsAhead } from '../talk/next-steps.ts'
import { type Row, row } from './block.ts'

/** Whether Enter alone closes the job now. */
export function enterCloses(defs: Definitions, state: State): boolean {
  return next(defs, state).kind === 'tell' && stepsAhead(defs, state).length === 0
}

/** Beside the question of the last sheet; nothing at any other. */
export function lastSheetRows(defs: Definitions, state: State): Row[] {
  if (stepsAhead(defs, state).length > 0) return []
  const open = nonconformances(defs, state).filter((nc) => nc.stands && nc.decided === null)
  const end =
    open.length === 0
      ? 'The last sheet: behind it the job closes.'
      : `The last sheet: behind it a lead decides on ${list(open.map(({ name }) => name))}, then the job closes.`
  return [row(end, 'strong'), ...staysOnRows(defs, state)]
}

/** `6 locks,`; of more than one sort all are named. */
function count(many: number, what: string): string {
  return many === 1 || what !== 'lock' ? `${many} ${what},` : `${many} locks,`
}

/** One row: numbers that hang by the record, words that were keyed at hold points, what was placed. Empty where nothing does. */
export function staysOnRows(defs: Definitions, state: State): Row[] {
  const { on } = hanging(defs, state)
  const what = on.every(({ item }) => item.evidence.kind === 'locks') ? 'lock' : 'lock, blind or tag'
  const words = gatesOf(defs).flatMap((gate) =>
    Object.entries(gateState(state, gate.id).given).flatMap(([key, { shown }]) =>
      itemByKey(defs, gate, key)?.evidence.kind === 'words' ? [shown] : [],
    ),
  )
  const parts = [
    ...(on.length === 0 ? [] : [`${count(on.length, what)} ${on.map(hangsText).join(', ')}`]),
    ...(words.length === 0 ? [] : [`keyed at its hold points: ${[...new Set(words)].join(', ')}`]),
    ...openThings(state).map((thing) => `placed: ${thingText(thing)}`),
  ]
  return parts.length === 0
    ? []
    : [row(`Left on the machine, by the record: ${parts.join('; ')}.`, 'caution')]
}
