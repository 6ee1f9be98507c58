// Repeats that lie far apart: said while they are read, at the verdict, in its sums and, once corrected, at the close.
import { describe, expect, it } from 'vitest'
import { dominantRepeats } from '../../../src/core/job/repeats-error.ts'
import { boreRecord } from '../../../src/core/job/verdict-record.ts'
import { layOut, plainText } from '../../../src/core/sheet/block.ts'
import { foot } from '../../../src/core/sheet/foot.ts'
import { fitLive } from '../../../src/core/sheet/live.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { entryBlocks } from '../../../src/core/sheet/shown-block.ts'
import { withListed } from '../../../src/core/talk/correct.ts'
import { hear } from '../../../src/core/talk/hear.ts'
import { AFTER_LINES, BORE_LINES, Walk } from '../../helpers/example.ts'

const STYLE = { width: 79, record: 'EXAMPLE' as const, ascii: true }

function text(walk: Walk, type: string): string {
  const entry = walk.entries.findLast((e) => e.type === type)
  if (entry === undefined) throw new Error(`no ${type}`)
  const blocks = entryBlocks(walk.engine.defs, walk.state, entry, STYLE)
  return blocks
    .flatMap((one) => plainText(layOut(one, STYLE)).split('\n'))
    .map((line) => line.replace(/^[^|]*\|/, '').trim())
    .join(' ')
}

/** As far as 7.3, the middle of the bore from top to bottom. */
const toCentre = () => new Walk().toBore().keys(...BORE_LINES.slice(0, 4))
/** The second reading there is the figure of the place before. */
const slipped = () => toCentre().keys('9.5068', '9.5021', '9.5068')
const judged = () => slipped().keys(...BORE_LINES.slice(6), ...AFTER_LINES)
const asks = (walk: Walk, style = STYLE) =>
  promptView(walk.engine.defs, walk.state, walk.talk, style).ask.map((r) => r.text)
const SAYS =
  'Most of the measuring error at 7.3 is its own: its repeats lie 0.0047 in apart. If one was a slip: correct.'

/** The number in the list of what can be corrected of the nth of the readings at a sheet. */
function listed(walk: Walk, line: RegExp): string {
  walk.keys('correct')
  const items = walk.talk.ask?.kind === 'correct-which' ? walk.talk.ask.items : []
  return withListed(String(items.findIndex((item) => line.test(item.line)) + 1), items.length)
}

describe('repeats that lie far apart', () => {
  it('are asked about once, when a third is asked, and said to count when the middle of three does', () => {
    const counts = 'the 0.0047 in between them count as measuring error'
    const walk = toCentre().keys('9.5068', '9.5021')
    expect(text(walk, 'reading.taken').replace(/ {2,}/g, ' ')).toContain(
      'too far apart: measured once more, afresh; a slip is put right by the word correct',
    )
    walk.keys('9.5068')
    expect(text(walk, 'reading.taken').replace(/ {2,}/g, ' ')).toContain(`the middle of 3 ${counts}`)
  })

  it('are not where they agree, nor where no verdict rests on them', () => {
    expect(text(toCentre().keys('9.5068', '9.5070'), 'reading.taken')).not.toContain('measuring error')
    const before = new Walk().throughGate().keys('1', '1', '71.2', '70.4', '1', '9.5000')
    expect(text(before, 'reading.taken')).not.toContain('measuring error')
  })

  it('are named at the verdict, where a lead decides and in its sums', () => {
    const walk = judged()
    expect(text(walk, 'verdict.given')).toContain(SAYS)
    expect(asks(walk)).toContain(SAYS)
    const why = hear(walk.engine.defs, walk.state, walk.talk, 'why').say.join('\n')
    expect(why).toMatch(
      /One diameter, at k = 1: M-3 0\.000150; repeats 0\.000087; .*\n.*pooled over 8 places: .* s = 0\.000122, with 9 degrees/,
    )
    expect(why).toContain(
      '7.3 stands out, its 3 readings lie 0.0047 apart (Cochran, ISO 5725-2): it carries U 0.00871 of its own.',
    )
    expect(why).toContain('JCGM 100:2008')
  })

  it('hold up only what is worked out from that place, and show beside it what is allowed for there', () => {
    const walk = judged()
    const record = boreRecord(walk.state.verdicts.bore_judged?.verdict)
    const words = Object.fromEntries(
      (record?.result.judged ?? []).map((one) => [one.characteristic, one.judgement.verdict]),
    )
    expect(words).toEqual({
      'out-of-round': 'HOLD',
      taper: 'HOLD',
      spread: 'HOLD',
      'largest-diameter': 'ACCEPT',
    })
    // Before, every diameter carried the spread of the worst place.
    expect((record?.inputs.readingU ?? 1) / 0.0254).toBeLessThan(0.0004)
    expect(record?.inputs.readings.filter((one) => one.expandedU !== undefined)).toMatchObject([
      { station: 'centre', axis: 'vertical' },
    ])
    expect(text(walk, 'verdict.given')).toContain(
      'taper: 0.0088, by the repeats of centre top to bottom and crank end top to bottom.',
    )
    // Somewhere else it holds up nothing that it is not in.
    const elsewhere = new Walk().toBore().keys(...BORE_LINES.slice(0, 6), '9.5034', '9.5014', '9.5034')
    elsewhere.keys(...BORE_LINES.slice(8), ...AFTER_LINES)
    const taper = boreRecord(elsewhere.state.verdicts.bore_judged?.verdict)?.result.judged[1]
    expect(taper).toMatchObject({ characteristic: 'taper', judgement: { verdict: 'MONITOR' } })
  })

  it('are not where no one place makes most of the error', () => {
    const walk = new Walk().toVerdict()
    expect(text(walk, 'verdict.given')).not.toContain('Most of the measuring error')
    const two = toCentre().keys('9.5068', '9.5072', '9.5068', '9.5034', '9.5038', '9.5034')
    two.keys(...BORE_LINES.slice(8), ...AFTER_LINES)
    const judge = two.engine.defs.steps.find(({ id }) => id === 'bore_judged')
    const record = two.state.verdicts.bore_judged?.verdict
    if (judge === undefined || record === undefined) throw new Error('no verdict')
    expect(dominantRepeats(two.engine.defs, two.state, judge, record)).toBeNull()
  })
})

