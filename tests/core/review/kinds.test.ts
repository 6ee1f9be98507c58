// A clean job is spoiled in one way at a time, and exactly that comes out of its review: with its entries, old and new, and who.
import { describe, expect, it } from 'vitest'
import { asOpened } from '../../../src/core/job/editions.ts'
import type { Entry } from '../../../src/core/job/entries.ts'
import type { Beside } from '../../../src/core/review/beside.ts'
import type { Kind } from '../../../src/core/review/exception.ts'
import { reviewOf } from '../../../src/core/review/review.ts'
import { Walk } from '../../helpers/example.ts'
import {
  asPerson,
  kindsOf,
  moved,
  only,
  reviewed,
  reviewOfEntries,
  SMALL_DEFS,
  SOUND,
  smallAtSize,
  smallDone,
  smallStart,
  withEntries,
} from '../../helpers/reviewed.ts'
import { gate, NO_START, readOne, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'
import { changed, takenEntry, takenIn } from '../../helpers/taken-in.ts'

const crew = SMALL_DEFS.crew
const file = { name: 'wall.jpg', given: 'wall.jpg', size: 10, sha256: 'a'.repeat(64), caption: 'the wall' }

describe('a job that is open', () => {
  it('lists the notes, those of a lead first, and the locks that are on by number', () => {
    const walk = new Walk().toBore().keys('note the deck is wet', 'leave')
    walk.bring({ do: 'take-up' })
    walk.keys('KH', 'note keep it shut until I come')
    const said = reviewed(walk).exceptions.map(({ kind, what }) => `${kind}: ${what}`)
    expect(said).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/^hung: On by the record, the job is open: 6 locks, L-101, .* and L-106$/),
        expect.stringMatching(/^note: A lead’s note, KH 06:\d\d: keep it shut until I come$/),
        expect.stringMatching(/^note: Note, RO 06:\d\d: the deck is wet$/),
      ]),
    )
    const at = (text: string) => said.findIndex((one) => one.includes(text))
    expect(at('keep it shut')).toBeLessThan(at('the deck is wet'))
    const open = reviewed(walk).exceptions.find(({ what }) => what.startsWith('NOT CLOSED'))
    expect(open?.sentences.join(' ')).toContain('Still on by the record: L-101')
  })
})

describe('a clean job', () => {
  it('has nothing out of the ordinary, and says how much was as usual', () => {
    const review = reviewed(smallDone())
    expect(review.exceptions).toEqual([])
    expect(review).toMatchObject({ standing: 'closed with NONE', isClosed: true, people: ['RO', 'KH'] })
    expect(review.usual).toEqual(
      expect.arrayContaining([
        '5 of 5 steps done',
        '1 reading with 1 instrument',
        'hold points complete at some time: 1 of 1',
      ]),
    )
  })
})

interface Spoiled {
  readonly walk: Walk
  readonly beside?: Partial<Beside>
  readonly kinds: readonly Kind[]
  readonly says: RegExp
}

const STOPPED = ['stop', '1', 'it smells', 'ML', 'release', 'KH', 'aired and tested']
/** After a STOP, a gate of the small job that has people behind it is proved again. */
const AGAIN = ['NO START', 'KH']

