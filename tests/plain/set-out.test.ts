// A page of plain practice lines has the word PRACTICE on it, whichever page it is, and no word is broken at the edge of a terminal.
import { describe, expect, it } from 'vitest'
import { runPlain } from '../../src/plain/plain.ts'
import { setOut } from '../../src/plain/set-out.ts'
import { Walk } from '../helpers/example.ts'
import { memorySession } from '../helpers/fake-terminal.ts'
import { practiceDefs } from '../helpers/trainees.ts'

async function printed(columns: number): Promise<string[]> {
  const walk = new Walk(practiceDefs(), 'PRACTICE', { practice: { seed: 12, level: 2 } })
  const { session } = memorySession(walk)
  let text = ''
  const write = (some: string) => {
    text += some
  }
  const out = setOut({ write }, { record: 'PRACTICE', columns })
  const keyed = [
    'RO',
    'help',
    '4071',
    'look',
    'TC-401-1',
    'help',
    '',
    'fault',
    'show',
    'what gap is too much',
    'leave',
  ]
  const lines = (async function* () {
    yield* keyed
  })()
  const style = { width: columns === 40 ? 39 : 79, record: 'PRACTICE', ascii: false, linear: true } as const
  await runPlain(session, lines, { style, out, prompts: true })
  return text.split('\n')
}

describe.each([80, 40])('plain lines of practice on %i columns', (columns) => {
  it('have the mark on every page of the lowest screen', async () => {
    const rows = await printed(columns)
    expect(rows.length).toBeGreaterThan(40)
    for (let from = 0; from + 15 < rows.length; from++)
      expect(rows.slice(from, from + 15).join('\n'), `rows ${from} on`).toContain('PRACTICE')
  })

  it('fit, each broken at a space', async () => {
    const rows = await printed(columns)
    for (const one of rows) expect(one.length, one).toBeLessThan(columns)
  })
})

it('breaks no line of a pipe', async () => {
  const rows = await printed(Number.POSITIVE_INFINITY)
  expect(rows.some((one) => one.length > 80)).toBe(true)
  expect(rows.some((one) => one.startsWith('Asked:'))).toBe(true)
})
