// A verdict on the sheet: its word, what governs and its source are in sight, and so is what was doubted and kept.
import { describe, expect, it } from 'vitest'
import { layOut, plainText } from '../../../src/core/sheet/block.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { entryBlocks } from '../../../src/core/sheet/shown-block.ts'
import { hear } from '../../../src/core/talk/hear.ts'
import { AFTER_LINES, BORE_LINES, exampleDefs, noOverhauls, Walk } from '../../helpers/example.ts'

const styleOf = (width: number) => ({ width, record: 'EXAMPLE' as const, ascii: true })

function block(walk: Walk, type: string, width = 79): string[] {
  const entry = walk.entries.findLast((e) => e.type === type)
  if (entry === undefined) throw new Error(`no ${type}`)
  const style = styleOf(width)
  const blocks = entryBlocks(walk.engine.defs, walk.state, entry, style)
  return blocks.flatMap((one) => plainText(layOut(one, style)).split('\n'))
}

/** As one run of words, so that it does not matter where lines broke. */
const run = (lines: readonly string[]) => lines.map((l) => l.replace(/^[^|]*\|/, '').trim()).join(' ')

const why = (walk: Walk) => hear(walk.engine.defs, walk.state, walk.talk, 'why').say.join('\n')

/** The first place less worn than it was left, and kept. */
const kept = () => {
  const [, ...rest] = BORE_LINES
  return new Walk()
    .toBore()
    .keys('9.5018', '3', 'read three times, it is so', '9.5018', ...rest.slice(1), ...AFTER_LINES)
}

describe('a verdict with readings that were doubted and kept', () => {
  it('says so beside its word, before the lead decides, and at the close with the reasons', () => {
    const walk = kept()
    const says = '1 of these readings was doubted and kept: see 7.1.'
    const lines = block(walk, 'verdict.given')
    expect(run(lines)).toContain(says)
    expect(run(lines.slice(-6))).toContain(says)
    const { defs } = walk.engine
    expect(promptView(defs, walk.state, walk.talk, styleOf(79)).ask.map((r) => r.text)).toContain(says)
    walk.keys('1', 'KH', 'looked at it again, none given', '')
    expect(walk.state.closed).not.toBeNull()
    expect(run(block(walk, 'job.closed'))).toMatch(
      /1 reading was doubted and kept: 7\.1 Bore.* 9\.5018 in .*: read three times, it is so/,
    )
  })

  it('counts all of them, and is not another verdict for it', () => {
    const walk = new Walk().toBore()
    walk.keys(
      '9.5018',
      '3',
      'it is so',
      '9.5018',
      '9.5005',
      '3',
      'this too',
      '9.5005',
      ...BORE_LINES.slice(4),
      ...AFTER_LINES,
    )
    expect(run(block(walk, 'verdict.given'))).toContain(
      '2 of these readings were doubted and kept: see 7.1, 7.2.',
    )
  })

  it('says nothing where none was, nor of one that was corrected or measured again', () => {
    expect(run(block(new Walk().toVerdict(), 'verdict.given'))).not.toContain('doubted')
    const again = new Walk().toBore().keys('9.053', '1', ...BORE_LINES, ...AFTER_LINES)
    expect(run(block(again, 'verdict.given'))).not.toContain('doubted')
    const walk = kept()
    const of = walk.state.readings['bore.head_end.vertical']?.[0]?.seq ?? -1
    walk.bring({ do: 'correct', of, typed: '9.5033', why: 'misread' })
    expect(run(block(walk, 'verdict.given'))).not.toContain('doubted')
  })
})

