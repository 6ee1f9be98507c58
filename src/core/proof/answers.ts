// Every class of answer that can be given at a prompt, one of each: what the engine's rules can tell apart.
import { dispositionsFor } from '../job/admit-disposition.ts'
import { asKind, type Definitions, gasLimitById, type PlacedStep } from '../job/definitions.ts'
import { inspectedWords, itemsOf } from '../job/gate.ts'
import type { Input, PlacedAt } from '../job/input.ts'
import type { Prompt } from '../job/next.ts'
import { placesOfStep } from '../job/register.ts'
import { type State, standing } from '../job/state.ts'
import { openStops, STOP_CAUSES } from '../job/stop-causes.ts'
import { assertNever } from '../lib/result.ts'
import { formatNumber } from '../units/index.ts'
import { gasFigures, measuredFigures, readingsFor } from './figures.ts'
import { wordClasses } from './words.ts'

export interface Answer {
  readonly says: string
  readonly input: Input
}

export const WHY = 'because it is so'

/** What can be answered at the prompt: right, wrong, blank, a bare y, each edge, by a person of each role. */
export function answersAt(defs: Definitions, state: State, prompt: Prompt): Answer[] {
  switch (prompt.kind) {
    case 'sign-on':
      return people(defs, state).flatMap((person) => [
        { says: `${person} signs on`, input: { do: 'sign-on', person, proved: true } },
        { says: `${person} signs on without a PIN`, input: { do: 'sign-on', person } },
      ])
    case 'tag':
      return [
        { says: defs.machine.machine, input: { do: 'name-machine', typed: defs.machine.machine } },
        { says: 'another tag', input: { do: 'name-machine', typed: 'X' } },
      ]
    case 'pick':
      return prompt.options.map(({ id }) => ({
        says: id,
        input: { do: 'pick', seat: prompt.seat.id, instrument: id },
      }))
    case 'clear':
      return [prompt.gate.step.clear_words, 'y', ''].map((typed) => ({
        says: shown(typed),
        input: { do: 'clear', step: prompt.gate.id, typed },
      }))
    case 'evidence':
      return evidenceAnswers(defs, state, prompt)
    case 'doubt':
      return [
        { says: 'measure again', input: { do: 'settle-doubt', choice: 'again' } },
        { says: 'mistyped', input: { do: 'settle-doubt', choice: 'mistyped' } },
        { says: 'keep it', input: { do: 'settle-doubt', choice: 'kept', why: WHY } },
        { says: 'keep it, no reason', input: { do: 'settle-doubt', choice: 'kept', why: '' } },
        { says: 'n/a', input: { do: 'not-applicable', place: prompt.doubt.place, why: WHY } },
      ]
    case 'late':
      return [
        { says: 'it was taken in time', input: { do: 'settle-late', kept: true } },
        { says: 'leave it out', input: { do: 'settle-late', kept: false } },
      ]
    case 'tell':
      return [{ says: '(Enter)', input: { do: 'done', step: prompt.step.id, placed: placedAt(prompt.step) } }]
    case 'confirm':
      return [
        { says: 'seen', input: { do: 'confirm', step: prompt.step.id, placed: placedAt(prompt.step) } },
        { says: 'not so', input: { do: 'object', step: prompt.step.id, remark: WHY } },
      ]
    case 'observe':
      return wordClasses(defs, prompt.step).examples.map((condition) => ({
        says: condition,
        input: { do: 'observe', step: prompt.step.id, condition, note: WHY },
      }))
    case 'read':
      return readAnswers(defs, state, prompt)
    case 'decide':
      return decideAnswers(defs, state, prompt.step)
    case 'stop-cause':
      return causes(defs, state, prompt.stop.seq)
    case 'point':
    case 'review':
      return [
        ...people(defs, state).map(
          (person): Answer => ({
            says: `signed by ${person}`,
            input: { do: 'sign-point', step: prompt.step.id, person, proved: true },
          }),
        ),
        { says: 'not attended', input: { do: 'not-attended', step: prompt.step.id } },
      ]
    case 'open-things':
      return people(defs, state).flatMap((person): Answer[] => [
        { says: `handed on by ${person}`, input: { do: 'hand-on', to: WHY, person, proved: true } },
        ...prompt.things.map(
          ({ seq: of }): Answer => ({
            says: `accounted for by ${person}`,
            input: { do: 'account', of, person, proved: true },
          }),
        ),
      ])
    case 'stopped':
      return people(defs, state).flatMap((person) => [
        { says: `release by ${person}`, input: { do: 'release-stop', person, proved: true, answer: WHY } },
        { says: `release by ${person}, no PIN`, input: { do: 'release-stop', person, answer: WHY } },
        { says: `${person} ends the job`, input: { do: 'close-stopped', first: WHY, person, proved: true } },
      ])
    case 'countersign':
      return people(defs, state).flatMap((person) =>
        [true, false].map((agrees) => ({
          says: `${person} ${agrees ? 'signs for it' : 'did not say so'}`,
          input: { do: 'countersign', agrees, person, proved: true },
        })),
      )
    // Where nobody is sent any more: the search leaves it out (findings.ts).
    case 'findings':
    case 'held':
    case 'closed':
    case 'judge':
    case 'finish':
      return []
    case 'sheet':
    case 'sheet-doubt':
    case 'sheet-sign':
      return []
    default:
      return assertNever(prompt)
  }
}

