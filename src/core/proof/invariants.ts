// What must hold of every job at every move. The account of each gate that it is held against is kept from the entries alone
// (account.ts). Asked of the engine are only the prompt, since that is what people see, and the moment. Each rule gives the
// first sentence that is wrong, or null.
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import type { Body, Entry } from '../job/entries.ts'
import type { GateStep } from '../job/gate.ts'
import type { Input } from '../job/input.ts'
import type { Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { assertNever } from '../lib/result.ts'
import { isProved, type Watch, watched } from './account.ts'

/** One move: what was there, what was brought, what came of it. */
export interface Step {
  readonly defs: Definitions
  readonly before: State
  readonly input: Input
  readonly entries: readonly Entry[]
  readonly after: State
  /** What is asked after it. */
  readonly prompt: Prompt
  readonly watchBefore: Watch
  readonly watch: Watch
  /** The clock at the move, in ms since 1970. */
  readonly now: number
}

export interface Wrong {
  readonly rule: string
  readonly say: string
  /** Id of the step it is about, where there is one. */
  readonly step: string | null
}

type Rule = (step: Step) => Wrong | null

/** Nobody is sent to a hazard unless a gate that holds it back is proved, now. */
const hazardWithoutGate: Rule = ({ defs, prompt, watch, now }) => {
  const step = presented(prompt)
  const hazard = step === null ? undefined : unproved(defs, watch, step, now)[0]
  if (step === null || hazard === undefined) return null
  return wrong('hazard', `${step.id} is asked, and no gate that is fresh holds back ${hazard}`, step.id)
}

/** The step whose doing the prompt asks for. Being held, stopped, signed on or called out exposes nobody. */
export function presented(prompt: Prompt): PlacedStep | null {
  switch (prompt.kind) {
    case 'closed':
    case 'finish':
    case 'stop-cause':
    case 'stopped':
    case 'sign-on':
    case 'tag':
    case 'open-things':
    case 'findings':
    case 'countersign':
    case 'held':
    case 'clear':
    // Keyed from paper, nobody is sent anywhere.
    case 'sheet':
    case 'sheet-doubt':
    case 'sheet-sign':
    // Records are read where they are kept.
    case 'review':
      return null
    case 'evidence':
      return prompt.gate
    case 'pick':
    case 'doubt':
    case 'late':
    case 'tell':
    case 'confirm':
    case 'observe':
    case 'decide':
    case 'judge':
    case 'point':
    case 'read':
      return prompt.step
    default:
      return assertNever(prompt)
  }
}

/** Hazards of the step that no gate other than itself holds back at this moment. */
function unproved(defs: Definitions, watch: Watch, placed: PlacedStep, now: number): string[] {
  const gates = defs.steps.filter((s): s is GateStep => s.step.kind === 'gate' && s.id !== placed.id)
  return (placed.step.exposes ?? []).filter(
    (hazard) => !gates.some((g) => g.step.holds.includes(hazard) && isProved(defs, watch, g, now)),
  )
}

/** No work behind a gate goes on record as done unless the gate is proved at that moment. */
const workWithoutGate: Rule = ({ defs, before, entries, watchBefore, now }) => {
  let watch = watchBefore
  for (const entry of entries) {
    const placed = defs.steps.find((s) => s.id === workOn(entry, before))
    const hazard = placed === undefined ? undefined : unproved(defs, watch, placed, now)[0]
    if (placed !== undefined && hazard !== undefined)
      return wrong('work', `${placed.id} is taken as done, and no fresh gate holds back ${hazard}`, placed.id)
    watch = watched(defs, watch, entry)
  }
  return null
}

/** The step that the entry takes something of as done, there and then; null for all others. A correction sends nobody in. */
function workOn(entry: Entry, before: State): string | null {
  switch (entry.type) {
    case 'step.done':
    case 'step.confirmed':
    case 'finding.observed':
    case 'reading.taken':
    case 'evidence.given':
    case 'wait.begun':
      return entry.step
    case 'doubt.settled':
      return entry.choice === 'kept' ? (before.doubt?.step ?? null) : null
    case 'late.settled':
      return entry.kept ? (before.late?.step ?? null) : null
    default:
      return null
  }
}

/** Whoever was let in is called out, in words, before any evidence is taken anew. */
const evidenceBeforeClear: Rule = ({ defs, entries, watchBefore }) => {
  let watch = watchBefore
  for (const entry of entries) {
    if (entry.type === 'evidence.given' && watch.gates.get(entry.step)?.letIn === true)
      return wrong('clear', `${entry.step} is asked anew before everybody was called out`, entry.step)
    watch = watched(defs, watch, entry)
  }
  return null
}

/** Signed by somebody else than whoever is at the keys. */
const OTHERS_SIGN: readonly Body['type'][] = [
  'evidence.given',
  'disposition.set',
  'point.signed',
  'things.handed-on',
]

/** Nobody witnesses what they gave themselves, and no trainee signs anything. */
const signature: Rule = ({ defs, entries }) => {
  const roleOf = (id: string | undefined) => defs.crew.crew.find((p) => p.id === id)?.role
  for (const e of entries) {
    const step = 'step' in e ? e.step : null
    if (roleOf(e.by) === 'trainee') return wrong('trainee', `a trainee is at the keys for ${e.type}`, step)
    if (
      !('person' in e) ||
      e.person === undefined ||
      e.type === 'person.signed-on' ||
      e.type === 'pin.missed'
    )
      continue
    const role = roleOf(e.person)
    if (role === undefined || role === 'trainee')
      return wrong(
        'trainee',
        `${e.type} is signed by ${role === undefined ? 'nobody known' : 'a trainee'}`,
        step,
      )
    if (OTHERS_SIGN.includes(e.type) && (e.by === undefined || e.person === e.by))
      return wrong('self-witness', `whoever did ${step ?? 'it'} signs for it as well`, step)
  }
  return null
}

/** What may go on record under STOP: what is said of it, what stands about, leaving, what the clock does, and its end. */
const UNDER_STOP: readonly Body['type'][] = [
  'note.written',
  'file.attached',
  'thing.placed',
  'thing.seen',
  'thing.accounted',
  'instrument.doubted',
  'stop.raised',
  'stop.explained',
  'stop.released',
  'stop.stands',
  'job.left',
  'job.taken-up',
  'clock.moved',
  'pin.missed',
]

/** Under STOP nothing else goes on record or is asked; a lead releases it, never their own, and some causes nobody. */
const underStop: Rule = ({ defs, entries, watchBefore, watch: after, prompt }) => {
  let watch = watchBefore
  for (const [n, e] of entries.entries()) {
    const isEnd = e.type === 'job.closed' && e.outcome === 'STOP' && entries[n - 1]?.type === 'stop.stands'
    if (watch.stop !== null && !isEnd && !UNDER_STOP.includes(e.type))
      return wrong('stop', `${e.type} goes on record under STOP`, 'step' in e ? e.step : null)
    if (e.type === 'stop.released' || e.type === 'stop.stands') {
      const role = defs.crew.crew.find((p) => p.id === e.person)?.role
      if (role !== 'lead') return wrong('release', 'a STOP is ended by somebody who is no lead', null)
    }
    if (e.type === 'stop.released') {
      if (watch.stop?.barred.includes(e.person) === true)
        return wrong('release', 'a lead releases a STOP that they raised or called', null)
      if (watch.stop !== null && watch.stop.nameless > 0)
        return wrong('release', 'a STOP of nobody whose caller did not sign is released', null)
      if (watch.stop?.lasts === true)
        return wrong('release', 'a STOP that is never released is released', null)
    }
    watch = watched(defs, watch, e)
  }
  const isBlocked = prompt.kind === 'stop-cause' || prompt.kind === 'stopped' || prompt.kind === 'closed'
  return after.stop === null || isBlocked ? null : wrong('stop', `${prompt.kind} is asked under STOP`, null)
}

/** STOP is one word away from every state, and blocks. */
const stopIsHeard: Rule = ({ input, watch, prompt }) =>
  input.do !== 'stop' || watch.stop !== null || prompt.kind === 'closed'
    ? null
    : wrong('stop', 'STOP was said and nothing stopped', null)

/** No verdict stands on a reading that was corrected, and no decision on a verdict that is void. */
const verdictOnVoid: Rule = ({ after }) => {
  const voided = new Set(
    Object.values(after.readings).flatMap((l) => l.flatMap((r) => (r.correctedBy === null ? [] : [r.seq]))),
  )
  for (const [id, { verdict, void: isVoid }] of Object.entries(after.verdicts)) {
    if (!isVoid && verdict.result.verdict !== 'HOLD' && verdict.readings.some((seq) => voided.has(seq)))
      return wrong('verdict', `the verdict of ${id} stands on a reading that was corrected`, id)
  }
  return null
}

/**
 * Nothing that falls with a line taken back is still counted. Looked at where it is lost: the search forgets in which order the
 * lines of a gate came (normal.ts), so the gate that opens on them later tells nothing.
 */
const nothingCountsThatFell: Rule = ({ defs, input, after, watch }) => {
  if (input.do !== 'take-back-evidence' && input.do !== 'ask-again') return null
  for (const { id, step } of defs.steps) {
    if (step.kind !== 'gate') continue
    const { given, begun } = after.gates[id] ?? { given: {}, begun: {} }
    const kept = Object.keys({ ...given, ...begun }).find(
      (key) => watch.gates.get(id)?.given.has(key) !== true && watch.gates.get(id)?.begun.has(key) !== true,
    )
    if (kept !== undefined) return wrong('counts', `${kept} still counts at ${id}, and it fell`, id)
  }
  return null
}

function wrong(rule: string, say: string, step: string | null): Wrong {
  return { rule, say, step }
}

export const INVARIANTS: readonly Rule[] = [
  hazardWithoutGate,
  workWithoutGate,
  evidenceBeforeClear,
  signature,
  underStop,
  stopIsHeard,
  verdictOnVoid,
  nothingCountsThatFell,
]

/** The first thing that is wrong with a move, or null. */
export function firstWrong(step: Step): Wrong | null {
  for (const rule of INVARIANTS) {
    const found = rule(step)
    if (found !== null) return found
  }
  return null
}
