// Questions by their kind, each in wordings that a mechanic would use, some misspelt or short, and beside them near ones that are of
// another kind. Told from the job at that moment; nothing is taken by any of them, and none says that anything is safe.
import { describe, expect, it } from 'vitest'
import { NOTHING_FOUND } from '../../../src/core/talk/answer-asked.ts'
import { hear } from '../../../src/core/talk/hear.ts'
import { BORE_LINES, GAS_LINES, LOCK_LINES, Walk, WORD_LINES } from '../../helpers/example.ts'
import { shippedDefs } from '../../helpers/shipped-jobs.ts'

const TEMPERATURES = ['1', '1', '71.2', '70.4']
const SPARE = ['1', '9.5008', '9.5008', '9.5007', '9.5007', '9.7502']

/** The list of gas meters of the other machine. */
function otherMeters(): Walk {
  const walk = new Walk(shippedDefs('bore-inspection.yaml', 'rg-27'))
  walk.pinsAreRight = true
  walk.keys('IM', '6318', 'RG-27-1', '')
  for (let n = 0; walk.prompt.kind === 'evidence' && n < 20; n++) {
    const { evidence } = walk.prompt.item
    walk.key(evidence.kind === 'words' ? evidence.words : `K-${201 + n}`)
  }
  return walk
}

const AT = {
  tag: new Walk().keys('RO'),
  tell: new Walk().keys('RO', 'TC-401-1'),
  locks: new Walk().toGate().keys('L-101', 'L-102'),
  meter: new Walk().toGate().keys(...LOCK_LINES, 'NO START', 'NO FLOW', 'BLOCKED BOTH WAYS'),
  other: otherMeters(),
  gas: new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES),
  witness: new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES, ...GAS_LINES),
  wipe: new Walk().throughGate(),
  temp: new Walk().throughGate().keys('1', '1'),
  set: new Walk().throughGate().keys(...TEMPERATURES, '1'),
  bore: new Walk().toBore(),
  third: new Walk().toBore().keys('9.5033', '9.5039'),
  doubt: new Walk().toBore().keys('9.033'),
  surface: new Walk().toBore().keys(...BORE_LINES, ...SPARE),
  decide: new Walk().toVerdict(),
} as const

interface Kind {
  readonly name: string
  readonly at: readonly (keyof typeof AT)[]
  readonly says: RegExp
  readonly asked: readonly string[]
  readonly near: readonly string[]
}

