// Inspection points in words: their names, the word `notice`, and what is keyed at one.
import type { Point } from '../definition/procedure.ts'
import { type Definitions, type PlacedStep, stepById } from '../job/definitions.ts'
import { awaitingNotice, noticeRunsOutMs } from '../job/point.ts'
import type { State } from '../job/state.ts'
import { type Instant, stamp } from '../lib/instant.ts'
import { numberIn } from './correct.ts'
import { ask, type Heard, input, say, signing } from './heard.ts'

/** Never "hold point" alone: that is a gate. */
export const POINT_NAMES: Readonly<Record<Point['kind'], string>> = {
  hold: 'Inspection point: hold',
  witness: 'Inspection point: witness',
  review: 'Inspection point: review of records',
}

export type PointAsk =
  | { readonly kind: 'notice-which'; readonly steps: readonly string[] }
  | { readonly kind: 'notice-whom'; readonly step: string }

export const POINT_QUESTIONS: Readonly<Record<PointAsk['kind'], string>> = {
  'notice-which': 'For which point? Its number',
  'notice-whom': 'Whom did you tell just now, and how?',
}

export function notice(defs: Definitions, state: State): Heard {
  if (state.doer === null) return say('Sign on first.')
  const steps = awaitingNotice(defs, state)
  if (steps.length === 0) return say('No witness point waits for a notice.')
  return ask(
    { kind: 'notice-which', steps: steps.map((s) => s.id) },
    ...steps.map((s, i) => `${i + 1}  ${s.number} ${s.step.title}`),
  )
}

export function hearNotice(defs: Definitions, question: PointAsk, line: string): Heard {
  if (question.kind === 'notice-whom') return input({ do: 'give-notice', step: question.step, whom: line })
  const step = question.steps[numberIn(line) - 1]
  return step === undefined
    ? ask(question, `Key a number, 1 to ${question.steps.length}, or back.`)
    : ask({ kind: 'notice-whom', step }, `For ${stepById(defs, step).step.title}.`)
}

export function hearAtPoint(defs: Definitions, state: State, placed: PlacedStep, line: string): Heard {
  if (/^not attended$/i.test(line.trim())) return input({ do: 'not-attended', step: placed.id })
  return signing(defs, state, line, { do: 'sign-point', step: placed.id, person: line })
}

/** `Notice to M. Lind, by radio, runs until 2026-03-14 09:10.` */
export function noticeText(state: State, placed: PlacedStep): string {
  const given = state.notices[placed.id]
  const due = noticeRunsOutMs(state, placed)
  if (given === undefined || due === null) return 'No notice is on record. notice gives one.'
  return `Notice to ${given.whom} runs until ${momentText(state, due)}; then: not attended.`
}

function momentText(state: State, ms: number): string {
  const last: Pick<Instant, 'offsetMin'> = { offsetMin: offsetOf(state.lastAt) }
  return stamp({ ms, ...last })
    .slice(0, 16)
    .replace('T', ' ')
}

function offsetOf(at: string): number {
  const zone = /([+-])(\d{2}):(\d{2})$/.exec(at)
  if (zone === null) return 0
  return (zone[1] === '-' ? -1 : 1) * (Number(zone[2]) * 60 + Number(zone[3]))
}
