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
  const caution = counts(state, entry) && (entry.stop !== null || entry.unread !== null)
  return [
    row(`On this machine, ${otherTitle(state, entry)}`, 'strong'),
    ...otherStanding(state, entry).map((line) => row(`  ${line}`, caution ? 'caution' : 'plain')),
    ...(entry.since ?? []).map((doing) => row(`  since: ${doingLine(doing)}`)),
  ]
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
  const alarms = isSaid ? [] : otherAlarms(state).map((text) => row(text, 'caution'))
  const open = (isArriving ? otherArrival(state) : otherShort(state)).map((text) => row(text))
  return isArriving ? { must: [...alarms, ...open], rows: [] } : { must: alarms, rows: open }
}
