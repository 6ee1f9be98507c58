// Little oxygen where a limit asks for no least: it passes, as nobody is to breathe there, and it is said what it means.
import type { EvidenceOf } from '../definition/evidence.ts'
import {
  asKind,
  type Definitions,
  gasLimitById,
  instrumentById,
  type PlacedStep,
  stepById,
} from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { evidenceByKey, type GateStep } from '../job/gate.ts'
import { isLittleOxygen, littleOxygenAt, littleOxygenOf } from '../job/little-oxygen.ts'
import type { State } from '../job/state.ts'
import { type Row, row } from './block.ts'

type Shown = Extract<Entry, { type: 'evidence.given' | 'evidence.failed' }>

/** Under a figure of oxygen or of flammables; empty where there is nothing to say. */
export function oxygenRows(defs: Definitions, entry: Shown): Row[] {
  const evidence = evidenceByKey(asKind(stepById(defs, entry.step), 'gate'), entry.item)
  const limit = evidence?.kind === 'gas' ? gasLimitById(defs, evidence.limit) : undefined
  if (limit === undefined) return []
  if (entry.type === 'evidence.failed') return limit.gas === 'flammable' ? blindRows(defs, entry) : []
  return entry.reading === undefined || !isLittleOxygen(defs, limit, entry.reading.si)
    ? []
    : [
        row(`  Far from the 20.9 %vol of air: something drives the air out there.`, 'caution'),
        row('  NOBODY BREATHES THERE OR PUTS A HEAD IN; whoever is in comes out.', 'caution'),
      ]
}

/** Behind the figure in its own box: it counts as shown, and must not look as if all were well. */
export function boxWarning(defs: Definitions, entry: Shown): string {
  const little = oxygenRows(defs, entry).length > 0 && entry.type === 'evidence.given'
  return little ? '  NOBODY BREATHES THERE' : ''
}

/** What to do where the meter has too little oxygen to see what burns. */
function blindRows(
  defs: Definitions,
  { instrument, why }: Extract<Shown, { type: 'evidence.failed' }>,
): Row[] {
  const meter = instrumentById(defs, instrument ?? '')
  if (meter?.kind !== 'gas_meter' || !why.startsWith(`${meter.id} needs `)) return []
  return [
    row('  It says nothing of what burns there. Nobody breathes there or puts a head in.', 'caution'),
    row('  Find what drives the air out, air it, then back: oxygen anew; or a meter that sees it so.'),
  ]
}

/** At each sheet behind it, and at the lines still to come: whoever reads that a face goes to the opening has to know it there. */
export function airRows(defs: Definitions, state: State, placed: PlacedStep): Row[] {
  const [least] = littleOxygenAt(defs, state, placed)
  return least === undefined
    ? []
    : [row(`${least.given.shown} oxygen inside: NO HEAD IN, NOBODY BREATHES THERE`, 'caution')]
}

const CELL =
  'The cell that reads H2S needs some oxygen: with none for long a low figure proves nothing (AIHA, The Synergist, March 2011, p. 33). The manual of the meter decides.'

/**
 * Where hydrogen sulfide is read in a place whose oxygen is little: the cell may not see it. No limit, as none is published with a figure.
 * Source: AIHA, The Synergist, March 2011, p. 33 (an electrochemical cell for it needs a small amount of oxygen, and does not work rightly
 * where there is none for long); read as a stored copy.
 */
export function cellRows(
  defs: Definitions,
  state: State,
  gate: GateStep,
  evidence: EvidenceOf<'gas'>,
): Row[] {
  const limit = gasLimitById(defs, evidence.limit)
  if (limit?.gas !== 'hydrogen_sulfide') return []
  const isHere = littleOxygenOf(defs, state, gate).some(({ key }) => {
    const other = evidenceByKey(gate, key)
    return other?.kind === 'gas' && gasLimitById(defs, other.limit)?.place === limit.place
  })
  return isHere ? [row(CELL, 'caution')] : []
}
