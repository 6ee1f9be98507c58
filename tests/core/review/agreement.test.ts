// What does not agree in a record, a start with something undecided, what hangs on, what is close: each asked where it should be.
import { describe, expect, it } from 'vitest'
import { Walk } from '../../helpers/example.ts'
import {
  asPerson,
  kindsOf,
  only,
  reviewed,
  reviewOfEntries,
  SMALL_DEFS,
  SOUND,
  smallDone,
  withEntries,
} from '../../helpers/reviewed.ts'
import {
  FIRST_START,
  gate,
  LOCKS,
  NO_START,
  type Raw,
  readOne,
  smallDefs,
  tell,
} from '../../helpers/small-job.ts'

const look = (id: string): Raw => ({
  id,
  kind: 'observe',
  title: id,
  conditions: [
    { id: 'sound', label: 'Sound' },
    { id: 'scored', label: 'Scored', finding: true },
  ],
})
const ready = gate('ready', ['start'], [NO_START])
const job = (...steps: Raw[]) => new Walk(smallDefs(steps)).keys('RO', 'TC-401-1')

/** At the end of a job: the first finding that is open, rework, by KH. */
const reworked = (why: string) => ['1', '2', 'KH', why]

describe('a start', () => {
  const walk = job(look('valve'), ready, FIRST_START).keys('2', 'NO START', '1', ...reworked('lapped in'))

  it('with a finding undecided stands among the first, with when it was decided', () => {
    const found = only(reviewed(walk), 'started')
    expect(found.what).toMatch(/^STARTED RO 06:\d\d WITH NC-1 UNDECIDED$/)
    expect(found.sentences.join(' ')).toMatch(
      /First start.*NC-1 valve: Scored\. Raised 06.*decided afterwards, 06/,
    )
    expect(kindsOf(reviewed(walk))[0]).toBe('started')
  })

  it('after the lead decided is none of it, but after a decision to hold it is', () => {
    const at = walk.entries.findIndex((e) => e.type === 'step.confirmed')
    const decided = (choice: string) =>
      kindsOf(
        reviewOfEntries(
          walk.engine.defs,
          withEntries(asPerson(walk.entries), at, {
            type: 'disposition.set',
            step: 'valve',
            about: 'valve',
            choice,
            why: 'lapped in',
            person: 'KH',
          }),
        ),
      )
    expect(decided('rework')).not.toContain('started')
    expect(decided('hold')).toContain('started')
  })

  it('is none where a hazard is let in that nobody is exposed to', () => {
    const away = job(look('valve'), ready, { ...FIRST_START, exposes: [] }).keys('2', 'NO START', '1')
    expect(away.state.done.run).toBeDefined()
    expect(kindsOf(reviewed(away))).not.toContain('started')
  })
})

describe('what hangs on the machine', () => {
  const tag: Raw = { id: 'tag', kind: 'numbers', of: 'tag', per: 'once', ask: 'The tag on the piston.' }

  it('when the job has ended is told by number, name and place, a tag by what it was asked for', () => {
    const walk = job(gate('isolated', ['start'], [LOCKS, tag]), tell('work', { exposes: ['start'] }))
    walk.keys('L-1', 'L-2', 'T-9')
    expect(kindsOf(reviewed(walk))).not.toContain('hanging')
    walk.keys('')
    const [locks, tags] = reviewed(walk).exceptions.filter(({ kind }) => kind === 'hanging')
    expect(locks?.what).toBe('STILL ON by the record: 2 locks, L-1 and L-2')
    expect(locks?.sentences[0]).toMatch(
      /^L-1, lock at main driver breaker, E-1, keyed RO 06:\d\d at 1 isolated\.$/,
    )
    expect(tags?.what).toBe('Still on by the record: 1 tag, T-9')
    expect(tags?.sentences[0]).toMatch(/^T-9, tag, keyed RO 06:\d\d at 1 isolated: The tag on the piston\.$/)
    expect(tags?.open).toBe(true)
  })
})

describe('one reason', () => {
  it('for two findings, word for word, is asked about; for one, or in other words, it is not', () => {
    const told = (first: string, second: string) => {
      const walk = job(look('valve'), look('seat')).keys('2', '2', ...reworked(first), ...reworked(second))
      return reviewed(walk).exceptions.filter(({ kind }) => kind === 'improbable')
    }
    expect(told('Cleaned and tested', ' cleaned  and TESTED')).toMatchObject([
      { what: expect.stringMatching(/^NC-1 and NC-2 were decided with one reason, word for word/) },
    ])
    expect(told('Cleaned and tested', 'Renewed')).toEqual([])
  })
})

describe('the running hours', () => {
  const hours = (id: string, stage: string): Raw =>
    readOne(id, {
      quantity: 'time',
      of: 'running hours',
      with: 'counter',
      stage,
      how: { hour_counter: 'Read it.' },
      repeats: { at_least: 1, at_most: 1, within: '1 h' },
      plausible: { from: 'range', least: '0 h', most: '1000000 h' },
    })
  const seats = [{ id: 'counter', kinds: ['hour_counter'], for: 'the hours' }]
  const walked = (left: string) =>
    new Walk(smallDefs([hours('before', 'as_found'), hours('after', 'as_left')], [], {}, { seats })).keys(
      'RO',
      'TC-401-1',
      '1',
      '68300',
      left,
    )

  it('that went on by more than the clock are asked about, and those that went back', () => {
    const asked = (left: string) =>
      reviewed(walked(left))
        .exceptions.filter(({ kind }) => kind === 'improbable')
        .map(({ what }) => what)
    expect(asked('68304')).toEqual([
      expect.stringMatching(/went on by 4\.0 h, and it can have run 0\.0\d* h$/),
    ])
    expect(asked('68290')).toEqual([expect.stringMatching(/went BACK by 10\.0 h$/)])
    expect(asked('68300')).toEqual([])
  })
})

describe('readings that lay apart', () => {
  it('so that the place was read once more stand with every figure', () => {
    const defs = smallDefs([
      readOne('size', { repeats: { at_least: 2, at_most: 3, within: '0.0003 in' } }),
      tell('end'),
    ])
    const walk = new Walk(defs).keys('RO', 'TC-401-1', '1', '9.5034', '9.5038', '9.5035', '')
    const { what, sentences } = only(reviewed(walk), 'apart')
    expect(what).toBe('Read once more, 9.5034, 9.5038, 9.5035: 1 size')
    expect(sentences.join(' ')).toMatch(/lay more than 0\.0003 in apart.*counts as 9\.5035, the median/)
  })
})

describe('a head that was given', () => {
  it('and fits no line is told as a fault once, and none is asked for again', () => {
    const log = {
      ...SOUND.log,
      faults: ['No sound line has the noted check number.'],
      head: 'unlike',
      whole: 'unknown',
    } as const
    const review = reviewOfEntries(SMALL_DEFS, smallDone().entries, { log })
    expect(kindsOf(review)).toContain('log')
    expect(kindsOf(review)).not.toContain('unproved')
  })
})

describe('the verdict on the example’s bore', () => {
  it('by fall-back limits is an exception of its own, with its source', () => {
    const { what, sentences } = only(reviewed(new Walk().toVerdict()), 'fallback')
    expect(what).toBe("1 verdict by fall-back limits: maker's manual comes first")
    expect(sentences[0]).toMatch(/^18 Bore judged: .* governs: .*fallback, /)
    // The largest diameter has one in the machine's own book.
    expect(sentences.at(-1)).toBe(
      'The machine record and its books hold no limit of their own for out of round, taper and spread.',
    )
  })
})
