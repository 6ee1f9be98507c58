// A reason for a part on watch that runs on says by when it is read again, or that none is given.
import { describe, expect, it } from 'vitest'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { whyNoReadAgain, withDays } from '../../../src/core/talk/read-again.ts'
import { Walk } from '../../helpers/example.ts'

const AT = '2026-03-14T08:00:00+00:00'
const atWhy = () => new Walk().toVerdict().keys('1', 'KH')
const asked = (walk: Walk) =>
  promptView(walk.engine.defs, walk.state, walk.talk, { width: 79, record: 'EXAMPLE', ascii: true }).ask.map(
    ({ text }) => text,
  )

describe('words of a reason', () => {
  it.each([
    'read again by 2026-09-30',
    'taper is inside its limit, again at 4000 h',
    'in 8000 running hours',
    'not later than 8,000 h',
    'at 4\u00a0000 hrs',
    'no wear since last time; none given',
    'again by 14 September 2026',
    'again 14.09.2026',
    'not later than the end of March 2027',
  ])('%j say by when', (words) => {
    expect(whyNoReadAgain(words, AT)).toBeNull()
  })

  it.each(['ok', 'read again', 'at 4000', 'in 0 h', 'none', '0.4000 hot'])('%j do not', (words) => {
    expect(whyNoReadAgain(words, AT)).toMatch(/^Not said yet/)
  })

  it.each([
    ['by 3/4/2026', '3/4/2026 can be 3 April or 4 March.'],
    ['by 14 September', '14 September is without its year.'],
    ['end of March', 'end of March is without its year.'],
    ['by 2026-13-40', '2026-13-40 is no day of the calendar.'],
    ['in 6 months', 'in 6 months is not a day yet.'],
  ])('%j are told what they leave open, and the form', (words, doubt) => {
    expect(whyNoReadAgain(words, AT)).toBe(
      `${doubt} Key the day as YYYY-MM-DD, or in words with day, month and year.`,
    )
  })

  it('with a day that is past are told so', () => {
    expect(whyNoReadAgain('by 2026-03-14', AT)).toBe(
      '2026-03-14 is not after today: by when is it to be read again?',
    )
    expect(whyNoReadAgain('by 3 March 2026', AT)).toBe(
      '3 March 2026, 2026-03-03, is not after today: by when is it to be read again?',
    )
  })
})

describe('MONITOR that is accepted', () => {
  it.each(['ok', 'Okay', 'yes', '1', '...', 'none given', '4000 hours'])(
    'is not, for the reason %j',
    (line) => {
      const walk = atWhy().keys(line)
      expect(walk.talk.ask).toMatchObject({ kind: 'dispose-why' })
      expect(walk.said.at(-1)).toMatch(/^The reason needs words/)
      expect(walk.state.dispositions).toEqual({})
    },
  )

  it('is asked until what, and both go on record', () => {
    const walk = atWhy().keys('inside its limits')
    expect(walk.state.dispositions).toEqual({})
    expect(asked(walk)).toContain('By when is it to be read again?')
    expect(asked(walk).join(' ')).toMatch(/A day, as YYYY-MM-DD or in words .* or the words none given\./)
    walk.keys('soon')
    expect(walk.state.dispositions).toEqual({})
    walk.keys('4000 h')
    expect(walk.state.dispositions.disposition).toMatchObject({
      choice: 'accept',
      why: 'inside its limits; to be read again: 4000 h from now',
    })
    // The counter was read by nobody: said at once, and not only in the review.
    expect(walk.said.at(-1)).toMatch(/^4000 h: nobody read the counter .* Better a day/)
  })

  it.each(['inside its limits, none given', 'seen, 2026-09-30'])('is taken at once with %j', (line) => {
    const walk = atWhy().keys(line)
    expect(walk.state.dispositions.disposition).toMatchObject({ why: line })
    expect(walk.said.join(' ')).not.toContain('counter')
  })

  it('is told the forms before they are asked for, and no hours where nobody could tell when they are over', () => {
    const told = asked(atWhy()).join(' ')
    expect(told).toMatch(/A day, as YYYY-MM-DD or in words with day, month and year; or the words none given/)
    expect(told).toContain('Rather no hours: nobody read the counter on this job.')
    expect(told).not.toContain('4000 h')
  })

  it('takes a day in words as the day it is, says so before the PIN and has both on record', () => {
    const walk = new Walk().toVerdict()
    walk.autoPin = false
    walk.keys('1', 'KH', 'inside its limits', '14 September 2026')
    expect(walk.talk.ask?.kind).toBe('pin')
    expect(walk.said.at(-1)).toBe('14 September 2026 is taken as 2026-09-14. Another day: back.')
    walk.keys('8314')
    expect(walk.state.dispositions.disposition).toMatchObject({
      why: 'inside its limits; to be read again: 14 September 2026 (2026-09-14)',
    })
  })

  it('asks about a day that can be two, and takes neither', () => {
    const walk = atWhy().keys('inside its limits', '3/4/2026')
    expect(walk.said.at(-1)).toMatch(/^3\/4\/2026 can be 3 April or 4 March\. Key the day as YYYY-MM-DD/)
    expect(walk.state.dispositions).toEqual({})
  })

  it('is not reasoned by a day alone', () => {
    expect(atWhy().keys('14 September 2026').said.at(-1)).toMatch(/^The reason needs words/)
  })

  it('keeps other words of an end as they were keyed', () => {
    const walk = atWhy().keys('inside its limits', 'at the next opening, not later than 4000 h')
    expect(walk.state.dispositions.disposition).toMatchObject({
      why: 'inside its limits; to be read again: at the next opening, not later than 4000 h',
    })
  })

  it('only where it runs on: a rework has a reason alone', () => {
    const walk = new Walk().toVerdict().keys('2', 'KH', 'hone it')
    expect(walk.state.dispositions.disposition).toMatchObject({ choice: 'rework', why: 'hone it' })
  })
})

describe('days in the words of a reason', () => {
  it('have each its own behind it, the longer and the shorter one', () => {
    expect(withDays('11 May 2027 at the outside, better 1 May 2027')).toBe(
      '11 May 2027 (2027-05-11) at the outside, better 1 May 2027 (2027-05-01)',
    )
    expect(withDays('by 1 May 2027 (2027-05-01)')).toBe('by 1 May 2027 (2027-05-01)')
  })

  it('that can be two are asked about, whatever other day stands beside them', () => {
    const why = whyNoReadAgain(
      'read again by 3/4/2027, after the shutdown of 12 December 2026',
      '2026-03-14T06:20:00+00:00',
    )
    expect(why).toMatch(/^3\/4\/2027 can be 3 April or 4 March/)
  })
})
