// The normal distribution, for stating the chance of being wrong. Nothing else belongs here.

const ROOT_TWO_PI = Math.sqrt(2 * Math.PI)

function density(z: number): number {
  return Math.exp((-z * z) / 2) / ROOT_TWO_PI
}

/** Power series about the middle: M. Abramowitz & I. Stegun, Handbook of Mathematical Functions, 26.2.11. */
function aboutTheMiddle(z: number): number {
  let term = z
  let sum = z
  for (let odd = 3; Math.abs(term) > 1e-18 * Math.abs(sum) && odd < 400; odd += 2) {
    term *= (z * z) / odd
    sum += term
  }
  return 0.5 + density(z) * sum
}

/** Area beyond z > 0 by continued fraction: Abramowitz & Stegun 26.2.14. Keeps its digits far out in the tail. */
function tail(z: number): number {
  let below = z
  for (let n = 200; n >= 1; n -= 1) below = z + n / below
  return density(z) / below
}

/** The part of a standard normal distribution that lies below z (no unit). Clause numbers above are from memory. */
export function normalBelow(z: number): number {
  if (Number.isNaN(z)) throw new Error('normalBelow was given a value that is not a number')
  if (z < -2.5) return tail(-z)
  if (z > 2.5) return 1 - tail(z)
  return aboutTheMiddle(z)
}

/**
 * Chance that a one-sided limit is met in truth: the part of a normal distribution about `value` with standard
 * uncertainty `standardU` that lies inside the limit. Source: JCGM 106:2012, 7.3 (one-sided tolerance interval).
 */
export function chanceInside(
  bound: 'at-most' | 'at-least',
  value: number,
  standardU: number,
  limit: number,
): number {
  if (!(standardU > 0)) throw new Error('chanceInside needs a standard uncertainty above zero')
  const z = (limit - value) / standardU
  return normalBelow(bound === 'at-most' ? z : -z)
}
