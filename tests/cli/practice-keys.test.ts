// Who signs what, as it is met at the command line: no key of a real crew signs practice, and none that is printed in an example signs
// a REAL job, whatever file it stands in.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { hashPin, pinProblem } from '../../src/node/pins.ts'
import { barover, changedMachine } from '../helpers/cli.ts'
import { terminals } from '../helpers/pty.ts'

const { folder } = terminals()
const REAL_PIN = '770194'
/** Of everybody one of their own: the crew of a site. */
let keys: readonly string[] = []
beforeAll(async () => {
  keys = await Promise.all([0, 1, 2, 3, 4].map((n) => hashPin(String(Number(REAL_PIN) + n))))
})

const unmarked = (text: string) => text.replace(/^invented: true$/m, '')

/** A machine of a site's own, nothing of it invented; its crew with the keys that `keyed` leaves them. */
function site(keyed: (crew: string) => string): { machine: string; jobs: string } {
  const at = folder()
  const machine = changedMachine(at, unmarked)
  for (const name of ['crew.yaml', 'instruments.yaml']) {
    const path = join(dirname(machine), name)
    const text = unmarked(readFileSync(path, 'utf8')).replace(/due: \d{4}/g, 'due: 2099')
    writeFileSync(path, name === 'crew.yaml' ? keyed(text) : text)
  }
  return { machine, jobs: join(at, 'jobs') }
}

/** Own keys in the place of those that `isOwn`. */
const keyedAnew = (isOwn: (n: number) => boolean) => (crew: string) => {
  let n = 0
  return crew.replace(/"\$scrypt[^"]*"/g, (key) => {
    const own = isOwn(n) ? `"${keys[n]}"` : key
    n += 1
    return own
  })
}
const allOwn = keyedAnew(() => true)
const oneOwn = keyedAnew((n) => n === 0)
const oneExample = keyedAnew((n) => n !== 3)

const written = (jobs: string) =>
  existsSync(jobs) ? readdirSync(jobs, { recursive: true }).filter((name) => /jsonl/.test(String(name))) : []

describe('practice', () => {
  it.each([
    ['the whole crew', allOwn, /RO, ML, KH, PB, TS of this crew file has a key of their own/],
    ['one of them', oneOwn, /: RO of this crew file has a key of their own/],
  ])('is not opened for a crew file in which %s has a key of their own', async (_who, keyed, says) => {
    const { machine, jobs } = site(keyed)
    const args = ['practice', '--seed', '4711', '--level', '1', '--machine', machine, '--jobs', jobs]
    const ran = await barover(args, { input: `RO\n${REAL_PIN}\n` })
    expect([ran.code, ran.out]).toEqual([1, ''])
    expect(ran.err).toMatch(/^Practice is signed with the PINs of the example crew, which prove nothing/)
    expect(ran.err).toMatch(says)
    expect(written(jobs)).toEqual([])
  })

  it('takes no PIN of a real crew under way, nor afterwards, and counts it as a wrong one', async () => {
    const jobs = join(folder(), 'jobs')
    const session = ['practice', '--seed', '4711', '--level', '1', '--jobs', jobs]
    const ran = await barover(session, { input: `RO\n${REAL_PIN}\nback\nRO\n4071\nleave\n` })
    expect(ran.out).toContain("A PIN was keyed that is not RO's")
    expect(ran.out.match(/RO, R. Oduya, signed on/g)).toHaveLength(1)
    const [log = ''] = written(jobs).map(String)
    const before = readFileSync(join(jobs, log), 'utf8')
    expect(before).not.toContain(REAL_PIN)
    const job = log.replace(/^.*\//, '').replace('.practice.jsonl', '')
    // The lead's desk acts with the crew of the record, and so does whoever takes the session up again.
    const act = await barover(['review', job, '--act', '--jobs', jobs], {
      input: `note\nseen by a lead\nKH\n${REAL_PIN}\nback\nback\n0\n`,
    })
    expect(act.out).toContain("A PIN was keyed that is not KH's")
    expect(act.out).not.toContain('signed KH')
    const again = await barover(['resume', job, '--jobs', jobs], { input: `ML\n${REAL_PIN}\nleave\n` })
    expect(again.out).toContain("A PIN was keyed that is not ML's")
    expect(again.out).not.toContain('M. Lind, signed on')
  })
})

describe('a REAL job', () => {
  it.each([
    [
      'all of the example crew',
      (crew: string) => crew,
      /^The key of RO, ML, KH, PB, TS is one of the example/,
    ],
    ['one of it', oneExample, /^The key of PB is one of the example/],
  ])('is not opened with the keys of %s', async (_who, keyed, says) => {
    const { machine, jobs } = site(keyed)
    for (const procedure of ['bore-inspection', 'isolation']) {
      const args = ['run', procedure, '--machine', machine, '--as', 'real', '--jobs', jobs]
      const ran = await barover(args, { input: 'PB\n6053\n' })
      expect([ran.code, ran.out]).toEqual([1, ''])
      expect(ran.err).toMatch(says)
    }
    expect(written(jobs)).toEqual([])
  })

  it('gets no key made of a PIN that an example prints', async () => {
    const printed = ['tc-401', 'rg-27'].flatMap((name) => {
      const head = readFileSync(join(import.meta.dirname, '../../examples', name, 'crew.yaml'), 'utf8')
      return [...head.matchAll(/\b[A-Z]{2} (\d{4})\b/g)].map(([, pin = '']) => pin)
    })
    expect(printed).toHaveLength(10)
    for (const pin of printed) expect(pinProblem(pin)).toMatch(/^That PIN is printed in an example/)
    for (const pin of printed.slice(4, 6)) {
      const ran = await barover(['pin', '--stdin'], { input: pin })
      expect([ran.code, ran.out]).toEqual([1, ''])
      expect(ran.err).toMatch(/^That PIN is printed in an example/)
      expect(ran.err).not.toContain(pin)
    }
  })
})
