// A gauge found out of calibration after the close: what people did is told as they left it, what was started on it is told, and
// what was added stands apart from the job.
import { describe, expect, it } from 'vitest'
import { reviewJson } from '../../../src/core/review/json.ts'
import { standingOf } from '../../../src/core/talk/standing.ts'
import { Walk } from '../../helpers/example.ts'
import { headTexts } from '../../helpers/head-texts.ts'
import { only, reviewed } from '../../helpers/reviewed.ts'
import { FIRST_START, gate, NO_START, type Raw, readOne, smallDefs, tell } from '../../helpers/small-job.ts'

function doubt(walk: Walk, instrument = 'M-3'): Walk {
  const said = { why: 'reads high', says: 'the laboratory', person: 'KH', proved: true } as const
  walk.wait(60 * 24 * 30)
  expect(walk.bring({ do: 'doubt-instrument', instrument, ...said })).toBeNull()
  return walk
}

/** A side clearance judged, then a first start: closed. */
function startedOn(): Walk {
  const gauge = readOne('clearance', {
    of: 'side clearance',
    with: 'feelers',
    stations: [{ id: 'all', label: 'all grooves', at: 0.5 }],
    how: {},
    repeats: { at_least: 1, at_most: 1, within: '0.001 in' },
    plausible: { from: 'range', least: '0 in', most: '1 in' },
  })
  const judged: Raw = {
    id: 'judged',
    kind: 'judge',
    title: 'Grooves judged',
    compute: 'figures',
    figures: [{ characteristic: 'ring-side-clearance', is: 'clearance' }],
  }
  const decided: Raw = {
    id: 'decided',
    kind: 'decide',
    title: 'Decided',
    when: { rule: 'judged != "ACCEPT"', unknown: 'do' },
    about: 'judged',
    choices: ['accept', 'hold'],
  }
  const steps = [gauge, judged, decided, gate('ready', ['start'], [NO_START]), FIRST_START]
  const seats = [{ id: 'feelers', kinds: ['feeler_gauge'], for: 'gaps' }]
  return new Walk(smallDefs(steps, [], {}, { seats })).keys('RO', 'TC-401-1', '1', '0.005', 'NO START', '1')
}

describe('a hold point that fell after the last work behind it', () => {
  const walk = () => {
    const steps = [
      gate('stopped', ['start'], [NO_START]),
      readOne('size', { exposes: ['start'] }),
      tell('end'),
    ]
    const one = new Walk(smallDefs(steps)).keys('RO', 'TC-401-1', 'NO START', '1', '9.5033')
    return one.keys('stop', '1', 'it smells', 'ML', 'release', 'KH', 'aired and tested', '')
  }

  it('is told so still when the gauge that read behind it fell months later: nobody is accused', () => {
    const before = only(reviewed(walk()), 'gate-after')
    expect(before.what).toBe('1 stopped: fell once, after the last work behind it')
    const after = reviewed(doubt(walk()))
    expect(only(after, 'gate-after')).toMatchObject({ what: before.what, sentences: before.sentences })
    expect(after.exceptions.filter(({ kind }) => kind === 'gate')).toEqual([])
  })
})

describe('how a job stands', () => {
  it('names what made it fall alone, and keeps what it was closed with', () => {
    const { state } = startedOn()
    const fallen = { ...state, closed: 'HOLD', fellFrom: 'REPLACE', asLeft: 'MONITOR', fellBy: ['M-3'] }
    expect(standingOf({ ...fallen, doubted: { 'P-7': 3, 'M-3': 9 } })).toBe(
      'closed with REPLACE as found, MONITOR as left, fallen to HOLD: M-3 out of calibration',
    )
  })

  it('has an instrument that was out before the close not among what made it fall', () => {
    const walk = new Walk().toVerdict().keys('1', 'KH', 'read again, none given', '')
    walk.state = { ...walk.state, doubted: { 'G-7': 3 } }
    expect(doubt(walk).state.doubted).toHaveProperty('G-7')
    expect(walk.state.fellBy).toEqual(['M-3'])
  })
})

describe('the span of a review', () => {
  it('ends at the close, with what was added after told apart', () => {
    const walk = new Walk(smallDefs([readOne('size'), tell('end')])).keys('RO', 'TC-401-1', '1', '9.5033', '')
    const end = walk.last.at
    expect(reviewed(walk)).toMatchObject({ to: end, added: [] })
    const review = reviewed(doubt(walk))
    expect(review.to).toBe(end)
    expect(review.added).toEqual([expect.stringMatching(/^M-3 out of calibration, KH.* 2026-04-13 06:\d\d$/)])
    expect(headTexts(review)).toMatch(/06:20 to 06:\d\d .*Added since: M-3 out of calibration/)
    expect(reviewJson(review).added).toEqual(review.added)
  })
})

describe('the start', () => {
  const tag: Raw = {
    id: 'tag',
    kind: 'numbers',
    of: 'tag',
    per: 'once',
    ask: 'The number of the PRESSURE tag.',
  }
  const ran = (...more: Raw[]) =>
    new Walk(smallDefs([...more, gate('ready', ['start'], [NO_START, tag]), FIRST_START])).keys(
      'RO',
      'TC-401-1',
    )

  it('is told on the head, with what was undecided and each tag by what it hung on', () => {
    const review = reviewed(ran().keys('NO START', 'T-9', '1'))
    expect(review.started).toEqual({
      what: expect.stringMatching(
        /^Started RO 06:\d\d: every finding decided; 1 tag not told off: T-9; NO ALL CLEAR ON RECORD before it$/,
      ),
      hung: ['T-9: the PRESSURE tag, at 1 ready'],
    })
    expect(headTexts(review)).toContain(review.started?.what)
    expect(JSON.stringify(review.started)).not.toMatch(/\b(fit|safe)\b/i)
    expect(only(review, 'hanging').sentences.join(' ')).toMatch(
      /By the record it was started while T-9 was on: 2 First start, 06:\d\d\./,
    )
  })

  it('on a verdict that fell since heads the list, open: a lead decides', () => {
    const walk = startedOn()
    expect(walk.state.closed).not.toBeNull()
    expect(reviewed(walk).exceptions.filter(({ kind }) => kind === 'started')).toEqual([])
    const gauge = Object.values(walk.state.seats)[0] ?? ''
    const { exceptions, started } = reviewed(doubt(walk, gauge))
    expect(exceptions[0]).toMatchObject({ kind: 'started', open: true })
    expect(exceptions[0]?.what).toMatch(
      /^STARTED RO 06:\d\d ON 2, VOID SINCE: a lead decides: stop and measure again, or run on$/,
    )
    expect(exceptions[0]?.sentences[0]).toMatch(
      /^2 Grooves judged: \w+ when it was started, void since 2026-04-13 .*out of calibration: reads high\.$/,
    )
    expect(started?.what).toContain('2 VOID SINCE')
  })

  it('is none of a job that starts nothing', () => {
    expect(reviewed(new Walk(smallDefs([tell('end')])).keys('RO', 'TC-401-1', '')).started).toBeNull()
  })
})
