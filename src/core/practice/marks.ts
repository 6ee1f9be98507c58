// How an answer in a practice session is marked: by skill, and safety apart.
import type { Definitions } from '../job/definitions.ts'
import type { Asked, PracticeState } from '../job/practice.ts'
import type { State } from '../job/state.ts'

export const SKILLS = ['safety', 'measuring', 'judging', 'diagnosing', 'recording'] as const
export type Skill = (typeof SKILLS)[number]

export interface Mark {
  readonly skill: Skill
  readonly isRight: boolean
}

export interface Lesson {
  /** Each thing that was right or wrong about the answer; empty: nothing to be graded. */
  readonly marks: readonly Mark[]
  /** It let people past a hold point, or kept them behind it, on false or missing evidence: the session is failed. */
  readonly isUnsafe: boolean
  /** A slip at a hold point that is not complete: it fails the session once the hold point is complete with it. */
  readonly isToMend?: true
  /** A figure that nobody measured: put right by one that is, it is a slip like one of the keys. */
  readonly isUnmeasured?: true
  /** What was marked before stands right now; its mark stays lost. */
  readonly isPutRight?: true
  readonly says: readonly string[]
}

export const right = (skill: Skill): Mark => ({ skill, isRight: true })
export const wrong = (skill: Skill): Mark => ({ skill, isRight: false })

/** Where an answer stands: the job with it, and what was asked of the machine for it. */
export interface Scene {
  readonly defs: Definitions
  /** After the entry. */
  readonly state: State
  readonly practice: PracticeState
  readonly asked: Asked | null
}
