// barover take-in on a job of its own files: what is shown before anybody signs, what is written, and that a refusal writes nothing.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, dirname, join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { buildLine, type Entry, GENESIS, lineHash } from '../../src/node/journal/chain.ts'
import { ANSWERS, barover, MACHINE, runArgs } from '../helpers/cli.ts'
import { logPath, terminals, withoutHashes } from '../helpers/pty.ts'

const { folder } = terminals()
const SIGNED = { input: 'KH\nthe bore was found in another edition of the book\n8314\n' }
const TIGHTER = (record: string) =>
  record
    .replace('at_most: 9.530 in', 'at_most: 9.506 in')
    .replace('edition: "4"', 'edition: "5"')
    .replace('title: TC-401 throw 1, stage 1', 'title: TC-401 throw 1, rebored')

let judged = { name: '', bytes: Buffer.alloc(0) }
/** The same after the changed record was taken in, and what was said of it. */
let taken = { bytes: Buffer.alloc(0), ran: { code: null as number | null, out: '', err: '' } }
let record = ''

beforeAll(async () => {
  const jobs = mkdtempSync(join(tmpdir(), 'barover-take-in-'))
  const answers = join(jobs, 'answers.txt')
  writeFileSync(answers, `${readFileSync(ANSWERS, 'utf8').split('\nwhy\n')[0]}\nleave\n`)
  await barover(runArgs(jobs, '--answers', answers))
  judged = { name: basename(logPath(jobs)), bytes: readFileSync(logPath(jobs)) }
  rmSync(jobs, { recursive: true })
  record = TIGHTER(readFileSync(MACHINE, 'utf8'))
  const { jobs: at, job, path, machine } = left()
  const ran = await barover(['take-in', job, '--machine', machine, '--jobs', at], SIGNED)
  taken = { bytes: readFileSync(path), ran }
}, 60_000)

/** A job that was judged and left, and a changed record beside it. */
function left(bytes = judged.bytes): { jobs: string; job: string; path: string; machine: string } {
  const jobs = folder()
  const path = join(jobs, 'example', judged.name)
  mkdirSync(dirname(path))
  writeFileSync(path, bytes)
  const machine = join(jobs, 'machine-5.yaml')
  writeFileSync(machine, record)
  return { jobs, job: judged.name.replace('.example.jsonl', ''), path, machine }
}

const entriesOf = (path: string) =>
  readFileSync(path, 'utf8')
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Record<string, unknown>)

/** Lines of the sheet run together, without its margins. */
const flat = (out: string) => out.replace(/\s*\n\s*(?:EXAMPLE)?[ │|]*/g, ' ').replace(/ +/g, ' ')

