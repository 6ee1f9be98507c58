// A seeded generator for second-method tests, so that a failure repeats: mulberry32 (T. Ettinger), public domain.

export function seeded(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), state | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296
  }
}

/** Standard normal draws: G. E. P. Box & M. E. Muller, Ann. Math. Stat. 29 (1958) 610. */
export function normalDraws(uniform: () => number): () => number {
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform())
}
