// What a lead has to hear who was not there, whatever the question was: a counter that was only keyed with the decision, a figure that
// was doubted and kept, and before anything runs what runs on as it is and what was told of danger.
import { describe, expect, it } from 'vitest'
import { questionBlocks } from '../../../src/core/review/asked.ts'
import { AFTER_LINES, BORE_LINES, Walk } from '../../helpers/example.ts'
import { only, reviewed, smallAtSize } from '../../helpers/reviewed.ts'

function answer(of: Walk, keyed: string): string {
  const { defs } = of.engine
  const blocks = questionBlocks({ review: reviewed(of), defs, entries: of.entries, state: of.state }, keyed)
  return (blocks ?? [])
    .flatMap(({ margin, rows }) =>
      rows.map(({ text }, n) => `${n === 0 ? margin : ''} ${text.trim()}`.trim()),
    )
    .join('\n')
}

/** The centre reads far over, twice, and is kept both times: the verdict comes of that alone. */
function outAndKept(): Walk {
  const [before, after] = [BORE_LINES.slice(0, 4), BORE_LINES.slice(6)]
  const kept = ['9.5608', '3', 'two of us looked', '9.5606', '3', 'the same again']
  return new Walk().toBore().keys(...before, ...kept, ...after, ...AFTER_LINES)
}

const CONCESSION = {
  ...({ do: 'dispose', step: 'disposition', choice: 'concession', person: 'KH' } as const),
  ...{ why: 'worn but runs', authority: 'maker letter 12', until: '2000 h', from: '91000' },
}

function conceded(of = new Walk().toVerdict()): Walk {
  of.bring(CONCESSION)
  return of
}

describe('hours on a counter', () => {
  it('that was keyed with a concession is told with who keyed it and where, and never as read by nobody', () => {
    const walk = conceded()
    const { seq } = walk.last
    const { what, sentences } = only(reviewed(walk), 'deadline')
    expect(what).toMatch(
      /^DEADLINE IN HOURS, COUNTER KEYED WITH IT AND READ BY NO SHEET: 18 Bore judged, .*to 93000 h on the counter$/,
    )
    expect(sentences[1]).toMatch(
      new RegExp(
        `^91000 h was keyed as what the counter showed, KH.* 06:\\d\\d \\(entry ${seq}\\).*no sheet of this job read it`,
      ),
    )
    expect(`${what} ${sentences.join(' ')}`).not.toMatch(/nobody/i)
  })
})

describe('a figure that was doubted and kept', () => {
  const walk = outAndKept()
  const KEPT =
    /DOUBTED AND KEPT: 7\.3 Bore, CENTRE of ring travel, TOP TO BOTTOM, 9\.5608 in .*\(entry 33\), by RO 06:\d\d \(entry 34\), because: two of us looked\.\nDOUBTED AND KEPT: .* 9\.5606 in .*\(entry 35\).*\(entry 36\)/

  it('is said to be that at its place, beside what stands', () => {
    const text = answer(walk, 'what is 7.3')
    expect(text).toMatch(/What stands: 9\.5608 in .*\(entry 33, DOUBTED AND KEPT at entry 34\); 9\.5606 in /)
    expect(text).toMatch(KEPT)
    expect(answer(walk, 'what is 7.4')).not.toContain('KEPT')
  })

  it('is said to be that where it made the verdict', () => {
    const text = answer(walk, 'which reading made it REPLACE')
    expect(text).toMatch(/7\.3 Bore, .*: 9\.5608 in .*\(entry 33, DOUBTED AND KEPT at entry 34\)/)
    expect(text).toMatch(KEPT)
  })

  it('is told where corrections are asked for, as it was not put right', () => {
    const text = answer(walk, 'was the slip corrected')
    expect(text).toMatch(
      /^Nothing was corrected or taken back by this log\nNot corrected, and counted as keyed:/,
    )
    expect(text).toMatch(KEPT)
  })

  it('and corrected since is told as that, and not as kept', () => {
    const since = walk.copy()
    since.bring({ do: 'correct', of: 33, typed: '9.5068', why: 'misread' })
    since.bring({ do: 'correct', of: 35, typed: '9.5069', why: 'misread' })
    for (const asked of ['what is 7.3', 'was the slip corrected'])
      expect(answer(since, asked)).not.toContain('DOUBTED AND KEPT')
  })

  it('has that word and by how much first in the list, where a narrow screen cuts the end of it', () => {
    const all = reviewed(walk).exceptions.filter(({ kind }) => kind === 'doubted')
    expect(all.map(({ what }) => what.slice(0, 33))).toEqual([
      'DOUBTED AND KEPT: 9.5608, 0.0608 ',
      'DOUBTED AND KEPT: 9.5606, 0.0606 ',
    ])
  })
})

describe('whether it may run', () => {
  it('names what runs on as it is, with its number and on whose word until when', () => {
    const walk = outAndKept()
    const { number } = only(reviewed(walk), 'verdict')
    expect(answer(walk, 'is it safe to run')).toContain('Open by this record:')
    conceded(walk)
    expect(answer(walk, 'is it safe to run')).toMatch(
      new RegExp(
        `does not conform, and runs on as it is by the word of a lead:\\n${number} NC-1 Bore judged: REPLACE; KH decided: concession\\n.*\\n?On the authority of maker letter 12, for 2000 running hours from 91000 h`,
      ),
    )
  })

  it('names none that was renewed, and no MONITOR that was accepted', () => {
    const renewed = outAndKept().keys('replace', 'KH', 'worn out', '')
    expect(renewed.state.dispositions.disposition?.choice).toBe('replace')
    const watched = new Walk().toVerdict().keys('accept', 'KH', 'inside its limits, none given', '')
    expect(watched.state.dispositions.disposition?.choice).toBe('accept')
    for (const walk of [renewed, watched])
      expect(answer(walk, 'is it safe to run')).not.toContain('runs on as it is')
  })

  it.each([
    'the block slipped off and the crank turned',
    'a rag fell in and is missing',
    'smells of gas at the packing',
  ])('names what was noted of danger: %s', (text) => {
    const walk = smallAtSize().keys('note', text)
    const noted = reviewed(walk).exceptions.find(({ what }) => what.includes(text))
    expect(answer(walk, 'is it safe to run')).toContain(`Somebody told of danger:\n${noted?.number} `)
  })

  it('names no other note as that', () => {
    const walk = smallAtSize().keys('note', 'the light is poor on this side')
    expect(answer(walk, 'is it safe to run')).not.toContain('told of danger')
  })
})
