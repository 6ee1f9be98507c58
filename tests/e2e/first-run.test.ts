// The first minutes with Barover in a real terminal, and a whole job walked by keys to its verdict.
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { EXAMPLE_RUN, logged, TO_BORE, terminals } from '../helpers/pty.ts'
import { exampleAnswers } from '../helpers/walked.ts'

const terminal = terminals()

describe('the first run', () => {
  it('goes from the menu to the first reading', async () => {
    const jobs = terminal.folder()
    const t = terminal.start(['--jobs', jobs])
    await t.see('Start the example job')
    await expect.poll(() => t.text).toContain('New here? 2, then RO')
    await expect.poll(() => t.text).toContain('0 │ Leave')
    t.send('7')
    await t.see(/no\. │ 7/)
    t.send('\r')
    await t.see('Key a number, 1 to 5, or 0 to leave.')
    t.send('2')
    await t.see(/no\. │ 2/)
    t.send('\r')
    await t.see('Who is at the keyboard?')
    await t.sayAll(TO_BORE)
    await t.see('Reading (in) with M-3')
    await t.say('9.5033')
    await t.see('2nd of 2, afresh (in)')
    const readings = logged(jobs).filter((e) => e.type === 'reading.taken')
    expect(readings.at(-1)).toMatchObject({ typed: '9.5033', value: 9.5033, unit: 'in', by: 'RO' })
  })

  it('can be left from the menu', async () => {
    const t = terminal.start(['--jobs', terminal.folder()])
    await t.see('Start the example job')
    t.send('0')
    await t.see(/no\. │ 0/)
    t.send('\r')
    expect(await t.ended()).toEqual({ code: 0, signal: 0 })
    await expect.poll(() => t.isCursorShown).toBe(true)
    await expect.poll(() => t.marksPastes).toBe(false)
  })

  it('leads back to the menu where there is no job to take up, says help, and practises where a trainee may sign on', async () => {
    const jobs = terminal.folder()
    const t = terminal.start(['--jobs', jobs])
    await t.see('Start the example job')
    const choose = async (line: string) => {
      t.send(line)
      await t.see(new RegExp(`no\\. │ ${line}`))
      t.send('\r')
    }
    await choose('1')
    await t.see('There is none yet in the folder')
    await choose('help')
    await t.see('chooses it')
    await t.until('its line empty', () => /no\. │$/.test(t.text.trimEnd()))
    await choose('3')
    await t.see('Your initials')
    await t.sayAll(['TS', '1749'])
    await t.see('Which machine is this?')
    await expect.poll(() => t.all).toMatch(/^PRACTICE .*TS, T\. Sena, signed on/m)
    expect(existsSync(join(jobs, 'practice'))).toBe(true)
  })

  it('says on a low screen too why a choice is not to be had', async () => {
    const t = terminal.start(['--jobs', terminal.folder()], { size: { cols: 40, rows: 15 } })
    await t.see('Enter: how to begin.')
    t.send('4')
    await t.see(/no\. │ 4/)
    t.send('\r')
    await t.see('There is none yet in the')
    await t.see('Enter: the choice.')
    t.send('\x03')
    await t.ended()
  })

  it.each([
    ['--plain is given', ['--plain'], {}],
    ['TERM is dumb', [], { TERM: 'dumb' }],
  ] as const)('has the same menu in plain lines when %s, and draws nothing', async (_, more, env) => {
    const jobs = terminal.folder()
    const t = terminal.start(['--jobs', jobs, ...more], { env })
    await t.see('2: Start the example job')
    await t.see('Asked: Key a number, 1 to 5, or 0 to leave.')
    t.send('1\r')
    await t.see('There is none yet in the folder')
    await t.until('the menu again', () => t.raw.split('Asked: Key a number, 1 to 5').length === 3)
    t.send('2\r')
    await t.see('Asked: Your initials')
    t.send('leave\r')
    await t.see('take it up again with:')
    expect((await t.ended()).code).toBe(3)
    expect(t.raw).not.toContain('\u001b[')
    expect(logged(jobs).at(-1)?.type).toBe('job.left')
  })

  it('shows the make-safe sheet at Tab: in the menu, before sign-on, and for an open job in the menu', async () => {
    const jobs = terminal.folder()
    const t = terminal.start(['--jobs', jobs])
    await t.see('Start the example job')
    t.send('\t')
    await t.see('Come out, everybody')
    await t.see('the site permit names them')
    t.send('2')
    await t.see(/no\. │ 2/)
    t.send('\r')
    await t.see('Your initials')
    t.send('\t')
    await t.see('1  Come out, everybody.')
    await t.see('6  Call: Radio channel 1')
    await t.see('Enter turns over: 1 of')
    await expect.poll(() => t.flow).toContain('Tab: make safe')
    expect(logged(jobs)).toHaveLength(1)
    await t.say('leave')
    await t.ended()
    const again = terminal.start(['--jobs', jobs], { size: { cols: 80, rows: 50 } })
    await again.see('Take up a job that was left (1)')
    again.send('\t')
    await again.see('FIRST OF ALL: come out')
    await expect.poll(() => again.all).toContain('OPEN JOB')
  })

  it('ends as interrupted by Control-C in the menu', async () => {
    const t = terminal.start(['--jobs', terminal.folder()])
    await t.see('Start the example job')
    t.send('\u0003')
    expect(await t.ended()).toEqual({ code: 130, signal: 0 })
    await expect.poll(() => t.isCursorShown).toBe(true)
  })
})

describe('the whole example', () => {
  it('is walked by keys to its verdict, disposition and close', async () => {
    const jobs = terminal.folder()
    const t = terminal.start([...EXAMPLE_RUN, '--jobs', jobs])
    await t.see('Your initials')
    for (const line of exampleAnswers()) {
      await t.say(line)
    }
    const exit = await t.ended()
    expect(exit).toEqual({ code: 0, signal: 0 })
    await expect.poll(() => t.all).toMatch(/Measuring error: U 0\.000\d\d of one diameter/)
    await expect.poll(() => t.all).toContain('( MONITOR )')
    await expect.poll(() => t.all).toContain('Disposition by KH: ACCEPT')
    await expect.poll(() => t.all).toContain('Job closed with MONITOR.')
    await expect.poll(() => t.all).toMatch(/EXAMPLE {4}(?:[0-9a-f]{8} ?){4}/)
    const entries = logged(jobs)
    expect(entries.filter((e) => e.type === 'reading.taken')).toHaveLength(24)
    expect(entries.at(-1)).toMatchObject({ type: 'job.closed', outcome: 'MONITOR' })
    // The scrollback holds the whole conversation, and the terminal is as it was.
    await expect.poll(() => t.all).toContain('RO, R. Oduya, signed on')
    expect(t.wipes).toBe(0)
    await expect.poll(() => t.isCursorShown).toBe(true)
    await expect.poll(() => t.marksPastes).toBe(false)
  })
})
