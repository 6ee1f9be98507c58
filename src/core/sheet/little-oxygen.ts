// Little oxygen where a limit asks for no least: it passes, as nobody is to breathe there, and it is said what it means. No limit
// of its own: what is little is the least that the record of the machine asks for where people breathe.
import { asKind, type Definitions, gasLimitById, instrumentById, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { evidenceByKey } from '../job/gate.ts'
import { type Row, row } from './block.ts'

type Shown = Extract<Entry, { type: 'evidence.given' | 'evidence.failed' }>

/** Under a figure of oxygen or of flammables; empty where there is nothing to say. */
export function oxygenRows(defs: Definitions, entry: Shown): Row[] {
  const evidence = evidenceByKey(asKind(stepById(defs, entry.step), 'gate'), entry.item)
  const limit = evidence?.kind === 'gas' ? gasLimitById(defs, evidence.limit) : undefined
  if (limit === undefined) return []
  if (entry.type === 'evidence.failed') return limit.gas === 'flammable' ? blindRows(defs, entry) : []
  const least = breathedLeast(defs)
  const si = entry.reading?.si
  if (limit.gas !== 'oxygen' || limit.at_least !== undefined || least === null || si === undefined) return []
  // At the end of a purge as little as can be is wanted.
  if (limit.at_most !== undefined && limit.at_most.si < least.si) return []
  return si >= least.si
    ? []
    : [
        row(`  Far from the 20.9 %vol of air: something drives the air out there.`, 'caution'),
        row('  NOBODY BREATHES THERE OR PUTS A HEAD IN; whoever is in comes out.', 'caution'),
      ]
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

/** The most that any limit of oxygen asks for at least: that of people who breathe there. */
function breathedLeast(defs: Definitions): { readonly si: number } | null {
  const least = defs.machine.site.gas.limits.flatMap(({ gas, at_least }) =>
    gas === 'oxygen' && at_least !== undefined ? [at_least] : [],
  )
  return least.reduce<{ readonly si: number } | null>(
    (most, one) => (most === null || one.si > most.si ? one : most),
    null,
  )
}
