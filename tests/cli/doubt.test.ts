// An instrument found out of calibration when the jobs it was used on are closed: which ones, and what falls there.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, dirname, join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { ANSWERS, barover, runArgs } from '../helpers/cli.ts'
import { logPath, terminals, withoutHashes } from '../helpers/pty.ts'

const { folder } = terminals()
/** Example PINs of examples/tc-401/crew.yaml. */
const KH = { input: '8314\n' }
const TS = { input: '1749\n' }
const PIN = '6053'
let finished = { name: '', bytes: Buffer.alloc(0) }

beforeAll(async () => {
  const jobs = mkdtempSync(join(tmpdir(), 'barover-doubt-'))
  await barover(runArgs(jobs, '--answers', ANSWERS, '--json'))
  finished = { name: basename(logPath(jobs)), bytes: readFileSync(logPath(jobs)) }
  rmSync(jobs, { recursive: true })
})

function closed(): { jobs: string; job: string; path: string } {
  const jobs = folder()
  const path = join(jobs, 'example', finished.name)
  mkdirSync(dirname(path))
  writeFileSync(path, finished.bytes)
  return { jobs, job: finished.name.replace('.example.jsonl', ''), path }
}

/** The sheet without its margin and its line ends. */
const flat = (out: string) => out.replace(/\s*\n(?:EXAMPLE\s*\d*\s*[│|])?\s*/g, ' ').replace(/ {2,}/g, ' ')

const SAID = ['--instrument', 'M-3', '--why', 'dropped', '--says', 'certificate C-1183']

describe('barover doubt without a job', () => {
  it('lists the jobs with readings by the instrument, and changes none', async () => {
    const { jobs, job, path } = closed()
    const ran = await barover(['doubt', '--instrument', 'M-3', '--jobs', jobs])
    expect(ran.code).toBe(0)
    expect(ran.out).toContain(`EXAMPLE   ${job}\n`)
    const told = flat(ran.out)
    expect(told).toMatch(/closed with \w+ \d+ readings by M-3: (?:all stand|\d+ stand; \d+ void)/)
    expect(told).toMatch(/7 Bore: 1\d readings, at 7\.1, 7\.2, 7\.3, 7\.4, 7\.5 and 7\.6/)
    expect(told).toMatch(/Would fall with them: 18 .*, MONITOR 19 .*, \w+ by KH/)
    const none = await barover(['doubt', '--instrument', 'M-1', '--jobs', jobs])
    expect(none.out).toMatch(/^No job in .* has readings by M-1: looked through 1\.$/m)
    expect(readFileSync(path)).toEqual(finished.bytes)
  })

  it('counts the tests of a gas meter, and names a log that it cannot read', async () => {
    const { jobs, path } = closed()
    const gas = await barover(['doubt', '--instrument', 'G-7', '--jobs', jobs, '--json'])
    expect((JSON.parse(gas.out) as { readings: number }[])[0]?.readings).toBeGreaterThanOrEqual(6)
    writeFileSync(path, Buffer.from(finished.bytes).fill('x', 40, 60))
    const damaged = await barover(['doubt', '--instrument', 'M-3', '--jobs', jobs])
    expect(damaged).toMatchObject({
      code: 4,
      out: expect.stringMatching(/Readings by M-3: not known/),
    })
    const late = finished.bytes.toString('utf8').replace('"typed":"9.5068"', '"typed":"9.5048"')
    writeFileSync(path, late)
    const part = await barover(['doubt', '--instrument', 'M-3', '--jobs', jobs])
    expect(part.code).toBe(4)
    expect(flat(part.out)).toMatch(
      /DAMAGED at line \d+\. \d+ lines stand behind it and are not read\. \d+ readings by M-3/,
    )
  })

  it('gives no all-clear of an instrument that is in no register, and names the nearest that is', async () => {
    const { jobs, job } = closed()
    const [listed, signed] = await Promise.all([
      barover(['doubt', '--instrument', 'p7', '--jobs', jobs]),
      barover(['doubt', job, '--instrument', 'm-3', ...SAID.slice(2), '--by', 'KH', '--jobs', jobs]),
    ])
    expect(listed).toMatchObject({ code: 2, out: '' })
    expect(listed?.err).toBe("'p7' is in no register of this job.\nDid you mean P-7?\n")
    expect(signed).toMatchObject({ code: 2, out: '' })
    expect(signed?.err).toBe("'m-3' is in no register of this job.\nDid you mean M-3?\n")
  })
})

