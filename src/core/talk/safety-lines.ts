// What is told to somebody in doubt about themselves or others: what the job itself says now, by its own lines, and where the
// make-safe sheet is. It never says that anything is good or without danger: the program sees no machine.

import { CAUSES } from '../job/close-causes.ts'
import { type Definitions, gasLimitById, type PlacedStep, personById } from '../job/definitions.ts'
import { mayWitness } from '../job/evidence-words.ts'
import { doersAt, type GateStep, gateState, gatesBefore, gatesOf, itemsOf } from '../job/gate.ts'
import { keyLabel } from '../job/item-label.ts'
import { lapsesAt } from '../job/lapse.ts'
import { littleOxygenAt } from '../job/little-oxygen.ts'
import { current, next, type Prompt } from '../job/next.ts'
import { pointOf } from '../job/point.ts'
import { openStop, type State } from '../job/state.ts'
import { clockOf, type Instant } from '../lib/instant.ts'
import { list } from '../lib/wording.ts'
import { gasPassage } from '../papers/limit-passages.ts'
import { falseProofLines } from '../practice/false-proof.ts'
import { takenLines } from './last-taken.ts'
import { SAFE_ALWAYS } from './make-safe.ts'
import { peopleText } from './may-sign.ts'
import { missingLines } from './missing-lines.ts'
import { practisedAlone } from './plain-asked.ts'
import { BY_WIRE, type SafetyAsked } from './safety-asked.ts'
import { whoLines } from './sheet-asked.ts'
import { COME_OUT, releaseLines, SHEET, STOP_LINES, stopLine, underStop } from './stop-lines.ts'
import { turnLines } from './turn-lines.ts'
import { wantedLine } from './wanted.ts'
import { gateLine, peopleLine } from './where.ts'

const CALL = 'Call:'
export const SEES_NOTHING =
  'Barover sees no machine. It tells what is on record, and no record keeps a hand whole.'
const TRAINEE =
  'A trainee signs on to PRACTICE only, and never witnesses, releases a STOP or decides as a lead.'
const PERMIT = 'Who has to be there stands in the site permit too; where it asks for more, it counts.'

/** What a role does on a job. */
const ROLES = {
  mechanic: 'a mechanic does the work, and witnesses only what others did',
  lead: 'a lead may also release a STOP of others and decide on a verdict',
  trainee: 'a trainee works on PRACTICE only, and never witnesses or decides',
} as const

/** Of danger, and of what STOP does: where one is open, that it is comes with it. */
const BESIDE_STOP: readonly SafetyAsked[] = [
  ...(['hurt', 'no-answer', 'alarm', 'starts', 'off', 'bad-air', 'missing', 'wrong', 'stop'] as const),
  ...(['come-out', 'alone'] as const),
]

interface Asked {
  readonly defs: Definitions
  readonly state: State
  readonly prompt: Prompt
  /** The step or hold point that is asked. */
  readonly at: PlacedStep | null
  readonly now: Instant
}

export function safetyLines(
  defs: Definitions,
  state: State,
  about: SafetyAsked,
  question: string,
  now: Instant,
): string[] {
  const prompt = next(defs, state)
  const at =
    'gate' in prompt && prompt.gate !== undefined
      ? prompt.gate
      : 'step' in prompt
        ? prompt.step
        : (current(defs, state)?.placed ?? null)
  const told = linesOf({ defs, state, prompt, at, now }, about, question)
  const lines = underStop(defs, state, told, BESIDE_STOP.includes(about))
  // Until the plate was read its tag is nowhere on screen, so that nobody copies it from here. Whom to call is never held back.
  const tag = defs.machine.machine.toLowerCase()
  return state.machineNamed
    ? lines
    : lines.filter((line) => line.startsWith(CALL) || !line.toLowerCase().includes(tag))
}

