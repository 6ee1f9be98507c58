// What can be put right, and the questions on the way: readings, places entered as n/a, findings, evidence of hold points.
// Before anything happens it is said what would become void.
import { fallsWithItem, findReading, isPending } from '../job/admit-change.ts'
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import { gateState, gatesOf } from '../job/gate.ts'
import { keyLabel } from '../job/item-label.ts'
import { openStop, type State, stands } from '../job/state.ts'
import { ask, type Heard, input, say, voidWarning } from './heard.ts'
import { placeName, placeNumber, readingText } from './names.ts'

export type Correctable =
  | { readonly kind: 'reading'; readonly seq: number; readonly text: string }
  | { readonly kind: 'not-applicable'; readonly place: string; readonly text: string }
  | { readonly kind: 'finding'; readonly step: string; readonly text: string }
  | { readonly kind: 'evidence'; readonly step: string; readonly item: string; readonly text: string }

export type CorrectAsk =
  | { readonly kind: 'correct-which'; readonly items: readonly Correctable[] }
  | { readonly kind: 'correct-value'; readonly of: number }
  | { readonly kind: 'correct-why'; readonly of: number; readonly typed: string }
  | { readonly kind: 'take-back-why'; readonly place: string }
  | { readonly kind: 'finding-which'; readonly step: string }
  | { readonly kind: 'finding-changed-note'; readonly step: string; readonly condition: string }
  | {
      readonly kind: 'finding-why'
      readonly step: string
      readonly condition: string
      readonly note?: string
    }
  | { readonly kind: 'evidence-why'; readonly step: string; readonly item: string }

/** Readings that stand, in the order they were taken. */
export function standingReadings(
  defs: Definitions,
  state: State,
): Extract<Correctable, { kind: 'reading' }>[] {
  return Object.values(state.readings)
    .flat()
    .filter(stands)
    .sort((a, b) => a.seq - b.seq)
    .map((r) => ({
      kind: 'reading',
      seq: r.seq,
      text: `${placeNumber(defs, r.step, r.place)} ${placeName(defs, r.step, r.place)}: ${readingText(defs, r)}`,
    }))
}

/** Readings first, then places entered as n/a, findings, and what was shown for hold points. */
export function correctable(defs: Definitions, state: State): Correctable[] {
  const places = Object.keys(state.notApplicable).map((place): Correctable => {
    const step = place.split('.')[0] ?? ''
    const text = `${placeNumber(defs, step, place)} ${placeName(defs, step, place)}: n/a`
    return { kind: 'not-applicable', place, text }
  })
  const findings = defs.steps.flatMap(({ id, step, number }): Correctable[] => {
    const seen = state.done[id]
    if (step.kind !== 'observe' || seen === undefined) return []
    const label = step.conditions.find((c) => c.id === seen)?.label ?? seen
    return [{ kind: 'finding', step: id, text: `${number} ${step.title}: ${label}` }]
  })
  const shown = gatesOf(defs).flatMap((gate) =>
    Object.entries(gateState(state, gate.id).given).map(
      ([item, g]): Correctable => ({
        kind: 'evidence',
        step: gate.id,
        item,
        text: `${gate.number} ${keyLabel(defs, gate, item)}: ${g.shown}`,
      }),
    ),
  )
  return [...standingReadings(defs, state), ...places, ...findings, ...shown]
}

/** Why nothing that was said before can be changed now, before anything is asked for it; null where it can. */
export function whyNoChange(state: State): string | null {
  return openStop(state) === null ? null : 'STOP is open: nothing is changed until it is released.'
}

/** Why no reading or step is changed while a reading waits; evidence and findings may be. Null where none waits. */
export function whySettleFirst(state: State): string | null {
  if (!isPending(state)) return null
  return `A reading waits: say first what becomes of it, where it is asked. ${state.late === null ? 1 : 2} is to measure it again.`
}

export function correct(defs: Definitions, state: State): Heard {
  const no = whyNoChange(state)
  if (no !== null) return say(no)
  const settle = whySettleFirst(state)
  const items = correctable(defs, state).filter(
    ({ kind }) => settle === null || kind === 'evidence' || kind === 'finding',
  )
  if (items.length === 0) return say(settle ?? 'There is nothing to correct yet.')
  return ask(
    { kind: 'correct-which', items },
    ...items.map((r, i) => `${String(i + 1).padStart(2)} ${r.text}`),
  )
}

export function hearCorrection(defs: Definitions, state: State, question: CorrectAsk, line: string): Heard {
  switch (question.kind) {
    case 'correct-which': {
      const item = question.items[numberIn(line) - 1]
      return item === undefined
        ? ask(question, `Key a number, 1 to ${question.items.length}, or back.`)
        : correctOne(defs, state, item)
    }
    case 'correct-value':
      return ask({ kind: 'correct-why', of: question.of, typed: line })
    case 'correct-why':
      return input({ do: 'correct', of: question.of, typed: question.typed, why: line })
    case 'take-back-why':
      return input({ do: 'take-back-not-applicable', place: question.place, why: line })
    case 'finding-which': {
      const { conditions } = asKind(stepById(defs, question.step), 'observe').step
      const picked = conditions[numberIn(line) - 1]
      if (picked === undefined) return ask(question, `Key a number, 1 to ${conditions.length}, or back.`)
      const { step } = question
      return picked.note === true
        ? ask({ kind: 'finding-changed-note', step, condition: picked.id })
        : ask({ kind: 'finding-why', step, condition: picked.id })
    }
    case 'finding-changed-note':
      return ask({ ...question, kind: 'finding-why', note: line })
    case 'finding-why': {
      const { kind: _kind, ...rest } = question
      return input({ do: 'correct-finding', ...rest, why: line })
    }
    case 'evidence-why':
      return input({ do: 'take-back-evidence', step: question.step, item: question.item, why: line })
  }
}

function correctOne(defs: Definitions, state: State, item: Correctable): Heard {
  switch (item.kind) {
    case 'reading': {
      const reading = findReading(state, item.seq)
      return ask(
        { kind: 'correct-value', of: item.seq },
        ...(reading === null ? [] : voidWarning(defs, state, reading.step)),
      )
    }
    case 'not-applicable':
      return ask(
        { kind: 'take-back-why', place: item.place },
        ...voidWarning(defs, state, item.place.split('.')[0] ?? ''),
        'Its reading is asked again.',
      )
    case 'finding': {
      const { conditions } = asKind(stepById(defs, item.step), 'observe').step
      return ask(
        { kind: 'finding-which', step: item.step },
        ...voidWarning(defs, state, item.step),
        ...conditions.map((c, i) => `${i + 1}  ${c.label}`),
      )
    }
    case 'evidence':
      return ask(
        { kind: 'evidence-why', step: item.step, item: item.item },
        ...evidenceWarning(defs, state, item),
      )
  }
}

function evidenceWarning(
  defs: Definitions,
  state: State,
  { step, item }: Extract<Correctable, { kind: 'evidence' }>,
): string[] {
  const gate = asKind(stepById(defs, step), 'gate')
  const falls = fallsWithItem(defs, state, step, item)
  return [
    `The hold point would fall, and everybody comes out. This would make void: ${falls.map((key) => keyLabel(defs, gate, key)).join('; ')}.`,
  ]
}

/** The number keyed, or 0. */
export function numberIn(line: string): number {
  return /^\d{1,3}$/.test(line.trim()) ? Number(line.trim()) : 0
}
