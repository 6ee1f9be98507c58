// Student's t: how many standard uncertainties a band must be wide when the scatter itself is known from few readings.
import { crossing } from './bisect.ts'
import { normalAt } from './normal-quantile.ts'

/** Beyond this many degrees of freedom the expansion about the normal is good to 11 figures. */
const NEARLY_NORMAL = 1e4

/** ln gamma(z), z > 0: Stirling's series, M. Abramowitz & I. Stegun, Handbook of Mathematical Functions, 6.1.41. */
function logGamma(z: number): number {
  if (z < 12) return logGamma(z + 1) - Math.log(z)
  const w = 1 / (z * z)
  const series = (1 / 12 - w * (1 / 360 - w * (1 / 1260 - w * (1 / 1680 - w * (1 / 1188))))) / z
  return (z - 0.5) * Math.log(z) - z + 0.5 * Math.log(2 * Math.PI) + series
}

/**
 * Continued fraction of the incomplete beta function, evaluated forward. Fraction: NIST Digital Library of Mathematical
 * Functions 8.17.22 and 8.17.23; evaluation: W. J. Lentz, Applied Optics 15 (1976) 668, modified (both from memory).
 */
function betaFraction(a: number, b: number, x: number): number {
  const guard = (v: number) => (Math.abs(v) < 1e-300 ? 1e-300 : v)
  let c = 1
  let d = 1 / guard(1 - ((a + b) * x) / (a + 1))
  let value = d
  for (let m = 1; m < 10_000; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1))
    let change = 1
    for (const step of [even, odd]) {
      d = 1 / guard(1 + step * d)
      c = guard(1 + step / c)
      change = c * d
      value *= change
    }
    if (Math.abs(change - 1) < 1e-16) return value
  }
  throw new Error('the incomplete beta function did not settle')
}

/**
 * Regularised incomplete beta function I_x(a, b), with y = 1 - x passed in so that neither end loses its digits.
 * Symmetry I_x(a, b) = 1 - I_y(b, a): DLMF 8.17.4 (from memory). Needs a, b > 0.
 */
export function incompleteBeta(a: number, b: number, x: number, y: number = 1 - x): number {
  if (x <= 0) return 0
  if (y <= 0) return 1
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log(y))
  if (x < (a + 1) / (a + b + 2)) return (front * betaFraction(a, b, x)) / a
  return 1 - (front * betaFraction(b, a, y)) / b
}

/** Chance that t is above `t` >= 0. Source: Abramowitz & Stegun 26.7.1 with 26.5.27, as I_x(nu/2, 1/2) / 2. */
function tail(t: number, nu: number): number {
  const square = t * t
  return incompleteBeta(nu / 2, 0.5, nu / (nu + square), square / (nu + square)) / 2
}

/** The part of Student's t with `nu` degrees of freedom (any number above zero) that lies below `t`. */
export function tBelow(t: number, nu: number): number {
  if (Number.isNaN(t) || !(nu > 0)) throw new Error('tBelow needs a number and degrees of freedom above zero')
  return t < 0 ? tail(-t, nu) : 1 - tail(t, nu)
}

/**
 * The t below which a part `p` of Student's distribution lies; `nu` may be broken, or infinite for the normal.
 * Throws unless 0 < p < 1 and nu > 0. Above 1e4 degrees of freedom: Abramowitz & Stegun 26.7.5.
 * @example p 0.975, nu 10: 2.228
 */
export function tAt(p: number, nu: number): number {
  if (!(p > 0 && p < 1) || !(nu > 0)) throw new Error('tAt needs 0 < p < 1 and degrees of freedom above zero')
  if (p < 0.5) return -upperAt(p, nu)
  return p === 0.5 ? 0 : upperAt(1 - p, nu)
}

/** The t with chance `q` < 1/2 of being exceeded. */
function upperAt(q: number, nu: number): number {
  if (nu > NEARLY_NORMAL) {
    const z = -normalAt(q)
    const first = (z ** 3 + z) / 4
    const second = (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96
    return z + first / nu + second / nu ** 2
  }
  let high = 1
  while (tail(high, nu) > q && high < 1e300) high *= 2
  return crossing((t) => q - tail(t, nu), 0, high)
}

/** Coverage factor of a two-sided interval holding `level` of the distribution: t at (1 + level) / 2. Same throws. */
export function coverageFactor(level: number, nu: number): number {
  return tAt((1 + level) / 2, nu)
}
