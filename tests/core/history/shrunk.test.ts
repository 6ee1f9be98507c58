// Jobs that ran at once are ordered by when a place was read; a size that goes against its wear is told.
import { describe, expect, it } from 'vitest'
import { digestOf, type JobDigest, type PlaceDigest } from '../../../src/core/history/digest.ts'
import { type History, historyOf } from '../../../src/core/history/history.ts'
import { historyPaper } from '../../../src/core/history/paper.ts'
import { reportText } from '../../../src/core/report/write/text.ts'
import { Walk } from '../../helpers/example.ts'
import { offGauge } from '../../helpers/off-gauge.ts'

const MM = 0.001
const DAY = '2026-03-14'

const place = (found: number, at: string, more: Partial<PlaceDigest> = {}): PlaceDigest => ({
  of: 'bore diameter',
  station: 'centre',
  axis: 'vertical',
  name: 'Bore, CENTRE, TOP TO BOTTOM',
  found: { si: found * MM, U: 0.004 * MM },
  left: null,
  at: `${DAY}T${at}:00.000+00:00`,
  wears: 'larger',
  limit: null,
  firstSet: 'no',
  remade: null,
  earlier: [],
  ...more,
})

const job = (name: string, opened: string, hours: number | null, one: PlaceDigest): JobDigest => ({
  job: name,
  record: 'EXAMPLE',
  paper: false,
  machine: 'TC-9',
  unit: 'mm',
  title: 'Bore',
  opened: `${DAY}T${opened}:00.000+00:00`,
  closed: `${DAY}T17:00:00.000+00:00`,
  outcome: 'ACCEPT',
  asLeft: null,
  hours,
  places: [one],
  findings: [],
  steps: [],
})

const tell = (...jobs: JobDigest[]): History =>
  historyOf({ jobs: () => jobs }, { record: 'EXAMPLE', machine: null, next: null })
const trendOf = (history: History) => history.machines[0]?.trends[0]
const flow = (history: History) => reportText(historyPaper(history)).replace(/\s*\n[A-Z]+ +│ */g, ' ')

describe('two jobs of one day', () => {
  const bored = { remade: 'rework, decided by KH', left: { si: 241 * MM, U: 0.004 * MM } }
  const pull = job('pull', '06:20', 9000, place(240.1, '10:02', bored))
  const look = job('look', '06:25', null, place(240.1, '06:37'))

  it('the one that was read last is the newest, whichever was opened first', () => {
    for (const history of [tell(pull, look), tell(look, pull)]) {
      expect(trendOf(history)?.newest).toBeNull()
      expect(flow(history)).not.toMatch(/NEWEST READINGS/)
      expect(trendOf(history)?.shrunk).toEqual([])
    }
    const after = job('after', '06:10', null, place(241.01, '12:00'))
    expect(trendOf(tell(pull, after))?.newest).toMatchObject({
      job: 'after',
      at: `${DAY}T12:00:00.000+00:00`,
    })
  })
})

describe('a size against its wear', () => {
  const first = job('first', '06:00', 9000, place(240.1, '07:00'))

  it('by more than both may be off gets a sentence, with both jobs and its U', () => {
    const history = tell(first, job('second', '08:00', 9001, place(240.05, '09:00')))
    expect(flow(history)).toMatch(/AGAINST ITS WEAR, and no reline, cut or renewal is on record between/)
    expect(flow(history)).toContain(
      '240.050 mm on second is 0.050 smaller than 240.100 of first, more than its U, 0.006',
    )
  })

  it('by less is none, nor behind a reline; without a stated U any is told', () => {
    const near = tell(first, job('second', '08:00', 9001, place(240.096, '09:00')))
    expect(trendOf(near)?.shrunk).toEqual([])
    const relined = job('first', '06:00', 9000, place(240.1, '07:00', { remade: 'replace, decided by KH' }))
    expect(trendOf(tell(relined, job('second', '08:00', 9001, place(240, '09:00'))))?.shrunk ?? []).toEqual(
      [],
    )
    const bare = place(240.099, '09:00', { found: { si: 240.099 * MM, U: null } })
    expect(flow(tell(first, job('second', '08:00', null, bare)))).toMatch(
      /of which no measuring error is on record/,
    )
  })

  it('of a rod is that it grew', () => {
    const rod = (size: number, at: string) => place(size, at, { of: 'rod', wears: 'smaller' })
    const history = tell(
      job('a', '06:00', 9000, rod(76, '07:00')),
      job('b', '08:00', 9001, rod(76.1, '09:00')),
    )
    expect(flow(history)).toContain('0.100 larger than 76.000 of a')
  })
})

describe('a size that was measured on HOLD', () => {
  it('is named below the wear with its job and why; one that was not is not', () => {
    const held = job(
      'second',
      '08:00',
      9500,
      place(240.2, '09:00', { held: '18 Bore judged (entry 90): out' }),
    )
    const first = job('first', '06:00', 9000, place(240.1, '07:00'))
    expect(flow(tell(first, held))).toMatch(
      /MEASURED ON HOLD: no wear and no hours told from these readings are to be trusted\. +1 place on second, 18 Bore judged \(entry 90\): out/,
    )
    expect(flow(tell(first))).not.toContain('ON HOLD')
  })

  it('comes out of the log of its job', () => {
    const places = (walk: Walk) => digestOf(walk.engine.defs, walk.entries, walk.state).places
    expect(places(offGauge()).every(({ held }) => held?.startsWith('18 Bore judged') === true)).toBe(true)
    const sound = new Walk().toVerdict().keys('1', 'KH', 'read again, none given', '')
    expect(places(sound).some(({ held }) => held !== undefined)).toBe(false)
  })
})
