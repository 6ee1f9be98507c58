// The second example answers file: sizes of a rod, judged by figures, from the command line as a stranger would run it.
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { barover } from '../helpers/cli.ts'
import { ROOT } from '../helpers/example.ts'
import { logged, terminals } from '../helpers/pty.ts'

const { folder } = terminals()

it('an undersize rod that may run on is watched, with limit, source and measuring error on the sheet', async () => {
  const jobs = folder()
  const at = (name: string) => join(ROOT, name)
  const { code, out, err } = await barover([
    'run',
    at('procedures/rod-sizes.yaml'),
    '--machine',
    at('examples/tc-401/machine.yaml'),
    '--answers',
    at('examples/tc-401/rod-answers.txt'),
    '--jobs',
    jobs,
  ])
  expect({ code, err }).toEqual({ code: 0, err: '' })
  expect(out).toMatch(/rod undersize +0\.00376 {2}at most 0\.00500 in {2}75\u00a0%\n/)
  expect(out).toContain('MONITOR; governs; fallback, Bloch and Hoefner 1996, p. 290')
  expect(out).toContain('Nonconformance NC-1, open until a lead decides.')
  expect(out).toContain('Disposition by KH: ACCEPT')
  expect(out).toContain('Verdict MONITOR, accept by KH.')
  expect(logged(jobs).filter((entry) => entry.type === 'verdict.given')).toHaveLength(3)
  for (const line of out.split('\n')) expect(line).toMatch(/^(EXAMPLE .*)?$/)
})
