// What somebody asks who has only just heard of a job that went wrong: who told of the lock, what came between two things, who let them go
// on, what was renewed, how near it is, when it was started. Each from entries; what no entry tells is said to be told by none.
import { describe, expect, it } from 'vitest'
import { PLAIN_QUESTIONS } from '../../../src/core/review/asked-plain-kinds.ts'
import { answered } from '../../helpers/answered.ts'
import {
  AFTER_LINES,
  BORE_LINES,
  GAS_LINES,
  GATE_LINES,
  LOCK_LINES,
  Walk,
  WORDS_AGAIN,
} from '../../helpers/example.ts'
import { stopReleased } from '../../helpers/stopped.ts'

const kindOf = (text: string) =>
  PLAIN_QUESTIONS.find(({ asked }) => asked.some((one) => one.test(text.toLowerCase())))?.like ?? null
const seqOf = (of: Walk, type: string, n = 0) => of.entries.filter((e) => e.type === type)[n]?.seq

const NOTE = 'Lock L-103 is off the suction valve, saw it from the bench'
/** A note of a lock, one figure after it, STOP and its release, everybody out and all of it proved again. */
const day = new Walk().toBore().keys(...BORE_LINES.slice(0, 4))
day.bring({ do: 'note', text: NOTE })
day.keys('9.5068')
stopReleased(day, 'smell near the bench', 'paint thinner in the next bay. L-103 is on, I tried it')
day.keys('ALL OUT', ...LOCK_LINES, ...WORDS_AGAIN, ...GAS_LINES, 'ML')
day.keys(...BORE_LINES.slice(5), ...AFTER_LINES)

const plain = new Walk().toVerdict()

describe('the walk that is asked about', () => {
  it('has the note, a figure, the STOP, its release and a verdict', () => {
    expect(day.entries.map(({ type }) => type)).toEqual(
      expect.arrayContaining([
        'note.written',
        'stop.raised',
        'stop.released',
        'people.clear',
        'verdict.given',
      ]),
    )
  })
})