const shown = (typed: string) => (typed === '' ? '(Enter)' : typed)

/** Every thing that the step places, somewhere. */
function placedAt({ step, scope }: PlacedStep): PlacedAt[] {
  return placesOfStep(step).map(({ id }) => ({ id: scope + id, where: WHY, number: null }))
}

/** A cause that is released and one that never is, called by nobody known, a mechanic and a lead; and no words. */
function causes(defs: Definitions, state: State, of: number): Answer[] {
  const callers = people(defs, state).filter((id) =>
    defs.crew.crew.some((p) => p.id === id && p.role !== 'trainee'),
  )
  const kinds = [true, false].flatMap((may) => STOP_CAUSES.find((c) => c.releasable === may)?.id ?? [])
  return [
    ...kinds.flatMap((cause) =>
      [null, ...callers].map(
        (calledBy): Answer => ({
          says: `${cause}, called by ${calledBy ?? 'nobody known'}`,
          input: { do: 'explain-stop', of, cause, why: WHY, calledBy, proved: true },
        }),
      ),
    ),
    { says: '(Enter)', input: { do: 'explain-stop', of, cause: 'other', why: '', calledBy: null } },
  ]
}

/** Everybody the state knows of, and one more of each role: the others of a role could do no other thing than that one. */
export function people(defs: Definitions, state: State): string[] {
  const given = Object.values(state.gates).flatMap((g) => Object.values(g.given))
  const known = new Set([
    state.doer,
    ...state.people,
    ...openStops(state).flatMap((s) => [s.by, ...s.calledBy]),
    ...given.flatMap((e) => [e.by, e.person]),
  ])
  const roles = new Set<string>()
  return defs.crew.crew.flatMap((p) => {
    if (known.has(p.id)) return [p.id]
    if (roles.has(p.role)) return []
    roles.add(p.role)
    return [p.id]
  })
}

type Asked = Extract<Prompt, { kind: 'evidence' }>