describe('barover doubt of a closed job', () => {
  it('adds one entry, the outcome falls to HOLD, and jobs, show and verify say so', async () => {
    const { jobs, job, path } = closed()
    const ran = await barover(['doubt', job, ...SAID, '--by', 'kh', '--jobs', jobs], KH)
    expect(ran.err.trim()).toBe('PIN of KH. It is not shown while it is keyed; back leaves it.')
    expect(ran.code).toBe(3)
    expect(ran.out).toMatch(/OUT OF CALIBRATION: M-3/)
    expect(ran.out).toMatch(/closed with \w+, fallen to HOLD: M-3 out of calibration/)
    expect(readFileSync(path).subarray(0, finished.bytes.length)).toEqual(finished.bytes)
    const [list, show, verify] = await Promise.all([
      barover(['jobs', '--jobs', jobs]),
      barover(['show', job, '--jobs', jobs]),
      barover(['verify', job, '--jobs', jobs]),
    ])
    for (const one of [list, show, verify]) {
      expect(one.code).toBe(0)
      expect(one.out.replace(/\s*\n\s*EXAMPLE[ │|]*/g, ' ')).toMatch(
        /fallen to HOLD: M-3 out of\s+calibration/,
      )
    }
    const again = await barover(['doubt', job, ...SAID, '--by', 'KH', '--jobs', jobs, '--json'], KH)
    expect(again.code).toBe(1)
    expect(JSON.parse(again.out)).toMatchObject([
      { refused: expect.stringMatching(/already/), outcome: 'HOLD' },
    ])
  })

  it.each([
    [['--by', 'TS'], /trainee/],
    [['--by', 'XX'], /nobody in the crew file/],
  ])('is refused to %j', async (by, why) => {
    const { jobs, job, path } = closed()
    const ran = await barover(['doubt', job, ...SAID, ...by, '--jobs', jobs], TS)
    expect(ran.code).toBe(1)
    expect(ran.err).toMatch(why)
    expect(ran.err).toMatch(/Initials of who signs: /)
    expect(readFileSync(path)).toEqual(finished.bytes)
  })

  it('names all that is missing at once', async () => {
    const { jobs, job } = closed()
    const ran = await barover(['doubt', job, '--instrument', 'M-3', '--jobs', jobs])
    expect(ran).toMatchObject({ code: 2, out: '', err: expect.stringMatching(/needs --why, --says, --by\./) })
  })

  it.each(['--instrument', '--why', '--says', '--by'])('needs %s', async (option) => {
    const { jobs, job } = closed()
    const all = [...SAID, '--by', 'KH']
    all.splice(all.indexOf(option), 2)
    const ran = await barover(['doubt', job, ...all, '--jobs', jobs])
    expect(ran).toMatchObject({ code: 2, out: '', err: expect.stringMatching(option) })
  })

  it('asks the PIN where the crew file of the job holds a key, shows it nowhere, and takes no other', async () => {
    const jobs = folder()
    const path = join(jobs, 'example', finished.name)
    mkdirSync(dirname(path))
    writeFileSync(path, finished.bytes)
    const before = readFileSync(path)
    const args = ['doubt', path, ...SAID, '--by', 'PB', '--jobs', jobs]
    expect((await barover(args)).code).toBe(1)
    expect(readFileSync(path)).toEqual(before)
    const right = await barover(args, { input: `4712\n${PIN}\n` })
    expect(right.err).toContain('Wrong PIN for PB, 1 of 3. It is on record.')
    expect(flat(right.out)).toMatch(/A PIN was keyed that is not PB's: 1 of 3 in a row;/)
    const today = new Date().toISOString().slice(0, 4)
    expect(flat(right.out)).toMatch(
      new RegExp(`Signed by PB on ${today}-\\d\\d-\\d\\d, after the job was closed`),
    )
    expect(readFileSync(path, 'utf8')).toMatch(/"type":"pin.missed","person":"PB"/)
    expect(right.code).toBe(3)
    const written = right.out + right.err + readFileSync(path, 'utf8').slice(before.length)
    expect(withoutHashes(written)).not.toContain(PIN)
    expect(readFileSync(path, 'utf8')).toMatch(/"type":"instrument.doubted".*"person":"PB","signed":"pin"/)
  })

  it('is refused for a job that is still open, which has the word for it', async () => {
    const jobs = folder()
    const cut = finished.bytes.toString('utf8').split('\n').slice(0, -2).join('\n')
    mkdirSync(join(jobs, 'example'))
    const path = join(jobs, 'example', finished.name)
    writeFileSync(path, `${cut}\n`)
    const ran = await barover(['doubt', path, ...SAID, '--by', 'KH', '--jobs', jobs], KH)
    expect(ran).toMatchObject({
      code: 1,
      out: expect.stringMatching(/still open: take it up and type instrument/),
    })
    expect(readFileSync(path, 'utf8')).toBe(`${cut}\n`)
  })
})
