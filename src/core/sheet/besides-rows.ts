// Under a verdict on figures: what was found by eye of the same part. A crack has no size, and ACCEPT of sizes says nothing of it.
import type { Definitions } from '../job/definitions.ts'
import { foundBesides } from '../job/found-besides.ts'
import type { State } from '../job/state.ts'
import { deciderText, findingText } from '../talk/names.ts'
import { type Row, row } from './block.ts'

export function besidesRows(defs: Definitions, state: State, judge: string): Row[] {
  const found = foundBesides(defs, state, judge)
  return found.length === 0
    ? []
    : [
        row('  Of figures alone. Found besides, and in no figure of it:', 'caution'),
        ...found.map((nc) => {
          const decided =
            nc.decided === null ? 'OPEN' : `${nc.decided.choice}, decided by ${deciderText(nc.decided)}`
          return row(`    ${findingText(defs, state, nc).replace(/\.$/, '')}; ${decided}`, 'caution')
        }),
      ]
}
