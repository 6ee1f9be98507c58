// Many jobs together, from digests made here: rates against a second calculation, what may not be mixed, what is not told.
import fc from 'fast-check'
import { linearRegression } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import type { JobDigest, PlaceDigest } from '../../../src/core/history/digest.ts'
import { type History, historyOf, type UnreadJob, type Wanted } from '../../../src/core/history/history.ts'
import { historyJson, historyPaper } from '../../../src/core/history/paper.ts'
import { reportHtml } from '../../../src/core/report/write/html.ts'
import { reportText } from '../../../src/core/report/write/text.ts'

const MM = 0.001
const place = (found: number | null, more: Partial<PlaceDigest> = {}): PlaceDigest => ({
  of: 'bore diameter',
  station: 'centre',
  axis: 'vertical',
  name: 'Bore, CENTRE, TOP TO BOTTOM',
  found: found === null ? null : { si: found * MM, U: 0.004 * MM },
  left: null,
  wears: 'larger',
  limit: { si: 241 * MM, source: 'book (invented)' },
  firstSet: 'no',
  remade: null,
  earlier: [],
  ...more,
})

/** An overhaul in the machine record, before any of the jobs. */
const OVERHAUL = {
  report: 'OR-1',
  day: '2008-01-01',
  hours: 0,
  si: 240 * MM,
  U: 0.004 * MM,
  since: 'nothing',
  why: null,
} as const

const job = (
  n: number,
  hours: number | null,
  places: PlaceDigest[],
  more: Partial<JobDigest> = {},
): JobDigest => ({
  job: `job-${String(n).padStart(4, '0')}`,
  record: 'EXAMPLE',
  paper: false,
  machine: 'TC-9',
  unit: 'mm',
  title: 'Bore',
  opened: `20${String(10 + n).padStart(2, '0')}-01-01T06:00:00.000+00:00`,
  closed: `20${String(10 + n).padStart(2, '0')}-01-01T09:00:00.000+00:00`,
  outcome: 'ACCEPT',
  asLeft: null,
  hours,
  places,
  findings: [],
  steps: [],
  ...more,
})

const tell = (jobs: readonly (JobDigest | UnreadJob)[], wanted: Partial<Wanted> = {}): History =>
  historyOf({ jobs: () => jobs }, { record: 'EXAMPLE', machine: null, next: null, ...wanted })
const only = (history: History) => {
  const [trend] = history.machines[0]?.trends ?? []
  if (trend === undefined) throw new Error('no trend')
  return trend
}

/** Without margins and line breaks. */
const flow = (history: History) => reportText(historyPaper(history)).replace(/\s*\n[A-Z]+ +│ */g, ' ')

