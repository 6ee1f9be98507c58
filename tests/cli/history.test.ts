// barover history over a folder: one whole log, one that is damaged, and a page that is written over nothing.
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { ANSWERS, barover, runArgs } from '../helpers/cli.ts'
import { logPath } from '../helpers/pty.ts'

let jobs = ''

beforeAll(async () => {
  jobs = mkdtempSync(join(tmpdir(), 'barover-history-'))
  await barover(runArgs(jobs, '--answers', ANSWERS))
}, 60_000)

afterAll(() => rmSync(jobs, { recursive: true, force: true }))

it('tells of a folder of jobs, names a log that is damaged, and ends with 1 for it', async () => {
  const whole = await barover(['history', jobs, '--record', 'example', '--to', 'json'])
  expect(whole.code).toBe(0)
  expect(JSON.parse(whole.out)).toMatchObject({
    jobs: 1,
    machines: [{ machine: 'TC-401-1', jobs: 1, last: { outcome: 'MONITOR' } }],
    unread: [],
  })
  const real = await barover(['history', jobs, '--to', 'json'])
  expect(JSON.parse(real.out)).toMatchObject({ record: 'REAL', jobs: 0, machines: [] })
  const path = logPath(jobs)
  const lines = readFileSync(path, 'utf8').split('\n')
  writeFileSync(
    join(dirname(path), 'broken.example.jsonl'),
    [...lines.slice(0, 5), 'x', ...lines.slice(6)].join('\n'),
  )
  const page = join(jobs, 'history.html')
  const broken = await barover(['history', jobs, '--record', 'example', '--to', 'html', '--out', page])
  expect([broken.code, existsSync(page)]).toEqual([1, true])
  expect(readFileSync(page, 'utf8')).toMatch(/broken: damaged at line 6/)
  const again = await barover(['history', jobs, '--record', 'example', '--out', page])
  expect([again.code, again.err.includes('is there already')]).toEqual([4, true])
}, 60_000)
