// Promise: a file that is on record is on disk. Real processes are killed between the copy and the entry, and around them.
import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { build } from 'esbuild'
import { afterEach, describe, expect, it } from 'vitest'
import { filesFolderOf } from '../../src/node/job-files.ts'
import { barover, runArgs } from '../helpers/cli.ts'
import { logged, logPath, terminals } from '../helpers/pty.ts'

const { folder } = terminals()
const children: ChildProcess[] = []

afterEach(() => {
  for (const child of children.splice(0)) child.kill('SIGKILL')
})

/** A job left at its start, with a photo beside it; the driver kills itself once it has said the word. */
async function killedAt(mode: 'copying' | 'kept' | 'logged') {
  const here = folder()
  const jobs = join(here, 'jobs')
  const answers = join(here, 'answers.txt')
  const photo = join(here, 'wall.jpg')
  writeFileSync(answers, 'clock 2026-03-14 06:20+00:00\nRO\n4071\nTC-401-1\nleave\n')
  writeFileSync(photo, 'a picture'.repeat(5000))
  await barover(runArgs(jobs, '--answers', answers))
  const driver = join(here, 'driver.mjs')
  const entry = new URL('./attach-driver.ts', import.meta.url).pathname
  const how = { bundle: true, platform: 'node', format: 'esm', target: 'node20', logLevel: 'error' } as const
  await build({ entryPoints: [entry], outfile: driver, ...how })
  const child = spawn(process.execPath, [driver, mode, logPath(jobs), photo], {
    stdio: ['pipe', 'pipe', 'inherit'],
  })
  children.push(child)
  let said = ''
  child.stdout?.on('data', (chunk) => {
    said += String(chunk)
  })
  await expect.poll(() => said, { timeout: 20_000, interval: 5 }).toContain(mode)
  child.kill('SIGKILL')
  await once(child, 'close')
  const checked = await barover(['verify', logPath(jobs), '--json'])
  const types = logged(jobs).map((e) => e.type)
  return {
    jobs,
    photo,
    types,
    code: checked.code,
    found: JSON.parse(checked.out) as {
      sound: boolean
      files: { name: string; state: string }[]
      strays: string[]
    },
    lies: readdirSync(filesFolderOf(logPath(jobs))),
  }
}

describe('kill -9', { timeout: 60_000 }, () => {
  it('while a file is copied leaves a piece that is on no record, and says so', async () => {
    const { types, code, found, lies } = await killedAt('copying')
    expect(types).not.toContain('file.attached')
    expect(code).toBe(0)
    expect(found).toMatchObject({ sound: true, files: [] })
    expect(lies).toEqual([expect.stringMatching(/^[0-9a-f]{12}\.part$/)])
    expect(found.strays).toEqual([expect.stringContaining('a copy that was not finished')])
  })

  it('between the copy and the entry leaves a copy that is on no record; the next of that name is another', async () => {
    const { jobs, photo, types, code, found, lies } = await killedAt('kept')
    expect(types).not.toContain('file.attached')
    expect(code).toBe(0)
    expect(lies).toEqual(['wall.jpg'])
    expect(found.strays).toEqual([expect.stringMatching(/^wall\.jpg: not in the log/)])
    const answers = join(jobs, 'more.txt')
    writeFileSync(answers, `RO\n4071\nattach ${photo}\nthe wall\nleave\n`)
    await barover(['resume', logPath(jobs), '--answers', answers])
    expect(logged(jobs).find((e) => e.type === 'file.attached')).toMatchObject({
      name: 'wall-2.jpg',
      given: 'wall.jpg',
      by: 'RO',
    })
  })

  it('between the entry and the next prompt loses neither', async () => {
    const { types, code, found, lies } = await killedAt('logged')
    expect(types.at(-1)).toBe('file.attached')
    expect(code).toBe(0)
    expect(lies).toEqual(['wall.jpg'])
    expect(found).toMatchObject({
      sound: true,
      files: [{ name: 'wall.jpg', state: 'as-attached' }],
      strays: [],
    })
  })
})
