// One digit alone where oxygen or a temperature is read, and of oxygen no figure that anybody can breathe: more likely the key of a choice than a figure. It is asked about once,
// and nothing of it opens anything: until a figure is on record the line is missing and its hold point is shut, and whatever is keyed
// second is judged like any other figure.
import { readingFrom } from '../job/admit-reading.ts'
import { asKind, type Definitions, gasLimitById, instrumentById } from '../job/definitions.ts'
import { doubtOf } from '../job/doubtful.ts'
import { judgeGas } from '../job/evidence-gas.ts'
import { isLittleOxygen } from '../job/little-oxygen.ts'
import type { Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { ask, type Heard, input } from './heard.ts'

export interface FigureSureAsk {
  readonly kind: 'figure-sure'
  readonly step: string
  readonly item: string
  readonly typed: string
}

/** Null where the line is taken as it stands, as all others are. */
export function sureOfFigure(defs: Definitions, state: State, prompt: Prompt, line: string): Heard | null {
  if (prompt.kind !== 'evidence' || !/^\d$/.test(line.trim())) return null
  const { evidence, key } = prompt.item
  const limit = evidence.kind === 'gas' ? gasLimitById(defs, evidence.limit) : undefined
  if (evidence.kind !== 'gas' || limit?.gas !== 'oxygen') return null
  const meter = instrumentById(defs, state.seats[evidence.with] ?? '')
  if (meter === undefined || meter.kind !== 'gas_meter') return null
  const judged = judgeGas(defs, evidence, meter, null, line)
  if (!judged.ok) return null
  const { outcome, reading } = judged.value
  if (outcome.kind !== 'fails' && !isLittleOxygen(defs, limit, reading.si)) return null
  return ask(
    { kind: 'figure-sure', step: prompt.gate.id, item: key, typed: line.trim() },
    `${line.trim()} %vol of oxygen: if ${meter.id} shows that, COME OUT AND STAND CLEAR now and key it from there.`,
    'Nothing was taken, and the hold point is shut. A figure is asked for here, not the number of a choice.',
  )
}

/** Null where the line is no lone digit, or is doubted anyway, which is a question of its own. */
export function sureOfTemperature(
  defs: Definitions,
  state: State,
  prompt: Prompt,
  line: string,
): Heard | null {
  if (prompt.kind !== 'read' || !/^[0-9]$/.test(line.trim())) return null
  const placed = asKind(prompt.step, 'read')
  if (placed.step.quantity !== 'temperature') return null
  const reading = readingFrom(defs, state, prompt.step, prompt.place.key, prompt.instrument, line)
  if (!reading.ok || doubtOf(defs, state, placed, reading.value) !== null) return null
  const digit = line.trim()
  return ask(
    { kind: 'places-sure', place: prompt.place.key, full: digit, places: 0, digit },
    `${digit}: nothing was taken yet. A temperature is asked for here, not the number of a choice.`,
  )
}

export function figureSureText({ typed }: FigureSureAsk): string {
  return `Oxygen as the meter shows it, in full; ${typed} once more if it is ${typed}`
}

/**
 * Whatever it is: a figure is judged, all else refused in the words of the hold point. Another lone digit than the first is no more
 * sure than that one was.
 */
export function hearFigureSure(question: FigureSureAsk, line: string): Heard {
  const { step, item, typed } = question
  const digit = line.trim()
  if (/^\d$/.test(digit) && digit !== typed)
    return ask({ ...question, typed: digit }, `${typed} before, ${digit} now: nothing was taken.`)
  return input({ do: 'evidence', step, item, typed: line })
}
