// Where no ring ever ran the bore is as it was made: a strip that is wider than what the rings wore is a slip, or no strip.
import { describe, expect, it } from 'vitest'
import { BORE_LINES, Walk } from '../../helpers/example.ts'

const atStrip = (choice = '1') => new Walk().toBore().keys(...BORE_LINES, choice)

describe('the unswept strip', () => {
  it('that is wider than the narrowest worn place on its axis is doubted, and that place is named', () => {
    const walk = atStrip().keys('9.5038')
    // Head end and crank end, top to bottom: 9.50335 and 9.5027; two readings of a place may lie 0.0003 apart.
    expect(walk.last).toMatchObject({
      type: 'reading.doubted',
      why: '0.0011 in wider than the bore',
      shown: expect.stringMatching(
        /^Bore, CRANK END of ring travel, TOP TO BOTTOM reads 9\.5027 in, and where no ring runs nothing wears/,
      ),
    })
    expect(
      walk.keys('3', 'measured by two of us').state.readings['strip_diameter.strip.vertical'],
    ).toMatchObject([{ keptBecause: 'measured by two of us' }])
  })

  it('is held against its own axis, at the crank end too', () => {
    // Side to side the least is 9.50185: 9.5027 is the bore's own from top to bottom.
    const walk = atStrip('2').keys('9.5027', '9.5027')
    expect(walk.last).toMatchObject({ type: 'reading.taken' })
    expect(walk.keys('9.5027').last).toMatchObject({
      type: 'reading.doubted',
      why: '0.0009 in wider than the bore',
    })
  })

  it('that is as wide as two readings of one place may lie apart is believed', () => {
    expect(atStrip().keys('9.5030').last).toMatchObject({ type: 'reading.taken' })
    expect(atStrip().keys('9.5031').last).toMatchObject({ type: 'reading.doubted' })
  })
})
