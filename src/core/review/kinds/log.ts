// Whether the log itself can be trusted, as the disk tells it.

import type { Found } from '../exception.ts'
import { count, type Look } from '../look.ts'

export function faultsOfLog({ beside: { log } }: Look): Found[] {
  if (log.faults.length === 0) return []
  return [
    {
      kind: 'log',
      what: `THE LOG IS NOT SOUND: ${log.faults[0]}`,
      sentences: [...log.faults, 'Nothing below can be relied on until somebody knows how that came about.'],
      entries: [],
      open: true,
    },
  ]
}

/** Lines before it prove themselves, so it makes none of the rest doubtful; what it may have said is not known. */
export function unfinishedLine({ beside: { log } }: Look): Found[] {
  if (log.torn === null || log.torn === undefined) return []
  return [
    {
      kind: 'log',
      what: 'An unfinished last line: what it was to say is not known',
      sentences: [log.torn],
      entries: [],
      open: true,
      grave: 1,
    },
  ]
}

/** Heads the list where it is wrong and ends it where it is only unknown. */
export function notProvedWhole({ beside: { log } }: Look): Found[] {
  // A head that fits no line is a fault, told as one: it was given, and nothing more is to be asked for.
  if (log.whole === 'proved' || log.head === 'unlike') return []
  return [
    {
      kind: 'unproved',
      what:
        log.head === 'none'
          ? 'Not proved whole: no check number noted elsewhere was given'
          : 'Proved up to the check number that was given, and no farther',
      sentences: [
        ...log.checked,
        ...(log.head === 'none'
          ? [
              'A check number that was written down at a hand-over or at the end shows it: barover review JOB --head HASH.',
            ]
          : []),
      ],
      entries: [],
      open: false,
    },
  ]
}

export function strayFiles({ beside: { strays } }: Look): Found[] {
  if (strays.length === 0) return []
  return [
    {
      kind: 'unproved',
      what: `${count(strays.length, 'file')} beside the log on no record`,
      sentences: strays.map((stray) => `${stray}.`),
      entries: [],
      open: false,
    },
  ]
}