const KINDS: readonly Kind[] = [
  {
    name: 'how many locks',
    at: ['locks'],
    says: /^Hold point 2: 6 locks, one at each isolation point[\s\S]*On record, 2: L-101 main driver breaker[\s\S]*Still to come, 4: suction block valve, V-11/,
    asked: [
      ...['how many locks are there', 'how many locks do I need', 'how many more locks', 'hwo many lokcs?'],
      ...['how many padlocks go on', 'is that all the locks', 'do i need another lock', 'number of locks?'],
    ],
    near: [
      ...['how many lock nuts are there', 'why so many locks', 'how long do the locks stay on'],
      ...['which lock goes where', 'how many blocks are there', 'when do the locks come off'],
    ],
  },
  {
    name: 'who hangs the locks',
    at: ['locks', 'bore'],
    says: /^Those who work behind them[\s\S]*1910\.147\(d\)\(4\)\(i\)[\s\S]*whose key stays with the one who depends on it/,
    asked: [
      ...['who puts the locks on', 'who hangs the lock?', 'do i put the locks on myself', 'whose lock is it'],
      ...['who has to lock it out', 'who locks out the breaker', 'can the operator put the lock on for me'],
    ],
    near: ['who took the lock off', 'where do the locks go', 'who may witness?', 'can I take the lock off'],
  },
  {
    name: 'one lock for two',
    at: ['locks'],
    says: /^No: each point has a lock of its own[\s\S]*refused at another[\s\S]*Still to come, 4/,
    asked: [
      ...['can I use one lock for two valves', 'one lock for both?', 'is one lok enough for both valves'],
      ...['can both valves share a lock', 'same lock twice?', 'can i use the same lock again'],
    ],
    near: ['how many locks', 'why is there a lock on the valve', 'one or two readings?', 'is the lock on?'],
  },
  {
    name: 'whose initials',
    at: ['locks', 'witness', 'tell', 'decide'],
    says: /^Everybody keys their own initials and their own PIN, and nobody those of another\.\n(?:Here|Asked)/,
    asked: [
      ...['do I use my own initials', 'whose initials do i key', 'my initials?', 'do i key my own intials'],
      ...['can i sign for my partner', "can i use ML's initials", 'can somebody else key my pin'],
    ],
    near: ['what are initials', 'where is my pin', 'who is signed on', 'who signs here'],
  },
  {
    name: 'anybody else on the machine',
    at: ['locks', 'bore'],
    says: /^By the folder of this job[\s\S]*Signed on: RO\.[\s\S]*Barover knows of jobs in the same folder and of nobody else[\s\S]*Hazard of sheet \d[\s\S]*Hold point 2: /,
    asked: [
      ...[
        'is anybody else on this machine',
        'anyone else on this compressor?',
        'who else is on this machine',
      ],
      ...['is ther anybody else on the unit', 'are there other jobs on this machine'],
      ...['am i the only one on this machine', 'is anybody working on the compressor'],
    ],
    near: ['is anybody in there', 'is anybody hurt', 'who is signed on', 'do i need somebody else'],
  },
  {
    name: 'how long a gas test counts, before there is one',
    at: ['locks', 'meter', 'gas'],
    says: /^No gas test stands now[\s\S]*A gas figure counts 30 min from the moment it is keyed; 5 min before, the sheet warns\. Source: Site rule GT-2[\s\S]*It falls sooner/,
    asked: [
      ...['how long is the gas test good for', 'how long does a gas test last', 'when does the gas lapse?'],
      ...['how often do i test the gas', 'how long are the gas readings good', 'gas good for how long?'],
      ...['how long do I have', 'how much time is left', 'how long have i got'],
    ],
    near: ['how long do i wait', 'how long is the rod', 'how often do i measure', 'how long is this job'],
  },
  {
    name: 'how long there is, once it stands',
    at: ['wipe', 'bore'],
    says: /^Until 06:5\d, 2\d min from now: then hold point 2 falls\. Be out before it\.[\s\S]*Hold point 2: complete; gas test \d+ min old, lapses 06:5\d/,
    asked: [
      ...[
        'how long is the gas test good for',
        'how long do I have',
        'time left?',
        'how long can i stay in there',
      ],
      ...['when do i have to be out', 'how much time do we have left', 'do i have enough time'],
    ],
    near: ['how much is left', 'how long does it take', 'how long is the stroke', 'how long do i wait'],
  },
  {
    name: 'the limits, and the word beyond each',
    at: ['bore', 'decide', 'tell'],
    says: /^Sheet 18, Bore judged, is held against:\n {2}out of round: at most 0\.00950 in, beyond it REWORK\n[\s\S]* {2}largest: at most 9\.530 in, beyond it REPLACE\nMONITOR from 70 % of a limit on; of largest, of the way from 9\.500 in to it\.\nBeyond: outside by more than the measuring error\. Outside or inside by less: HOLD\. The worst word of all is the verdict\.\nSource: Bloch and Hoefner 1996, p\. 259, fall-back; Machine book/,
    asked: [
      ...['limits', 'show me the limits', 'what are the limits?', 'what are all the limits for the bore?'],
      ...[
        'rework or replace?',
        'is it rework or replace?',
        'so replace or rework?',
        'which limit asks for rework?',
      ],
      ...[
        'which limit makes it replace',
        'when is it replace?',
        'when do i say rework?',
        'from when is it monitor?',
      ],
      ...[
        'how do i know whether it is rework or replace?',
        'what would make it rework?',
        'what is it held against?',
      ],
      ...['what is the difference between rework and replace?', 'waht are teh limits?'],
    ],
    near: [
      ...['what is the limit of taper?', 'who sets the limits?', 'when was it replaced?', 'what is rework?'],
      ...['how do i replace a lock?', 'are the limits from the manufacturer?', 'when is it monitored?'],
    ],
  },
  {
    name: 'somebody else who goes on',
    at: ['bore', 'gas'],
    says: /^The word hand over, on a line of its own/,
    asked: [
      ...[
        'can someone else take over',
        'may ML go on for me?',
        'can my partner carry on with it',
        'could somebody finish this',
      ],
      ...['can the lead take over?', 'can another mechanic go on with it'],
    ],
    near: ['can someone else witness', 'can somebody help me', 'can ML sign', 'may i go on'],
  },
  {
    name: 'an instrument without its dash',
    at: ['bore', 'tell'],
    says: /^M-3, from the register of instruments: Inside micrometer/,
    asked: ['what is m3', 'what is m-3', 'is M3 calibrated?', 'can i use m3', 'when is m3 due'],
    near: ['what is 3 m', 'what is sheet 3', 'what is mm3'],
  },
  {
    name: 'what may fall in',
    at: ['bore', 'gas'],
    says: /^Nothing is closed, turned or started until it is found/,
    asked: [
      ...[
        'what if i drop something in',
        'what if something falls in?',
        'what happens if we lose a rag inside',
        'what when a bolt falls into it',
      ],
    ],
    near: ['what if it falls', 'what if i drop the gauge', 'what if the light falls off'],
  },
  {
    name: 'what a figure would be',
    at: ['bore'],
    says: /^Nothing was taken\. Bore, HEAD END of ring travel, TOP TO BOTTOM: it would be 9\.5033 in {3}241\.384 mm, as M-3 shows it\.\nNominal, 9\.500 in: 0\.0033 in above it\.\nDatum: the unswept strip of sheet 9 or 10, not read yet[\s\S]*Limit, largest: at most 9\.530 in, beyond it REPLACE; 0\.0267 in under it, measuring error and temperature not allowed for\. Source: Machine book[\s\S]*\nNo verdict stands on one figure: sheet 18, Bore judged, wants all/,
    asked: [
      ...[
        'is 9.5033 good',
        '9.5033 ok?',
        'is 9.5033 in spec',
        'what about 9.5033',
        'is 9.5033 within limits',
      ],
      ...['i got 9.5033, is that ok', 'would 9.5033 pass', '9.5033 in good or bad?', 'is 9,5033 too big'],
    ],
    near: ['is 18 % oxygen ok', 'what does 7.3 mean', 'is that good', 'is 2 enough', 'what does 18 mean'],
  },
  {
    name: 'how many readings are left',
    at: ['third'],
    says: /^Sheet 7, Bore: 11 more at the least, 0 of 6 places done, 2 at each\.\nAfter it:\n {2}sheet 9, Unswept strip, head end: 4, if it is asked\n[\s\S]*15 in all, at the least/,
    asked: [
      ...[
        'how many readings are left',
        'how many readings left?',
        'how many places are left',
        'readings left?',
      ],
      ...['how many mesurements are there', 'how many readings in all'],
    ],
    near: [
      'how many sheets are left',
      'how much is left',
      'how many readings agree',
      'how many locks are left',
    ],
  },
  {
    name: 'whether another gives the same',
    at: ['set', 'meter', 'bore'],
    says: /^Nobody knows before both have read[\s\S]*neither figure is picked for being liked/,
    asked: [
      ...['does the other meter give the same', 'will the other gauge give the same', 'do both meters agree'],
      ...['would another micrometer read different', 'does the other one read the same?'],
    ],
    near: [
      'does the first reading count',
      'same thermometer?',
      'why two gauges?',
      'which micrometer do I use',
    ],
  },
  {
    name: 'which meter',
    at: ['meter', 'other'],
    says: /^Wanted: the gas tests[\s\S]*Barover chooses none[\s\S]*: nothing on its record refuses it[\s\S]*needs at least 10 %vol of oxygen[\s\S]*reads in gas without air[\s\S]*In doubt inert gas counts as there[\s\S]*Hold point 2: not complete/,
    asked: [
      ...['which one do I need', 'wich meter do i take', 'do i need the infrared one', 'can i use either'],
      ...['which one is for nitrogen', 'does it matter which one i use', 'which is better?'],
    ],
    near: ['why two gauges?', 'what is a bump test', 'what is nitrogen', 'what is an infrared sensor'],
  },
  {
    name: 'whether there is nitrogen',
    at: ['meter', 'other', 'gas'],
    says: /^Barover cannot tell: it sees no gas\.[\s\S]*By this log no inert gas was let in[\s\S]*No sheet of this job sweeps with inert gas[\s\S]*In doubt inert gas counts as there[\s\S]*Hazard of sheet 2/,
    asked: [
      ...[
        'is there nitrogen in here',
        'is there nitrogin in it?',
        'could there be n2 in there',
        'has it been purged',
      ],
      ...['was it swept with nitrogen', 'how do i know if there is nitrogen'],
    ],
    near: ['what is nitrogen', 'what is a purge', 'is it swept', 'why is nitrogen dangerous?'],
  },
  {
    name: 'how taper is worked out',
    at: ['bore', 'decide'],
    says: /^Terms of the trade, taper:[\s\S]*Barover works it out at sheet 18[\s\S]*you key the readings\.\nBy hand: in one direction, the largest[\s\S]*why taper shows the sums/,
    asked: [
      ...['how do I work out taper', 'how is taper worked out', 'how do you calculate taper?'],
      ...['whats the formula for taper', 'how do i get the tapper', 'how is taper measured'],
    ],
    near: ['how much taper is too much', 'what is taper', 'how do i measure temperature', 'why taper'],
  },
  {
    name: 'a tool that no sheet names',
    at: ['bore', 'gas'],
    says: /^No sheet of this job asks for "mirror"[\s\S]*Terms of the trade, mirror:[\s\S]*contact thermometer: the temperatures/,
    asked: [
      ...[
        'do I need a mirror',
        'should i bring a mirror?',
        'do we need any mirror here',
        'do i need the miror',
      ],
      'will i need a mirror for this',
    ],
    near: ['do i need a lamp', 'do i need a permit', 'do i need another man', 'do i need to wipe it'],
  },
  {
    name: 'whether it may run on',
    at: ['bore', 'decide', 'gas'],
    says: /^Barover gives no leave to run, and tells no date\. A lead decides[\s\S]*barover history/,
    asked: [
      ...['can it run another year', 'will it last till the next overhaul', 'is it good for another year'],
      ...[
        'can we run it another 8000 hours',
        'how long can it run like this',
        'can i put it back in service',
      ],
    ],
    near: ['can i leave it for tomorrow', 'is it done yet?', 'can I run a test', 'how long is this'],
  },
  {
    name: 'a plate that is another',
    at: ['tag', 'gas', 'bore'],
    says: /^No: where the plate bears another tag, nothing is done\. It may be another machine, on which no lock of yours hangs\.[\s\S]*a lead finds out/,
    asked: [
      ...['can I go on with a wrong plate', 'what if the plate is wrong', 'am i at the wrong machine?'],
      ...['can i carry on if the tag is different', 'what if its the wrong machine'],
    ],
    near: [
      'what is the tag',
      'where is the plate',
      'which machine is this job for?',
      'what if the tag is missing?',
    ],
  },
  {
    name: 'a reading of before that is wrong',
    at: ['third', 'decide'],
    says: /^back goes to the last answer[\s\S]*The word correct lists readings, findings/,
    asked: [
      ...['how do I fix a wrong reading from before', 'how do i change a reading i took earlier'],
      ...['can i correct the reading from sheet 4', 'an earlier reading is wrong, what now?'],
      ...['one of my readings was wrong what now?', 'how do i correct a figure from two sheets ago'],
    ],
    near: ['how do i fix a leaking valve', 'how do I correct the taper of the bore', 'can i fix the bore'],
  },
  {
    name: 'the wrong instrument',
    at: ['bore', 'decide', 'third'],
    says: /The word instrument takes one off|taken by the word instrument/,
    asked: [
      ...['I used the wrong micrometer', 'i measured with the wrong mike', 'what if i used the wrong gauge?'],
      ...['i have been using the wrong gauge', 'it was the wrong micrometer', 'the micrometer is wrong'],
    ],
    near: ['i keyed the wrong figure', 'what is a micrometer', 'is this the right micrometer?'],
  },
  {
    name: 'terms that go by other names',
    at: ['locks', 'surface', 'gas'],
    says: /^From this job's papers, word for word:\nTerms of the trade, (?:barrel|bump test|scoring|hourglass):/,
    asked: [
      ...['what is a barrel', 'what is barrel', 'whats barrel mean', 'what is an hourglass'],
      ...['what is a meter challenge', 'what is a response check', 'whats a bump check'],
      ...['what counts as scoring', 'whats a score', 'how deep is scoring'],
    ],
    near: ['what is a bore', 'what is a ridge', 'what is calibration'],
  },
]