function linesOf(asked: Asked, about: SafetyAsked, question: string): string[] {
  switch (about) {
    case 'hurt':
    case 'no-answer':
      return [...comeOut(asked), COUNT, SHEET]
    case 'alarm':
      return [...comeOut(asked), ...troubleLines(asked), ...notSoLines(asked), COUNT, SHEET]
    case 'starts':
      return [...comeOut(asked, EMERGENCY_STOP), ...troubleLines(asked), ...notSoLines(asked), SHEET]
    case 'off':
      return [...comeOut(asked), STILL_OPEN, ...troubleLines(asked), ...notSoLines(asked), SHEET]
    case 'bad-air':
      return [
        ...comeOut(asked),
        ...airLines(asked),
        ...troubleLines(asked),
        ...gasLines(asked, question),
        SHEET,
      ]
    case 'missing':
      return [...missingLines(asked.state, question), ...troubleLines(asked), SHEET]
    case 'wrong':
      return wrongLines(asked, question)
    case 'stop':
      return STOP_LINES
    case 'come-out':
      return [...whyOutLines(asked), ...troubleLines(asked), SHEET]
    case 'trainee':
      return [TRAINEE, recordLine(asked.state)]
    case 'alone':
      return [...aloneLines(asked), ...troubleLines(asked), SHEET]
    case 'hands':
    case 'safe':
      return [
        SEES_NOTHING,
        ...stopLine(asked.state),
        ...airLines(asked),
        ...letInLines(asked),
        ...troubleLines(asked),
        SHEET,
      ]
    case 'release':
      return releaseLines(asked.defs, asked.state)
    case 'turn':
      return [...stopLine(asked.state), ...turnLines(asked.defs, asked.state), ...troubleLines(asked), SHEET]
    case 'witness':
      return [...(BY_WIRE.test(question) ? [STANDS_THERE] : []), ...witnessLines(asked)]
    case 'allowed':
      return allowedLines(asked)
    case 'locks-off':
      return [...stopLine(asked.state), ...locksOffLines(asked), ...troubleLines(asked), SHEET]
    case 'now':
      return nowLines(asked)
  }
}

const STANDS_THERE =
  'A witness stands there and looks: a word by phone or radio, or a picture, opens no hold point.'

/** A lock is its owner's to take off: 29 CFR 1910.147(e)(3). */
function locksOffLines({ defs }: Asked): string[] {
  const sheets = gatesOf(defs)
    .filter(({ step }) => step.evidence.some((one) => 'taken_off' in one && one.taken_off !== undefined))
    .map(({ number, step }) => `${number}, ${step.title}`)
  return [
    'Every lock stays on: what was shown of it keeps people whole, and falls when it comes off.',
    sheets.length === 0
      ? 'No sheet of this job takes a lock off.'
      : `Locks come off at sheet ${list(sheets.slice(0, MOST_GATES), 'or')}, and at no other.`,
    'At the end whoever a lock belongs to takes it off by their own hand (29 CFR 1910.147(e)(3)).',
  ]
}

/** What the sheet at hand wants; where people were called out, that before it, and why. */
function nowLines(asked: Asked): string[] {
  const { defs, state, prompt } = asked
  const wanted = wantedLine(defs, state, prompt)
  if (openStop(state) !== null) return [...stopLine(state), wanted, ...releaseLines(defs, state), SHEET]
  if (prompt.kind !== 'clear')
    return [
      ...falseProofLines(defs, state),
      wanted,
      'next shows what comes after; why tells what it is for.',
      SHEET,
    ]
  const { why, cause } = gateState(state, prompt.gate.id)
  const fell = why ?? (cause === null ? null : CAUSES[cause])
  return [
    ...comeOut(asked),
    ...(fell === null ? [] : [`It fell: ${fell.replace(/\.+$/, '')}.`]),
    ...troubleLines(asked),
    wanted,
    'Then what fell is shown anew, the air by new figures, and nobody goes in before it is complete.',
    SHEET,
  ]
}

/** Of what was keyed; of what threatens; of what has gone wrong, which is told before all else to come out. */
function wrongLines(asked: Asked, question: string): string[] {
  const { defs, state } = asked
  if (/\b(?:did|have) (?:i|we)\b/i.test(question))
    return [
      ...takenLines(defs, state),
      'A slip in what was keyed: back or correct. The first answer stays in the log.',
      'If it may be more than a slip: come out, stand clear, say STOP.',
      ...troubleLines(asked),
      SHEET,
    ]
  const isAhead = /\b(?:dangers?|dangerous|hazards?|risks?)\b/i.test(question)
  return [...(isAhead ? [] : comeOut(asked)), ...troubleLines(asked), SHEET]
}

/** What is done before anything is read. The contact stands in the machine record. */
function comeOut({ defs }: Asked, ...then: readonly string[]): string[] {
  return [COME_OUT, ...then, `${CALL} ${defs.machine.site.emergency}`]
}

const STILL_OPEN =
  'No hold point closes by those words, only by STOP. Back on or not: what was off is shown anew, after a lead has released the STOP.'

const EMERGENCY_STOP =
  'Hands off. Whoever stands at the emergency stop hits it; nobody goes in to reach one. Common practice, no source.'

