// How a job stands, in words: for lists of jobs, and for whoever looks back at one.
import { openWords } from '../job/open-words.ts'
import { openStop, type State } from '../job/state.ts'

export function standingOf(state: State): string {
  if (state.fellFrom !== null)
    return `closed with ${state.fellFrom}, fallen to ${state.closed}: ${Object.keys(state.doubted).join(', ')} out of calibration`
  if (state.closed !== null && state.asLeft !== null)
    return `closed with ${state.closed} as found, ${state.asLeft} as left`
  if (state.closed !== null) return `closed with ${state.closed}`
  return openStop(state) === null ? openStanding(state) : 'open, under STOP'
}

function openStanding(state: State): string {
  const open = openWords(state).length
  return open === 0 ? 'open' : `open, ${radioOpen(open)}`
}

/** `1 word by radio to countersign`. */
export function radioOpen(count: number): string {
  return `${count} ${count === 1 ? 'word' : 'words'} by radio to countersign`
}
