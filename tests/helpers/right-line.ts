// What a careful person would key at the prompt as it stands; for walks that have to get somewhere.

import { dispositionsFor, FINDING_CHOICES } from '../../src/core/job/admit-disposition.ts'
import { unfitness } from '../../src/core/job/admit-people.ts'
import { neverReleased } from '../../src/core/job/admit-stop.ts'
import { asKind, type Definitions, gasLimitById, stepById } from '../../src/core/job/definitions.ts'
import { gateState, inspectedWords, wantsAnother } from '../../src/core/job/gate.ts'
import { next, type Prompt, waitsFor } from '../../src/core/job/next.ts'
import { openWords } from '../../src/core/job/open-words.ts'
import { doersOf, pointOf } from '../../src/core/job/point.ts'
import { registerClear } from '../../src/core/job/register.ts'
import { unsuited } from '../../src/core/job/seats.ts'
import type { State } from '../../src/core/job/state.ts'
import { barredFromRelease } from '../../src/core/job/stop-causes.ts'
import type { Ask } from '../../src/core/talk/ask.ts'
import { withListed } from '../../src/core/talk/correct.ts'
import type { Talk } from '../../src/core/talk/heard.ts'
import { pinOf } from './example.ts'

/** `salt` varies readings and people a little. */
export function rightLine(defs: Definitions, state: State, talk: Talk, salt = 0): string {
  const prompt = next(defs, state)
  return talk.ask === null ? atPrompt(defs, state, prompt, salt) : atQuestion(defs, state, talk.ask, salt)
}

function atQuestion(defs: Definitions, state: State, question: Ask, salt: number): string {
  switch (question.kind) {
    case 'ask-again-sure':
      return '1'
    case 'correct-which':
      return withListed(String(1 + ((salt * 7) % question.items.length)), question.items.length)
    case 'finding-which':
      return String(1 + (salt % 2))
    case 'doubt-which':
      return String(1 + (salt % question.instruments.length))
    case 'correct-value': {
      const of = Object.values(state.readings).flat()
      const typed = of.find((r) => r.seq === question.of)?.typed ?? '9.5030'
      // The figure as it stands changes nothing: tried too, but not each time.
      return salt % 3 === 0 ? typed : nudged(typed)
    }
    case 'finding-choice':
      return String(1 + (salt % FINDING_CHOICES.length))
    case 'dispose-who':
      if (salt > 3) return 'radio'
      return lead(defs, state, state.doer)
    case 'radio-lead':
      return lead(defs, state, state.doer)
    case 'pin':
      return pinOf(question.person)
    case 'come-on':
    case 'hand-over-to': {
      const others = defs.crew.crew.filter((p) => p.role !== 'trainee' && !state.people.includes(p.id))
      return others[salt % Math.max(1, others.length)]?.id ?? 'back'
    }
    case 'sign-off':
      return state.people.find((p) => p !== state.doer) ?? 'back'
    case 'radio-by':
      return state.people.find((p) => p !== state.doer && p !== question.lead) ?? 'back'
    case 'countersign-who':
      return openWords(state)[0]?.lead ?? 'back'
    case 'countersign-answer':
      return salt === 5 ? '2' : '1'
    case 'not-applicable-who':
      return lead(defs, state, state.doer)
    case 'deviation-who':
      return lead(defs, state, state.doer)
    case 'notice-which':
      return String(1 + (salt % question.steps.length))
    case 'deviation-which':
      return String(1 + (salt % question.steps.length))
    case 'dispose-why':
      return 'because it is so, none given'
    case 'concession-until':
    case 'deviation-until':
      return salt % 2 === 0 ? '4000 h' : '2027-06-30'
    case 'concession-from':
      return '91000'
    case 'concession-authority':
    case 'deviation-authority':
      return 'site rule 12'
    case 'release-who':
      return releaser(defs, state) ?? 'KH'
    case 'account-who':
      return defs.crew.crew.find((p) => p.role !== 'trainee' && p.id !== question.first)?.id ?? 'RO'
    case 'account-which':
      return '1'
    case 'place-number':
    case 'step-number':
      return state.seq % 2 === 0 ? '' : 'B-12'
    case 'hand-who':
      return defs.crew.crew.find((p) => p.role === 'lead' && p.id !== state.doer)?.id ?? 'KH'
    case 'close-who':
      return 'KH'
    case 'stop-caller':
    case 'stop-caller-nobody':
      return ['RO', '?', 'ML'][state.seq % 3] ?? '?'
    case 'stop-which':
      return '1'
    case 'stop-cause':
      return '8'
    default:
      return 'because it is so'
  }
}

/** A lead who may release what is open, or null. */
function releaser(defs: Definitions, state: State): string | null {
  const { people } = barredFromRelease(state)
  return defs.crew.crew.find((p) => p.role === 'lead' && !people.has(p.id))?.id ?? null
}

function lead(defs: Definitions, state: State, not: string | null): string {
  const readers = Object.values(state.readings).flatMap((list) => list.map((r) => r.by))
  const leads = defs.crew.crew.filter((p) => p.role === 'lead' && p.id !== not)
  return (leads.find((p) => !readers.includes(p.id)) ?? leads[0])?.id ?? 'KH'
}