/** The line of the make-safe sheet about whoever is not there. */
const COUNT = (SAFE_ALWAYS.find((line) => line.includes('Count heads')) ?? '').replace(/^\d+ +/, '')

/** Hazard and what to do in trouble, as the step at hand has them. */
function troubleLines({ at }: Asked): string[] {
  if (at === null) return []
  const { hazard, trouble } = at.step
  return [
    ...(hazard === undefined ? [] : [`Hazard of sheet ${at.number}: ${hazard}`]),
    ...(trouble === undefined ? [] : [`In trouble: ${trouble}`]),
  ]
}

/** At a line of a hold point that takes words: they are for when it is so, and for nothing else. */
function notSoLines({ prompt }: Asked): string[] {
  if (prompt.kind !== 'evidence' || prompt.item.evidence.kind !== 'words') return []
  const { ask, words } = prompt.item.evidence
  return [`Asked here: ${ask}`, `Where it is not so, ${words} is not typed, and the hold point stays shut.`]
}

/** The limits of what is asked about; of the very line first. A figure out of them is keyed as it was read. */
function gasLines({ defs, prompt }: Asked, question: string): string[] {
  const here =
    prompt.kind === 'evidence' && prompt.item.evidence.kind === 'gas'
      ? gasLimitById(defs, prompt.item.evidence.limit)
      : undefined
  const named = /\b(?:oxygen|o2)\b/i.test(question)
    ? 'oxygen'
    : /\b(?:h2s)\b/i.test(question)
      ? 'hydrogen_sulfide'
      : /\b(?:lel|flammables?)\b/i.test(question)
        ? 'flammable'
        : null
  const limits =
    here !== undefined && (named === null || here.gas === named)
      ? [here]
      : defs.machine.site.gas.limits.filter(({ gas }) => named === null || gas === named)
  return [
    ...limits.map((limit) => `Limit, ${gasPassage(defs, limit).text}`),
    'A figure outside its limit is keyed as it was read: the hold point stays shut.',
  ]
}

/** The hold points that stand before what is asked; where none does, all of the job. */
function gatesHere({ defs, at }: Asked): readonly GateStep[] {
  const all = gatesOf(defs)
  if (at === null) return all
  const before = gatesBefore(defs, at)
  return all.filter((gate) => gate.id === at.id || before.includes(gate))
}

/** How each stands, with age and lapse; what it lets in, and until when. */
function letInLines(asked: Asked): string[] {
  const { defs, state, at, now } = asked
  const gates = gatesHere(asked)
  if (gates.length === 0)
    return ['The sheet at hand asks nobody in, so no hold point lets a hand or a tool in for it.']
  const until = gates.flatMap((gate) => lapsesAt(defs, state, gate) ?? []).sort((a, b) => a - b)[0]
  const isHeldBack =
    openStop(state) !== null ||
    gates.some((gate) => gateState(state, gate.id).status !== 'open') ||
    (until !== undefined && !(now.ms < until))
  const clock =
    until === undefined || !Number.isFinite(until)
      ? ''
      : `until ${clockOf({ ms: until, offsetMin: now.offsetMin })} or `
  return [
    ...gates.flatMap((gate) => gateLine(defs, state, gate, now)),
    ...(isHeldBack || at === null
      ? [
          `No hand, head or tool goes in before it is complete: ${list(gates.map((gate) => gate.step.title))}.`,
        ]
      : [
          `It lets in what sheet ${at.number}, ${at.step.title}, asks and nothing else, ${clock}until anything shown there changes.`,
          'Look at locks, block and bleeds yourself. In doubt stay out.',
        ]),
  ]
}

/** Oxygen that nobody can breathe passes where nobody is to breathe: it is told before what is let in. */
function airLines({ defs, state, at }: Asked): string[] {
  return at === null
    ? []
    : littleOxygenAt(defs, state, at).map(
        ({ gate, key, given }) =>
          `NOBODY BREATHES THERE OR PUTS A HEAD IN: hold point ${gate.number}, ${keyLabel(defs, gate, key)}, ${given.shown}.`,
      )
}

/** Why people were called out, and what ends it. */
function whyOutLines({ defs, state, prompt, now }: Asked): string[] {
  if (prompt.kind !== 'clear')
    return [
      'Whoever is in comes out when a hold point falls, at a STOP and in any doubt; then it is shown anew.',
    ]
  const { gate } = prompt
  const { why, cause } = gateState(state, gate.id)
  const fell = why ?? (cause === null ? null : CAUSES[cause])
  return [
    ...gateLine(defs, state, gate, now),
    ...(fell === null ? [] : [`It fell: ${fell.replace(/\.+$/, '')}.`]),
    'What kept people from harm there counts no more, so everybody comes out before anything is asked.',
    `Barover cannot see who is in: ${gate.step.clear_words} is typed when nobody is, also where nobody was.`,
  ]
}

