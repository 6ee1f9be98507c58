// The make-safe sheet: what to do now, whom to call, what is locked and what stands open. Words only. It goes on no record,
// answers no prompt and waits for nothing, so that no lock of ours ever stands between a person and safety.
import type { Definitions } from '../job/definitions.ts'
import { jobName, openElsewhere } from '../job/elsewhere.ts'
import { gateState, gatesOf, hangs, type Item, itemByKey } from '../job/gate.ts'
import { itemLabel } from '../job/item-label.ts'
import { fallenAt, hanging, linesNoted, stoodBefore } from '../job/locks-on.ts'
import { openThings, thingText } from '../job/register.ts'
import type { State } from '../job/state.ts'
import { dangerNotes } from './danger-notes.ts'

/** What holds at any machine, in the order it is done. Common practice, no source. */
export const SAFE_ALWAYS: readonly string[] = [
  'MAKE SAFE. Words only: nothing here is recorded or answered.',
  '1  Come out, everybody. Leave tools and parts where they are.',
  '2  Stand clear of openings, covers and the crank; upwind if it may be gas.',
  '3  Close what lets gas in, only where that is safe to reach. Leave open bleeds open.',
  '4  Leave every lock, block and blind on. Nobody starts it, turns it or takes one off.',
  '5  Count heads. Nobody goes in to fetch anybody without air and a line.',
]

export const NO_CALL_OUT =
  'PRACTICE: no call of this sheet is called out, no MAYDAY, unless somebody really is in danger.'

/** What a machine record says of its site. */
export interface SiteWords {
  readonly emergency?: string
  readonly rescue?: readonly string[]
}

/** Whom to call and the rescue plan; where nothing is on record that is said, and the permit is named. */
export function siteLines({ emergency, rescue = [] }: SiteWords): string[] {
  return [
    `6  Call: ${emergency ?? 'no contact is on record here; the site permit names them.'}`,
    ...(rescue.length === 0
      ? ['RESCUE PLAN: none on record here; it is with the site permit.']
      : ['RESCUE PLAN', ...rescue.map((line) => `   ${line}`)]),
  ]
}

/** The whole sheet for a job as it stands. */
export function makeSafeLines(defs: Definitions, state: State): string[] {
  return [...SAFE_ALWAYS, ...jobLines(defs, state)]
}

/** Said once more where the eye is: on a low screen the head of the sheet has gone up out of sight. */
function atTheEnd(emergency: string): string {
  return `FIRST OF ALL: come out, stand clear. Call: ${emergency}`
}

/** What this job adds to what always holds. */
export function jobLines(defs: Definitions, state: State): string[] {
  const { emergency, rescue } = defs.machine.site
  return [
    // Practice is done beside people who would come running.
    ...(state.record === 'PRACTICE' ? [NO_CALL_OUT] : []),
    ...siteLines(rescue === undefined ? { emergency } : { emergency, rescue }),
    ...(defs.makeSafe.length === 0 ? [] : ['THIS WORK', ...defs.makeSafe.map((line) => `   ${line}`)]),
    ...lockLines(defs, state),
    ...thingLines(state),
    ...otherJobs(state),
    atTheEnd(emergency),
  ]
}

/** Locks, blinds and tags as last keyed, also where the evidence has fallen since: the thing itself still hangs there. */
function lockLines(defs: Definitions, state: State): string[] {
  const gone = new Set(hanging(defs, state).off.map(({ what }) => what.shown))
  const hung = gatesOf(defs).flatMap((gate) => {
    const { given } = gateState(state, gate.id)
    // What a sheet notes as hung may hang there still.
    const noted = linesNoted(state, gate).map(({ key, shown }) => ({ item: key, shown }))
    const keyed = [
      ...Object.entries(given).map(([item, g]) => ({ item, shown: g.shown })),
      ...fallenAt(state, gate),
      // One that another was keyed in place of may hang beside it.
      ...stoodBefore(state, gate),
      ...noted,
    ]
    // By what was keyed, not by what is asked: the lock of somebody who has left the job hangs there too.
    return keyed.flatMap(({ item: key, shown }) => {
      const item = itemByKey(defs, gate, key)
      return item === null || !hangs(item.evidence) || gone.has(shown)
        ? []
        : [`   ${shown}  ${hangsAt(defs, item)}`]
    })
  })
  return hung.length === 0
    ? ['LOCKS: no lock is on record yet.']
    : [
        'LOCKS as last keyed. Look at each before you trust it.',
        ...dangerNotes(state).map((line) => `   ${line}`),
        ...new Set(hung),
      ]
}

function hangsAt(defs: Definitions, item: Item): string {
  return item.evidence.kind === 'locks' && item.point !== null ? item.point.name : itemLabel(defs, item)
}

function thingLines(state: State): string[] {
  const open = openThings(state)
  return open.length === 0
    ? []
    : ['PLACED and not accounted for', ...open.map((thing) => `   ${thingText(thing)}`)]
}

/** Whoever else is at the machine has to come out too. */
function otherJobs(state: State): string[] {
  const open = openElsewhere(state)
  return open.length === 0
    ? []
    : [
        'OTHER JOBS on this machine. Tell them.',
        ...open.map((other) => `   ${jobName(other)}: ${other.procedure}`),
      ]
}

/** Said before a job is left: how it is left safe, and what has to be proved again by whoever comes back. */
export function leaveLines(defs: Definitions, state: State): string[] {
  const fallen = gatesOf(defs).filter((gate) => {
    const { status, given } = gateState(state, gate.id)
    return status !== 'never' || Object.keys(given).length > 0
  })
  return [
    ...makeSafeLines(defs, state).slice(0, -1),
    // Whoever leaves in the ordinary way is in no trouble, and calls nobody.
    `IN TROUBLE ONLY. ${atTheEnd(defs.machine.site.emergency)}`,
    'ON RETURN',
    '   Everybody signs on anew. Look at each lock and at everything placed: others may have been here.',
    ...fallen.map((gate) => `   Proved again, whole, before anybody goes near: ${gate.step.title}.`),
  ]
}