const SPOILS: Readonly<Record<string, () => Spoiled>> = {
  'a STOP that was released': () => ({
    walk: smallStart().keys(...STOPPED, ...AGAIN, '1', '1', '9.5033', '1', ''),
    kinds: ['stop'],
    says: /^STOP called by ML, keyed by RO, 06:\d\d: gas.*; released by KH$/,
  }),
  'a word by which the plate was another': () => ({
    walk: new Walk(SMALL_DEFS).keys('RO', 'TC-999', 'TC-401-1', ...AGAIN, '1', '1', '9.5033', '1', ''),
    kinds: ['machine'],
    says: /WRONG PLATE read, RO 06:\d\d: TC-999/,
  }),
  'evidence that was taken back': () => {
    const walk = smallStart().keys('NO START')
    walk.bring({ do: 'ask-again', step: 'stopped' })
    return {
      walk: walk.keys(...AGAIN, '1', '1', '9.5033', '1', ''),
      kinds: ['gate-void'],
      says: /^1 stopped: evidence void once before it was complete$/,
    }
  },
  'a finding nobody decides about': () => ({
    walk: smallAtSize().keys('9.5033', '2', 'at six o clock', ''),
    kinds: ['finding', 'open'],
    says: /^NC-1 look: Scored; NOT DECIDED$/,
  }),
  'an objection': () => ({
    walk: smallStart().keys(...AGAIN, '2', 'still wet', '1', '1', '9.5033', '1', ''),
    kinds: ['objection'],
    says: /^2 wiped: not so, RO/,
  }),
  'an instrument found out after the close': () => {
    const walk = smallDone()
    walk.bring({ do: 'doubt-instrument', instrument: 'M-3', why: 'dropped', says: 'the bench', person: 'KH' })
    return { walk, kinds: ['instrument', 'missing'], says: /^M-3 OUT OF CALIBRATION, .*1 reading void$/ }
  },
  'a correction': () => {
    const walk = smallAtSize().keys('9.5033', '1')
    const of = walk.state.readings['size.here']?.[0]?.seq ?? -1
    walk.bring({ do: 'correct', of, typed: '9.5043', why: 'misread' })
    return { walk: walk.keys(''), kinds: ['correction'], says: /^3 size: 9\.5033, now 9\.5043, RO/ }
  },
  'a place entered as n/a': () => ({
    walk: smallAtSize().keys('n/a', 'it is under the scaffold', '1', ''),
    kinds: ['not-applicable'],
    says: /n\/a, it is under the scaffold$/,
  }),
  'a reading kept though it was doubted': () => ({
    walk: smallAtSize().keys('9.7033', '3', 'measured by two of us', '1', ''),
    kinds: ['doubted'],
    says: /^DOUBTED AND KEPT: 9\.7033, 0\.2033 in over [^;]*; 3 size$/,
  }),
  'a deviation permit': () => {
    const walk = smallStart()
    walk.bring({
      do: 'permit-deviation',
      step: 'size',
      what: 'by one reading only',
      why: 'no time',
      authority: 'memo 4',
      until: '2026-12-01',
      person: 'KH',
    })
    return {
      walk: walk.keys(...AGAIN, '1', '1', '9.5033', '1', ''),
      kinds: ['deviation'],
      says: /^DP-1 3 size: by one reading only$/,
    }
  },
  'a wrong PIN': () => {
    const walk = smallStart()
    walk.bring({ do: 'pin-missed', person: 'KH' })
    return {
      walk: walk.keys(...AGAIN, '1', '1', '9.5033', '1', ''),
      kinds: ['crew'],
      says: /^1 wrong PIN for KH$/,
    }
  },
  'a thing nobody accounted for': () => {
    const walk = smallStart()
    walk.bring({ do: 'place', what: 'sling', where: 'on the hook', number: 'S-4' })
    return {
      walk: walk.keys(...AGAIN, '1', '1', '9.5033', '1', ''),
      kinds: ['open'],
      says: /^Placed: sling, on the hook, S-4; NOT ACCOUNTED FOR$|^NOT CLOSED/,
    }
  },
  'a note of somebody at work': () => ({
    walk: smallAtSize().keys('note seen from the deck', '9.5033', '1', ''),
    kinds: ['note'],
    says: /^Note, RO 06:\d\d: seen from the deck$/,
  }),
  'a job that was left': () => ({
    walk: smallAtSize(),
    kinds: ['open'],
    says: /^NOT CLOSED, PEOPLE MAY BE IN at hold point 1: 2 of 5 steps done, at 3 size$/,
  }),
  'an attached file that was changed': () => {
    const walk = smallStart()
    walk.bring({ do: 'attach', ...file })
    const seq = walk.last.seq
    return {
      walk: walk.keys(...AGAIN, '1', '1', '9.5033', '1', ''),
      beside: {
        files: [{ seq, name: file.name, isAsAttached: false, what: 'CHANGED: 9 bytes, attached with 10' }],
      },
      kinds: ['file'],
      says: /^Attached wall\.jpg: CHANGED/,
    }
  },
  'a log that is not sound': () => ({
    walk: smallDone(),
    beside: { log: { faults: ['Line 4 was changed.'], head: 'none', whole: 'proved', checked: [] } },
    kinds: ['log'],
    says: /^THE LOG IS NOT SOUND: Line 4 was changed\.$/,
  }),
  'a log that nothing proves whole': () => ({
    walk: smallDone(),
    beside: { log: { faults: [], head: 'none', whole: 'unknown', checked: ['Tail unknown.'] } },
    kinds: ['unproved'],
    says: /^Not proved whole/,
  }),
  'a file on no record': () => ({
    walk: smallDone(),
    beside: { strays: ['odd.jpg: not in the log'] },
    kinds: ['unproved'],
    says: /^1 file beside the log on no record$/,
  }),
  'a crew file with another key': () => ({
    walk: smallDone(),
    beside: {
      crewBefore: {
        job: 'the-job-before',
        crew: { ...crew, crew: crew.crew.map((p) => (p.id === 'KH' ? { ...p, pin: '$scrypt$other' } : p)) },
      },
    },
    kinds: ['crew'],
    says: /^The crew file is not that of the job before: KH has another key$/,
  }),
}

