// The part of the invariants that is about a lock, tag or blind taken back: what was tried while it was said to hang, read off the
// entries.
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
 * Lines of `gate` that are worth nothing after entry `n`, where `n` takes back a number that hangs: whatever was tried, read or
 * watched after that number was keyed, against anything that it was to hold back.
 *
 * @returns whether a line keyed under this name, with this seq, falls
 */
export function fallsWithNumber(
  defs: Definitions,
  entries: readonly Entry[],
  gate: GateStep,
  n: number,
): (key: string, seq: number) => boolean {
  const e = entries[n]
  const at = e?.type === 'gate.closed' && e.cause === 'corrected' ? e : null
  const own = defs.steps.find((s): s is GateStep => s.step.kind === 'gate' && s.id === at?.step)
  if (at === null || own === undefined) return () => false
  const lost = at.items.flatMap((item) => {
    const wanted = wantedOf(own, item)
    const keyed = entries
      .slice(0, n)
      .findLast((o) => o.type === 'evidence.given' && o.step === own.id && o.item === item)
    return isHung(wanted) && keyed !== undefined ? [{ seq: keyed.seq, held: againstAt(own, wanted) }] : []
  })
  return (key, seq) => {
    const wanted = wantedOf(gate, key)
    const isTried = wanted !== undefined && ['words', 'gas', 'measured', 'wait'].includes(wanted.kind)
    const against = againstAt(gate, wanted)
    return isTried && lost.some((one) => seq > one.seq && one.held.some((hazard) => against.includes(hazard)))
  }
}