describe('barover take-in', () => {
  it('shows each field that differs before it asks, and from its entry on the new record counts', async () => {
    const { jobs, job, path } = left(taken.bytes)
    const { ran } = taken
    expect(ran.code).toBe(0)
    expect(ran.err.trim().split('\n')).toEqual([
      'Initials of the lead who takes it in. Enter alone: nothing is taken in.',
      'Why was the record changed?',
      'PIN of KH. It is not shown while it is keyed.',
    ])
    const [before, after] = flat(ran.out).split('MACHINE RECORD CHANGED')
    for (const part of [before, after]) {
      expect(part).toContain('limit largest, at most: 9.530 in, now 9.506 in')
      expect(part).toContain('edition: 4, now 5')
      expect(part).toMatch(/void, to be judged and decided anew: \S/)
      expect(part).toMatch(/hold points to be proved anew: \S/)
    }
    expect(readFileSync(path).subarray(0, judged.bytes.length)).toEqual(judged.bytes)
    const entry = entriesOf(path).at(-1)
    expect(entry).toMatchObject({ type: 'record.taken-in', by: 'KH', person: 'KH', signed: 'pin' })
    expect(entry?.file).toMatchObject({ role: 'machine', name: 'machine-5.yaml', text: record })
    expect(withoutHashes(ran.out + ran.err + JSON.stringify(entry))).not.toContain('8314')

    const answers = join(jobs, 'on.txt')
    writeFileSync(answers, 'RO\n4071\nTC-401-1\n')
    const on = await barover(['resume', job, '--answers', answers, '--jobs', jobs])
    expect(flat(on.out)).toMatch(/this is TC-401-1, TC-401 .*throw 1, stage 1 .*MACHINE RECORD CHANGED/)
    const words = entriesOf(path).flatMap((e) =>
      e.type === 'verdict.given' ? [(e.verdict as { result: { verdict: string } }).result.verdict] : [],
    )
    expect(words).toEqual(['MONITOR', 'REPLACE'])
    const [verify, show, hand, review] = await Promise.all([
      barover(['verify', job, '--jobs', jobs]),
      barover(['show', job, '--jobs', jobs]),
      barover(['show', job, '--handover', '--jobs', jobs]),
      barover(['review', job, '--jobs', jobs]),
    ])
    expect(verify.code).toBe(0)
    // The old part is shown by the old record, the new one by the new.
    const [old, now] = flat(show.out).split('MACHINE RECORD CHANGED')
    expect([old?.includes('throw 1, stage 1'), old?.includes('limit 9.5300')]).toEqual([true, true])
    expect([old?.includes('throw 1, rebored'), now?.includes('limit 9.5060')]).toEqual([false, true])
    expect(flat(hand.out)).toMatch(/Machine record changed on the job 2026-03-14 \d\d:\d\d by KH/)
    expect(flat(review.out)).toMatch(
      /Machine record changed on the job, KH \d\d:\d\d: title; edition; limit largest/,
    )
    expect(flat(review.out)).toMatch(/Bore judged, MONITOR by the record before/)
  })

  it('takes its answers from a file too, and tells another program what it did', async () => {
    const { jobs, job, path, machine } = left()
    const answers = join(jobs, 'lead.txt')
    writeFileSync(answers, 'wait 12 min\nPB\nrebored\n6053\n')
    const args = ['take-in', job, '--machine', machine, '--answers', answers, '--jobs', jobs]
    const ran = await barover([...args, '--json'])
    expect(ran.code).toBe(0)
    expect(JSON.parse(ran.out)).toMatchObject({
      job,
      record: 'EXAMPLE',
      refused: null,
      person: 'PB',
      why: 'rebored',
      changed: [
        { field: 'title', was: 'TC-401 throw 1, stage 1', now: 'TC-401 throw 1, rebored' },
        { field: 'edition', was: '4', now: '5' },
        { field: 'limit largest, at most', was: '9.530 in', now: '9.506 in' },
      ],
      undecided: [],
      anew: [],
      tests: [],
      dropped: [],
    })
    expect(entriesOf(path).at(-1)?.type).toBe('record.taken-in')
  })

  it.each([
    [
      'a record that is the same',
      (text: string) => text.replace(/^/, '# read over again\n'),
      /Nothing that a job reads differs/,
    ],
    [
      'a record of another machine',
      (text: string) => text.replace('machine: TC-401-1', 'machine: TC-409-1'),
      /record of 'TC-409-1'/,
    ],
    [
      'a record that check does not pass',
      (text: string) => text.replace('nominal: 9.500 in', 'nominal: 9.500'),
      /needs a unit/,
    ],
    [
      'one that the procedure is not for',
      (text: string) => text.replace('orientation: horizontal', 'orientation: vertical'),
      /its cylinder is vertical/,
    ],
  ])('refuses %s before it asks anything, and writes nothing', async (_what, change, why) => {
    const { jobs, job, path, machine } = left()
    const old = readFileSync(MACHINE, 'utf8')
    expect(change(old)).not.toBe(old)
    writeFileSync(machine, change(old))
    const ran = await barover(['take-in', job, '--machine', machine, '--jobs', jobs], SIGNED)
    expect(ran.code).toBe(1)
    expect(flat(ran.out + ran.err)).toMatch(why)
    expect(ran.err).not.toContain('Initials')
    expect(readFileSync(path)).toEqual(judged.bytes)
  })

  it.each([
    ['a mechanic', 'ML\n', /ML is a mechanic/, 1],
    ['somebody of no crew', 'XX\n', /XX/, 1],
    ['nobody', '\n', /Nobody signed for it\. Nothing was taken in/, 1],
    ['words that are none', 'KH\n...\n', /needs words/, 2],
    ['no PIN, which is no wrong one', 'KH\nrebored\nKH\n', /Nobody signed for it/, 4],
  ])(
    'signed by %s is refused before more is asked, and nothing is written',
    async (_who, input, why, asked) => {
      const { jobs, job, path, machine } = left()
      const ran = await barover(['take-in', job, '--machine', machine, '--jobs', jobs], { input })
      expect(ran.code).toBe(1)
      expect(flat(ran.out)).toMatch(why)
      // Without those that only say what a PIN is.
      const questions = ran.err
        .trim()
        .split('\n')
        .filter((line) => !line.startsWith('A PIN is'))
      expect(questions).toHaveLength(asked)
      expect(readFileSync(path)).toEqual(judged.bytes)
    },
  )

  it('puts wrong PINs on record by name, and looks at none after three', async () => {
    const { jobs, job, path, machine } = left()
    const input = 'KH\nrebored\n1111\n2222\n3333\n8314\n'
    const ran = await barover(['take-in', job, '--machine', machine, '--jobs', jobs], { input })
    expect(ran.code).toBe(1)
    expect(flat(ran.out)).toMatch(/3 wrong PINs for KH/)
    const more = entriesOf(path).slice(judged.bytes.toString('utf8').trimEnd().split('\n').length)
    expect(more.map((e) => [e.type, e.person])).toEqual([1, 2, 3].map(() => ['pin.missed', 'KH']))
  })

  it('hears STOP at every question, and takes nothing in then', async () => {
    const { jobs, job, path, machine } = left()
    const input = 'KH\nstop\n'
    const ran = await barover(['take-in', job, '--machine', machine, '--jobs', jobs], { input })
    expect(ran.code).toBe(3)
    expect(flat(ran.out)).toMatch(/STOP is on record in this job, and nothing was taken in/)
    expect(entriesOf(path).at(-1)?.type).toBe('stop.raised')
  })

  it('needs a record, a job that is open, and a log that nobody writes', async () => {
    const { jobs, job, machine } = left()
    expect((await barover(['take-in', job, '--jobs', jobs])).code).toBe(2)
    expect((await barover(['take-in', job, '--machine', join(jobs, 'none.yaml'), '--jobs', jobs])).code).toBe(
      4,
    )
    const whole = folder()
    await barover(runArgs(whole, '--answers', ANSWERS))
    const closed = await barover(['take-in', logPath(whole), '--machine', machine], SIGNED)
    expect(closed.code).toBe(1)
    expect(flat(closed.out)).toMatch(/closed job keeps the record it was judged by/)
  })

  it('of a job that it was cut off from by a power cut leaves that job as it was', async () => {
    const cut = left(taken.bytes.subarray(0, judged.bytes.length + 4000))
    const verify = await barover(['verify', cut.job, '--jobs', cut.jobs])
    expect(verify.out).toMatch(/unfinished|cut off|torn/i)
    const answers = join(cut.jobs, 'on.txt')
    writeFileSync(answers, 'RO\n4071\nleave\n')
    await barover(['resume', cut.job, '--answers', answers, '--jobs', cut.jobs])
    const types = entriesOf(cut.path).map((e) => e.type)
    expect(types).not.toContain('record.taken-in')
    expect(types.filter((type) => type === 'verdict.given')).toHaveLength(1)
  })
})

