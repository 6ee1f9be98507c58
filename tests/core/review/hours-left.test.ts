// Hours left of one place: the reckoning of wear on the limit of its judge, and every reason why they are not told.
import { describe, expect, it } from 'vitest'
import { type Change, changesOf } from '../../../src/core/job/changes.ts'
import type { VerdictWord } from '../../../src/core/metrology/verdict.ts'
import { questionBlocks } from '../../../src/core/review/asked.ts'
import { changesInFew, changesInFull, changesInWords } from '../../../src/core/review/changes-rows.ts'
import { hoursLeftOf } from '../../../src/core/review/hours-left.ts'
import type { Changed } from '../../../src/core/review/review.ts'
import type { WearHistory } from '../../../src/core/wear/history.ts'
import { hoursToLimits } from '../../../src/core/wear/hours-left.ts'
import { wearRate } from '../../../src/core/wear/rate.ts'
import { Walk } from '../../helpers/example.ts'
import { reviewed } from '../../helpers/reviewed.ts'

const INCH = 0.0254
const walk = new Walk().toVerdict()
const { defs } = walk.engine
const LIMIT = 9.53 * INCH

function history(wears: WearHistory['wears'] = 'larger'): WearHistory {
  const at = (hours: number, inches: number) => ({
    hours,
    value: inches * INCH,
    U: 0.0003 * INCH,
    since: 'nothing' as const,
  })
  const grown = [at(22300, 9.5022), at(38900, 9.5039), at(55000, 9.5053), at(68300, 9.5069)]
  return {
    wears,
    readings: wears === 'larger' ? grown : grown.map((r) => ({ ...r, value: 19 * INCH - r.value })),
  }
}

/** The centre of the bore, top to bottom, with a history as if hours had been read. */
function change(more: Partial<Change> = {}): Change {
  const found = changesOf(defs, walk.state).find(
    ({ found: f }) => f?.place.station.id === 'centre' && f.place.axis?.id === 'vertical',
  )
  if (found === undefined) throw new Error('the bore has a centre')
  const worn = history()
  return { ...found, history: worn, rate: wearRate(worn), ...more }
}
const told = (more: Partial<Change> = {}, state = walk.state) => hoursLeftOf(defs, state, change(more))
const why = (more: Partial<Change> = {}, state = walk.state) => {
  const result = told(more, state)
  return result === null || result.ok ? 'told' : result.error.code
}
const left = (inches: number, u: number | null = 0.0003) => {
  const { found } = change()
  if (found === null) throw new Error('it was found')
  return { ...found, si: inches * INCH, u: u === null ? null : u * INCH }
}

describe('hours left', () => {
  it('are those of the wear and of the limit that judges the bore', () => {
    const here = told()
    const there = hoursToLimits(history(), [LIMIT], 'no')
    if (here?.ok !== true || !there.ok) throw new Error('both are told')
    expect(here.value).toMatchObject({ ...there.value.limits[0], limit: expect.closeTo(LIMIT, 12) })
    expect(here.value.of).toMatchObject({ characteristic: 'largest-diameter', from: 'machine' })
    expect(here.value.earliest).toBeGreaterThan(0)
  })

  it('are told where the bore was left as it was found, and not once it was cut or renewed on the job', () => {
    expect(why({ left: left(9.5069) })).toBe('told')
    expect(why({ left: left(9.5109) })).toBe('remade')
    expect(why({ left: left(9.5069, null) })).toBe('remade')
  })

  it('are not told once a lead decided that it is to be renewed, whatever was left', () => {
    const decided = (choice: string, isVoid = false) => ({
      ...walk.state,
      dispositions: {
        disposition: {
          seq: 1,
          about: 'bore_judged',
          choice,
          why: 'so',
          person: 'KH',
          void: isVoid,
          radio: null,
          countersigned: false,
          authority: null,
          valid: null,
        },
      },
    })
    for (const choice of ['rework', 'repair', 'replace', 'hold'])
      expect(why({}, decided(choice))).toBe('remade')
    for (const choice of ['accept', 'concession']) expect(why({}, decided(choice))).toBe('told')
    expect(why({}, decided('replace', true))).toBe('told')
  })

  it('come with how it is now, but for a bore that was judged ACCEPT', () => {
    const now = (verdict: VerdictWord, isVoid = false) => {
      const was = walk.state.verdicts.bore_judged
      if (was?.verdict.compute !== 'bore_form') throw new Error('the bore was judged')
      const one = {
        ...was,
        void: isVoid,
        verdict: { ...was.verdict, result: { ...was.verdict.result, verdict } },
      }
      const result = told({}, { ...walk.state, verdicts: { bore_judged: one } })
      return result?.ok === true ? result.value.now : 'not told'
    }
    expect(now('ACCEPT')).toBeNull()
    expect(now('REWORK')).toBe('18 Bore judged: REWORK, NOT DECIDED')
    expect(now('ACCEPT', true)).toBe('18 Bore judged: NOT JUDGED')
  })

  it('are not told of what has no rate, no limit of its own, or wears away from its limit', () => {
    expect(told({ rate: null, history: null })).toBeNull()
    expect(told({ rate: { ok: false, error: { code: 'no-hours', say: 'so' } } })).toBeNull()
    const small = history('smaller')
    expect(why({ history: small, rate: wearRate(small) })).toBe('no-limit')
  })
})

