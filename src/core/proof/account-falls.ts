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

/**
 * A line taken back. A lock, tag or blind: whatever was tried at any gate since it was keyed, against what it was to hold, was tried
 * under nothing that is known. Words, a wait, a value: whatever was shown since against the same; and read with an instrument of the
 * seat that words were said of.
 */
export function withoutShownAfter(
  defs: Definitions,
  gates: Watch['gates'],
  entry: Extract<Entry, { type: 'gate.closed' }>,
): Watch['gates'] {
  const own = gateOf(defs, entry.step)
  const keyed = entry.items.flatMap((item) => {
    const seq = gates.get(entry.step)?.given.get(item)?.seq
    return seq === undefined ? [] : [{ item, seq }]
  })
  // What falls with it was shown after it.
  const [taken] = keyed.toSorted((a, b) => a.seq - b.seq)
  const line = own?.step.evidence.find((one) => one.id === taken?.item.split('.')[0])
  if (!isTakenBack(entry) || own === undefined || taken === undefined || line === undefined) return gates
  const seat = defs.seats.find((one) => line.kind === 'words' && one.id === line.seat)
  const falls = (gate: GateStep, key: string, one: Since): boolean => {
    const other = gate.step.evidence.find((each) => each.id === key.split('.')[0])
    if (other === undefined || one.seq < taken.seq) return false
    const told = againstAt(own, line)
    const instrument = defs.instruments.instruments.find((each) => each.id === one.instrument)
    return (
      (AFTER[sortOf(line)].includes(other.kind) && againstAt(gate, other).some((h) => told.includes(h))) ||
      (instrument !== undefined && seat?.kinds.includes(instrument.kind) === true)
    )
  }
  return new Map(
    [...gates].map(([id, account]) => {
      const gate = gateOf(defs, id)
      if (gate === undefined) return [id, account] as const
      const given = only(account.given, (key) => !falls(gate, key, account.given.get(key) ?? UNKNOWN))
      const begun = only(account.begun, (key) => !falls(gate, key, account.begun.get(key) ?? UNKNOWN))
      return [
        id,
        { ...account, given, begun, opened: account.opened && given.size === account.given.size },
      ] as const
    }),
  )
}

interface Since {
  readonly seq: number
  readonly instrument?: string | undefined
}
const UNKNOWN: Since = { seq: Number.NaN }

type Line = GateStep['step']['evidence'][number]
const EACH: readonly Line['kind'][] = ['words', 'gas', 'measured', 'wait']
const AFTER: Readonly<Record<'sure' | 'value' | 'other', readonly Line['kind'][]>> = {
  sure: EACH,
  value: EACH.filter((kind) => kind !== 'measured'),
  other: [],
}

/** By `correct`, or by `back`, which alone gives no reason. */
function isTakenBack({ cause, why }: Extract<Entry, { type: 'gate.closed' }>): boolean {
  return cause === 'corrected' || (cause === 'again' && why === undefined)
}

function sortOf(line: Line): keyof typeof AFTER {
  if (line.kind === 'measured') return 'value'
  const isNumber = line.kind === 'numbers' && line.of !== 'permit' && line.of !== 'part'
  const hangs = (line.kind === 'locks' || isNumber) && line.taken_off === undefined
  const tells = line.kind === 'words' && line.register === undefined && line.findings === undefined
  return hangs || tells || line.kind === 'wait' ? 'sure' : 'other'
}

function againstAt(gate: GateStep, line: Line): readonly string[] {
  return ('against' in line ? line.against : undefined) ?? gate.step.holds
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
