// A wait that has really gone by. It begins with an entry of its own, and its end counts from that entry alone: nobody's
// word says how long it was.

import type { EvidenceOf } from '../definition/evidence.ts'
import { leftWords } from '../lib/duration.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import type { Body } from './entries.ts'
import { type Asked, momentMs, spaced } from './evidence-asked.ts'
import { wordsGiven } from './evidence-words.ts'
import { gateState } from './gate.ts'
import type { Begun } from './state.ts'

/** When a wait that was begun is over. A length that is not above zero and finite never ends. */
export function waitEndsMs(wait: EvidenceOf<'wait'>, begun: Begun): number {
  const ms = wait.lasts.si * 1000
  return begun.atMs + (Number.isFinite(ms) && ms > 0 ? ms : Number.POSITIVE_INFINITY)
}

export function waitGiven(asked: Asked<'wait'>): Result<readonly Body[]> {
  const { state, gate, item, evidence, typed } = asked
  const begun = gateState(state, gate.id).begun[item.key]
  if (begun === undefined) {
    if (spaced(typed) === evidence.begin_words)
      return ok([{ type: 'wait.begun', step: gate.id, item: item.key, shown: evidence.begin_words }])
    return refuse('not-begun', `This wait has not begun: when it does, type ${evidence.begin_words} in full.`)
  }
  const left = waitEndsMs(evidence, begun) - momentMs(state)
  if (!(left <= 0)) {
    return refuse(
      'too-soon',
      `The wait of ${evidence.lasts.text} is not over, with ${leftWords(left)} left: type ${evidence.words} then, if it is so.`,
    )
  }
  return wordsGiven(asked, evidence.words)
}
