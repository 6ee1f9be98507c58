// A sheet of the metric machine keyed in by the command line as a person would, line by line, then looked at with every command that
// a lead has: review, the five forms of a report, history.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { FileCopy } from '../../src/core/job/entries.ts'
import { checkMark } from '../../src/core/job/paper.ts'
import { barover } from '../helpers/cli.ts'
import { ROOT, Walk } from '../helpers/example.ts'
import { logPath } from '../helpers/pty.ts'
import { shippedDefs } from '../helpers/shipped-jobs.ts'
import { transcribed } from '../helpers/transcribed.ts'
import { playAnswers } from '../helpers/walked.ts'

const MACHINE = join(ROOT, 'examples', 'rg-27', 'machine.yaml')
/** Printed in the crew file of the example, for everybody. */
const CREW = readFileSync(join(ROOT, 'examples', 'rg-27', 'crew.yaml'), 'utf8')
const pinOf = (person: string) => new RegExp(`\\b${person} (\\d{4,})`).exec(CREW)?.[1] ?? 'none'

let jobs = ''
let keyedIn = { code: null as number | null, out: '', err: '' }

beforeAll(async () => {
  const live = playAnswers(new Walk(shippedDefs('pocket-load.yaml', 'rg-27')), [
    'rg-27',
    'pocket-load-answers.txt',
  ])
  const sheet = transcribed(live, { decides: 'VN', compares: 'LP' })
  expect(sheet.state.closed).not.toBeNull()
  const lines = sheet.keyed.map((line) => (line.startsWith('PIN ') ? pinOf(line.slice(4)) : line))
  jobs = mkdtempSync(join(tmpdir(), 'barover-key-in-'))
  const mark = await markOfFiles()
  // In memory the files have no hash: the foot of a sheet printed from those on disk is another.
  keyedIn = await keyIn(
    jobs,
    [...lines].map((line) => (line === sheet.state.paper?.mark ? mark : line)),
  )
}, 120_000)

afterAll(() => rmSync(jobs, { recursive: true, force: true }))

function keyIn(into: string, lines: readonly string[]) {
  const answers = join(into, 'sheet.txt')
  writeFileSync(answers, lines.join('\n'))
  const sheet = ['key-in', 'pocket-load', '--machine', MACHINE, '--jobs', into]
  return barover([...sheet, '--clock', '2026-05-20 08:00', '--answers', answers])
}

/** As it stands at the foot of a sheet printed from these files. */
async function markOfFiles(): Promise<string> {
  const into = mkdtempSync(join(tmpdir(), 'barover-key-in-'))
  await keyIn(into, ['leave'])
  const [first = ''] = readFileSync(logPath(into), 'utf8').split('\n')
  rmSync(into, { recursive: true })
  return checkMark((JSON.parse(first) as { files: FileCopy[] }).files)
}

const run = (command: string, ...more: string[]) => barover([command, ...more, '--jobs', jobs])

describe('a sheet of the metric machine, keyed in by the command line', () => {
  it('comes to its close, and every line says from paper', () => {
    expect(keyedIn.err).toBe('')
    const lines = keyedIn.out.split('\n').filter((line) => line.trim() !== '')
    expect(lines.filter((line) => !line.startsWith('EXAMPLE from paper'))).toEqual([])
    expect(keyedIn.out).toMatch(/Job closed/)
  })

  it('is reviewed as what it is, and answers for itself', async () => {
    const { out, code } = await run('review', 'pocket')
    expect([0, 3]).toContain(code)
    expect(out).toMatch(/1 .* From paper: gates not enforced by Barover/)
    expect(out).not.toMatch(/undefined|NaN|\[object/)
    const asked = await barover(['review', 'pocket', '--jobs', jobs, '--act', '--plain'], {
      input: 'is it safe to run\nwho signed\nleave\n',
    })
    expect(asked.out).toMatch(/No record tells that, and this one does not/)
    expect(asked.out).toMatch(/VN: \d+ signatures/)
  }, 60_000)

  it.each(['text', 'html', 'pdf', 'csv', 'json'] as const)(
    'is reported as %s, marked as from paper',
    async (form) => {
      const out = join(jobs, `report.${form}`)
      const ran = await run('report', 'pocket', '--to', form, '--out', out)
      expect([0, 3]).toContain(ran.code)
      const bytes = readFileSync(out)
      if (form === 'pdf') {
        expect(bytes.subarray(0, 5).toString()).toBe('%PDF-')
        return
      }
      const text = bytes.toString('utf8')
      expect(text).toMatch(form === 'json' ? /"paper":true/ : /from paper/)
      expect(text).not.toMatch(/undefined|NaN|\[object/)
    },
    60_000,
  )

  it('stands in the history as from paper', async () => {
    const { out, code } = await barover(['history', jobs, '--record', 'example'])
    expect(code).toBe(0)
    expect(out).toMatch(/1 job from paper, gates not\s+(?:EXAMPLE\s+[│|]\s+)?enforced by Barover/)
    expect(out).toContain('RG-27-1')
  })
})
