// What every kind of evidence shares: what is asked, and the entries an answer makes.
import type { Evidence } from '../definition/evidence.ts'
import { readStamp } from '../lib/instant.ts'
import type { Definitions } from './definitions.ts'
import type { Body } from './entries.ts'
import type { GateStep, Item } from './gate.ts'
import type { State } from './state.ts'

/** One item as it is asked now, and the line keyed for it. */
export interface Asked<K extends Evidence['kind']> {
  readonly defs: Definitions
  /** `lastAt` is this moment. */
  readonly state: State
  readonly gate: GateStep
  readonly item: Item
  readonly evidence: Extract<Evidence, { kind: K }>
  readonly typed: string
  /** Why it is another than it was before, where that is asked. */
  readonly why?: string | undefined
}

export type AnyAsked = Omit<Asked<'words'>, 'evidence'>

type GivenBody = Extract<Body, { type: 'evidence.given' }>
type FailedBody = Extract<Body, { type: 'evidence.failed' }>

export function given({ gate, item }: AnyAsked, shown: string, more: Partial<GivenBody> = {}): Body {
  return { type: 'evidence.given', step: gate.id, item: item.key, shown, ...more }
}

export function failed(
  { gate, item }: AnyAsked,
  shown: string,
  why: string,
  more: Partial<FailedBody> = {},
): Body {
  return { type: 'evidence.failed', step: gate.id, item: item.key, shown, ...more, why }
}

/** Words and numbers as they are compared: in capitals, with single spaces. */
export function spaced(text: string): string {
  return text.trim().toUpperCase().replace(/\s+/g, ' ')
}

/** This moment, in ms; not a number when it cannot be read, and then nothing has gone by. */
export function momentMs(state: State): number {
  return readStamp(state.lastAt)?.ms ?? Number.NaN
}
