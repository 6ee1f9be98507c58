// Hold points: what stood when each was complete, how old it was then, what was no evidence, and what fell.

import { CAUSES } from '../../job/close-causes.ts'
import { asKind, type Definitions, hazardName, stepById } from '../../job/definitions.ts'
import { defsAt, type Editions } from '../../job/editions.ts'
import type { Entry } from '../../job/entries.ts'
import { GAS_NAMES } from '../../job/evidence-gas.ts'
import { evidenceByKey, type GateStep } from '../../job/gate.ts'
import { keyLabel } from '../../job/item-label.ts'
import { lifeMs } from '../../job/lapse.ts'
import { lapsedAt } from '../../job/lapsed-at.ts'
import { NOT_ENFORCED_BY } from '../../job/paper.ts'
import type { Given, State } from '../../job/state.ts'
import { readStamp, stamp } from '../../lib/instant.ts'
import { falseAt } from '../../practice/false-lines.ts'
import type { Move } from '../../review/look.ts'
import { gasLimitText } from '../../sheet/gate-block.ts'
import { unitNamed } from '../../units/index.ts'
import type { Report } from '../schema.ts'
import type { Figure } from '../schema-words.ts'
import { figureOf } from './figure.ts'

type Told = Report['gates'][number]
type Opening = Told['openings'][number]

const STATUS: Readonly<Record<string, string>> = {
  never: 'never complete',
  open: 'complete',
  closed: 'fallen',
}

/** On a sheet it is neither complete nor fallen: nobody was held back by it here. */
function statusOf(defs: Definitions, state: State, id: string): string {
  const { paper, gates } = state
  if (paper !== null) return `on paper, ${NOT_ENFORCED_BY}`
  // Of a practice session: what was keyed opened it, and was not so.
  if (gates[id]?.status === 'open' && falseAt(defs, state, id).length > 0)
    return 'complete, on FALSE evidence'
  return STATUS[gates[id]?.status ?? 'never'] ?? 'never complete'
}

/** Every hold point that was asked for anything, or that the job would still ask for. */
export function gatesOf(
  defs: Definitions,
  editions: Editions,
  state: State,
  moves: readonly Move[],
  isLeftOut: (id: string) => boolean,
): Told[] {
  const entries = moves.map(({ entry }) => entry)
  return defs.steps.flatMap((placed): Told[] => {
    if (placed.step.kind !== 'gate') return []
    const own = moves.filter(({ entry }) => 'step' in entry && entry.step === placed.id)
    if (own.length === 0 && isLeftOut(placed.id)) return []
    const gate = asKind(placed, 'gate')
    return [
      {
        number: String(placed.number),
        step: placed.id,
        title: placed.step.title,
        holds: gate.step.holds.map((id) => hazardName(defs, id)),
        status: statusOf(defs, state, placed.id),
        openings: own.flatMap((move) => openingOf(defsAt(editions, move.entry.seq), move, entries)),
        falls: own.flatMap((move) => fallOf(defsAt(editions, move.entry.seq), move)),
        failed: own.flatMap(({ entry }) => failedOf(defsAt(editions, entry.seq), entry)),
      },
    ]
  })
}

function gateAt(defs: Definitions, id: string): GateStep {
  return asKind(stepById(defs, id), 'gate')
}

function openingOf(defs: Definitions, { entry, after }: Move, entries: readonly Entry[]): Opening[] {
  if (entry.type !== 'gate.opened') return []
  const gate = gateAt(defs, entry.step)
  const given = Object.entries(after.gates[entry.step]?.given ?? {})
  const openedMs = readStamp(entry.at)?.ms ?? Number.NaN
  return [
    {
      seq: entry.seq,
      at: entry.at,
      by: entry.by ?? null,
      evidence: given
        .sort(([, a], [, b]) => a.seq - b.seq)
        .map(([key, one]) => evidenceOf(defs, gate, key, one, { openedMs, entries })),
    },
  ]
}

function evidenceOf(
  defs: Definitions,
  gate: GateStep,
  key: string,
  given: Given,
  { openedMs, entries }: { readonly openedMs: number; readonly entries: readonly Entry[] },
): Opening['evidence'][number] {
  const evidence = evidenceByKey(gate, key)
  const life = evidence === null ? null : lifeMs(defs, evidence)
  const age = (openedMs - given.atMs) / 1000
  return {
    item: keyLabel(defs, gate, key),
    shown: given.offBy === undefined ? given.shown : `${given.shown}, off by ${given.offBy}`,
    value: figureGiven(entries, given),
    instrument: given.instrument,
    person: given.person,
    at: given.at,
    by: given.by,
    age: Number.isFinite(age) ? age : null,
    life: life === null ? null : life / 1000,
  }
}

/** The figure as it was keyed: the entry behind it has the unit. */
function figureGiven(entries: readonly Entry[], { seq }: Given): Figure | null {
  const entry = entries[seq]
  if (entry?.type !== 'evidence.given' || entry.reading === undefined) return null
  const { si, unit, value } = entry.reading
  return figureOf(unitNamed(unit)?.kind ?? 'ratio', si, unit, String(value))
}

function fallOf(defs: Definitions, { entry, after }: Move): Told['falls'] {
  if (entry.type !== 'gate.closed') return []
  const gate = gateAt(defs, entry.step)
  const lapsed = lapsedAt(defs, after, entry)
  return [
    {
      seq: entry.seq,
      at: entry.at,
      ...(lapsed === null ? {} : { lapsed: stamp(lapsed) }),
      why: entry.why ?? CAUSES[entry.cause],
      void: entry.items.map((key) => keyLabel(defs, gate, key)),
    },
  ]
}

function failedOf(defs: Definitions, entry: Entry): Told['failed'] {
  if (entry.type !== 'evidence.failed') return []
  return [
    {
      seq: entry.seq,
      at: entry.at,
      by: entry.by ?? null,
      item: keyLabel(defs, gateAt(defs, entry.step), entry.item),
      shown: entry.shown,
      why: entry.why,
    },
  ]
}

/** Gas limits that the hold points of the job ask for, with where each comes from. */
export function gasLimitsOf(defs: Definitions, gates: readonly Told[]): Report['gasLimits'] {
  const asked = gates.flatMap(({ step }) =>
    gateAt(defs, step).step.evidence.flatMap((one) => (one.kind === 'gas' ? [one.limit] : [])),
  )
  return defs.machine.site.gas.limits
    .filter(({ id }) => asked.includes(id))
    .map(({ id, gas, source, approved_by }) => ({
      says: `${GAS_NAMES[gas]}: ${gasLimitText(defs, id)}`,
      source,
      approvedBy: approved_by,
    }))
}
