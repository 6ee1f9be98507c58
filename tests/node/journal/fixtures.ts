// Shared by the journal tests: temp folders, sample lines and a file port that can be made to fail.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach } from 'vitest'
import { buildLine, type Entry, GENESIS, lineHash } from '../../../src/node/journal/chain.ts'
import { type JournalFs, nodeFs } from '../../../src/node/journal/fs-port.ts'
import type { JournalSystem } from '../../../src/node/journal/journal-file.ts'
import { JournalProblem } from '../../../src/node/journal/problem.ts'
import { type ProcessView, thisComputer } from '../../../src/node/journal/process-view.ts'

export const AT = '2026-03-02T06:52:10-06:00'

/** Call inside a describe or at the top of a file: gives a fresh folder to each caller and removes all after each test. */
export function tempFolders(): () => string {
  const made: string[] = []
  afterEach(() => {
    for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true })
  })
  return () => {
    const folder = mkdtempSync(join(tmpdir(), 'journal-'))
    made.push(folder)
    return folder
  }
}

export function reading(value: number, note = 'plain'): Entry {
  return { type: 'reading.recorded', value, unit: 'mm', note }
}

/** Sound lines without newlines. */
export function linesOf(entries: readonly Entry[]): string[] {
  const lines: string[] = []
  let prev = GENESIS
  for (const [seq, entry] of entries.entries()) {
    const line = buildLine(entry, { seq, prev, at: AT })
    lines.push(line)
    prev = lineHash(line)
  }
  return lines
}

export function bytesOf(lines: readonly string[]): Buffer {
  return Buffer.from(lines.map((line) => `${line}\n`).join(''), 'utf8')
}

export function headOf(lines: readonly string[]): string {
  const last = lines.at(-1)
  return last === undefined ? GENESIS : lineHash(last)
}

/** The real file calls with some replaced, on the real process or a made-up one. */
export function systemWith(port: Partial<JournalFs>, view: Partial<ProcessView> = {}): JournalSystem {
  return { port: { ...nodeFs, ...port }, view: { ...thisComputer, ...view } }
}

export function systemError(code: string): Error {
  return Object.assign(new Error(`${code}: made to fail`), { code })
}

/** Runs the work and returns the JournalProblem it must end in. */
export async function problemOf(work: () => unknown): Promise<JournalProblem> {
  try {
    await work()
  } catch (error) {
    if (error instanceof JournalProblem) return error
    throw error
  }
  throw new Error('expected a JournalProblem, but nothing went wrong')
}

export function textOf(path: string): string {
  return readFileSync(path, 'utf8')
}