describe('a job spoiled by', () => {
  it.each(Object.keys(SPOILS))('%s shows exactly that', (name) => {
    const spoil = SPOILS[name]
    if (spoil === undefined) throw new Error('no such spoil')
    const { walk, beside = {}, kinds, says } = spoil()
    const review = reviewed(walk, beside)
    expect(kindsOf(review)).toEqual(kinds)
    const first = review.exceptions[0]
    expect(first?.what).toMatch(says)
    for (const seq of first?.entries ?? []) expect(walk.entries[seq]).toBeDefined()
  })

  it('a STOP that closed it: the STOP first, then what was not done', () => {
    const walk = smallStart().keys('stop', '3', 'it turned', 'ML')
    walk.bring({ do: 'close-stopped', first: 'find out why', person: 'KH' })
    const review = reviewed(walk)
    expect(kindsOf(review)).toEqual(['stop', 'missing'])
    expect(only(review, 'stop')).toMatchObject({
      what: expect.stringMatching(/the job ended under it$/),
      open: false,
    })
    expect(only(review, 'stop').sentences.join(' ')).toContain('find out why')
    expect(only(review, 'missing').what).toBe('NOT DONE: 1 to 5, from stopped to end')
  })

  it('a STOP nobody released: open, with the words that answer it', () => {
    const stop = only(reviewed(smallStart().keys('stop', '1', 'it smells', 'ML')), 'stop')
    expect(stop).toMatchObject({ open: true, what: expect.stringMatching(/NOT RELEASED$/) })
    expect(stop.sentences.join(' ')).toContain('release, or close')
  })
})

