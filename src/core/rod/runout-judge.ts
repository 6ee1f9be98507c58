// Judges a runout reading. Sideways against nought, up and down against what was reckoned for this machine; and only
// when the dial came back to zero, as a dial that did not has moved.

import { refuseUnsound } from '../bore/sound.ts'
import type { Result } from '../lib/result.ts'
import { holdJudgement, type Judgement, judgeAgainst } from '../metrology/conformity.ts'
import type { JudgeInput } from '../metrology/judge-input.ts'

export interface RunoutReading extends Omit<JudgeInput, 'value' | 'startsAt'> {
  readonly direction: 'vertical' | 'horizontal'
  /** Dial at half a turn from its zero, metres, signed. */
  readonly halfTurnM: number | null | undefined
  /** Dial when the turn is whole, metres, signed. */
  readonly fullTurnM: number | null | undefined
  /** How far from zero the dial may come back, metres: a figure of the site or the book. */
  readonly zeroReturnM: number | null | undefined
  /** Vertical only: what was reckoned, metres, signed by the same convention as the reading. */
  readonly expected?: Result<number> | null | undefined
  /** Vertical only: expanded uncertainty of what was reckoned. */
  readonly expectedU?: number | null | undefined
}

export interface RunoutVerdict {
  readonly judgement: Judgement
  /** Reading less what is expected, metres, signed; null when it cannot be said. */
  readonly deviationM: number | null
}

/**
 * |reading - expected| against the limit, with expected = 0 sideways and the reckoned value up and down; U of the
 * difference is sqrt(U reading2 + U expected2).
 * HOLD: a dial that was not read back, or did not come back; no reckoned value for a vertical reading; limits or
 * readings missing. A reading without a zero return is void and is not averaged with another.
 * Sources: zero return, Bloch & Hoefner 1996, p. 243-244; nought sideways and a calculated value up and down, each
 * within 0.00015 in per in of stroke, Compressor Handbook: Principles and Practice, p. 191. A second-hand quotation of
 * API 618 has the same 0.00015 at operating temperature and about no calculated value: the limit is the caller's.
 *
 * @example stroke 9 in, horizontal: limit 0.00135 in; vertical expected -0.0033, read -0.0030: off by 0.0003 in
 */
export function judgeRunout(input: RunoutReading): RunoutVerdict {
  const hold = runoutHold(input)
  if (hold !== null) return { judgement: holdJudgement([hold]), deviationM: null }
  const { direction, expected, ...reading } = input
  const isVertical = direction === 'vertical'
  const expectedM = isVertical && expected?.ok ? expected.value : 0
  const deviationM = (input.halfTurnM as number) - expectedM
  const expandedU = isVertical ? differenceU(input.expandedU, input.expectedU) : input.expandedU
  const judgement = judgeAgainst({
    value: Math.abs(deviationM),
    expandedU,
    k: reading.k,
    resolution: reading.resolution,
    limit: reading.limit,
    simpleAcceptance: reading.simpleAcceptance,
  })
  return { judgement, deviationM }
}

/** An unsound part makes the whole unsound, so that it is named and held, never lost in a root of squares. */
function differenceU(a: number | null | undefined, b: number | null | undefined): number | null {
  if (a === null || a === undefined || b === null || b === undefined) return null
  return a < 0 || b < 0 ? Number.NaN : Math.hypot(a, b)
}

function runoutHold(input: RunoutReading): string | null {
  const { direction, limit, expected } = input
  if (direction !== 'vertical' && direction !== 'horizontal')
    return 'it is not said which way the runout was read'
  if (limit && limit.characteristic !== `runout-${direction}`)
    return `the limit on record is for ${limit.characteristic}, not for runout-${direction}`
  if (limit && limit.bound !== 'at-most') return 'the limit on record does not bound from above'
  const fault =
    refuseUnsound(
      { 'dial at half a turn': input.halfTurnM, 'dial at the full turn': input.fullTurnM },
      'any',
    ) ?? refuseUnsound({ 'allowance for the zero return': input.zeroReturnM }, 'zero or more')
  if (fault !== null) return fault.error.say
  if (Math.abs(input.fullTurnM as number) > (input.zeroReturnM as number) + 1e-9)
    return 'the dial did not come back to zero: the reading is void, set the dial again and bar a full turn'
  if (direction === 'horizontal') return null
  if (expected === null || expected === undefined)
    return 'the vertical runout to expect was not reckoned: a vertical reading is not judged against nought'
  if (!expected.ok) return expected.error.say
  return Number.isFinite(expected.value) ? null : 'the vertical runout to expect is not a number'
}
