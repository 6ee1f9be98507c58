// A reading that was doubted, kept and corrected after all is told as one thing: never as kept in one place and replaced in another.
import { describe, expect, it } from 'vitest'
import { entryBlocks } from '../../../src/core/sheet/shown-block.ts'
import { AFTER_LINES, BORE_LINES, exampleDefs, noOverhauls, Walk } from '../../helpers/example.ts'
import { reviewed, smallAtSize } from '../../helpers/reviewed.ts'

const found = (walk: Walk) => reviewed(walk).exceptions
const sizeOf = (walk: Walk) => walk.state.readings['size.here']?.at(-1)?.seq ?? -1

describe('a doubtful reading that was kept and corrected after all', () => {
  const walk = () => {
    const kept = smallAtSize().keys('9.7033', '3', 'measured by two of us', '1')
    kept.bring({ do: 'correct', of: sizeOf(kept), typed: '9.5033', why: 'misread' })
    return kept
  }

  it('is said to have been corrected since, with the figure that counts', () => {
    const [doubted] = found(walk().keys('')).filter(({ kind }) => kind === 'doubted')
    expect(doubted?.what).toMatch(
      /^Kept at first, corrected to 9\.5033 since: 9\.7033, 0\.2033 in over [^;]*; 3 size$/,
    )
    expect(doubted?.sentences.at(-1)).toMatch(
      /^It was corrected to 9\.5033 since, RO .*: this figure counts no more\.$/,
    )
  })

  it('corrected once more, the first correction says that it does not stand any more', () => {
    const twice = walk()
    twice.bring({ do: 'correct', of: sizeOf(twice), typed: '9.5043', why: 'again' })
    const [first, second] = found(twice.keys(''))
      .filter(({ kind }) => kind === 'correction')
      .sort((a, b) => (a.entries[1] ?? 0) - (b.entries[1] ?? 0))
    expect(first?.what).toMatch(/9\.7033, then 9\.5033, RO \d\d:\d\d; not any more$/)
    expect(first?.sentences.join(' ')).toContain('It was corrected once more, to 9.5043, RO')
    expect(second?.what).toMatch(/9\.5033, now 9\.5043, RO \d\d:\d\d$/)
  })
})

describe('a pair of temperatures that was put right one after the other', () => {
  const seq = (walk: Walk, place: string) => walk.state.readings[place]?.at(-1)?.seq ?? -1
  const mended = () => {
    const defs = exampleDefs({ machine: noOverhauls })
    const walk = new Walk(defs)
      .toBore()
      .keys(...BORE_LINES, ...AFTER_LINES.slice(0, -3), '70.8', '70.9', '9.5001')
    const [part, body] = ['part_temp_after.middle', 'gauge_temp_after.body']
    walk.bring({ do: 'correct', of: seq(walk, body), typed: '72.6', why: 'misread' })
    expect(walk.entries.findLast((e) => e.type === 'reading.corrected')).toHaveProperty('doubt')
    walk.bring({ do: 'correct', of: seq(walk, part), typed: '73.4', why: 'misread' })
    return walk.keys('1', 'KH', 'read again, none given', '')
  }

  it('has no figure kept in doubt that nothing speaks against any more: neither in the review nor at the close', () => {
    const walk = mended()
    expect(walk.state.closed).toBe('MONITOR')
    const [rows] = [
      entryBlocks(walk.engine.defs, walk.state, walk.last, { width: 79, record: 'EXAMPLE', ascii: false }),
    ]
    expect(rows.flatMap((b) => b.rows.map((r) => r.text)).join('\n')).not.toContain('doubted and kept')
    const said = found(walk).flatMap(({ kind, sentences }) => (kind === 'correction' ? sentences : []))
    expect(said).toContain('By what stands now nothing speaks against it.')
  })
})
