// A PIN on the drawn screen: keyed, keyed ahead, keyed twice, half keyed when its question falls, and STOP in its place.
import { describe, expect, it, vi } from 'vitest'
import { drawJob } from '../../src/ui/draw-job.tsx'
import { endsWithTest } from '../helpers/drawn.ts'
import { GAS_LINES, LOCK_LINES, Walk, WORD_LINES } from '../helpers/example.ts'
import { fakeTerminal, memorySession } from '../helpers/fake-terminal.ts'

vi.hoisted(() => {
  process.env.CI = 'false'
  process.env.CONTINUOUS_INTEGRATION = 'false'
})

const style = { width: 79, record: 'EXAMPLE' as const, ascii: false }

function draw(walk: Walk, slow = false) {
  const terminal = fakeTerminal({ cols: 80, rows: 24 })
  const memory = memorySession(walk, slow)
  const done = drawJob(memory.session, style, terminal)
  endsWithTest(terminal, done)
  const { screen, send } = terminal
  const shown = (input: string) => screen.until(`${input} on the line`, () => screen.input === input)
  return { ...memory, screen, send, shown }
}

const atWitness = () => new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES, ...GAS_LINES)

/** The witness keys their initials, and the PIN is asked. */
async function askedForPin({ screen, send, shown }: ReturnType<typeof draw>): Promise<void> {
  await screen.see('keys their own initials')
  send('ML')
  await shown('ML')
  send('\r')
  await screen.see('PIN of ML')
}

describe('a PIN', () => {
  it('is not drawn, and neither is how long it is', async () => {
    const drawing = draw(atWitness())
    const { screen, send, shown, written } = drawing
    await askedForPin(drawing)
    send('2596')
    await shown('(not shown)')
    send('\r')
    await screen.see('Wipe the bore')
    expect(written.map((e) => e.type)).toEqual(['evidence.given', 'gate.opened'])
    expect(screen.raw).not.toMatch(/2596|259/)
  })

  it('keyed ahead of its question, while a line before is on its way to disk, is not drawn and fits', async () => {
    const walk = atWitness()
    const { screen, send, written, letThrough } = draw(walk, true)
    await screen.see('keys their own initials')
    send('note looking')
    await screen.until('the note keyed', () => screen.input === 'note looking')
    send('\r')
    await screen.until('the note taken', () => screen.input === '')
    send('ML')
    await screen.until('the initials keyed', () => screen.input === 'ML')
    send('\r')
    await screen.until('the initials taken', () => screen.input === '')
    for (const key of '2596') send(key)
    await screen.until('the PIN keyed', () => screen.input === '(not shown)')
    send('\r')
    await screen.until('the PIN taken', () => screen.input === '')
    letThrough()
    // The signature itself has to wait for the disk too.
    const types = () => {
      letThrough()
      return written.map((e) => e.type)
    }
    await expect.poll(types).toContain('gate.opened')
    expect(screen.raw).not.toMatch(/259|596/)
    expect(JSON.stringify(written)).not.toContain('2596')
  })

  it('keyed twice, the second time while the first is held against its key, answers nothing else', async () => {
    const walk = new Walk()
    const { screen, send, written, letThrough } = draw(walk, true)
    await screen.see('Your initials')
    send('RO')
    await screen.until('RO', () => screen.input === 'RO')
    send('\r')
    await screen.see('PIN of RO')
    for (const _ of 'ab') {
      send('4071')
      await screen.until('the PIN keyed', () => screen.input === '(not shown)')
      send('\r')
      await screen.until('the PIN taken', () => screen.input === '')
    }
    const seen = () => {
      letThrough()
      return screen.text
    }
    await expect.poll(seen).toContain('dropped and kept nowhere')
    expect(written.map((e) => e.type)).toEqual(['person.signed-on'])
    expect(screen.raw).not.toContain('4071')
  })

  it.each(['RO 4071', 'RO/4071', 'RO4071'])(
    'keyed behind initials, as %s, is neither drawn nor said again, and signs nothing',
    async (line) => {
      const { screen, send, written } = draw(new Walk())
      await screen.see('Your initials')
      send(line)
      await screen.until('not drawn', () => screen.input === '(not shown)')
      send('\r')
      await screen.see('Key the initials alone')
      expect(screen.raw).not.toMatch(/4071|071/)
      expect(written).toEqual([])
    },
  )

  it('hears stop and the one key', async () => {
    for (const stop of ['!', 'stop\r']) {
      const drawing = draw(atWitness())
      const { screen, send, written } = drawing
      await askedForPin(drawing)
      send(stop)
      await screen.see('STOP. Everybody out and clear.')
      expect(written[0]?.type).toBe('stop.raised')
    }
  })

  it('hears stop behind half of it', async () => {
    const drawing = draw(atWitness())
    const { screen, send, written } = drawing
    await askedForPin(drawing)
    send('25')
    await screen.until('half of it', () => screen.input === '(not shown)')
    send('stop\r')
    await screen.see('STOP. Everybody out and clear.')
    expect(written[0]?.type).toBe('stop.raised')
  })
})

describe('half a PIN when the gas test lapses under it', () => {
  it('and its other half answer nothing; words are seen and heard', async () => {
    const walk = atWitness()
    const drawing = draw(walk)
    const { screen, send, session, written } = drawing
    await askedForPin(drawing)
    send('25')
    await screen.until('half of it', () => screen.input === '(not shown)')
    walk.now = { ...walk.now, ms: walk.now.ms + 31 * 60_000 }
    await session.tick()
    await screen.see('read OXYGEN')
    await screen.until('the half gone', () => screen.input === '')
    send('96')
    await screen.until('the other half', () => screen.input === '(not shown)')
    send('\r')
    await screen.see('dropped and kept nowhere')
    send('20.9')
    await screen.until('the next answer', () => screen.input === '20.9')
    send('\r')
    await screen.see('[x] oxygen where people breathe  20.9 %vol')
    expect(written.map((e) => e.type)).toEqual(['gate.closed', 'evidence.given'])
    expect(screen.raw).not.toMatch(/2596|│ 96|│ 25/)
  })
})
