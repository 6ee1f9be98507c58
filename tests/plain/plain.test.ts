// The same job as plain lines: all of it printed once, in order, nothing drawn over.
import { describe, expect, it, vi } from 'vitest'
import { runPlain } from '../../src/plain/plain.ts'
import { GATE_LINES, Walk, withPins } from '../helpers/example.ts'
import { memorySession } from '../helpers/fake-terminal.ts'
import { exampleAnswers } from '../helpers/walked.ts'

async function* given(lines: readonly string[]): AsyncGenerator<string> {
  yield* lines
}

async function run(walk: Walk, lines: readonly string[], prompts: boolean) {
  let text = ''
  const { session, written } = memorySession(walk)
  const out = {
    write: (more: string) => {
      text += more
    },
  }
  await runPlain(session, given(lines), {
    style: { width: 79, record: 'EXAMPLE', ascii: true },
    out,
    prompts,
  })
  return { text, written, session, flow: text.replace(/\n.*?\| ?/g, ' ').replace(/ +/g, ' ') }
}

describe('plain lines', () => {
  it('walk the example to its verdict', async () => {
    const { text, written } = await run(new Walk(), exampleAnswers(), true)
    expect(text).toContain('( MONITOR )')
    expect(written.at(-1)?.type).toBe('job.closed')
    expect(text).toMatch(/^[\n -~]*$/)
    for (const line of text.split('\n')) expect(line).toMatch(/^(EXAMPLE.*)?$/)
  })

  it('give each prompt with hazard, trouble, question and foot', async () => {
    const { text, flow } = await run(new Walk().toGate(), ['L-101'], true)
    expect(flow).toContain('Hazard: A start, a turn of the crank, or gas coming back can kill')
    expect(flow).toContain('In trouble: Come out, stand clear, say STOP.')
    expect(flow).toContain('Lock number at main driver breaker, E-1')
    expect(flow).toContain('Sheet 2 of 19')
    // The answer is printed back, then what came of it, then the next prompt.
    const order = [
      '| L-101',
      '[x] lock at main driver breaker, E-1  L-101',
      'Lock number at barring motor breaker',
    ]
    const places = order.map((one) => text.indexOf(one))
    expect(places.every((at) => at > 0)).toBe(true)
    expect([...places].sort((a, b) => a - b)).toEqual(places)
  })

  it('tell what is drawn in words, where nobody looks: no line of them is made of signs', async () => {
    let text = ''
    const walk = new Walk().toBore().keys('9.5033', '9.5034', '9.5021', '9.5020')
    const { session } = memorySession(walk)
    const out = {
      write: (more: string) => {
        text += more
      },
    }
    const style = { width: 79, record: 'EXAMPLE', ascii: true, linear: true } as const
    await runPlain(session, given(['9.5068', '9.5069']), { style, out, prompts: true })
    const flow = text.replace(/\n.*?\| ?/g, ' ').replace(/ +/g, ' ')
    expect(flow).toContain("Where: CENTRE of ring travel, 2 of 3 along it, from 12 to 6 o'clock")
    expect(flow).toContain('To come: CRANK END of ring travel.')
    expect(flow).toContain('TOP TO BOTTOM: HE 9.5034, CENTRE 9.5069, CE to come.')
    expect(text).not.toMatch(/[-=#+.']{4}|o to come/)
  })

  it('leave the prompts out for answers from a file, and print every entry once', async () => {
    const { text, flow } = await run(new Walk(), withPins(['RO', 'TC-401-1', 'done', ...GATE_LINES]), false)
    expect(text).not.toContain('Your initials')
    expect(text.split('signed on')).toHaveLength(2)
    expect(flow.match(/complete/g)).toHaveLength(1)
  })

  it('print a refusal and go on', async () => {
    const { flow, written } = await run(new Walk(), ['XX', 'RO', '4071'], false)
    expect(flow).toContain('XX')
    expect(written.map((entry) => entry.type)).toEqual(['person.signed-on'])
  })

  it('end when the job does, and read no line after it', async () => {
    const { session, text } = await run(new Walk(), ['RO', '4071', 'leave', 'TC-401-1'], true)
    expect(text.lastIndexOf('Which machine is this?')).toBeLessThan(text.indexOf('Left here.'))
    expect(session.snapshot().state.left).toBe(true)
    expect(session.snapshot().state.machineNamed).toBe(false)
  })

  it('show the make-safe sheet before sign-on and inside a question, and ask the same again', async () => {
    const { flow, written } = await run(new Walk(), ['safe', 'RO', '4071', 'note', 'safe', 'all fine'], true)
    expect(flow.split('MAKE SAFE').length).toBe(3)
    expect(flow).toContain('Call: Radio channel 1')
    expect(flow).toContain('Words: safe, stop, help')
    expect(written.map((entry) => entry.type)).toEqual(['person.signed-on', 'note.written'])
    expect(written[1]).toMatchObject({ text: 'all fine' })
  })

  it('let time act when a line comes, before it is heard', async () => {
    const walk = new Walk().toBore()
    const { session, written } = memorySession(walk)
    walk.now = { ...walk.now, ms: walk.now.ms + 31 * 60_000 }
    let text = ''
    const out = {
      write: (more: string) => {
        text += more
      },
    }
    const style = { width: 79, record: 'EXAMPLE' as const, ascii: true }
    await runPlain(session, given(['note here']), { style, out, prompts: true })
    expect(written.map((entry) => entry.type)).toEqual(['gate.closed', 'note.written'])
    expect(text.indexOf('COME OUT AND STAND CLEAR')).toBeLessThan(text.indexOf('Note: here'))
  })

  it('warn of a gas test that lapses, and call people out when it has, while nobody keys anything', async () => {
    vi.useFakeTimers()
    try {
      const walk = new Walk().toBore()
      const { session } = memorySession(walk)
      let text = ''
      let end = () => undefined as undefined
      async function* nobody(): AsyncGenerator<string> {
        await new Promise<void>((resolve) => {
          end = () => void resolve() as undefined
        })
      }
      const style = { width: 79, record: 'EXAMPLE', ascii: true } as const
      const out = {
        write: (more: string) => {
          text += more
        },
      }
      const running = runPlain(session, nobody(), { style, out, prompts: true })
      walk.wait(24)
      await vi.advanceTimersByTimeAsync(1100)
      expect(text.split('Gas test lapses at')).toHaveLength(2)
      expect(text).not.toContain('STAND CLEAR')
      walk.wait(6)
      await vi.advanceTimersByTimeAsync(1100)
      expect(text).toContain('HOLD. COME OUT AND STAND CLEAR')
      expect(text).toContain('type ALL OUT')
      end()
      await vi.advanceTimersByTimeAsync(10)
      await running
      expect(vi.getTimerCount()).toBe(0)
    } finally {
      vi.useRealTimers()
    }
  })

  it('name the step that was left out, and the line of an answer that was not taken', async () => {
    const gone = exampleAnswers()
      .join('\n')
      .replace('9.5019\n1\n9.5008\n9.5008\n9.5007\n9.5007', '9.5019\n2')
      .split('\n')
    const { flow } = await run(new Walk(), gone, false)
    expect(flow).toContain(
      'left out: 9 Unswept strip (only if step 8, Unswept strip, finds "A strip is there',
    )
    let text = ''
    const { session } = memorySession(new Walk())
    const style = { width: 79, record: 'EXAMPLE', ascii: true } as const
    const out = {
      write: (more: string) => {
        text += more
      },
    }
    await runPlain(session, given(['ZZ', 'RO', '4071']), {
      style,
      out,
      prompts: false,
      where: () => 'Line 7 of the answers',
    })
    expect(text.split('Line 7 of the answers was not taken.')).toHaveLength(2)
  })
})
