// The check of a gauge after the readings: two figures changed round are asked about, a drift goes on record as it is.
import { describe, expect, it } from 'vitest'
import { AFTER_LINES, BORE_LINES, Walk } from '../../helpers/example.ts'

/** The check before is 9.5000. */
const checkedAfter = (typed: string) =>
  new Walk().toBore().keys(...BORE_LINES, ...AFTER_LINES.slice(0, -1), typed)

describe('the set-check after', () => {
  it('is doubted where changing two figures round brings it to the check before', () => {
    const walk = checkedAfter('9.5010')
    expect(walk.last).toMatchObject({
      type: 'reading.doubted',
      why: '0.0010 in over the check before',
      shown: expect.stringContaining('9.5001'),
    })
    walk.keys('2', '9.5001')
    expect(walk.entries.findLast((e) => e.type === 'reading.taken')).toMatchObject({ typed: '9.5001' })
  })

  it('that is kept goes on record with what was said', () => {
    const walk = checkedAfter('9.5010').keys('3', 'read three times over')
    expect(walk.state.readings['set_after.standard']).toMatchObject([
      { typed: '9.5010', keptBecause: 'read three times over' },
    ])
  })

  it.each([
    ['as before', '9.5000'],
    ['within its repeats', '9.5002'],
    ['a drift that no slip explains', '9.5012'],
    ['a drift the other way', '9.4990'],
    ['a drift to a figure with none to change round', '9.5011'],
  ])('%s is taken: %s', (_what, typed) => {
    expect(checkedAfter(typed).entries.findLast((e) => e.type.startsWith('reading.'))).toMatchObject({
      type: 'reading.taken',
      typed,
    })
  })
})
