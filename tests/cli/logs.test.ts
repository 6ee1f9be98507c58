// jobs, show and verify on logs that are finished, torn, damaged, cut and rewritten.
import { spawnSync } from 'node:child_process'
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { buildLine, type Entry, GENESIS, lineHash } from '../../src/node/journal/chain.ts'
import { ANSWERS, barover, runArgs } from '../helpers/cli.ts'
import { BUNDLE, logPath, plainEnv, terminals } from '../helpers/pty.ts'

const { folder } = terminals()

/** The finished example, as bytes, with its name and its head. */
const done = { name: '', bytes: Buffer.alloc(0), head: '' }

beforeAll(async () => {
  const { mkdtempSync, rmSync } = await import('node:fs')
  const { tmpdir } = await import('node:os')
  const jobs = mkdtempSync(join(tmpdir(), 'barover-logs-'))
  const ran = await barover(runArgs(jobs, '--answers', ANSWERS, '--json'))
  done.name = basename(logPath(jobs))
  done.bytes = readFileSync(logPath(jobs))
  done.head = (JSON.parse(ran.out) as { head: string }).head
  rmSync(jobs, { recursive: true })
})

/** A folder of jobs holding the finished log, changed. */
function withLog(change: (bytes: Buffer) => Buffer): { jobs: string; path: string } {
  const jobs = folder()
  mkdirSync(join(jobs, 'example'))
  const path = join(jobs, 'example', done.name)
  writeFileSync(path, change(Buffer.from(done.bytes)))
  return { jobs, path }
}

/** What is told, without margins and line ends. */
const flat = (out: string) => out.replace(/\n(?:EXAMPLE *\d* *[│|]?)? */g, ' ').replace(/ {2,}/g, ' ')

const linesOf = (bytes: Buffer) => bytes.toString('utf8').split('\n').slice(0, -1)

/** The chain built anew over other entries, as somebody with the source could. */
function rewritten(bytes: Buffer, change: (entry: Entry, i: number) => Entry): Buffer {
  let prev = GENESIS
  const lines = linesOf(bytes).map((line, seq) => {
    const { seq: _s, prev: _p, hash: _h, at, ...entry } = JSON.parse(line) as Entry & { at: string }
    const built = buildLine(change(entry as Entry, seq), { seq, prev, at })
    prev = lineHash(built)
    return built
  })
  return Buffer.from(`${lines.join('\n')}\n`)
}

const flip = (bytes: Buffer) => {
  const at = bytes.indexOf('"typed":"9.5068"')
  bytes.write('9.5048', at + '"typed":"'.length)
  return bytes
}
const cut = (bytes: Buffer) => Buffer.from(`${linesOf(bytes).slice(0, -3).join('\n')}\n`)
const torn = (bytes: Buffer) => Buffer.concat([bytes, Buffer.from('{"seq":62,"prev":"ab')])

