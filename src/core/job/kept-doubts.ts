// Readings that were doubted and kept: they count like any other and change no verdict, so it is said beside it that they do.
import { asKind, type Definitions, stepById } from './definitions.ts'
import { doubtOfCorrection } from './doubtful.ts'
import { type Reading, type State, stands } from './state.ts'

/** Those that stand, in the order they were taken. `among`: of these entries only; left out, of the whole job. */
export function keptDoubts(defs: Definitions, state: State, among?: readonly number[]): readonly Reading[] {
  const wanted = among === undefined ? null : new Set(among)
  return Object.values(state.readings)
    .flat()
    .filter((r) => stands(r) && r.keptBecause !== null && (wanted === null || wanted.has(r.seq)))
    .filter((r) => r.corrects === null || isDoubtedYet(defs, state, r))
    .sort((a, b) => a.seq - b.seq)
}

/** A correction was doubted beside another figure; once that one is put right too, nothing speaks against it. */
function isDoubtedYet(defs: Definitions, state: State, reading: Reading): boolean {
  const placed = asKind(stepById(defs, reading.step), 'read')
  return doubtOfCorrection(defs, state, placed, reading) !== null
}
