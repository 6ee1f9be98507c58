// Questions about the sheet that lies open, asked where testers asked them: each is told from the job, and takes nothing.
import { describe, expect, it } from 'vitest'
import { hear } from '../../../src/core/talk/hear.ts'
import { AFTER_LINES, BORE_LINES, GAS_LINES, LOCK_LINES, Walk, WORD_LINES } from '../../helpers/example.ts'

const said = (walk: Walk, line: string) => {
  const heard = hear(walk.engine.defs, walk.state, walk.talk, line, walk.now)
  expect([line, heard.input, heard.talk.ask, heard.refusal]).toEqual([line, null, null, undefined])
  return heard.say.join('\n')
}

const toGas = () => new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES)
const toSurface = () => new Walk().toBore().keys(...BORE_LINES, ...AFTER_LINES.slice(0, 6))

describe('who is needed', () => {
  it.each(['who is needed', "who's needed here?", 'whom do I need for this', 'who has to be here'])(
    '%j names the witness of a hold point by role, and who of the crew may be it',
    (line) => {
      const walk = toGas().keys(...GAS_LINES)
      expect(said(walk, line)).toMatch(
        /^Needed here: a witness, a mechanic or lead of the crew who did none of it[^\n]*\nMay: ML M\. Lind, KH K\. Haas or PB P\. Bright\./,
      )
    },
  )

  it('at a line of a hold point tells whom that hold point asks for still, and at a decision the leads who did not measure', () => {
    expect(said(toGas(), 'do i need a second person')).toContain(
      'hold point 2: a witness, a mechanic or lead who did none of it',
    )
    const decided = said(new Walk().toVerdict(), 'who is needed')
    expect(decided).toMatch(/^Needed here: a lead who took none of the readings/)
    expect(decided).toContain('May: KH K. Haas or PB P. Bright.')
    expect(decided).not.toContain('hold point 2')
  })

  it('where arms are in the bore says that somebody stands outside', () => {
    expect(said(new Walk().toBore(), 'who is needed')).toContain('somebody outside who can call for help')
    expect(said(new Walk().keys('RO', 'TC-401-1'), 'who is needed')).not.toContain('somebody outside')
  })
})

describe('which end', () => {
  it.each([
    'which end',
    'which end is this?',
    'at which end',
    'head end or crank end',
    'what end do I measure',
  ])('%j tells the place that is asked, and what the two ends are', (line) => {
    const text = said(new Walk().toBore(), line)
    expect(text).toMatch(
      /^Here: Bore, HEAD END of ring travel, TOP TO BOTTOM\.\nTerms of the trade, head end:/,
    )
    expect(text).toContain('The end of the cylinder nearest to the crank')
  })

  it('goes with the place: at the crank end it is that', () => {
    const walk = new Walk().toBore().keys(...BORE_LINES.slice(0, 8))
    expect(said(walk, 'which end')).toMatch(/^Here: Bore, CRANK END of ring travel/)
  })

  it('of a gas line is what its words say, also where they say the same place as before', () => {
    const at = /^The sheet says: "Hold the meter where your face will be, at the head-end opening/
    expect(said(toGas(), 'which end')).toMatch(at)
    expect(said(toGas().keys('20.9'), 'which end')).toMatch(at)
  })

  it('is told to be none where the sheet names none', () => {
    expect(said(new Walk().toGate(), 'which end')).toMatch(/^What is asked here names no end\./)
  })

  it('of which side is worn most is no such question', () => {
    expect(said(toSurface().keys('1'), 'which side is worn most')).not.toContain('names no end')
  })
})

