// Whatever no kind knows is answered by the entries nearest to its words, and what an answer leaves of a question stands beneath it. What is
// keyed in reasons and notes counts with all else, and nothing is claimed of words that no row has.
import { describe, expect, it } from 'vitest'
import { wordsIn } from '../../../src/core/review/asked-entries.ts'
import { answered } from '../../helpers/answered.ts'
import { AFTER_LINES, BORE_LINES, GAS_LINES, LOCK_LINES, Walk, WORDS_AGAIN } from '../../helpers/example.ts'
import { keptOff, stopReleased } from '../../helpers/stopped.ts'

const day = keptOff('the master was cold')
day.keys(...BORE_LINES.slice(0, 4))
day.bring({ do: 'note', text: 'pocket wheel stood two turns open when we came' })
day.bring({ do: 'note', text: 'M-3 fell off the bench' })
day.keys('9.5068')
stopReleased(day, 'forklift reversed into the skid', 'driver sent away, rail put up')
day.keys('ALL OUT', 'L-101', 'L-102', 'L-113', '3', 'KH cut L-103 and hung this one', ...LOCK_LINES.slice(3))
day.keys(...WORDS_AGAIN, ...GAS_LINES, 'ML', ...BORE_LINES.slice(5), ...AFTER_LINES)

const own = day.entries.filter((e) => wordsIn(e) !== '')

describe('what no kind knows', () => {
  it('there are words of people to ask for', () => {
    expect(own.map(({ type }) => type)).toEqual([
      'note.written',
      'note.written',
      'stop.explained',
      'stop.released',
    ])
  })

  it.each([
    ['who turned the pocket wheel and was it set back', /pocket wheel stood two turns open/],
    [
      'did the forklift hit the skid',
      /STOP because: something else, forklift reversed into the skid; called by RO/,
    ],
    ['has the rail been put up', /driver sent away, rail put up/],
    ['was the key of the master in the cabinet', /the master was cold/],
  ])('%s: the words somebody keyed stand in it, reasons among them', (asked, line) => {
    expect(answered(day, asked)).toMatch(
      /^No answer is made of it here\. Nearest to it by its words: \d+ entr/,
    )
    expect(answered(day, asked)).toMatch(line)
  })

  it('names the words that stand in no entry, and only these', () => {
    const text = answered(day, 'has the rail been bolted by the carpenter')
    expect(text).toMatch(/\nIn no entry: bolted, carpenter\.\n/)
    expect(answered(day, 'has the rail been put up')).not.toMatch(/In no entry/)
    expect(text).toMatch(/rail put up/)
  })

  it('counts what it does not show', () => {
    const [, shown = '', all = ''] =
      /Nearest to it by its words: (\d+) entr\w+ of (\d+)/.exec(
        answered(day, 'what about the bore and the skid'),
      ) ?? []
    expect(Number(all)).toBeGreaterThan(Number(shown))
    expect(answered(day, 'what about the bore and the skid')).toMatch(
      new RegExp(`\\n${Number(all) - Number(shown)} more have one of these words`),
    )
  })

  it('words said without a question are looked up too, where no item has them as they stand', () => {
    expect(answered(day, 'the forklift and that skid')).toMatch(/forklift reversed/)
    expect(answered(day, 'forklift skid, what was that')).toMatch(/forklift reversed/)
    expect(answered(day, 'forklift skid')).toMatch(/forklift reversed/)
    expect(answered(day, 'skid')).toBe('')
  })
})

describe('a word that no entry has', () => {
  it('is heard as the one word of the log that is a slip apart, and that is said', () => {
    const text = answered(day, 'which way did the forklfit go')
    expect(text).toMatch(/\nHeard as: forklfit as forklift\.\n[\s\S]*forklift reversed/)
    expect(answered(day, 'which way did the forklift go')).not.toMatch(/Heard as/)
  })
})

describe('what was done about a thing that nobody found amiss by a verdict', () => {
  it.each(['what did they do about the pocket wheel', 'what became of the forklift'])(
    '%s: its own entry, and no verdict of another',
    (asked) => {
      const text = answered(day, asked)
      expect(text).toMatch(/pocket wheel stood|forklift reversed/)
      expect(text).not.toMatch(/^Whether it is fixed/)
    },
  )

  it('of one that was, it is told', () => {
    expect(answered(day, 'is the bore fixed')).toMatch(
      /^Whether it is fixed no record tells[\s\S]*NC-1 Bore judged/,
    )
  })

  it('a place is told by its number', () => {
    for (const asked of [
      'what was done about 7.3 that was keyed late',
      'what became of the bore at 7.3 that was late',
    ])
      expect(answered(day, asked)).toMatch(/^7\.3 Bore, CENTRE/)
  })
})

describe('near a limit', () => {
  it('is never said to be nothing while the verdict is HOLD', () => {
    const text = answered(day, 'how close is the taper to its limit')
    expect(text).toMatch(
      /^Judged HOLD, so that no verdict tells near or far: 18 Bore judged[^\n]*\nOf what is named, taper:\n18 Bore judged: taper 0\.00/,
    )
  })
})

