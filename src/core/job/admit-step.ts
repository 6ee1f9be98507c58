// Ordinary steps: told and done, seen, observed; and a lead's disposition of a verdict.
import type { Person } from '../definition/crew.ts'
import { ok, type Refusal, type Result, refuse } from '../lib/result.ts'
import { asKind, type Definitions, stepById } from './definitions.ts'
import type { Body } from './entries.ts'
import type { Input } from './input.ts'
import { next } from './next.ts'
import { notAsked, words } from './refusals.ts'
import { signer } from './signature.ts'
import type { State } from './state.ts'

type Of<K extends Input['do']> = Extract<Input, { do: K }>

export function admitStep(
  defs: Definitions,
  state: State,
  input: Of<'done'> | Of<'confirm'> | Of<'object'> | Of<'observe'>,
): Result<readonly Body[]> {
  const prompt = next(defs, state)
  const asked = input.do === 'done' ? 'tell' : input.do === 'observe' ? 'observe' : 'confirm'
  if (prompt.kind !== asked || prompt.step.id !== input.step) return notAsked()
  switch (input.do) {
    case 'done':
      return ok([{ type: 'step.done', step: input.step }])
    case 'confirm':
      return ok([{ type: 'step.confirmed', step: input.step }])
    case 'object': {
      const remark = words(input.remark, 'What you see')
      return remark.ok ? ok([{ type: 'step.objected', step: input.step, remark: remark.value }]) : remark
    }
    case 'observe':
      return observe(defs, input)
  }
}

function observe(defs: Definitions, input: Of<'observe'>): Result<readonly Body[]> {
  const { step } = asKind(stepById(defs, input.step), 'observe')
  const condition = step.conditions.find((c) => c.id === input.condition)
  if (condition === undefined)
    return refuse('unknown-condition', 'That is not one of the conditions listed: key its number.')
  const found = { type: 'finding.observed', step: input.step, condition: condition.id } as const
  if (input.note === undefined) {
    return condition.note === true
      ? refuse('no-words', 'This condition needs a note: say what you see and where.')
      : ok([found])
  }
  const note = words(input.note, 'The note')
  return note.ok ? ok([{ ...found, note: note.value }]) : note
}

/** What a lead may choose for a verdict: nothing that could not be judged is accepted by a plain word. */
export function dispositionsFor(verdict: string, choices: readonly string[]): string[] {
  return choices.filter((choice) => {
    if (verdict === 'HOLD') return choice !== 'accept'
    if (verdict === 'REWORK' || verdict === 'REPLACE') return choice !== 'accept' && choice !== 'hold'
    return choice !== 'hold'
  })
}

/** Who took the readings behind a verdict: also those who have handed the keyboard on since. */
export function readers(state: State, seqs: readonly number[]): Set<string | null> {
  const all = Object.values(state.readings).flat()
  return new Set(all.filter((r) => seqs.includes(r.seq)).map((r) => r.by))
}

export interface Disposable {
  /** Id of the judge step whose verdict is disposed of. */
  readonly about: string
  /** Seqs of the readings the verdict stands on. */
  readonly readings: readonly number[]
}

/** The verdict that is to be disposed of now, if this choice is open for it. */
export function disposable(
  defs: Definitions,
  state: State,
  input: { readonly step: string; readonly choice: string },
): Result<Disposable> {
  const prompt = next(defs, state)
  if (prompt.kind !== 'decide' || prompt.step.id !== input.step) return notAsked()
  const { step, scope } = asKind(prompt.step, 'decide')
  const about = scope + step.about
  const verdict = state.verdicts[about]
  if (verdict === undefined || verdict.void)
    return refuse('no-verdict', 'There is no standing verdict to dispose of.')
  if (!dispositionsFor(verdict.verdict.result.verdict, step.choices).includes(input.choice)) {
    return refuse(
      'choice',
      `That is not open for a verdict of ${verdict.verdict.result.verdict}: key one of the numbers.`,
    )
  }
  return ok({ about, readings: verdict.verdict.readings })
}

/** Why this person may not decide on what was read, or null. */
export function barsDeciding(state: State, person: Person, readings: readonly number[]): Refusal | null {
  if (person.role !== 'lead')
    return { code: 'not-lead', say: `${person.id} is a ${person.role}, and a disposition is a lead's.` }
  if (person.id !== state.doer && !readers(state, readings).has(person.id)) return null
  return { code: 'own-work', say: `${person.id} took the readings, so another lead decides on them.` }
}

export function admitDisposition(
  defs: Definitions,
  state: State,
  input: Of<'dispose'>,
): Result<readonly Body[]> {
  const asked = disposable(defs, state, input)
  if (!asked.ok) return asked
  const { about, readings } = asked.value
  const who = signer(defs, state, input)
  if (!who.ok) return who
  const { person, signed } = who.value
  const barred = barsDeciding(state, person, readings)
  if (barred !== null) return { ok: false, error: barred }
  const why = words(input.why, 'The reason')
  if (!why.ok) return why
  return ok([
    {
      type: 'disposition.set',
      step: input.step,
      about,
      choice: input.choice,
      why: why.value,
      person: person.id,
      signed,
    },
  ])
}
