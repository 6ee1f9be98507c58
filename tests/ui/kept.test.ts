// A line keyed while sides are still to be turned over: never lost without a word, and never an answer that nobody looked at.
import { describe, expect, it, vi } from 'vitest'
import { drawJob } from '../../src/ui/draw-job.tsx'
import { endsWithTest, keyLine } from '../helpers/drawn.ts'
import { GAS_LINES, LOCK_LINES, Walk, WORD_LINES } from '../helpers/example.ts'
import { fakeTerminal, memorySession } from '../helpers/fake-terminal.ts'

vi.hoisted(() => {
  process.env.CI = 'false'
  process.env.CONTINUOUS_INTEGRATION = 'false'
})

function draw(walk: Walk) {
  const terminal = fakeTerminal({ cols: 40, rows: 15 })
  const memory = memorySession(walk)
  endsWithTest(terminal, drawJob(memory.session, { width: 39, record: 'EXAMPLE', ascii: true }, terminal))
  const { screen, send } = terminal
  const say = (line: string) => keyLine(terminal, line)
  const turnAll = async () => {
    while (!/Up: (?:turn )?back/.test(screen.flow)) {
      const before = screen.text
      send('\r')
      await screen.until('the next side', () => screen.text !== before)
    }
  }
  /** An Enter that came with the one before is no answer, so it may take two. */
  const enterUntil = (done: () => boolean) =>
    expect
      .poll(() => {
        if (!done()) send('\r')
        return done()
      })
      .toBe(true)
  return { ...memory, screen, send, say, turnAll, enterUntil }
}

describe('a figure keyed before the question is up', () => {
  it('waits, stands on the line with the question, and is taken by an Enter of its own', async () => {
    const { screen, say, turnAll, written, enterUntil } = draw(new Walk().toBore())
    await screen.see('Enter turns over: 1 of 4')
    await say('9.5033')
    await screen.see('Kept: 9.5033. Enter: 1/4')
    expect(screen.input).toBe('')
    await turnAll()
    await screen.until('on the line', () => screen.input === '9.5033')
    expect(screen.flow).toContain('Reading (in)')
    expect(screen.flow).not.toContain('Kept')
    expect(written).toEqual([])
    await enterUntil(() => written.length > 0)
    expect(written.map(({ type }) => type)).toEqual(['reading.taken'])
  })

  it('is not overwritten by a second one, which is told', async () => {
    const { screen, say, turnAll, written } = draw(new Walk().toBore())
    await screen.see('Enter turns over: 1 of 4')
    await say('9.5033')
    await screen.see('Kept: 9.5033.')
    await say('9.5034')
    await screen.see('Not taken: 9.5034.')
    await turnAll()
    await screen.until('the first on the line', () => screen.input === '9.5033')
    expect(written).toEqual([])
  })

  it('is gone once somebody tells of danger: what was read before that is not sent after it', async () => {
    const { screen, say, turnAll, written } = draw(new Walk().toBore())
    await screen.see('Enter turns over: 1 of 4')
    await say('9.5033')
    await screen.see('Kept: 9.5033.')
    await say('the block is out')
    await screen.see('FIRST: come out')
    await turnAll()
    expect(screen.input).toBe('')
    expect(screen.flow).not.toContain('Kept')
    expect(written).toEqual([])
  })

  it('answers nothing else where the hold point falls under it, and that is told', async () => {
    const walk = new Walk().toBore()
    const { screen, say, session, written } = draw(walk)
    await screen.see('Enter turns over: 1 of 4')
    await say('9.5033')
    await screen.see('Kept: 9.5033.')
    walk.now = { ...walk.now, ms: walk.now.ms + 31 * 60_000 }
    await session.tick()
    await screen.see('Not taken: 9.5033. Something else')
    expect(screen.input).toBe('')
    expect(written.map(({ type }) => type)).toEqual(['gate.closed'])
  })

  it('that may be a PIN is neither kept nor drawn', async () => {
    const { screen, send, turnAll } = draw(new Walk().toBore())
    await screen.see('Enter turns over: 1 of 4')
    send('2596')
    await screen.until('not drawn', () => screen.input === '(not shown)')
    send('\r')
    await screen.see('Not taken.')
    await turnAll()
    expect(screen.input).toBe('')
    expect(screen.raw).not.toContain('2596')
  })
})

describe('a line of a hold point', () => {
  it('is never kept', async () => {
    const { screen, say, turnAll } = draw(new Walk().toGate())
    await screen.see('Enter turns over: 1 of 2')
    await say('L-101')
    await screen.see('Not taken: L-101. Enter: 1/2')
    await turnAll()
    expect(screen.input).toBe('')
  })
})

describe('a line keyed while an answer is turned over', () => {
  it('goes to the question that was up before', async () => {
    const { screen, say, send, written } = draw(new Walk().toBore().keys('9.5033'))
    await screen.see('2nd of 2, afresh')
    await say('what gap is too much?')
    await screen.see('Enter turns over: 1 of')
    await say('9.5034')
    await screen.see('Kept: 9.5034.')
    while (screen.flow.includes('Kept: 9.5034.')) {
      const before = screen.text
      send('\r')
      await screen.until('the next side', () => screen.text !== before)
    }
    await screen.until('on the line', () => screen.input === '9.5034')
    expect(screen.flow).toContain('2nd of 2, afresh')
    expect(written).toEqual([])
  })
})

describe('at the witness, whose question is on a later side', () => {
  it.each(['gas is coming out', 'who may witness?'])('%j is heard at once', async (line) => {
    const { screen, say, written } = draw(
      new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES, ...GAS_LINES),
    )
    await screen.see('Enter turns over: 1 of 5')
    await say(line)
    await screen.see(line.startsWith('gas') ? 'FIRST: come out' : 'a mechanic or lead')
    expect(screen.flow).not.toContain('Not taken')
    expect(written).toEqual([])
  })
})
