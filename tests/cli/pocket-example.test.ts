// The answers file of the load question, from the command line as a stranger would run it.
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { barover } from '../helpers/cli.ts'
import { ROOT } from '../helpers/example.ts'
import { logged, terminals } from '../helpers/pty.ts'

const { folder } = terminals()

it('an overloaded motor is brought under its target by the pocket, on a lead’s decision and order', async () => {
  const jobs = folder()
  const at = (name: string) => join(ROOT, name)
  const { code, out, err } = await barover([
    'run',
    at('procedures/pocket-load.yaml'),
    '--machine',
    at('examples/rg-27/machine.yaml'),
    '--answers',
    at('examples/rg-27/pocket-load-answers.txt'),
    '--jobs',
    jobs,
  ])
  expect({ code, err }).toEqual({ code: 0, err: '' })
  expect(out).toMatch(/SET +57 % +13\.75 +94\.7 % +213\.7 +73 % +173 deg +109 +clear\n/)
  expect(out).toMatch(/Set the pocket to 13\.75 turns from shut, 57\.3 % open/)
  expect(out).toContain('Target = rating x (1 - margin) = 225.0 kW x 0.950 = 213.8 kW')
  expect(out).toContain('Disposition by VN: REWORK')
  expect(out).toContain('Order for the pocket: Set it as recommended')
  expect(out).toContain('Load and pocket judged: REWORK, rework by VN')
  expect(logged(jobs).filter((entry) => entry.type === 'verdict.given')).toHaveLength(1)
  for (const line of out.split('\n')) expect(line).toMatch(/^(EXAMPLE .*)?$/)
})
