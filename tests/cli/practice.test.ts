// A whole practice session from the command line, its answers those of a trainee who looks; and what is no session.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { barover } from '../helpers/cli.ts'
import { Walk } from '../helpers/example.ts'
import { terminals } from '../helpers/pty.ts'
import { careful, seedHiding, session } from '../helpers/trainees.ts'

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
