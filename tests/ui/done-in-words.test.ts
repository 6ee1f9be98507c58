// A step that is done by hand, on a screen too low for it: Enter turns its sides, so Enter says nothing of what was done.
import { describe, expect, it, vi } from 'vitest'
import { drawJob } from '../../src/ui/draw-job.tsx'
import { endsWithTest, keyLine } from '../helpers/drawn.ts'
import { Walk } from '../helpers/example.ts'
import { fakeTerminal, memorySession } from '../helpers/fake-terminal.ts'

vi.hoisted(() => {
  process.env.CI = 'false'
  process.env.CONTINUOUS_INTEGRATION = 'false'
})

const atLast = () => new Walk().toVerdict().keys('1', 'KH', 'inside its limits, none given')

function draw(walk: Walk, cols: number, rows: number) {
  const terminal = fakeTerminal({ cols, rows })
  const memory = memorySession(walk)
  endsWithTest(
    terminal,
    drawJob(memory.session, { width: cols - 1, record: 'EXAMPLE', ascii: true }, terminal),
  )
  const { screen } = terminal
  const turnAll = async () => {
    while (screen.flow.includes('Enter turns over:')) {
      const before = screen.text
      terminal.send('\r')
      await screen.until('the next side', () => screen.text !== before)
    }
  }
  return { ...memory, terminal, screen, turnAll }
}

describe('the last sheet', () => {
  it('at 40 by 15 is not closed by the Enter that turned to it, and is by the word', async () => {
    const { session, terminal, screen, turnAll } = draw(atLast(), 40, 15)
    await screen.see('Enter turns over: 1 of')
    await turnAll()
    // What is to be done stands with the word that says it is done.
    expect(screen.flow).toMatch(/Oil the bore, cover both openings.* Key done when it is done/)
    terminal.send('\r')
    await screen.see('Enter turns over. Key done.')
    expect(session.snapshot().state.closed).toBeNull()
    await keyLine(terminal, 'done')
    await expect.poll(() => session.snapshot().state.closed).toBe('MONITOR')
  })

  it('keeps what is to be done in sight after a line that is no answer', async () => {
    const { terminal, screen, turnAll } = draw(atLast(), 40, 15)
    await screen.see('Enter turns over: 1 of')
    await turnAll()
    await keyLine(terminal, 'closed')
    await turnAll()
    expect(screen.flow).toMatch(/Oil the bore, cover both openings.* Key done when it is done/)
  })

  it('at 80 by 24, where all of it is in sight, is closed by Enter', async () => {
    const { session, terminal, screen } = draw(atLast(), 80, 24)
    await screen.see('Enter when it is done')
    await new Promise((resolve) => setTimeout(resolve, 700))
    terminal.send('\r')
    await expect.poll(() => session.snapshot().state.closed).toBe('MONITOR')
  })
})
