// What people ask who are held up by a sheet, or miss one: why it is asked twice, why two people, what it was last time, what one may do now,
// which figure is a good one. Each kind in several wordings, some misspelt, and near ones that are of another kind.
import { describe, expect, it } from 'vitest'
import { NOTHING_FOUND } from '../../../src/core/talk/answer-asked.ts'
import { hear } from '../../../src/core/talk/hear.ts'
import {
  BORE_LINES,
  exampleDefs,
  GAS_LINES,
  LOCK_LINES,
  noOverhauls,
  Walk,
  WORD_LINES,
} from '../../helpers/example.ts'

const TEMPERATURES = ['1', '1', '71.2', '70.4']
const SPARE = ['1', '9.5008', '9.5008', '9.5007', '9.5007', '9.7502']

const AT = {
  locks: new Walk().toGate().keys('L-101', 'L-102'),
  words: new Walk().toGate().keys(...LOCK_LINES),
  gas: new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES),
  witness: new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES, ...GAS_LINES),
  lapsed: new Walk().toBore().wait(45).keys(''),
  mic: new Walk().throughGate().keys(...TEMPERATURES),
  bore: new Walk().toBore(),
  third: new Walk().toBore().keys('9.5033', '9.5039'),
  fresh: new Walk(exampleDefs({ machine: noOverhauls })).toBore().keys('9.5033'),
  surface: new Walk().toBore().keys(...BORE_LINES, ...SPARE),
  decide: new Walk().toVerdict(),
  decided: new Walk().toVerdict().keys('1', 'KH', 'inside its limit, read again in 8000 h'),
  stopped: new Walk().toBore().keys('9.5033', 'stop', '1', 'a hiss at the bleed', 'RO'),
} as const

type Row = readonly [keyof typeof AT, RegExp, readonly string[], readonly string[]]

