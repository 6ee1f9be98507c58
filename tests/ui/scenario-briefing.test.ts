// What an instructor wrote for a scenario is read before the first question, on any screen: whole, in whole words, PRACTICE on each line.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it, vi } from 'vitest'
import { readDefinition } from '../../src/authoring/definition-file.ts'
import { practisedBy } from '../../src/core/practice/lint-scenario.ts'
import { drawJob } from '../../src/ui/draw-job.tsx'
import { endsWithTest } from '../helpers/drawn.ts'
import { ROOT, Walk } from '../helpers/example.ts'
import { fakeTerminal, memorySession } from '../helpers/fake-terminal.ts'
import { noFiles } from '../helpers/files.ts'
import { practiceDefs } from '../helpers/trainees.ts'
import { noVoice } from '../helpers/voice.ts'

vi.hoisted(() => {
  process.env.CI = 'false'
  process.env.CONTINUOUS_INTEGRATION = 'false'
})

function scenarioOf(name: string) {
  const file = join(ROOT, 'examples/scenarios', name)
  const read = readDefinition(readFileSync(file, 'utf8'), file)
  if (!read.ok || read.kind !== 'scenario') throw new Error(`no scenario: ${name}`)
  return read.value
}

/** Its opening is on the sheet, as of a session that was begun this moment. */
function opened(walk: Walk) {
  const shown = walk.entries.map((entry, key) => ({ kind: 'entry', key, entry, state: walk.state }) as const)
  return memorySession(walk, false, noFiles, noVoice, shown)
}

const spaced = (lines: readonly string[]) =>
  lines
    .map((line) => line.replace(/^PRACTICE *[|│] */, ''))
    .join(' ')
    .replace(/\s+/g, ' ')

describe.each(['one-end-wider.yaml', 'quiet-meter.yaml'])('the briefing of %s', (name) => {
  const scenario = scenarioOf(name)
  const defs = { ...practiceDefs(), scenario }

  it.each([
    ['80 by 24', { cols: 80, rows: 24 }],
    ['40 by 15', { cols: 40, rows: 15 }],
  ])('is turned over side by side before anybody signs on, at %s', async (_, size) => {
    const terminal = fakeTerminal(size)
    const { screen } = terminal
    const memory = opened(new Walk(defs, 'PRACTICE', { practice: practisedBy(scenario) }))
    const style = { width: size.cols - 1, record: 'PRACTICE' as const, ascii: size.cols < 80 }
    endsWithTest(terminal, drawJob(memory.session, style, terminal))
    await screen.see('Enter turns over: 1 of')
    const shown: string[] = []
    while (!screen.text.includes('Who is at the keyboard?')) {
      const before = screen.text
      const lines = before.split('\n').filter((line) => line.trim() !== '')
      for (const line of lines) expect(line).toMatch(/^PRACTICE/)
      // All but the row that turns over, the line that is keyed and the foot.
      const end = lines.findIndex((line) => line.includes('Enter turns over'))
      shown.push(...lines.slice(0, end))
      terminal.send('\r')
      await screen.until('the next side', () => screen.text !== before)
    }
    const told = spaced(shown)
    expect(told).toContain(`Scenario: ${scenario.title}. All of it is made up.`)
    for (const text of scenario.briefing) expect(told).toContain(text)
    expect(told).toContain('What you would not go in on you do not key')
    expect(memory.written).toEqual([])
    expect(screen.wipes).toBe(0)
  })
})

it('how a hidden machine is asked is read before anybody signs on, and where the PINs are with each', async () => {
  const terminal = fakeTerminal({ cols: 80, rows: 24 })
  const { screen } = terminal
  const memory = opened(new Walk(practiceDefs(), 'PRACTICE', { practice: { seed: 12, level: 2 } }))
  endsWithTest(terminal, drawJob(memory.session, { width: 79, record: 'PRACTICE', ascii: false }, terminal))
  await screen.see('Enter turns over: 1 of')
  expect(screen.flow).toContain('look and measure ask the machine where the sheet stands')
  expect(screen.flow).toContain('also where nothing is hidden')
  expect(screen.text).not.toContain('Who is at the keyboard?')
  while (!screen.text.includes('Who is at the keyboard?')) {
    const before = screen.text
    terminal.send('\r')
    await screen.until('the next side', () => screen.text !== before)
  }
  terminal.send('TS')
  await screen.until('TS', () => screen.input === 'TS')
  terminal.send('\r')
  await screen.see('Practice PINs: at the head of crew.yaml')
})
