// Questions of whoever is in doubt about themselves or others: told from what the job itself says now, never from a passage
// that shares a word, and never that anything is safe.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { hear } from '../../../src/core/talk/hear.ts'
import { type SafetyAsked, safetyAsked, tellsOfHarm } from '../../../src/core/talk/safety-asked.ts'
import { BORE_LINES, LOCK_LINES, Walk, WORD_LINES } from '../../helpers/example.ts'

const GIVEN = ['20.9', '0', '0', '20.8', '0', '0']
const AT: Readonly<Record<string, Walk>> = {
  start: new Walk(),
  tag: new Walk().keys('RO'),
  tell: new Walk().keys('RO', 'TC-401-1'),
  words: new Walk().toGate().keys(...LOCK_LINES),
  pick: new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES.slice(0, 3)),
  gas: new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES),
  witness: new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES, ...GIVEN),
  confirm: new Walk().throughGate(),
  read: new Walk().toBore(),
  observe: new Walk().toBore().keys(...BORE_LINES),
  clear: new Walk().toBore().wait(31).keys(''),
  decide: new Walk().toVerdict(),
  stopped: new Walk().toBore().keys('stop', '1', 'gas was smelt', 'RO'),
}
const told = (at: string, line: string) => {
  const walk = AT[at] as Walk
  return hear(walk.engine.defs, walk.state, walk.talk, line, walk.now)
}
const answer = (at: string, line: string) => told(at, line).say.join('\n')

const ASKED: readonly (readonly [SafetyAsked, string])[] = [
  ['hurt', 'somebody is hurt'],
  ['hurt', 'what if my partner is trapped?'],
  ['hurt', 'can it hurt me?'],
  ['hurt', 'he collapsed'],
  ['no-answer', 'what happens if my partner does not answer?'],
  ['no-answer', "the witness doesn't reply"],
  ['no-answer', 'what if nobody answers?'],
  ['alarm', 'what if the alarm sounds?'],
  ['alarm', 'I smell gas, what now?'],
  ['starts', 'what happens if it starts?'],
  ['starts', 'what if it turns?'],
  ['starts', 'can the crank still move?'],
  ['starts', 'it has moved'],
  ['starts', 'what do I do if it does start'],
  ['starts', 'what if it does move?'],
  ['starts', 'what if somebody starts it?'],
  ['bad-air', 'what if oxygen is low?'],
  ['bad-air', 'what do I do with low oxygen?'],
  ['bad-air', 'is the h2s too high?'],
  ['missing', 'what if a rag is missing?'],
  ['missing', 'I dropped a nut, what now?'],
  ['wrong', 'what do I do if something goes wrong?'],
  ['wrong', 'did I do something wrong?'],
  ['wrong', 'is it dangerous?'],
  ['wrong', 'what is the hazard here?'],
  ['stop', 'what happens if I key stop?'],
  ['stop', 'what does STOP do?'],
  ['come-out', 'nobody is in, why do I have to come out?'],
  ['come-out', 'why must everybody stand clear?'],
  ['trainee', 'may a trainee do this?'],
  ['alone', 'I am alone, can I go on?'],
  ['alone', 'am I allowed to do this alone?'],
  ['alone', 'can I go on without a partner?'],
  ['hands', 'is my hand allowed in now?'],
  ['hands', 'can I put my arm in?'],
  ['hands', 'may I reach in?'],
  ['safe', 'is it safe now?'],
  ['safe', 'is this unsafe?'],
  ['release', 'who may release this?'],
  ['witness', 'who may witness?'],
  ['witness', 'can I be the witness?'],
  ['allowed', 'am I allowed to?'],
  ['allowed', 'am I allowed to press start?'],
  ['allowed', 'who decides?'],
]

describe('a question of safety', () => {
  it.each(ASKED)('%s: %s', (about, line) => {
    expect(safetyAsked(line)).toBe(about)
  })

  it.each([
    ...[
      'what gap is too much',
      'how much oxygen is too little',
      'how worn may the bore be',
      'what is a witness',
    ],
    ...[
      'why try a start?',
      'why a tried start',
      'what is a try-start',
      'can I use gasoline to wipe',
      'what is taper',
    ],
    ...[
      'how much taper is allowed',
      'where does the rod come out',
      'what is dead centre',
      'why safety solvent',
    ],
    ...[
      'what is a safety valve',
      'when does the gas test lapse?',
      'is the gas still good',
      'what is missing',
    ],
    ...[
      'who is signed on',
      'am I finished?',
      'what is left to do',
      'how do I fix it',
      'why is oxygen read first',
    ],
    ...[
      'how do I vent trapped gas',
      'how long does the compressor run',
      'what is a hold point',
      'what stops a piston',
    ],
  ])('is not: %s', (line) => {
    expect(safetyAsked(line)).toBeNull()
  })

  it('is heard without a question mark where it tells of harm in more than a word', () => {
    for (const line of ['somebody is hurt', 'it has moved', 'the alarm sounds'])
      expect(tellsOfHarm(line)).toBe(true)
    for (const line of ['alarm', 'hurt', 'is it safe', 'I am alone', 'trainee here'])
      expect(tellsOfHarm(line)).toBe(false)
    expect(told('read', 'somebody is hurt')).toMatchObject({ input: null })
    expect(answer('read', 'somebody is hurt')).toContain('FIRST: come out')
  })
})

