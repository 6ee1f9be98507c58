import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { readArgs } from '../../src/cli/args.ts'
import { computeCommand } from '../../src/cli/commands/compute.ts'
import { EXIT } from '../../src/cli/exit.ts'
import { UserError } from '../../src/node/user-error.ts'

let printed = ''
beforeEach(() => {
  printed = ''
  vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    printed += String(text)
    return true
  })
})
afterEach(() => vi.restoreAllMocks())

/** As the command line does it: options and words read from one list. */
async function run(...args: string[]): Promise<number> {
  const { values, positionals } = readArgs(computeCommand, args)
  return computeCommand.run(values, positionals)
}
async function wrongUse(...args: string[]): Promise<UserError> {
  const error = await run(...args).then(
    () => undefined,
    (thrown: unknown) => thrown,
  )
  if (!(error instanceof UserError)) throw new Error(`not refused as wrong use: ${String(error)}`)
  expect(error.exitCode).toBe(EXIT.wrongUse)
  expect(printed).toBe('')
  return error
}
const WEAR = ['wear-rate', 'readings=9.5000 9.5031 in', 'hours=0 8200 h', 'u=0.0003 in', 'wears=larger']

describe('barover compute', () => {
  test('alone lists all by group', async () => {
    expect(await run()).toBe(EXIT.done)
    expect(printed).toMatch(/^Bore and liner\n/)
    expect(printed).toMatch(/\nWear over time\n {2}wear-rate /)
    expect(printed).toContain('barover compute NAME key=value ... works it out')
  })

  test('NAME shows what it takes, units and an example', async () => {
    expect(await run('hours-left')).toBe(EXIT.done)
    expect(printed).toContain('Takes\n')
    expect(printed).toContain('h unless said')
    expect(printed).toContain('Example\n  barover compute hours-left ')
  })

  test('NAME key=value works it out, quoted or not', async () => {
    expect(await run(...WEAR, 'renewed=nothing')).toBe(EXIT.done)
    const quoted = printed
    printed = ''
    expect(await run(...WEAR.flatMap((word) => word.split(' ')), 'renewed=nothing')).toBe(EXIT.done)
    expect(printed).toBe(quoted)
    expect(printed).toContain('= 0.000378 in per 1000 h')
    expect(printed).toContain('Sources\n')
  })

  test('refused by the computation: one sentence and exit 1, no figure', async () => {
    expect(await run(...WEAR, 'renewed=reline')).toBe(EXIT.checkFailed)
    expect(printed).toMatch(/^Not worked out: .*\nHOLD: between 0 h and 8200 h the part was relined/)
    expect(printed).not.toContain('Result')
  })

  test('--json: worked out, refused, listed and described as one object each', async () => {
    const json = async (...args: string[]) => {
      printed = ''
      const code = await run(...args, '--json')
      expect(printed.trim().split('\n')).toHaveLength(1)
      return [code, JSON.parse(printed)] as const
    }
    const [done, result] = await json(...WEAR, 'renewed=nothing')
    expect(done).toBe(EXIT.done)
    expect(result.outputs.per_1000h.value).toBeCloseTo(0.000378, 6)
    expect(result.sources.length).toBeGreaterThan(0)
    const [refused, why] = await json(...WEAR, 'renewed=reline')
    expect(refused).toBe(EXIT.checkFailed)
    expect(why).toMatchObject({ computation: 'wear-rate', refused: { code: 'renewed-between' } })
    const [, groups] = await json()
    expect(groups.length).toBeGreaterThan(1)
    const [, one] = await json('wear-rate')
    expect(one.example.length).toBeGreaterThan(0)
  })

  test('--ascii shows nothing else, whatever the computation says', async () => {
    expect(await run('--ascii')).toBe(EXIT.done)
    expect(printed).toMatch(/^[\x20-\x7e\n]*$/)
  })

  test.each([
    [['wear-rats'], 'did you mean wear-rate?'],
    [[...WEAR, 'renewd=nothing'], 'did you mean renewed?'],
    [[...WEAR], 'wear-rate also needs renewed.'],
    [['wear-rate', 'loose'], 'does not say what it is'],
    [['difference', 'a=9.5 psi'], 'a: '],
  ])('%o is wrong use: exit 2', async (args, say) => {
    expect((await wrongUse(...args)).message).toContain(say)
  })
})