describe('a lock that was told to be off', () => {
  it.each(['who said the lock was off', 'who noticed the lock was gone', 'did anybody report the lock off'])(
    '%s: once, and in order what came after it',
    (asked) => {
      const text = answered(day, asked)
      expect(text).toMatch(
        new RegExp(
          `^1 entry told that a lock was off; what came after it[^\\n]*\\n[^\\n]*${NOTE} \\(entry ${seqOf(day, 'note.written')}\\)\\nWORK WENT ON after it, before anybody was called out: 1 answer.\\n[^\\n]*9.5068 [^\\n]*\\n[^\\n]*STOP\\.[^\\n]*\\(entry ${seqOf(day, 'stop.raised')}\\)\\n[\\s\\S]*released by KH[\\s\\S]*ALL OUT[\\s\\S]*L-103 \\(entry \\d+\\)`,
        ),
      )
      expect(text.split(NOTE)).toHaveLength(2)
      expect(text).not.toMatch(/L-101 \(entry/)
    },
  )

  it('under all locks the note stands once', () => {
    expect(answered(day, 'which locks are still on').split(NOTE)).toHaveLength(2)
    expect(answered(day, 'was L-103 on').split(NOTE)).toHaveLength(2)
  })

  it('of nobody it is said that they told it', () => {
    expect(answered(plain, 'who said the lock was off')).toMatch(
      /^The log does not tell that anybody said a lock was off/,
    )
  })

  it.each(['who took lock L-103 off', 'is lock L-103 off', 'who keyed lock L-103 back on'])(
    'not in: %s',
    (asked) => {
      expect(kindOf(asked)).not.toBe('who said the lock was off')
    },
  )
})

describe('before, between and after', () => {
  it('what was measured between two things, and the two', () => {
    expect(answered(day, 'did anyone measure between the lock note and the stop')).toMatch(
      /^Keyed between the two, by the order of the log: 1 reading\n[^\n]*Note: [^\n]*\n[^\n]*7\.3 Bore[^\n]*9\.5068[^\n]*\(entry \d+\)\n[^\n]*STOP\./,
    )
    expect(answered(day, 'did anyone measure between the stop and the release')).toMatch(
      /^No reading was keyed between the two/,
    )
    expect(answered(day, 'did anyone measure between the paint note and the stop')).toMatch(
      /^No answer is made of it here\./,
    )
    expect(answered(day, 'what is the difference between taper and spread')).not.toMatch(/between the two/)
    expect(answered(plain, 'what was keyed between the note and the stop')).toMatch(
      /^Not found by its words: no entry has keyed, note, stop in it/,
    )
  })

  it('what somebody did after a thing', () => {
    expect(answered(day, 'what did RO do after he saw the lock off')).toMatch(
      /^Keyed after this, by RO: \d+ entries\n[^\n]*Note: Lock L-103[^\n]*\n[^\n]*9\.5068[^\n]*\n[^\n]*STOP\./,
    )
    expect(answered(day, 'what did KH do after the stop')).toMatch(
      /^Keyed after this, by KH: \d+ entr[^\n]*\n[^\n]*STOP\.[^\n]*\n[^\n]*released by KH/,
    )
  })

  it('which of two came first, by the steps', () => {
    expect(answered(plain, 'which came first, the pump or the flywheel')).not.toMatch(
      /By the order of keying/,
    )
    expect(answered(plain, 'which was first the counterbore or leave the bore')).not.toMatch(
      /before the pump/,
    )
  })
})

describe('a STOP', () => {
  it.each([
    'when did they stop',
    'wen did they stpo',
    'why did they stop',
    'was the stop about the lock',
    'who let them carry on',
    'who released it and what did he say',
    'did they stop',
    'how long was the stop',
  ])('%s', (asked) => {
    expect(answered(day, asked)).toMatch(
      /^STOPs of this log[^\n]*\nSTOP RO[\s\S]*Released by KH: paint thinner[\s\S]*After it, what let work go on:[\s\S]*witness {2}ML \(entry \d+\)[\s\S]*complete \(entry \d+\)[\s\S]*Told of danger on this job; whether a STOP was for it only its own words say:\nTOLD OF DANGER/,
    )
  })

  it.each(['what stops it from closing', 'who released the lock', 'did they stop it leaking'])(
    'not in: %s',
    (asked) => {
      expect(answered(day, asked)).not.toMatch(/^STOPs of this log, who called each/)
    },
  )
})

describe('somebody who is said to have done a thing', () => {
  it('only words of it are told', () => {
    expect(answered(day, 'did KH check the lock himself')).toMatch(
      /^Whether KH did, no entry tells but in these words\n[^\n]*L-103 is on, I tried it \(entry \d+\)\nKH keyed nothing on this job\./,
    )
    expect(answered(plain, 'did ML check the lock himself')).toMatch(/^No entry tells that ML did/)
  })

  it('an authority that is not of the crew is said to have signed nothing', () => {
    const walk = plain.copy()
    walk.bring({
      ...({ do: 'dispose', step: 'disposition', choice: 'concession', person: 'KH' } as const),
      ...{ why: 'worn but runs', authority: 'letter of PBX 12', until: '2000 h', from: '91000' },
    })
    expect(answered(walk, 'did PBX agree to it')).toMatch(
      /^No entry tells that PBX did[\s\S]*Named as the authority by KH, and not signed by PBX \(entry \d+\)\.\nPBX is not in the crew file/,
    )
    expect(answered(plain, 'did PBX agree to it')).toMatch(
      /^Not found by its words: no entry has pbx, agree in it/,
    )
  })
})

describe('the start', () => {
  it.each([
    'when did the driver start',
    'wen did the drver start',
    'when did they start it',
    'was it started',
  ])('%s: no step of this job starts it, and when the job began stands apart', (asked) => {
    expect(answered(plain, asked)).toMatch(
      /^No entry tells that the machine was started: no step of this job starts it\nThe job itself:\nFrom 2026-03-14 06:20/,
    )
  })

  it.each(['when did the night shift start', 'when did they start the job', 'how long did it take'])(
    'not in: %s',
    (asked) => {
      expect(kindOf(asked)).not.toBe('when was the driver started')
    },
  )
})

describe('parts and limits', () => {
  it.each<readonly [string, RegExp]>([
    ['why is it montior', /NC-1 Bore judged: MONITOR[^\n]*\n[^\n]*taper governs: [^\n]*% used/],
    ['is it alright to run', /^No record tells that, and this one does not/],
    ['was it all right', /^No record tells that, and this one does not/],
    [
      'any nearly out',
      /^Near its limit by this record[\s\S]*To be watched:\n18 Bore judged: taper [^\n]*% used[^\n]*\(entry \d+\)/,
    ],
    ['is anything close to the limit', /^Near its limit by this record/],
    ['how bad is the wear', /^Wear since the last overhaul, as read[\s\S]*bore diameter, in:\n/],
    ['what was renewed', /^The log does not tell of anything renewed/],
    ['did they change the rings', /^The log does not tell of anything renewed/],
    ['was the piston empty', /^The log does not tell of gas inside a piston/],
    ['was there gas in the piston', /^The log does not tell of gas inside a piston/],
    [
      'was the bore in tolerance after',
      /^That it is right no record tells\.[\s\S]*18 Bore judged: MONITOR \(entry \d+\)\nout of round/,
    ],
    ['was the bore alright', /^That it is right no record tells\.[\s\S]*18 Bore judged: MONITOR/],
    ['whose lmits were used', /^Limits that are not the machine’s own/],
    ['why was the bore measured twice', /^Places that were read once more|^No place was read more often/],
    [
      'how long was RO on his feet',
      /^No entry tells how long RO worked\. Between the first entry with RO and the last: \d+ min\n/,
    ],
    [
      'was anyone in when they started it',
      /^Who was in, and for how long, the log does not tell[\s\S]*No entry tells that the machine was started/,
    ],
    ['who was sent for lunch', /^Not found by its words: no entry has [^\n]*lunch in it/],
  ])('%s', (asked, told) => {
    expect(answered(plain, asked)).toMatch(told)
  })

  it.each([
    ['are the new ring gaps alright', 'are the new ring gaps alright'],
    ['is the rod bent', 'are the new ring gaps alright'],
    ['did the old liner go back in', 'what was renewed'],
    ['was the old liner put back', 'what was renewed'],
    ['is it safe to run', null],
    ['what went wrong', null],
    ['is it alright', null],
    ['who signed', null],
    ['what was measured', null],
    ['did it take long', null],
    ['is the gauge glass clean', null],
  ] as const)('%s is of: %s', (asked, like) => {
    expect(kindOf(asked)).toBe(like)
  })
})

describe('in on a gas test past its life', () => {
  const lapsed = new Walk().toBore().wait(600)
  lapsed.bring({ do: 'tick' })

  it.each(['how long were they in on dead gas', 'was anybody in on a lapsed gas test'])(
    '%s: every hold point with a gas test, whatever its name',
    (asked) => {
      expect(answered(lapsed, asked)).toMatch(
        /^Who was in, and for how long, the log does not tell[\s\S]*: 1 fall\n2 Hold point before hands, tools or lamps go in\n[^\n]*past its life[^\n]*NOBODY KEYED CLEAR/,
      )
    },
  )

  it('of one that never fell by it the times are told', () => {
    expect(GATE_LINES).toContain('20.9')
    expect(answered(plain, 'how long were they in on dead gas')).toMatch(
      /No hold point fell by this log[\s\S]*never fallen by one past its life:\n2 Hold point[^\n]*\n[^\n]*complete \(entry \d+\)/,
    )
  })
})
