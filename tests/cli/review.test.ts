// barover review of a job on disk: finished, changed, cut short, with files beside it, and after a job of another crew file.
import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { buildLine, type Entry, GENESIS, lineHash } from '../../src/node/journal/chain.ts'
import { barover, MACHINE } from '../helpers/cli.ts'
import { finishedJob, laidInto } from '../helpers/finished.ts'
import { logPath, terminals } from '../helpers/pty.ts'

const { folder } = terminals()
const done = finishedJob()
const withLog = (bytes = done.bytes) => laidInto(folder(), done, bytes)
const review = (jobs: string, ...more: string[]) =>
  barover(['review', 'TC-401-1-bore', '--jobs', jobs, ...more])
const linesOf = (bytes: Buffer) => bytes.toString('utf8').split('\n').slice(0, -1)

describe('barover review', () => {
  it('prints it whole where there is no terminal, every line marked, and writes nothing', async () => {
    const { jobs, path } = withLog()
    const { code, out, err } = await review(jobs, '--ascii')
    expect({ code, err }).toEqual({ code: 0, err: '' })
    const lines = out.trimEnd().split('\n')
    for (const line of lines) expect(line).toMatch(/^EXAMPLE [\x20-\x7e]*$/)
    expect(lines[0]).toContain('REVIEW  TC-401-1')
    expect(lines[1]).toContain('closed with MONITOR')
    expect(lines[3]).toMatch(/^EXAMPLE {6}1 \| .*Answers from a file or a pipe/)
    expect(out).toMatch(/NC-1 Bore judged: MONITOR; KH decided: accept/)
    expect(out).toContain('Not proved whole')
    expect(readFileSync(path)).toEqual(done.bytes)
  })

  it('with another head than the noted one says first that the log is not sound, and takes none that cannot be one', async () => {
    const { jobs } = withLog()
    const other = await review(jobs, '--head', 'ab'.repeat(32))
    expect(other.code).toBe(1)
    expect(other.out).toMatch(/^EXAMPLE {6}1 │ THE LOG IS NOT SOUND: .*noted\s/m)
    // One was given: none is asked for again.
    expect(other.out).not.toContain('Not proved whole')
    expect(await review(jobs, '--head', 'abc')).toMatchObject({ code: 2, out: '' })
  })

  it('shows the entries behind a number, and refuses one that there is not', async () => {
    const { jobs } = withLog()
    const item = await review(jobs, '--item', '4')
    expect(item.code).toBe(0)
    expect(item.out).toMatch(/entry \d+ {3}2026-03-14 06:\d\d:\d\d \+00:00 {3}RO/)
    expect(item.out).toMatch(/Disposition by KH: ACCEPT +signed KH, keyed RO 06:40/)
    const none = await review(jobs, '--item', '99')
    expect(none).toMatchObject({ code: 2, err: '--item takes a number of this review, 1 to 12.\n' })
  })

  it('is one JSON object for other programs; with the noted check number the log is proved whole', async () => {
    const { jobs } = withLog()
    const { out, code } = await review(jobs, '--json', '--head', done.head)
    expect(code).toBe(0)
    const told = JSON.parse(out) as { exceptions: { kind: string; rank: number }[]; changes: unknown[] }
    expect(told).toMatchObject({ record: 'EXAMPLE', machine: 'TC-401-1', head: done.head })
    expect(told.exceptions.map((one) => one.kind)).toEqual([
      ...['unenforced', 'unenforced', 'hanging', 'verdict', 'deadline', 'fallback', 'apart'],
    ])
    expect(told.changes[0]).toMatchObject({ of: 'bore diameter', station: 'head_end', axis: 'vertical' })
  })
})

