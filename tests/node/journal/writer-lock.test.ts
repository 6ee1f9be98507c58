import { spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { type JournalFs, nodeFs } from '../../../src/node/journal/fs-port.ts'
import { JournalProblem } from '../../../src/node/journal/problem.ts'
import { type ProcessView, thisComputer } from '../../../src/node/journal/process-view.ts'
import { takeWriterLock, type WriterLock } from '../../../src/node/journal/writer-lock.ts'
import { problemOf, systemError, tempFolders, textOf } from './fixtures.ts'

const folder = tempFolders()
const ON_LINUX = process.platform === 'linux'

function place(lock?: object | string): string {
  const file = join(folder(), 'job.jsonl')
  if (lock !== undefined)
    writeFileSync(`${file}.lock`, typeof lock === 'string' ? lock : JSON.stringify(lock))
  return file
}

function take(file: string, port: Partial<JournalFs> = {}, view: Partial<ProcessView> = {}): WriterLock {
  return takeWriterLock(file, { ...nodeFs, ...port }, { ...thisComputer, ...view })
}

function deadPid(): number {
  return spawnSync(process.execPath, ['--version']).pid
}

describe('the lock', () => {
  it('names process, host and start, and is gone after release', () => {
    const file = place()
    const lock = take(file)
    const { pid, host, started } = JSON.parse(textOf(`${file}.lock`))
    expect({ pid, host }).toEqual({ pid: process.pid, host: thisComputer.host })
    if (ON_LINUX) expect(started).toMatch(/^[0-9a-f-]{36} \d+$/)
    lock.release()
    lock.release()
    expect(readdirSync(join(file, '..'))).toEqual([])
  })

  it('refuses a second writer, naming process and host, and leaves no litter', async () => {
    const file = place()
    take(file)
    const problem = await problemOf(() => take(file))
    expect(problem.code).toBe('locked')
    expect(problem.message).toContain(`process ${process.pid} on this computer (${thisComputer.host})`)
    expect(readdirSync(join(file, '..'))).toEqual(['job.jsonl.lock'])
  })

  it('refuses another host even if no such process runs here', async () => {
    const file = place({ pid: deadPid(), host: 'elsewhere', started: null })
    const problem = await problemOf(() => take(file))
    expect(problem.code).toBe('locked')
    expect(problem.message).toContain('on computer elsewhere')
  })

  it.each(['', '{"pid"', '[]', '{"pid":0,"host":"x"}', '{"pid":-1,"host":"x"}', '{"pid":5}'])(
    'refuses a lock it cannot read: %s',
    async (text) => {
      const file = place(text)
      expect((await problemOf(() => take(file))).message).toContain('cannot be read')
      expect(textOf(`${file}.lock`)).toBe(text)
    },
  )

  it('leaves a lock alone that is no longer its own', () => {
    const file = place()
    const lock = take(file)
    writeFileSync(`${file}.lock`, 'other')
    expect(lock.isOurs()).toBe(false)
    lock.release()
    expect(textOf(`${file}.lock`)).toBe('other')
  })

  it('works on a disk without hard links', async () => {
    const noLinks = {
      linkSync: () => {
        throw systemError('EPERM')
      },
    }
    const file = place()
    const lock = take(file, noLinks)
    expect((await problemOf(() => take(file, noLinks))).code).toBe('locked')
    lock.release()
    writeFileSync(`${file}.lock`, JSON.stringify({ pid: deadPid(), host: thisComputer.host, started: null }))
    expect(take(file, noLinks).isOurs()).toBe(true)
  })
})

describe('the holder', () => {
  it('is replaced when dead', () => {
    const file = place({ pid: deadPid(), host: thisComputer.host, started: null })
    expect(take(file).isOurs()).toBe(true)
    expect(readdirSync(join(file, '..'))).toEqual(['job.jsonl.lock'])
  })

  it('is respected while it lives and replaced once it is gone', async () => {
    const child = spawn(process.execPath, ['-e', 'setInterval(() => {}, 1000)'])
    await once(child, 'spawn')
    const pid = child.pid ?? 0
    const file = place({ pid, host: thisComputer.host, started: thisComputer.startOf(pid) })
    const problem = await problemOf(() => take(file))
    expect(problem.message).toContain(`process ${pid} on this computer`)
    child.kill('SIGKILL')
    await once(child, 'exit')
    expect(take(file).isOurs()).toBe(true)
  })

  it.runIf(ON_LINUX)('is known by its start: a pid given out again is not the old writer', () => {
    const file = place({ pid: process.pid, host: thisComputer.host, started: '00000000-boot 1' })
    expect(take(file).isOurs()).toBe(true)
  })

  it('is taken to live when the start is not known on either side', async () => {
    const lock = { pid: process.pid, host: thisComputer.host, started: null }
    expect((await problemOf(() => take(place(lock)))).code).toBe('locked')
    const known = place({ ...lock, started: 'x 1' })
    expect((await problemOf(() => take(known, {}, { startOf: () => null }))).code).toBe('locked')
  })

  it.runIf(ON_LINUX)('is dead when only its entry in the process table is left', async () => {
    const parent = spawn('sh', ['-c', 'sleep 0 & echo $!; exec sleep 20'])
    const [said] = await once(parent.stdout, 'data')
    const pid = Number(String(said).trim())
    await expect.poll(() => thisComputer.isAlive(pid), { timeout: 5000 }).toBe(false)
    parent.kill('SIGKILL')
    await once(parent, 'exit')
  })
})

/** The port, calling `before` ahead of its every call with the number of the call. */
function counting(before: (call: number) => void): JournalFs {
  let calls = 0
  const wrapped = Object.entries(nodeFs).map(([name, call]) => [
    name,
    (...args: unknown[]) => {
      before(calls++)
      return (call as (...all: unknown[]) => unknown)(...args)
    },
  ])
  return Object.fromEntries(wrapped) as JournalFs
}

describe('two takers of a dead lock', () => {
  const staleLock = () => place({ pid: deadPid(), host: thisComputer.host, started: null })
  const tryTake = (file: string, port: JournalFs = nodeFs, view: Partial<ProcessView> = {}) => {
    try {
      return take(file, port, view)
    } catch (error) {
      if (error instanceof JournalProblem) return null
      throw error
    }
  }

  it('never both win, whichever file call the second one comes in at', () => {
    let stop = false
    let wonByFirst = 0
    for (let at = 0; !stop; at++) {
      const file = staleLock()
      let second: WriterLock | null = null
      stop = true
      const first = tryTake(
        file,
        counting((call) => {
          if (call !== at) return
          stop = false
          second = tryTake(file)
        }),
      )
      if (stop) break
      const holders = [first, second as WriterLock | null].filter((lock) => lock?.isOurs() === true)
      expect([at, holders.length]).toEqual([at, 1])
      // Whoever was told "yours" must be the one the file names.
      expect([first, second].filter((lock) => lock !== null)).toEqual(holders)
      if (first !== null) wonByFirst++
    }
    expect(wonByFirst).toBeGreaterThan(0)
  })

  it('the second still gets it when the first is killed at any file call', () => {
    const dead = deadPid()
    let reached = true
    for (let at = 0; reached; at++) {
      const file = staleLock()
      reached = false
      const dyingPort = counting((call) => {
        if (call < at) return
        reached = true
        throw systemError('KILLED')
      })
      try {
        take(file, dyingPort, { pid: dead, startOf: () => null })
      } catch (error) {
        expect(error).toHaveProperty('code', 'KILLED')
      }
      expect([at, take(file).isOurs()]).toEqual([at, true])
      expect(existsSync(`${file}.lock`)).toBe(true)
    }
  })
})
