// A whole practice session from the command line, its answers those of a trainee who looks; and what is no session.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { readDefinition } from '../../src/authoring/definition-file.ts'
import { EDITION } from '../../src/core/practice/edition.ts'
import { barover } from '../helpers/cli.ts'
import { ROOT, Walk } from '../helpers/example.ts'
import { terminals } from '../helpers/pty.ts'
import { careful, practiceDefs, seedHiding, session, sessionOf } from '../helpers/trainees.ts'

const { folder } = terminals()

/** Every line that a session took, PINs with them. */
function keyedBy(run: () => unknown): readonly string[] {
  const lines: string[] = []
  const { key } = Walk.prototype
  Walk.prototype.key = function (line: string) {
    lines.push(line)
    return key.call(this, line)
  }
  try {
    run()
  } finally {
    Walk.prototype.key = key
  }
  return lines
}

it('comes to the sheet that its answers are worth, PRACTICE on every line, and nothing beside its own folder', async () => {
  const jobs = folder()
  const seed = seedHiding('barrel', 1)
  const sessions: ReturnType<typeof session>[] = []
  const lines = keyedBy(() => sessions.push(session(seed, 1, careful)))
  const answers = join(jobs, 'answers.txt')
  writeFileSync(
    answers,
    `clock 2026-03-14 06:20+00:00\nstep 10 s\n${lines.map((line) => line || 'done').join('\n')}\n`,
  )
  const called = ['practice', '--seed', String(seed), '--level', '1', '--answers', answers, '--jobs', jobs]
  const { code, out, err } = await barover(called)
  expect({ code, err }).toEqual({ code: 0, err: '' })
  expect(out).toContain('Safety, apart from all else: PASSED')
  expect(out).toContain('Hidden: The bore is wider in the middle: a barrel; named')
  expect(out).toContain('( PASSED )')
  for (const line of out.split('\n')) expect(line).toMatch(/^(PRACTICE .*)?$/)
  const [log, ...others] = readdirSync(join(jobs, 'practice'))
  expect(others).toEqual([])
  const entries = readFileSync(join(jobs, 'practice', log ?? ''), 'utf8')
    .trim()
    .split('\n')
    .map((line): { type: string } => JSON.parse(line))
  // The same machine and the same figures, entry by entry.
  const asked = (entries: readonly { type: string }[]) =>
    entries.filter(({ type }) => type === 'practice.asked')
  expect(asked(entries).map((one) => ('shown' in one ? one.shown : ''))).toEqual(
    asked(sessions[0]?.walk.entries ?? []).map((one) => ('shown' in one ? one.shown : '')),
  )
})

it('works a scenario, keeps progress for whoever practised, and tells of it in the report and in no history', {
  timeout: 240_000,
}, async () => {
  const jobs = folder()
  const file = join(ROOT, 'examples/scenarios/one-end-wider.yaml')
  const practice = { seed: 2041, level: 2 as const, edition: EDITION }
  const read = readDefinition(readFileSync(file, 'utf8'), file)
  if (!read.ok || read.kind !== 'scenario') throw new Error('no scenario')
  const defs = { ...practiceDefs(), scenario: read.value }
  const lines = keyedBy(() => sessionOf(defs, practice, careful))
  const answers = join(jobs, 'answers.txt')
  writeFileSync(
    answers,
    `clock 2026-03-14 06:20+00:00\nstep 10 s\n${lines.map((line) => line || 'done').join('\n')}\n`,
  )
  const { code, out, err } = await barover(['practice', file, '--answers', answers, '--jobs', jobs])
  expect({ code, err }).toEqual({ code: 0, err: '' })
  expect(out).toContain('Scenario: The cylinder that ran warm at one end. All of it is')
  expect(out).toContain('Expected: Bore judged: REWORK, taper governs; found')
  for (const line of out.split('\n')) expect(line).toMatch(/^(PRACTICE .*)?$/)

  const progress = await barover(['practice', '--progress', '--json', '--jobs', jobs])
  expect(JSON.parse(progress.out)).toMatchObject({
    people: [{ who: 'RO', sessions: [{ isPassed: true, scenario: { id: 'one_end_wider' } }] }],
  })
  const other = await barover(['practice', '--progress', '--who', 'ts', '--json', '--jobs', jobs])
  expect(JSON.parse(other.out)).toMatchObject({ people: [{ who: 'TS', sessions: [] }] })

  const [log = ''] = readdirSync(join(jobs, 'practice'))
  const id = log.replace('.practice.jsonl', '')
  const report = await barover(['report', id, '--to', 'json', '--jobs', jobs])
  expect(JSON.parse(report.out)).toMatchObject({
    record: 'PRACTICE',
    practice: { who: 'RO', isPassed: true, scenario: 'The cylinder that ran warm at one end' },
  })
  const review = await barover(['review', id, '--jobs', jobs])
  expect(review.err).toBe('')
  expect(review.out).toContain('taper')
  for (const line of review.out.trimEnd().split('\n')) expect(line).toMatch(/^(PRACTICE .*|PRACTICE)?$/)
  const page = await barover(['report', id, '--to', 'html', '--jobs', jobs])
  expect(page.out).toMatch(/<title>[^<]*PRACTICE/)
  expect(page.out).toContain('this is no record of work on a machine')
  for (const record of ['real', 'example', 'practice']) {
    const history = await barover(['history', jobs, '--record', record, '--to', 'json'])
    expect(JSON.parse(history.out)).toMatchObject({ jobs: 0, machines: [], unread: [] })
  }
})

it.each([
  [['--seed', '3'], 2],
  [['--machine', 'examples/tc-401/machine.yaml'], 2],
] as const)('takes nothing beside a scenario: %j', async (more, code) => {
  const file = join(ROOT, 'examples/scenarios/quiet-meter.yaml')
  const ran = await barover(['practice', file, ...more, '--jobs', folder()])
  expect([ran.code, ran.out]).toEqual([code, ''])
  expect(ran.err).toContain('A scenario says itself what is practised')
})

it('shows no scenario to a job, of whatever kind', async () => {
  const file = join(ROOT, 'examples/scenarios/quiet-meter.yaml')
  const machine = join(ROOT, 'examples/tc-401/machine.yaml')
  for (const as of ['practice', 'example', 'real']) {
    const ran = await barover(['run', file, '--machine', machine, '--as', as, '--jobs', folder()])
    expect(ran.code).toBe(1)
    expect(ran.err).toContain('other-kind')
  }
})
