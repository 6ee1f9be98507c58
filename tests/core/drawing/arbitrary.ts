// Random bores and the checks every drawing must pass.
import fc from 'fast-check'
import { expect } from 'vitest'
import type { Drawing, DrawnStation } from '../../../src/core/drawing/types.ts'

export const HE_CENTRE_CE: readonly DrawnStation[] = [
  { id: 'he', label: 'HE', at: 0, value: '9.5062' },
  { id: 'centre', label: 'CENTRE', at: 0.5 },
  { id: 'ce', label: 'CE', at: 1 },
]
export const VERTICAL = { id: 'v', label: 'top to bottom', from: 12, to: 6 }
export const HORIZONTAL = { id: 'h', label: 'side to side', from: 9, to: 3 }

/** A picture written with a leading and a closing line break, as text. */
export function picture(text: string): string[] {
  return text.slice(1).trimEnd().split('\n')
}

/** Names without H or o or x: they can't be taken for the word HERE or for a mark. */
const name = fc.string({ unit: fc.constantFrom(...'ABCDEFGIJ123é漢'), minLength: 1, maxLength: 12 })
const at = fc.oneof(
  fc.constantFrom(0, 0.5, 1, -0.05, 1.05),
  fc.integer({ min: -40, max: 104 }).map((n) => n / 64),
)

export const stations = fc
  .array(
    fc.record({
      label: name,
      at,
      value: fc.option(fc.constantFrom('9.5062', '241.457', '0'), { nil: undefined }),
      deep: fc.boolean(),
    }),
    { minLength: 1, maxLength: 9 },
  )
  .map((list) =>
    list.map(
      ({ label, at, value, deep }, i): DrawnStation => ({
        id: `s${i}`,
        label,
        at,
        ...(value === undefined ? {} : { value }),
        ...(deep && (at < 0 || at > 1) && i < 2 ? { inCounterbore: true } : {}),
      }),
    ),
  )

export const bore = stations.chain((list) =>
  fc.record({
    stations: fc.constant(list),
    here: fc.constantFrom(...list.map((station) => station.id)),
    hasCounterbore: fc.boolean(),
  }),
)

export const axis = fc
  .record({ from: fc.integer({ min: 4, max: 48 }), to: fc.integer({ min: 4, max: 48 }) })
  .map(({ from, to }) => ({ id: 'a', label: 'axis', from: from / 4, to: to / 4 }))

export const size = fc.record({
  ascii: fc.boolean(),
  width: fc.integer({ min: 24, max: 70 }),
  height: fc.integer({ min: 5, max: 16 }),
})

/** What holds for every drawing: width kept, nothing trailing, one column per character, ASCII where asked. */
export function expectSound(drawn: Drawing, ascii: boolean, width: number, height: number): void {
  const allowed = ascii ? /^[ -~]*$/ : /^[ -~\u2500-\u257f]*$/
  for (const line of drawn.lines) {
    expect(line).toMatch(allowed)
    expect(line).not.toMatch(/\s$/)
    expect(line.length).toBeLessThanOrEqual(width)
  }
  expect(drawn.lines.length).toBeLessThanOrEqual(height)
  expect(drawn.width).toBe(Math.max(0, ...drawn.lines.map((line) => line.length)))
}

export function count(lines: readonly string[], word: string): number {
  return lines.join('\n').split(word).length - 1
}