const ASKED: Readonly<Record<string, Row>> = {
  'why words are typed': [
    'words',
    /^So that nobody passes it from habit[\s\S]*Common practice, no source\.\nAsked here: Everybody clear\.[\s\S]*NO START is typed only if it is so[\s\S]*Step 2, [^\n]*why: "[\s\S]*Hazard of sheet 2[\s\S]*Hold point 2/,
    [
      ...['why do I have to type it', 'why must i type the words', 'why cant i just press enter'],
      ...['why do i have to write no start', 'why not just yes', 'why typed words'],
    ],
    ['why is the lock on', 'what does no start mean', 'how do i type it', 'why does it start'],
  ],
  'why it is keyed twice': [
    'gas',
    /^Each line of hold point 2 is keyed once\.\nAlike, and each for itself: oxygen where people breathe[\s\S]*oxygen inside the opening[\s\S]*Hold point 2/,
    [
      ...['why do I key this twice', 'why is it asking me again', 'did i not just do this'],
      ...['i already keyed this', 'why twice'],
    ],
    ['why do I test the gas twice', 'can i key it again', 'how do i key it', 'what did i key'],
  ],
  'why two people': [
    'witness',
    /^A slip is seen last by whoever made it[\s\S]*no source\.\nHold point 2, witness: "Somebody who did none of this[\s\S]*Terms of the trade, witness[\s\S]*site permit may ask for more[\s\S]*Hazard of sheet 2/,
    [
      ...['why two people', 'why do we need two people', 'why do i need a witness', 'why a second man'],
      ...['why cant i sign it myself', 'why is one not enough'],
    ],
    ['why two readings', 'why two valves', 'who is the witness', 'how many people are on'],
  ],
  'why gas again': [
    'lapsed',
    /^Hold point 2 fell: the gas test is past its life\. Air that was read before is no air of now\.\nHold point 2 reads: oxygen where people breathe[\s\S]*A gas figure counts 30 min[\s\S]*Hold point 2: FALLEN/,
    [
      ...['why do i have to do gas again', 'why gas again', 'why do we test the air again'],
      ...['why is the gas test needed again', 'why do i key oxygen twice', 'why did the gas lapse'],
    ],
    ['why oxygen first', 'what gas is it', 'how long is the gas test good', 'why is gas dangerous'],
  ],
  'why not the old gauge': [
    'mic',
    /^M-3: nothing on its record refuses it on 2026-03-14\.\nM-1: its calibration lapsed on 2025-11-30\.\nOne that is in no register[\s\S]*Terms of the trade, calibration/,
    [
      ...['why cant i use the old mic', "why can't i take my own micrometer", 'whats wrong with the old mic'],
      ...['why is the old gauge not in the list', 'why do i have to use a different guage'],
    ],
    [
      'why a micrometer',
      'how do i take another micrometer',
      'why is M-1 not allowed',
      'is this the old bore',
    ],
  ],
  'what it was last time': [
    'third',
    /^Bore, HEAD END of ring travel, TOP TO BOTTOM, by the machine record:\n {2}2019-05-14: left at 9\.5012 in\n {2}2021-08-03: [^\n]*\n {2}2023-11-20: left at 9\.5026 in\nAs it was read then/,
    [
      ...[
        'what was it last time',
        'waht was it last time',
        'what did we get last overhaul',
        'last overhaul?',
      ],
      ...['what was here before', 'how much was it at the last overhaul', 'what was the old reading'],
    ],
    ['what was the last gas test', 'what did i key last', 'when was the last overhaul', 'is it the last one'],
  ],
  'when it was last open': [
    'bore',
    /^Overhauls of the machine record:\n[\s\S]*2023-11-20, at 54700 h/,
    [
      ...['when was the last overhaul', 'when was it last opened', 'when was the machine last overhauled'],
      ...['how long ago was the last overhaul', 'what year was it overhauled'],
    ],
    ['when is the next overhaul', 'when does the gas lapse', 'what was it last time'],
  ],
  'what one may do now': [
    'gas',
    /^What the sheet asks, and nothing else\. Asked is the figure in %vol[\s\S]*Hazard of sheet 2[\s\S]*Hold point 2: not complete yet[\s\S]*by leave of anybody/,
    [
      ...['what may I do now', 'what can i do now', 'what am i allowed to do', 'what may we do meanwhile'],
      ...['what is allowed now', 'what can i do while i wait'],
    ],
    ['what do i do first', 'what may go wrong', 'may i go in', 'what can i do about the leak'],
  ],
  'which lock first': [
    'locks',
    /^In which order they are hung says the site’s isolation list; the machine record names none\.\nAsked here in the order of the machine record: suction block valve, V-11[\s\S]*Hazard of sheet 2/,
    [
      ...['which lock first', 'wich lock frist', 'in what order do the locks go on'],
      ...[
        'does the order matter for the locks',
        'where do i start with the locks',
        'what lock do i hang first',
      ],
    ],
    ['which lock goes where', 'what do i do first', 'who hangs the locks', 'how many locks'],
  ],
  'a good figure of a gas': [
    'gas',
    /The limit of this line:\n {2}oxygen where people breathe: at least 19\.5 %vol, at most 23\.5 %vol[^\n]*Source: 29 CFR 1910\.146\(b\)[\s\S]*A limit is no word that it is safe[\s\S]*Hold point 2/,
    [
      ...['whats a good oxygen reading', 'wats a good o2 readng', 'what should the oxygen be'],
      ...['what o2 is ok', 'good oxygen?', 'what is a safe oxygen level', 'what figure am i looking for'],
    ],
    ['what is oxygen', 'is it safe', 'is 20.8 ok', 'what is the oxygen for'],
  ],
  'wind at the opening': [
    'gas',
    /^Terms of the trade, wind:\n[^\n]*Common practice, no source\."\nAsked here: Hold the meter where your face will be[\s\S]*Limit, oxygen where people breathe[\s\S]*Hazard of sheet 2/,
    [
      ...['what if there is wind', 'does a draught matter', 'its windy, does that matter', 'what about wind'],
      ...['can i test in the wind', 'does the wind affect the test'],
    ],
    ['what if there is gas', 'what window is this', 'is the vent open'],
  ],
  'a lock that came off, by the record': [
    'bore',
    /^Barover sees no lock\. If one is off that should hang: everybody comes out[\s\S]*By the record none was taken off on this job\.\nKeyed as on, and not told off: L-10[13] \(RO\)[\s\S]*1910\.147\(e\)\(3\)[\s\S]*Hold point 2: complete/,
    [
      ...['who took the lock off', 'who has taken the lock off', 'was a lock taken off'],
      ...['are any locks off', 'who cut my lock', 'who removed L-103'],
    ],
    [
      'can i take my lock off',
      'somebody took the lock off',
      'who may take the lock off',
      'when do locks come off',
    ],
  ],
  'a sheet that was left out': [
    'decide',
    /^Sheet 10, Unswept strip, crank end: left out by its own condition\.\nIt is asked only if step 8, Unswept strip, finds "At the crank end only[\s\S]*It came to: 8 Unswept strip: "At the head end, with room to measure"\.\n/,
    [
      ...[
        'what happened to sheet 10',
        'where is sheet 10',
        'why was sheet 10 skipped',
        'what about sheet 10',
      ],
      ...['why did it jump from 9 to 11', 'did i miss sheet 10', 'why is there no step 10'],
    ],
    ['what is sheet 7', 'how many sheets are left', 'is it 10', 'what happened to the reading'],
  ],
  'accept and concession': [
    'decide',
    /The choice accept: the part goes on as it is\.[\s\S]*The choice concession: it runs on although it does not conform[\s\S]*The verdict here is MONITOR/,
    [
      ...['accept vs concession', 'whats the difference between accept and concession'],
      ...[
        'difference accept concession',
        'should i accept or concession',
        'is accept the same as concession',
      ],
    ],
    ['ACCEPT vs MONITOR', 'hone or bore', 'what is a concession'],
  ],
  'whether it is good, at the end': [
    'decided',
    /^Sheet 18, Bore judged: MONITOR; decided: accept, by KH: inside its limit, read again in 8000 h\.\nTerms of the trade, MONITOR:[\s\S]*no more is good by it/,
    [
      ...['so is it good or not', 'did it pass', 'is the bore ok', 'whats the result', 'good or bad?'],
      ...['are we good', 'how did it go'],
    ],
    ['is it safe', 'is the gas ok', 'can it run another year', 'what is the limit'],
  ],
  'a gauge is read': [
    'bore',
    /^Terms of the trade, reading an inside micrometer:\n[^\n]*Common practice, no source\."\nHere, with M-3: Swing it across for the MOST/,
    [
      ...['how do i read an inside micrometer', 'how do you use an inside mic', 'how do i read this'],
      ...['how to read the inside micrometer', 'how do i use this gauge'],
    ],
    [
      'what is a micrometer',
      'how do i hold the gauge',
      'how do i read a feeler gauge',
      'how often do i read it',
    ],
  ],
  'danger under an open STOP': [
    'stopped',
    /^FIRST: come out, everybody, and stand clear\. STOP is on record already[^\n]*\nCall: [^\n]*\nThe job is STOPPED: keyed by RO, called by RO\. May release it: KH K\. Haas or PB P\. Bright\.\n(?![\s\S]*the word stop, or the key)/,
    [...['the alarm is ringing', 'there is gas', 'the alarm rings', 'he is hurt', 'i can smell gas']],
    ['what does STOP do', 'who releases it', 'what now'],
  ],
}

