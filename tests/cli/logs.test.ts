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
    expect(list.out).toMatch(
      /^EXAMPLE {3}2026-03-14-0620-TC-401-1-bore-inspection-\w{4} {2}\d+ entries {2}closed with MONITOR\n$/,
    )
    expect(show.code).toBe(0)
    expect(show.out).toContain('( MONITOR )')
    expect(show.out).toContain('All readings')
    for (const line of show.out.trimEnd().split('\n')) expect(line).toMatch(/^EXAMPLE /)
    expect(verify.code).toBe(0)
    expect(verify.out).toContain('checked: the last line is the one noted')
    for (const line of verify.out.trimEnd().split('\n')) expect(line).toMatch(/^EXAMPLE /)
  })

  it('without a noted head says what could not be checked', async () => {
    const { jobs } = withLog((bytes) => bytes)
    const { code, out } = await barover(['verify', 'TC-401', '--jobs', jobs])
    expect(code).toBe(0)
    expect(out).toContain(
      'unknown: NOT PROVED that no lines were cut off the end; only a head noted elsewhere shows that',
    )
    expect(out).toContain(
      'unknown: NOT PROVED that the log was not written anew; only a head noted elsewhere shows that',
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
  it('with one figure changed: refused by show, called damaged, and verify names the line', async () => {
    const { jobs } = withLog(flip)
    const [list, show, verify, resume] = await Promise.all([
      barover(['jobs', '--jobs', jobs]),
      barover(['show', 'TC-401', '--jobs', jobs]),
      barover(['verify', 'TC-401', '--jobs', jobs]),
      barover(['resume', 'TC-401', '--jobs', jobs]),
    ])
    expect(list).toMatchObject({ code: 0 })
    expect(list.out).toContain('DAMAGED: barover verify says where')
    expect(show).toMatchObject({ code: 4, out: '' })
    expect(show.err).toMatch(/Line \d+ was changed/)
    expect(verify.code).toBe(1)
    expect(verify.out).toMatch(/Line \d+ was changed: its content does not match its own hash/)
    expect(resume).toMatchObject({ code: 4, out: '' })
  })

  it('cut: a shorter job to itself, found out by the noted head', async () => {
    const { jobs } = withLog(cut)
    const [alone, noted] = await Promise.all([
      barover(['verify', 'TC-401', '--jobs', jobs]),
      barover(['verify', 'TC-401', '--jobs', jobs, '--head', done.head]),
    ])
    expect(alone.code).toBe(0)
    expect(alone.out).toContain('unknown: NOT PROVED that no lines were cut off')
    expect(noted.code).toBe(1)
    expect(noted.out).toContain('lines were removed at the end or changed')
  })

  it('rewritten whole: sound to itself but for what its own figures say, found out by the noted head', async () => {
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
    expect(alone.out).toContain(
      'unknown: NOT PROVED that the log was not written anew; only a head noted elsewhere shows that',
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
    expect(out).toContain('this version comes to MONITOR')
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
    expect(out).toContain('The copy of machine.yaml does not match the hash beside it.')
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

  it('torn: shown with a word about it, and not called sound at its end', async () => {
    const { jobs } = withLog(torn)
    const [show, verify] = await Promise.all([
      barover(['show', 'TC-401', '--jobs', jobs]),
      barover(['verify', 'TC-401', '--jobs', jobs]),
    ])
    expect(show.code).toBe(0)
    expect(show.out.replace(/\n.*?│ +/g, ' ')).toContain(
      'An unfinished last line follows; it was never shown as saved.',
    )
    expect(verify.out).toContain('an unfinished piece of 20 bytes at the end proves nothing')
  })

  it('torn in an open job: taken up with the torn piece set aside', async () => {
    const { jobs, path } = withLog((bytes) => torn(cut(bytes)))
    const resumed = await barover(['resume', 'TC-401', '--jobs', jobs], { input: '' })
    expect(resumed.code).toBe(3)
    expect(resumed.out).toContain('An unfinished last line of 20 bytes, never shown as saved, was set aside')
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
    expect(ran.map((one) => one.code)).toEqual([0, 4, 1, 4])
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
