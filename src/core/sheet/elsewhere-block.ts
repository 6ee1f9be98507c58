// Other jobs on the machine, on the sheet: as a look found them, and at the prompt.
import { counts, jobNumber } from '../job/elsewhere.ts'
import {
  doingLine,
  otherAlarms,
  otherArrival,
  otherShort,
  otherStanding,
  otherTitle,
} from '../job/elsewhere-words.ts'
import type { Entry } from '../job/entries.ts'
import type { Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { type Row, row } from './block.ts'

type SeenEntry = Extract<Entry, { type: 'elsewhere.seen' | 'elsewhere.gone' }>

/** `state` is the one after the entry. */
export function elsewhereRows(state: State, entry: SeenEntry): Row[] {
  if (entry.type === 'elsewhere.gone')
    return [
      row(
        `Job ${jobNumber(entry.job)} had not ended, and is not among the jobs of this machine any more.`,
        'caution',
      ),
    ]
  const holds =
    entry.closed === null && counts(state, entry) && (entry.stop !== null || entry.unread !== null)
  return [
    row(`On this machine, ${otherTitle(state, entry)}`, 'strong'),
    ...(holds ? [HOLD] : []),
    ...otherStanding(state, entry).map((line) => row(`  ${line}`, holds ? 'caution' : 'plain')),
    ...(holds ? [UNTIL] : []),
    ...(entry.since ?? []).map((doing) => row(`  since: ${doingLine(doing)}`)),
  ]
}

/** Framed as a verdict is: it holds this job as much as one. */
const HOLD = row('( HOLD )', 'stamp')
const UNTIL = row('No hold point of this job opens until that is put right there.', 'caution')

/** Whoever comes to the job sees it as the HOLD it is; at the prompts after that one line keeps it in sight. */
function alarmRows(state: State, isArriving: boolean): Row[] {
  const alarms = otherAlarms(state)
  const rows = alarms.map(({ text }) => row(text, 'caution'))
  return isArriving && alarms.some(({ holds }) => holds) ? [HOLD, ...rows, UNTIL] : rows
}

/** At a prompt: what is never left out, and what may give way on a small screen. */
export function elsewherePrompt(
  state: State,
  prompt: Prompt,
): { must: readonly Row[]; rows: readonly Row[] } {
  if (prompt.kind === 'closed') return { must: [], rows: [] }
  // Where people come to the job they are told before anything else; the reason of a hold says it already.
  const isArriving = prompt.kind === 'sign-on' || prompt.kind === 'tag'
  const isSaid = prompt.kind === 'held' && prompt.elsewhere === true
  const alarms = isSaid ? [] : alarmRows(state, isArriving)
  // Told where it matters: to whoever comes, and where people are let in or called out. The word open tells it anywhere.
  const isAtGate = prompt.kind === 'evidence' || prompt.kind === 'clear' || prompt.kind === 'held'
  const lines = isArriving ? otherArrival(state) : isAtGate ? otherShort(state) : []
  const open = lines.map((text) => row(text))
  return isArriving ? { must: [...alarms, ...open], rows: [] } : { must: alarms, rows: open }
}
