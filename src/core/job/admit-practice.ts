// What a practice session puts on record beside its job. None of it touches the job: no hold point, reading or verdict is made of it.
import { ok, type Result, refuse } from '../lib/result.ts'
import type { Definitions } from './definitions.ts'
import type { Body } from './entries.ts'
import { next } from './next.ts'
import type { PracticeBody } from './practice.ts'
import type { State } from './state.ts'

/** What was seen comes with the input: whoever asks the hidden machine knows it, and the job does not. */
export function admitPractice(defs: Definitions, state: State, body: PracticeBody): Result<readonly Body[]> {
  if (state.practice === null)
    return refuse('no-practice', 'That is for a practice session: here the machine itself is looked at.')
  const prompt = next(defs, state)
  if (body.type === 'practice.named' && state.practice.named !== null)
    return refuse('named', 'What was hidden was named already, and the first word counts.')
  if (body.type !== 'practice.called') return ok([body])
  if (prompt.kind !== 'judge' || prompt.step.id !== body.step)
    return refuse('not-asked', 'A verdict is decided when all its readings are in, and once.')
  return ok([body])
}

/** Whether the verdict of a judge step still waits for the trainee's own. */
export function waitsForCall({ practice }: State, step: string): boolean {
  return practice !== null && practice.called[step] === undefined
}

/** Whether the session still waits for what was hidden, all else being done. */
export function waitsForNaming({ practice }: State): boolean {
  return practice !== null && practice.named === null
}
