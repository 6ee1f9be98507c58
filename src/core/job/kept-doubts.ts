// Readings that were doubted and kept: they count like any other and change no verdict, so it is said beside it that they do.
import { type Reading, type State, stands } from './state.ts'

/** Those that stand, in the order they were taken. `among`: of these entries only; left out, of the whole job. */
export function keptDoubts(state: State, among?: readonly number[]): readonly Reading[] {
  const wanted = among === undefined ? null : new Set(among)
  return Object.values(state.readings)
    .flat()
    .filter((r) => stands(r) && r.keptBecause !== null && (wanted === null || wanted.has(r.seq)))
    .sort((a, b) => a.seq - b.seq)
}
