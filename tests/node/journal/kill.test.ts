// Promise: an entry that was acknowledged is on disk. Real processes are killed at random moments.
import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { writeFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { build } from 'esbuild'
import { afterEach, describe, expect, it } from 'vitest'
import { createJournal, openJournal } from '../../../src/node/journal/journal-file.ts'
import { AT, reading, tempFolders, textOf } from './fixtures.ts'

const folder = tempFolders()
const KILLS = 24
const children: ChildProcess[] = []

// A failed test must not leave a program writing for ever.
afterEach(() => {
  for (const child of children.splice(0)) child.kill('SIGKILL')
})

async function bundledDriver(into: string): Promise<string> {
  const outfile = join(into, 'driver.mjs')
  const entry = new URL('./journal-driver.ts', import.meta.url).pathname
  await build({
    entryPoints: [entry],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'error',
  })
  return outfile
}

function newJournal(into: string): string {
  const path = join(into, 'job.jsonl')
  createJournal(path, reading(0), AT).journal.close()
  return path
}

function run(
  driver: string,
  mode: string,
  path: string,
): { child: ChildProcess; heard: () => string; has: (text: string) => Promise<void> } {
  const child = spawn(process.execPath, [driver, mode, path], { stdio: ['pipe', 'pipe', 'inherit'] })
  children.push(child)
  let text = ''
  child.stdout?.on('data', (chunk) => {
    text += String(chunk)
  })
  const has = async (wanted: string) => {
    await expect.poll(() => text, { timeout: 20_000, interval: 2 }).toContain(wanted)
  }
  return { child, heard: () => text, has }
}

/** Runs a writer, kills it at a random moment, and opens what it left. */
async function killOnce(driver: string, mode: 'append' | 'pieces', path: string) {
  const { child, heard, has } = run(driver, mode, path)
  await has('open')
  const delay = Math.random() * 40
  await wait(delay)
  child.kill('SIGKILL')
  await once(child, 'close')
  // A number cut off by the kill has no newline yet; it was not fully said, so it is not counted.
  const said = heard().split('\n').slice(1, -1)
  const { journal, entries, torn } = openJournal(path)
  journal.close()
  const onDisk = new Set(entries.map((entry) => String(entry.seq)))
  return { delay, said: said.length, lost: said.filter((seq) => !onDisk.has(seq)), torn }
}

describe('killing the writer', () => {
  it(`loses nothing acknowledged in ${KILLS} kills and more`, { timeout: 120_000 }, async () => {
    const driver = await bundledDriver(folder())
    let path = ''
    let torn = 0
    let acknowledged = 0
    // Goes on past the count until a kill has torn a line, so that the repair is seen at work too.
    for (let kill = 0; kill < KILLS || (torn === 0 && kill < 4 * KILLS); kill++) {
      // Several kills to one journal, but not so many that reading it takes the time.
      if (kill % 4 === 0) path = newJournal(folder())
      const {
        delay,
        said,
        lost,
        torn: piece,
      } = await killOnce(driver, kill % 2 === 0 ? 'append' : 'pieces', path)
      expect({ kill, delay, lost }).toEqual({ kill, delay, lost: [] })
      acknowledged += said
      if (piece !== null) {
        torn++
        expect(textOf(piece.savedTo).endsWith(`${piece.text}\n`)).toBe(true)
      }
    }
    expect(acknowledged).toBeGreaterThan(KILLS)
    expect(torn).toBeGreaterThan(0)
  })

  it('lets exactly one of four programs take over a dead lock', { timeout: 60_000 }, async () => {
    const here = folder()
    const driver = await bundledDriver(here)
    for (let round = 0; round < 5; round++) {
      const path = newJournal(folder())
      const { pid } = spawnSync(process.execPath, ['--version'])
      writeFileSync(`${path}.lock`, JSON.stringify({ pid, host: hostname(), started: null }))
      const runs = [1, 2, 3, 4].map(() => run(driver, 'hold', path))
      await Promise.all(runs.map(({ has }) => has('\n')))
      const answers = runs.map(({ heard }) => heard().trim()).sort()
      expect(answers).toEqual(['held', 'refused locked', 'refused locked', 'refused locked'])
      for (const { child } of runs) {
        child.stdin?.end()
        await once(child, 'close')
      }
      // The holder ended without closing; its lock is dead and the next one gets in.
      openJournal(path).journal.close()
    }
  })
})
