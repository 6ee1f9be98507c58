// Part and instrument temperature keyed the wrong way round: asked about where the pair of before was the other way.
import { describe, expect, it } from 'vitest'
import { AFTER_LINES, BORE_LINES, exampleDefs, noOverhauls, Walk } from '../../helpers/example.ts'

const defs = exampleDefs({ machine: noOverhauls })
const readAfter = (part: string, body: string) =>
  new Walk(defs).toBore().keys(...BORE_LINES, ...AFTER_LINES.slice(0, -3), part, body)

describe('a pair of temperatures', () => {
  it('that is the other way round than before is doubted at its second, and names both', () => {
    const walk = readAfter('70.8', '71.6')
    expect(walk.last).toMatchObject({
      type: 'reading.doubted',
      why: expect.stringMatching(
        /^0\.8 degF over sheet 15, Bore temperature, after, and before it was under$/,
      ),
      shown: expect.stringContaining('before, this was 70.4 degF and that 71.2 degF'),
    })
    walk.keys('1')
    expect(walk.prompt.kind).toBe('read')
    const kept = readAfter('70.8', '71.6').keys('3', 'the lamp warmed it')
    expect(kept.state.readings['gauge_temp_after.body']).toMatchObject([
      { keptBecause: 'the lamp warmed it' },
    ])
  })

  it.each([
    ['the same way round', '71.6', '70.8'],
    ['hardly apart', '70.9', '71.0'],
    ['alike', '71.0', '71.0'],
  ])('that is %s is believed', (_how, part, body) => {
    expect(readAfter(part, body).last.type).toBe('reading.taken')
  })

  it('is asked about where one of it is put right so that it is the other way', () => {
    const walk = readAfter('71.6', '70.8')
    const of = walk.state.readings['gauge_temp_before.body']?.[0]?.seq ?? -1
    walk.bring({ do: 'correct', of, typed: '73.0', why: 'misread' })
    expect(walk.entries.find((e) => e.type === 'reading.corrected')).toMatchObject({
      doubt: expect.stringContaining('and before it was under'),
    })
  })
})
