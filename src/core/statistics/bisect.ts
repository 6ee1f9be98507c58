// Where a steadily changing function crosses zero, by halving: slow, certain, and exact to the last bit of a double.

/**
 * The point between `low` and `high` where `f` changes sign. `f` is monotonic and has opposite signs (or a zero) at the
 * two ends. Throws when it has not: a bug.
 */
export function crossing(f: (x: number) => number, low: number, high: number): number {
  const rising = f(high) > f(low)
  const isBelow = (x: number) => (rising ? f(x) < 0 : f(x) > 0)
  if (!(isBelow(low) || f(low) === 0) || isBelow(high)) throw new Error('there is no crossing in this range')
  let [from, to] = [low, high]
  for (let i = 0; i < 2000; i += 1) {
    const middle = from + (to - from) / 2
    if (middle <= from || middle >= to) break
    if (isBelow(middle)) from = middle
    else to = middle
  }
  return to
}
