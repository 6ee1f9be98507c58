// What a person sees: the real screen, drawn into a terminal in memory, at the prompts that matter.
import { describe, expect, it, vi } from 'vitest'
import { drawJob } from '../../src/ui/draw-job.tsx'
import { endsWithTest, keyLine } from '../helpers/drawn.ts'
import { BORE_LINES, exampleDefs, GATE_LINES, Walk } from '../helpers/example.ts'
import { fakeTerminal, memorySession } from '../helpers/fake-terminal.ts'
import { walkExample } from '../helpers/walked.ts'

// The renderer draws nothing where it takes itself to be on a build server.
vi.hoisted(() => {
  process.env.CI = 'false'
  process.env.CONTINUOUS_INTEGRATION = 'false'
})

const style = { width: 79, record: 'EXAMPLE' as const, ascii: false }

/** Draws the job as it stands; it is left again when the test is over. */
function draw(walk: Walk, size = { cols: 80, rows: 24 }, slow = false) {
  const terminal = fakeTerminal(size)
  const memory = memorySession(walk, slow)
  const done = drawJob(memory.session, style, terminal)
  endsWithTest(terminal, done)
  return { ...memory, terminal, screen: terminal.screen, done }
}

/** All that matters of the make-safe sheet, wherever its lines broke. */
/** Over to the next side of what is shown. */
const DOWN = '\u001b[B'

function expectSheet(flow: string): void {
  for (const words of [
    'Come out, everybody',
    'Nobody goes in to fetch anybody without air and a line',
    '6 Call: Radio channel 1, say MAYDAY and TC-401. Muster at the north gate.',
    'with air packs, a line and a stretcher',
    'Leave the block against turning in',
    'LOCKS',
  ])
    expect(flow.replace(/ +/g, ' ')).toContain(words)
}

describe('at 80 columns and 24 rows', () => {
  it('asks who is at the keyboard', async () => {
    const { screen } = draw(new Walk())
    await screen.see('Your initials')
    expect(screen.text).toContain('Who is at the keyboard?')
    expect(screen.text).toContain('RO   R. Oduya, mechanic')
    expect(screen.text).toContain('Sheet - of 20')
    expect(screen.input).toBe('')
  })

  it('asks for a lock with hazard and trouble over it', async () => {
    const { screen } = draw(new Walk().toGate())
    await screen.see('Lock number at main driver breaker')
    expect(screen.text).toContain('Hazard: A start, a turn of the crank, or gas coming back can')
    expect(screen.text).toContain('In trouble: Come out, stand clear, say STOP.')
    expect(screen.text).toContain('[ ] then 16 more')
    expect(screen.text).toContain('Sheet 2 of 20')
  })

  it('asks for gas with its limit and its unit in the margin', async () => {
    const { screen } = draw(new Walk().toGate().keys(...GATE_LINES.slice(0, 11)))
    await screen.see('read OXYGEN')
    expect(screen.text).toContain('Must be 19.5 %vol to 23.5 %vol')
    expect(screen.lines.some((line) => /^EXAMPLE +%vol │$/.test(line))).toBe(true)
  })

  it('asks for a reading with the drawing of the place and the age of the gas test', async () => {
    const { screen } = draw(new Walk().toBore().keys(...BORE_LINES.slice(0, 4)))
    await screen.see('Reading (in) with M-3')
    expect(screen.text).toContain('7.3 │ Bore, CENTRE of ring travel, TOP TO BOTTOM')
    expect(screen.text).toMatch(/HE +CENTRE +CE/)
    expect(screen.text).toMatch(/Gas \d min old, lapses 06:5\d/)
    expect(screen.lines.length).toBeLessThanOrEqual(24)
  })

  it('asks what a doubtful figure was, shows the one that would fit, and fills none in', async () => {
    const { terminal, screen } = draw(new Walk().toBore())
    await screen.see('Reading (in)')
    terminal.send('9.053')
    await screen.until('the figure', () => screen.input === '9.053')
    terminal.send('\r')
    await screen.see('2  mistyped: key it again in full')
    await screen.see('9.053 is 0.4470 in under nominal 9.500 in.')
    await screen.see('9.5030 would fit; 9.053 has two figures changed round.')
    await screen.until('an empty line to key on', () => screen.input === '')
  })

  it('asks a lead what is to be done under the stamp', async () => {
    let at: Walk | null = null
    walkExample((walk) => {
      if (at !== null || !walk.entries.some((entry) => entry.type === 'verdict.given')) return
      at = Object.assign(Object.create(Object.getPrototypeOf(walk)), walk) as Walk
    })
    const { screen } = draw(at as unknown as Walk)
    await screen.see('What is to be done, a lead decides')
    expect(screen.text).toContain('MONITOR')
    expect(screen.text).toContain('1  accept')
  })
})

