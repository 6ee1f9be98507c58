// A figure by itself, a gauge that was never read on its standard, and what was said at the end of a STOP, as a lead asks for them.
import { describe, expect, it } from 'vitest'
import { onSheets } from '../../../src/core/review/on-sheet.ts'
import { answered } from '../../helpers/answered.ts'
import { AFTER_LINES, BORE_LINES, Walk } from '../../helpers/example.ts'
import { NEW_BORE, reviewed } from '../../helpers/reviewed.ts'

const READ = ['9.5033', '9.5034', '9.5021', '9.5020']

describe('a figure in a question', () => {
  const walk = new Walk()
    .toBore()
    .keys(...READ, 'note the drum stuck at 9.5021 until I tapped it, then 9.5027')

  it('that was keyed is told with what else was read at that place and who spoke of it', () => {
    const text = answered(walk, 'why does one say 9.5021')
    expect(text).toMatch(
      /^9\.5021 as it was keyed\n[^\n]*Note: the drum stuck at 9\.5021[^\n]*\n7\.2 Bore,[^\n]*\n[\s\S]*9\.5020 in[\s\S]*What stands: 9\.5021 in/,
    )
    expect(text.match(/9\.5021 in {3}241/g)).toHaveLength(2)
  })

  it('that was only spoken of is said to be no reading', () => {
    expect(answered(walk, 'was the 9.5027 ever put in')).toMatch(
      /^9\.5027 was keyed as no reading; it stands in what was said\n[^\n]*Note: the drum stuck/,
    )
  })

  it('of which the log has nothing is no answer of this kind', () => {
    expect(answered(walk, 'was the 9.6127 ever put in')).not.toMatch(/9\.6127 (?:as|was)/)
  })
})

describe('a gauge and its standard', () => {
  it('never read on it again is told first, before its day', () => {
    const walk = new Walk().toBore().keys(...READ)
    for (const asked of [
      'was the mic checked on its standard at the end',
      'was the mic checked again at the end of the job',
      'was the micrometer any good',
    ])
      expect(answered(walk, asked)).toMatch(
        /^NOT READ ON ITS STANDARD, though the procedure asks for it: 17 Set-check after\nWithin what is allowed:\n[^\n]*6 Set-check before/,
      )
    const whole = answered(new Walk().toVerdict(), 'was the mic checked on its standard at the end')
    expect(whole).toMatch(/^Within what the register allows at each of 2 set-checks of M-3/)
    expect(whole).not.toMatch(/not read on its standard/i)
  })

  it('whose figures a verdict on HOLD rests on is told with that verdict, and what holds it up', () => {
    // No thermometer is read on a standard; what was judged with this one is held up by the micrometer.
    const held = new Walk().throughGate().keys('1', '1', '71.2', '70.4', '1', '9.5006', '3', 'cold')
    held.keys(...BORE_LINES, ...AFTER_LINES)
    const text = answered(held, 'is the thermometer any good')
    expect(text).toMatch(
      /^No set-check of it is in this log, and what was judged on it is HOLD\nHOLD: 18 Bore judged \(entry \d+\): The set-check before/,
    )
    expect(answered(new Walk().toVerdict(), 'is the thermometer any good')).toMatch(
      /^No set-check of it is in this log, and no entry finds it out\nBy the day/,
    )
  })

  it('off it is told before that', () => {
    const walk = new Walk().throughGate().keys('1', '1', '71.2', '70.4', '1', '9.5006', '3', 'cold', ...READ)
    expect(answered(walk, 'was the micrometer any good')).toMatch(
      /^OFF ITS STANDARD[\s\S]*\nNot read on its standard, though the procedure asks for it: 17 Set-check after\./,
    )
  })
})

describe('a STOP that stands', () => {
  it('is told with what has to be done before a new job', () => {
    const walk = new Walk().throughGate().keys('stop', '6', 'a man under the hoist', 'ML')
    walk.bring({ do: 'close-stopped', person: 'KH', first: 'moved the hoist, talked to him' })
    expect(answered(walk, 'what did KH do about the man under the hoist')).toMatch(
      /The STOP stands: KH closes the job under it; before a new job is opened: moved the hoist, talked to him \(entry/,
    )
  })
})

describe('wear', () => {
  it('without a size of before is headed so', () => {
    expect(answered(new Walk().toVerdict(), 'how much has the bore worn')).toMatch(
      /^Wear since the last overhaul, as read/,
    )
    expect(answered(new Walk(NEW_BORE).toVerdict(), 'how much has the bore worn')).toMatch(
      /^No size of the last overhaul stands beside these, so none of it tells a wear; as read\nbore diameter/,
    )
  })
})

describe('a word that no entry has and a sheet does', () => {
  const judged = new Walk().toVerdict()

  it('is told from the sheet of a verdict, and from the opening only where nothing else has it', () => {
    const cylinder = answered(judged, 'what about the pooled scatter of tandem')
    expect(cylinder).toMatch(/On the sheet of an entry:\n[^\n]*Non-lubricated cylinders and tandem pistons/)
    expect(answered(judged, 'and the unrounded means')).toMatch(/On the sheet of an entry:[\s\S]*unrounded/)
    const record = {
      review: reviewed(judged),
      defs: judged.engine.defs,
      entries: judged.entries,
      state: judged.state,
    }
    // The opening has both words, as it says what the procedure is not for.
    expect(onSheets(record, ['tandem']).lines.join(' ')).toContain('(entry 0)')
    expect(onSheets(record, ['limit']).lines.join(' ')).not.toContain('(entry 0)')
  })

  it('written in two parts is found as one', () => {
    const walk = new Walk().throughGate().keys('note hand-wheel freed with a bar')
    expect(answered(walk, 'who freed the handwheel')).toMatch(/hand-wheel freed/)
    expect(answered(walk, 'who freed the handwheel')).not.toMatch(/In no entry/)
  })
})

describe('a slip in what a time is asked of', () => {
  it('is heard by the words of the log', () => {
    const walk = new Walk().throughGate().keys('note Guard on the flywheel is missing', '1', '1', '71.2')
    expect(answered(walk, 'what came after the flywhel note')).toMatch(
      /^Keyed after this[^\n]*\n[^\n]*Guard on the flywheel[\s\S]*71\.2/,
    )
  })
})
