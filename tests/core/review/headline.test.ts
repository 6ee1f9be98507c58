// The head of a review and what a lead decided: parts that were not measured again have a number, a decision is no verdict, one that
// was replaced is told in a line, and whoever only spoke after the close is not told as on the job.
import { describe, expect, it } from 'vitest'
import { coverSection } from '../../../src/core/report/paper-front.ts'
import { screenLines } from '../../../src/core/review/page.ts'
import { plainText } from '../../../src/core/sheet/block.ts'
import { Walk } from '../../helpers/example.ts'
import { grooves, readGrooves } from '../../helpers/grooves.ts'
import { headTexts } from '../../helpers/head-texts.ts'
import { reported } from '../../helpers/reported.ts'
import { only, reviewed } from '../../helpers/reviewed.ts'
import { FIRST_START, gate, NO_START, readOne, smallDefs, tell } from '../../helpers/small-job.ts'

const REWORK = ['2', 'KH', 'new grooves']

describe('a part that was worked on and not measured again', () => {
  it('is named under a number of its own, and the head says which', () => {
    const walk = grooves(false).keys('0.012', ...REWORK)
    expect(walk.last.type).toBe('job.closed')
    const review = reviewed(walk)
    const one = only(review, 'unmeasured')
    expect(one.what).toBe(
      'NOT MEASURED AGAIN as left: 2 worn_judged, found REWORK, to be reworked, decided by KH',
    )
    expect(one.entries).toHaveLength(2)
    expect(review.standing).toBe(
      `closed with REWORK as found, as left not measured again: item ${one.number}`,
    )
    expect(reported(walk).standing).toMatch(/: item \d$/)
    const screen = plainText(
      screenLines(walk.engine.defs, review, { width: 79, record: 'PRACTICE', ascii: true }, 21),
    )
    expect(screen.replace(/\n[A-Z]+ +\| +/g, ' ')).toContain(`item ${one.number}`)
  })

  it('is told as read again and not judged where it was, with what it reads and who signed behind it', () => {
    const looked = {
      id: 'looked',
      kind: 'confirm',
      title: 'looked',
      seen: 'Inside the maker’s figure.',
      point: { kind: 'hold', roles: ['lead'] },
    }
    const walk = grooves(false, [readGrooves('fresh', 'as_left'), looked])
    walk.keys('0.012', ...REWORK, '0.004', '1', 'KH')
    const review = reviewed(walk)
    const one = only(review, 'unmeasured')
    expect(one.what).toBe(
      'READ AGAIN as left, NOT JUDGED: 2 worn_judged, found REWORK, reworked, decided by KH',
    )
    expect(one.sentences.slice(1)).toEqual([
      'As it went back it reads: side clearance, fresh: 0.0040 in. No verdict counts that in.',
      expect.stringMatching(/^5 looked: signed by KH, keyed by RO 06:\d\d\.$/),
    ])
    expect(one.entries.map((seq) => walk.entries[seq]?.type)).toEqual([
      ...['verdict.given', 'disposition.set', 'reading.taken', 'point.signed'],
    ])
    expect(review.standing).toBe(
      `closed with REWORK as found, as left read again, not judged: item ${one.number}`,
    )
    expect(walk.last).toMatchObject({ as_left: 'read again, not judged' })
    const report = reported(walk)
    expect(report.verdicts[0]).toMatchObject({ left: null, readAgain: true })
    expect(JSON.stringify(coverSection(report))).toContain('reworked, decided by KH; read again, not judged')
    expect(JSON.stringify(report)).not.toContain('not measured again')
  })

  it('is none where it was measured again', () => {
    const review = reviewed(grooves(true).keys('0.012', ...REWORK, '0.004'))
    expect(review.exceptions.filter(({ kind }) => kind === 'unmeasured')).toEqual([])
    expect(review.standing).toBe('closed with REWORK as found, ACCEPT as left')
  })
})