describe('a refusal', () => {
  it.each([
    ['80 by 24', { cols: 80, rows: 24 }],
    ['40 by 15', { cols: 40, rows: 15 }],
  ])(
    'stands over the question, is replaced by the next, and is gone with what is taken, at %s',
    async (_, size) => {
      const { terminal, screen } = draw(new Walk().toGate().keys(...GATE_LINES.slice(0, 6)), size)
      const key = (line: string) => keyLine(terminal, line)
      // On the small one the hazard is turned over first.
      if (size.rows === 15) {
        await screen.see('Enter turns over')
        terminal.send('\r')
      }
      await screen.see('Type: NO START')
      await key('1')
      await screen.see('does not count as evidence')
      expect(screen.flow).toContain('Type: NO START')
      await key('skip')
      await screen.until('the first to go', () => !screen.wholeFlow.includes('does not count as evidence'))
      // What is longer than the room over the question is turned over first, and the question is whole then.
      if (size.rows === 15) {
        await screen.see('Enter turns over')
        // By itself it is counted with no side of the question.
        expect(screen.flow).not.toContain('1 of')
        terminal.send('\r')
        await screen.see('Type: NO START')
      }
      await key('no start')
      await screen.see('NO FLOW')
      expect(screen.all).not.toMatch(/does not count|Nothing was left out/)
      expect(screen.wipes).toBe(0)
    },
  )
})

