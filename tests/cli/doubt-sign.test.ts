// PINs keyed for closed jobs: wrong ones go on record there as in a job, three hold their person back, and none is asked where
// that could not be.
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { signDoubt } from '../../src/cli/doubt-sign.ts'
import type { Entry } from '../../src/core/job/entries.ts'
import { findJob, type JobFile, jobPath, listJobs } from '../../src/node/job-folder.ts'
import { createJob, openJob, readJob } from '../../src/node/job-store.ts'
import { UserError } from '../../src/node/user-error.ts'
import { pinOf, Walk } from '../helpers/example.ts'

let closed: readonly Entry[] = []
let jobs = ''
let said = ''

beforeAll(() => {
  const walk = new Walk().toVerdict().keys('1', 'PB', 'fit to run, none given', 'done')
  expect(walk.state.closed).not.toBeNull()
  closed = walk.entries
})

beforeEach(() => {
  jobs = mkdtempSync(join(tmpdir(), 'barover-doubt-sign-'))
  said = ''
  const keep = (text: unknown) => {
    said += String(text)
    return true
  }
  vi.spyOn(process.stdout, 'write').mockImplementation(keep)
  vi.spyOn(process.stderr, 'write').mockImplementation(keep)
})

afterEach(() => {
  vi.restoreAllMocks()
  rmSync(jobs, { recursive: true })
})

async function job(id: string): Promise<JobFile> {
  const [first, ...rest] = closed
  if (first === undefined) throw new Error('no entries')
  const path = jobPath(jobs, 'EXAMPLE', id)
  const journal = createJob(path, first)
  await journal.port.append(rest)
  journal.close()
  return findJob(jobs, id)
}

/** Entries that were added, by what they are. */
const added = ({ path }: JobFile) =>
  readJob(path)
    .entries.slice(closed.length)
    .map(({ type }) => type)

/** Signs with these lines keyed, and says how many were asked for. */
async function sign(files: readonly JobFile[], by: string, keyed: readonly string[]) {
  let asked = 0
  const ask = async (question: string) => {
    said += `${question}\n`
    return keyed[asked++] ?? Promise.reject(new UserError('no more was to be asked', 1))
  }
  const code = await signDoubt({
    files: files.map(({ id }) => findJob(jobs, id)),
    said: { instrument: 'M-3', why: 'dropped', says: 'certificate C-1183' },
    by,
    others: listJobs(jobs),
    values: {},
    asking: () => ({ ask, close: () => undefined }),
  })
  return { code, asked }
}

describe('a wrong PIN for closed jobs', () => {
  it('goes on record in each log it was keyed for, and the right one after it is taken', async () => {
    const two = [await job('one'), await job('two')]
    expect(await sign(two, 'KH', ['0000', 'PB', pinOf('KH')])).toEqual({ code: 3, asked: 3 })
    for (const one of two) expect(added(one)).toEqual(['pin.missed', 'instrument.doubted'])
    expect(said).toContain('Wrong PIN for KH in 2 of 2 jobs, 1 of 3. It is on record.')
    expect(said).toContain('this was none, and counts as no try')
    expect(said).not.toMatch(/0000|8314/)
  })

  it('three times in a row holds its person back, in every job of the folder', async () => {
    const [one, other] = [await job('one'), await job('other')]
    expect(await sign([one], 'KH', ['0000', '0000', '0000'])).toEqual({ code: 1, asked: 3 })
    expect(added(one)).toEqual(['pin.missed', 'pin.missed', 'pin.missed'])
    expect(said).toContain('Wrong PIN for KH, 3 of 3. It is on record. No other is looked at for 5 min.')
    for (const file of [one, other])
      await expect(sign([file], 'KH', [pinOf('KH')])).rejects.toThrow(/3 wrong PINs for KH in one: no other/)
    expect(added(other)).toEqual([])
    expect(await sign([other], 'PB', [pinOf('PB')])).toEqual({ code: 3, asked: 1 })
  })

  it('is not asked where a log cannot be written', async () => {
    const two = [await job('one'), await job('two')]
    const held = openJob(findJob(jobs, 'two').path)
    await expect(sign(two, 'KH', [pinOf('KH')])).rejects.toThrow(UserError)
    held.close()
    expect(two.map(added)).toEqual([[], []])
  })

  it.each([
    ['TS', /trainee/],
    ['XX', /nobody in the crew file/],
  ])('is not asked of who may not sign: %s', async (by, why) => {
    const one = await job('one')
    await expect(sign([one], by, [''])).rejects.toThrow(why)
    expect(said).toMatch(/Initials of who signs: .*KH.*What was said is kept/)
    expect(said).not.toMatch(/PIN of/)
    expect(added(one)).toEqual([])
  })

  it('other initials are asked then, and what was said of the instrument is kept', async () => {
    const one = await job('one')
    expect(await sign([one], 'XX', ['TS', 'KH', pinOf('KH')])).toEqual({ code: 3, asked: 3 })
    expect(added(one)).toEqual(['instrument.doubted'])
    expect(said).toMatch(/PIN of KH\. It is not shown while it is keyed; back leaves it\./)
  })
})