describe('what a lead decided', () => {
  it('stands beside the verdict as a decision, and in capitals stands the verdict alone', () => {
    const { what, sentences } = only(
      reviewed(new Walk().toVerdict().keys('1', 'KH', 'good for a year, none given')),
      'verdict',
    )
    expect(what).toBe('NC-1 Bore judged: MONITOR; KH decided: accept')
    expect(sentences.at(-1)).toMatch(
      /^A lead’s decision, no verdict: accept, by KH, .*: good for a year, none given\.$/,
    )
    expect(JSON.stringify([what, sentences])).not.toContain('ACCEPT')
  })

  it('that another replaced, as the reading was put right, is told in one line', () => {
    const walk = new Walk().toVerdict().keys('2', 'KH', 'hone it')
    const of = walk.state.readings['bore.centre.vertical']?.[0]?.seq ?? -1
    expect(walk.bring({ do: 'correct', of, typed: '9.5070', why: 'misread' })).toBeNull()
    walk.keys('4', 'KH', 'too far gone')
    const [was, now, ...none] = reviewed(walk)
      .exceptions.filter(({ kind }) => kind === 'verdict')
      .sort((a, b) => (a.entries[0] ?? 0) - (b.entries[0] ?? 0))
    expect(none).toEqual([])
    expect(now?.what).toBe('NC-2 Bore judged: MONITOR; KH decided: replace')
    expect(was?.what).toBe('NC-1 Bore judged: MONITOR; NC-2 MONITOR stands in its place')
    expect(was?.sentences).toEqual([
      expect.stringMatching(
        /^rework, decided by KH 06:\d\d, was replaced by: replace, decided by KH 06:\d\d on NC-2\.$/,
      ),
      expect.stringMatching(
        /^What made it so: 7\.3 Bore, .* corrected from 9\.5068 to 9\.5070 by RO 06:\d\d, misread; no new reading\.$/,
      ),
    ])
  })
})

describe('whoever only spoke after the close', () => {
  it('stands with what was added, and not with those who were on the job', () => {
    const walk = new Walk(smallDefs([readOne('size'), tell('end')])).keys('RO', 'TC-401-1', '1', '9.5033', '')
    expect(walk.bring({ do: 'remark', text: 'seen', person: 'PB', proved: true })).toBeNull()
    const review = reviewed(walk)
    expect([review.people, review.since]).toEqual([['RO'], ['PB']])
    expect(headTexts(review)).toMatch(/06:20 to 06:\d\d {3}RO .*Added since: a lead’s words, PB/)
    const { people } = reported(walk)
    expect(people.map(({ id, since }) => [id, since])).toEqual([
      ['RO', false],
      ['PB', true],
    ])
  })
})

describe('ALL CLEAR before a start', () => {
  const TOLD = { id: 'told', kind: 'words', ask: 'Everybody told?', words: 'ALL TOLD AND CLEAR' }
  const size = readOne('size', { exposes: ['bad_air'] })
  const steps = [
    gate('stopped', ['bad_air'], [NO_START]),
    size,
    gate('ready', ['start'], [NO_START, TOLD]),
    FIRST_START,
  ]

  it('is told with who, when and where it was keyed', () => {
    const walk = new Walk(smallDefs([gate('ready', ['start'], [NO_START, TOLD]), FIRST_START]))
    const review = reviewed(walk.keys('RO', 'TC-401-1', 'NO START', 'ALL TOLD AND CLEAR', '1'))
    expect(review.started?.what).toMatch(/; clear keyed before it: ALL TOLD AND CLEAR, RO 06:20 at 1 ready$/)
  })

  it('is told as on no record where nobody keyed it', () => {
    const walk = new Walk(smallDefs([gate('ready', ['start'], [NO_START]), FIRST_START])).keys(
      'RO',
      'TC-401-1',
    )
    expect(reviewed(walk.keys('NO START', '1')).started?.what).toMatch(/; NO ALL CLEAR ON RECORD before it$/)
  })

  it('names hold points that fell before it and where nobody keyed clear', () => {
    const walk = new Walk(smallDefs(steps)).keys('RO', 'TC-401-1', 'NO START', '1', '9.5033')
    walk.keys('stop', '1', 'it smells', 'ML', 'release', 'KH', 'aired and tested')
    walk.keys('NO START', 'ALL TOLD AND CLEAR', '1')
    const review = reviewed(walk)
    expect(review.started?.what).toMatch(
      /clear keyed before it: .* at 3 ready; not at 1 hold point that fell before it: 1$/,
    )
    const fell = review.exceptions.find(
      ({ kind, what }) => kind.startsWith('gate') && what.includes('1 stopped'),
    )
    const start = only(review, 'start-clear')
    // Told once, with all of them, and not behind each hold point.
    expect(fell?.sentences.join(' ')).not.toMatch(/started/)
    expect(start.what).toMatch(/^STARTED RO 06:\d\d, clear not keyed at 1 hold point that fell before it: 1$/)
    expect(start.sentences).toEqual([
      expect.stringMatching(/^Last on record before it was ALL TOLD AND CLEAR, RO 06:\d\d at 3 ready\.$/),
      expect.stringMatching(/^1 stopped: fell 06:\d\d, nobody keyed clear since\.$/),
      expect.stringMatching(/^Ask those who were there/),
    ])
    expect(start.entries.map((seq) => walk.entries[seq]?.type)).toEqual([
      'stop.raised',
      'evidence.given',
      'step.confirmed',
    ])
  })
})
