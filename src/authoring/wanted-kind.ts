// Where a value may be one of two kinds of quantity, which of them the keys beside it ask for. An author who reads a length
// is not helped by a list of units of temperature.
import type { Step } from './node-at.ts'
import { childOf, valueAt } from './schema-at.ts'

interface Telling {
  /** Keys of the value and of the map it stands in, from the outside in. */
  readonly at: readonly string[]
  /** Key beside the outermost of them that tells. */
  readonly by: string
  /** Index of the alternative, in the order of the schema, by what stands there. */
  readonly takes: Readonly<Record<string, number>>
}

const TELLING: readonly Telling[] = [
  { at: ['repeats', 'within'], by: 'quantity', takes: { length: 0, temperature: 1 } },
  {
    at: ['at_most'],
    by: 'gas',
    takes: { oxygen: 0, hydrogen_sulfide: 0, flammable_in_inert: 0, flammable: 1 },
  },
]

/** The alternative meant at `path`, or undefined where nothing beside it tells. */
export function wantedAlternative(value: unknown, path: readonly Step[]): number | undefined {
  for (const { at, by, takes } of TELLING) {
    if (at.some((key, n) => path[path.length - at.length + n] !== key)) continue
    const told = childOf(valueAt(value, path.slice(0, -at.length)), by)
    return typeof told === 'string' && Object.hasOwn(takes, told) ? takes[told] : undefined
  }
  return undefined
}
