// What hangs on the machine by the record, and what of it came off: a number keyed at a hold point that asks for locks hangs
// until it is told as taken off. What the record does not tell off counts as on, whatever has become of the evidence.
import type { Evidence } from '../definition/evidence.ts'
import { clockOf, readStamp } from '../lib/instant.ts'
import type { Definitions } from './definitions.ts'
import { isTakenBack } from './fold-gate.ts'
import {
  comesOff,
  evidenceByKey,
  type GateStep,
  gateState,
  gatesOf,
  hangs,
  type Item,
  itemByKey,
} from './gate.ts'
import { itemLabel } from './item-label.ts'
import { deviceOnSheet } from './paper-devices.ts'
import { keyOfCopy } from './paper-rows.ts'
import type { GateState, State, Struck } from './state.ts'
import { tellsOff } from './tells-off.ts'

/** One keying at a hold point about what hangs. */
export interface Keyed extends Pick<Struck, 'seq' | 'at' | 'by' | 'shown'> {
  /** Who took it off, where that was asked. */
  readonly offBy?: string | undefined
  readonly gate: GateStep
  readonly item: Item
  readonly isVoid: boolean
}

export interface Hanging {
  readonly on: readonly Keyed[]
  /** What came off, with the keying that tells so. */
  readonly off: readonly { readonly what: Keyed; readonly told: Keyed }[]
}

/**
 * A lock is on or off by the last that was keyed of its number. Words of a lock that is off are its owner's, and tell of no
 * number; in a job that went on to its end behind them the locks and blinds of before are off with it.
 */
export function hanging(defs: Definitions, state: State): Hanging {
  const keyed = gatesOf(defs).flatMap((gate) => keyedAt(defs, state, gate))
  // A line of a sheet that is put right later stands where it stood: the order of a sheet is that of the paper.
  const all = state.paper === null ? keyed.sort((a, b) => a.seq - b.seq) : keyed
  const numbers = new Map<string, { on: Keyed | null; last: Keyed }>()
  for (const one of all) {
    if (!hangs(one.item.evidence) && !comesOff(one.item.evidence)) continue
    const key = deviceKey(one)
    const known = numbers.get(key)
    numbers.set(key, { on: tellsOff(one.item.evidence) ? (known?.on ?? one) : one, last: one })
  }
  const said = all.filter(
    ({ item: { evidence }, shown }) =>
      evidence.kind === 'words' && tellsOff(evidence) && plain(shown) === plain(evidence.words),
  )
  const last = state.closed === null || state.closed === 'STOP' ? undefined : said.at(-1)
  const found = [...numbers.values()].map(({ on, last: keyed }) => {
    const what = on ?? keyed
    if (tellsOff(keyed.item.evidence)) return { what, told: keyed }
    return {
      what,
      told:
        last !== undefined && all.indexOf(last) > all.indexOf(keyed) && isLock(keyed.item.evidence)
          ? last
          : null,
    }
  })
  return {
    on: found.flatMap(({ what, told }) => (told === null ? [what] : [])),
    off: found.flatMap(({ what, told }) => (told === null ? [] : [{ what, told }])),
  }
}

/** What was keyed and stands, and what fell since; not what was mistyped, which hangs nowhere. */
function keyedAt(defs: Definitions, state: State, gate: GateStep): Keyed[] {
  const { given } = gateState(state, gate.id)
  return [
    ...linesNoted(state, gate),
    ...stoodBefore(state, gate).map((one) => ({ ...one, key: one.item, isVoid: true })),
    ...Object.entries(given).map(([key, g]) => ({ ...g, key, isVoid: false })),
    ...fallenAt(state, gate).map((s) => ({ ...s, key: s.item, isVoid: true })),
  ].flatMap(({ key, seq, at, by, shown, isVoid, ...more }): Keyed[] => {
    const item = itemByKey(defs, gate, key)
    return item === null
      ? []
      : [{ seq, at, by, shown, isVoid, gate, item, ...('offBy' in more ? { offBy: more.offBy } : {}) }]
  })
}

/** What fell at the gate and was not keyed anew, but for what was mistyped: that hangs nowhere. */
export function fallenAt(state: State, gate: GateStep): readonly Struck[] {
  const { given, struck } = gateState(state, gate.id)
  return struck.filter((s) => !isTakenBack(s.cause) && given[s.item] === undefined)
}

