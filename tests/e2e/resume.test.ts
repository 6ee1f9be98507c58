// Leaving, killing and taking up again: nothing that was shown as saved is lost, and every hold point is asked again.
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync, rmSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { GATE_LINES, withPins } from '../helpers/example.ts'
import { BUNDLE, jobStarter, logged, logPath, plainEnv, TO_BORE, TO_GATE, terminals } from '../helpers/pty.ts'

const terminal = terminals()

const jobAt = jobStarter(terminal)

const resume = (jobs: string) => terminal.start(['resume', logPath(jobs), '--jobs', jobs])
const types = (jobs: string) => logged(jobs).map((entry) => entry.type)

describe('leaving', () => {
  it('says where the job is and takes it up again with its hold point asked whole', async () => {
    const { t, jobs } = await jobAt([...TO_BORE, '9.5033'])
    await t.see('2nd of 2, afresh (in)')
    await t.say('leave')
    await t.see('Leave now?')
    await t.say('1')
    expect(await t.ended()).toEqual({ code: 3, signal: 0 })
    await expect.poll(() => t.all).toContain('Job not finished.')
    // A command that is wider than the screen goes on in the next line, wherever the program and the jobs are.
    expect(t.all.replace(/\s*\\?\r?\n\s*/g, ' ')).toContain(`--jobs ${jobs}`)
    expect(existsSync(`${logPath(jobs)}.lock`)).toBe(false)
    const again = resume(jobs)
    await again.see('Taken up again.')
    await again.see('Who is at the keyboard?')
    await again.sayAll(['RO', '4071'])
    await again.see('Which machine do you stand at now?')
    await again.see('COME OUT AND STAND CLEAR.')
    await again.say('TC-401-1')
    await again.sayAll(['ALL OUT', ...withPins(GATE_LINES.filter((line) => line !== '1'))])
    await again.see('2nd of 2, afresh (in)')
    await again.say('9.5034')
    await again.see('spread 0.0001')
    expect(types(jobs).filter((type) => type === 'gate.opened')).toHaveLength(2)
  })
})

describe('kill -9', () => {
  it('between two readings loses neither the first nor the place', async () => {
    const { t, jobs } = await jobAt([...TO_BORE, '9.5033'])
    await t.see('2nd of 2, afresh (in)')
    const before = readFileSync(logPath(jobs))
    t.kill('SIGKILL')
    expect((await t.ended()).signal).toBe(9)
    expect(readFileSync(logPath(jobs))).toEqual(before)
    const again = resume(jobs)
    await again.see('Who is at the keyboard?')
    await expect.poll(() => again.all).toContain('9.5033 in')
    await again.sayAll(['RO', '4071'])
    await again.see('Which machine do you stand at now?')
    await again.see('COME OUT AND STAND CLEAR.')
    await again.say('TC-401-1')
    await expect.poll(() => again.flow).toContain('the program was interrupted')
    await again.sayAll(['ALL OUT', ...withPins(GATE_LINES.filter((line) => line !== '1'))])
    await again.see('2nd of 2, afresh (in)')
    expect(readFileSync(logPath(jobs)).subarray(0, before.length)).toEqual(before)
    expect(types(jobs).filter((type) => type === 'reading.taken')).toHaveLength(4)
  })

  it('in the middle of a hold point leaves nothing of it standing', async () => {
    const { t, jobs } = await jobAt([...TO_GATE, ...GATE_LINES.slice(0, 12)])
    await t.see('read what can burn')
    t.kill('SIGKILL')
    await t.ended()
    const again = resume(jobs)
    await again.see('Who is at the keyboard?')
    await again.sayAll(['RO', '4071', 'TC-401-1'])
    await again.see('Lock number at main driver breaker')
    await expect.poll(() => again.text).toContain('[void] lock at main driver breaker, E-1')
    expect(types(jobs)).not.toContain('gate.opened')
  })
})

describe('Control-C', () => {
  it('once says how to leave, twice leaves the job as it is and gives the terminal back', async () => {
    const { t, jobs } = await jobAt(TO_GATE)
    await t.see('Lock number')
    t.send('\u0003')
    await t.see('Control-C once more leaves the job.')
    expect(t.exit).toBe(null)
    t.send('\u0003')
    expect(await t.ended()).toEqual({ code: 130, signal: 0 })
    await expect.poll(() => t.isCursorShown).toBe(true)
    await expect.poll(() => t.marksPastes).toBe(false)
    expect(types(jobs).at(-1)).toBe('job.left')
    const again = resume(jobs)
    await again.see('Who is at the keyboard?')
  })
})

describe.each(['SIGTERM', 'SIGHUP'])('%s', (signal) => {
  it('gives the terminal back, lets go of the log and loses nothing', async () => {
    const { t, jobs } = await jobAt([...TO_GATE, 'L-101'])
    await t.see('barring motor breaker')
    const before = readFileSync(logPath(jobs))
    t.kill(signal)
    expect(await t.ended()).toEqual({ code: 130, signal: 0 })
    await expect.poll(() => t.isCursorShown).toBe(true)
    await expect.poll(() => t.marksPastes).toBe(false)
    expect(readFileSync(logPath(jobs))).toEqual(before)
    expect(existsSync(`${logPath(jobs)}.lock`)).toBe(false)
  })
})

describe('two sessions', () => {
  it('on one job: the second is refused in one sentence, and the first goes on', async () => {
    const { t, jobs } = await jobAt(TO_GATE)
    await t.see('Lock number')
    const second = spawnSync(process.execPath, [BUNDLE, 'resume', logPath(jobs)], {
      env: plainEnv(),
      encoding: 'utf8',
    })
    expect(second.status).toBe(4)
    expect(second.stderr.trim().split('\n')).toHaveLength(1)
    expect(second.stderr).toContain(`is being written by process ${t.pid}`)
    await t.say('L-101')
    await t.see('[x] lock at main driver breaker, E-1  L-101')
  })

  it('from the menu too, a job in hand is refused with the screen given back', async () => {
    const { t, jobs } = await jobAt(TO_GATE)
    await t.see('Lock number')
    const menu = terminal.start(['--jobs', jobs])
    await menu.see('Take up a job that was left (1)')
    menu.send('1')
    await menu.see(/no\. │ 1/)
    menu.send('\r')
    await menu.see('Take up which job?')
    menu.send('1')
    await menu.see(/no\. │ 1/)
    menu.send('\r')
    expect((await menu.ended()).code).toBe(4)
    await expect.poll(() => menu.flow).toContain('is being written by process')
  })
})

describe('a log that is taken from under the program', () => {
  it('ends the job with one sentence about the file, not as a fault of the program', async () => {
    const { t, jobs } = await jobAt(TO_GATE)
    await t.see('Lock number')
    rmSync(`${logPath(jobs)}.lock`)
    t.send('L-101')
    await t.until('L-101 on the line', () => t.input === 'L-101')
    t.send('\r')
    expect((await t.ended()).code).toBe(4)
    expect(t.all).not.toContain('A fault in Barover itself')
    await expect.poll(() => t.isCursorShown).toBe(true)
    expect(readFileSync(logPath(jobs), 'utf8')).not.toContain('L-101')
  })
})
