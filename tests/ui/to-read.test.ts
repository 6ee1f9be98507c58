// What is longer than the room above the question: from its beginning, before the question, and up in the transcript afterwards.
import { describe, expect, it, vi } from 'vitest'
import { drawJob } from '../../src/ui/draw-job.tsx'
import { endsWithTest, keyLine } from '../helpers/drawn.ts'
import { GAS_LINES, LOCK_LINES, pinOf, Walk, WORD_LINES } from '../helpers/example.ts'
import { fakeTerminal, memorySession } from '../helpers/fake-terminal.ts'

vi.hoisted(() => {
  process.env.CI = 'false'
  process.env.CONTINUOUS_INTEGRATION = 'false'
})

function draw(walk: Walk, size = { cols: 80, rows: 24 }) {
  const terminal = fakeTerminal(size)
  const memory = memorySession(walk)
  const done = drawJob(
    memory.session,
    { width: size.cols - 1, record: 'EXAMPLE', ascii: size.cols < 80 },
    terminal,
  )
  endsWithTest(terminal, done)
  const { screen } = terminal
  const say = async (line: string) => {
    await screen.until('an empty line', () => screen.input === '')
    await keyLine(terminal, line)
  }
  return { ...memory, terminal, screen, say }
}

describe('an answer longer than the room above the question', () => {
  it.each([
    ['80 by 24', { cols: 80, rows: 24 }],
    ['40 by 15', { cols: 40, rows: 15 }],
  ])(
    'begins with its first line, is turned over, and then the question is answered, at %s',
    async (_, size) => {
      const { terminal, screen, say, written } = draw(new Walk().toGate(), size)
      await screen.until('a line', () => screen.input === '')
      await say('help')
      await screen.see('A figure and Enter answer')
      await screen.see('Enter turns over: 1 of')
      await say('L-101')
      await screen.see('Not taken: L-101.')
      expect(written).toEqual([])
      let seen = screen.flow
      while (!screen.flow.includes('Lock number at main driver')) {
        const before = screen.text
        terminal.send('\r')
        await screen.until('the next side', () => screen.text !== before)
        seen += screen.flow
      }
      expect(seen).toContain('leave')
      // A word stands beside what it does, also where two of them have no room in one row.
      expect(seen).toMatch(/where[: ]+how far; next/)
      expect(size.cols < 80 ? seen : 'correct: mend what was keyed').toMatch(/correct: +mend what was keyed/)
      await say('L-101')
      await screen.until('the lock', () => written.length === 1)
      // It is in the transcript now, whole, over what was taken.
      await screen.see('Lock number at barring')
      expect(screen.wholeFlow.split('A figure and Enter answer').length - 1).toBe(1)
      expect(screen.wipes).toBe(0)
    },
  )

  it('gives way at once to what comes of itself', async () => {
    const { terminal, screen, say, session, written } = draw(new Walk().toBore())
    await screen.see('Reading (in)')
    await say('safe')
    await screen.see('Enter turns over: 1 of')
    await session.bring({ do: 'clock-moved', seconds: 4000 })
    await screen.until('what fell', () => written.length > 0)
    await screen.until(
      'the question, under all that was said',
      () =>
        !screen.text.includes('Enter turns over: 1 of') &&
        screen.wholeFlow.includes('FIRST OF ALL: come out'),
    )
    expect(screen.text).not.toContain('Reading (in)')
    expect(terminal.screen.wipes).toBe(0)
  })

  it('is told in the transcript as before where it has the room', async () => {
    const { screen, say } = draw(new Walk().toGate(), { cols: 80, rows: 50 })
    await say('help')
    await screen.see('A figure and Enter answer')
    await screen.see('Lock number at main driver')
    expect(screen.text).not.toContain('turns over')
  })

  it('goes up whole with another question, and with leaving', async () => {
    const { screen, say } = draw(new Walk().toGate())
    await say('help')
    await screen.see('Enter turns over: 1 of')
    await say('leave')
    await screen.until('the whole of it', () =>
      /A figure and Enter answer.*leave +take it up later.*Left/.test(screen.wholeFlow),
    )
  })
})

describe('on a low screen', () => {
  const LOW = { cols: 40, rows: 15 }

  /** Turns over to the question; what was read on the way. */
  const toQuestion = async ({ terminal, screen }: ReturnType<typeof draw>) => {
    await screen.until('an empty line', () => screen.input === '')
    let seen = screen.flow
    while (/Enter( turns over|:)/.test(screen.text)) {
      const before = screen.text
      terminal.send('\r')
      await screen.until('the next side', () => screen.text !== before)
      seen += ` ${screen.flow}`
    }
    return seen
  }

  it('the leave to go in is read from its beginning to its end before the next question', async () => {
    const drawn = draw(new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES, ...GAS_LINES), LOW)
    await toQuestion(drawn)
    await drawn.say('ML')
    await drawn.screen.see('PIN')
    drawn.terminal.send(pinOf('ML'))
    await drawn.screen.see('(not shown)')
    drawn.terminal.send('\r')
    await drawn.screen.see('Enter turns over: 1 of')
    const first = drawn.screen.flow
    expect(first).toMatch(/complete/)
    expect(`${first} ${await toQuestion(drawn)}`).toMatch(
      /complete[\s\S]*Now: what sheet 3[\s\S]*then come out/,
    )
  })

  it('what is amiss of a reading is read whole', async () => {
    const drawn = draw(new Walk().toBore(), LOW)
    await toQuestion(drawn)
    await drawn.say('9.5303')
    await drawn.screen.until('the first', () => drawn.written.length === 1)
    await toQuestion(drawn)
    await drawn.say('9.5034')
    await drawn.screen.until('the second', () => drawn.written.length === 2)
    expect(await toQuestion(drawn)).toMatch(/too far apart[\s\S]*put right by the word[\s\S]*correct/)
  })
})
