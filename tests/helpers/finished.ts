// The example job run to its end once for a file of tests, and laid into a folder of its own for each.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, dirname, join } from 'node:path'
import { beforeAll } from 'vitest'
import { ANSWERS, barover, runArgs } from './cli.ts'
import { logPath } from './pty.ts'

export interface Finished {
  /** Of its file. */
  name: string
  bytes: Buffer
  head: string
}

/** Filled before the first test. */
export function finishedJob(): Finished {
  const done: Finished = { name: '', bytes: Buffer.alloc(0), head: '' }
  beforeAll(async () => {
    const jobs = mkdtempSync(join(tmpdir(), 'barover-finished-'))
    const ran = await barover(runArgs(jobs, '--answers', ANSWERS, '--json'))
    done.name = basename(logPath(jobs))
    done.bytes = readFileSync(logPath(jobs))
    done.head = (JSON.parse(ran.out) as { head: string }).head
    rmSync(jobs, { recursive: true })
  }, 60_000)
  return done
}

/** Its log, or these bytes in the place of it, in `jobs`. */
export function laidInto(jobs: string, { name }: Finished, bytes: Buffer): { jobs: string; path: string } {
  const path = join(jobs, 'example', name)
  mkdirSync(dirname(path), { recursive: true })
  writeFileSync(path, bytes)
  return { jobs, path }
}
