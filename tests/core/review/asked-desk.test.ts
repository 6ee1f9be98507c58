// Questions of a lead who was not there: each kind in the words that people have for it, with entries or items of the record; near ones that
// are of another kind; and what no kind knows, looked up by its words, or not told.
import { describe, expect, it } from 'vitest'
import { DESK_QUESTIONS } from '../../../src/core/review/asked-desk-kinds.ts'
import { answered } from '../../helpers/answered.ts'
import { Walk } from '../../helpers/example.ts'

const kindOf = (text: string) =>
  DESK_QUESTIONS.find(({ asked }) => asked.some((one) => one.test(text.toLowerCase())))?.like ?? null

// At the fourth place two readings lie apart, so a third was read.
const BORE = ['9.5033', '9.5034', '9.5021', '9.5020', '9.5068', '9.5069', '9.5034', '9.5038', '9.5035']
const REST = ['9.5027', '9.5027', '9.5018', '9.5019', '1', '9.5008', '9.5008', '9.5007', '9.5007', '9.7502']
const AFTER = ['1', '1', '1', '71.6', '70.8', '9.5001']
const walk = new Walk()
  .toBore()
  .keys(...BORE, ...REST, ...AFTER)
  .keys('1', 'KH', 'inside its limits, read again not later than 8000 h', '')

const answer = (keyed: string, of = walk) => answered(of, keyed)

type Row = readonly [RegExp, readonly string[], readonly string[]]

