// A gauge that read off its standard and was kept, as a lead asks about it at a review: never told as good by the day of its calibration,
// and the hold on what it measured before what was decided of that.
import { describe, expect, it } from 'vitest'
import { GAUGE_QUESTION, PLAIN_QUESTIONS } from '../../../src/core/review/asked-plain-kinds.ts'
import { answered } from '../../helpers/answered.ts'
import { AFTER_LINES, BORE_LINES, Walk } from '../../helpers/example.ts'

const kindOf = (text: string) =>
  [GAUGE_QUESTION, ...PLAIN_QUESTIONS].find(({ asked }) => asked.some((one) => one.test(text.toLowerCase())))
    ?.like ?? null

const OFF = ['9.5006', '3', 'the ring has a scratch, the micrometer is fine']
const BEFORE = ['1', '1', '71.2', '70.4', '1']
const after = [...AFTER_LINES.slice(0, -1), '9.5006']

/** Both set-checks 0.0006 in over: the first doubted and kept, the second as the first. */
const off = new Walk().throughGate().keys(...BEFORE, ...OFF, ...BORE_LINES, ...after)
off.bring({
  ...({ do: 'dispose', step: 'disposition', choice: 'concession', person: 'KH' } as const),
  ...{ why: 'good by eye', authority: 'maker letter 12', until: '2000 h', from: '91000' },
})
const seqOf = (of: Walk, type: string, n = 0) => of.entries.filter((e) => e.type === type)[n]?.seq
const good = new Walk().toVerdict()

describe('whether a gauge was good', () => {
  it.each([
    'was m3 in calibration',
    'was M-3 in calibration',
    'was the micrometer any good',
    'was M-3 out',
    'is M-3 in doubt',
    'was the set-check ok',
    'was the set check alright',
    'why did he keep the set check when it was off',
    'is the mic to be trusted',
    'how far out was the micrometer',
    'could the gauge have been wrong',
    'can i trust the bore figures',
  ])('%s: what it read on its standard comes first', (asked) => {
    const text = answered(off, asked)
    expect(text).toMatch(
      new RegExp(
        `^OFF ITS STANDARD by more than the register allows: M-3, at 2 of 2 set-checks\\n[^\\n]*6 Set-check before[^\\n]*0\\.0006 in OVER the standard, and 0\\.0002 in is allowed \\(entry ${seqOf(off, 'reading.doubted')}\\); KEPT by RO [\\d:]+ \\(entry ${seqOf(off, 'doubt.settled')}\\), because: the ring has a scratch, the micrometer is fine\\.\\n[^\\n]*17 Set-check after[^\\n]*no reason beside it is on record\\.\\nA size that is judged with a set-check off its standard is HOLD[^\\n]*18 Bore judged: HOLD \\(entry ${seqOf(off, 'verdict.given')}\\)`,
      ),
    )
    expect(text).not.toMatch(/that is no word that it was good/)
  })

  it.each([
    'were the gauges calibrated',
    'which readings hang on M-3',
    'was M-3 used',
    'how bad is the wear',
  ])('%s: told there too', (asked) => {
    expect(answered(off, asked)).toMatch(
      /0\.0006 in OVER the standard, and 0\.0002 in is allowed \(entry \d+\); KEPT by RO/,
    )
  })

  it('within what is allowed it is said to be so, and that this is no word that it was good', () => {
    const text = answered(good, 'was the micrometer any good')
    expect(text).toMatch(
      /^Within what the register allows at each of 2 set-checks of M-3; that is no word that it was good\n/,
    )
    expect(text).not.toMatch(/HOLD|OFF ITS STANDARD|OVER the standard/)
  })

  it('one that was read off and measured again does not stand, and nothing is said to be HOLD by it', () => {
    const again = new Walk()
      .throughGate()
      .keys(...BEFORE, '9.5006', '1', '9.5000', ...BORE_LINES, ...AFTER_LINES)
    const text = answered(again, 'was M-3 out')
    expect(text).toMatch(
      /^Off its standard by more than the register allows, of which nothing stands: M-3, at 1 of 3 set-checks\n[^\n]*not kept, by RO/,
    )
    expect(text).not.toMatch(/is HOLD/)
  })

  it('a lock that hangs by the number of a gauge is asked about, and not the gauge', () => {
    const hung = new Walk().toGate().keys('M-3', 'L-102')
    expect(hung.entries.some((e) => e.type === 'evidence.given' && e.shown === 'M-3')).toBe(true)
    expect(answered(hung, 'is M-3 off')).toMatch(
      /^What the log has of M-3\nM-3, [^\n]* at hold point 2: [^\n]*STILL ON/,
    )
    expect(answered(hung, 'is M-3 off')).not.toMatch(/^No set-check/)
  })

  it.each([
    'is L-103 off',
    'ok to run with M-3',
    'is it safe to start on the micrometer',
    'was the bore out of round',
    'which gauges were used',
    'is the gauge glass clean',
    'what fell with M-3',
  ])('not in: %s', (asked) => {
    expect(answered(off, asked)).not.toMatch(/^OFF ITS STANDARD/)
  })
})

