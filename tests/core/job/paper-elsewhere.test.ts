// What a job keyed from a sheet is to the other jobs on its machine: it makes nobody safer, and what may make somebody less safe counts.
import { describe, expect, it } from 'vitest'
import { hanging } from '../../../src/core/job/locks-on.ts'
import { standingOf, watch, watchFrom } from '../../../src/core/job/watch.ts'
import { makeSafeLines } from '../../../src/core/talk/make-safe.ts'
import { Walk } from '../../helpers/example.ts'
import {
  END_LINES,
  FRONT_LINES,
  permitLines,
  SIGN_LINES,
  sheetJob,
  toJudge,
} from '../../helpers/filled-sheet.ts'

function seenOf(walk: Walk) {
  const [first, ...rest] = walk.entries
  if (first?.type !== 'job.opened') throw new Error('not opened')
  const { defs } = walk.engine
  return standingOf(
    defs,
    rest.reduce((watched, entry) => watch(defs, watched, entry), watchFrom(first)),
  )
}

const withoutEnd = FRONT_LINES.map((line) => (line === '2026-03-14 11:30' ? '-' : line))

describe('a sheet, to other jobs on the machine', () => {
  it('has people behind its hold points until it says that the work has ended, or is closed', () => {
    expect(seenOf(sheetJob()).inside.map(({ id }) => id)).toContain('rotation')
    expect(seenOf(sheetJob().keys('RO', ...withoutEnd)).inside).not.toEqual([])
    expect(seenOf(sheetJob().keys('RO', ...FRONT_LINES)).inside).toEqual([])
    const lines = toJudge().map((line) => (line === '2026-03-14 11:30' ? '-' : line))
    expect(seenOf(sheetJob().keys(...lines, ...END_LINES, ...SIGN_LINES)).inside).toEqual([])
  })

  it('has nobody on it: whoever keys it sits at a desk', () => {
    expect(seenOf(sheetJob().keys('RO')).people).toEqual([])
    expect(seenOf(new Walk().keys('RO')).people).toEqual(['RO'])
  })

  it('tells of a STOP that is noted on it', () => {
    const walk = sheetJob().keys(...toJudge(), ...END_LINES.slice(0, 4))
    expect(walk.prompt).toMatchObject({ kind: 'sheet', box: { row: 'stop.1' } })
    expect(seenOf(walk).doings).toEqual([])
    expect(seenOf(walk.copy().keys('-')).doings).toEqual([])
    expect(seenOf(walk.keys('07:00 RO gas smelt', '2')).doings).toMatchObject([{ what: 'stop' }])
  })

  it('has the locks on that it notes, and may take them off as it ends', () => {
    const walk = sheetJob().keys('RO', ...FRONT_LINES, '06:31 RO', ...permitLines())
    const on = hanging(walk.engine.defs, walk.state).on.map(({ shown }) => shown)
    expect(on).toEqual(['L-101', 'L-102', 'L-103', 'L-104', 'L-105', 'L-106'])
    expect(makeSafeLines(walk.engine.defs, walk.state).join('\n')).toMatch(/L-104 {2}\S/)
    const whole = sheetJob().keys(...toJudge(), ...END_LINES, ...SIGN_LINES)
    expect(whole.state.closed).toBe('MONITOR')
    expect(seenOf(whole).doings).toMatchObject([{ what: 'removed', numbers: on, told: true }])
  })

  it('takes no look at them: what it says was done before', () => {
    const walk = sheetJob()
    walk.others = () => [{ ...seenOf(new Walk()), ...ELSE }]
    walk.keys('RO', ...FRONT_LINES)
    expect(walk.entries.some((e) => e.type === 'elsewhere.seen')).toBe(false)
  })
})

const ELSE = {
  job: 'other',
  record: 'EXAMPLE',
  tag: 'TC-401-1',
  told: true,
  upTo: 0,
  head: '',
  unread: null,
} as const
