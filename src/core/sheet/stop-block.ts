// What a STOP looks like on the sheet, and what is asked while one is open.
import { neverReleased } from '../job/admit-stop.ts'
import type { Definitions } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import type { Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import {
  barredFromRelease,
  causeWords,
  isReleasable,
  lastingStop,
  openStops,
  STOP_CAUSES,
} from '../job/stop-causes.ts'
import { type Row, row } from './block.ts'
import { bySign } from './by-sign.ts'

type StopEntry = Extract<Entry, { type: 'stop.raised' | 'stop.explained' | 'stop.released' | 'stop.stands' }>

/** `state` is the one after the entry. */
export function stopRows(defs: Definitions, state: State, entry: StopEntry): Row[] {
  switch (entry.type) {
    case 'stop.raised':
      return [
        row('STOP. Everybody out and clear. Nothing goes on.', 'caution'),
        row(defs.machine.site.emergency, 'caution'),
        row('Every hold point has fallen and will be asked again whole.'),
      ]
    case 'stop.explained':
      return explainedRows(entry)
    case 'stop.released': {
      const count = state.stops.filter((s) => s.releasedBy === entry.person).length
      const which = count > 1 ? 'STOP, all that were open,' : 'STOP'
      return [row(`${which} released by ${entry.person}${bySign(entry.signed)}: ${entry.answer}`)]
    }
    case 'stop.stands':
      return [
        row(`The STOP stands: ${entry.person}${bySign(entry.signed)} closes the job under it.`, 'caution'),
        row(`  before a new job is opened: ${entry.first}`),
      ]
  }
}

function explainedRows(entry: Extract<StopEntry, { type: 'stop.explained' }>): Row[] {
  if (entry.cause === undefined) return [row(`STOP because: ${entry.why}`, 'caution')]
  const { says } = causeWords(entry.cause)
  return [
    row(`STOP because: ${says}`, 'caution'),
    row(`  ${entry.why}`, 'caution'),
    row(`  called by ${entry.called_by ?? 'nobody named'}`),
    ...(isReleasable(entry.cause)
      ? []
      : [row('  This is never released: a lead closes the job, and the work is opened anew.', 'caution')]),
  ]
}

interface StopAsk {
  readonly title: string
  readonly must: readonly Row[]
  readonly ask: readonly Row[]
}

export function stopView(
  defs: Definitions,
  state: State,
  prompt: Extract<Prompt, { kind: 'stop-cause' | 'stopped' }>,
): StopAsk {
  const open = openStops(state)
  const must = [row(defs.machine.site.emergency, 'caution')]
  if (prompt.kind === 'stop-cause') {
    const which = open.indexOf(prompt.stop)
    const title = open.length > 1 ? `STOP ${which + 1} of ${open.length} open` : 'STOP'
    const same = which > 0 ? [row('same  said again: the same cause as the one before')] : []
    return {
      title,
      must,
      ask: [
        row('When everybody is safe: why was STOP called?', 'strong'),
        ...STOP_CAUSES.map(({ says }, i) => row(`${i + 1}  ${says}`)),
        ...same,
      ],
    }
  }
  const shown = lastingStop(state) ?? prompt.stop
  const more = open.length > 1 ? ` (and ${open.length - 1} more)` : ''
  const cause = shown.cause === null ? '' : `${causeWords(shown.cause).says}; `
  return {
    title: 'STOP',
    must,
    ask: [row(`Blocked: ${cause}${shown.why ?? ''}${more}`, 'caution'), ...ways(state)],
  }
}

/** What can be done under a STOP that is explained. */
function ways(state: State): Row[] {
  const never = neverReleased(state)
  if (never !== null) return [row(never, 'caution'), row('1  close: a lead closes the job under STOP')]
  const barred = [...barredFromRelease(state).people.keys()]
  const but = barred.length === 0 ? '' : `, not ${barred.join(', ')}`
  return [
    row(`1  release: a lead who can answer for it${but}`),
    row('2  close: a lead closes the job under STOP'),
    row('3  cause: put the cause right'),
  ]
}