describe('a hold point', () => {
  const walk = smallAtSize().keys('leave')
  walk.bring({ do: 'take-up' })
  walk.keys('ML', '9.5033', '1', '')

  it('that fell has its fall, what called people out, and whether it was proved again', () => {
    const defs = smallDefs([
      gate('stopped', ['start'], [NO_START, WITNESS]),
      tell('inside', { exposes: ['start'] }),
      tell('again', { exposes: ['start'] }),
    ])
    const fallen = new Walk(defs).keys('RO', 'TC-401-1', 'NO START', 'KH', '')
    fallen.bring({ do: 'clock-moved', seconds: 400 })
    const before = reviewed(fallen)
    expect(kindsOf(before)).toEqual(['gate', 'open', 'clock'])
    expect(only(before, 'gate').what).toBe('NOBODY KEYED CLEAR: 1 stopped: fell once')
    fallen.keys('ALL OUT', 'NO START', 'KH', '')
    const gateNow = only(reviewed(fallen), 'gate-proved')
    expect(gateNow.what).toBe('1 stopped: fell once, keyed clear and proved again')
    expect(gateNow.sentences[0]).toMatch(
      /^Fell .*: the clock moved; people may have been in, at 3 again; clear .*, proved again /,
    )
    expect(gateNow.entries.map((seq) => fallen.entries[seq]?.type)).toEqual([
      'clock.moved',
      'people.clear',
      'gate.opened',
    ])
    expect(only(reviewed(fallen), 'clock').what).toMatch(/^The clock moved by 400 s/)
  })

  it('that was seen to at first and fell once more stands with those that nobody keyed clear of', () => {
    const behind = { exposes: ['start'] }
    const defs = smallDefs([
      gate('stopped', ['start'], [NO_START, WITNESS]),
      tell('inside', behind),
      tell('again', behind),
      tell('end'),
    ])
    const twice = new Walk(defs).keys('RO', 'TC-401-1', 'NO START', 'KH', '')
    twice.bring({ do: 'clock-moved', seconds: 400 })
    twice.keys('ALL OUT', 'NO START', 'KH', '')
    expect(kindsOf(reviewed(twice))).toContain('gate-proved')
    twice.bring({ do: 'clock-moved', seconds: 400 })
    twice.key('')
    const review = reviewed(twice)
    expect(review.exceptions.filter(({ kind }) => kind === 'gate-proved')).toEqual([])
    expect(only(review, 'gate-after').what).toBe(
      '1 stopped: fell twice: 1 keyed clear and proved again; 1 after the last work behind it',
    )
  })

  it('that fell many times alike is told in one sentence, behind what is not alike', () => {
    const asides = ['one', 'two', 'three'].flatMap((id) => [
      tell(id),
      tell(`in_${id}`, { exposes: ['start'] }),
    ])
    const alike = new Walk(smallDefs([gate('stopped', ['start'], [NO_START, WITNESS]), ...asides]))
    alike.keys('RO', 'TC-401-1', 'NO START', 'KH')
    for (const _ of ['one', 'two', 'three']) {
      alike.bring({ do: 'clock-moved', seconds: 400 })
      alike.keys('', 'ALL OUT', 'NO START', 'KH', '')
    }
    const { what, sentences } = only(reviewed(alike), 'gate-proved')
    expect(what).toBe('1 stopped: fell 3 times, keyed clear and proved again')
    expect(sentences).toHaveLength(1)
    expect(sentences[0]).toMatch(
      /^Fell 3 times alike: the clock moved; the work at hand was not behind it; keyed clear and proved again each time\. Fell, clear, proved: 06:\d\d, 06:\d\d, 06:\d\d; /,
    )
  })

  it('that fell when nothing was left to be done behind it stands apart, with the last that was', () => {
    const { what, sentences } = only(reviewed(walk), 'gate-after')
    expect(what).toBe('1 stopped: fell once, after the last work behind it')
    expect(sentences[0]).toMatch(/nothing was done behind it any more since 06:\d\d, 2 wiped; people were/)
    expect(sentences[0]).toMatch(/called out and nobody keyed clear, not proved again\.$/)
  })

  it('behind which work went on by the record heads them all', () => {
    const at = walk.entries.findIndex((e) => e.type === 'job.left') + 1
    const went = withEntries(asPerson(walk.entries), at, { type: 'step.confirmed', step: 'wiped' })
    const { what, sentences } = only(reviewOfEntries(SMALL_DEFS, went), 'gate')
    expect(what).toBe('WORK WENT ON behind it: 1 stopped: fell once')
    expect(sentences[0]).toMatch(/WORK WENT ON behind it at 06:\d\d, 2 wiped/)
  })

  it('whose test failed has the reading that failed', () => {
    const bore = new Walk().toGate().keys('L-101', 'L-102', 'L-103', 'L-104', 'L-105', 'L-106')
    bore.keys('NO START', 'NO FLOW', 'BLOCKED BOTH WAYS', '1', 'METER ANSWERED', '17.2')
    const { what, sentences, entries } = only(reviewed(bore), 'gate')
    expect(what).toMatch(/FAILED once/)
    expect(sentences.join(' ')).toMatch(/FAILED RO .*oxygen where people breathe 17\.2/)
    expect(entries.map((seq) => bore.entries[seq]?.type)).toContain('evidence.failed')
  })
})

