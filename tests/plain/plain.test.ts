// The job without a drawing: each thing said once, in order, nothing drawn over, and the question last.
import { describe, expect, it, vi } from 'vitest'
import { replay } from '../../src/app/replay.ts'
import type { SheetStyle } from '../../src/core/sheet/block.ts'
import { runPlain } from '../../src/plain/plain.ts'
import { createTeller } from '../../src/plain/tell.ts'
import { GATE_LINES, Walk, withPins } from '../helpers/example.ts'
import { type MemorySession, memorySession } from '../helpers/fake-terminal.ts'
import { changed, takenIn } from '../helpers/taken-in.ts'
import { exampleAnswers } from '../helpers/walked.ts'

const LINEAR: SheetStyle = { width: 79, record: 'EXAMPLE', ascii: true, linear: true }
const RULED: SheetStyle = { width: 79, record: 'EXAMPLE', ascii: true }

async function* given(lines: readonly string[]): AsyncGenerator<string> {
  yield* lines
}

async function run(
  walk: Walk,
  lines: readonly string[] | AsyncIterable<string>,
  more: Partial<Parameters<typeof runPlain>[2]> = {},
  memory: MemorySession = memorySession(walk),
) {
  let text = ''
  const { session, written } = memory
  const out = {
    write: (said: string) => {
      text += said
    },
  }
  const keyed = Array.isArray(lines) ? given(lines) : (lines as AsyncIterable<string>)
  await runPlain(session, keyed, { style: LINEAR, out, prompts: true, ...more })
  return { text, written, session, lines: text.split('\n').filter((line) => line !== '') }
}

const times = (text: string, words: string) => text.split(words).length - 1

