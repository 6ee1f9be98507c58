// Cross-checks of a gate: what it holds back, who witnesses it, and the seats and order of its gas tests.

import { quote } from '../lib/wording.ts'
import type { Evidence, EvidenceOf } from './evidence.ts'
import { type Finding, finding, type Path, repeatedIds, unknownId } from './lint-common.ts'
import { lintWaits } from './lint-gate-waits.ts'
import { lintEvidence, lintProving, lintSeatFor } from './lint-procedure-evidence.ts'
import type { Procedure, StepOf } from './procedure.ts'

/** Findings of one gate; `base` is its path. Limits of the machine record are not seen here (lint-job.ts). */
export function lintGate(procedure: Procedure, gate: StepOf<'gate'>, base: Path): Finding[] {
  const declared = procedure.hazards.map((hazard) => hazard.id)
  const found = repeatedIds([...base, 'evidence'], gate.evidence, 'evidence')
  gate.holds.forEach((id, n) => {
    if (!declared.includes(id)) found.push(unknownId([...base, 'holds', n], id, 'hazard', declared))
  })
  found.push(...lintWitness(gate, [...base, 'evidence']), ...lintProving(gate, base))
  found.push(...lintWaits(gate, base, ownLife))
  gate.evidence.forEach((evidence, n) => {
    const path = [...base, 'evidence', n]
    found.push(...lintEvidence(procedure, evidence, path))
    if (evidence.kind === 'gas') found.push(...lintGas(procedure, gate, evidence, n, path))
  })
  return found
}

/** Gas lives as long as the machine record says (lint-job-gas.ts). */
function ownLife(evidence: Evidence) {
  return evidence.kind === 'measured' || evidence.kind === 'words' ? evidence.life : undefined
}

/** A witness looks at everything, so nothing may be asked after the last one. */
function lintWitness(gate: StepOf<'gate'>, path: Path): Finding[] {
  const last = gate.evidence.findLastIndex((evidence) => evidence.kind === 'witness')
  if (last === -1) {
    const message = `No second person witnesses the gate ${quote(gate.id)}.`
    return [finding(path, 'no-witness', message, 'add evidence of kind witness, as the last line')]
  }
  return gate.evidence.slice(last + 1).map((evidence, n) => {
    const message = `${quote(evidence.id)} is asked after the witness, so it is witnessed by nobody.`
    return finding([...path, last + 1 + n, 'id'], 'not-witnessed', message, 'put the witness last')
  })
}

type GasEvidence = EvidenceOf<'gas'>

function lintGas(
  procedure: Procedure,
  gate: StepOf<'gate'>,
  gas: GasEvidence,
  n: number,
  path: Path,
): Finding[] {
  const found = lintSeatFor(procedure, gas.with, ['gas_meter'], 'test gas', path)
  if (gas.oxygen !== undefined) found.push(...lintOxygen(gate, gas.oxygen, n, [...path, 'oxygen']))
  return found
}

/** Oxygen comes first: below what the sensor needs, a flammables figure means nothing (decision 1). */
function lintOxygen(gate: StepOf<'gate'>, id: string, n: number, path: Path): Finding[] {
  const where = gate.evidence.findIndex((evidence) => evidence.id === id)
  const named = gate.evidence[where]
  if (named === undefined) {
    const gases = gate.evidence.slice(0, n).filter((evidence) => evidence.kind === 'gas')
    return [
      unknownId(
        path,
        id,
        'evidence',
        gases.map((evidence) => evidence.id),
      ),
    ]
  }
  if (named.kind !== 'gas') {
    return [
      finding(path, 'not-a-gas-test', `${quote(id)} is evidence of kind ${named.kind}, not a gas test.`),
    ]
  }
  if (where >= n) {
    const message = `${quote(id)} is not asked before this test.`
    return [finding(path, 'oxygen-first', message, 'oxygen is tested first, in the same gate')]
  }
  return []
}
