// Commands in hints, as they can be typed where they are read.
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { barover } from '../helpers/cli.ts'
import { ROOT } from '../helpers/example.ts'

describe('a hint', () => {
  it('names the program as it was started', async () => {
    const { err } = await barover(['show', 'no-such-job', '--jobs', '/no/folder'])
    expect(err).toMatch(/^node \S*dist\/barover\.mjs jobs lists them\.$/m)
  })

  it('says npm start where npm started it from this clone, and not where it runs under another', async () => {
    const env = { npm_lifecycle_event: 'start', npm_package_json: join(ROOT, 'package.json') }
    const { err } = await barover(['show', 'no-such-job', '--jobs', '/no/folder'], { env })
    expect(err).toMatch(/^npm start -- jobs lists them\.$/m)
    const other = { ...env, npm_package_json: '/elsewhere/package.json' }
    const there = await barover(['show', 'no-such-job', '--jobs', '/no/folder'], { env: other })
    expect(there.err).not.toContain('npm start')
  })
})
