// What stands as shown at any hold point of a practice session and is not so: it is spoken of wherever somebody asks what to do, and at a STOP.
import type { Definitions } from '../job/definitions.ts'
import { gatesOf } from '../job/gate.ts'
import { keyLabel } from '../job/item-label.ts'
import type { State } from '../job/state.ts'
import { list } from '../lib/wording.ts'
import { falseLines } from './false-lines.ts'

/** `try start at hold point 2`, one for each hold point; none in any other job. */
export function falseProofs(defs: Definitions, state: State): readonly string[] {
  if (state.practice === null) return []
  return gatesOf(defs).flatMap((gate) => {
    const lines = falseLines(defs, state, gate).map((key) => keyLabel(defs, gate, key))
    return lines.length === 0 ? [] : [`${list(lines, 'and')} at hold point ${gate.number}`]
  })
}

/** What to do about them, in sentences; none where nothing is false. */
export function falseProofLines(defs: Definitions, state: State): readonly string[] {
  const told = falseProofs(defs, state)
  return told.length === 0
    ? []
    : [
        `FALSE: ${list(told, 'and')} stands as shown and is not so. Nothing is proved by it.`,
        'Take it back, by the word correct, or back while it is the last; then look, and key what is there.',
        'Where that cannot be keyed, say stop. A STOP is right as long as it stands.',
      ]
}
