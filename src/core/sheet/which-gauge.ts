// The temperature of a measuring instrument is read before that is picked, in some procedures: which one it is, by its number, so that nobody
// warms up the wrong one.
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { gaugeAt, noGaugeAt } from '../job/gauge-at.ts'
import type { State } from '../job/state.ts'
import { list } from '../lib/wording.ts'
import { instrumentName } from '../talk/names.ts'
import { leaveIt } from '../talk/none-fits.ts'
import { type Row, row } from './block.ts'

/** Of a gauge whose temperature is read here for a judgement: which it is, or may be; empty for any other step. */
export function whichGaugeRows(defs: Definitions, state: State, placed: PlacedStep): Row[] {
  const gauge = gaugeAt(defs, state, placed)
  if (gauge === null) return []
  if (gauge.picked !== null) return [row(`The gauge is ${instrumentName(defs, gauge.picked)}.`)]
  const none = noGaugeAt(defs, state, placed)
  const [only, ...more] = gauge.fit
  if (none !== null || only === undefined) return [row(`${none ?? ''} ${leaveIt(state)}`, 'caution')]
  return more.length === 0
    ? [row(`The gauge is ${instrumentName(defs, only)}: no other may be used here.`)]
    : [
        row(
          `The gauge is the one that you will pick on sheet ${gauge.pickedAt.number}: ${list([only, ...more], 'or')}.`,
        ),
      ]
}
