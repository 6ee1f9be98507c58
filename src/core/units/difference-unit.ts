// The unit that a difference of two figures is shown in: degrees and gauge pressures have one of their own.
import type { QuantityKind } from './kinds.ts'
import { unitNamed, unitsOf } from './unit-table.ts'

/** `unit` itself where it is of that kind; `delta-degF` for `degF`, `psi` for `psig`; else the first of the kind. */
export function differenceUnit(unit: string, kind: QuantityKind): string {
  if (unitNamed(unit)?.kind === kind) return unit
  const wanted = kind === 'temperature-difference' ? `delta-${unit}` : unit.replace(/g$/, '')
  const known = unitsOf(kind)
  return (known.find((one) => one.symbol === wanted) ?? known[0])?.symbol ?? unit
}