describe('somebody of the crew', () => {
  it('who signed nothing on is told so, with the role', () => {
    for (const asked of [
      'was KH even signed on this job',
      'who is KH',
      'where was KH during the forklift thing',
    ])
      expect(answered(day, asked)).toMatch(/^KH K\. Haas, lead: 0 entries keyed[\s\S]*No entry signs KH on: /)
    expect(answered(day, 'who is RO')).toMatch(
      /^RO R\. Oduya, mechanic[\s\S]*Came onto the job by the entries above/,
    )
  })

  it('whose authority a decision names is in it, and until when', () => {
    const conceded = day.copy()
    conceded.bring({
      ...({ do: 'dispose', step: 'disposition', choice: 'concession', person: 'PB' } as const),
      ...{ why: 'the day shift wants it', authority: 'my boss M. Orr', until: '2026-09-01' },
    })
    expect(answered(conceded, 'who is M. Orr')).toMatch(
      /concession, by PB, because: the day shift wants it, on the authority of my boss M\. Orr, until 2026-09-01 \(entry/,
    )
  })
})

describe('what an answer leaves of a question', () => {
  it('stands beneath it by its rare words', () => {
    const text = answered(day, 'is it safe to run with that pocket wheel')
    expect(text).toMatch(/^No record tells that, and this one does not/)
    expect(text).toMatch(
      /\nAlso in the log by words of the question \([^)]*wheel[^)]*\):\n[^\n]*pocket wheel stood/,
    )
  })

  it('is nothing where the answer has them, or the log has not', () => {
    expect(answered(day, 'which locks are still on')).not.toMatch(/Also in the log/)
    // The gauge is in it already, and the note of it too.
    expect(answered(day, 'is M-3 to be trusted that fell off the bench')).not.toMatch(/Also in the log/)
    expect(answered(day, 'is it safe to run with that giraffe')).not.toMatch(/Also in the log/)
  })
})

describe('somebody who is named in the words of another', () => {
  it.each(['what did KH do', 'did KH look at it himself'])(
    '%s: has the entry that tells of the lock',
    (asked) => {
      const text = answered(day, asked)
      expect(text).toMatch(/L-103 before, not so now: KH cut L-103 and hung this one/)
      expect(text).toMatch(/released by KH/)
      // The source of a limit names who approved it.
      expect(text).not.toMatch(/Bore judged/)
    },
  )
})

describe('a gauge that somebody noted to have fallen', () => {
  it.each(['was the micrometer any good', 'is M-3 to be trusted', 'was M-3 used again'])(
    '%s: the note stands in it',
    (asked) => {
      expect(answered(day, asked)).toMatch(/Said of it in words:\n[^\n]*M-3 fell off the bench/)
    },
  )

  it('why it was gone on with is of the gauge, and whether to go on with it is of running', () => {
    expect(answered(day, 'why did he go on with a gauge that was off')).toMatch(
      /^OFF ITS STANDARD[\s\S]*the master was cold/,
    )
    expect(answered(day, 'can it run with a gauge that was off')).toMatch(/^No record tells that/)
  })
})

describe('whether it is fit', () => {
  it.each([
    'is it fit',
    'is the machine ok',
    'is it ok to run',
    'are they ready to start',
    'is the unit good to go',
    'fit for service?',
    'is everything all right',
  ])('%s: no record tells that', (asked) => {
    expect(answered(day, asked)).toMatch(/^No record tells that/)
  })

  it.each([
    'was the ovality ok',
    'do the rings fit',
    'how near is the liner fit to its limit',
    'was the taper good',
  ])('%s: of a size it is no such question', (asked) => {
    expect(answered(day, asked)).not.toMatch(/^No record tells that/)
  })

  it('ovality is out of round', () => {
    expect(answered(day, 'was the ovality ok')).toMatch(/out of round 0\.00\d+ in of at most/)
  })
})

describe('a tag of two parts', () => {
  it('is found whole, whatever is asked of it', () => {
    const own = new Walk().toGate().keys('P-JD1', 'L-102')
    for (const asked of ['who took P-JD1 off', 'where is p-jd1', 'is P-JD1 off'])
      expect(answered(own, asked)).toMatch(/^What the log has of P-JD1\nP-JD1, lock at main driver breaker/)
  })
})

describe('a gauge that is asked to be replaced', () => {
  it('is told as an instrument, and not as a part', () => {
    expect(answered(day, 'what replaced M3')).toMatch(/^M-3 is in this log/)
  })
})

describe('words that tell little', () => {
  it('are looked up where a question has no others', () => {
    expect(answered(day, 'who had the start made')).toMatch(/^No answer is made of it here[\s\S]*NO START/)
  })
})

describe('a leak test', () => {
  it('is none of the gas in the air', () => {
    expect(answered(day, 'was the gas leak test read')).not.toMatch(/^Gas tests as they were keyed/)
    expect(answered(day, 'was the gas test read')).toMatch(/^Gas tests as they were keyed/)
  })
})

describe('a lock that another was keyed in place of', () => {
  it('is not told as still on, and has what was said of it', () => {
    const text = answered(day, 'was L-103 really on when KH let them carry on')
    expect(text).toMatch(
      /\nL-103, [^\n]*No hold point was keyed with it taken off, and ANOTHER was keyed in its place/,
    )
    expect(text).not.toMatch(/L-103, [^\n]*STILL ON/)
  })

  it('a note of danger that is of no lock stands beside none', () => {
    const gas = new Walk().toBore()
    gas.bring({ do: 'note', text: 'smells of gas at the outer head' })
    expect(answered(gas, 'is L-104 still on')).not.toMatch(/smells of gas/)
    gas.bring({ do: 'note', text: 'lock is hanging open at the valve' })
    expect(answered(gas, 'is L-104 still on')).toMatch(/But: TOLD OF DANGER[^\n]*hanging open/)
  })
})
