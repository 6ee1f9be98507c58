// Which steps want a thing: by their numbers on the sheet, and whether all of them stand under a condition.
import type { PlacedStep } from '../job/definitions.ts'

export interface Steps {
  /** Numbers on the sheet, rising, each once. */
  readonly numbers: readonly number[]
  /** Every one of them is done under a condition only, so it may come to none. */
  readonly perhaps: boolean
}

export function stepsOf(placed: readonly PlacedStep[]): Steps {
  return {
    numbers: [...new Set(placed.map((one) => one.number))].sort((a, b) => a - b),
    perhaps: placed.every(isConditional),
  }
}

export function isConditional({ rule, inside }: PlacedStep): boolean {
  return rule !== null || inside.some((part) => part.rule !== null)
}

/** What is wanted by several steps, once: by a key, in the order first met. */
export function once<T>(
  wanted: readonly { readonly key: string; readonly placed: PlacedStep; readonly thing: T }[],
): { readonly things: readonly T[]; readonly steps: Steps }[] {
  const byKey = new Map<string, { things: T[]; placed: PlacedStep[] }>()
  for (const { key, placed, thing } of wanted) {
    const entry = byKey.get(key) ?? { things: [], placed: [] }
    entry.things.push(thing)
    entry.placed.push(placed)
    byKey.set(key, entry)
  }
  return [...byKey.values()].map(({ things, placed }) => ({ things, steps: stepsOf(placed) }))
}

/** `step 4`, `steps 2, 5 to 7`, `perhaps step 11`. */
export function stepsText({ numbers, perhaps }: Steps): string {
  const runs: [number, number][] = []
  for (const n of numbers) {
    const last = runs[runs.length - 1]
    if (last !== undefined && last[1] === n - 1) last[1] = n
    else runs.push([n, n])
  }
  const words = runs.map(([from, to]) => {
    if (from === to) return String(from)
    return to === from + 1 ? `${from}, ${to}` : `${from} to ${to}`
  })
  return `${perhaps ? 'perhaps ' : ''}step${numbers.length === 1 ? '' : 's'} ${words.join(', ')}`
}