const ASKED: Readonly<Record<string, Row>> = {
  'who was in': [
    /^Who was in, and for how long, the log does not tell: it sees nobody\nOn the job were RO, ML and KH[\s\S]*\n06:\d\d RO: Hold point before hands, tools or lamps go in: complete \(entry \d+\)/,
    [
      ...[
        'who was in there when the gas test lapsed',
        'how long were hands in the bore',
        'was anybody alone',
      ],
      ...['who was still in when they started it', 'did anybody work alone', 'were they inside'],
    ],
    ['who was the witness', 'what was in the bore', 'who signed'],
  ],
  'how long did it take': [
    /^From 2026-03-14 06:20 to 2026-03-14 06:\d\d, \d+ min by the clock of the log\.\n[\s\S]*RO, R\. Oduya, signed on \(entry \d+\)[\s\S]*the times of keying/,
    [
      ...['how long did it take', 'how long did the whole thing take', 'when did the night shift begin'],
      ...['who handed over to whom', 'when did they finish', 'how long was the job'],
    ],
    ['how long will it last', 'how long were hands in the bore', 'when is the next overhaul'],
  ],
  'is anything left inside': [
    /^What is left inside no record tells: somebody has to have looked\nOf what was placed by the register, nothing is open\./,
    [
      ...['is anything left inside', 'is there anything left inside the machine', 'were the tools counted'],
      ...['did they leave something in the bore', 'were all the rags out', 'what is still in there'],
    ],
    ['what was left out', 'which tools were used', 'what is left to do'],
  ],
  'what was left out': [
    /^Nothing that was asked stands undone[\s\S]*\n1 step left out by their own condition: behind \d+\.\nWhat no step asks nobody was asked to do/,
    [
      ...['what was left out', 'did they skip a step', 'what did nobody check', 'what was not measured'],
      ...['was anything skipped', 'which sheets were left out'],
    ],
    ['what is left', 'what was done', 'did they stop'],
  ],
  'which places were read once more': [
    /^Places that were read once more, and figures that were doubted\n[\s\S]*7\.4 Bore, CENTRE of ring travel, SIDE TO SIDE/,
    [
      ...[
        'why did they need a third reading',
        'which place was read more than twice',
        'did the readings agree',
      ],
      ...['which places disagree', 'was any figure doubted', 'were there extra readings'],
    ],
    ['who took the readings', 'what was corrected', 'read 7.4'],
  ],
  'whose limits are these': [
    /^Limits that are not the machine’s own, with book and page\n[\s\S]*Bloch and Hoefner 1996, p\. 259/,
    [
      ...['whose limits are these', 'which limits come from a book and not from us', 'what limits were used'],
      ...['what is the source of the limits', 'are there fallbacks', 'were rules of thumb used'],
    ],
    ['what is the limit', 'where does the gas come from', 'who limits it'],
  ],
  'did the same one measure and decide': [
    /^Who decided, and who keyed the readings behind it\nNC-1 Bore judged: MONITOR: decided by KH \(entry \d+\), its readings keyed by RO\.\n[\s\S]*Whose hand held the gauge/,
    [
      ...['did the same man measure and sign', 'did the same one measure and decide', 'was it independent'],
      ...['did he accept his own work himself', 'was it the same person who measured and accepted it'],
      'did whoever measured also sign',
    ],
    ['who decided', 'is it the same machine', 'who measured'],
  ],
  'who was the witness': [
    /^Witnesses, as they signed; also of what has fallen since\n2 Hold point before hands, tools or lamps go in\n06:\d\d ML, keyed by RO: [^\n]*\(entry \d+\)/,
    [
      ...[
        'who was the witness',
        'who witnessed it',
        'was it witnessed',
        'who was the witness at the hold point',
      ],
      ...['which hold points were witnessed', 'was the hold point witnessed'],
    ],
    ['who signed', 'what is a point', 'who may sign'],
  ],
  'were the gauges calibrated': [
    /^Instruments of this log, with the day until which their calibration counts\n[\s\S]*M-3, [^\n]*until 2026-09-30, certificate C-1182 \(invented\); not past it on 2026-03-14 \(/,
    [
      ...['were the gauges calibrated', 'was all of the kit in calibration', 'did they use the right gauge'],
      ...['were the instruments in date', 'show me the certificates?', 'was it the wrong meter'],
    ],
    ['how was M-3 calibrated', 'which gauges were used', 'is the gauge glass clean'],
  ],
  'was anything rushed': [
    /^Nothing of the pace, of figures too alike or of the clock stands in this list; that is no word that nothing was hurried|^What looks improbable or out of time, asked and not accused\n/,
    [
      ...['was anything rushed', 'did they hurry', 'are the figures made up', 'was it too fast'],
      ...['is anything suspicious', 'were the readings copied'],
    ],
    ['was anything corrected', 'who keyed it', 'how long did it take'],
  ],
  'what did ML do': [
    /^ML M\. Lind, mechanic: \d+ entries keyed, ML named in \d+, signatures and words of others among them\n[\s\S]*\(entry \d+\)[\s\S]*whose hands did the work is not\./,
    [
      ...['what did ML do', 'what did ml sign', 'what has ML witnessed', 'was ML there', 'did ML sign'],
      'what was the work of ML',
    ],
    ['what did they do', 'who is it', 'what was done'],
  ],
}

describe.each(Object.entries(ASKED))('%s', (like, [says, asked, near]) => {
  it('is heard in its wordings, from entries and items', () => {
    expect(asked.length).toBeGreaterThanOrEqual(5)
    for (const text of asked) expect([text, kindOf(text)]).toEqual([text, like])
    for (const text of asked) expect(answer(text), text).toMatch(says)
    for (const text of asked)
      expect(answer(text), text).not.toMatch(/\byes\b|\bis (?:safe|ready|fit)\b|\bmay run\b/i)
  })

  it.each(near)('and not in: %s', (text) => {
    expect(kindOf(text)).not.toBe(like)
  })
})

describe('what no kind knows', () => {
  it('is looked up by its words, each entry with its number, and no answer is made of them', () => {
    const text = answer('what about the bore being round')
    expect(text).toMatch(
      /^No answer is made of it here\. Nearest to it by its words: \d+ entries of \d+ that have one of them\n[\s\S]*06:\d\d RO: 18 Bore judged: MONITOR; out of round 0\.003\d in of at most 0\.0095 in[^\n]*\(entry \d+\)/,
    )
    expect(text).toMatch(/\d+ more have one of these words\./)
    const other = answer('what about the thermometer and the giraffe')
    expect(other).toMatch(
      /^No answer is made of it here\.[^\n]*\nIn no entry: giraffe\.\n[\s\S]*Contact thermometer/,
    )
  })

  it('is not told where no entry has one of its words', () => {
    expect(answer('how tall is the stack?')).toMatch(
      /^Not found by its words: no entry has tall, stack in it/,
    )
    expect(answer('who paid for lunch?')).toMatch(/^Not found by its words/)
  })

  it('whether it is safe comes before all of it', () => {
    expect(answer('is it safe, was anything rushed')).toMatch(/^No record tells that/)
  })

  it('a figure of a limit is told with its source, and the decision about a part without the others', () => {
    expect(answer('where does 0.0055 come from')).toMatch(
      /^Where 0\.0055 stands beside a verdict, with its source\n18 Bore judged: taper governs: [^\n]*p\. 259 \(entry \d+\)/,
    )
    expect(answer('why was the bore accepted')).toMatch(/NC-1 Bore judged: MONITOR: accept, by KH/)
  })

  it('of nobody who is in no entry anything is told', () => {
    expect(answer('what did TS do')).toMatch(/^TS [^\n]*, trainee, is in no entry of this log$/)
  })
})
