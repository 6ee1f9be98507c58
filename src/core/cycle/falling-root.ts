// Where a function that only falls goes through zero: a curved step where the last points allow one, a halving where
// they do not, so that the bracket always closes, and quickly where the function is smooth.

const STEPS = 200
/** Relative width of the bracket at which a double has no more to give. */
const CLOSE = 4 * Number.EPSILON

interface Place {
  readonly at: number
  readonly value: number
}

/**
 * The last two places left, `low` with a value of zero or above and `high` with one below it. They are neighbours, but
 * where the value at `low` is exactly zero: the search ends there, and `high` is only known to lie beyond. The function
 * must not rise between them; it may jump. Throws when it is below zero at `from` already, or not below zero at `to`: a bug.
 * Source: T. R. Chandrupatla, Advances in Engineering Software 28 (1997) 145-149 (from memory).
 */
export function fallingRoot(
  value: (at: number) => number,
  from: number,
  to: number,
): { readonly low: number; readonly high: number } {
  // `near` is the newest place, `far` the one across the zero from it, `old` the one before.
  let near: Place = { at: to, value: value(to) }
  let far: Place = { at: from, value: value(from) }
  let share = 0.5
  if (!(far.value >= 0 && near.value < 0)) throw new Error('there is no zero between these two places')
  for (let i = 0; i < STEPS; i++) {
    const at = near.at + share * (far.at - near.at)
    const found: Place = { at, value: value(at) }
    const isSameSide = found.value >= 0 === near.value >= 0
    const old = isSameSide ? near : far
    if (!isSameSide) far = near
    near = found
    const least = (CLOSE * Math.abs(near.at)) / Math.abs(far.at - near.at)
    if (near.value === 0 || !(least < 0.5)) break
    share = Math.min(1 - least, Math.max(least, nextShare(near, far, old)))
  }
  return near.value >= 0 ? { low: near.at, high: far.at } : { low: far.at, high: near.at }
}

/** Inverse quadratic step through three places where it is safe, else a half. */
function nextShare(near: Place, far: Place, old: Place): number {
  const place = (near.at - far.at) / (old.at - far.at)
  const height = (near.value - far.value) / (old.value - far.value)
  if (!(height * height < place && (1 - height) ** 2 < 1 - place)) return 0.5
  const [n, f, o] = [near.value, far.value, old.value]
  const stretch = (old.at - near.at) / (far.at - near.at)
  return (n / (f - n)) * (o / (f - o)) + stretch * (n / (o - n)) * (f / (o - f))
}
