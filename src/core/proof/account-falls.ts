// What an entry takes out of the account of a gate (account.ts), again by the entries and the procedure alone.
import type { Definitions } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import type { GateStep } from '../job/gate.ts'
import type { Account, Watch } from './account.ts'

/** What was measured with an instrument out of calibration proved nothing. */
export function withoutInstrument(account: Account, instrument: string): Account {
  const given = only(account.given, (key) => account.given.get(key)?.instrument !== instrument)
  return given.size === account.given.size ? account : { ...account, given, opened: false }
}

/** Whoever goes takes their own lock along. Nobody waits for it, so the gate stays open to the others. */
export function withoutPerson(defs: Definitions, gates: Watch['gates'], person: string): Watch['gates'] {
  return new Map(
    [...gates].map(([id, account]) => {
      const step = defs.steps.find((s) => s.id === id)?.step
      const theirs = (step?.kind === 'gate' ? step.evidence : []).flatMap((line) =>
        line.kind === 'numbers' && line.per === 'person' ? [`${line.id}.${person}`] : [],
      )
      return [id, { ...account, given: only(account.given, (key) => !theirs.includes(key)) }] as const
    }),
  )
}

/** What proved a hazard that was let in proves nothing any more, and the gate that holds it is shut. */
export function without(gate: GateStep, account: Account, hazards: readonly string[]): Account {
  const { holds, evidence } = gate.step
  if (!holds.some((hazard) => hazards.includes(hazard))) return account
  const stays = (key: string) => {
    const line = evidence.find((one) => one.id === key.split('.')[0])
    const against = line === undefined || line.kind === 'witness' ? holds : (line.against ?? holds)
    return !against.some((hazard) => hazards.includes(hazard))
  }
  return { ...account, opened: false, given: only(account.given, stays), begun: only(account.begun, stays) }
}

/** A value outside its limit: what was waited for over the same hazard is not so any more. */
export function withoutWaits(
  gate: GateStep,
  account: Account,
  failed: Extract<Entry, { type: 'evidence.failed' }>,
): Account {
  const { holds, evidence } = gate.step
  const about = evidence.find((one) => one.id === failed.item)
  if (about?.kind !== 'measured' || isInside(about, failed.reading?.si ?? Number.NaN)) return account
  const hazards = about.against ?? holds
  const stays = (key: string) => {
    const line = evidence.find((one) => one.id === key)
    return line?.kind !== 'wait' || !(line.against ?? holds).some((hazard) => hazards.includes(hazard))
  }
  return { ...account, given: only(account.given, stays), begun: only(account.begun, stays) }
}

/** Shown by trying, reading or watching; the other lines are what hangs there, what is written and who signed. */
const BY_TRYING: readonly string[] = ['words', 'gas', 'measured', 'wait']

/**
 * A lock, tag or blind taken back: whatever was tried at any gate since it was keyed, against what it was to hold, was tried under
 * nothing that is known.
 */
export function withoutTriedUnder(
  defs: Definitions,
  gates: Watch['gates'],
  entry: Extract<Entry, { type: 'gate.closed' }>,
): Watch['gates'] {
  const own = gateOf(defs, entry.step)
  if (entry.cause !== 'corrected' || own === undefined) return gates
  const lost = entry.items.flatMap((item) => {
    const line = own.step.evidence.find((one) => one.id === item.split('.')[0])
    const keyed = gates.get(own.id)?.given.get(item)
    const hangs =
      (line?.kind === 'locks' || (line?.kind === 'numbers' && line.of !== 'permit' && line.of !== 'part')) &&
      line.taken_off === undefined
    return hangs && keyed !== undefined ? [{ seq: keyed.seq, held: line.against ?? own.step.holds }] : []
  })
  if (lost.length === 0) return gates
  return new Map(
    [...gates].map(([id, account]) => {
      const gate = gateOf(defs, id)
      const stays = (key: string, seq: number) => {
        const line = gate?.step.evidence.find((one) => one.id === key.split('.')[0])
        if (gate === undefined || line === undefined || !BY_TRYING.includes(line.kind)) return true
        const against = ('against' in line ? line.against : undefined) ?? gate.step.holds
        return !lost.some((one) => !(seq < one.seq) && one.held.some((hazard) => against.includes(hazard)))
      }
      const given = only(account.given, (key) => stays(key, account.given.get(key)?.seq ?? Number.NaN))
      const begun = only(account.begun, (key) => stays(key, account.begun.get(key)?.seq ?? Number.NaN))
      const opened = account.opened && given.size === account.given.size
      return [id, { ...account, given, begun, opened }] as const
    }),
  )
}

function gateOf(defs: Definitions, id: string): GateStep | undefined {
  return defs.steps.find((s): s is GateStep => s.id === id && s.step.kind === 'gate')
}

export function only<T>(
  map: ReadonlyMap<string, T>,
  stays: (key: string) => boolean,
): ReadonlyMap<string, T> {
  return new Map([...map].filter(([key]) => stays(key)))
}

interface Bounds {
  readonly at_least?: { readonly si: number } | undefined
  readonly at_most?: { readonly si: number } | undefined
}

export function isInside({ at_least: least, at_most: most }: Bounds, si: number): boolean {
  return si >= (least?.si ?? Number.NEGATIVE_INFINITY) && si <= (most?.si ?? Number.POSITIVE_INFINITY)
}
