// Questions by the clock of the log: what was keyed at a time, how long from one thing to another, which was first, how often people came out.
import { describe, expect, it } from 'vitest'
import { TIME_QUESTIONS } from '../../../src/core/review/asked-time-kinds.ts'
import { answered } from '../../helpers/answered.ts'
import { AFTER_LINES, BORE_LINES, GAS_LINES, LOCK_LINES, Walk, WORDS_AGAIN } from '../../helpers/example.ts'
import { stopReleased } from '../../helpers/stopped.ts'

/** Two notes, a STOP ten minutes after the second, and everything proved again. */
const day = new Walk().toBore().keys(...BORE_LINES.slice(0, 4))
day.bring({ do: 'note', text: 'the lamp flickers' })
day.keys('9.5068').wait(5)
day.bring({ do: 'note', text: 'M-3 was knocked off the bench' })
day.wait(10).keys('9.5069')
stopReleased(day, 'forklift at the skid', 'driver sent away')
day.keys('ALL OUT', ...LOCK_LINES, ...WORDS_AGAIN, ...GAS_LINES, 'ML')
day.keys(...BORE_LINES.slice(6), ...AFTER_LINES)

const seqOf = (is: (e: (typeof day.entries)[number]) => boolean) => day.entries.find(is)?.seq ?? -1
const knocked = seqOf((e) => e.type === 'note.written' && /knocked/.test(e.text))
const stop = seqOf(({ type }) => type === 'stop.raised')
const judged = seqOf(({ type }) => type === 'verdict.given')
const clockOf = (seq: number) => day.entries[seq]?.at.slice(11, 16) ?? ''

describe('what was keyed at a time', () => {
  it('is every entry of that minute', () => {
    const text = answered(day, `what was keyed at ${clockOf(knocked)}`)
    expect(text).toMatch(
      new RegExp(
        `^At ${clockOf(knocked)}: \\d+ entr[^\\n]*\\n[\\s\\S]*knocked off the bench \\(entry ${knocked}\\)`,
      ),
    )
    const n = day.entries.filter((e) => e.at.slice(11, 16) === clockOf(knocked)).length
    expect(text).toContain(`At ${clockOf(knocked)}: ${n} entr`)
  })

  it('a time alone is one, with a point or a colon', () => {
    for (const asked of [clockOf(stop), `${clockOf(stop)}?`, `at ${clockOf(stop).replace(':', '.')}`])
      expect(answered(day, `what happened ${asked}`)).toMatch(/^At \d\d:\d\d: \d+ entr/)
  })

  it('of a minute with none the entries on both sides are told', () => {
    expect(answered(day, 'what was keyed at 06:29')).toMatch(
      /^At 06:29 nothing was keyed\n[^\n]*\(entry \d+\)\n[^\n]*knocked[^\n]*\(entry \d+\)\n/,
    )
  })

  it('25:70 is no time', () => {
    expect(answered(day, 'what was keyed at 25:70')).not.toMatch(/^At /)
  })
})

describe('how long from one to another', () => {
  it.each([
    ['how long from the note about the knock till the stop', knocked, stop, /^10 min from/],
    ['how long was it between the stop and the verdict', stop, judged, /^\d+ min from/],
    [`how long from ${clockOf(knocked)} to the stop`, -1, stop, /^1\d min from|^10 min from/],
  ])('%s: both entries and the minutes', (asked, from, to, head) => {
    const text = answered(day, asked)
    expect(text).toMatch(head)
    if (from >= 0) expect(text).toContain(`(entry ${from})`)
    expect(text).toContain(`(entry ${to})`)
  })

  it('of what no entry has none is made up', () => {
    const text = answered(day, 'how long from the giraffe till the stop')
    expect(text).toMatch(/^No answer is made of it here/)
    expect(text).toMatch(/In no entry: giraffe\./)
  })
})

describe('before or after', () => {
  it('stands in the order of the log', () => {
    const text = answered(day, 'was the knock noted before or after the verdict')
    expect(text).toMatch(
      new RegExp(
        `^In the order of the log[^\\n]*\\n[^\\n]*knocked[^\\n]*\\(entry ${knocked}\\)\\n[^\\n]*\\(entry ${judged}\\)`,
      ),
    )
  })

  it('one thing is not told as two', () => {
    expect(answered(day, 'was the stop before or after the stop')).not.toMatch(/^In the order/)
  })

  it('a note about another thing is not taken for it', () => {
    expect(answered(day, 'was the note about the giraffe before or after the stop')).not.toMatch(
      /^In the order/,
    )
  })
})

describe('how often people came out', () => {
  it('is told with what called them', () => {
    expect(answered(day, 'how many times did they have to come out')).toMatch(
      new RegExp(
        `^Keyed out and clear once[^\\n]*\\n[^\\n]*STOP\\.[^\\n]*\\(entry ${stop}\\)\\n[^\\n]*ALL OUT`,
      ),
    )
    expect(answered(new Walk().toVerdict(), 'how often did they come out')).toMatch(
      /^No entry tells that people were out/,
    )
  })
})

describe('a start that was tried', () => {
  it('is told each time', () => {
    const text = answered(day, 'did anybody try to start the machine after the stop')
    expect(text).toMatch(
      /^Starts that were tried[^\n]*\n[^\n]*NO START \(entry \d+\)\n[^\n]*NO START \(entry \d+\)\n/,
    )
  })
})

describe('each kind', () => {
  it.each(TIME_QUESTIONS.map(({ like, asked }) => [like, asked] as const))(
    'hears its own example: %s',
    (like, asked) => {
      expect(asked.some((one) => one.test(like))).toBe(true)
    },
  )
})
