// barover adopt and barover remark on a job of their own files: what is written, and that a refusal leaves nothing behind.
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { ANSWERS, barover, MACHINE, runArgs } from '../helpers/cli.ts'
import { logPath } from '../helpers/pty.ts'

let jobs = ''
let bytes = ''
const log = () => readFileSync(logPath(jobs), 'utf8')
const adopt = (out: string, ...more: string[]) => [
  'adopt',
  'TC-401',
  '--machine',
  MACHINE,
  '--out',
  out,
  '--jobs',
  jobs,
  ...more,
]
const ALL = ['--renewed', 'none', '--hours', '60000']

beforeAll(async () => {
  jobs = mkdtempSync(join(tmpdir(), 'barover-adopt-'))
  await barover(runArgs(jobs, '--answers', ANSWERS))
  bytes = log()
}, 60_000)

afterAll(() => rmSync(jobs, { recursive: true, force: true }))

describe('STOP at the questions of a closed job', () => {
  const remark = () => ['remark', 'TC-401', '--text', 'valve on order', '--by', 'KH', '--jobs', jobs]
  const doubt = () => [
    'doubt',
    'TC-401',
    '--instrument',
    'M-3',
    '--why',
    'dropped',
    '--says',
    'lab',
    '--by',
    'KH',
  ]

  it.each([
    ['the PIN of a remark', () => remark(), 'stop\n'],
    ['what was made new', () => adopt(join(jobs, 'no.yaml'), '--hours', '60000'), 'stop\n'],
    ['the initials of who adopts', () => adopt(join(jobs, 'no.yaml'), ...ALL), 'stop\n'],
    ['the PIN of who adopts', () => adopt(join(jobs, 'no.yaml'), ...ALL, '--by', 'KH'), 'stop\n'],
    ['the PIN of a doubt', () => [...doubt(), '--jobs', jobs], 'stop\n'],
  ])(
    'is heard at %s: nothing goes on record, and what to do is said',
    async (_where, args, input) => {
      const before = log()
      const ran = await barover(args(), { input })
      expect(ran.code).toBe(1)
      const said = `${ran.out} ${ran.err}`.replace(/\s+(?:EXAMPLE\s+[│|])?\s*/g, ' ')
      expect(said).toContain('a STOP blocks nothing in it. Call out; barover safe has what to do')
      expect([log(), existsSync(join(jobs, 'no.yaml'))]).toEqual([before, false])
    },
    60_000,
  )
})

describe('barover adopt', () => {
  it('asks other initials where those may not sign, and adopts nothing without', async () => {
    const before = log()
    const out = join(jobs, 'machine-6.yaml')
    const none = await barover(adopt(out, ...ALL, '--by', 'XX'), { input: 'RO\n\n' })
    expect([none.code, existsSync(out), log()]).toEqual([1, false, before])
    expect(none.err).toMatch(/Initials of who signs: KH or PB\. What was said is kept/)
  }, 60_000)

  it('writes the record with one overhaul more, and the entry names its hash; a wrong PIN leaves only its own line', async () => {
    const out = join(jobs, 'machine-5.yaml')
    const wrong = await barover(adopt(out, ...ALL, '--by', 'KH'), { input: '0000\n' })
    expect([wrong.code, existsSync(out)]).toEqual([1, false])
    expect(wrong.out).toMatch(/Nothing was\s+(EXAMPLE\s+[│|]\s+)?adopted/)
    expect(log().slice(bytes.length)).toMatch(/^\{[^\n]*"type":"pin.missed"[^\n]*\}\n$/)
    const ran = await barover(adopt(out, '--hours', '60000', '--json'), { input: 'rings, rod\nKH\n8314\n' })
    expect([ran.code, JSON.parse(ran.out)]).toMatchObject([0, { refused: null }])
    const { overhauls } = parse(readFileSync(out, 'utf8'))
    const known = parse(readFileSync(MACHINE, 'utf8')).overhauls
    expect(overhauls.slice(0, -1)).toEqual(known)
    expect(overhauls.at(-1)).toMatchObject({ hours: '60000 h', renewed: ['rings', 'rod'] })
    const last = JSON.parse(log().trimEnd().split('\n').at(-1) ?? '')
    expect(last).toMatchObject({ type: 'left.adopted', by: 'KH', file: { name: 'machine-5.yaml' } })
  }, 60_000)

  it('writes over no file, and asks for nothing then', async () => {
    const there = join(jobs, 'there.yaml')
    writeFileSync(there, 'mine\n')
    const over = await barover(adopt(there, ...ALL))
    expect([over.code, over.out, readFileSync(there, 'utf8')]).toEqual([4, '', 'mine\n'])
    expect(over.err).toContain('is there already and was left as it is.')
  }, 60_000)
})

describe('barover remark', () => {
  it('keeps the words where the initials are wrong, and asks who says them', async () => {
    const said = ['remark', 'TC-401', '--text', 'kept words', '--by', 'XX', '--jobs', jobs]
    const ran = await barover(said, { input: 'KH\n8314\n' })
    expect([ran.code, ran.out]).toEqual([0, expect.stringMatching(/Remark of KH: kept words/)])
  }, 60_000)

  it('puts a lead’s words behind the close', async () => {
    const said = ['remark', 'TC-401', '--text', 'valve on order', '--by', 'KH', '--jobs', jobs]
    const ran = await barover(said, { input: '8314\n' })
    expect(ran.code).toBe(0)
    expect(ran.out).toMatch(/Remark of KH: valve on order/)
  }, 60_000)
})