describe('verify of a job that took a record in', () => {
  it.each([
    [
      'whose copy is not the one of its hash',
      (file: Taken) => ({ ...file, text: file.text.replace('9.506 in', '9.999 in') }),
      /copy of machine-5\.yaml does not match the hash beside it/,
    ],
    [
      'that no version would take',
      (file: Taken) => ({ ...file, text: 'machine: 7\n' }),
      /machine record taken in with entry \d+ no longer passes/,
    ],
    [
      'of another machine',
      (file: Taken) => ({ ...file, text: file.text.replace('machine: TC-401-1', 'machine: TC-409-1') }),
      /takes in the record of another machine/,
    ],
  ])('tells of one %s', async (_what, change, why) => {
    const { jobs, job, path } = left()
    writeFileSync(path, rewritten(taken.bytes, change))
    const ran = await barover(['verify', job, '--jobs', jobs])
    expect(ran.code).toBe(1)
    expect(flat(ran.out)).toMatch(why)
  })
})

interface Taken {
  readonly text: string
}

/** The chain built anew over another record, as somebody with the source could. */
function rewritten(bytes: Buffer, change: (file: Taken) => Taken): string {
  let prev = GENESIS
  const lines = bytes
    .toString('utf8')
    .trimEnd()
    .split('\n')
    .map((line, seq) => {
      const { seq: _s, prev: _p, hash: _h, at, ...entry } = JSON.parse(line) as Entry & { at: string }
      const isTaken = entry.type === 'record.taken-in'
      const body = isTaken ? { ...entry, file: change(entry.file as Taken) } : entry
      const built = buildLine(body as Entry, { seq, prev, at })
      prev = lineHash(built)
      return built
    })
  return `${lines.join('\n')}\n`
}