function said(at: keyof typeof AT, line: string) {
  const { engine, state, talk, now } = AT[at]
  const { input, say } = hear(engine.defs, state, talk, line, now)
  return { input, text: say.join('\n') }
}

const PROMISES =
  /\b(?:is|are|it's) (?:now )?(?:safe|all right to|fine to|ok to)\b|\byes\b|\bgo on\b|\bgo ahead\b/i

describe.each(KINDS)('$name', ({ at, says, asked, near }) => {
  it.each(at.flatMap((one) => asked.map((line) => [one, line] as const)))('at %s: %s', (one, line) => {
    const { input, text } = said(one, line)
    // A sentence that tells of something may be brought to a hold point, which refuses it: what is asked is never taken.
    if (/^(?:how|is|are|do|does|can|what|which|who|will|would|\d)/i.test(line)) expect(input).toBeNull()
    expect(text).toMatch(says)
    expect(text).not.toContain(NOTHING_FOUND)
    expect(text).not.toMatch(PROMISES)
  })

  it.each(near)('is not: %s', (line) => {
    for (const one of at) expect(said(one, line).text).not.toMatch(says)
  })
})

describe('a figure keyed as a question', () => {
  it('is held against what is asked there, and is no verdict', () => {
    expect(said('bore', 'is 9.55 ok').text).toMatch(
      /OVER IT by 0\.0200 in[\s\S]*No verdict stands on one figure/,
    )
    expect(said('third', 'is 9.5033 ok').text).toMatch(
      /Reading 1 of this place: the same\.\nReading 2[\s\S]*BELOW it/,
    )
    expect(said('set', 'is 9.5033 ok').text).toMatch(
      /Its standard, ring R-95[\s\S]*within 0\.0002 in: OUT OF IT/,
    )
    expect(said('temp', '71.2 ok?').text).toMatch(
      /71\.2 degF[\s\S]*Believed from 0 degF to 160 degF; outside/,
    )
    expect(said('doubt', 'is 9.033 right').text).toMatch(
      /It would be doubted: it is 0\.4670 in under nominal/,
    )
  })

  it('is held against the strip where that was read before, and said to be without one where there is none', () => {
    const { engine, state, talk, now } = AT.bore
    const later = AT.surface.state
    const strips = Object.entries(later.readings).filter(([key]) => key.startsWith('strip'))
    const read = {
      ...state,
      done: later.done,
      readings: { ...state.readings, ...Object.fromEntries(strips) },
    }
    expect(hear(engine.defs, read, talk, 'is 9.5033 good', now).say.join('\n')).toMatch(
      /Datum, Unswept strip, head end, [^\n]*TOP TO BOTTOM, 9\.5008 in: 0\.0025 in above it\./,
    )
    const gone = { ...state, done: { ...state.done, strip: 'gone' } }
    expect(hear(engine.defs, gone, talk, 'is 9.5033 good', now).say.join('\n')).toMatch(
      /Datum: no unswept strip/,
    )
  })

  it('is told where it stands on record, where no reading is asked', () => {
    const walk = new Walk().toBore().keys(...BORE_LINES, ...SPARE)
    const text = hear(walk.engine.defs, walk.state, walk.talk, 'is 9.5033 good', walk.now).say.join('\n')
    expect(text).toMatch(/On record: 7\.1 Bore/)
  })
})

describe('who else is on the machine', () => {
  it('is told from the other jobs that were seen', () => {
    const walk = new Walk().toBore()
    const other = { ...seen(), people: ['ML', 'KH'] }
    const state = { ...walk.state, elsewhere: { [other.job]: other } }
    const { say } = hear(walk.engine.defs, state, walk.talk, 'is anybody else on this machine', walk.now)
    expect(say.join('\n')).toMatch(
      /^Also open on this machine: job 3f2a: Opening a cylinder[\s\S]*on it: ML, KH/,
    )
  })
})

const seen = () =>
  ({
    job: 'TC-401-2-3f2a',
    record: 'EXAMPLE',
    procedure: 'Opening a cylinder',
    tag: 'TC-401-2',
    told: true,
    people: ['ML'],
    left: false,
    inside: [],
    letting: null,
    stop: null,
    unread: null,
    closed: null,
    written: '2026-03-14T06:10:00.000+00:00',
    upTo: 12,
    head: '0'.repeat(64),
    placed: [],
  }) as unknown as Walk['state']['elsewhere'][string]
