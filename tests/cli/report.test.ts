// barover report of a job on disk: in each form, to a file, of one that is open, and of a log that is not sound.
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import { reportSchema } from '../../src/core/report/schema.ts'
import { barover } from '../helpers/cli.ts'
import { finishedJob, laidInto } from '../helpers/finished.ts'
import { terminals } from '../helpers/pty.ts'

const { folder } = terminals()
const done = finishedJob()
const withLog = (bytes = done.bytes) => laidInto(folder(), done, bytes)
const report = (jobs: string, ...more: string[]) =>
  barover(['report', 'TC-401-1-bore', '--jobs', jobs, ...more])
const linesOf = (bytes: Buffer) => bytes.toString('utf8').split('\n').slice(0, -1)
const upTo = (count: number) => Buffer.from(`${linesOf(done.bytes).slice(0, count).join('\n')}\n`)

describe('barover report', () => {
  it('is text unless another form is said, marked on every line, and changes nothing', async () => {
    const { jobs, path } = withLog()
    const { code, out, err } = await report(jobs)
    expect({ code, err }).toEqual({ code: 0, err: '' })
    for (const line of out.slice(0, -1).split('\n')) expect(line).toMatch(/^EXAMPLE .{0,71}$/u)
    expect(out).toContain('closed with MONITOR')
    expect(readFileSync(path)).toEqual(done.bytes)
    expect(readdirSync(dirname(path))).toEqual([done.name])
  })

  it('as JSON has its published shape, the head that closed the job, and what could be checked', async () => {
    const { jobs } = withLog()
    const told = reportSchema.parse(JSON.parse((await report(jobs, '--to', 'json')).out))
    expect(told).toMatchObject({ head: done.head, entries: linesOf(done.bytes).length })
    expect(told.checks.find(({ of }) => of === 'whole')?.says).toMatch(/^unknown: NOT PROVED/)
    const proved = JSON.parse((await report(jobs, '--to', 'json', '--head', done.head)).out) as typeof told
    expect(proved.checks.find(({ of }) => of === 'whole')?.says).toMatch(/^checked/)
  })

  it('as CSV is read by another program, with its figures', async () => {
    const { jobs } = withLog()
    const rows = parse((await report(jobs, '--to', 'csv')).out, { bom: true, columns: true }) as Record<
      string,
      string
    >[]
    const readings = rows.filter(({ what }) => what === 'reading')
    expect(readings.length).toBe(24)
    for (const row of rows) expect(row.record).toBe('EXAMPLE')
    for (const row of readings) {
      const inch = row['value [in]'] ?? ''
      if (inch !== '') expect(Number(row['SI length [m]'])).toBeCloseTo(Number(inch) * 0.0254, 12)
    }
  })

  it('writes a file whole and over nothing unasked; the same log gives the same bytes', {
    timeout: 120_000,
  }, async () => {
    const { jobs } = withLog()
    const at = (name: string) => join(jobs, name)
    const first = await report(jobs, '--to', 'pdf', '--out', at('a.pdf'))
    expect(first).toMatchObject({ code: 0, err: '' })
    expect(first.out).toContain(`EXAMPLE  head     ${done.head}`)
    const bytes = readFileSync(at('a.pdf'))
    expect(bytes.subarray(0, 5).toString()).toBe('%PDF-')
    const again = await report(jobs, '--to', 'html', '--out', at('a.pdf'))
    expect(again).toMatchObject({ code: 4, out: '' })
    expect(again.err).toMatch(/is there already and was left as it is/)
    expect(readFileSync(at('a.pdf'))).toEqual(bytes)
    await barover(['report', 'TC-401-1-bore', '--jobs', jobs, '--to', 'pdf', '--out', at('b.pdf')], {
      env: { TZ: 'Pacific/Auckland', LC_ALL: 'de_DE.UTF-8' },
    })
    expect(readFileSync(at('b.pdf')).equals(bytes)).toBe(true)
    expect((await report(jobs, '--to', 'html', '--out', at('a.pdf'), '--replace')).code).toBe(0)
    expect(readFileSync(at('a.pdf'), 'utf8')).toMatch(/^<!doctype html>/)
    expect(readdirSync(jobs).sort()).toEqual(['a.pdf', 'b.pdf', 'example'])
  })

  it('of a job that is open says OPEN, and ends with 3', async () => {
    const { jobs } = withLog(upTo(30))
    const { code, out } = await report(jobs)
    expect(code).toBe(3)
    expect(out).toMatch(/^EXAMPLE {8}│ EXAMPLE {2}OPEN$/m)
    expect(out).toMatch(/OPEN: the job is not closed/)
  })

  it('of a damaged log, a torn one and one of another head is not made, and says why', async () => {
    const changed = withLog(Buffer.from(done.bytes.toString('utf8').replace('9.5068', '9.5058')))
    const damaged = await report(changed.jobs, '--to', 'html', '--out', join(changed.jobs, 'a.html'))
    expect(damaged).toMatchObject({ code: 4, out: '' })
    expect(damaged.err).toMatch(/^THE LOG IS NOT SOUND: [\s\S]*No report is made of it/)
    expect(readdirSync(changed.jobs)).toEqual(['example'])
    const cut = withLog(done.bytes.subarray(0, done.bytes.length - 9))
    const torn = await report(cut.jobs)
    expect(torn).toMatchObject({ code: 1, out: '' })
    expect(torn.err).toMatch(/unfinished last line[\s\S]*No report is made of it/)
    const { jobs } = withLog()
    const other = await report(jobs, '--head', 'ab'.repeat(32))
    expect(other).toMatchObject({ code: 1, out: '' })
    expect(other.err).toMatch(/^THE LOG IS NOT SOUND: fault: no sound line has the noted check number/)
  })

  it('refuses a form that there is not, and no file to write to', async () => {
    const { jobs } = withLog()
    const form = await report(jobs, '--to', 'docx')
    expect(form).toMatchObject({ code: 2, err: '--to takes text, html, pdf, csv or json, not "docx".\n' })
    expect(await report(jobs, '--out', '')).toMatchObject({ code: 2, out: '' })
    const into = await report(jobs, '--out', join(jobs, 'none', 'a.txt'))
    expect(into).toMatchObject({ code: 4, err: `There is no folder ${join(jobs, 'none')}.\n` })
  })
})
