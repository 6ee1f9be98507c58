// What a line in plain words is told: who may come to harm first, then how the job stands, then what its papers say.
import type { Definitions } from '../job/definitions.ts'
import { openStop, type State } from '../job/state.ts'
import type { Instant } from '../lib/instant.ts'
import { NOTHING_FOUND, quotedLines } from './answer-asked.ts'
import { depthLines } from './depth-asked.ts'
import { errorAskedLines } from './error-asked.ts'
import { figureLines } from './figure-asked.ts'
import { hereAskedLines } from './here-asked.ts'
import { howAskedLines } from './how-asked.ts'
import { jobAskedLines } from './job-asked.ts'
import { lastAskedLines } from './last-asked.ts'
import { limitsAskedLines } from './limits-asked.ts'
import { lockAskedLines } from './lock-asked.ts'
import { goodGasLines, mayAskedLines } from './may-asked.ts'
import { meterAskedLines } from './meter-asked.ts'
import { noLockLines } from './no-lock-asked.ts'
import { othersAskedLines } from './others-asked.ts'
import { readingFateLines } from './reading-fate.ts'
import { readingsLeftLines } from './readings-left.ts'
import { resultAskedLines } from './result-asked.ts'
import { runOnLines, wrongPlateLines } from './run-on-asked.ts'
import { type SafetyAsked, safetyAsked } from './safety-asked.ts'
import { SEES_NOTHING, safetyLines } from './safety-lines.ts'
import { sheetAskedLines } from './sheet-asked.ts'
import { sheetFateLines } from './sheet-fate.ts'
import { bare, heardAs, openerMended } from './slips-in.ts'
import { standingAsked } from './standing-asked.ts'
import { lifeBefore, timeAskedLines } from './time-asked.ts'
import { verdictAskedLines } from './verdict-asked.ts'
import { whereLines } from './where.ts'
import { whyAskedLines } from './why-asked.ts'
import { wordAskedLines } from './word-asked.ts'

/** Who may come to harm, and how the job stands, is told from the job; everything else is looked up in its papers. */
export function answerTo(defs: Definitions, state: State, asked: string, now: Instant): string[] {
  return toldLines(defs, state, asked, now) ?? papersLines(defs, state, asked)
}

/** As it was keyed, with its slips put right, or, of what somebody would rather not do, as the question why it is done. */
function papersLines(defs: Definitions, state: State, asked: string): string[] {
  const heard = heardAs(defs, asked)
  const why = heard.replace(UNWILLING, 'why ')
  const ways = [named(asked), named(heard), ...(why === heard ? [] : [why])]
  for (const way of ways) {
    const found = quotedLines(defs, state, way)
    if (found !== null) return found
  }
  return [NOTHING_FOUND]
}

const UNWILLING =
  /^(?:do|must|should|shall) (?:i|we) (?:really |still |always )?(?:have to |need to |got to )?/

/** In the hand lies a gauge, where the papers would find HOLD and the hold point; what counts as a thing is what it is. */
const named = (asked: string) =>
  openerMended(asked)
    .replace(/\bhold (?:it|this|that)\b/i, 'hold the gauge')
    .replace(/^what (?:counts|goes|passes) as\b/i, 'what is')

/** What no paper answers and the job itself does; harm comes first. Null: it is none of it. */
export function toldLines(defs: Definitions, state: State, asked: string, now: Instant): string[] | null {
  // Under a STOP it is that which is lifted, and no part.
  const safety = openStop(state) !== null && /\blift(?:s|ed)?\b/i.test(asked) ? 'release' : safetyAsked(asked)
  // Longer lines are no questions, and are not held against each pattern.
  const text = asked.length > LONGEST ? '' : heardAs(defs, asked)
  // A plate that bears another tag is told with the hazard and the hold points, as going on at it is.
  const plate = ANY_HARM.includes(safety) ? wrongPlateLines(defs, state, text, now) : null
  if (plate !== null) return plate
  // At a decision, who witnessed is asked of what was done.
  const decided = safety === 'witness' ? verdictAskedLines(defs, state, text) : null
  if (decided !== null) return decided
  // Who is needed, or what a figure means, is asked of the sheet; who may do what, of the role.
  const isOwn =
    OWN.includes(safety) ||
    (safety === 'now' && MAY_NOW.test(text)) ||
    (safety === 'missing' && OF_SHEET.test(text))
  // A limit that is asked for is told, beside what no limit is.
  const gas = safety === 'safe' ? goodGasLines(defs, state, text, now) : null
  if (gas !== null) return [SEES_NOTHING, ...gas]
  const own = isOwn ? ownLines(defs, state, asked, text, now) : null
  if (own !== null) return own
  // How far in is asked by whoever is about to: both are told.
  const depth = safety === 'hands' ? depthLines(defs, state, text) : null
  if (safety !== null) return [...(depth ?? []), ...safetyLines(defs, state, safety, asked, now)]
  const about = standingAsked(text === '' ? asked : text)
  if (about !== null)
    return [...whereLines(defs, state, now, about), ...(about === 'lapse' ? lifeBefore(defs, state) : [])]
  return hereAskedLines(defs, state, asked, now) ?? jobAskedLines(defs, state, asked)
}

/** Characters of a question that is told from the job. */
const LONGEST = 240

/** What may be asked of it too, where harm is heard in the words. */
const OWN: readonly (SafetyAsked | null)[] = [null, 'allowed', 'wrong']
/** What can be done now: with the hold points as they stand. */
const MAY_NOW = /^what can (?:i|we)\b/
/** It is no thing of the work that is missed. */
const OF_SHEET = /\b(?:sheet|step|page) ?\d/
const ANY_HARM: readonly (SafetyAsked | null)[] = [...OWN, 'hands', 'safe', 'missing', 'now']

/** Of the sheet that lies open, and of a figure that somebody reads. `text`: with its slips put right. */
function ownLines(
  defs: Definitions,
  state: State,
  asked: string,
  text: string,
  now: Instant,
): string[] | null {
  const keyed = bare(asked)
  const lines =
    figureLines(defs, state, keyed) ??
    figureLines(defs, state, text) ??
    resultAskedLines(defs, state, text) ??
    whyAskedLines(defs, state, text, now) ??
    mayAskedLines(defs, state, text, now) ??
    lastAskedLines(defs, state, text) ??
    sheetFateLines(defs, state, text, now) ??
    depthLines(defs, state, text) ??
    lockAskedLines(defs, state, text, now) ??
    noLockLines(defs, state, text, now) ??
    othersAskedLines(defs, state, text, now) ??
    timeAskedLines(defs, state, text, now) ??
    meterAskedLines(defs, state, text, now) ??
    readingFateLines(defs, state, text, now) ??
    verdictAskedLines(defs, state, text) ??
    errorAskedLines(defs, state, text) ??
    limitsAskedLines(defs, state, text) ??
    wordAskedLines(defs, state, text, now) ??
    // As keyed, where nothing was put right: it may be quoted back.
    sheetAskedLines(defs, state, text === keyed.toLowerCase() ? keyed : text) ??
    readingsLeftLines(defs, state, text) ??
    runOnLines(defs, state, text, now) ??
    howAskedLines(defs, state, text, now)
  // Until the plate was read its tag is nowhere on screen, so that nobody copies it from here. Whom to call is never held back.
  const tag = defs.machine.machine.toLowerCase()
  return state.machineNamed || lines === null
    ? lines
    : lines.filter((line) => line.startsWith('Call:') || !line.toLowerCase().includes(tag))
}