describe('a finished log', () => {
  it('is listed, shown and sound', async () => {
    const { jobs } = withLog((bytes) => bytes)
    const [list, show, verify] = await Promise.all([
      barover(['jobs', '--jobs', jobs]),
      barover(['show', 'TC-401', '--jobs', jobs]),
      barover(['verify', 'TC-401', '--jobs', jobs, '--head', done.head]),
    ])
    expect(list.out).toMatch(/^EXAMPLE {3}2026-03-14-0620-TC-401-1-bore-inspection-\w{4}\n/)
    expect(flat(list.out)).toMatch(
      /2026-03-14 06:20 to 06:40 TC-401-1 RO, ML, KH \d+ entries closed with MONITOR STILL ON by the record: L-101 at E-1, .*L-106 at V-17 Nonconformances that stand: 1, all decided $/,
    )
    expect(show.code).toBe(0)
    expect(show.out).toContain('( MONITOR )')
    expect(show.out).toContain('All readings')
    for (const line of show.out.trimEnd().split('\n')) expect(line).toMatch(/^EXAMPLE /)
    expect(verify.code).toBe(0)
    expect(verify.out).toContain('checked: the last line is the one noted')
    for (const line of verify.out.trimEnd().split('\n')) expect(line).toMatch(/^EXAMPLE /)
  })

  it('without a noted check number says what could not be checked', async () => {
    const { jobs } = withLog((bytes) => bytes)
    const { code, out } = await barover(['verify', 'TC-401', '--jobs', jobs])
    expect(code).toBe(0)
    expect(flat(out)).toContain(
      'unknown: NOT PROVED that no lines were cut off the end; only a check number noted elsewhere shows that',
    )
    expect(flat(out)).toContain(
      'unknown: NOT PROVED that the log was not written anew; only a check number noted elsewhere shows that',
    )
  })

  it('is not checked against what is no head', async () => {
    const { jobs } = withLog((bytes) => bytes)
    const { code, out, err } = await barover(['verify', 'TC-401', '--jobs', jobs, '--head', 'abc'])
    expect({ code, out }).toEqual({ code: 2, out: '' })
    expect(err).toContain('--head takes the 64 figures and letters')
  })

  it('is shown the same to the byte twice, in other zones and other locales', async () => {
    const { path } = withLog((bytes) => bytes)
    const zones = ['UTC', 'UTC', 'Asia/Kathmandu', 'America/St_Johns']
    const shown = await Promise.all(zones.map((TZ) => barover(['show', path], { env: { TZ } })))
    expect(new Set(shown.map((one) => one.out)).size).toBe(1)
    const german = await barover(['show', path], { env: { LANG: 'de_DE.UTF-8' } })
    expect(german.out).toBe(shown[0]?.out)
  })

  it('is ASCII where ASCII is asked for', async () => {
    const { path } = withLog((bytes) => bytes)
    expect((await barover(['show', path, '--ascii'])).out).toMatch(/^[\n -~]*$/)
  })

  it('gives JSON that other programs can read', async () => {
    const { jobs } = withLog((bytes) => bytes)
    const [list, show, verify] = await Promise.all(
      [['jobs'], ['show', 'TC-401'], ['verify', 'TC-401']].map((args) =>
        barover([...args, '--jobs', jobs, '--json']),
      ),
    )
    expect(JSON.parse(list?.out ?? '')).toMatchObject([{ record: 'EXAMPLE', open: false }])
    expect(JSON.parse(show?.out ?? '')).toMatchObject({ closed: 'MONITOR', head: done.head })
    expect(JSON.parse(verify?.out ?? '')).toMatchObject({ sound: true, content: { state: 'sound' } })
  })

  it('can be looked at through a reader that stops early', () => {
    const { path } = withLog((bytes) => bytes)
    const line = `"${process.execPath}" "${BUNDLE}" show "${path}" | head -1; exit "\${PIPESTATUS[0]}"`
    const ran = spawnSync('bash', ['-c', line], { env: plainEnv(), encoding: 'utf8' })
    expect(ran).toMatchObject({ status: 0, stderr: '' })
    expect(ran.stdout).toContain('Bore or liner inspection')
  })
})

