// Chance that is always the same for the same seed. Each draw has a name, so that one more of them changes no other.
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { normalAt } from '../statistics/index.ts'

export interface Chance {
  /** Evenly between two figures, the first of them included. */
  readonly between: (least: number, most: number) => number
  /** A standard normal deviate; never further off than 8.2, as no even draw lies nearer to 0 or 1 than 2^-53. */
  readonly normal: () => number
  /** True this often, 0 to 1. */
  readonly isOne: (share: number) => boolean
  readonly pick: <T>(list: readonly [T, ...T[]]) => T
}

/**
 * The chance of one thing: of a seed and of what is drawn, by its names.
 *
 * Even deviates: xoroshiro128+ (Blackman & Vigna, 2018), 53 bits of it, from the library pure-rand. The seed of each name is FNV-1a
 * with 32 bits (Fowler, Noll & Vo) over seed and names. Normal deviates: the even ones through the inverse of the normal
 * distribution (L. Devroye, Non-Uniform Random Variate Generation, Springer 1986, II.2).
 */
export function chanceOf(seed: number, ...names: readonly (string | number)[]): Chance {
  const generator = xoroshiro128plus(fnv1a([seed, ...names].join('/')))
  // The first states after a seed differ in few bits only: they are drawn and dropped.
  for (let n = 0; n < DROPPED; n++) uniformFloat64(generator)
  const even = () => uniformFloat64(generator)
  return {
    between: (least, most) => least + (most - least) * even(),
    normal: () => normalAt(Math.max(even(), LEAST)),
    isOne: (share) => even() < share,
    pick: (list) => list[Math.floor(even() * list.length)] ?? list[0],
  }
}

const DROPPED = 16
/** Zero has no normal deviate. */
const LEAST = 2 ** -53

/** FNV-1a, 32 bits, over the low byte of each character. */
export function fnv1a(text: string): number {
  let hash = 0x811c9dc5
  for (let n = 0; n < text.length; n++) hash = Math.imul(hash ^ (text.charCodeAt(n) & 0xff), 0x01000193)
  return hash
}
