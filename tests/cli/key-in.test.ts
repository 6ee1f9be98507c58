// barover key-in: a sheet keyed in, left and taken up again as the same.
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { barover, MACHINE } from '../helpers/cli.ts'
import { FRONT_LINES, MARKS, permitLines } from '../helpers/filled-sheet.ts'
import { terminals } from '../helpers/pty.ts'

const { folder } = terminals()
const keyIn = (procedure: string, jobs: string, ...more: string[]) =>
  barover(['key-in', procedure, '--machine', MACHINE, '--jobs', jobs, ...more])

it('opens a job from paper, which is taken up as that and nothing else', async () => {
  const jobs = folder()
  const answers = join(jobs, 'sheet.txt')
  writeFileSync(answers, ['RO', '4071', MARKS, '2', ...FRONT_LINES.slice(1), 'leave'].join('\n'))
  // Files in memory have no hash: the foot is another than that of those on disk, and stands so.
  const first = await keyIn('bore-inspection', jobs, '--clock', '2026-03-14 16:20', '--answers', answers)
  expect([first.code, first.err]).toEqual([3, ''])
  const lines = first.out.split('\n').filter((line) => line.trim() !== '')
  expect(lines.filter((line) => !line.startsWith('EXAMPLE from paper'))).toEqual([])
  expect(first.out).toContain('From paper: gates not enforced by Barover.')
  writeFileSync(answers, ['RO', '4071', '06:31 RO', ...permitLines()].join('\n'))
  const again = await barover(['resume', 'bore', '--jobs', jobs, '--answers', answers])
  expect(again.out).toMatch(/oxygen inside the opening: 20\.8 G-7/)
  expect(again.out).not.toMatch(/HOLD POINT COMPLETE|may go in/i)
})
