// A start that was tried to see the driver stay still leaves its control where a lock that comes off would start it: 29 CFR 1910.147, Appendix A.
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { parse } from 'yaml'
import { ROOT } from '../helpers/example.ts'

interface Asked {
  readonly words?: string
  readonly ask?: string
}

it('wherever a start is tried, its control goes back to off before it is said to have failed', () => {
  const folder = join(ROOT, 'procedures')
  const asked = readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .flatMap((name) => {
      const { steps = [] } = parse(readFileSync(join(folder, name), 'utf8')) as {
        steps?: readonly { readonly evidence?: readonly Asked[] }[]
      }
      return steps.flatMap(({ evidence = [] }) => evidence.filter(({ words }) => words === 'NO START'))
    })
  expect(asked.length).toBeGreaterThan(1)
  for (const { ask } of asked) expect(ask).toMatch(/try to start the driver; set it back to off\. Only if/i)
})
