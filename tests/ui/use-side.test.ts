// A low terminal: what is asked is folded, is turned over by Enter, and is answered only once all of it was up.
import { describe, expect, it, vi } from 'vitest'
import { untakenRow } from '../../src/core/sheet/turning.ts'
import { drawJob } from '../../src/ui/draw-job.tsx'
import { heldBack } from '../../src/ui/use-side.ts'
import { endsWithTest, keyLine } from '../helpers/drawn.ts'
import { Walk } from '../helpers/example.ts'
import { fakeTerminal, memorySession } from '../helpers/fake-terminal.ts'

vi.hoisted(() => {
  process.env.CI = 'false'
  process.env.CONTINUOUS_INTEGRATION = 'false'
})

const UP = '\u001b[A'

function draw(walk: Walk) {
  const terminal = fakeTerminal({ cols: 40, rows: 15 })
  const memory = memorySession(walk)
  endsWithTest(terminal, drawJob(memory.session, { width: 39, record: 'EXAMPLE', ascii: true }, terminal))
  const { screen } = terminal
  const say = (line: string) => keyLine(terminal, line)
  return { ...memory, terminal, screen, say }
}

describe('at 40 columns and 15 rows', () => {
  it('the hazard is up first and whole, and nothing is answered before it was turned over', async () => {
    const { terminal, screen, say, written } = draw(new Walk().toGate())
    await screen.see('Enter turns over: 1 of 2')
    expect(screen.flow).toContain('In trouble: Come out, stand clear, say STOP. Nobody goes in')
    expect(screen.text).not.toContain('Lock number')
    await say('L-101')
    await screen.see('Not taken: L-101. Enter: 1/2')
    expect(written).toEqual([])
    terminal.send('\r')
    await screen.see('Lock number at main driver')
    expect(screen.flow).toContain(
      'Hazard: A start, a turn of the crank, or gas coming back can kill whoever has an arm in the bore. Stand at',
    )
    terminal.send(UP)
    await screen.see('Enter turns over: 1 of 2')
    terminal.send('\r')
    await screen.see('Lock number at main driver')
    await say('L-101')
    // The same hazard was read: the next line of the hold point is asked at once, and turns back to it.
    await screen.see('Lock number at barring')
    expect(written.map((entry) => entry.type)).toEqual(['evidence.given'])
    expect(screen.flow).toContain('Up: turn back')
    expect(screen.flow).not.toMatch(/\d of \d +Up/)
    terminal.send(UP)
    await screen.see('Read before; Enter turns over')
    expect(screen.flow).toContain('Hazard: A start, a turn of the crank, or gas')
    expect(screen.wipes).toBe(0)
  })

  it('a question is heard on every side, and what was not heard is told until it is turned over', async () => {
    const { screen, terminal, say, written } = draw(new Walk().toGate())
    await screen.see('Enter turns over: 1 of 2')
    await say('L-101')
    await screen.see('Not taken: L-101. Enter: 1/2')
    await say('what is a lock?')
    await screen.see(/Enter turns over: 1 of [3-9]/)
    expect(screen.text).not.toContain('Not taken')
    await say('lock 7')
    await screen.see('Not taken: lock 7. Enter: 1/')
    terminal.send('x')
    await screen.until('x', () => screen.input === 'x')
    expect(screen.flow).toContain('Not taken: lock 7.')
    expect(written).toEqual([])
  })

  it('figures that may be a PIN keyed too early are not drawn and not told again', async () => {
    const { screen, terminal, written } = draw(new Walk().toGate())
    await screen.see('Enter turns over: 1 of 2')
    terminal.send('4071')
    await screen.until('it is not drawn', () => screen.input === '(not shown)')
    terminal.send('\r')
    await screen.see('Not taken. Enter: 1 of 2')
    expect(screen.raw).not.toMatch(/407/)
    expect(written).toEqual([])
  })

  it('STOP and words are heard on every side', async () => {
    const { screen, say, written } = draw(new Walk().toGate())
    await screen.see('Enter turns over')
    await say('where')
    await screen.see('Sheet 2 of 20, Hold point')
    await say('stop')
    await screen.see('STOP')
    await screen.until('the STOP', () => written.some((entry) => entry.type === 'stop.raised'))
    await screen.see('Enter turns over: 1 of 4')
    expect(screen.flow).toContain('say MAYDAY')
  })
})

it('what was not taken is told on any sheet, and nothing of it where it may be a PIN', () => {
  const told = (width: number, unheard: string) => untakenRow(2, 5, width, unheard).text
  expect(told(60, '9.5033')).toBe('Not taken: 9.5033. Enter turns over first: 3 of 5')
  expect(told(29, 'everybody is out')).toBe('Not taken: ever... Enter: 3/5')
  expect(told(60, '')).toBe('Not taken. Enter turns over first: 3 of 5')
  expect(told(29, '')).toBe('Not taken. Enter: 3 of 5')
})

describe('a line is held back', () => {
  it.each([
    ['stop', true, true, null],
    ['!', false, true, null],
    ['safe', true, true, null],
    ['leave', true, true, null],
    ['why', true, false, 'unseen'],
    ['why', false, true, null],
    ['9.5033', false, true, 'unread'],
    ['', false, true, 'turn'],
    ['', false, false, null],
    ['9.5033', false, false, null],
    ['', true, true, 'unseen'],
  ] as const)('"%s", too small %s, more to read %s: %s', (line, tooSmall, hasMore, why) => {
    expect(heldBack(line, tooSmall, hasMore, false)).toBe(why)
  })
})
