// Other jobs on the machine, in words: for the sheet, the hand-over and whoever asks what is open.
import {
  counts,
  type Doing,
  hazardNames,
  type JobSeen,
  jobName,
  jobNumber,
  openElsewhere,
} from './elsewhere.ts'
import type { State } from './state.ts'

/** `Job 3f2a: Opening a cylinder, TC-401-2`. The tag only once ours was read off the plate: it may be the same. */
export function otherTitle(state: State, other: JobSeen): string {
  const what = other.procedure === '' ? 'what it is cannot be read' : other.procedure
  const tag = state.machineNamed && other.tag !== '' ? `, ${other.tag}` : ''
  const kind = counts(state, other) ? '' : `${other.record} `
  return `${kind}job ${jobNumber(other.job)}: ${what}${tag}`
}

/** How it stands, a line each: who is on it, its hold points, a STOP, its last entry. */
export function otherStanding(state: State, other: JobSeen): string[] {
  const { people, left, inside, letting, stop, unread, placed = [] } = other
  if (other.closed !== null) return [`it has ended with ${other.closed}`]
  const who =
    people.length === 0 ? (left ? 'left, nobody on it' : 'nobody signed on') : `on it: ${people.join(', ')}`
  return [
    ...(unread === null ? [] : [`ITS LOG CANNOT BE READ: ${unread}`]),
    ...(stop === null ? [] : [`STOP IS OPEN IN IT: ${stop}`]),
    ...(other.written === ''
      ? []
      : [
          `${who}; last written ${other.written.slice(0, 10)} ${other.written.slice(11, 16)}, entry ${other.upTo}`,
        ]),
    ...(other.written === '' || unread !== null
      ? []
      : [
          inside.length === 0
            ? 'its hold points: nobody is let in'
            : `its hold points: people may be in, against ${hazardNames(inside)}`,
        ]),
    ...(letting === null
      ? []
      : [`it is at "${letting.step}", which can let in ${hazardNames(letting.hazards)}`]),
    ...placed.map((thing) => `IN THE MACHINE by it: ${thing}`),
    ...(counts(state, other)
      ? []
      : [`${other.record}: no record of the same kind, so neither voids the other`]),
    ...(other.told
      ? []
      : ['the two records do not tell whether it is the same machine, so it counts as the same']),
  ]
}

/** What it did that was not seen before. */
export function doingLine(doing: Doing): string {
  switch (doing.what) {
    case 'stop':
      return `STOP was called in it, entry ${doing.seq}`
    case 'let-in':
      return `${doing.step}, which can let in ${hazardNames(doing.hazards)}, entry ${doing.seq}`
    case 'removed':
      return `${doing.clause}, entry ${doing.seq}`
  }
}

/** All of them for a summary; empty when there is none. */
export function otherLines(state: State): string[] {
  return openElsewhere(state).map(
    (other) =>
      `Also open on this machine: ${otherTitle(state, other)}; ${otherStanding(state, other).join('; ')}`,
  )
}

/** Few words for the prompt, as the sheet is small. */
export function otherShort(state: State): string[] {
  const [first, ...more] = openElsewhere(state)
  if (first === undefined) return []
  return [
    `Also open on this machine: ${kindAnd(state, first, jobName(first))}${more.length === 0 ? '' : `, and ${more.length} more`}.`,
  ]
}

/** Said to whoever comes to the job, a line for each of the first few. */
export function otherArrival(state: State): string[] {
  const open = openElsewhere(state)
  const lines = open
    .slice(0, AT_ARRIVAL)
    .map(
      (one) =>
        `Also open on this machine: ${kindAnd(state, one, jobName(one))}${one.procedure === '' ? '' : `: ${one.procedure}`}`,
    )
  return open.length <= AT_ARRIVAL
    ? lines
    : [...lines, `and ${open.length - AT_ARRIVAL} more: the word open tells of all`]
}

const AT_ARRIVAL = 3

function kindAnd(state: State, other: JobSeen, text: string): string {
  return counts(state, other) ? text : `${other.record} ${text}`
}

/** What is never left out at a prompt: a STOP on the machine, and a log that nobody can read. `holds`: this job too. */
export function otherAlarms(state: State): { readonly text: string; readonly holds: boolean }[] {
  return openElsewhere(state).flatMap((other) => {
    const where = kindAnd(state, other, `job ${jobNumber(other.job)}`)
    const holds = counts(state, other)
    if (other.stop !== null) return [{ text: `STOP is open in ${where} on this machine.`, holds }]
    return other.unread === null
      ? []
      : [{ text: `The log of ${where}, on this machine for all that is known, cannot be read.`, holds }]
  })
}
