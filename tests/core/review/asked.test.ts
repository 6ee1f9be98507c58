// Plain questions at a review are answered from its own items, with their numbers; never that anything is safe. Tags open items.
import { describe, expect, it } from 'vitest'
import { questionBlocks } from '../../../src/core/review/asked.ts'
import { actBlocks, itemOfTag, wordBlocks } from '../../../src/core/review/keyed-words.ts'
import { deskOf } from '../../../src/core/talk/desk-words.ts'
import { Walk } from '../../helpers/example.ts'
import { only, reviewed } from '../../helpers/reviewed.ts'
import { gate, LOCKS, NO_START, readOne, smallDefs, tell } from '../../helpers/small-job.ts'

const accepted = () =>
  new Walk().toVerdict().keys('1', 'KH', 'inside its limits, read again not later than 8000 h', '')

function answer(walk: Walk, keyed: string): { text: string; numbers: string[] } {
  const { defs } = walk.engine
  const blocks = questionBlocks(
    { review: reviewed(walk), defs, entries: walk.entries, state: walk.state },
    keyed,
  )
  return {
    text: (blocks ?? []).flatMap(({ rows }) => rows.map(({ text }) => text.trim())).join('\n'),
    numbers: (blocks ?? []).flatMap(({ margin }) => (margin === '' ? [] : [margin])),
  }
}

describe('a question at the review', () => {
  const walk = accepted()
  const review = reviewed(walk)
  const verdict = String(only(review, 'verdict').number)

  it('what went wrong has the list, worst first', () => {
    const { text, numbers } = answer(walk, 'what went wrong?')
    expect(numbers).toEqual(review.exceptions.slice(0, 6).map(({ number }) => String(number)))
    expect(text).toContain('out of the ordinary, worst first')
  })

  it('why was it accepted has the decision in its words and by whom, under its number', () => {
    const { text, numbers } = answer(walk, 'Why was it accepted')
    expect(numbers).toContain(verdict)
    expect(text).toMatch(/A lead’s decision, no verdict: accept, by KH, .*read again not later than 8000 h\./)
  })

  it.each([
    'is it safe to run',
    'Is it safe?',
    'can it run',
    'can we start it',
    'is the machine fit to go back',
    'is the bore ok to run?',
  ])('%s is never answered yes', (keyed) => {
    for (const one of [walk, new Walk(smallDefs([tell('end')])).keys('RO', 'TC-401-1', '')]) {
      const { text } = answer(one, keyed)
      expect(text).toMatch(/^No record tells that, and this one does not\n/)
      expect(text).not.toMatch(/\b(?:is|are) (?:safe|fit|ready|ok)\b|\byes\b/i)
    }
    const { numbers } = answer(walk, keyed)
    expect(numbers).toEqual(
      expect.arrayContaining(review.exceptions.flatMap(({ open, number }) => (open ? [String(number)] : []))),
    )
  })

  it('who was the witness names hold points, and what was measured where the figures stand', () => {
    expect(answer(walk, 'who was the witness?').text).toMatch(
      /^Witnesses, as they signed; also of what has fallen since\n2 Hold point[^\n]*\n06:\d\d ML, keyed by RO: /,
    )
    expect(answer(walk, 'what did the bore measure').text).toMatch(
      /^Figures that were judged, of bore\n18 Bore judged: MONITOR, out of round 0\.00\d+ in of at most/,
    )
    expect(answer(walk, 'what was measured').text).toMatch(
      /^The figures that this record counts[\s\S]*bore diameter[\s\S]*behind \d+\./,
    )
  })

  it('who signed names each person and each decision', () => {
    const { text, numbers } = answer(walk, 'who signed it?')
    expect(text).toMatch(/^KH: \d+ signatures/m)
    expect(text).toMatch(/^ML: \d+ signatures/m)
    expect(numbers).toContain(verdict)
  })

  it('what is open has what is open', () => {
    const open = review.exceptions.filter((one) => one.open).map(({ number }) => String(number))
    expect(open.length).toBeGreaterThan(0)
    expect(answer(walk, 'what is open').numbers).toEqual(open)
  })

  it('when is the next overhaul works out no day, and has what was decided with a time in it', () => {
    const { text, numbers } = answer(walk, 'when is the next overhaul?')
    expect(text).toMatch(/^No day of it is worked out here/)
    expect(numbers).toContain(verdict)
  })

  it('why did the hold point fall is answered by the hold points, and never by a decision', () => {
    const fallen = new Walk().toBore()
    expect(answer(fallen, 'why did the hold point fall').text).toMatch(/^No hold point failed or fell/)
    fallen.bring({ do: 'clock-moved', seconds: 400 })
    const { text, numbers } = answer(fallen, 'why did hold point 2 fall?')
    expect(numbers).toEqual([String(only(reviewed(fallen), 'gate').number)])
    expect(text).toMatch(/^Why hold points failed or fell[\s\S]*Fell 06:\d\d: the clock moved; /)
    expect(answer(walk, 'why did the hold point fall').numbers).not.toContain(verdict)
  })

  it('what did they find has verdicts and findings, each by its number', () => {
    const { text, numbers } = answer(walk, 'what did they find')
    expect(numbers).toContain(verdict)
    expect(text).toMatch(/^What does not conform or is near its limit/)
  })

  it('who took the bore readings names who keyed them, when and with what, of these steps alone', () => {
    const { text } = answer(walk, 'who took the bore readings?')
    expect(text).toMatch(
      /7 Bore: \d+ readings, keyed by RO 2026-03-14 06:\d\d to 06:\d\d, with M-3 \(\d+ entries, \d+ to \d+\)\./,
    )
    expect(text).toMatch(/who held the gauge is not\.$/)
    expect(text).not.toMatch(/ Set-check before/)
    expect(answer(walk, 'who took the readings').text).toMatch(/ Counterbore|Set-check/)
    expect(answer(walk, 'who took the rider readings').text).toMatch(/^No reading that stands is of rider/)
  })

  it('that is none of these is told so, with those that are', () => {
    expect(answer(walk, 'how tall is the stack?').text).toMatch(/^Not found by its words/)
    expect(answer(walk, 'taper').text).toBe('')
  })
})

