// A lead at the review on a terminal: acts by words, under the lock, and sees what changed.
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { finishedJob, laidInto } from '../helpers/finished.ts'
import { jobStarter, logged, logPath, terminals } from '../helpers/pty.ts'

const terminal = terminals()
const jobAt = jobStarter(terminal)
const types = (jobs: string) => logged(jobs).map(({ type }) => type)
const review = (jobs: string) => terminal.start(['review', logPath(jobs), '--jobs', jobs])

const done = finishedJob()

describe('a review on a terminal', () => {
  it('asks for a remark in lines once the screen let go of the terminal, and the list is there again', async () => {
    const { jobs } = laidInto(terminal.folder(), done, done.bytes)
    const desk = review(jobs)
    await desk.see('a question in words; remark')
    desk.send('remark\r')
    await desk.see('The remark, on one line')
    desk.send('told to the owner\r')
    await desk.see('Initials of the lead who says it: KH or PB.')
    // Nobody's initials, and a mechanic's: the remark is kept, and it is asked again.
    desk.send('KJ\r')
    await desk.see('"KJ" is nobody in the crew file')
    desk.send('ML\r')
    await desk.see('ML is a mechanic')
    desk.send('KH\r')
    await desk.see('PIN of KH. It is not shown while it is keyed; back leaves it.')
    desk.send('decide\r')
    await desk.see('this was none')
    desk.send('8314\r')
    await desk.see('Remark after the close')
    await desk.see('a question in words; remark')
    expect(types(jobs).at(-1)).toBe('remark.made')
    expect(desk.all).not.toContain('8314')
    desk.send('leave\r')
    expect((await desk.ended()).code).toBe(0)
  })

  it('writes nothing while the job is open elsewhere; then a STOP is raised, told and released there', async () => {
    const { t, jobs } = await jobAt(['RO', '4071'])
    const desk = review(jobs)
    await desk.see('A number; a question in words; note; help; leave.')
    const before = readFileSync(logPath(jobs))
    desk.send('stop\r')
    await desk.see('The STOP is NOT on record')
    expect(readFileSync(logPath(jobs))).toEqual(before)
    await t.say('leave')
    await t.ended()

    desk.send('stop\r')
    await desk.see('why was STOP called?')
    expect(types(jobs)).toContain('stop.raised')
    await desk.sayAll(['1', 'smells of gas', 'RO'])
    // Nobody was signed on when it was raised: whoever is named signs.
    await desk.see('PIN of RO')
    await desk.key('4071', '(not shown)')
    desk.send('\r')
    await desk.see('release')
    await desk.say('leave')
    await desk.see('A number; a question; release, close, cause; help; leave.')
    await desk.see('under STOP')
    desk.send('release\r')
    await desk.see('Initials of the lead who releases it')
    await desk.sayAll(['KH', 'tested again, none'])
    await desk.see('PIN of KH')
    // With it the job is left, and its line is gone from the screen.
    await desk.key('8314', '(not shown)')
    desk.send('\r')
    await desk.see('A number; a question in words; note; help; leave.')
    await desk.see('Now open; was open, under STOP.')
    expect(types(jobs).slice(-3)).toEqual(['job.taken-up', 'stop.released', 'job.left'])
    expect(desk.text).not.toContain('8314')

    // 40 columns and 15 rows are enough for all of it.
    desk.resize({ cols: 40, rows: 15 })
    desk.send('note\r')
    await desk.see('Who is at the keyboard?')
    await desk.sayAll(['KH', '8314', 'seen with the owner'])
    await expect.poll(() => types(jobs).slice(-2)).toEqual(['note.written', 'job.left'])
    await desk.see('Ask in words; help')
    desk.send('leave\r')
    expect((await desk.ended()).code).toBe(3)
    expect(desk.wipes).toBe(0)
  })
})
