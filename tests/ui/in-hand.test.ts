// Practice on a drawn screen: what was measured stays in sight until it is keyed, and so does what was wrong with the line just keyed.
import { expect, it, vi } from 'vitest'
import { drawJob } from '../../src/ui/draw-job.tsx'
import { endsWithTest } from '../helpers/drawn.ts'
import type { Walk } from '../helpers/example.ts'
import { fakeTerminal, memorySession } from '../helpers/fake-terminal.ts'
import { careful, seedHiding, session, type Trainee } from '../helpers/trainees.ts'

vi.hoisted(() => {
  process.env.CI = 'false'
  process.env.CONTINUOUS_INTEGRATION = 'false'
})

const SIZES = [
  ['80 by 24', { cols: 80, rows: 24 }],
  ['40 by 15', { cols: 40, rows: 15 }],
] as const

function draw(walk: Walk, size: { cols: number; rows: number }) {
  const terminal = fakeTerminal(size)
  const memory = memorySession(walk)
  const style = { width: size.cols - 1, record: 'PRACTICE', ascii: false } as const
  endsWithTest(terminal, drawJob(memory.session, style, terminal))
  const { screen } = terminal
  /** Turns over to the question, keys the line, and turns over to the next question. */
  const toQuestion = async () => {
    for (;;) {
      await screen.until('an empty line', () => screen.input === '')
      if (!/Enter( turns over|:)/.test(screen.text)) return
      const before = screen.text
      terminal.send('\r')
      await screen.until('the next side', () => screen.text !== before)
    }
  }
  const key = async (line: string) => {
    await toQuestion()
    const before = memory.session.snapshot()
    terminal.send(line)
    const isPin = screen.flow.includes('PIN of')
    // Of a long line its end is on the screen, of a PIN nothing.
    await screen.until(line, () => (isPin ? screen.input === '(not shown)' : isEndOf(line, screen.input)))
    terminal.send('\r')
    await screen.until(`what ${line.slice(0, 20)} gives`, () => memory.session.snapshot() !== before)
  }
  return { ...memory, terminal, screen, key, toQuestion }
}

const isEndOf = (line: string, input: string | null) =>
  input !== null && input !== '' && line.endsWith(input.trimStart())

const atBore: Trainee = (walk) =>
  walk.prompt.kind === 'read' && walk.prompt.step.step.id === 'bore' ? false : careful(walk)

const figure = ({ session: of }: ReturnType<typeof draw>) =>
  of.snapshot().state.practice?.asked.at(-1)?.figure ?? 'none'

it.each(SIZES)(
  'a figure stays in sight over a question and its answer until it is keyed, at %s',
  async (_, size) => {
    const drawn = draw(session(12, 2, atBore).walk, size)
    const { key, toQuestion, screen } = drawn
    await key('measure')
    await key('help')
    await toQuestion()
    const shown = figure(drawn)
    await screen.see(`M-3 shows ${shown} in.`)
    await key('what gap is too much')
    await toQuestion()
    await screen.see(`M-3 shows ${shown} in.`)
    await key(shown)
    await toQuestion()
    expect(screen.flow.split(`M-3 shows ${shown} in. `)).toHaveLength(1)
  },
)

it.each([
  ['wide to low', { cols: 80, rows: 24 }, { cols: 40, rows: 15 }],
  ['low to wide', { cols: 40, rows: 15 }, { cols: 80, rows: 24 }],
] as const)('a figure is with the question after the window was pulled from %s', async (_, from, to) => {
  const drawn = draw(session(12, 2, atBore).walk, from)
  const { key, toQuestion, screen, terminal } = drawn
  await key('measure')
  await toQuestion()
  terminal.resize(to)
  await screen.until('an empty line', () => screen.input === '')
  await toQuestion()
  await screen.see(`M-3 shows ${figure(drawn)} in.`)
})

it.each(SIZES)(
  'a figure measured while another is put right stands with the question, at %s',
  async (_, size) => {
    const drawn = draw(session(12, 2, atBore).walk, size)
    const { key, toQuestion, screen } = drawn
    await key('measure')
    await key(figure(drawn))
    for (const line of ['correct', '1', `it was read too high ${'and so it was '.repeat(12)}it is`])
      await key(line)
    await key('measure')
    const anew = figure(drawn)
    await key('help')
    await toQuestion()
    await screen.see(`M-3 shows ${anew} in.`)
  },
)

it.each(SIZES)(
  'what is wrong with the line just keyed is in sight from its first word, at %s',
  async (_, size) => {
    const drawn = draw(session(12, 2, atBore).walk, size)
    const { key, screen } = drawn
    await key('measure')
    const slip = (Number(figure(drawn)) + 0.0003).toFixed(4)
    await key(slip)
    await screen.see(`Wrong: M-3 shows`)
  },
)

const atWitness: Trainee = (walk) =>
  walk.prompt.kind === 'evidence' && walk.prompt.item.evidence.kind === 'witness' ? false : careful(walk)

it.each(SIZES)('so is a hold point that is complete on what is not so, at %s', async (_, size) => {
  const skips: Trainee = (walk) => {
    const { prompt } = walk
    if (prompt.kind !== 'evidence' || prompt.item.key !== 'block') return atWitness(walk)
    walk.keys('look quick', 'blocked both ways')
    return true
  }
  const { walk } = session(12, 2, skips)
  const drawn = draw(walk, size)
  await drawn.key('ML')
  await drawn.key('2596')
  await drawn.screen.until('its sides, or all of it', () =>
    /WRONG\.|Enter turns over/.test(drawn.screen.text),
  )
  for (let n = 0; n < 4 && !drawn.screen.text.includes('WRONG.'); n++) {
    const before = drawn.screen.text
    drawn.terminal.send('\r')
    await drawn.screen.until('the next side', () => drawn.screen.text !== before)
  }
  expect(drawn.screen.text).toContain('WRONG.')
})

it('so is a line that nobody looked at, over the boxes of its hold point', async () => {
  const none: Trainee = (walk) =>
    walk.prompt.kind === 'evidence' && walk.prompt.item.key === 'try_start' ? false : careful(walk)
  const drawn = draw(session(seedHiding('driver-live', 2), 2, none).walk, { cols: 80, rows: 24 })
  await drawn.key('no start')
  await drawn.screen.see('WRONG. You keyed it without a look')
})