describe('why it is on hold', () => {
  it.each(['why hold', 'wy hold', 'why was it put on hold', 'why is it hold', 'why could it not be judged'])(
    '%s: what holds the verdict up, then what was decided',
    (asked) => {
      expect(answered(off, asked)).toMatch(
        new RegExp(
          `^Why it is HOLD[^\\n]*\\n18 Bore judged: HOLD \\(entry ${seqOf(off, 'verdict.given')}\\)\\nThe set-check before the readings is out by more than is allowed\\.\\nThe set-check after[^\\n]*\\n[^\\n]*0\\.0006 in OVER[\\s\\S]*\\nDecided after it, and no reason for the HOLD: concession, by KH[^\\n]*\\(entry ${seqOf(off, 'disposition.set')}\\): good by eye`,
        ),
      )
    },
  )

  it('no verdict of the log is HOLD: said so', () => {
    expect(answered(good, 'why is it on hold')).toMatch(/^Nothing was put on hold by this log/)
  })

  it.each(['why did the hold point fall', 'why did the hold points fall', 'why did they hold the rod'])(
    'not in: %s',
    (asked) => {
      expect(kindOf(asked)).not.toBe('why is it on hold')
    },
  )
})

describe('what fell with a gauge', () => {
  const judged = new Walk().toVerdict()
  judged.bring({
    ...({ do: 'doubt-instrument', instrument: 'M-3', person: 'KH' } as const),
    ...{ why: 'it was dropped on the bench', says: 'the ring R-2' },
  })

  it.each([
    'what fell with M-3',
    'what did they do with the readings off M-3',
    'what hung on the dropped gauge',
    'what became void with the micrometer',
    'which figures rest on M-3',
  ])('%s: void, and what was not taken again', (asked) => {
    expect(answered(judged, asked)).toMatch(
      /^Void with M-3: \d+ figures, and what rested on them\nM-3 OUT OF CALIBRATION[^\n]*readings void \([^)]*\)\n[\s\S]*Void with it: 18 Bore judged\.[\s\S]*NOT taken again: /,
    )
  })

  it('voids nothing where no entry puts it back, and says that it read off', () => {
    expect(answered(off, 'wat hung on the set check')).toMatch(
      /^No entry voids what M-3 read, and it read OFF its standard: what is judged by it is HOLD\nOff its standard:\n[\s\S]*18 Bore judged: HOLD[\s\S]*7 Bore: \d+ figures/,
    )
  })

  it('who dropped it no entry tells but in its words', () => {
    expect(answered(judged, 'who droped M-3')).toMatch(
      /^Whose hand it was no entry tells[^\n]*\n[^\n]*it was dropped on the bench, says the ring R-2 \(entry \d+\)$/,
    )
    expect(answered(off, 'who dropped M-3')).not.toMatch(/^Whose hand/)
  })
})

describe('another figure', () => {
  const corrected = new Walk().throughGate().keys(...BEFORE, ...OFF, ...BORE_LINES)
  const at = corrected.entries.findLast((e) => e.type === 'reading.taken')
  corrected.bring({ do: 'correct', of: at?.seq ?? 0, typed: '9.5018', why: 'read off the sleeve wrong' })
  corrected.keys(...after)

  it('is not judged anew, and what holds the verdict up is named', () => {
    expect(corrected.entries.some((e) => e.type === 'reading.corrected')).toBe(true)
    expect(answered(corrected, 'would it have passed with the old figure')).toMatch(
      /^No entry tells what another figure would have come to: nothing is judged anew here\nThe correction of entry \d+: no verdict was given on the old figure; 18 Bore judged: HOLD \(entry \d+\) rests on the new one\.\n18 Bore judged is HOLD, by the log for this: The set-check before/,
    )
  })

  it.each(['what number did he change and why', 'which figure was changed'])('%s', (asked) => {
    expect(answered(corrected, asked)).toMatch(/^1 correction;[\s\S]*Because: read off the sleeve wrong/i)
  })
})