describe('the answer', () => {
  it.each([
    [
      'gas',
      'what if oxygen is low?',
      /^FIRST: come out, everybody, and stand clear[\s\S]*at least 19\.5 %vol/,
    ],
    ['words', 'what happens if it starts?', /^FIRST: come out[\s\S]*NO START is not typed/],
    [
      'words',
      'what if it turns?',
      /^FIRST: come out[\s\S]*Hazard of sheet 2: A start[\s\S]*In trouble: Come out/,
    ],
    [
      'gas',
      'what happens if my partner does not answer?',
      /^FIRST: come out[\s\S]*Nobody goes in to fetch anybody/,
    ],
    ['read', 'somebody is hurt', /Call: Radio channel 1/],
    ['tell', 'what do I do if something goes wrong?', /^FIRST: come out[\s\S]*The word safe shows/],
    ['read', 'did I do something wrong?', /^Taken last[\s\S]*back or correct[\s\S]*say STOP/],
    [
      'confirm',
      'is my hand allowed in now?',
      /Hold point 2: complete; gas test \d+ min old, lapses \d\d:\d\d/,
    ],
    [
      'confirm',
      'is it safe now?',
      /lets in what sheet 3, Wipe the bore, asks and nothing else, until \d\d:\d\d or until/,
    ],
    ['gas', 'is it safe now?', /not complete yet[\s\S]*No hand, head or tool goes in before it is complete/],
    ['clear', 'is it safe now?', /FALLEN[\s\S]*No hand, head or tool goes in/],
    ['stopped', 'can I put my arm in?', /STOP is open: nobody goes in[\s\S]*No hand, head or tool goes in/],
    ['tell', 'may I reach in?', /asks nobody in/],
    ['confirm', 'what if a rag is missing?', /^Nothing is closed, turned or started until it is found/],
    ['confirm', 'what happens if I key stop?', /moves nothing on the machine/],
    [
      'clear',
      'nobody is in, why do I have to come out?',
      /the gas test is past its life[\s\S]*ALL OUT is typed/,
    ],
    ['gas', 'I am alone, can I go on?', /Signed on: RO[\s\S]*wants a witness who did none of it/],
    ['witness', 'am I allowed to do this alone?', /alone nobody passes it/],
    [
      'witness',
      'am I allowed to?',
      /RO at the keyboard: a mechanic[\s\S]*a mechanic or lead of the crew[\s\S]*Not RO/,
    ],
    ['tell', 'may a trainee do this?', /PRACTICE only, and never witnesses/],
    ['stopped', 'who may release this?', /^A lead releases a STOP[\s\S]*Not RO, who raised this STOP/],
    ['witness', 'who may stand there?', /Not RO: whoever keyed any of it/],
    ['words', 'am I allowed to press start?', /Asked here, and no more: Everybody clear\. Panel live/],
  ])('%s, %j is told from the job', (at, line, says) => {
    expect(answer(at, line)).toMatch(says)
  })

  it.each([
    [
      'pick',
      'why is M-1 not allowed?',
      /^M-1, from the register[\s\S]*until 2025-11-30[\s\S]*Refused: its calibration lapsed on 2025-11-30\.$/,
    ],
    ['pick', 'why M-1', /Refused: its calibration lapsed/],
    [
      'read',
      'what is m-3?',
      /^M-3, from the register[\s\S]*M-3: nothing on its record refuses it on 2026-03-14\.$/,
    ],
    ['read', 'how big is the standard of M-3?', /^From this job's papers/],
    ['pick', 'which one do I take?', /Barover chooses none[\s\S]*G-7: nothing on its record/],
    ['tell', 'is this real?', /^This job is EXAMPLE[\s\S]*moves nothing on a machine/],
    ['tell', 'can I break something?', /no key starts, opens or shuts/],
    ['tell', 'I have no machine here, what do I key?', /README[\s\S]*Alone you key/],
    [
      'read',
      'what does MONITOR mean?',
      /A verdict: [\s\S]*In this job, taper: MONITOR from 70 % of its limit/,
    ],
    ['read', 'what happens if there is none?', /^Nothing in this job's papers answers that/],
  ])('%s: %j is answered from the record', (at, line, says) => {
    expect(answer(at, line)).toMatch(says)
  })

  it('says of a hold point whose time has run out that nothing goes in, though no entry says so yet', () => {
    const { engine, state, talk, now } = new Walk().throughGate()
    const late = { ...now, ms: now.ms + 31 * 60_000 }
    const said = hear(engine.defs, state, talk, 'can I put my hand in', late).say.join('\n')
    expect(said).toMatch(/lapsed \d\d:\d\d/)
    expect(said).toContain('No hand, head or tool goes in')
    expect(said).not.toContain('lets in')
  })

  it('never holds back whom to call, and shows no tag before the plate was read', () => {
    for (const [, line] of ASKED) expect(answer('tag', `${line}?`)).not.toContain('TC-401-1')
    expect(answer('tag', 'somebody is hurt')).toContain('Call: ')
  })

  it('never says that anything is safe, is no longer than a small screen, and goes on no record', () => {
    const line = fc.oneof(
      fc.constantFrom(...ASKED.map(([, asked]) => asked)),
      fc
        .tuple(
          fc.constantFrom('is it', 'am I', 'can I', 'what if', 'is the bore', 'may we', 'why is it'),
          fc.constantFrom(
            'safe',
            'safe to go in',
            'safe now',
            'allowed',
            'clear',
            'alone',
            'dangerous',
            'sound',
          ),
        )
        .map((two) => `${two.join(' ')}?`),
    )
    fc.assert(
      fc.property(fc.constantFrom(...Object.keys(AT)), line, (at, asked) => {
        const { input, say } = told(at, asked)
        expect([at, asked, say.join('\n')]).toEqual([
          at,
          asked,
          expect.not.stringMatching(/\bsafe to\b|\b(?:is|are) safe\b/i),
        ])
        expect(say.length).toBeLessThanOrEqual(10)
        if (at !== 'start' && at !== 'tag') expect([at, asked, input]).toEqual([at, asked, null])
      }),
      { numRuns: 400, seed: 7 },
    )
  })
})