describe('a bore that is out and not decided', () => {
  const hoursLeft = told()
  if (hoursLeft?.ok !== true) throw new Error('it is told')
  const now = '18 Bore judged: REWORK, NOT DECIDED'
  const one: Changed = {
    ...change(),
    hoursLeft: { ok: true, value: { ...hoursLeft.value, earliest: 28824.6, now } },
  }

  it('has its verdict where the hours would stand', () => {
    expect(changesInFew(defs, [one], null)[2]?.text).toMatch(/ REWORK$/)
  })

  it('is told first where somebody asks for the next overhaul, then the hours with their place', () => {
    const review = { ...reviewed(walk), changes: [one] }
    const asked = questionBlocks(
      { review, defs, entries: walk.entries, state: walk.state },
      'when is the next overhaul',
    )
    const text = (asked ?? []).flatMap(({ rows }) => rows.map((r) => r.text)).join('\n')
    expect(text).toMatch(
      /NOT FIT, OR NOT DECIDED, NOW: .*\nOPEN: NC-1 Bore judged: MONITOR; NOT DECIDED \(entry \d+\)\nEarliest: bore diameter, 7\.3 Bore, CENTRE of ring travel, TOP TO BOTTOM: its limit 9\.5300 in may be reached after 28824 running hours more, .*\nIt is of the size alone; as it is now, 18 Bore judged: REWORK, NOT DECIDED: /,
    )
  })
})

describe('on one line', () => {
  const one = { ...change(), hoursLeft: told() }

  it('stand last, found, change, wear and hours, within a sheet of 80', () => {
    const rows = changesInFull(defs, [one])
    expect(rows.map(({ text }) => text)).toEqual([
      'As read          last    found     left  change  /1000h  hours',
      'bore diameter, in; wear by 4 readings, scatter about the line',
      expect.stringMatching(/^ CENTRE 12-6 {3}9\.5053 {3}9\.50\d\d {8}- {7}- 0\.000\d\d +\d+$/),
      expect.stringMatching(/^ {2}found less last, place by place: \+0\.00\d\d$/),
      '  give or take, in 1000 h: 0.00002',
      '  AS IT IS NOW, 18 Bore judged: MONITOR, NOT DECIDED: hours to the limit of one size say nothing of that',
      expect.stringMatching(
        /^ {2}CENTRE 12-6: its limit 9\.5300 in may be reached after \d+ running hours more, straight on \d+ \(/,
      ),
    ])
    for (const { text, keep } of rows) if (keep === true) expect(text.length).toBeLessThanOrEqual(62)
  })

  it('and in words the interval, what it accounts for, and the limit with its source', () => {
    const text = changesInWords(defs, [one])
      .map((r) => r.text)
      .join(' ')
    expect(text).toMatch(
      /last 9\.5053 on 2023-11-20, found 9\.50\d\d, since the last \+0\.00\d\d; wear 0\.000\d+ in 1000 h, give or take 0\.000\d+ \(scatter about the line\)/,
    )
    expect(text).toMatch(
      /CENTRE 12-6: its limit 9\.5300 in may be reached after \d+ running hours more, straight on \d+ \(machine book, /,
    )
  })

  it('a screen has the place that is nearest to its limit, and leaves the others to their number', () => {
    const far = {
      ...one,
      hoursLeft:
        one.hoursLeft?.ok === true
          ? { ...one.hoursLeft, value: { ...one.hoursLeft.value, earliest: 1e6 } }
          : null,
    }
    const texts = changesInFew(defs, [far, one, far], 7).map((r) => r.text)
    expect(texts[2]).not.toMatch(/far$/)
    expect(texts).toHaveLength(3)
    expect(texts[1]).toMatch(/; worst of 3, 2 more behind 7$/)
    // Without a rate it is the place that wore most, wherever it stands.
    const bare = (si: number) => ({
      ...one,
      hoursLeft: null,
      rate: null,
      found: one.found === null ? null : { ...one.found, si },
    })
    const most = (one.last?.si ?? 0) + 0.0009
    const order = [bare(most - 0.0005), bare(most), bare(most - 0.0007)]
    const alone = changesInFew(defs, [bare(most)], null)[2]?.text
    expect(changesInFew(defs, order, 7)[2]?.text).toBe(alone)
  })
})
