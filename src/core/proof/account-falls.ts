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