const said = (at: keyof typeof AT, line: string) => {
  const { engine, state, talk, now } = AT[at]
  return hear(engine.defs, state, talk, line, now).say.join('\n')
}

describe.each(Object.entries(ASKED))('%s', (_, [at, says, asked, near]) => {
  it.each(asked)('%s', (line) => {
    const { engine, state, talk, now } = AT[at]
    // A sentence may be brought to a hold point, which refuses it; it opens nothing.
    expect(hear(engine.defs, state, talk, line, now).input?.do ?? 'evidence').toBe('evidence')
    expect(said(at, line)).toMatch(says)
    expect(said(at, line)).not.toContain(NOTHING_FOUND)
    expect(said(at, line)).not.toMatch(/\b(?:is|are) (?:now )?safe\b(?!: key)/)
  })

  it.each(near)('and not: %s', (line) => {
    expect(said(at, line)).not.toMatch(says)
  })
})

describe('what it was last time', () => {
  it('is told of no place before the first figure of today is in, so that no eye is led by it', () => {
    expect(said('bore', 'what was it last time')).toMatch(
      /^Bore, HEAD END of ring travel, TOP TO BOTTOM: 3 figures of before are on record, and told once the first of today is in/,
    )
    expect(said('bore', 'what was it last time')).not.toMatch(/9\.50/)
    const waits = new Walk().toBore().keys('9.033')
    const { engine, state, talk, now } = waits
    expect(hear(engine.defs, state, talk, 'what was it last time', now).say.join('\n')).not.toMatch(/9\.50/)
  })

  it('is said to be known of none where the record has none', () => {
    expect(said('fresh', 'what was it last time')).toMatch(/TOP TO BOTTOM: none is known\./)
    expect(said('fresh', 'when was the last overhaul')).toMatch(/has no overhaul before this job/)
  })

  it('is told of all places where none is asked', () => {
    expect(said('surface', 'what was the bore last time')).toMatch(
      /last 9\.5026 in \(2023-11-20\) {3}found 9\.5034/,
    )
    expect(said('locks', 'what was it last time')).toMatch(/^No place is asked here/)
  })
})

it('a sheet is told as it stands: done, open, to come, or none of this job', () => {
  expect(said('surface', 'what happened to sheet 9')).toMatch(/Unswept strip, head end: it is done/)
  expect(said('surface', 'what happened to sheet 12')).toMatch(/it is the one that lies open/)
  expect(said('surface', 'what happened to sheet 18')).toMatch(/it is still to come/)
  expect(said('surface', 'what happened to sheet 2')).toMatch(/a hold point\.\nHold point 2: complete/)
  expect(said('surface', 'what happened to sheet 99')).toMatch(/^This job has no sheet 99/)
  expect(said('decide', 'which sheets were skipped')).toMatch(
    /^Left out so far[\s\S]*10, Unswept strip, crank end/,
  )
})

it('two readings of a place are told by the rule of the sheet', () => {
  expect(said('bore', 'why do I key this twice')).toMatch(
    /^Here a place is read at least 2 times, 4 at the most, within 0\.0003 in\.\nTerms of the trade, repeats:/,
  )
})

it('of monitor beside accept it is told which is a verdict, and which a choice', () => {
  expect(said('decide', 'monitor vs accept')).toMatch(
    /^The verdict MONITOR:\n[^\n]*\nThe choice accept: [^\n]*\nIn capitals the other is a verdict too:\n[\s\S]*The verdict here is MONITOR/,
  )
})

it('under a STOP what one may do is what makes it safe, and who releases it', () => {
  expect(said('stopped', 'what may i do now')).toMatch(
    /^Nothing but what makes it safe: the job is stopped\.[\s\S]*KH K\. Haas/,
  )
})

it('whether it is good is of the figure while one is read', () => {
  expect(said('third', 'is it good or not')).toMatch(/calls no figure good or bad/)
})
