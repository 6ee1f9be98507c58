// How a job stands, in words: for lists of jobs, and for whoever looks back at one.
import { leftBehind } from '../job/as-left.ts'
import { openWords } from '../job/open-words.ts'
import { NOT_ENFORCED_BY } from '../job/paper.ts'
import { openStop, type State } from '../job/state.ts'

export function standingOf(state: State): string {
  return state.paper === null
    ? standingAlone(state)
    : `${standingAlone(state)}, from paper: ${NOT_ENFORCED_BY}`
}

function standingAlone(state: State): string {
  const { closed, fellFrom, fellBy, asLeft } = state
  if (closed !== null) {
    const end = `closed with ${fellFrom ?? closed}${asLeft === null ? '' : ` as found, ${leftBehind(asLeft)}`}`
    return fellFrom === null ? end : `${end}, fallen to ${closed}: ${fellBy.join(', ')} out of calibration`
  }
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