/**
 * Numbers of what hangs that stood at the gate and that another was keyed in place of since, taken back again or not: no word told them
 * off. A number told as off is none of them: whether that was the slip, nobody knows.
 */
export function stoodBefore(state: State, gate: GateStep): GateState['replaced'] {
  const { struck, replaced } = gateState(state, gate.id)
  const before = struck.flatMap(({ item, before: firm }) => (firm === undefined ? [] : [{ item, ...firm }]))
  return [...replaced, ...before].filter(({ item }) => {
    const evidence = evidenceByKey(gate, item)
    return hangs(evidence) && evidence !== null && !tellsOff(evidence)
  })
}

/** What is noted on a sheet as hung may hang there still, whoever keyed it in. */
export function linesNoted(
  { paper }: State,
  gate: GateStep,
): (Omit<Keyed, 'gate' | 'item'> & { readonly key: string })[] {
  return Object.values(paper?.rows ?? {}).flatMap(({ step, row, seq, time, who, text }) =>
    step === gate.id && text !== null
      ? [{ key: keyOfCopy(row), seq, at: time ?? '', by: who, isVoid: false, ...shownBy(gate, row, text) }]
      : [],
  )
}

/** A number stands by itself, so that one lock is one wherever it is noted. */
function shownBy(gate: GateStep, row: string, text: string): Pick<Keyed, 'shown' | 'offBy'> {
  const evidence = evidenceByKey(gate, keyOfCopy(row))
  if (!hangs(evidence) && !comesOff(evidence)) return { shown: text }
  const { number, offBy } = deviceOnSheet(text, evidence)
  return { shown: number ?? text, ...(offBy === null ? {} : { offBy }) }
}

const plain = (text: string) => text.trim().toLowerCase().replace(/\s+/g, ' ')

/** A tag stays where it is when a machine starts; a lock or a blind cannot. */
function isLock(evidence: Evidence): boolean {
  return evidence.kind === 'locks' || (evidence.kind === 'numbers' && evidence.of !== 'tag')
}

/** A tag and a blind may well bear one number: they are two things. */
function deviceKey({ item: { evidence }, shown }: Keyed): string {
  const what = evidence.kind === 'numbers' ? evidence.of : evidence.kind
  return `${what} ${shown.trim().toUpperCase()}`
}

/** A line for each that is on. */
export function onLines(defs: Definitions, { on }: Hanging): string[] {
  return on.map(
    (one) => `Still on by the record: ${deviceText(defs, one)}${pointText(one)}, keyed ${when(one)}`,
  )
}

/** What came off, when and by whom: each by its own number, and those that words stand for in one line. */
export function offLines(defs: Definitions, { off }: Hanging): string[] {
  const words = off.filter(({ told }) => told.item.evidence.kind === 'words')
  const [first] = words
  const all = words.map(({ what }) => deviceText(defs, what)).join('; ')
  return [
    ...off
      .filter(({ told }) => told.item.evidence.kind !== 'words')
      .map(({ what, told }) => `Came off: ${deviceText(defs, what)}, ${when(told)}, at ${where(told)}`),
    ...(first === undefined
      ? []
      : [`Came off by ${when(first.told)}, who keyed ${first.told.shown} at ${where(first.told)}: ${all}`]),
  ]
}

/** `L-101 at E-1`: the number and where it hangs, by the tag of the point where its name ends in one; the number alone without a point. */
export function hangsText({ item: { point }, shown }: Pick<Keyed, 'item' | 'shown'>): string {
  if (point === null) return shown.trim()
  const tag = /, ([\p{L}\d]+(?:-[\p{L}\d]+)*)$/u.exec(point.name)?.[1]
  return `${shown.trim()} at ${tag ?? point.name}`
}

/** What names neither a point nor a person is told by the hold point that asked for it. */
function pointText({ item, gate }: Keyed): string {
  return item.point === null && item.person === null ? `, asked at ${gate.number} ${gate.step.title}` : ''
}

function deviceText(defs: Definitions, { item, shown }: Keyed): string {
  return `${itemLabel(defs, item)}: ${shown}`
}

/** `2026-03-14 16:31 by RO`. */
function when({ at, by, offBy }: Keyed): string {
  const read = readStamp(at)
  const time = read === null ? 'at a time that cannot be read' : `${at.slice(0, 10)} ${clockOf(read)}`
  return `${time} by ${offBy ?? by ?? 'nobody known'}`
}

const where = ({ gate }: Keyed) => `${gate.number} ${gate.step.title}`
