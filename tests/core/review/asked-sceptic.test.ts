// Questions of whoever doubts the record, with slips and openings of their own: falls by lapse, instruments that were dropped, by whose word
// it runs and until when, whether it is closed, what is still on. Each from entries; none is heard as a word that nobody knows.
import { describe, expect, it } from 'vitest'
import { fold } from '../../../src/core/job/fold.ts'
import { questionMended } from '../../../src/core/review/asked-slips.ts'
import { answered } from '../../helpers/answered.ts'
import { AFTER_LINES, BORE_LINES, exampleDefs, noOverhauls, Walk } from '../../helpers/example.ts'

const judged = new Walk().toVerdict()
const closed = judged.copy().keys('1', 'KH', 'inside its limits, read again not later than 8000 h', '')

function dropped(): Walk {
  const walk = judged.copy()
  walk.bring({
    ...({ do: 'doubt-instrument', instrument: 'M-3', person: 'KH' } as const),
    ...{ why: 'it was dropped on the bench', says: 'the ring R-2' },
  })
  return walk
}

describe('what was done to an instrument', () => {
  it.each(['was the micrometer dropped', 'did anybody drop the inside micrometer'])(
    'is found by the wider name and another form of the word: %s',
    (asked) => {
      const text = answered(dropped(), asked)
      expect(text).toMatch(/^No answer is made of it here/)
      expect(text).toMatch(
        /M-3, Inside micrometer[^\n]*it was dropped on the bench, says the ring R-2 \(entry \d+\)/,
      )
    },
  )

  it('stands first by its rarest word where no entry has all of them, and nothing is said of what nobody keyed', () => {
    const text = answered(dropped(), 'was the thermometer dropped')
    expect(text).toMatch(/^No answer is made of it here[\s\S]*M-3, [^\n]*it was dropped on the bench/)
    expect(text).not.toMatch(/nobody keyed/)
    expect(text).not.toMatch(/Bore temperature/)
  })

  it('that was found out stands before the days until which it counts', () => {
    const text = answered(dropped(), 'could the micrometre or guage have been wrong at the bore')
    expect(text).toMatch(/^Found out of calibration, past its day or put back: M-3\nM-3 OUT OF CALIBRATION/)
  })
})

describe('a gas test past its life', () => {
  const lapsed = new Walk().toBore().wait(600)
  lapsed.bring({ do: 'tick' })

  it.each([
    'when did the gas test lapse',
    'who let them open it with the gas test lapsed',
    'did the gas test run out',
    'had the oxygen test expired',
  ])('is told fall by fall, with its entry and who was signed on: %s', (asked) => {
    const fall = lapsed.entries.find((e) => e.type === 'gate.closed' && e.cause === 'lapsed')
    expect(answered(lapsed, asked)).toMatch(
      new RegExp(
        `^When the gas test was past its life, by this log: \\d falls?\\n2 [^\\n]*\\n[^\\n]*fell: [^\\n]*past its life \\(entry ${fall?.seq}\\); signed on: RO[^\\n]*, RO at the keys`,
      ),
    )
  })

  it('says that nobody keyed clear, until somebody did', () => {
    expect(answered(lapsed, 'when did the gas test lapse')).toMatch(/NOBODY KEYED CLEAR, not complete again/)
    const clear = lapsed.copy().keys('ALL OUT')
    expect(clear.last.type).toBe('people.clear')
    expect(answered(clear, 'when did the gas test lapse')).toMatch(
      new RegExp(`keyed clear \\d\\d:\\d\\d \\(entry ${clear.last.seq}\\), not complete again`),
    )
  })

  it('is on no record where none fell by it, and a run-out of the rod is none', () => {
    expect(answered(closed, 'when did the gas test lapse')).toMatch(
      /^No hold point fell by this log because the gas test/,
    )
    expect(answered(closed, 'what was the run out of the rod')).not.toMatch(/past its life/)
    expect(answered(closed, 'when was the gas tested')).toMatch(/^Gas tests as they were keyed/)
  })
})

