// What a lead counts in a list: two of it never read the same, and its numbers are those that it says it has.
import { expect, it } from 'vitest'
import type { Exception } from '../../../src/core/review/exception.ts'
import { movesOf } from '../../../src/core/review/look.ts'
import { lastNumber, wholeBlocks } from '../../../src/core/review/page.ts'
import { toldApart } from '../../../src/core/review/same-words.ts'
import { Walk } from '../../helpers/example.ts'
import { reviewed } from '../../helpers/reviewed.ts'

const walk = new Walk().toVerdict()
const { engine, entries, state } = walk
const look = {
  defs: engine.defs,
  defsAt: () => engine.defs,
  entries,
  state,
  moves: movesOf(entries),
  beside: {
    log: { faults: [], head: 'none', whole: 'unknown', checked: [] },
    files: [],
    strays: [],
    crewBefore: null,
  },
} as const
const item = (what: string, seq: number): Exception => ({
  kind: 'note',
  what,
  sentences: [],
  entries: [seq],
  open: false,
  number: 1,
  rank: 1,
})

it('two that read the same are told apart by who and when, and where that is one too, by the entry', () => {
  const late = entries.length - 1
  const told = toldApart(look, [item('a slip', 5), item('a slip', late), item('a note', 5)]).map(
    ({ what }) => what,
  )
  expect(told).toEqual([
    expect.stringMatching(/^a slip, RO 06:2\d$/),
    expect.stringMatching(/^a slip, (?:RO )?06:\d\d$/),
    'a note',
  ])
  expect(new Set(told).size).toBe(3)
  const [one, other] = toldApart(look, [item('a slip', 5), item('a slip', 6)])
  expect([one?.what, other?.what]).toEqual([
    expect.stringMatching(/^a slip, .*entry 5$/),
    expect.stringMatching(/^a slip, .*entry 6$/),
  ])
})

it('the head of the list says how many of its numbers are out of the ordinary', () => {
  const review = reviewed(walk)
  const blocks = wholeBlocks(engine.defs, review, state, {
    width: 80,
    rows: 24,
    ascii: false,
    record: 'EXAMPLE',
  } as unknown as Parameters<typeof wholeBlocks>[3])
  const head = blocks
    .flatMap(({ rows }) => rows.map(({ text }) => text))
    .find((text) => /out of the ordinary/.test(text))
  const { length } = review.exceptions
  expect(head).toMatch(new RegExp(`^${length} of ${lastNumber(review)} out of the ordinary, worst first`))
  expect(Math.max(...blocks.map(({ margin }) => Number(margin)))).toBe(lastNumber(review))
})
