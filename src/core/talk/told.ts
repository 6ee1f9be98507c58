// What a line in plain words is told: who may come to harm first, then how the job stands, then what its papers say.
import type { Definitions } from '../job/definitions.ts'
import { openStop, type State } from '../job/state.ts'
import type { Instant } from '../lib/instant.ts'
import { answerLines } from './answer-asked.ts'
import { figureLines } from './figure-asked.ts'
import { hereAskedLines } from './here-asked.ts'
import { jobAskedLines } from './job-asked.ts'
import { type SafetyAsked, safetyAsked } from './safety-asked.ts'
import { safetyLines } from './safety-lines.ts'
import { sheetAskedLines } from './sheet-asked.ts'
import { standingAsked } from './standing-asked.ts'
import { whereLines } from './where.ts'

/** Who may come to harm, and how the job stands, is told from the job; everything else is looked up in its papers. */
export function answerTo(defs: Definitions, state: State, asked: string, now: Instant): string[] {
  return toldLines(defs, state, asked, now) ?? answerLines(defs, state, named(asked))
}

/** In the hand lies a gauge, where the papers would find HOLD and the hold point. */
const named = (asked: string) => asked.replace(/\bhold (?:it|this|that)\b/i, 'hold the gauge')

/** What no paper answers and the job itself does; harm comes first. Null: it is none of it. */
export function toldLines(defs: Definitions, state: State, asked: string, now: Instant): string[] | null {
  // Under a STOP it is that which is lifted, and no part.
  const safety = openStop(state) !== null && /\blift(?:s|ed)?\b/i.test(asked) ? 'release' : safetyAsked(asked)
  // Who is needed, or what a figure means, is asked of the sheet; who may do what, of the role.
  const own = OWN.includes(safety) ? ownLines(defs, state, asked) : null
  if (own !== null) return own
  if (safety !== null) return safetyLines(defs, state, safety, asked, now)
  const about = standingAsked(asked)
  if (about !== null) return whereLines(defs, state, now, about)
  return hereAskedLines(defs, state, asked, now) ?? jobAskedLines(defs, state, asked)
}

/** What may be asked of it too, where harm is heard in the words. */
const OWN: readonly (SafetyAsked | null)[] = [null, 'allowed', 'wrong']

/** Of the sheet that lies open, and of a figure that somebody reads. */
function ownLines(defs: Definitions, state: State, asked: string): string[] | null {
  const text = asked
    .trim()
    .replaceAll('\u2019', "'")
    .replace(/^ask[:,]? /i, '')
    .replace(/[\s?.!]+$/, '')
    .replace(/\s+/g, ' ')
  return figureLines(defs, state, text) ?? sheetAskedLines(defs, state, text)
}