describe('by whose word it runs, and until when', () => {
  const ASKED = [
    'till when may it run',
    'on whose authority does it run',
    'until when can it run',
    'up to when may it go on',
  ]

  it.each(ASKED)('is told in the words of the decision, with its entry: %s', (asked) => {
    const d = closed.entries.find((e) => e.type === 'disposition.set')
    expect(answered(closed, asked)).toMatch(
      new RegExp(
        `^Whether it may run no record tells\\.[\\s\\S]*NC-1 Bore judged: MONITOR: accept, by KH[^\\n]*\\(entry ${d?.seq}\\)\\n[^\\n]*no end is keyed beside its words\\.\\nIts words: inside its limits, read again not later than 8000 h\\.`,
      ),
    )
  })

  it('names the authority and the end of a concession, and of an open job what is open first', () => {
    const walk = judged.copy()
    walk.bring({
      ...({ do: 'dispose', step: 'disposition', choice: 'concession', person: 'KH' } as const),
      ...{ why: 'worn but runs', authority: 'maker letter 12', until: '2000 h', from: '91000' },
    })
    expect(answered(walk, 'till when may it run')).toMatch(
      /\nOpen by this record, and before any hours:\nOPEN: NOT CLOSED[\s\S]*\nOn the authority of maker letter 12; for 2000 running hours from 91000 h, to 93000 h on the counter\.\nIts words: worn but runs\./,
    )
  })

  it('leaves out what conforms and was accepted', () => {
    const { step, about } = closed.entries.find((e) => e.type === 'disposition.set') ?? {
      step: '',
      about: '',
    }
    expect([step, about]).toEqual(['disposition', 'bore_judged'])
    const bore = BORE_LINES.map((line) => ({ '9.5068': '9.5040', '9.5069': '9.5041' })[line] ?? line)
    const good = new Walk(exampleDefs({ machine: noOverhauls })).toBore().keys(...bore, ...AFTER_LINES)
    // Where a procedure asks for a decision on it all the same.
    const set = {
      type: 'disposition.set',
      step,
      about,
      choice: 'accept',
      person: 'KH',
      why: 'inside',
    } as const
    good.entries.push({ ...set, seq: good.last.seq + 1, at: good.last.at, by: 'RO' })
    good.state = fold(good.state, good.last)
    expect(good.state.verdicts[about]?.verdict.result.verdict).toBe('ACCEPT')
    expect(good.state.dispositions[step]?.choice).toBe('accept')
    expect(answered(good, 'till when may it run')).toContain('No decision that stands lets a part go on')
  })

  it('is nobody’s where nothing was accepted', () => {
    expect(answered(judged, 'till when may it run')).toContain('No decision that stands lets a part go on')
  })

  it('whether it may run at all stays the first question', () => {
    expect(answered(closed, 'may it run')).toMatch(/^No record tells that, and this one does not/)
  })
})

describe('how it stands', () => {
  it.each([
    ...['is it closed', 'is the job closed', 'was it finished', 'is it over', 'has it been completed?'].map(
      (asked) => [asked, /^It is closed/] as const,
    ),
    ...[
      ...['is anything still on the machine', 'what is still on', 'is anything left hanging on it'],
      ...['what hangs on the machine', 'is something still on the compressor'],
    ].map((asked) => [asked, /^What is on the machine no record tells/] as const),
  ])('is heard: %s', (asked, told) => {
    expect(answered(closed, asked)).toMatch(told)
  })

  it.each([
    'is the valve closed',
    'what is left to do',
    'what is on sheet 7',
    'is it closed off at the suction',
  ])('and not in: %s', (asked) => {
    expect(answered(closed, asked)).not.toMatch(/^(?:It is closed|What is on the machine)/)
  })

  it('closed or not is said first', () => {
    expect(answered(closed, 'is it closed')).toMatch(/^It is closed\n.*\(entry \d+\)$/)
    expect(answered(judged, 'is the job closed')).toMatch(/^It is not closed\nIn the way of its close\n/)
  })

  it('what is still on is told from what nobody told off', () => {
    expect(answered(judged, 'is anything still on the machine')).toMatch(
      /^What is on the machine no record tells\.[^\n]*\n[^\n]*L-101/,
    )
  })

  it('who took the decision is of the decision, and no reading is looked for', () => {
    expect(answered(closed, 'who took the decision')).toMatch(/^Who decided what and why[\s\S]*accept, by KH/)
    expect(answered(closed, 'who took the bore readings')).toMatch(/^Who keyed the readings/)
  })
})

describe('a slip in how it is asked', () => {
  it.each([
    ['in wich order did things go wrong', /^In the order of the log/],
    ['in wat order did it happen', /^In the order of the log/],
    [
      'coud the guage have been wrong',
      /^Within what the register allows at each of 2 set-checks of M-3; that is no word/,
    ],
    ['wen was the gas tested', /^Gas tests as they were keyed/],
    ['who took the decison', /^Who decided what and why/],
  ])('%s', (asked, told) => {
    expect(answered(closed, asked)).toMatch(told)
  })

  it.each([
    'was the bore gouged',
    'is the heading right',
    'what of wich-2',
    'worse than before',
    'when it closes',
    'who signs',
  ])('leaves alone what is a word of its own: %s', (text) => {
    expect(questionMended(text)).toBe(text)
  })

  it('is no question where it does not begin as one', () => {
    expect(answered(closed, 'taper')).toBe('')
    expect(answered(closed, 'witness KH')).toMatch(/^No answer is made of it here/)
    expect(answered(closed, 'help')).toBe('')
  })
})