describe('the second reading of a place', () => {
  it('is asked with the number of the repeat and what was taken, on a small screen too', () => {
    const walk = toCentre().keys('9.5068')
    const { defs } = walk.engine
    expect(asks(walk)).toEqual(['1st taken: 9.5068 in; 2nd of 2, afresh (in) with M-3'])
    for (const [columns, rows] of [
      [80, 24],
      [40, 15],
    ] as const) {
      const style = { ...STYLE, width: columns - 1 }
      const view = promptView(defs, walk.state, walk.talk, style)
      const now = foot(defs, walk.state, walk.now)
      const live = fitLive({
        view,
        foot: now,
        style,
        rows,
        columns,
        notice: null,
        side: { of: 'question', n: 9 },
      })
      const shown = live.above.map((line) => line.text.trim()).join(' ')
      expect(shown).toContain('1st taken: 9.5068 in; 2nd of 2, afresh')
      expect(live.above.length + 1 + live.below.length).toBeLessThan(rows)
      if (rows === 24) expect(shown).toMatch(/Hazard: .*In trouble: .*HE.*CENTRE.*CE/)
    }
    walk.keys('9.5021')
    expect(asks(walk)).toEqual([
      'Taken: 9.5068, 9.5021 in, too far apart; 3rd of at most 4, afresh (in) with M-3',
    ])
  })
})

describe('a correction', () => {
  it('says what was and what is, why the job goes back, and at the close what turned the verdict', () => {
    const walk = judged()
    walk.keys(listed(walk, /7\.3: 9\.5021 in, 2nd of 3/), 'the figure of the place before', '9.5069')
    expect(text(walk, 'reading.corrected')).toMatch(/^Corrected, 2nd of 3: was 9\.5021 in, now 9\.5069 in /)
    expect(text(walk, 'verdict.given')).not.toContain('Most of the measuring error')
    expect(walk.state.verdicts.bore_judged?.verdict.result.verdict).toBe('MONITOR')
    walk.keys('1', 'KH', 'looked at it, none given', '')
    expect(text(walk, 'job.closed')).toMatch(/Bore judged: HOLD before, MONITOR now/)
    expect(text(walk, 'job.closed')).toMatch(
      /1 reading was corrected: 7\.3 Bore, .*TOP TO BOTTOM, 2nd of 3: first 9\.5021 in, now 9\.5069 in/,
    )
  })

  it('that parts the repeats says that the job goes back, and to where', () => {
    const walk = toCentre().keys('9.5068', '9.5069', '9.5034')
    walk.keys(listed(walk, /7\.3: 9\.5069 in/), 'misread', '9.5021')
    expect(text(walk, 'reading.corrected')).toContain(
      'Back to 7.3: its readings do not agree now, 0.0047 in apart. It is measured once more, afresh',
    )
    expect(asks(walk)[0]).toMatch(/^Taken: 9\.5068, 9\.5021 in, too far apart; 3rd of at most 4/)
  })

  it('of the only reading says that one more is wanted, as one cannot disagree', () => {
    const walk = toCentre().keys('9.5068')
    walk.keys(listed(walk, /7\.3: 9\.5068 in/), 'misread', '9.5067')
    expect(text(walk, 'reading.corrected')).toContain(
      'Back to 7.3: 1 reading stands there, and 2 are wanted. It is measured once more, afresh',
    )
    expect(text(walk, 'reading.corrected')).not.toContain('agree')
  })

  it('is the one way on for a place whose repeats never agreed, and is said to be', () => {
    const walk = toCentre().keys('9.5068', '9.5021', '9.5044', '9.5090')
    const walked = text(walk, 'reading.taken').replace(/ {2,}/g, ' ')
    expect(walked).toContain('this place has no figure')
    expect(walked).toContain('if one was a slip, correct it')
  })
})