describe('whether a place was read often enough', () => {
  it('is told with what is in, how far apart, and what is left', () => {
    const walk = new Walk().toBore()
    expect(said(walk, 'is one enough')).toMatch(
      /none taken; at least 2 more are asked\.\nBore: at least 2 readings, 4 at the most/,
    )
    walk.keys('9.5033')
    expect(said(walk, 'how many more')).toMatch(/1 taken, 9\.5033 in; at least 1 more is asked/)
    walk.keys('9.5039')
    for (const line of [
      'is the third one enough',
      'do I need a third?',
      'why a third one',
      'must I measure again',
    ])
      expect(said(walk, line)).toMatch(
        /^Here: Bore, HEAD END[^\n]*2 taken, 9\.5033 in and 9\.5039 in, spread 0\.0006 in; they lie too far apart, so one more is asked, 2 more at the most\./,
      )
    walk.keys('9.5039')
    expect(said(walk, 'is the third one enough')).toMatch(
      /Before it: Bore, HEAD END[^\n]*3 taken[^\n]*; enough, as they agree\./,
    )
  })

  it('of a place that did not settle says that what rests on it is HOLD', () => {
    const walk = new Walk().toBore().keys('9.5033', '9.5039', '9.5045', '9.5027')
    expect(said(walk, 'is the fourth one enough')).toMatch(
      /Before it:[^\n]*do not agree: what rests on it is HOLD/,
    )
  })

  it('at a hold point says that each line is keyed once, and elsewhere what was read last', () => {
    expect(said(toGas(), 'is one enough')).toMatch(/keyed once[^\n]*\nHold point 2: 10 of 17 shown\./)
    expect(said(toSurface(), 'is that enough')).toMatch(
      /^No repeats are asked here\.\nRead last: Counterbore.*; enough\./,
    )
  })
})

describe('whether a crack counts', () => {
  it.each([
    'does the crack count',
    'do cracks count',
    'is the crack in the verdict',
    'what about the crack?',
  ])('%j tells where it is put down, what it is then, and that no size has it in it', (line) => {
    const text = said(toSurface(), line)
    expect(text).toMatch(/^Sheet 12, Surface of the bore: "A crack, a pit/)
    expect(text).toContain('open until a lead has decided on it')
    expect(text).toContain('By the record none such was found')
  })

  it('that was found is named with its number and what was decided', () => {
    const walk = toSurface().keys('4', 'crack at 6 o’clock', ...AFTER_LINES.slice(7))
    expect(said(walk, 'does the crack count')).toMatch(
      /On record: NC-1 Surface of the bore: A crack, a pit or a place that was patched, noted: crack at 6 o’clock; OPEN/,
    )
    expect(said(walk, 'does the ridge matter')).toContain('By the record none such was found')
  })
})

describe('the difference of two terms', () => {
  it.each([
    'difference between accept and monitor',
    'whats the difference between accept and monitor?',
    'difference accept monitor',
    'accept or monitor?',
  ])('%j tells both, and from which share this job watches', (line) => {
    const text = said(new Walk().toVerdict(), line)
    expect(text).toMatch(
      /^The choice accept: [^\n]*\nThe verdict MONITOR:\n[^\n]*\nIn capitals the other is a verdict too:\n[^\n]*below the share/,
    )
    expect(text).toContain('MONITOR from 70 % of its limit')
  })

  it('is not half told where one of them is no term', () => {
    expect(said(new Walk().toVerdict(), 'difference between accept and blue')).not.toMatch(
      /^Terms of the trade, ACCEPT/,
    )
  })
})

describe('whether the locks stay on', () => {
  it.each([
    'do the locks stay on',
    'do we leave the locks on?',
    'how long do the locks stay on',
    'are the locks staying on',
  ])('%j is told that every one does', (line) => {
    expect(said(new Walk().toBore(), line)).toMatch(/^Every lock stays on/)
  })
})

describe('which machine it should be', () => {
  it.each([
    'which machine should it be',
    'which machine is this',
    'what tag do i key',
    'is this the right machine?',
  ])('%j tells no tag before the plate was read, and which one it is after', (line) => {
    const before = said(new Walk().keys('RO'), line)
    expect(before).toContain('Read the plate')
    expect(before).not.toMatch(/TC-?401/)
    expect(said(new Walk().toGate(), line)).toContain('is for TC-401-1')
  })
})
