// Safety, apart from all else: what was keyed at a hold point, against what was there. What nobody looked at fails the session at once;
// what was looked at and keyed otherwise is a slip to be put right, and fails it where the hold point is complete with it (lesson-opened.ts).
import type { EvidenceOf } from '../definition/evidence.ts'
import { instrumentById, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { isSpelledAlike } from '../job/evidence-numbers.ts'
import { evidenceByKey, type GateStep, gatesOf } from '../job/gate.ts'
import { lifeMs } from '../job/lapse.ts'
import { lineOf, PLATE } from '../job/practice.ts'
import { hiddenMachine, truthOf } from './ask.ts'
import type { Fault } from './fault.ts'
import { faultById } from './faults.ts'
import { insideNow, isInert } from './inside-air.ts'
import { type Lesson, right, type Scene, wrong } from './marks.ts'

type Of<T extends Entry['type']> = Extract<Entry, { type: T }>

/** A line of a hold point as it was keyed; `figure` as it was read, where one was. */
export interface KeyedLine {
  readonly step: string
  readonly item: string
  readonly shown: string
  readonly figure: number | null
  readonly instrument: string | null
  /** When it was keyed. */
  readonly atMs: number
}

export const MISSING = 'The session is failed: evidence that nobody saw has passed.'
export const FALSE = 'The session is failed: evidence that was not so has passed.'
export const SAID = 'The session is failed: it was said to be safe, and it was not.'

export function plateLesson(scene: Scene, entry: Of<'machine.named' | 'machine.mismatched'>): Lesson {
  const { defs, practice, asked } = scene
  const { plate } = hiddenMachine(defs, practice)
  if (entry.type === 'machine.mismatched') {
    const isRead = entry.typed.trim().toUpperCase() === plate.toUpperCase() && asked !== null
    const fault = faultAt(scene, PLATE)
    if (isRead && fault !== null) return { marks: [right('safety')], isUnsafe: false, says: learnt(fault) }
    return { marks: [wrong('recording')], isUnsafe: false, says: [`Wrong: the plate reads ${plate}.`] }
  }
  if (plate !== defs.machine.machine) return unsafe(FALSE, faultAt(scene, PLATE), `The plate reads ${plate}.`)
  if (asked === null)
    return unsafe(MISSING, null, 'You keyed the tag without a look at the plate: it is on the paper as well.')
  return passed()
}

/** What is typed at a hold point is right if somebody looked, and saw just that. */
export function evidenceLesson(scene: Scene, entry: KeyedLine): Lesson | null {
  const { defs, practice, asked } = scene
  const evidence = evidenceByKey(stepById(defs, entry.step) as GateStep, entry.item)
  if (evidence === null || evidence.kind === 'witness') return null
  const fault = faultAt(scene, `${entry.step}/${evidence.id}`)
  if (asked === null) return unsafe(MISSING, fault, unseenTold(scene, entry))
  if (asked.manner === 'quick')
    return slip(
      'It was taken in a hurry: a figure that has not settled, or half a look, is no evidence.',
      AGAIN,
    )
  if (evidence.kind === 'wait' && !isOver(scene, entry, evidence, asked.atMs))
    return unsafe(MISSING, fault, 'You looked before the wait was over: what it is for comes slowly.')
  const life = lifeMs(defs, evidence)
  if (life !== null && !(entry.atMs - asked.atMs < life))
    return slip(`What you key was seen too long ago: here it counts for ${life / 60_000} minutes.`, AGAIN)
  const truth = truthOf(defs, practice, stepById(defs, entry.step), { item: entry.item }, asked.atMs)
  if (truth === null) return null
  if (truth.kind !== 'line') return figureLesson(scene, entry, fault)
  if (truth.mayType === null) return slip(`What was there: ${truth.seen}`, NOTHING_KEYED)
  const isNumber = evidence.kind === 'locks' || evidence.kind === 'numbers'
  const isSame = isNumber
    ? isOneNumber(entry.shown, truth.mayType)
    : spaced(entry.shown) === spaced(truth.mayType)
  return isSame ? passed() : slip(`You keyed ${entry.shown}; there it says ${truth.mayType}.`, MENDED)
}

/** Nobody has looked since something fell there, or nobody ever did. */
function unseenTold({ practice }: Scene, { step, item }: KeyedLine): string {
  return practice.asked.some(({ of }) => of === lineOf(step, item))
    ? 'You looked before it fell, and nobody has since: key look or measure first, then what is there.'
    : 'You keyed it without a look: key look or measure first, then what is there.'
}

const MENDED =
  'A slip so far: take it back, by the word correct, or back while it is the last, and key what is there.'
const AGAIN =
  'A slip so far: take it back, by the word correct, or back while it is the last; then look or measure anew.'
const NOTHING_KEYED =
  'Nothing may be keyed for that: take it back, by the word correct, or back while it is the last, and say stop.'
const IF_COMPLETE = 'If the hold point is complete with it, the session is failed.'

/** Looked at, and keyed otherwise, while nobody is let in yet. */
function slip(why: string, mend: string): Lesson {
  return {
    marks: [wrong('recording')],
    isUnsafe: false,
    isToMend: true,
    says: [`WRONG. ${why}`, mend, IF_COMPLETE],
  }
}

/** Whether the wait had gone by when it was looked at. */
function isOver(
  { practice }: Scene,
  { step, item }: KeyedLine,
  { lasts }: EvidenceOf<'wait'>,
  lookedMs: number,
): boolean {
  const begunMs = practice.begun[lineOf(step, item)]
  return begunMs !== undefined && lookedMs - begunMs >= lasts.si * 1000
}

function figureLesson({ asked }: Scene, entry: KeyedLine, fault: Fault | null): Lesson {
  if (asked === null || asked.figure === null || entry.figure === null)
    return unsafe(MISSING, fault, 'No figure was measured for it.')
  if (asked.instrument !== (entry.instrument ?? asked.instrument))
    return slip(`It was measured with ${asked.instrument}, and keyed for ${entry.instrument}.`, AGAIN)
  if (entry.figure !== Number(asked.figure))
    return slip(`You keyed ${entry.shown}; ${asked.instrument} shows ${asked.figure}.`, MENDED)
  return passed()
}

/** Keyed as it is, and the hold point stays shut: that is what it is for. */
export function failedLesson(scene: Scene, entry: Of<'evidence.failed'>): Lesson | null {
  const { defs, asked } = scene
  if (entry.reading === undefined || asked === null || asked.figure === null) return null
  if (entry.reading.value !== Number(asked.figure))
    return {
      marks: [wrong('recording')],
      isUnsafe: false,
      says: [`Wrong: ${asked.instrument} shows ${asked.figure}. It is keyed as it is read, good or bad.`],
    }
  const evidence = evidenceByKey(stepById(defs, entry.step) as GateStep, entry.item)
  const fault = faultAt(scene, `${entry.step}/${evidence?.id ?? ''}`)
  const blind = blindLesson(scene, entry, asked.atMs)
  if (blind !== null) return blind
  return {
    marks: [right('safety')],
    isUnsafe: false,
    says: [
      'Right: keyed as it is, and the hold point stays shut. Nobody goes in; say STOP and have it put right.',
      ...(fault === null ? [] : [fault.teaches, `Source: ${fault.source}.`]),
    ],
  }
}

/** Keyed as it is, with a meter that sees nothing in the gas that the session itself swept the cylinder with; null: it sees. */
function blindLesson({ defs, practice }: Scene, entry: Of<'evidence.failed'>, atMs: number): Lesson | null {
  const meter = instrumentById(defs, entry.instrument ?? '')
  const truth = truthOf(defs, practice, stepById(defs, entry.step), { item: entry.item }, atMs)
  if (meter?.kind !== 'gas_meter' || truth?.kind !== 'gas' || truth.gas !== 'flammable') return null
  const { at_least: least } = meter.needs_oxygen
  if (truth.oxygen >= least.si || !isInert(insideNow(defs, practice, atMs))) return null
  return {
    marks: [right('safety'), wrong('measuring')],
    isUnsafe: false,
    says: [
      `Keyed as it is, and the hold point stays shut. But ${meter.id} is the wrong meter for gas without air.`,
      `The cylinder was swept with inert gas. ${meter.id} burns the gas to see it and needs ${least.text} of oxygen: its 0 here is no reading.`,
      'Out and clear, the hold point anew, and by the word instrument a meter that reads without air.',
      `Source: ${meter.needs_oxygen.source}.`,
    ],
  }
}

/** Whoever goes on after the monitor has sounded. */
export function alarmLesson(scene: Scene): Lesson {
  return unsafe(
    'The session is failed: the work went on under an alarm.',
    faultAt(scene, 'monitor'),
    'The monitor on your chest had sounded.',
  )
}

/** What is wrong with the machine at this line, or null. */
export function faultAt({ defs, practice }: Scene, at: string): Fault | null {
  const gates = gatesOf(defs)
  const faults = hiddenMachine(defs, practice).faults.map(faultById)
  // Faults name the gate by its own step id; in a whole job it has the part's before it.
  const own = gates.find(({ id }) => at.startsWith(`${id}/`))
  const line = own === undefined ? at : `${own.step.id}/${at.slice(own.id.length + 1)}`
  return faults.find((fault) => fault.at.includes(line)) ?? null
}

function learnt(fault: Fault): string[] {
  return [`Right: ${lower(fault.name)}.`, fault.teaches, `Source: ${fault.source}.`]
}

export function unsafe(verdict: string, fault: Fault | null, why: string): Lesson {
  const told =
    fault === null
      ? []
      : [`${fault.name}. ${fault.consequence ?? ''}`.trim(), fault.teaches, `Source: ${fault.source}.`]
  return { marks: [wrong('safety')], isUnsafe: true, says: [`WRONG. ${why}`, ...told, verdict] }
}

function passed(): Lesson {
  return { marks: [right('safety')], isUnsafe: false, says: ['Right: seen, and keyed as it was.'] }
}

/** L-103 and l 103 are one lock: dashes, spaces and small letters make no other of it. */
function isOneNumber(one: string, other: string): boolean {
  return isSpelledAlike(one.replace(/\s+/g, ''), other.replace(/\s+/g, ''))
}

function spaced(text: string): string {
  return text.trim().toUpperCase().replace(/\s+/g, ' ')
}

function lower(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1)
}
