// 40 columns and 15 rows: the drawing, counts that go on by one, a refusal over its question, and a PIN keyed while sides are turned over.
import { describe, expect, it, vi } from 'vitest'
import { countOf } from '../../src/core/sheet/turning.ts'
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
  const { screen } = terminal
  /** Turns over to the last side; the counts on the way. */
  const turnAll = async () => {
    const counts: string[] = []
    for (;;) {
      const [side] = /\d+ of \d+(?=\s+(?:Up|Sheet|Gas))/.exec(screen.flow) ?? []
      if (side !== undefined) counts.push(side)
      if (!screen.flow.includes('Enter turns over')) return counts
      const before = screen.text
      terminal.send('\r')
      await screen.until('the next side', () => screen.text !== before)
    }
  }
  return { ...memory, terminal, screen, say: (line: string) => keyLine(terminal, line), turnAll }
}

const atWitness = () => new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES, ...GAS_LINES)

describe('at 40 columns and 15 rows', () => {
  it('the drawing of a place to be measured has a side before the question', async () => {
    const { screen, terminal, turnAll } = draw(new Walk().toBore())
    await screen.see('Enter turns over: 1 of 4')
    terminal.send('\r')
    await screen.see('Swing it across')
    terminal.send('\r')
    await screen.see('HERE')
    expect(screen.text).toContain('|ring travel|')
    expect(screen.text).toContain('12-6 seen from HE')
    expect(await turnAll()).toEqual(['3 of 4', '4 of 4'])
    await screen.see('Reading (in)')
    expect(screen.flow).toContain('Hazard: Both arms in the bore. Ports have sharp edges.')
  })

  it('a refusal of few lines stands over the question it is of, on the side that was up', async () => {
    const { screen, say, turnAll, terminal } = draw(atWitness())
    await screen.see('Enter turns over: 1 of')
    const counts = await turnAll()
    const last = counts.at(-1)
    await say('XY')
    await screen.see('is nobody in the crew file')
    expect(screen.flow).toContain('key ML, KH or PB.')
    expect(screen.flow).toContain('May witness: ML')
    expect(screen.flow).toMatch(new RegExp(`${last} +Up: turn back`))
    // And the next line answers it at once.
    await say('ML')
    await screen.see('PIN of ML')
    expect(terminal.screen.wipes).toBe(0)
  })

  it('an answer before the last line takes no room from the question that came since', async () => {
    const { screen, say, turnAll } = draw(new Walk().toVerdict())
    await screen.see('Enter turns over: 1 of')
    await turnAll()
    await say('why')
    await screen.see(/Enter turns over: 1 of/)
    await turnAll()
    await say('1')
    await screen.see('Initials of the lead')
    await say('KH')
    await screen.see(/Enter turns over: 1 of|The reason/)
    const counts = await turnAll()
    await screen.see('The reason')
    expect(counts.length).toBeLessThan(4)
  })

  it('counts go on by one, also past sides that were read before', async () => {
    const { screen, say, turnAll } = draw(new Walk().toGate())
    await screen.see('Enter turns over: 1 of 2')
    await turnAll()
    await say('what is a lock?')
    await screen.see(/Enter turns over: 1 of/)
    const counts = await turnAll()
    const of = Number(counts[0]?.split(' of ')[1])
    expect(counts).toEqual(Array.from({ length: of }, (_, n) => `${n + 1} of ${of}`))
    await screen.see('Lock number at main driver')
  })

  it('figures keyed before all was turned over are not drawn, nor when a key turns it over under them', async () => {
    const { screen, terminal, written } = draw(new Walk().toGate())
    await screen.see('Enter turns over: 1 of 2')
    for (const figure of '2596') terminal.send(figure)
    await screen.until('not drawn', () => screen.input === '(not shown)')
    terminal.send('\u001b[B')
    await screen.see('Lock number at main driver')
    expect(screen.input).toBe('(not shown)')
    terminal.send('\u0015')
    await screen.until('an empty line', () => screen.input === '')
    // Everything is read: what is keyed now is seen.
    terminal.send('7')
    await screen.until('drawn', () => screen.input === '7')
    expect(screen.raw).not.toMatch(/259/)
    expect(written).toEqual([])
  })
})

describe('a side is counted', () => {
  const sides = { before: 2, front: 5, of: 7 }

  it.each([
    [0, false, { at: 0, of: 7 }],
    [6, false, { at: 6, of: 7 }],
    [1, true, { at: 1, of: 4 }],
    [5, true, { at: 2, of: 4 }],
    [6, true, { at: 3, of: 4 }],
  ])('%i, read before: %s', (at, read, count) => {
    expect(countOf(at, sides, read)).toEqual(count)
  })

  it('before the first, where it was read at an earlier question', () => {
    for (const at of [2, 3, 4]) expect(countOf(at, sides, true).at).toBeLessThan(0)
  })
})
