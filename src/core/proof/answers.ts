// Every class of answer that can be given at a prompt, one of each: what the engine's rules can tell apart.

import { findReading, lastReopenable } from '../job/admit-change.ts'
import { dispositionsFor } from '../job/admit-step.ts'
import { asKind, type Definitions, gasLimitById, instrumentById } from '../job/definitions.ts'
import { GAS_UNITS } from '../job/gas.ts'
import type { Input } from '../job/input.ts'
import { next, type Prompt } from '../job/next.ts'
import { type State, standing } from '../job/state.ts'
import { formatNumber, fromSi, valueIn } from '../units/index.ts'

export interface Answer {
  readonly says: string
  readonly input: Input
}

const WHY = 'because it is so'

export function answersAt(defs: Definitions, state: State): Answer[] {
  const prompt = next(defs, state)
  return [...atPrompt(defs, state, prompt), ...changes(defs, state)]
}

function people(defs: Definitions): string[] {
  return defs.crew.crew.map((p) => p.id)
}

function atPrompt(defs: Definitions, state: State, prompt: Prompt): Answer[] {
  const one = (says: string, input: Input): Answer => ({ says, input })
  switch (prompt.kind) {
    case 'sign-on':
      return people(defs).map((person) => one(person, { do: 'sign-on', person }))
    case 'tag':
      return [
        one(defs.machine.machine, { do: 'name-machine', typed: defs.machine.machine }),
        one('another tag', { do: 'name-machine', typed: 'X' }),
      ]
    case 'pick':
      return prompt.options.map((i) => one(i.id, { do: 'pick', seat: prompt.seat.id, instrument: i.id }))
    case 'clear':
      return [
        one(prompt.gate.step.clear_words, {
          do: 'clear',
          step: prompt.gate.id,
          typed: prompt.gate.step.clear_words,
        }),
        one('y', { do: 'clear', step: prompt.gate.id, typed: 'y' }),
      ]
    case 'evidence':
      return evidenceAnswers(defs, prompt).map((typed) =>
        one(typed === '' ? '(Enter)' : typed, {
          do: 'evidence',
          step: prompt.gate.id,
          item: prompt.item.key,
          typed,
        }),
      )
    case 'doubt':
      return [
        one('1', { do: 'settle-doubt', choice: 'again' }),
        one('3', { do: 'settle-doubt', choice: 'kept', why: WHY }),
      ]
    case 'late':
      return [one('1', { do: 'settle-late', kept: true }), one('2', { do: 'settle-late', kept: false })]
    case 'tell':
      return [one('(Enter)', { do: 'done', step: prompt.step.id })]
    case 'confirm':
      return [
        one('1', { do: 'confirm', step: prompt.step.id }),
        one('2', { do: 'object', step: prompt.step.id, remark: WHY }),
      ]
    case 'observe':
      return asKind(prompt.step, 'observe').step.conditions.map((c) =>
        one(c.id, { do: 'observe', step: prompt.step.id, condition: c.id, note: WHY }),
      )
    case 'read':
      return readAnswers(defs, state, prompt)
    case 'decide': {
      const { step, scope } = asKind(prompt.step, 'decide')
      const verdict = state.verdicts[scope + step.about]?.verdict.result.verdict ?? 'HOLD'
      return dispositionsFor(verdict, step.choices).flatMap((choice) =>
        people(defs).map((person) =>
          one(`${choice} by ${person}`, { do: 'dispose', step: prompt.step.id, choice, person, why: WHY }),
        ),
      )
    }
    case 'stop-cause':
      return [one(WHY, { do: 'explain-stop', why: WHY })]
    case 'stopped':
      return people(defs).map((person) =>
        one(`release by ${person}`, { do: 'release-stop', person, answer: WHY }),
      )
    case 'held':
    case 'closed':
    case 'judge':
    case 'finish':
      return []
  }
}

