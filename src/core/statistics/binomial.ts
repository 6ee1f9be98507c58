// The exact binomial test: how likely so many hits, or more, are by chance alone.

/**
 * P(X >= hits) of n independent trials that each hit with probability p: the exact test of a share, without any approximation.
 * Source: W. J. Conover, Practical Nonparametric Statistics, the binomial test (from memory). Sums term by term from the far
 * end, so that a small tail keeps its digits.
 * @throws Error for counts that are no whole numbers with 0 <= hits <= n, or p outside 0 to 1.
 * @example 5 of 5 with p = 0.2: 0.2^5 = 0.00032
 */
export function binomialAtLeast(hits: number, n: number, p: number): number {
  const sound =
    Number.isSafeInteger(hits) && Number.isSafeInteger(n) && hits >= 0 && hits <= n && p >= 0 && p <= 1
  if (!sound) throw new Error(`no binomial tail for ${hits} of ${n} at ${p}`)
  if (hits === 0) return 1
  let tail = 0
  for (let k = n; k >= hits; k--) tail += Math.exp(logChoose(n, k) + k * logOf(p) + (n - k) * logOf(1 - p))
  return Math.min(1, tail)
}

/** Zero times the logarithm of zero is to be zero, so the logarithm is kept finite: exp of it is zero all the same. */
function logOf(x: number): number {
  return x === 0 ? -1e300 : Math.log(x)
}

function logChoose(n: number, k: number): number {
  let log = 0
  for (let i = 1; i <= Math.min(k, n - k); i++) log += Math.log((n - i + 1) / i)
  return log
}
