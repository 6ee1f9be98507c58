// What the review of a walked piston pull has to hold, whatever its answers come to: the structure, and no counts.
import { expect } from 'vitest'
import { nonconformances } from '../../src/core/job/nonconformance.ts'
import { KINDS } from '../../src/core/review/exception.ts'
import { screenLines, wholeBlocks } from '../../src/core/review/page.ts'
import { layOut, plainText } from '../../src/core/sheet/block.ts'
import type { Walk } from './example.ts'
import { reviewOfEntries } from './reviewed.ts'

export function expectReviewed(walk: Walk): void {
  const { defs } = walk.engine
  const review = reviewOfEntries(defs, walk.entries)
  const of = (kind: string) => review.exceptions.filter((one) => one.kind === kind)
  const ranks = review.exceptions.map((one) => KINDS.indexOf(one.kind))
  expect(ranks).toEqual([...ranks].sort((a, b) => a - b))
  // Answers from a file head it, before anything that they say.
  expect(review.exceptions[0]?.what).toMatch(/gates not enforced by Barover/)
  const raised = nonconformances(defs, walk.state)
  expect([...of('verdict'), ...of('finding')].map((one) => one.entries[0]).sort()).toEqual(
    raised.map(({ seq }) => seq).sort(),
  )
  const doubted = walk.entries.filter((e) => e.type === 'instrument.doubted').map((e) => e.seq)
  expect(of('instrument').flatMap((one) => one.entries)).toEqual(expect.arrayContaining(doubted))
  expect(of('missing').filter((one) => one.what.startsWith('NOT DONE'))).toEqual([])
  // A question about figures opens those figures.
  for (const one of of('improbable').filter(({ what }) => what.includes('unlike that before')))
    expect([...new Set(one.entries.map((seq) => walk.entries[seq]?.type))]).toEqual(['reading.taken'])
  expect(of('log')).toEqual([])
  for (const { sentences } of of('fallback')) {
    const rows = sentences.slice(0, -1)
    // A source is told once in a row; where the machine's own limit governs, what went by another book is named.
    const once = rows.filter((one) => (one.match(/table 4-4 p\. 272/g) ?? []).length > 1)
    expect(once).toEqual([])
    for (const own of rows.filter((one) => /Machine book/.test(one)))
      expect(own).toMatch(/Machine book [^;]*; by fall-back: [^;]+, Bloch/)
    expect(sentences.at(-1)).toMatch(
      /hold no limit of their own for (?!.*\blargest\b)(?!.*radial thickness).* and /,
    )
  }
  // One screen: what went wrong has its room first, and rows of figures stand behind a number of it.
  const style = { width: 79, record: 'EXAMPLE', ascii: true } as const
  const screen = plainText(screenLines(defs, review, style, 21)).split('\n')
  expect(screen.length).toBeLessThanOrEqual(21)
  expect(screen.join('\n')).toMatch(/bore diameter, (?:in|mm); wear by \d readings, |\d+ found and left/)
  const bores = review.changes.filter((one) => one.of === 'bore diameter')
  expect(bores.length).toBeGreaterThan(1)
  for (const { rate, hoursLeft } of bores) {
    expect(rate?.ok).toBe(true)
    expect(hoursLeft).toMatchObject({ ok: false, error: { code: 'remade' } })
  }
  const whole = wholeBlocks(defs, review, walk.state, style)
    .map((block) => plainText(layOut(block, style)))
    .join('\n')
  // The bore with the last overhaul beside it; its hours are not told, as it was cut or renewed.
  expect(whole).toMatch(/bore diameter, (?:in|mm); wear by \d readings, /)
  const row =
    /\S+ \d+-\d+: last \d+\.\d+ on \d{4}-\d\d-\d\d, found \d+\.\d+, since the last [+-]\d+\.\d+, left \d+\.\d+, found to left/
  expect(whole.replace(/\n.*?\| +/g, ' ')).toMatch(row)
  for (const { number } of review.exceptions)
    expect(whole).toMatch(new RegExp(`^EXAMPLE +${number} \\| `, 'm'))
}