function evidenceAnswers(defs: Definitions, state: State, { gate, item }: Asked): Answer[] {
  const answer = (typed: string, proved?: boolean): Answer => ({
    says: shown(typed),
    input: {
      do: 'evidence',
      step: gate.id,
      item: item.key,
      typed,
      ...(proved === undefined ? {} : { proved }),
    },
  })
  const { evidence } = item
  const bad = [answer(''), answer('y')]
  const takenOff = ` ${state.doer ?? ''}`
  switch (evidence.kind) {
    case 'locks': {
      // A number of its own for each point, and one that hangs at another point already, written both ways.
      const { own, first } = numbering(defs, state, gate, item)
      return [
        ...bad,
        answer(`L-${first}`),
        answer(`L${first}`),
        ...(own === first ? [] : [answer(`L-${own}`)]),
        ...(evidence.taken_off === undefined
          ? []
          : [answer(`L-${first}${takenOff}`), answer(`L-${own}${takenOff}`)]),
      ]
    }
    case 'numbers': {
      const { own, first } = numbering(defs, state, gate, item)
      const numbers = [`N-${own}`, `N${first}`, `L-${first}`, 'L-0']
      const off = evidence.taken_off === undefined ? [] : [`N-${own}${takenOff}`]
      return [...bad, ...[...numbers, ...off].map((t) => answer(t))]
    }
    case 'words':
      return [...bad, answer(evidence.words)]
    case 'measured':
      return [...bad, ...measuredFigures(defs, evidence).map((t) => answer(t))]
    case 'wait':
      return [...bad, answer(evidence.begin_words), answer(evidence.words)]
    case 'lift':
      return [
        ...bad,
        ...[...weights(state, gate, item), '0', 'S-1', inspectedWords(evidence)].map((t) => answer(t)),
      ]
    case 'witness':
      return [
        ...bad,
        ...people(defs, state).flatMap((person) => [answer(person, true), answer(person, false)]),
      ]
    case 'gas': {
      const limit = gasLimitById(defs, evidence.limit)
      return [
        ...bad,
        answer('nan'),
        ...(limit === undefined ? ['0', '20.9'] : gasFigures(limit)).map((t) => answer(t)),
      ]
    }
    default:
      return assertNever(evidence)
  }
}

/** Half of what is down for the other part of the lift, the same and twice as much. */
function weights(state: State, gate: Asked['gate'], { evidence, part }: Asked['item']): string[] {
  const other = `${evidence.id}.${part === 'load' ? 'rating' : 'load'}`
  const si = state.gates[gate.id]?.given[other]?.si ?? 500
  return [si / 2, si, si * 2].map((kg) => `${formatNumber(kg, 3)} kg`)
}

/** Where the item stands in its gate, and where the first of its line does. */
function numbering(defs: Definitions, state: State, gate: Asked['gate'], item: Asked['item']) {
  const items = itemsOf(defs, state, gate)
  const own = items.findIndex((i) => i.key === item.key)
  return { own, first: items.findIndex((i) => i.evidence.id === item.evidence.id) }
}

function readAnswers(
  defs: Definitions,
  state: State,
  { step, place, instrument }: Extract<Prompt, { kind: 'read' }>,
): Answer[] {
  const last = standing(state, place.key)[0]?.si ?? null
  const { alike, apart, absurd } = readingsFor(defs, asKind(step, 'read'), instrument, last)
  return [
    ...(
      [
        ['a reading', alike],
        ['a reading apart from the first', apart],
        ['a reading that cannot be', absurd],
        ['y', 'y'],
      ] as const
    ).map(([says, typed]): Answer => ({ says, input: { do: 'read', place: place.key, typed } })),
    { says: 'n/a', input: { do: 'not-applicable', place: place.key, why: WHY } },
    ...people(defs, state).map(
      (person): Answer => ({
        says: `n/a, signed by ${person}`,
        input: { do: 'not-applicable', place: place.key, why: WHY, person, proved: true },
      }),
    ),
  ]
}

function decideAnswers(defs: Definitions, state: State, placed: PlacedStep): Answer[] {
  const { step, scope } = asKind(placed, 'decide')
  const verdict = state.verdicts[scope + step.about]?.verdict.result.verdict ?? 'HOLD'
  const classes = wordClasses(defs, placed)
  const open = dispositionsFor(verdict, step.choices)
  const choices = open.filter(
    (c, n) => open.findIndex((o) => classes.classOf(o) === classes.classOf(c)) === n,
  )
  return choices.flatMap((choice) =>
    people(defs, state).map((person) => ({
      says: `${choice} by ${person}`,
      input: {
        do: 'dispose',
        step: placed.id,
        choice,
        person,
        proved: true,
        why: WHY,
        authority: WHY,
        until: 'this run',
      },
    })),
  )
}
