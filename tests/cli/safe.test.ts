// barover safe: the sheet without a job, whatever is wrong with the files.
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { barover, MACHINE, runArgs } from '../helpers/cli.ts'
import { terminals } from '../helpers/pty.ts'

const { folder } = terminals()

describe('barover safe', () => {
  it('needs nothing at all', async () => {
    const { code, out } = await barover(['safe'])
    expect(code).toBe(0)
    expect(out).toMatch(/^MAKE SAFE/)
    expect(out).toContain('the site permit names them')
  })

  it('adds contacts and rescue plan of a machine record', async () => {
    const { code, out } = await barover(['safe', '--machine', MACHINE])
    expect(code).toBe(0)
    expect(out).toContain('6  Call: Radio channel 1')
    expect(out).toContain('air packs')
  })

  it('shows them from a record that holds no more than that', async () => {
    const path = join(folder(), 'machine.yaml')
    writeFileSync(
      path,
      'site:\n  emergency: Call \\e[2J channel 9.\n  rescue: [Two with air., 7]\nbore: 3 furlongs\n',
    )
    const { code, out } = await barover(['safe', '--machine', path])
    expect(code).toBe(0)
    expect(out).toContain('channel 9.')
    expect(out).toContain('Two with air.')
  })

  it('prints what always holds before it says that a file is missing', async () => {
    const { code, out, err } = await barover(['safe', '--machine', '/nowhere.yaml'])
    expect(code).toBe(4)
    expect(out).toContain('Come out, everybody')
    expect(err).toContain('there is no such file')
  })

  it('shows the locks of a job, and writes nothing to it', async () => {
    const jobs = folder()
    await barover(runArgs(jobs), { input: 'RO\n4071\nTC-401-1\ndone\nL-101\nleave\n' })
    const before = await barover(['verify', 'TC-401', '--jobs', jobs, '--json'])
    const { code, out } = await barover(['safe', 'TC-401', '--jobs', jobs])
    expect(code).toBe(0)
    expect(out).toContain('L-101  main driver breaker, E-1')
    expect((await barover(['verify', 'TC-401', '--jobs', jobs, '--json'])).out).toBe(before.out)
  })
})
