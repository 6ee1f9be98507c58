// The example without a terminal, answers from pipes and files, and the exit code of each ending.
import { spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { chmodSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { ANSWERS, barover, runArgs } from '../helpers/cli.ts'
import { BUNDLE, logged, logPath, plainEnv, terminals } from '../helpers/pty.ts'
import { exampleAnswers } from '../helpers/walked.ts'

const { folder, start } = terminals()

describe('without a terminal', () => {
  it('barover alone says what can be done, begins nothing and writes nothing', async () => {
    const cwd = folder()
    for (const args of [[], ['--jobs', cwd], ['--json']]) {
      const { code, out, err } = await barover(args, { cwd })
      expect({ code, err }).toEqual({ code: 0, err: '' })
      if (args[0] === '--json') expect(JSON.parse(out)).toEqual({ began: false, open: [] })
      else expect(out).toContain('Nothing was begun and nothing written.')
    }
    expect(readdirSync(cwd)).toEqual([])
  })

  it('what it names to be typed runs the example to its verdict', async () => {
    const cwd = folder()
    const { out: says } = await barover([], { cwd })
    const line = /^ {2}(\S.* run .*answers\.txt)$/m.exec(says)?.[1] ?? ''
    const jobs = join(cwd, 'jobs')
    // As it stands, by a shell, from where it was printed.
    const ran = spawnSync('sh', ['-c', line], { cwd, env: plainEnv(), encoding: 'utf8' })
    expect({ code: ran.status, err: ran.stderr }).toEqual({ code: 0, err: '' })
    const out = ran.stdout
    expect(out).toContain('( MONITOR )')
    expect(out).toContain('Verdict MONITOR, accept by KH.')
    expect(logged(jobs).at(-1)?.type).toBe('job.closed')
    // Nothing is drawn over, and the word of the record stands on every line that says anything.
    expect(out).not.toContain('\u001b')
    for (const line of out.split('\n')) expect(line).toMatch(/^(EXAMPLE .*)?$/)
  })

  it('gives the same log each time but for its name and hashes', async () => {
    const [a, b] = [folder(), folder()]
    await Promise.all([a, b].map((jobs) => barover(runArgs(jobs, '--answers', ANSWERS))))
    const bare = (jobs: string) =>
      logged(jobs).map(({ prev: _p, hash: _h, job: _j, zone: _z, ...rest }) => rest)
    expect(bare(a)).toEqual(bare(b))
  })

  it('takes answers from a pipe and prints each prompt in full', async () => {
    const jobs = folder()
    const input = `${exampleAnswers().join('\n')}\n`
    const { code, out } = await barover(runArgs(jobs, '--clock', '2026-03-14 06:20'), { input })
    expect(code).toBe(0)
    expect(out).toContain('Hazard: A start, a turn of the crank')
    expect(out).toContain('Asked: the number: lock at main driver breaker, E-1.')
    expect(out).toContain('Its answers came from a file or a pipe')
    expect(logged(jobs).at(-1)).toMatchObject({ type: 'job.closed', outcome: 'MONITOR' })
  })

  it('leaves a job resumable when the answers run out, and goes on from a second file', async () => {
    const jobs = folder()
    const [first, second] = [join(folder(), 'first'), join(folder(), 'second')]
    writeFileSync(first, 'clock 2026-03-14 06:20\nstep 20 s\nRO\n4071\nTC-401-1\ndone\nL-101\n')
    const left = await barover(runArgs(jobs, '--answers', first))
    expect(left.code).toBe(3)
    expect(left.out).toContain('Job not finished.')
    expect(left.out).toContain(`--jobs ${jobs}`)
    const rest = exampleAnswers().slice(4)
    writeFileSync(second, `step 20 s\nRO\n4071\nTC-401-1\n${rest.join('\n')}\n`)
    const done = await barover(['resume', 'bore-inspection', '--jobs', jobs, '--answers', second])
    expect(done.code).toBe(0)
    expect(done.out).toContain('Taken up again.')
    expect(done.out).toContain('Verdict MONITOR')
    const closed = await barover(['resume', 'bore-inspection', '--jobs', jobs])
    expect(closed).toMatchObject({ code: 1, out: '' })
    expect(closed.err).toContain('is closed: there is nothing to take up.')
  })

  it('ends with 3 under STOP', async () => {
    const answers = join(folder(), 'answers')
    writeFileSync(answers, 'clock 2026-03-14 06:20\nRO\n4071\nTC-401-1\nstop\nA valve hissed\n')
    const { code, out } = await barover(runArgs(folder(), '--answers', answers))
    expect(code).toBe(3)
    expect(out).toContain('Job not finished, under STOP.')
  })

  it('gives one JSON object and nothing else with --json', async () => {
    const { code, out } = await barover(runArgs(folder(), '--answers', ANSWERS, '--json'))
    expect(code).toBe(0)
    expect(JSON.parse(out)).toMatchObject({
      record: 'EXAMPLE',
      finished: true,
      verdict: 'MONITOR',
      dispositions: [{ choice: 'accept', by: 'KH' }],
      head: expect.stringMatching(/^[0-9a-f]{64}$/),
    })
  })

  it('ends with 3 when the job is closed with HOLD', async () => {
    const answers = join(folder(), 'answers')
    const [before, after] = readFileSync(ANSWERS, 'utf8').split('\n9.5001\n')
    const rest = (after ?? '').replace('\nwhy\n1\n', '\n2\n')
    writeFileSync(answers, `${before}\nn/a\nThe standard was dropped\n${rest}`)
    const { code, out } = await barover(runArgs(folder(), '--answers', answers))
    expect(out).toContain('Job closed with HOLD')
    expect(code).toBe(3)
  })

  it('ends with 3, not 0, when the reader of a job in hand goes away', async () => {
    const args = runArgs(folder(), '--clock', '2026-03-14 06:20')
    const child = spawn(process.execPath, [BUNDLE, ...args], { env: plainEnv() })
    let err = ''
    child.stderr.on('data', (text) => {
      err += text
    })
    child.stdout.once('data', () => {
      child.stdout.destroy()
      child.stdin.write('RO\n')
    })
    const [code] = (await once(child, 'close')) as [number | null]
    expect({ code, err }).toEqual({ code: 3, err: '' })
  })
})

describe('plain lines on a terminal', () => {
  it.each([
    ['CI is set', { CI: 'true' }, []],
    ['CI is set to nothing', { CI: '' }, []],
    ['CONTINUOUS_INTEGRATION is set', { CONTINUOUS_INTEGRATION: '1' }, []],
    ['TERM is dumb', { TERM: 'dumb' }, []],
    ['--plain is given', {}, ['--plain']],
  ] as const)('when %s', async (_, env, more) => {
    const jobs = folder()
    const t = start([...runArgs(jobs, '--clock', '2026-03-14 06:20'), ...more], { env })
    await t.see('Your initials')
    t.send('RO\r')
    await t.see('PIN of RO')
    t.send('4071\r')
    await t.see('RO, R. Oduya, signed on')
    await t.see('Read the tag plate ON THE CYLINDER')
    // No cursor was hidden and no line drawn over.
    expect(t.raw).not.toContain('\u001b[')
    expect(logged(jobs).at(-1)?.type).toBe('person.signed-on')
  })

  it('still draws when CI says false', async () => {
    const t = start([...runArgs(folder(), '--clock', '2026-03-14 06:20')], { env: { CI: 'false' } })
    await t.see('Your initials')
    expect(t.raw).toContain('\u001b[?25l')
  })
})

describe('a folder of jobs nobody may write to', () => {
  it('is told in one sentence', async () => {
    const jobs = folder()
    chmodSync(jobs, 0o555)
    // The superuser may write everywhere, so somebody else is asked to.
    const uid = process.getuid?.() === 0 ? { uid: 65_534 } : {}
    const ran = await barover(runArgs(jobs), { ...uid, cwd: '/' })
    chmodSync(jobs, 0o755)
    expect(ran).toMatchObject({ code: 4, out: '' })
    expect(ran.err.trim().split('\n')).toHaveLength(1)
  })

  it('of an existing job: taking it up is refused, showing it works', async () => {
    const jobs = folder()
    const answers = join(folder(), 'answers')
    writeFileSync(answers, 'clock 2026-03-14 06:20\nRO\n4071\nTC-401-1\n')
    await barover(runArgs(jobs, '--answers', answers))
    chmodSync(jobs, 0o755)
    chmodSync(join(jobs, 'example'), 0o555)
    const call = { ...(process.getuid?.() === 0 ? { uid: 65_534 } : {}), cwd: '/' }
    const before = readFileSync(logPath(jobs))
    chmodSync(logPath(jobs), 0o444)
    const [taken, shown] = await Promise.all([
      barover(['resume', logPath(jobs), '--answers', ANSWERS], call),
      barover(['show', logPath(jobs)], call),
    ])
    expect(taken.code).toBe(4)
    expect(taken.err.trim().split('\n')).toHaveLength(1)
    expect(shown.code).toBe(0)
    expect(readFileSync(logPath(jobs))).toEqual(before)
    chmodSync(join(jobs, 'example'), 0o755)
  })
})