describe('wear over several jobs', () => {
  it('is the slope of a second calculation by least squares', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 500, max: 9000 }), fc.integer({ min: 0, max: 30 })), {
          minLength: 3,
          maxLength: 12,
        }),
        (steps) => {
          let [hours, size] = [1000, 240]
          const points = steps.map(([ahead, worn]) => {
            hours += ahead
            size += worn / 1000
            return [hours, size] as [number, number]
          })
          const { rate } = only(tell(points.map(([at, mm], n) => job(n, at, [place(mm)]))))
          const { m } = linearRegression(points)
          expect(rate.ok && rate.value.perHour / MM).toBeCloseTo(m, 12)
        },
      ),
      { numRuns: 200, seed: 20261126 },
    )
  })

  it('goes on from what the record of the last job says, and tells no job twice that stands in it', () => {
    const earlier = [
      OVERHAUL,
      {
        report: 'job-0001',
        day: '2011-01-01',
        hours: 5000,
        si: 240.05 * MM,
        U: 0.004 * MM,
        since: 'nothing' as const,
        why: null,
      },
    ]
    const { readings } = only(
      tell([job(1, 5000, [place(240.06)]), job(2, 10_000, [place(240.1, { earlier })])]),
    )
    expect(readings.map(({ hours, value }) => [hours, Math.round(value / MM / 0.01) / 100])).toEqual([
      [0, 240],
      [5000, 240.05],
      [10_000, 240.1],
    ])
  })

  it('begins anew where a part was renewed or worked on: nothing before it counts', () => {
    const remade = place(240.2, { remade: 'REWORK by KH', left: { si: 240.5 * MM, U: 0.004 * MM } })
    const after = tell([
      job(1, 5000, [place(240.1)]),
      job(2, 10_000, [remade]),
      job(3, 15_000, [place(240.55)]),
      job(4, 20_000, [place(240.6)]),
    ])
    expect(only(after).readings.map(({ hours }) => hours)).toEqual([10_000, 15_000, 20_000])
    const unmeasured = tell([
      job(1, 5000, [place(240.1)]),
      job(2, 10_000, [place(240.2, { remade: 'REWORK by KH' })]),
      job(3, 15_000, [place(240.0)]),
    ])
    expect(only(unmeasured).readings.map(({ hours }) => hours)).toEqual([15_000])
    expect(only(unmeasured).rate.ok).toBe(false)
  })

  it('has the newest reading too where nobody read the hours, in no rate, and says why', () => {
    const timed = [job(0, 0, [place(240)]), job(1, 5000.5, [place(240.1)])]
    const history = tell([...timed, job(2, null, [place(240.1375)])])
    const { newest, readings, rate } = only(history)
    expect(readings).toHaveLength(2)
    expect(rate).toEqual(only(tell(timed)).rate)
    expect(newest).toMatchObject({ job: 'job-0002', since: { hours: 5000.5 } })
    expect(flow(history)).toMatch(
      /NEWEST READINGS, WITHOUT A RATE: nobody read the running hours on job-0002; .* 240\.138 mm, \S+; \+0\.038 since 240\.100 at 5000\.5 h/,
    )
    expect(flow(history)).toContain('; 5000.5 running hours')
    // Once hours are read again nothing stands apart any more.
    expect(
      only(tell([...timed, job(2, null, [place(240.14)]), job(3, 9000, [place(240.15)])])).newest,
    ).toBeNull()
    // Of what was worked on then, only what it was left at; and one that never had hours is told all the same.
    const worked = place(240.3, { remade: 'REWORK by KH', left: { si: 240.5 * MM, U: 0.004 * MM } })
    expect(only(tell([...timed, job(2, null, [worked])])).newest).toMatchObject({
      value: 240.5 * MM,
      since: null,
    })
    const alone = only(tell([job(0, null, [place(240)])]))
    expect([alone.readings, alone.rate.ok, alone.newest?.job]).toEqual([[], false, 'job-0000'])
  })

  it('is never told across work at hours that nobody read, nor of a part that was worked on and not read since', () => {
    const worked = job(2, null, [place(240.3, { remade: 'REWORK by KH' })])
    const after = tell([job(1, 5000, [place(240.1)]), worked, job(3, 15_000, [place(240.55)])])
    expect(only(after)).toMatchObject({ anew: 'REWORK by KH, job-0002, at hours nobody read' })
    expect(only(after).readings.map(({ hours }) => hours)).toEqual([15_000])
    expect(only(after).untimed).toBe(1)
    expect(flow(after)).toContain(
      'not in any rate: readings of 1 place on up to 1 job whose running hours nobody read',
    )
    const first = [job(0, 0, [place(240)]), job(1, 5000, [place(240.1)])]
    expect(only(tell(first)).left?.ok).toBe(true)
    for (const last of [worked, job(2, 9000, [place(240.3, { remade: 'REPLACE by KH' })])]) {
      const trend = only(tell([...first, last], { next: 1_000_000 }))
      expect([trend.readings, trend.rate.ok, trend.left?.ok]).toEqual([[], false, false])
    }
    const text = flow(tell([...first, worked]))
    expect(text).toContain(
      'not told of 1 place: it was worked on or renewed, and not read since: REWORK by KH, job-0002',
    )
  })

  it('says why it begins anew, and what a part was left as beside what it was found as', () => {
    const earlier = [
      OVERHAUL,
      {
        report: 'OR-2',
        day: '2011-01-01',
        hours: 5000,
        si: 240 * MM,
        U: 0.004 * MM,
        since: 'unknown' as const,
        why: 'liner made new or cut 2011-01-01, OR-2, and it may have been this',
      },
    ]
    const jobs = [job(2, 10_000, [place(240.1, { earlier })], { outcome: 'REPLACE', asLeft: 'MONITOR' })]
    const { readings, anew } = only(tell(jobs))
    expect(readings.map(({ hours }) => hours)).toEqual([5000, 10_000])
    expect(anew).toContain('liner made new')
    const text = flow(tell(jobs))
    expect(text).toMatch(/wear begins anew of 1 place: liner made new or cut/)
    expect(text).toMatch(/REPLACE as found, MONITOR as left/)
  })

  it.each([
    [
      'where an error is on no record',
      [job(1, 0, [place(240, { found: { si: 0.24, U: null } })]), job(2, 5000, [place(240.1)])],
    ],
    [
      'where nothing says which way it wears',
      [job(1, 0, [place(240, { wears: null })]), job(2, 9000, [place(240.1, { wears: null })])],
    ],
    ['of jobs whose running hours were not read', [job(1, null, [place(240)]), job(2, null, [place(240.1)])]],
  ])('is not told %s', (_what, jobs) => {
    expect(
      tell(jobs)
        .machines.flatMap(({ trends }) => trends)
        .filter(({ rate }) => rate.ok),
    ).toEqual([])
  })

  it('names what may reach its limit before the next planned overhaul, by the early end', () => {
    const jobs = [job(1, 0, [place(240)]), job(2, 10_000, [place(240.5)])]
    const early = only(tell(jobs)).left
    if (early?.ok !== true) throw new Error('no hours')
    const hours = early.value.earliest
    expect(hours).toBeLessThan(early.value.expected ?? 0)
    expect(tell(jobs, { next: Math.floor(hours) - 1 }).machines[0]?.due).toEqual([])
    expect(tell(jobs, { next: Math.ceil(hours) }).machines[0]?.due.map(({ name }) => name)).toEqual([
      'Bore, CENTRE, TOP TO BOTTOM',
    ])
  })
})

