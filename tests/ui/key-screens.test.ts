// Eight key screens of a bore inspection at 80 columns and 24 rows, without colour, as a terminal shows them: whoever changes a
// screen sees what became of these. GOLDEN=write takes what is drawn now: look at it first.
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it, vi } from 'vitest'
import { drawJob } from '../../src/ui/draw-job.tsx'
import { endsWithTest, keyLine } from '../helpers/drawn.ts'
import { BORE_LINES, LOCK_LINES, ROOT, Walk, WORD_LINES } from '../helpers/example.ts'
import { type FakeTerminal, fakeTerminal, memorySession } from '../helpers/fake-terminal.ts'

vi.hoisted(() => {
  process.env.CI = 'false'
  process.env.CONTINUOUS_INTEGRATION = 'false'
})

const FILE = join(ROOT, 'tests/fixtures/screens.txt')

interface Shown {
  readonly title: string
  readonly walk: () => Walk
  /** Keyed on the screen itself. */
  readonly lines?: readonly string[]
  /** Words that stand there once it is drawn. */
  readonly sees: string
}

const SCREENS: readonly Shown[] = [
  { title: 'the plate of the machine', walk: () => new Walk().keys('RO'), sees: 'plate' },
  { title: 'a line of the hold point', walk: () => new Walk().toGate(), sees: 'Lock number' },
  {
    title: 'gas, picked and answered',
    walk: () => new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES),
    sees: 'xygen',
  },
  {
    title: 'a reading, and where',
    walk: () => new Walk().toBore().keys(...BORE_LINES.slice(0, 5)),
    sees: 'HERE',
  },
  {
    title: 'a figure that is doubted',
    walk: () => new Walk().toBore(),
    lines: ['9.053'],
    sees: '9.5030',
  },
  { title: 'the verdict and its decision', walk: () => new Walk().toVerdict(), sees: 'MONITOR' },
  {
    title: 'a question in plain words',
    walk: () => new Walk().toBore(),
    lines: ['what gap is too much'],
    sees: 'gap',
  },
  { title: 'STOP', walk: () => new Walk().toBore(), lines: ['stop'], sees: 'STOP' },
]

/** Until nothing more is drawn: a screen comes in several writes. */
async function quiet({ screen }: FakeTerminal): Promise<void> {
  for (let was = ''; was !== screen.raw; ) {
    was = screen.raw
    await new Promise((resolve) => setTimeout(resolve, 250))
  }
}

async function shown({ walk, lines = [], sees }: Shown): Promise<string> {
  const terminal = fakeTerminal({ cols: 80, rows: 24 })
  const { session } = memorySession(walk())
  endsWithTest(terminal, drawJob(session, { width: 79, record: 'EXAMPLE', ascii: false }, terminal))
  await terminal.screen.see('Sheet')
  for (const line of lines) await keyLine(terminal, line)
  await terminal.screen.see(sees)
  await quiet(terminal)
  expect(terminal.screen.wipes).toBe(0)
  const rows = terminal.screen.text.split('\n').map((row) => row.trimEnd())
  expect(rows.length).toBeLessThanOrEqual(24)
  expect(Math.max(...rows.map((row) => [...row].length))).toBeLessThanOrEqual(79)
  return rows.join('\n').trimEnd()
}

it('are as they are on file', async () => {
  const told: string[] = []
  for (const [n, one] of SCREENS.entries()) told.push(`=== ${n + 1}. ${one.title} ===\n${await shown(one)}\n`)
  const text = told.join('\n')
  if (process.env.GOLDEN === 'write') writeFileSync(FILE, text)
  expect(text).toBe(readFileSync(FILE, 'utf8'))
})