describe('keys', () => {
  it('are heard as a line at Enter, and what came of it stands above', async () => {
    const { terminal, screen, written } = draw(new Walk())
    await screen.see('Your initials')
    terminal.send('RO')
    await screen.until('RO on the line', () => screen.input === 'RO')
    terminal.send('\r')
    await screen.see('PIN of RO')
    terminal.send('4071')
    await screen.until('that something is keyed', () => screen.input === '(not shown)')
    terminal.send('\r')
    await screen.see('RO, R. Oduya, signed on')
    await screen.see('Which machine is this?')
    expect(written.map((entry) => entry.type)).toEqual(['person.signed-on'])
  })

  it('of a gauge in one burst are a reading, but never evidence', async () => {
    const gate = draw(new Walk().toGate().keys(...GATE_LINES.slice(0, 11)))
    await gate.screen.see('read OXYGEN')
    gate.terminal.send('20.9\r')
    await gate.screen.until('20.9 waiting on the line', () => gate.screen.input === '20.9')
    expect(gate.written).toEqual([])
    const bore = draw(new Walk().toBore())
    await bore.screen.see('Reading (in)')
    bore.terminal.send('9.5033\r')
    await bore.screen.see('9.5033 in')
    expect(bore.written.map((entry) => entry.type)).toEqual(['reading.taken'])
  })

  it('of a gauge wait while the line before is still on its way to disk', async () => {
    const { terminal, screen, written, letThrough } = draw(new Walk().toBore(), undefined, true)
    await screen.see('Reading (in)')
    terminal.send('9.5033')
    await screen.until('the first line keyed', () => screen.input === '9.5033')
    terminal.send('\r')
    await screen.until('the first line taken', () => screen.input === '')
    terminal.send('9.5034\r')
    await screen.until('the second line kept', () => screen.input === '9.5034')
    letThrough()
    await screen.see('2nd of 2, afresh (in)')
    expect(written).toHaveLength(1)
    expect(screen.input).toBe('9.5034')
  })

  it('! is STOP at once, whatever is asked', async () => {
    const { terminal, screen, written } = draw(new Walk().toBore())
    await screen.see('Reading (in)')
    terminal.send('!')
    await screen.see('STOP. Everybody out and clear.')
    await screen.see('why was STOP called?')
    expect(screen.text).toContain('Muster at the north')
    expect(written[0]?.type).toBe('stop.raised')
  })

  it.each([
    ['before sign-on', () => new Walk()],
    ['at a reading', () => new Walk().toBore()],
    ['under STOP', () => new Walk().toBore().keys('stop', '3', 'it turned', '?')],
  ])('Tab shows the make-safe sheet %s, records nothing and keeps what is half keyed', async (_, walk) => {
    const { terminal, screen, written } = draw(walk())
    await screen.until('a line to key on', () => screen.input === '')
    terminal.send('9.5')
    await screen.until('half a figure', () => screen.input === '9.5')
    terminal.send('\t')
    await screen.see('MAKE SAFE. Words only')
    let seen = screen.flow
    if (!seen.includes('LOCKS')) {
      await screen.see('Enter turns over: 1 of')
      terminal.send(DOWN)
      await screen.until('the sheet, to its last part', () => screen.flow.includes('LOCKS'))
      seen += ` ${screen.flow}`
    }
    expectSheet(seen)
    await screen.until('half a figure, under the sheet too', () => screen.input === '9.5')
    expect(written).toEqual([])
  })

  it.each([
    ['too small for anything else', { cols: 40, rows: 8 }],
    ['too narrow for a sheet', { cols: 26, rows: 6 }],
  ])('Tab shows it on a screen %s, and so does the word', async (_, size) => {
    const { terminal, screen, written } = draw(new Walk().toGate(), size)
    await screen.until('a screen', () => screen.text.includes('Screen too'))
    terminal.send('\t')
    await screen.until('the sheet, to its last part', () => screen.wholeFlow.includes('LOCKS'))
    expectSheet(screen.wholeFlow)
    terminal.send('safe')
    await screen.until('the word', () => screen.text.includes('safe'))
    terminal.send('\r')
    await screen.until('again', () => screen.wholeFlow.split('FIRST OF ALL').length === 3)
    expect(written).toEqual([])
  })

  it.each([
    ['what bore is too big', '\r', 'This job judges by these limits:'],
    ['', '\t', 'THIS WORK'],
  ])(
    '%j and %j are answered in sight: the drawing gives way until something is taken',
    async (line, key, says) => {
      const { terminal, screen } = draw(new Walk().toBore())
      await screen.see('seen from the head end')
      if (line !== '') terminal.send(line)
      await screen.until('the line', () => screen.input === line)
      terminal.send(key)
      let seen = ''
      await screen.until('room for it', () => !screen.text.includes('seen from the head end'))
      for (let i = 0; i < 3 && !/\d of \d {3}Up|Reading \(in\)/.test(screen.text); i++) {
        seen += screen.text
        terminal.send(DOWN)
        await screen.until('the next side', () => !seen.endsWith(screen.text))
      }
      expect(`${seen}${screen.text}`).toContain(says)
      for (const stays of ['Hazard: Both arms in the bore', 'In trouble: Come out', 'Reading (in) with M-3'])
        await screen.until(stays, () => screen.text.includes(stays))
      terminal.send('9.5033')
      await screen.until('a figure', () => screen.input === '9.5033')
      terminal.send('\r')
      await screen.see('2nd of 2, afresh (in)')
      await screen.until('the drawing', () => screen.text.includes('seen from the head end'))
      expect(screen.wipes).toBe(0)
    },
  )

  it('Tab at the PIN shows it, and shows nothing of the PIN', async () => {
    const key = `$scrypt$ln=15,r=8,p=1$${'A'.repeat(22)}$${'B'.repeat(43)}`
    const defs = exampleDefs({
      crew: (text) => text.replaceAll(/role: (\w+) \}/g, `role: $1, pin: "${key}" }`),
    })
    const walk = new Walk(defs)
    const { terminal, screen, session } = draw(walk)
    await screen.see('Your initials')
    await session.hear('RO')
    await screen.see('PIN of RO')
    terminal.send('73')
    terminal.send('\t')
    await screen.until('the sheet', () => screen.flow.includes('Come out, everybody'))
    expect(screen.all).not.toMatch(/│ 73/)
    expect(session.snapshot().talk.ask?.kind).toBe('pin')
  })

  it('Tab and the word safe wait for no journal', async () => {
    const { terminal, screen, written, letThrough } = draw(new Walk().toBore(), undefined, true)
    await screen.see('Reading (in)')
    terminal.send('9.5033')
    await screen.until('the line keyed', () => screen.input === '9.5033')
    terminal.send('\r')
    await screen.until('the line taken', () => screen.input === '')
    terminal.send('\t')
    await screen.until('the sheet', () => screen.flow.includes('Come out, everybody'))
    terminal.send('safe')
    await screen.until('the word keyed', () => screen.input === 'safe')
    terminal.send('\r')
    await screen.until('a second sheet', () => screen.wholeFlow.split('Come out, everybody').length === 3)
    expect(written).toEqual([])
    letThrough()
    await screen.until('the entry', () => written.length === 1)
    // The second sheet is read from its beginning as well, before what is asked next.
    for (const side of ['1 of 3', '2 of 3']) {
      await screen.see(`Enter turns over: ${side}`)
      terminal.send('\r')
    }
    await screen.see('2nd of 2, afresh (in)')
    expect(written).toHaveLength(1)
  })

  it('are kept off what cannot be seen, but for STOP', async () => {
    const { terminal, screen, written } = draw(new Walk().toGate(), { cols: 40, rows: 8 })
    await screen.see('Screen too small')
    terminal.send('L-101')
    await screen.see('L-101')
    terminal.send('\r')
    await screen.until('the line gone', () => !screen.text.includes('L-101'))
    expect(written).toEqual([])
    terminal.send('stop\r')
    await screen.until('STOP on record', () => written.length > 0)
    expect(written[0]?.type).toBe('stop.raised')
  })

  it('Control-C says how to leave, and takes it back when it would no longer be so', async () => {
    const { terminal, screen } = draw(new Walk())
    await screen.see('Your initials')
    terminal.send('\u0003')
    await screen.see('Control-C once more')
    await screen.until('the notice gone', () => !screen.text.includes('Control-C once more'))
  })

  it('Control-C twice leaves the job, on record, as an interruption', async () => {
    const { terminal, screen, written, done } = draw(new Walk())
    await screen.see('Your initials')
    terminal.send('\u0003')
    await screen.see('Control-C once more')
    terminal.send('\u0003')
    expect(await done).toBe(true)
    expect(written.map((entry) => entry.type)).toEqual(['job.left'])
  })
})

describe('the terminal', () => {
  it('is given back with its cursor shown and pastes unmarked, the screen in sight', async () => {
    const { terminal, screen, done } = draw(new Walk())
    await screen.see('Your initials')
    expect(screen.isCursorShown).toBe(false)
    expect(screen.marksPastes).toBe(true)
    terminal.send('leave')
    await screen.until('leave on the line', () => screen.input === 'leave')
    terminal.send('\r')
    expect(await done).toBe(false)
    await screen.until('pastes unmarked', () => !screen.marksPastes)
    expect(screen.isCursorShown).toBe(true)
  })

  it('keeps its scrollback through being made lower and narrower at a tall prompt', async () => {
    const { terminal, screen } = draw(new Walk().toBore(), { cols: 80, rows: 40 })
    await screen.see('Reading (in)')
    for (const [cols, rows] of [
      [80, 20],
      [60, 20],
      [60, 15],
      [100, 12],
      [80, 24],
    ] as const) {
      terminal.resize({ cols, rows })
      await screen.until(`the foot at ${cols} by ${rows}`, () => screen.input === '')
    }
    expect(screen.wipes).toBe(0)
    await screen.see('Bore, HEAD END of ring travel, TOP TO BOTTOM')
  })
})