describe('a job that is heard', () => {
  it('walks the example to its verdict, without columns, boxes or a rule', async () => {
    const { text, lines, written } = await run(new Walk(), exampleAnswers())
    expect(text).toContain('EXAMPLE. Verdict: MONITOR')
    expect(written.at(-1)?.type).toBe('job.closed')
    expect(text).toMatch(/^[\n -~]*$/)
    expect(text).not.toMatch(/\||\[|\( | {2}/)
    // What stays on is said before the Enter that closes the job, and once more on record.
    expect(text.indexOf('Left on the machine, by the record: 6 locks')).toBeLessThan(
      text.indexOf('Job closed with'),
    )
    expect(times(text, 'Left on the machine, by the record: 6 locks')).toBe(2)
    // A hazard for each step that has one, and no more.
    expect(times(text, 'Hazard:')).toBe(12)
    expect(lines.length).toBeLessThan(400)
    for (const line of lines.filter((one) => / Taken | Sheet \d+ of 20\./.test(one)))
      expect(line).toMatch(/^EXAMPLE\. /)
  })

  it('says hazard, how and where once, and what is asked as the last line, with its unit', async () => {
    const walk = new Walk().toBore()
    const { text, lines } = await run(walk, ['9.5033', '9.5034', '9.5021'])
    expect(times(text, 'Hazard: Both arms in the bore')).toBe(1)
    expect(times(text, 'Swing it across for the MOST')).toBe(1)
    expect(times(text, 'With M-3')).toBe(1)
    expect(lines.at(-1)).toMatch(/^Asked: 7\.2 .*, inch$/)
    const order = [
      'EXAMPLE. Sheet 7 of 20. 7.1 Bore, HEAD END',
      'Hazard: Both arms',
      "Where: HEAD END of ring travel, 1 of 3 along it, across the bore, from 12 to 6 o'clock",
      'Asked: 7.1 Reading, inch',
      'EXAMPLE. Taken 7.1: 9.5033 in, 241.384 mm, M-3',
      'EXAMPLE. Taken 7.1: again 9.5034 in',
      'EXAMPLE. 7.2 Bore, HEAD END of ring travel, SIDE TO SIDE',
    ]
    const places = order.map((one) => text.indexOf(one))
    expect(places.every((at) => at >= 0)).toBe(true)
    expect([...places].sort((a, b) => a - b)).toEqual(places)
  })

  it('names gas and unit in what is asked, and tells what was shown by its line', async () => {
    const { lines } = await run(new Walk().toGate(), withPins(GATE_LINES).slice(0, 12))
    expect(lines.join('\n')).toMatch(
      /^EXAMPLE\. Taken 2: lock at main driver breaker, E-1: L-101(, by RO .*)?$/m,
    )
    expect(lines).toContain('Asked: oxygen where people breathe, percent by volume')
    expect(lines.at(-1)).toBe('Asked: flammables where people breathe, percent of LEL')
  })

  it.each(['where', 'safe'])('says the step once more, whole, on the word %s', async (word) => {
    const { text } = await run(new Walk().toBore().keys('9.5033'), ['why', word])
    expect(times(text, 'Hazard: Both arms')).toBe(2)
    expect(times(text, 'In trouble: Come out and say STOP.')).toBe(2)
    expect(times(text, 'Swing it across')).toBe(2)
  })

  it('says the hazard again after STOP and coming back, and at the hold point before', async () => {
    const back = ['stop', '8', 'slipped', '?', 'release', 'KH', 'put right', '8314', 'ALL OUT']
    const { text } = await run(new Walk().toBore(), [
      ...back,
      ...withPins(GATE_LINES.filter((g) => g !== '1')),
    ])
    expect(times(text, 'Hazard: Both arms')).toBe(2)
    expect(times(text, 'Hazard: A start, a turn of the crank')).toBe(1)
    expect(text).toContain('STOP. Everybody out and clear.')
    expect(times(text, 'STOP open.')).toBeGreaterThan(3)
  })

  it('says the hazard again in the midst of a hold point where a figure failed', async () => {
    const { text } = await run(new Walk().toGate(), [...withPins(GATE_LINES).slice(0, 11), '17', 'ALL OUT'])
    expect(times(text, 'Hazard: A start, a turn of the crank')).toBe(2)
  })

  it('tells what was measured and is to come where a step is taken up, and what lapses when it is new', async () => {
    const walk = new Walk().toBore().keys('9.5033', '9.5034', '9.5021', '9.5020')
    const { text } = await run(walk, ['9.5068', '9.5069', 'where'])
    expect(text).toContain('To come: CRANK END of ring travel.')
    expect(text).toContain('Along the bore, in inches:')
    expect(times(text, 'Gas lapses 06:')).toBe(1)
    expect(text).not.toMatch(/Gas \d+ min old, lapses .*\nWords/)
    expect(text).not.toMatch(/[-=#+']{4}|o to come/)
  })

  it('gives the reasons of a HOLD once, also to the lead who decides', async () => {
    const answers = exampleAnswers()
    const at = answers.indexOf('9.5001')
    const held = [...answers.slice(0, at), 'n/a', 'The standard was dropped']
    const { text, lines } = await run(new Walk(), held)
    const reasons = lines.filter((line) => /set-check/i.test(line) && !/^EXAMPLE\. (Sheet|Taken)/.test(line))
    expect(text).toContain('Bore judged at 20 degC, 6 places: HOLD')
    expect(new Set(reasons).size).toBe(reasons.length)
    expect(lines.at(-1)).toMatch(/^Asked: the decision, 1 to 6 or its word/)
    expect(times(text, 'on the sheet')).toBe(0)
  })

  it('does not say again what the terminal shows, and never a PIN', async () => {
    const echoed = await run(new Walk(), ['RO', '4071', 'why'], { echoed: true })
    expect(echoed.text).not.toContain('Keyed:')
    const { text } = await run(new Walk(), ['RO', '4070', '4071', 'why'])
    expect(text).toContain('Keyed: why')
    expect(text).not.toMatch(/407[01]/)
    expect(text).not.toContain('Keyed: TC-401-1')
  })

  it('asks once where time goes by while a line is worked at', async () => {
    vi.useFakeTimers()
    try {
      const walk = new Walk()
      const slow = memorySession(walk, true)
      let go: (line: string | null) => void = () => undefined
      async function* keys(): AsyncGenerator<string> {
        for (;;) {
          const line = await new Promise<string | null>((resolve) => {
            go = resolve
          })
          if (line === null) return
          yield line
        }
      }
      let text = ''
      const out = {
        write: (said: string) => {
          text += said
        },
      }
      const running = runPlain(slow.session, keys(), { style: LINEAR, out, prompts: true })
      const settle = async (ms: number) => {
        await vi.advanceTimersByTimeAsync(ms)
        slow.letThrough()
        await vi.advanceTimersByTimeAsync(1)
        slow.letThrough()
        await vi.advanceTimersByTimeAsync(1)
      }
      await vi.advanceTimersByTimeAsync(1)
      go('RO')
      await settle(1)
      go('4071')
      // The look at the clock comes while the PIN is held against its key.
      await settle(1100)
      await settle(1100)
      expect(times(text, 'Which machine is this?')).toBe(1)
      expect(times(text, 'Asked: Read the tag plate')).toBe(1)
      go(null)
      await settle(1)
      await running
    } finally {
      vi.useRealTimers()
    }
  })

  it('prints a refusal, asks again, and goes on', async () => {
    const { lines, written } = await run(new Walk(), ['XX', 'RO', '4071'])
    expect(lines.filter((line) => line.startsWith('"XX" is nobody'))).toHaveLength(1)
    expect(times(lines.join('\n'), 'Asked: Your initials')).toBe(2)
    expect(written.map((entry) => entry.type)).toEqual(['person.signed-on'])
  })

  it('ends when the job does, and reads no line after it', async () => {
    const { session, text } = await run(new Walk(), ['RO', '4071', 'leave', 'TC-401-1'])
    expect(text.lastIndexOf('Which machine is this?')).toBeLessThan(text.indexOf('Left here.'))
    expect(session.snapshot().state.left).toBe(true)
    expect(session.snapshot().state.machineNamed).toBe(false)
  })

  it('shows the make-safe sheet before sign-on and inside a question, and asks the same again', async () => {
    const { text, written } = await run(new Walk(), ['safe', 'RO', '4071', 'note', 'safe', 'all fine'])
    expect(times(text, 'MAKE SAFE. Words only')).toBe(2)
    expect(text).toContain('6: Call: Radio channel 1')
    expect(times(text, 'Asked: The note, on one line')).toBe(2)
    expect(written.map((entry) => entry.type)).toEqual(['person.signed-on', 'note.written'])
    expect(written[1]).toMatchObject({ text: 'all fine' })
  })

  it('of a job that is taken up says how it was opened and how much stands in it, and not all of it', async () => {
    const walk = new Walk().toBore().keys('9.5033')
    walk.bring({ do: 'leave' })
    walk.bring({ do: 'take-up' })
    const all = replay([...walk.entries]).shown
    let text = ''
    const out = {
      write: (more: string) => {
        text += more
      },
    }
    createTeller(memorySession(walk).session, LINEAR, out).takenUp(all)
    expect(text).toMatch(/Bore or liner inspection, edition \d+/)
    expect(text).toContain(`EXAMPLE. ${all.length - 2} entries stand between: readings tells`)
    expect(text).toContain('Taken up again.')
    expect(text).not.toContain('Taken 2:')
    expect(all.length).toBeGreaterThan(20)
  })

  it('of a job that is taken up with another machine record says by whom and how it was changed', () => {
    const walk = new Walk().toBore()
    walk.bring({ do: 'leave' })
    const after = takenIn(walk, changed(walk, { edition: '5' }))
    after.bring({ do: 'take-up' })
    let text = ''
    const out = {
      write: (more: string) => {
        text += more
      },
    }
    createTeller(memorySession(after).session, LINEAR, out).takenUp(replay([...after.entries]).shown)
    expect(text).toMatch(/MACHINE RECORD CHANGED[\s\S]*edition: 4, now 5[\s\S]*Taken up again\./)
    expect(times(text, 'MACHINE RECORD CHANGED')).toBe(1)
  })

  it('of a doubt says once what is doubtful', async () => {
    const { text, lines } = await run(new Walk().toBore(), ['9.053', 'why'])
    expect(times(text, 'nominal')).toBeGreaterThan(0)
    const doubts = lines.filter((line) => line.includes('9.053'))
    expect(doubts[0]).toMatch(/^EXAMPLE\. 7\.1 9\.053 doubted: /)
    expect(lines.filter((line) => line === '1: measure again').length).toBe(2)
    expect(lines.at(-1)).toBe('Asked: 1, 2 or 3: what becomes of the figure that is doubted.')
  })

  it('says what is asked once, also to whoever keys a yes', async () => {
    const { lines } = await run(new Walk().toGate(), ['yes', 'note', 'undo'])
    const asked = lines.filter((line) => /Asked (?:is|are)|^Asked: the number/.test(line))
    expect(asked).toEqual(Array(2).fill('Asked: the number: lock at main driver breaker, E-1.'))
    expect(lines.filter((line) => line.includes('The note, on one line'))).toHaveLength(2)
  })

  it('gives each word of help a line of its own', async () => {
    const { lines } = await run(new Walk().toBore(), ['help'])
    expect(lines).toContain('where: how far; next')
    expect(lines).toContain('instrument: out of calibration')
  })

  it('lets time act when a line comes, before it is heard', async () => {
    const walk = new Walk().toBore()
    const memory = memorySession(walk)
    walk.now = { ...walk.now, ms: walk.now.ms + 31 * 60_000 }
    const { text, written } = await run(walk, ['note here', 'note', 'undo', 'and there'], {}, memory)
    expect(written.map((entry) => entry.type)).toEqual(['gate.closed', 'note.written', 'note.written'])
    expect(text.indexOf('COME OUT AND STAND CLEAR')).toBeLessThan(text.indexOf('Note: here'))
    // Each time anything is asked, a question within it too.
    expect(times(text, '\nCOME OUT AND STAND CLEAR.')).toBe(4)
  })

  it('warns of a gas test that lapses, and calls people out when it has, while nobody keys anything', async () => {
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
      const out = {
        write: (more: string) => {
          text += more
        },
      }
      const running = runPlain(session, nobody(), { style: LINEAR, out, prompts: true })
      walk.wait(24)
      await vi.advanceTimersByTimeAsync(1100)
      expect(text).toContain('Gas test lapses at')
      // The question is the last line again.
      expect(text.trimEnd().split('\n').at(-1)).toMatch(/^Asked: 7\.1/)
      expect(text).not.toContain('STAND CLEAR')
      walk.wait(6)
      await vi.advanceTimersByTimeAsync(1100)
      expect(text).toContain('HOLD. COME OUT AND STAND CLEAR')
      expect(text.trimEnd().split('\n').at(-1)).toMatch(/^Asked: .*type ALL OUT$/)
      end()
      await vi.advanceTimersByTimeAsync(10)
      await running
      expect(vi.getTimerCount()).toBe(0)
    } finally {
      vi.useRealTimers()
    }
  })
})

describe('answers from a file', () => {
  it('leave the prompts out, and print every entry once', async () => {
    const answers = withPins(['RO', 'TC-401-1', 'done', ...GATE_LINES])
    const { text } = await run(new Walk(), answers, { style: RULED, prompts: false })
    const flow = text.replace(/\n.*?\| ?/g, ' ').replace(/ +/g, ' ')
    expect(text).not.toContain('Your initials')
    expect(times(text, 'signed on')).toBe(1)
    expect(flow.match(/complete/g)).toHaveLength(1)
    for (const line of text.split('\n')) expect(line).toMatch(/^(EXAMPLE.*)?$/)
  })

  it('are told from what they bring where they are heard as well', async () => {
    const { lines } = await run(new Walk(), ['RO', '4071'], { prompts: false })
    expect(lines).toEqual([expect.stringMatching(/^EXAMPLE\. Taken: RO, R\. Oduya, signed on/)])
  })

  it('name the step that was left out, and the line of an answer that was not taken', async () => {
    const gone = exampleAnswers()
      .join('\n')
      .replace('9.5019\n1\n9.5008\n9.5008\n9.5007\n9.5007', '9.5019\n3')
      .split('\n')
    const { text } = await run(new Walk(), gone, { prompts: false })
    expect(text).toContain(
      'left out: 9 Unswept strip, head end (only if step 8, Unswept strip, finds "At the head end',
    )
    const where = () => 'Line 7 of the answers'
    const refused = await run(new Walk(), ['ZZ', 'RO', '4071'], { style: RULED, prompts: false, where })
    expect(times(refused.text, 'Line 7 of the answers was not taken.')).toBe(1)
  })
})
