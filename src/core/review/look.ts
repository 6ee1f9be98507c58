// What every look at a job is given, and short words for when and by whom.
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { fold, opening } from '../job/fold.ts'
import { lapsedAt } from '../job/lapsed-at.ts'
import type { State } from '../job/state.ts'
import { stamp } from '../lib/instant.ts'
import { signerBeside } from '../sheet/by-sign.ts'
import type { Beside } from './beside.ts'

/** One entry with the state on either side of it. */
export interface Move {
  readonly entry: Entry
  readonly before: State
  readonly after: State
}

export interface Look {
  /** Those that count at the end of the log. */
  readonly defs: Definitions
  /** Those by which an entry was made, where a machine record was taken in later. */
  readonly defsAt: (entry: Pick<Entry, 'seq'>) => Definitions
  readonly entries: readonly Entry[]
  readonly state: State
  readonly moves: readonly Move[]
  readonly beside: Beside
}

/** A log begins with job.opened; anything else is a bug of the caller. */
export function movesOf(entries: readonly Entry[]): Move[] {
  const [first, ...rest] = entries
  if (first === undefined || first.type !== 'job.opened') throw new Error('a job begins with job.opened')
  let state = opening(first)
  const moves: Move[] = [{ entry: first, before: state, after: state }]
  for (const entry of rest) {
    const before = state
    state = fold(state, entry)
    moves.push({ entry, before, after: state })
  }
  return moves
}

/** The entry that closed the job; null while it is open. */
export function closeOf({ moves }: Pick<Look, 'moves'>): Entry | null {
  return moves.find(({ before, after }) => before.closed === null && after.closed !== null)?.entry ?? null
}

/**
 * The job as people left it: what they did is told by this, and never by what fell when a gauge was found out of calibration
 * after the close. Of an open job, as it stands.
 */
export function stateAtClose({ moves, state }: Pick<Look, 'moves' | 'state'>): State {
  return moves.find(({ before, after }) => before.closed === null && after.closed !== null)?.after ?? state
}

type OfType<T extends Entry['type']> = Extract<Entry, { type: T }>

export function entriesOf<T extends Entry['type']>(look: Look, ...types: T[]): OfType<T>[] {
  return look.entries.filter((e): e is OfType<T> => (types as string[]).includes(e.type))
}

/** `06:52`, with its day before it where the job was opened on another. */
export function when(look: Pick<Look, 'entries'>, { at }: Pick<Entry, 'at'>): string {
  const day = at.slice(0, 10)
  return day === look.entries[0]?.at.slice(0, 10) ? at.slice(11, 16) : `${day} ${at.slice(11, 16)}`
}

/** `07:25`; of what was past its life before anybody noted it, `lapsed 07:09, noted 07:25`. */
export function whenFell(look: Pick<Look, 'entries' | 'defsAt'>, { entry, after }: Move): string {
  const at = lapsedAt(look.defsAt(entry), after, entry)
  const noted = when(look, entry)
  return at === null ? noted : `lapsed ${when(look, { at: stamp(at) })}, noted ${noted}`
}

/** `RO 06:52`; of what another signed, `KH, keyed by RO 06:52`. */
export function byWhom(look: Pick<Look, 'entries'>, entry: Pick<Entry, 'at' | 'by'>): string {
  return `${whoIn(entry)} ${when(look, entry)}`
}

/** Who signed stands first, and after that at whose keyboard. */
export function whoIn(entry: Pick<Entry, 'at' | 'by'>): string {
  const signer = signerBeside(entry)
  if (signer === null) return entry.by ?? 'nobody signed on'
  return entry.by === undefined ? signer : `${signer}, keyed by ${entry.by}`
}

/** `12 Bore judged`. */
export function named(placed: PlacedStep): string {
  return `${placed.number} ${placed.step.title}`
}

export function namedById({ defs }: Look, id: string): string {
  const placed = defs.steps.find((one) => one.id === id)
  return placed === undefined ? id : named(placed)
}

/** `3 times`, `once`. */
export function times(n: number): string {
  return n === 1 ? 'once' : n === 2 ? 'twice' : `${n} times`
}

export function count(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`
}

/** What somebody keyed may end with a stop of its own. */
export function sentence(text: string): string {
  return /[.?!]$/.test(text.trimEnd()) ? text.trimEnd() : `${text.trimEnd()}.`
}

/** The same within a sentence: what was keyed may end with a stop of its own. */
export function clause(text: string): string {
  return text.trimEnd().replace(/[.]+$/, '')
}