/** Whom the job itself asks for besides the one at the keyboard. */
function aloneLines(asked: Asked): string[] {
  const { defs, state } = asked
  const wanted = gatesOf(defs).flatMap((gate) =>
    gate.step.evidence.flatMap((one): string[] => {
      if (one.kind === 'witness')
        return [
          `Hold point ${gate.number} wants a witness who did none of it, ${list(one.roles, 'or')}: alone nobody passes it.`,
        ]
      return one.kind === 'numbers' && one.per === 'person' && (one.at_least ?? 0) > 1
        ? [
            `Hold point ${gate.number} wants at least ${one.at_least} people, each with a number of their own.`,
          ]
        : []
    }),
  )
  return [
    peopleLine(state),
    ...[...new Set(wanted)].slice(0, MOST_GATES),
    ...(wanted.length > MOST_GATES ? ['Later hold points ask for others too.'] : []),
    ...practisedAlone(asked.defs, asked.state),
    'Nobody reaches in without somebody outside who can call for help. Common practice, no source.',
    PERMIT,
  ]
}

/** More would push the question off a small screen. */
const MOST_GATES = 2

/** Who may sign at the hold point at hand, or the next that wants somebody; by role, as no name stands for a look. */
function witnessLines({ defs, state, prompt, at }: Asked): string[] {
  if (prompt.kind === 'decide' || prompt.kind === 'findings') return whoLines(defs, state)
  if (prompt.kind === 'point' || prompt.kind === 'review')
    return [
      `Signs here: a ${(pointOf(prompt.step)?.roles ?? []).join(' or ')} who did none of this.`,
      TRAINEE,
    ]
  const gates = gatesOf(defs)
  const gate =
    gates.find(({ id }) => id === at?.id) ??
    gates.find(
      (one) =>
        gateState(state, one.id).status !== 'open' && one.step.evidence.some((e) => e.kind === 'witness'),
    )
  const evidence = gate?.step.evidence.find((one) => one.kind === 'witness')
  if (gate === undefined || evidence === undefined) return ['No hold point asks for a witness now.', TRAINEE]
  const fits = mayWitness(defs, state, gate, evidence)
  const not = new Set([...doersAt(gateState(state, gate.id)), state.doer].filter((one) => one !== null))
  const waiting = itemsOf(defs, state, gate).length - Object.keys(gateState(state, gate.id).given).length
  return [
    `Witness at hold point ${gate.number}: a ${list(evidence.roles, 'or')} of the crew, who looks for themselves.`,
    ...(fits.length === 0 ? [] : [`May witness: ${peopleText(fits)}.`]),
    ...(not.size === 0
      ? []
      : [`Not ${list([...not], 'or')}: whoever gave or keyed any of it signs for none of it.`]),
    ...(waiting > 1 ? [`Before it ${waiting - 1} more are to be shown there.`] : []),
    TRAINEE,
  ]
}

function allowedLines(asked: Asked): string[] {
  const { defs, state, prompt } = asked
  const person = state.doer === null ? undefined : personById(defs, state.doer)
  const here =
    prompt.kind === 'stopped' || prompt.kind === 'stop-cause'
      ? releaseLines(defs, state)
      : (prompt.kind === 'evidence' && prompt.item.evidence.kind === 'witness') ||
          prompt.kind === 'point' ||
          prompt.kind === 'review'
        ? witnessLines(asked)
        : prompt.kind === 'decide' || prompt.kind === 'findings'
          ? ['A lead decides here, and never on work of their own.']
          : prompt.kind === 'evidence' && 'ask' in prompt.item.evidence
            ? [`Asked here, and no more: ${prompt.item.evidence.ask}`]
            : ['What the sheet at hand asks, and nothing else: no hold point is passed by leave of anybody.']
  return [
    person === undefined
      ? 'Nobody is at the keyboard: initials come first.'
      : `${person.id} at the keyboard: ${ROLES[person.role]}.`,
    ...here,
    'What the site allows stands in its permit; where it allows less, it counts.',
  ]
}

/** What this record is, as it bears on who may be on it. */
function recordLine({ record }: State): string {
  return record === 'PRACTICE'
    ? 'This job is PRACTICE: it counts for no machine.'
    : `This job is ${record}: no trainee signs on here. leave, then choose practice where jobs are chosen.`
}
