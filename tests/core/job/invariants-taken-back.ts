// The part of the invariants that is about evidence taken back: what was tried while a lock was said to hang, and what was read
// since words that were not so, read off the entries.
import type { Definitions } from '../../../src/core/job/definitions.ts'
import type { Entry } from '../../../src/core/job/entries.ts'
import type { GateStep } from '../../../src/core/job/gate.ts'

type Wanted = GateStep['step']['evidence'][number]

const wantedOf = (gate: GateStep, key: string): Wanted | undefined =>
  gate.step.evidence.find((one) => one.id === key.split('.')[0])

const againstAt = (gate: GateStep, wanted: Wanted | undefined): readonly string[] =>
  (wanted !== undefined && wanted.kind !== 'witness' && wanted.kind !== 'lift' ? wanted.against : null) ??
  gate.step.holds

/** Locks, tags and blinds that hang on the machine until the job is over. */
function isHung(wanted: Wanted | undefined): boolean {
  if (wanted?.kind === 'locks') return wanted.taken_off === undefined
  return (
    wanted?.kind === 'numbers' &&
    wanted.taken_off === undefined &&
    wanted.of !== 'permit' &&
    wanted.of !== 'part'
  )
}

/**
 * Lines of `gate` that are worth nothing after entry `n`, where `n` takes back a number that hangs, words, a wait or a value:
 * whatever was shown since against the same, or read with a meter that the words told of.
 *
 * @returns whether a line keyed under this name, with this seq and by this instrument, falls
 */
export function fallsWithLine(
  defs: Definitions,
  entries: readonly Entry[],
  gate: GateStep,
  n: number,
): (key: string, one: { readonly seq: number; readonly instrument?: string | undefined }) => boolean {
  const e = entries[n]
  // By `correct`, or by `back`, which alone gives no reason.
  const isTaken =
    e?.type === 'gate.closed' && (e.cause === 'corrected' || (e.cause === 'again' && e.why === undefined))
  const at = isTaken ? e : null
  const own = defs.steps.find((s): s is GateStep => s.step.kind === 'gate' && s.id === at?.step)
  if (at === null || own === undefined) return () => false
  // What is taken back comes first of all that falls with it in the order it was keyed.
  const keyed = at.items.flatMap((item) => {
    const found = entries
      .slice(0, n)

      .findLast(
        (o) =>
          (o.type === 'evidence.given' || o.type === 'wait.begun') && o.step === own.id && o.item === item,
      )
    return found === undefined ? [] : [{ item, seq: found.seq }]
  })
  const taken = keyed.toSorted((a, b) => a.seq - b.seq)[0]
  const line = taken === undefined ? undefined : wantedOf(own, taken.item)
  if (taken === undefined || line === undefined) return () => false
  const tells = line.kind === 'words' && line.register === undefined && line.findings === undefined
  if (!isHung(line) && !tells && line.kind !== 'wait' && line.kind !== 'measured') return () => false
  const kinds = ['words', 'gas', 'wait', ...(line.kind === 'measured' ? [] : ['measured'])]
  const told = againstAt(own, line)
  const seat = defs.seats.find((one) => line.kind === 'words' && line.seat === one.id)
  const meters = defs.instruments.instruments
    .filter((one) => seat?.kinds.includes(one.kind))
    .map((one) => one.id)
  return (key, { seq, instrument }) => {
    if (!(seq > taken.seq)) return false
    const wanted = wantedOf(gate, key)
    const isSuch = wanted !== undefined && kinds.includes(wanted.kind)
    return (
      (isSuch && againstAt(gate, wanted).some((hazard) => told.includes(hazard))) ||
      meters.includes(instrument ?? '')
    )
  }
}
