// GUM H.2 put together from our budget: resistance, reactance and impedance from voltage, current and phase that were
// read at the same time, so that their errors go together.
import { type Budget, type Correlation, combineBudget } from '../../../src/core/metrology/budget.ts'
import { meanOf, sdOf } from '../../../src/core/statistics/summary.ts'
import { H2_I, H2_PHI, H2_V } from './statistics-data.ts'

function correlation(a: readonly number[], b: readonly number[]): number {
  const [am, bm] = [meanOf(a), meanOf(b)]
  const products = a.map((x, i) => (x - am) * ((b[i] ?? Number.NaN) - bm))
  return products.reduce((sum, p) => sum + p, 0) / ((a.length - 1) * sdOf(a) * sdOf(b))
}

const I = H2_I.map((mA) => mA / 1000)
const MEANS = { V: meanOf(H2_V), I: meanOf(I), phi: meanOf(H2_PHI) }
export const H2_R: readonly Correlation[] = [
  { between: ['V', 'I'], r: correlation(H2_V, I) },
  { between: ['V', 'phi'], r: correlation(H2_V, H2_PHI) },
  { between: ['I', 'phi'], r: correlation(I, H2_PHI) },
]

function budget(cV: number, cI: number, cPhi: number): Budget {
  const u = (xs: readonly number[]) => sdOf(xs) / Math.sqrt(xs.length)
  const lines = [
    { name: 'V', u: u(H2_V), sensitivity: cV, dof: 4 },
    { name: 'I', u: u(I), sensitivity: cI, dof: 4 },
    { name: 'phi', u: u(H2_PHI), sensitivity: cPhi, dof: 4 },
  ]
  const made = combineBudget(lines, H2_R)
  if (!made.ok) throw new Error(made.error.say)
  return made.value
}

const { V, I: A, phi } = MEANS
const [Z, R, X] = [V / A, (V / A) * Math.cos(phi), (V / A) * Math.sin(phi)]
export const H2 = {
  R: { value: R, budget: budget(R / V, -R / A, -X) },
  X: { value: X, budget: budget(X / V, -X / A, R) },
  Z: { value: Z, budget: budget(Z / V, -Z / A, 0) },
}