describe('a verdict longer than the screen', () => {
  it.each([
    [79, 10],
    [39, 14],
  ])(
    'at %i columns has word, governing limit and source in its first and in its last %i lines',
    (width, most) => {
      const lines = block(new Walk().toVerdict(), 'verdict.given', width)
      expect(lines.length).toBeGreaterThan(14)
      for (const end of [lines.slice(0, most), lines.slice(-most)]) {
        expect(run(end)).toMatch(/MONITOR/)
        expect(run(end)).toMatch(
          /governs: 0\.\d+ of 0\.\d+\sin, \d+\s% used; fallback, Bloch and Hoefner 1996, p\. 259/,
        )
      }
      expect(run(lines.slice(-most))).toContain('( MONITOR )')
      expect(lines.filter((line) => line.includes('( MONITOR )'))).toHaveLength(1)
    },
  )

  it('has beside each figure up to where it is accepted, and says what rounding does to sums of shown figures', () => {
    const walk = new Walk().toVerdict()
    const text = block(walk, 'verdict.given', 79).join('\n')
    expect(text).toMatch(/taper {9}0\.0041 {2}up to 0\.0050 {2}limit 0\.0055 {2}75\s%\n/)
    expect(text).toMatch(/MONITOR; governs; fallback, Bloch and/)
    expect(run(block(walk, 'verdict.given'))).toContain(
      'so each is accepted only up to the figure before its limit.',
    )
    expect(run(block(walk, 'verdict.given'))).toContain('nominal is the size on the drawing')
    expect(run(block(walk, 'verdict.given'))).not.toContain('is rounding, and no slip')
    const halves = ['9.5033', '9.5034', '9.5020', '9.5020', ...BORE_LINES.slice(4)]
    const off = new Walk().toBore().keys(...halves, ...AFTER_LINES)
    expect(run(block(off, 'verdict.given'))).toContain('is rounding, and no slip')
  })

  it('that is held up says both what holds it and what governs', () => {
    // Taper so near its limit that the measuring error decides nothing.
    const near = ['9.5017', '9.5017', ...BORE_LINES.slice(2)]
    const walk = new Walk(exampleDefs({ machine: noOverhauls })).toBore().keys(...near, ...AFTER_LINES)
    const tail = run(block(walk, 'verdict.given').slice(-12))
    expect(tail).toMatch(
      /\( HOLD \) Taper: too close to call.* taper governs: 0\.00\d+ of 0\.00550\sin, \d+\s% used; fallback, Bloch/,
    )
  })
})

describe('why right after a verdict', () => {
  it('explains that verdict, and then the step that is asked', () => {
    // The decision left out: the next thing asked is another step with a why of its own.
    const defs = exampleDefs({
      procedure: (text) =>
        text.replace(
          /(\n {2}- id: disposition\n)/,
          '\n  - id: oil_it\n    kind: tell\n    title: Oil the bore\n    text: Wipe it with oil.\n    why: Bare iron rusts overnight.\n$1',
        ),
    })
    const walk = new Walk(defs).toVerdict()
    expect(walk.prompt).toMatchObject({ kind: 'tell', step: { id: 'oil_it' } })
    expect(why(walk)).toMatch(
      /^Bore judged: MONITOR, because:\n[\s\S]*0\.00415; limit[\s\S]*And why of Oil the bore: Bare iron/,
    )
    walk.keys('note all fine')
    expect(why(walk)).toBe('Bare iron rusts overnight.')
  })
})

describe('the axes of the bore', () => {
  it('have one pair of names on the verdict and in its sums, and rounding is accounted for', () => {
    const walk = new Walk().toVerdict()
    const text = run(block(walk, 'verdict.given'))
    expect(text).toContain('Sizes as read; all else is at 20 degC, from unrounded means:')
    expect(text).toMatch(/head end +top to bottom 9\.5034 +side to side 9\.5021/)
    expect(text).toMatch(/taper top to bottom 0\.0041,/)
    expect(text).toMatch(
      /wear from unswept strip: top to bottom 0\.0060 \(U 0\.0004\) +side to side 0\.0027 \(U 0\.0004\)/,
    )
    for (const lines of [text, why(walk)]) expect(lines).not.toMatch(/vertical|horizontal/)
  })

  it('have them in what holds a verdict up too', () => {
    const bore = [...BORE_LINES.slice(0, 4), '9.5068', '9.5021', '9.5044', '9.5090', ...BORE_LINES.slice(6)]
    const text = run(block(new Walk().toBore().keys(...bore, ...AFTER_LINES), 'verdict.given'))
    expect(text).toContain('no settled reading at centre, top to bottom')
    expect(text).not.toMatch(/vertical/)
  })
})

describe('the figure of a place', () => {
  it('is the same in the bars, in the list and in the verdict, whatever way its mean is rounded', () => {
    const bore = ['9.5036', '9.5037', ...BORE_LINES.slice(2)]
    const walk = new Walk().toBore().keys(...bore)
    const bars = run(block(walk, 'reading.taken'))
    expect(bars).toContain('9.5037')
    expect(bars).not.toMatch(/9\.5036(?!\d)(?!.*spread)/)
    walk.keys(...AFTER_LINES)
    const { defs } = walk.engine
    expect(hear(defs, walk.state, walk.talk, 'readings').say.join(' ')).toMatch(/counts as 9\.5037 in/)
    expect(run(block(walk, 'verdict.given'))).toMatch(/head end +top to bottom 9\.5037/)
  })
})
