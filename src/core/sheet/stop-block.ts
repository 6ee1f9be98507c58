// What a STOP looks like on the sheet, and what is asked while one is open.
import { neverReleased } from '../job/admit-stop.ts'
import type { Definitions } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import type { Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { causeWords, isReleasable, lastingStop, openStops, STOP_CAUSES } from '../job/stop-causes.ts'
import { mayRelease, peopleText } from '../talk/may-sign.ts'
import { crewFile } from '../talk/plain-asked.ts'
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
    row(`  called by ${entry.called_by ?? 'nobody named'}${entry.signed === 'pin' ? ', who signed' : ''}`),
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
        ...liftedBy(defs, state),
      ],
    }
  }
  const shown = lastingStop(state) ?? prompt.stop
  const more = open.length > 1 ? ` (and ${open.length - 1} more)` : ''
  const cause = shown.cause === null ? '' : `${causeWords(shown.cause).says}; `
  return {
    title: 'STOP',
    must,
    ask: [row(`Blocked: ${cause}${shown.why ?? ''}${more}`, 'caution'), ...ways(defs, state)],
  }
}

/** Said at once, so that nobody waits in front of it: who lifts it. Which cause is never lifted is told with the cause. */
function liftedBy(defs: Definitions, state: State): Row[] {
  const leads = mayRelease(defs, state)
  return leads.length === 0 ? [] : [row(`Lifted after that by a lead: ${peopleText(leads)}`, 'faint')]
}

/** What can be done under a STOP that is explained. */
function ways(defs: Definitions, state: State): Row[] {
  const never = neverReleased(state)
  if (never !== null)
    return [
      row(never, 'caution'),
      row('1  close: a lead closes the job under STOP'),
      ...(state.record === 'REAL' ? [] : [row(`${state.record}: ${anew(state)}`)]),
    ]
  const leads = mayRelease(defs, state)
  const who =
    leads.length === 0
      ? 'a lead who had no part in it, and this crew file has none'
      : `${peopleText(leads)}, a lead, says what was put right`
  return [
    row(`1  release: ${who}`),
    row('2  close: a lead closes the job under STOP'),
    row('3  cause: say the cause again'),
    ...(state.record === 'REAL'
      ? []
      : [row(`${state.record}: ${leads.length === 0 ? anew(state) : practised(defs, state)}`)]),
  ]
}

/** How to go on where nothing stands for a machine. */
const ANEW = 'leave, and begin another where jobs are chosen.'

/** A practice session that is left before anything was named counts for nothing. */
const anew = ({ practice }: State): string =>
  practice === null || practice.named !== null
    ? ANEW
    : `name what was hidden, by the word fault, then ${ANEW}`

/** Lifting it is learned there: whoever is alone signs as that lead, with a key that is printed for everybody to read. */
function practised(defs: Definitions, state: State): string {
  return defs.crew.invented === true
    ? `alone, sign as that lead. The example PINs stand at the head of ${crewFile(defs)}. Or ${anew(state)}`
    : `ask that lead to sign. Or ${anew(state)}`
}