describe('a deadline in running hours', () => {
  it('on a counter that nobody read is out of the ordinary', () => {
    const one = only(reviewed(accepted()), 'deadline')
    expect(one.what).toMatch(/^DEADLINE IN HOURS, COUNTER NOT READ: 18 Bore judged, "8000 h" in its words$/)
    expect(one.sentences.join(' ')).toMatch(
      /Nobody read the counter .* The last on record is \d+ h at the overhaul of /,
    )
  })

  it('is none without hours in it', () => {
    const walk = new Walk().toVerdict().keys('1', 'KH', 'read again in spring, after a soak of 24 h', '')
    expect(reviewed(walk).exceptions.filter(({ kind }) => kind === 'deadline')).toEqual([])
  })
})

describe('act', () => {
  it('offers a STOP while the job is open, and none of a closed one, which takes none', () => {
    const text = (walk: Walk) =>
      JSON.stringify(actBlocks(reviewed(walk), deskOf(walk.engine.defs, walk.state)))
    expect(text(new Walk().toVerdict())).toContain('stop: STOP')
    expect(text(accepted())).not.toContain('stop: STOP')
  })
})

describe('a tag, a lock or an instrument', () => {
  const walk = new Walk(
    smallDefs([
      gate('stopped', ['start'], [LOCKS, NO_START]),
      readOne('size', { exposes: ['start'] }),
      tell('end'),
    ]),
  ).keys('RO', 'TC-401-1', 'L-1', 'L-12', 'NO START', '1', '9.5033', '')
  const review = reviewed(walk)

  it('opens the one item that it stands in', () => {
    const { number } = only(review, 'hanging')
    for (const keyed of ['L-12', 'l-12', 'L12', 'L-1']) expect(itemOfTag(review, keyed)).toBe(number)
  })

  it('is taken whole, and told where it stands nowhere', () => {
    for (const none of ['L-2', 'L-123', '12', 'T-9']) expect(itemOfTag(review, none)).toBeNull()
    expect(wordBlocks(review, 'T-9')?.[0]?.rows[0]?.text).toBe('T-9 stands in no item of this list')
    expect(wordBlocks(review, '12')).toBeNull()
  })
})
