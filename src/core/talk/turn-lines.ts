// What is told to whoever wants to turn the crank or take the block out: which sheet of this job does, if any, and what is on record of
// the block. Somebody else may have both arms in.
import type { Definitions } from '../job/definitions.ts'
import type { State } from '../job/state.ts'
import { list } from '../lib/wording.ts'
import { blockLines } from './plain-asked.ts'

/** More would push the question off a small screen. */
const MOST = 3

/** Of a sheet that has the crank turned: by its own words, as a procedure has no other mark of it. */
const TURNS =
  /\b(?:bar|bars|barred|turn|turns|turned|roll|rolled) (?:it |the \w+ |by \w+ |round |once )*(?:over|round|by hand)\b/i

export function turnLines(defs: Definitions, state: State): string[] {
  const sheets = defs.steps.flatMap(({ number, step }) =>
    step.kind !== 'gate' && TURNS.test(`${step.title} ${'text' in step ? (step.text ?? '') : ''}`)
      ? [`${number}, ${step.title}`]
      : [],
  )
  return [
    'The block stays in, and nobody turns the crank, unless the sheet that lies open says so: somebody may have both arms in.',
    sheets.length === 0
      ? 'No sheet of this job turns it or takes the block out.'
      : `It is turned at sheet ${list(sheets.slice(0, MOST), 'or')}${sheets.length > MOST ? ', and at some later ones' : ''}: everybody is counted clear there first.`,
    ...blockLines(defs, state),
  ]
}