describe('a changed log', () => {
  it('with one figure changed: what stands behind it is counted by all, and no head of it is shown', async () => {
    const { jobs } = withLog(flip)
    const at = linesOf(flip(Buffer.from(done.bytes))).findIndex((line) => line.includes('"typed":"9.5048"'))
    const behind = linesOf(done.bytes).length - at - 1
    expect(behind).toBeGreaterThan(1)
    const commands = ['jobs', 'show', 'verify', 'review', 'resume']
    const ran = await Promise.all(
      commands.map((name) => barover([name, ...(name === 'jobs' ? [] : ['TC-401']), '--jobs', jobs])),
    )
    expect(ran.map(({ code }) => code)).toEqual([4, 4, 4, 4, 4])
    const [list, show, verify, review, resume] = ran.map(({ out, err }) => flat(out + err))
    const counted = `${behind} lines stand behind it and are not read.`
    expect(list).toContain(`DAMAGED at line ${at + 1}: ${behind} behind it not read; up to it open`)
    for (const one of [show, verify, review, resume])
      expect(one).toMatch(new RegExp(`[Ll]ine ${at + 1} was changed: .* ${counted}`))
    expect(show).toContain(`THE LOG IS NOT SOUND: Line ${at + 1} was changed`)
    expect(show).toContain('7.2')
    expect(review).toContain(
      `NOT KNOWN: read up to line ${at}, ${behind + 1} from there on not; up to it open`,
    )
    expect(review).toContain(
      'NOT KNOWN whether it closed, PEOPLE MAY BE IN at hold point 2: 6 of 20 steps done',
    )
    expect(verify).toContain('not known; up to the break open')
    for (const one of [list, show, verify, review]) expect(one).not.toMatch(/[0-9a-f]{64}/)
    const json = await Promise.all(
      ['show', 'verify', 'review'].map((name) => barover([name, 'TC-401', '--jobs', jobs, '--json'])),
    )
    for (const { out } of json) expect(JSON.parse(out)).toMatchObject({ head: null })
  })

  it('cut: a shorter job to itself, found out by the noted check number', async () => {
    const { jobs } = withLog(cut)
    const [alone, noted] = await Promise.all([
      barover(['verify', 'TC-401', '--jobs', jobs]),
      barover(['verify', 'TC-401', '--jobs', jobs, '--head', done.head]),
    ])
    expect(alone.code).toBe(0)
    expect(flat(alone.out)).toContain('unknown: NOT PROVED that no lines were cut off')
    expect(noted.code).toBe(1)
    expect(flat(noted.out)).toContain('lines were removed at the end or changed')
    expect(flat(noted.out)).not.toMatch(/[0-9a-f]{64}/)
  })

  it('rewritten whole: sound to itself but for what its own figures say, found out by the noted check number', async () => {
    const { jobs } = withLog((bytes) =>
      rewritten(bytes, (entry) =>
        entry.type === 'disposition.set' ? { ...entry, why: 'All is well' } : entry,
      ),
    )
    const [alone, noted] = await Promise.all([
      barover(['verify', 'TC-401', '--jobs', jobs]),
      barover(['verify', 'TC-401', '--jobs', jobs, '--head', done.head]),
    ])
    expect(alone.code).toBe(0)
    expect(flat(alone.out)).toContain(
      'unknown: NOT PROVED that the log was not written anew; only a check number noted elsewhere shows that',
    )
    expect(noted.code).toBe(1)
  })

  it('rewritten with another verdict: its own figures give it away', async () => {
    const { jobs } = withLog((bytes) =>
      rewritten(bytes, (entry) => {
        if (entry.type !== 'verdict.given') return entry
        return JSON.parse(JSON.stringify(entry).replaceAll('"MONITOR"', '"ACCEPT"')) as Entry
      }),
    )
    const { code, out } = await barover(['verify', 'TC-401', '--jobs', jobs])
    expect(code).toBe(1)
    expect(out).toContain('inside')
    expect(flat(out)).toContain('this version comes to MONITOR')
  })

  it('rewritten with a changed copy of a file: the hash beside it gives it away', async () => {
    const { jobs } = withLog((bytes) =>
      rewritten(bytes, (entry, i) =>
        i === 0
          ? (JSON.parse(JSON.stringify(entry).replace('at_most: 9.530 in', 'at_most: 9.630 in')) as Entry)
          : entry,
      ),
    )
    const { code, out } = await barover(['verify', 'TC-401', '--jobs', jobs])
    expect(code).toBe(1)
    expect(flat(out)).toContain('The copy of machine.yaml does not match the hash beside it.')
  })

  it('of a REAL job: whatever the file is called, it takes nothing from a file or a pipe, and is not written to', async () => {
    const { jobs, path } = withLog((bytes) =>
      rewritten(cut(bytes), (entry, i) =>
        i === 0 ? { ...entry, record: 'REAL', clock: 'system', answers: 'person' } : entry,
      ),
    )
    const before = readFileSync(path)
    const [answers, piped] = [
      await barover(['resume', path, '--jobs', jobs, '--answers', ANSWERS]),
      await barover(['resume', path, '--jobs', jobs], { input: 'RO\n1111\n' }),
    ]
    for (const ran of [answers, piped]) {
      expect(ran).toMatchObject({ code: 1, out: '' })
      expect(ran.err).toContain('A REAL job takes its answers from a person at a terminal')
    }
    expect(readFileSync(path).equals(before)).toBe(true)
  })

  it('torn: told as far as it can be known, by the exit code and by the review too', async () => {
    const { jobs } = withLog(torn)
    const [list, show, verify, review] = await Promise.all(
      ['jobs', 'show', 'verify', 'review'].map((name) =>
        barover([name, ...(name === 'jobs' ? [] : ['TC-401']), '--jobs', jobs]),
      ),
    )
    for (const one of [list, show, verify, review]) {
      expect(one?.code).toBe(1)
      expect(flat(one?.out ?? '')).toContain(
        'An unfinished last line of 20 bytes follows: it counts for nothing. A write that was cut off leaves one, and so does a file that was cut later; the log cannot tell which.',
      )
    }
    expect(flat(review?.out ?? '')).toMatch(/: An unfinished last line: what it was to say is not known/)
  })

  it('torn in an open job: taken up with the torn piece set aside, by how many lines and from which head', async () => {
    const { jobs, path } = withLog((bytes) => torn(cut(bytes)))
    const whole = linesOf(cut(Buffer.from(done.bytes)))
    const resumed = await barover(['resume', 'TC-401', '--jobs', jobs], { input: '' })
    expect(resumed.code).toBe(3)
    const told = flat(resumed.out)
    expect(told).toMatch(/An unfinished last line of 20 bytes follows: .* It was set aside in /)
    const head = (lineHash(whole.at(-1) ?? '').match(/.{8}/g) ?? []).join(' ')
    expect(told).toContain(
      `Taken up from ${whole.length} lines, the last of 2026-03-14 06:38. Their check number is: ${head}`,
    )
    expect(readFileSync(`${path}.torn`, 'utf8')).toContain('{"seq":62,"prev":"ab')
  })

  it.each([
    ['emptied', () => Buffer.alloc(0)],
    ['something else', () => Buffer.from('hello\n')],
    ['half of its first line', (bytes: Buffer) => bytes.subarray(0, 200)],
  ])('%s: refused in a sentence by all three, and no fault of the program', async (_, change) => {
    const { jobs, path } = withLog(change)
    const ran = await Promise.all([
      barover(['jobs', '--jobs', jobs]),
      barover(['show', path]),
      barover(['verify', path]),
      barover(['resume', path]),
    ])
    expect(ran.map((one) => one.code)).toEqual([4, 4, 4, 4])
    for (const one of ran) expect(one.err).not.toContain('A fault in Barover')
  })

  it('rewritten so that it names a step that is not there: a file problem, no fault of the program', async () => {
    const { jobs, path } = withLog((bytes) =>
      rewritten(bytes, (entry) =>
        'step' in entry && entry.step === 'strip' ? { ...entry, step: 'nowhere' } : entry,
      ),
    )
    const ran = await Promise.all([
      barover(['jobs', '--jobs', jobs]),
      barover(['show', path]),
      barover(['verify', path]),
    ])
    expect(ran.map((one) => one.code)).toEqual([0, 4, 1])
    for (const one of ran) expect(one.err).not.toContain('A fault in Barover')
  })
})