describe('many jobs', () => {
  const finding = { procedure: 'Oil feed', step: 'Check valves', about: 'observe: drips', word: 'One drips' }
  const jobs = [
    job(1, 1000, [place(240)], { findings: [finding, finding] }),
    job(2, 9000, [place(240.1)], {
      findings: [finding],
      steps: [{ procedure: 'Bore', step: 'Bore', corrected: 3, notApplicable: 0 }],
    }),
    job(3, 15_000, [place(240.2)], { outcome: null, closed: null, findings: [finding] }),
    job(4, 16_000, [place(247)], { record: 'PRACTICE', findings: [finding] }),
    job(5, 17_000, [place(240.3)], {
      machine: 'RG-2',
      steps: [{ procedure: 'Bore', step: 'Bore', corrected: 0, notApplicable: 1 }],
    }),
  ]

  it('of different kinds of record are never mixed, and nothing is told of one that is open', () => {
    const history = tell(jobs)
    expect(history).toMatchObject({ jobs: 4, open: 1 })
    expect(
      only({ ...history, machines: history.machines.filter((one) => one.machine === 'TC-9') }).readings,
    ).toHaveLength(2)
    expect(tell(jobs, { record: 'PRACTICE' })).toMatchObject({ jobs: 1 })
    expect(tell(jobs, { record: 'REAL' })).toMatchObject({ jobs: 0, machines: [], from: null })
    expect(tell(jobs, { machine: 'RG-2' }).machines.map(({ machine }) => machine)).toEqual(['RG-2'])
  })

  it('tell what was found again, once for each job, and which steps are put right in most of them', () => {
    const { repeated, steps } = tell(jobs)
    expect(repeated).toEqual([
      {
        machine: 'TC-9',
        procedures: ['Oil feed'],
        step: 'Check valves',
        word: 'One drips',
        jobs: ['job-0001', 'job-0002'],
      },
    ])
    expect(steps).toEqual([{ procedure: 'Bore', step: 'Bore', asked: 2, corrected: 1, notApplicable: 1 }])
  })

  it('tell what the same judge found in different procedures, and nothing of another judge of that title', () => {
    const judged = (procedure: string, about = 'figures: rod-undersize') => ({
      findings: [{ procedure, step: 'Size judged', about, word: 'MONITOR' }],
    })
    const history = tell([
      job(1, 1000, [], judged('Rod sizes')),
      job(2, 2000, [], judged('Piston pull')),
      job(3, 3000, [], judged('Piston pull', 'figures: ring-end-gap')),
      job(4, 4000, [], { ...judged('Piston pull'), machine: 'RG-2' }),
    ])
    expect(history.repeated).toMatchObject([
      { machine: 'TC-9', procedures: ['Rod sizes', 'Piston pull'], jobs: ['job-0001', 'job-0002'] },
    ])
    expect(flow(history)).toContain('Size judged: MONITOR (Rod sizes; Piston pull)')
  })

  it('have as their last the one that ended last, by the instant and not by its stamp', () => {
    const ended = (n: number, closed: string, outcome: string) => job(n, n * 1000, [], { closed, outcome })
    const { machines } = tell([
      ended(1, '2026-03-14T12:00:00.000+00:00', 'REWORK'),
      // Later on its clock, and an hour earlier.
      ended(2, '2026-03-14T13:00:00.000+02:00', 'MONITOR'),
    ])
    expect(machines[0]).toMatchObject({ last: { job: 'job-0001', outcome: 'REWORK' }, hours: 1000 })
  })

  it('come one after another by the instant: what was read behind a piece of work is not told as before it', () => {
    // Winter time began between the two: the second is earlier by its stamp, and forty minutes later.
    const worked = job(1, 10_000, [place(240.2, { remade: 'REWORK by KH' })], {
      opened: '2026-10-25T02:30:00.000+02:00',
    })
    const read = job(2, 10_001, [place(240.0)], { opened: '2026-10-25T02:10:00.000+01:00' })
    const history = tell([read, worked])
    expect(only(history).readings.map(({ hours }) => hours)).toEqual([10_001])
    expect(history.from).toBe(worked.opened)
  })

  it('are read at a glance: a machine a line of a terminal, with its hours left, and the place they are of', () => {
    const machines = Array.from({ length: 40 }, (_, n) => `TC-${500 + n}-1`)
    const history = tell(
      machines.flatMap((machine, n) => [
        job(2 * n, 0, [place(240)], { machine }),
        job(2 * n + 1, 8000, [place(240.1)], {
          machine,
          outcome: 'REPLACE',
          asLeft: 'MONITOR, and 1 not measured again',
        }),
      ]),
    )
    const text = reportText(historyPaper(history))
    for (const machine of machines) {
      expect(text).toMatch(new RegExp(`│ ${machine} +2  20\\d\\d-01-01  MONITOR, not all +\\d+  8000 h\n`))
      expect(text).toMatch(new RegExp(`│ ${machine}  Bore, CENTRE, TOP TO BOTTOM +0\n`))
    }
    expect(Math.max(...text.split('\n').map((one) => one.length))).toBeLessThanOrEqual(80)
  })

  it('come to the same in whatever order they are read', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(jobs, { minLength: jobs.length }), (shuffled) => {
        expect(historyJson(tell(shuffled, { next: 9000 }))).toEqual(historyJson(tell(jobs, { next: 9000 })))
      }),
    )
  })

  it('name each log that was not read, on the page too', () => {
    const history = tell([...jobs, { job: 'job-9', unread: 'damaged at line 7' }])
    expect(history.unread).toHaveLength(1)
    const text = reportText(historyPaper(history))
    expect(text).toMatch(/1 log NOT READ/)
    expect(text).toMatch(/job-9: damaged at line 7/)
    expect(
      text
        .trimEnd()
        .split('\n')
        .every((line) => line.startsWith('EXAMPLE')),
    ).toBe(true)
  })

  it('are a page with a plot, on which names are harmless', () => {
    const hostile = jobs.map((one) => ({ ...one, machine: '<img src=x onerror=alert(1)>' }))
    const html = reportHtml(historyPaper(tell(hostile)))
    expect(html).not.toMatch(/<img/)
    expect(html).toMatch(/<svg/)
  })
})