function evidenceAnswers(defs: Definitions, prompt: Extract<Prompt, { kind: 'evidence' }>): string[] {
  const { evidence, key } = prompt.item
  switch (evidence.kind) {
    case 'locks':
      // A number of its own for each point, and one that hangs at another point already.
      return ['', 'y', `L-${key.length}${[...key].reduce((sum, c) => sum + c.charCodeAt(0), 0)}`, 'L-1']
    case 'words':
      return ['', 'y', evidence.words]
    case 'witness':
      return ['', 'y', ...people(defs)]
    case 'gas': {
      const limit = gasLimitById(defs, evidence.limit)
      if (limit === undefined) return ['0', '20.9', 'y']
      const unit = GAS_UNITS[limit.gas]
      const edges = [limit.at_least?.si, limit.at_most?.si].filter((si) => si !== undefined)
      const kind = limit.gas === 'flammable' ? ('lel-fraction' as const) : ('concentration' as const)
      const typed = (si: number) => formatNumber(valueIn(fromSi(kind, si), unit), 6).replace(/\.?0+$/, '')
      const mean = edges.reduce((sum, si) => sum + si, 0) / Math.max(1, edges.length)
      // Inside, on each edge, outside each edge, and the low oxygen in which some meters are blind.
      return [
        '',
        'y',
        'nan',
        ...new Set([
          typed(mean),
          '0',
          ...edges.flatMap((si) => [typed(si), typed(si * 1.01), typed(si * 0.99)]),
        ]),
      ]
    }
  }
}

function readAnswers(defs: Definitions, state: State, prompt: Extract<Prompt, { kind: 'read' }>): Answer[] {
  const { step } = asKind(prompt.step, 'read')
  const instrument = instrumentById(defs, prompt.instrument)
  if (instrument === undefined || instrument.kind === 'gas_meter') return []
  const kind = step.quantity
  const typed = (si: number) => formatNumber(valueIn(fromSi(kind, si), instrument.unit), 5)
  const base = baseline(defs, prompt)
  const last = standing(state, prompt.place.key)[0]?.si ?? base
  const apart = step.repeats.within.si * 3
  const read = (says: string, text: string): Answer => ({
    says,
    input: { do: 'read', place: prompt.place.key, typed: text },
  })
  return [
    read('a reading', typed(last)),
    read(
      'a reading far from the others',
      typed(last + apart * (1 + standing(state, prompt.place.key).length)),
    ),
    read('a reading that cannot be', typed(kind === 'length' ? base * 2 : base + 500)),
    { says: 'n/a', input: { do: 'not-applicable', place: prompt.place.key, why: WHY } },
  ]
}

/** A believable value for the step, SI. */
function baseline(defs: Definitions, prompt: Extract<Prompt, { kind: 'read' }>): number {
  const { plausible } = asKind(prompt.step, 'read').step
  if (plausible.from === 'range') return (plausible.least.si + plausible.most.si) / 2
  if (plausible.from === 'nominal') return defs.machine.bore.nominal.si
  if (plausible.from === 'counterbore')
    return defs.machine.bore.counterbore?.si ?? defs.machine.bore.nominal.si
  const instrument = instrumentById(defs, prompt.instrument)
  return instrument !== undefined && 'set_check' in instrument
    ? instrument.set_check.size.si
    : defs.machine.bore.nominal.si
}

/** Corrections and going back, where they are open. */
function changes(defs: Definitions, state: State): Answer[] {
  const answers: Answer[] = []
  const reopen = lastReopenable(defs, state)
  if (reopen !== null) answers.push({ says: 'back', input: { do: 'reopen', step: reopen.id, why: WHY } })
  const seqs = Object.values(state.readings)
    .flat()
    .filter((r) => r.correctedBy === null)
    .map((r) => r.seq)
  for (const seq of [Math.min(...seqs), Math.max(...seqs)]) {
    const reading = Number.isFinite(seq) ? findReading(state, seq) : null
    if (reading !== null)
      answers.push({
        says: 'correct',
        input: { do: 'correct', of: seq, typed: `${reading.value} ${reading.unit}`, why: WHY },
      })
  }
  return answers
}
