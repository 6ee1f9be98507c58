// What people ask in the thick of it: a trainee at the locks, a mechanic at the gas or with a figure that is out, somebody whose partner has
// gone, a lead at the decision. Each is told from the job with its hazard and hold point where one is near, and none opens anything.
import { describe, expect, it } from 'vitest'
import { NOTHING_FOUND } from '../../../src/core/talk/answer-asked.ts'
import { hear } from '../../../src/core/talk/hear.ts'
import { GAS_LINES, LOCK_LINES, Walk, WORD_LINES } from '../../helpers/example.ts'
import { shippedDefs } from '../../helpers/shipped-jobs.ts'

const AT = {
  locks: new Walk().toGate().keys('L-101', 'L-102'),
  gas: new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES),
  witness: new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES, ...GAS_LINES),
  bore: new Walk().toBore(),
  third: new Walk().toBore().keys('9.5033', '9.5039'),
  doubt: new Walk().toBore().keys('9.033'),
  decide: new Walk().toVerdict(),
} as const

type Row = readonly [keyof typeof AT, RegExp, readonly string[], readonly string[]]

const ASKED: Readonly<Record<string, Row>> = {
  'a point without a lock': [
    'locks',
    /^A point without its lock is not shut off[\s\S]*Nothing stands for it[\s\S]*without a number yet: suction block valve, V-11[\s\S]*Hazard of sheet 2[\s\S]*Hold point 2: not complete/,
    [
      ...['what if i dont have enough locks', 'what if there is no lock on it yet', 'can i skip a lock'],
      ...['can i use a tag instead of a lock', 'is a tag enough', 'without a lock?'],
    ],
    ['is the lock on', 'why is there no lock', 'I cannot read the lock number', 'how many locks'],
  ],
  'open or closed': [
    'locks',
    /^In which position each point is locked says the site’s isolation list[\s\S]*Hazard of sheet 2/,
    [
      'do i lock it open or closed',
      'open or closed?',
      'is the valve to be shut or open',
      'should V-11 be closed',
    ],
    ['is the bleed open', 'how do i open it', 'is anything open'],
  ],
  'whom to call': [
    'locks',
    /^If anybody may be hurt: come out[\s\S]*\nCall: Radio channel 1[\s\S]*RESCUE PLAN/,
    [
      'who do i call',
      'how do i call for help',
      'what is the number of the control room',
      'who do we radio',
      'whats the rescue plan',
    ],
    ['who do i ask', 'what is the lock number', 'who is signed on'],
  ],
  'whom to ask': [
    'locks',
    /^Leads of the crew file: KH K\. Haas or PB P\. Bright\./,
    ['who do i ask', 'who can i talk to', 'who is the lead', 'can somebody help me', 'who do i tell'],
    ['who do i call', 'what is a lead', 'who may witness?'],
  ],
  'where to begin': [
    'locks',
    /Asked is the number: lock at suction block valve, V-11/,
    [
      'where do i start',
      'what do i do first',
      'i have never done this',
      'how do i begin?',
      "i'm new at this",
    ],
    ['where do the locks go', 'how do i start practice', 'what if it starts'],
  ],
  'a lock that somebody took off': [
    'locks',
    /^FIRST: come out, everybody[\s\S]*\nCall: /,
    [
      'what if somebody took my lock off',
      'somebody cut my lock',
      'he has removed the lock',
      'someone took a lock off',
      'they have taken my lock',
    ],
    ['who took the lock off', 'can I take the lock off', 'how many locks'],
  ],
  'a figure that does not stand still': [
    'gas',
    /^Asked here: Hold the meter where your face will be[\s\S]*the worse figure is keyed[\s\S]*Hazard of sheet 2[\s\S]*Hold point 2/,
    [
      ...['what if it goes up and down', 'the meter shows 20.8 then 20.9 which one', 'it keeps climbing'],
      ...['the reading is not steady', 'how long does it take to settle'],
    ],
    ['what is oxygen', 'is 20.9 ok', 'how do i hold it'],
  ],
  'a meter of my own': [
    'gas',
    /^At a hold point counts what is read on a gas meter of the register[\s\S]*G-7: [\s\S]*Calibrated until 2026-04-15[\s\S]*opens nothing[\s\S]*Hold point 2/,
    [
      ...['does my personal monitor count', 'can i use my own meter', 'what if the meter is not calibrated'],
      ...['what if the battery is flat', 'is the meter calibrated'],
    ],
    ['what is calibration', 'what does MONITOR mean', 'does the other meter give the same'],
  ],
  'what is worn': [
    'gas',
    /^What is worn says the site permit, and it comes first\.[\s\S]*Hazard of sheet 2/,
    [
      'do i need a mask',
      'do i need gloves',
      'should i wear a harness',
      'do we need breathing air',
      'do i need ear plugs',
    ],
    ['do i need a lamp', 'do i need a permit', 'do i need help'],
  ],
  'a test of before': [
    'gas',
    /^No gas test stands now[\s\S]*A gas figure counts 30 min/,
    [
      'can i use yesterdays test',
      'can i use the last test',
      'does his reading count?',
      'can i take their gas reading',
      'can we use this morning’s test',
    ],
    ['what was the last reading', 'can i use another gauge', 'when is the next test'],
  ],
  'out of its limit': [
    'third',
    /^Key what the instrument shows[\s\S]*Out of a limit is told by the verdict[\s\S]*Hazard of sheet 7[\s\S]*Hold point 2: complete/,
    [
      ...['what do i do if its over', 'what if the reading is too big', 'what if it is out of tolerance'],
      ...['is it out of limits', 'what happens to the bad reading'],
    ],
    ['is 9.55 ok', 'what is out of round', 'what is the limit'],
  ],
  'why it is doubted': [
    'doubt',
    /^9\.033 is doubted: it is 0\.4670 in under nominal[\s\S]*No reading is dropped for it/,
    [
      'why is it doubted',
      'how far off is it',
      'what if i keep it',
      'why does it not take it',
      'what if its too small',
    ],
    ['what is nominal', 'can i average them', 'why twice?'],
  ],
  'whether one may be left out': [
    'third',
    /^Nobody averages or leaves out[\s\S]*Bore: 2 to 4 readings[\s\S]*Terms of the trade, repeats/,
    [
      'can i average them',
      'which of the two counts',
      'can i leave out the bad one',
      'does it take the average',
      'can i drop the first reading',
    ],
    ['how many readings are left', 'can I skip a place?', 'does the first reading count'],
  ],
  'what may become of the part': [
    'third',
    /^Whether it is bored, honed, renewed, kept or scrapped a lead decides[\s\S]*No verdict stands yet[\s\S]*Beyond its limit /,
    ['does it need a new liner', 'is it worn out', 'is it scrap', 'can it be bored', 'does it need honing'],
    ['what is a liner', 'can it run another year', 'how much wear is allowed?'],
  ],
  'waiting for somebody': [
    'witness',
    /^Nothing here is in a hurry but what lapses[\s\S]*Needed here: a witness[\s\S]*Until 06:5\d, \d+ min from now/,
    [
      'can i wait for him',
      'can i get somebody else',
      'should i wait for my partner',
      'can i wait till he is back',
      'may i fetch another mechanic',
    ],
    ['how long do i wait', 'can i use another gauge', 'who may witness?'],
  ],
  'over a break': [
    'bore',
    /^leave keeps all that was keyed\. Every hold point falls[\s\S]*Terms of the trade, end of a shift[\s\S]*Hazard of sheet 7/,
    [
      ...[
        'can i leave it for tomorrow',
        'what if i have to leave',
        'what stays on overnight',
        'how do i stop for lunch',
      ],
      ...['do i lock it up before i go', 'do i have to do it all again tomorrow'],
    ],
    ['how do i stop it', 'can i leave out the bad one', 'can i leave my hand in', 'how long is it'],
  ],
  'what a word does': [
    'bore',
    /^The word (?:hand over|sign off|readings|note|attach|leave), on a line of its own/,
    [
      ...['how do i hand over', 'how do i sign him off', 'how do i see the readings', 'how do i add a note'],
      ...['how do i attach a photo', 'how do i leave the job'],
    ],
    ['how do i stop it', 'what is a note', 'how do i take a lock off', 'how do i read it'],
  ],
  'why the verdict is that': [
    'decide',
    /^MONITOR, because:\n {2}(?:out-of-round|Measuring error)/,
    ['why is it monitor', 'how close is it to the limit', 'what governs', 'how sure is it', 'why monitor?'],
    ['what does MONITOR mean', 'why taper', 'can i accept it'],
  ],
  'whether the verdict may be changed': [
    'decide',
    /^No: MONITOR is worked out from the readings[\s\S]*correct, or instrument/,
    [
      'can i change the verdict',
      'what if i disagree',
      'can i overrule it',
      'can i reopen it',
      'how do i reject the verdict',
    ],
    ['can i accept it', 'what happens if i accept', 'can i change the last reading?'],
  ],
  'who measured, and with what': [
    'decide',
    /^Sheet 7, Bore: keyed by RO, with M-3\.[\s\S]*M-3, Inside micrometer[\s\S]*calibrated until[\s\S]*witnessed by ML/,
    [
      'who measured it',
      'which instrument was used',
      'was the gauge in calibration',
      'who witnessed it',
      'who took the readings',
    ],
    ['who is signed on', 'what is a micrometer', 'who may decide'],
  ],
  'what it was before': [
    'decide',
    /last 9\.\d{4} in \(2023[\s\S]*found 9\.\d{4} in/,
    [
      'what was it last time',
      'how much has it worn since',
      'how fast does it wear',
      'is there a trend',
      'what was the bore before',
    ],
    ['what is wear', 'where does it wear', 'can it run another year'],
  ],
  'what is open': [
    'decide',
    /NC-1 Bore judged: MONITOR[\s\S]*No STOP was called on this job\.[\s\S]*barover review/,
    [
      'is anything open',
      'were there any stops',
      'did anybody change anything',
      'what is still open',
      'were there any corrections',
    ],
    ['what does stop do', 'how do i stop it', 'is it done yet?'],
  ],
}

function said(at: keyof typeof AT, line: string): string {
  const { engine, state, talk, now } = AT[at]
  return hear(engine.defs, state, talk, line, now).say.join('\n')
}

describe.each(Object.entries(ASKED))('%s', (_name, [at, says, asked, near]) => {
  it.each(asked)('%s', (line) => {
    const { engine, state, talk, now } = AT[at]
    const { input } = hear(engine.defs, state, talk, line, now)
    // A sentence may be brought to a hold point, which refuses it; it is never a reading.
    expect(input === null || input.do === 'evidence').toBe(true)
    expect(said(at, line)).toMatch(says)
    expect(said(at, line)).not.toContain(NOTHING_FOUND)
    expect(said(at, line)).not.toMatch(/\b(?:is|are) (?:now )?safe\b|\byes\b|\bgo on\b|\bgo ahead\b/i)
  })

  it.each(near)('is not: %s', (line) => {
    expect(said(at, line)).not.toMatch(says)
  })
})

describe('in other jobs', () => {
  const heard = ({ engine, state, talk, now }: Walk, line: string) =>
    hear(engine.defs, state, talk, line, now).say.join('\n')

  it('a figure is held against the record of its part, and the limits of the verdict that it goes into', () => {
    const rod = new Walk(shippedDefs('rod-sizes.yaml')).keys(
      'RO',
      'TC-401-1',
      '1',
      '71.0',
      '70.2',
      '1',
      '2.0000',
    )
    expect(heard(rod, 'is 2.2468 good')).toMatch(
      /^Nothing was taken\. Rod[^\n]*it would be 2\.2468 in[\s\S]*On record, rod diameter, 2\.250 in: 0\.0032 in BELOW it\.[\s\S]*Held against there: rod undersize: at most 0\.00500 in[\s\S]*No verdict stands on one figure/,
    )
    expect(heard(rod, 'is 3.2468 good')).toMatch(/It would be doubted/)
    const face = new Walk(shippedDefs('ring-fit.yaml')).keys('RO', 'TC-401-1', '1', '1')
    expect(heard(face, 'is 0.0004 ok')).toMatch(
      /Held against there: piston face squareness: at most 0\.00050 in/,
    )
  })

  it('locks are counted at the hold point where they were shown, and none that is still to come hides them', () => {
    const pull = new Walk(shippedDefs('piston-pull.yaml')).keys('RO', 'TC-401-1')
    expect(heard(pull, 'how many locks do I need')).toMatch(
      /^Hold point 28: 6 locks[\s\S]*None is on record now[\s\S]*each person's own lock: 0 on record, of 1 on the job/,
    )
    const { gates } = pull.state
    const given = { shown: 'L-101', seq: 9, at: '2026-03-14T06:20:00.000+00:00', atMs: 0, by: 'RO', si: null }
    const id = pull.engine.defs.steps.find(({ number }) => number === 28)?.id ?? ''
    const gate = {
      ...(gates[id] ?? { status: 'open' }),
      status: 'open',
      given: { 'locks.breaker': given },
      begun: {},
      struck: [],
    }
    const state = { ...pull.state, gates: { ...gates, [id]: gate } } as unknown as Walk['state']
    const text = hear(pull.engine.defs, state, pull.talk, 'how many locks', pull.now).say.join('\n')
    expect(text).toMatch(/^Hold point 28: 6 locks[\s\S]*On record, 1: L-101/)
  })

  it.each([
    'do I use my own initials',
    'can i go on with a wrong plate',
    'who do i call',
    'how many locks',
    'is anybody else on this machine',
  ])('the tag is told by none before the plate was read: %s', (line) => {
    const walk = new Walk().keys('RO')
    const { engine, state, talk, now } = walk
    const { say } = hear(engine.defs, state, talk, line, now)
    expect(say.length).toBeGreaterThan(0)
    expect(say.join('\n')).not.toContain('TC-401-1')
  })

  it('what has lapsed is no time that is left', () => {
    const walk = new Walk().toBore()
    const { engine, state, talk } = walk
    const late = { ...walk.now, ms: walk.now.ms + 40 * 60_000 }
    expect(hear(engine.defs, state, talk, 'how long do i have', late).say[0]).toMatch(
      /^Nothing is left: what was shown at hold point 2 lapsed at 06:5\d\. Everybody comes out\.$/,
    )
    const failed = new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES, '17')
    expect(heard(failed, 'how long do i have')).toMatch(
      /^Nothing is left: hold point 2 has fallen\. Everybody comes out\./,
    )
    const lost = { ...walk.now, ms: Number.NaN }
    expect(hear(engine.defs, state, talk, 'how long do i have', lost).say[0]).toMatch(/^Nothing is left/)
  })
})
