// Lines of a sheet: time, initials and what stands beside them; times held against each other and against the clock.
import { describe, expect, it } from 'vitest'
import { checkMark } from '../../../src/core/job/paper.ts'
import { minutesOnSheet, readSheetDay, readSheetLine } from '../../../src/core/job/paper-line.ts'
import { readStamp } from '../../../src/core/lib/instant.ts'

/** 16:20 on a wall clock that is two hours ahead. */
const NOW = readStamp('2026-03-14T16:20:00+02:00') ?? { ms: Number.NaN, offsetMin: 0 }
const AT = { day: '2026-03-14', last: '2026-03-14 07:00', now: NOW }
const read = (line: string, sure = false, at = AT) => readSheetLine(line, at, sure)

describe('a line of a sheet', () => {
  it('is a time, initials and the rest', () => {
    expect(read('07:10 ro L-101 x')).toEqual({
      ok: true,
      value: { paper: { time: '2026-03-14 07:10', who: 'RO' }, rest: 'L-101 x' },
    })
    expect(read('7.10 - 20.9')).toMatchObject({
      value: { paper: { time: '2026-03-14 07:10', who: null }, rest: '20.9' },
    })
    expect(read('- RO')).toMatchObject({ value: { paper: { time: null, who: 'RO' }, rest: '' } })
    for (const bad of ['', 'RO 07:10', '7', '25:00 RO', '07:61 RO', '2026-02-30 07:10 RO'])
      expect([bad, read(bad).ok]).toEqual([bad, false])
  })

  it('is held against the wall clock here, and against the line above', () => {
    expect(read('16:20 RO').ok).toBe(true)
    expect(read('16:21 RO')).toMatchObject({ error: { code: 'sheet-future' } })
    expect(read('16:21 RO', true)).toMatchObject({ error: { code: 'sheet-future' } })
    expect(read('06:59 RO')).toMatchObject({ error: { code: 'sheet-time' } })
    expect(read('06:59 RO', true)).toMatchObject({ value: { paper: { back: true } } })
    expect(read('2026-03-13 23:50 RO', true)).toMatchObject({
      value: { paper: { time: '2026-03-13 23:50' } },
    })
  })

  it('goes on by the day of the last time, and without a day by the hour alone', () => {
    expect(read('00:20 RO', false, { ...AT, last: '2026-03-13 23:50', day: '2026-03-13' })).toMatchObject({
      error: { code: 'sheet-time' },
    })
    expect(read('2026-03-14 00:20 RO', false, { ...AT, last: '2026-03-13 23:50' }).ok).toBe(true)
    const none = { day: null, last: null, now: NOW }
    expect(readSheetLine('23:50 RO', none, false)).toMatchObject({ value: { paper: { time: '23:50' } } })
    expect(readSheetDay('2026-03-14', NOW)).toEqual({ ok: true, value: '2026-03-14' })
    expect(readSheetDay('2026-03-15', NOW)).toMatchObject({ ok: false })
    expect(readSheetDay('14 March', NOW)).toMatchObject({ ok: false })
  })

  it('is so many minutes from another, where both are known', () => {
    expect(minutesOnSheet('2026-03-14 06:52', '2026-03-14 07:40')).toBe(48)
    expect(minutesOnSheet('2026-03-13 23:52', '2026-03-14 00:40')).toBe(48)
    expect(minutesOnSheet('06:52', '07:40')).toBe(48)
    expect(minutesOnSheet('06:52', '2026-03-14 07:40')).toBeNull()
    expect(minutesOnSheet(null, '07:40')).toBeNull()
  })
})

describe('the check mark', () => {
  it('is that of the published hash, and of the files that steps and limits stand in', () => {
    // FNV-1a of no bytes is its offset basis: Fowler, Noll and Vo.
    expect(checkMark([])).toBe('811c9dc5')
    const file = (role: 'procedure' | 'crew', sha256: string) => ({ role, sha256 })
    expect(checkMark([file('procedure', 'a'), file('crew', 'b')])).toBe(checkMark([file('procedure', 'a')]))
    expect(checkMark([file('procedure', 'a')])).not.toBe(checkMark([file('procedure', 'b')]))
  })
})