describe('what a lead keys', () => {
  const keyed = { input: 'act\nrelease\nremark\nseen with the owner\nKH\n8314\nentry 1\nleave\n' }

  it('comes from a pipe only where that is asked for: else nothing of it is heard', async () => {
    const { jobs, path } = withLog()
    const plain = await review(jobs)
    const piped = await barover(['review', 'TC-401-1-bore', '--jobs', jobs], keyed)
    expect(piped).toEqual(plain)
    expect(readFileSync(path)).toEqual(done.bytes)
  })

  it('is taken with --act by the rules of the job, signed, and told with what changed', async () => {
    const { jobs, path } = withLog()
    const { code, out, err } = await barover(['review', 'TC-401-1-bore', '--jobs', jobs, '--act'], keyed)
    expect(code).toBe(0)
    expect(out).toMatch(/What a lead does here.*remark: words of a lead on this closed job/s)
    expect(out).toMatch(/Not from here.*barover adopt/s)
    expect(out).toContain('release: not now')
    expect(out).toMatch(/Now \d+: Remark after the close, KH .*: seen with/)
    expect(out).toMatch(/entry 1 {3}2026-03-14/)
    expect(err).toContain('PIN of KH. It is not shown while it is keyed; back leaves it.')
    expect(out + err).not.toContain('8314')
    const log = readFileSync(path)
    expect(log.subarray(0, done.bytes.length)).toEqual(done.bytes)
    expect(linesOf(log).at(-1)).toContain('"type":"remark.made"')
  })
})

describe('of a log that is not as it was', () => {
  it('what its sound lines tell is shown, with that first, and the code says it', async () => {
    const changed = Buffer.from(done.bytes)
    const at = changed.indexOf('"typed":"9.5068"')
    changed.write('9.5048', at + '"typed":"'.length)
    const { jobs } = withLog(changed)
    const { code, out } = await review(jobs)
    expect(code).toBe(4)
    expect(out).toMatch(/^EXAMPLE {6}1 │ THE LOG IS NOT SOUND: Line \d+ was changed/m)
    expect(out).toMatch(/NOT KNOWN: read up to line \d+, \d+ from there on not/)
  })

  it('nothing is shown where not even the first line can be read', async () => {
    const { jobs } = withLog(Buffer.from('{"seq":0}\n'))
    expect(await review(jobs)).toMatchObject({
      code: 4,
      out: '',
      err: expect.stringMatching(/There is no entry in this journal/),
    })
  })
})

/** The chain built anew over other entries, as an earlier job would have it. */
function rewritten(change: (entry: Entry) => Entry): Buffer {
  let prev = GENESIS
  const lines = linesOf(done.bytes).map((line, seq) => {
    const { seq: _s, prev: _p, hash: _h, at, ...entry } = JSON.parse(line) as Entry & { at: string }
    const built = buildLine(change(entry as Entry), { seq, prev, at })
    prev = lineHash(built)
    return built
  })
  return Buffer.from(`${lines.join('\n')}\n`)
}

describe('beside other jobs', () => {
  it('the crew file is held against that of the last job before on the machine', async () => {
    const { jobs, path } = withLog()
    const earlier = join(dirname(path), done.name.replace('2026-03-14-0620', '2026-03-13-0620'))
    const crew = (entry: Entry): Entry => {
      if (entry.type !== 'job.opened') return entry
      const files = entry.files as { role: string; text: string }[]
      return {
        ...entry,
        files: files.map((f) =>
          f.role === 'crew' ? { ...f, text: f.text.replace('R. Oduya', 'R. Odd') } : f,
        ),
      }
    }
    writeFileSync(earlier, rewritten(crew))
    const { out } = await barover(['review', done.name, '--jobs', jobs, '--json'])
    const crewFound = (JSON.parse(out) as { exceptions: { kind: string; what: string }[] }).exceptions.filter(
      (one) => one.kind === 'crew',
    )
    expect(crewFound).toMatchObject([{ what: expect.stringMatching(/RO is R\. Oduya and was R\. Odd/) }])
  })

  it('an attached file that is gone stands among the first, and the code says it', async () => {
    const jobs = folder()
    writeFileSync(join(jobs, 'wall.jpg'), 'a picture')
    const lines = [
      'clock 2026-03-14 06:20+00:00',
      'RO',
      '4071',
      'TC-401-1',
      `attach ${join(jobs, 'wall.jpg')}`,
      'the wall',
      'leave',
    ]
    writeFileSync(join(jobs, 'answers.txt'), lines.join('\n'))
    await barover([
      'run',
      'bore-inspection',
      '--machine',
      MACHINE,
      '--answers',
      join(jobs, 'answers.txt'),
      '--jobs',
      jobs,
    ])
    const log = logPath(jobs)
    rmSync(join(log.replace('.jsonl', '.files')), { recursive: true, force: true })
    const { code, out } = await review(jobs)
    expect(code).toBe(1)
    expect(out).toMatch(/^EXAMPLE {6}1 │ Attached wall\.jpg: GONE$/m)
  })
})