describe('what only a log from elsewhere holds', () => {
  const entries = asPerson(smallDone().entries)
  const at = entries.findIndex((e) => e.type === 'reading.taken')

  it('a time that runs backwards', () => {
    const back = entries.map((e, i): Entry => (i === at ? { ...e, at: moved(e.at, -60) } : e))
    const review = reviewOfEntries(SMALL_DEFS, back)
    expect(kindsOf(review)).toEqual(['clock'])
    expect(only(review, 'clock')).toMatchObject({ entries: [at - 1, at], open: true })
  })

  it('a reading by an instrument past its day', () => {
    const late = SMALL_DEFS.instruments.instruments.map((one) =>
      one.id === 'M-3' ? { ...one, calibration: { ...one.calibration, due: '2026-03-13' } } : one,
    )
    const review = reviewOfEntries({ ...SMALL_DEFS, instruments: { instruments: late } }, entries)
    expect(only(review, 'instrument')).toMatchObject({
      what: 'M-3 read 1 time after its calibration had lapsed on 2026-03-13',
      entries: [at],
    })
  })

  it('answers from a file, and a clock set by hand, at the head of it', () => {
    const review = reviewOfEntries(SMALL_DEFS, smallDone().entries)
    expect(review.exceptions.map((one) => one.what)).toEqual([
      'Answers from a file or a pipe: gates not enforced by Barover',
      'Clock set by hand: no time in it tells when anything was done',
    ])
  })

  it('a signature by initials alone', () => {
    const alone = entries.map(
      (e): Entry => ('signed' in e && e.signed === 'pin' ? { ...e, signed: 'initials' } : e),
    )
    expect(only(reviewOfEntries(SMALL_DEFS, alone), 'crew').what).toBe(
      'Signed by initials alone, without a PIN: RO and KH',
    )
  })

  it('another job that vanished, or could not be read', () => {
    const gone = withEntries(entries, at, { type: 'elsewhere.gone', job: 'x-3f2a', record: 'REAL' })
    expect(only(reviewOfEntries(SMALL_DEFS, gone), 'machine').sentences).toEqual([
      'It was REAL job x-3f2a: where is its log?',
    ])
  })
})

describe('a place whose repeats never agreed', () => {
  it('is missing: it has no figure', () => {
    const defs = smallDefs([
      readOne('size', { repeats: { at_least: 2, at_most: 2, within: '0.0003 in' } }),
      tell('end'),
    ])
    const walk = new Walk(defs).keys('RO', 'TC-401-1', '1', '9.5033', '9.5053', '')
    const { what, entries } = only(reviewed(walk), 'missing')
    expect(what).toBe('HOLD: 1 size, 2 readings never agreed')
    expect(entries).toHaveLength(2)
  })
})

describe('a machine record that was changed on the job', () => {
  it('is an exception of its own, with old and new and what it had come to before', () => {
    const walk = new Walk().toVerdict()
    walk.bring({ do: 'leave' })
    const to = changed(walk, { edition: '5' })
    const after = takenIn(walk, to)
    const entries = asPerson(after.entries)
    const editions = [...asOpened(walk.engine.defs), { from: takenEntry(after).seq, defs: to }] as const
    const review = reviewOf(to, entries, after.state, SOUND, editions)
    expect(only(review, 'record')).toMatchObject({
      what: expect.stringMatching(/^Machine record changed on the job, KH \d\d:\d\d: edition$/),
      sentences: [
        'Edition: 4, now 5.',
        'Because: bored to the next size.',
        'Void with it: 18 Bore judged, MONITOR by the record before.',
        'Hold points that fell with it: 2 Hold point before hands, tools or lamps go in.',
      ],
      entries: [takenEntry(after).seq],
      open: false,
    })
  })
})