function atPrompt(defs: Definitions, state: State, prompt: Prompt, salt: number): string {
  switch (prompt.kind) {
    case 'stop-cause':
      // Mostly a cause that can be released, so that walks get somewhere.
      return ['8', '1', '7', '2', '8', '3'][salt % 6] ?? '8'
    case 'findings':
      return '1'
    case 'countersign':
      return prompt.open[0]?.lead ?? 'KH'
    case 'stopped':
      return neverReleased(state) === null && releaser(defs, state) !== null ? 'release' : 'close'
    case 'open-things':
      return salt % 3 === 2 ? 'hand on' : 'taken'
    case 'sign-on':
      return ['RO', 'ML', 'KH'][salt % 3] ?? 'RO'
    case 'tag':
      return defs.machine.machine
    case 'pick': {
      const fit = prompt.options.findIndex(
        (i) =>
          state.doubted[i.id] === undefined &&
          (unsuited(defs, prompt.seat.id, i) ?? unfitness(defs, i, state.lastAt)) === null,
      )
      return String(fit + 1)
    }
    case 'clear':
      return prompt.gate.step.clear_words
    case 'evidence':
      return evidenceLine(defs, state, prompt)
    case 'tell':
      return ''
    case 'decide': {
      const { step, scope } = asKind(prompt.step, 'decide')
      const verdict = state.verdicts[scope + step.about]?.verdict.result.verdict ?? 'HOLD'
      const open = dispositionsFor(verdict, step.choices)
      // The last after which the work goes on.
      return open.findLast((choice) => !waitsFor(step, choice)) ?? ''
    }
    case 'point':
    case 'review': {
      const doers = doersOf(state, prompt.step)
      const roles = pointOf(prompt.step)?.roles ?? []
      return defs.crew.crew.find((p) => !doers.has(p.id) && roles.some((r) => r === p.role))?.id ?? 'KH'
    }
    case 'doubt':
      return '3'
    case 'read':
      return reading(defs, prompt.step.id, prompt.place.axis?.id, salt)
    default:
      return '1'
  }
}

function evidenceLine(
  defs: Definitions,
  state: State,
  prompt: Extract<Prompt, { kind: 'evidence' }>,
): string {
  const { evidence, point, person, part, key } = prompt.item
  const at = gateState(state, prompt.gate.id)
  const nth = defs.machine.site.isolation_points.findIndex((p) => p.id === point?.id)
  switch (evidence.kind) {
    case 'locks':
      return `L-${101 + nth}${evidence.taken_off === undefined ? '' : ` ${state.doer ?? ''}`}`
    case 'words':
      return evidence.register === 'clear' && !registerClear(state) ? 'taken' : evidence.words
    case 'gas': {
      const limit = gasLimitById(defs, evidence.limit)
      if (limit?.gas !== 'oxygen') return '0'
      return limit.at_most !== undefined && limit.at_most.value < 20.9 ? '1' : '20.9'
    }
    case 'measured': {
      const { at_least: least, at_most: most } = evidence
      if (least === undefined)
        return evidence.quantity === 'pressure-gauge' ? '0' : String((most?.value ?? 0) / 2)
      return String(most === undefined ? least.value * 2 : (least.value + most.value) / 2)
    }
    case 'numbers': {
      if (evidence.of === 'permit') return 'HW-2026/114'
      if (wantsAnother(prompt.item)) return 'sign on'
      if (person !== null) return `P-${person}1`
      // One number for one thing, wherever it is asked; what has no name is told apart by its line.
      const off = evidence.taken_off === undefined ? '' : ` ${state.doer ?? ''}`
      return `${point === null ? numberOf(evidence.same_as ?? evidence.notes ?? evidence.id) : `B-${1 + nth}`}${off}`
    }
    case 'wait':
      return at.begun[key] === undefined ? evidence.begin_words : evidence.words
    case 'lift':
      if (part === 'load') return '1800'
      if (part === 'rating') return '2000'
      return part === 'sling' ? 'S-12' : inspectedWords(evidence)
    case 'witness': {
      const doers = [state.doer, ...[...Object.values(at.given), ...Object.values(at.begun)].map((g) => g.by)]
      const other = defs.crew.crew.find(
        (p) => !doers.includes(p.id) && evidence.roles.some((role) => role === p.role),
      )
      return other?.id ?? 'ML'
    }
  }
}

/** `B-` and a number made of the letters of a name. */
function numberOf(name: string): string {
  return `B-${[...name].reduce((sum, letter, n) => sum + (n + 1) * letter.charCodeAt(0), 0)}`
}

function reading(defs: Definitions, stepId: string, axis: string | undefined, salt: number): string {
  const { plausible } = asKind(stepById(defs, stepId), 'read').step
  if (plausible.from === 'range') return plausible.most.value < 71 ? `1.${salt % 3}` : `71.${salt % 3}`
  if (plausible.from === 'standard') return '9.5000'
  if (plausible.from === 'counterbore') return '9.7502'
  return `9.50${axis === 'vertical' ? 3 : 2}${salt % 3}`
}

/** Another figure, one off in its last digit; of that the first again, so that a search of every state comes to an end. */
function nudged(typed: string): string {
  return typed.replace(/\d(?=\D*$)/, (digit) => String(Number(digit) ^ 1))
}
