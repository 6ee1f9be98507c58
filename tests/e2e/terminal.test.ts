// What a terminal does to a program: resizing, gauges that type, keys nobody names, no colour, no wide characters.
import { describe, expect, it } from 'vitest'
import { changedMachine } from '../helpers/cli.ts'
import { GATE_LINES, withPins } from '../helpers/example.ts'
import { EXAMPLE_RUN, FROM_GATE, jobStarter, logged, TO_BORE, TO_GATE, terminals } from '../helpers/pty.ts'

const terminal = terminals()

const jobAt = jobStarter(terminal)

/** What was keyed at the bore, as it is on record. */
const boreTyped = (jobs: string) =>
  logged(jobs)
    .filter((e) => e.type === 'reading.taken' && e.step === 'bore')
    .map((e) => e.typed)

/** Whether all of them stand in `typed` in their order, whatever stands between. */
const isInOrderOf = (some: readonly unknown[], typed: readonly string[]) => {
  let at = 0
  for (const figure of typed) if (figure === some[at]) at++
  return at === some.length
}

/** All words that ever stood on the sheet, as one run: a refusal is gone with the next line. */
const everShown = (raw: string) =>
  raw
    .replace(/\u001b\[[0-9;?]*[A-Za-z]/g, '')
    .split(/\r?\n/)
    .map((line) => line.replace(/^.*?│ ?/, '').trim())
    .join(' ')

/** A colour, as opposed to bold or inverse. */
const COLOUR = /\u001b\[(?:\d+;)*(?:3[0-8]|4[0-8]|9[0-7]|10[0-7])[;m]/

describe('resizing', () => {
  it('twenty times never wipes the scrollback, and the question stands at the end', async () => {
    const { t } = await jobAt([...TO_BORE, '9.5033'])
    await t.see('2nd of 2, afresh (in)')
    // A frame of 22 rows, and then a terminal of 15: what the renderer would wipe everything for.
    t.resize({ cols: 80, rows: 15 })
    await t.until('the lower screen', () => t.input === '' && !t.text.includes('# instrument, here'))
    for (let i = 0; i < 20; i++) {
      const cols = [120, 60, 100, 40, 80][i % 5] ?? 80
      const rows = [40, 20, 12, 24, 15, 30, 10][i % 7] ?? 24
      t.resize({ cols, rows })
      // Every other one while the screen is still being drawn for the one before.
      if (i % 2 === 0)
        await t.until(`a screen for ${cols} by ${rows}`, () => t.input !== null || /too small/.test(t.text))
    }
    t.resize({ cols: 80, rows: 24 })
    await t.see('2nd of 2, afresh (in) with M-3')
    await t.until('one line to key on', () => t.input === '')
    await t.say('9.5034')
    await t.see('spread 0.0001')
    await t.see('Bore, HEAD END of ring travel, SIDE TO SIDE')
    await t.see('Sheet 7 of 20')
    expect(t.wipes).toBe(0)
    expect(t.exit).toBe(null)
  })
})

describe('a gauge that types for itself', () => {
  it('fills readings in one burst each, and gives no evidence', async () => {
    const { t, jobs } = await jobAt([...TO_GATE, ...GATE_LINES.slice(0, 11)])
    await t.see('read OXYGEN')
    t.send('20.9\r')
    await t.until('the figure waiting on the line', () => t.input === '20.9')
    t.send('\r')
    await t.see('read what can burn')
    await t.sayAll([...withPins(GATE_LINES.slice(12)), ...FROM_GATE])
    await t.see('Reading (in) with M-3')
    t.send('9.5033\r')
    await t.see('2nd of 2, afresh (in)')
    t.send('9.5034\r')
    await t.see('spread 0.0001')
    expect(boreTyped(jobs)).toEqual(['9.5033', '9.5034'])
  })

  it('twenty times in two seconds has each on record or in sight, in the order it came', async () => {
    const { t, jobs } = await jobAt(TO_BORE)
    await t.see('Reading (in) with M-3')
    const typed = Array.from({ length: 20 }, (_, i) => `9.50${33 + (i % 2)}`)
    for (const figure of typed) {
      t.send(`${figure}\r`)
      await new Promise((resolve) => setTimeout(resolve, 100))
    }
    await t.until('one line to key on', () => t.input !== null)
    const bore = boreTyped(jobs)
    expect(isInOrderOf(bore, typed)).toBe(true)
    // Two that came while a line before them was still being written are one line with a gap, which is refused aloud.
    const refused = /has a gap or mark between its figures|key one number and its unit only/
    const isGapless = bore.length > 1 && bore.every((figure, i) => figure === typed[i])
    expect(isGapless || refused.test(everShown(t.raw))).toBe(true)
    expect([t.wipes, t.exit]).toEqual([0, null])
  })
})

describe('STOP', () => {
  it('comes of a burst where evidence is asked for, and of one key with half a line keyed after it is erased', async () => {
    const { t, jobs } = await jobAt(TO_GATE)
    await t.see('Lock number')
    t.send('L-1')
    await t.until('half a line', () => t.input === 'L-1')
    t.send('stop\r')
    await t.see('STOP. Everybody out and clear.')
    expect(logged(jobs).at(-1)?.type).toBe('stop.raised')
  })
})

describe('keys and pastes', () => {
  it('that mean nothing here are left out and do no harm', async () => {
    const { t } = await jobAt(TO_GATE)
    await t.see('Lock number')
    // Control-F1, Control-F5, focus, a click, arrow up, Control-Z, a lone escape
    for (const keys of [
      '\u001b[1;5P',
      '\u001b[15;5~',
      '\u001b[I',
      '\u001b[<0;3;4M',
      '\u001b[A',
      '\u001a',
      '\u001b',
    ])
      t.send(keys)
    await t.say('L-101')
    await t.see('[x] lock at main driver breaker, E-1  L-101')
  })

  it('a paste with line ends is one line and waits for Enter', async () => {
    const { t, jobs } = await jobAt(TO_BORE)
    await t.see('Reading (in) with M-3')
    const before = logged(jobs).length
    t.send('\u001b[200~9.5033\r9.5034\r\u001b[201~')
    await t.until('the paste on the line', () => t.input === '9.5033 9.5034')
    t.send('\r')
    await t.see('has a gap or mark between its figures')
    expect(logged(jobs)).toHaveLength(before)
  })

  it('a paste of ten thousand characters is one line, kept whole or refused in a sentence, and the next is heard', async () => {
    const { t, jobs } = await jobAt(TO_BORE)
    await t.see('Reading (in) with M-3')
    const before = logged(jobs).length
    t.send(`\u001b[200~note ${'wide \u5bec e\u0301 '.repeat(1000)}\u001b[201~`)
    await t.until('the paste on the line', () => t.input?.includes('full at 500') === true)
    t.send('\r')
    await t.until('an empty line', () => t.input === '')
    await t.say('9.5033')
    await t.see('2nd of 2, afresh (in)')
    expect(boreTyped(jobs)).toEqual(['9.5033'])
    expect(logged(jobs).length - before).toBeLessThanOrEqual(2)
    expect([t.wipes, t.exit]).toEqual([0, null])
  })

  it('a hostile note is shown harmless', async () => {
    const { t } = await jobAt(TO_GATE)
    await t.see('Lock number')
    t.send('note \u001b[200~ok\u202e\u009b2J\u001b]0;title\u0007 end\u001b[201~')
    await t.until('the note on the line', () => t.input?.includes('end') === true)
    t.send('\r')
    await t.see(/Note: ok.*end/)
    expect(t.raw.slice(t.raw.indexOf('Note: ok'))).not.toMatch(/\u202e|\u009b|\u001b\]0/)
  })
})

describe('looks', () => {
  it('has colour as a repeat of words, and none under NO_COLOR', async () => {
    const coloured = await jobAt(TO_GATE)
    await coloured.t.see('Hazard:')
    expect(coloured.t.raw).toMatch(COLOUR)
    const plain = await jobAt(TO_GATE, { env: { NO_COLOR: '1' } })
    await plain.t.see('Hazard:')
    // A frame can come in several reads: the two screens are alike once both are whole.
    await expect.poll(() => plain.t.text, { timeout: 10_000 }).toBe(coloured.t.text)
    expect(plain.t.raw).not.toMatch(COLOUR)
  })

  it.each([
    ['--ascii', ['--ascii'], {}],
    ['a locale without UTF-8', [], { LANG: 'C' }],
  ] as const)('is ASCII throughout with %s', async (_, more, env) => {
    const jobs = terminal.folder()
    const t = terminal.start([...EXAMPLE_RUN, '--jobs', jobs, ...more], { env })
    await t.see('Your initials')
    await t.sayAll([...TO_BORE, '9.5033'])
    await t.see('2nd of 2, afresh (in)')
    await expect.poll(() => t.all).toMatch(/^[\n -~]*$/)
  })
})

describe('a gas test that lapses while the prompt waits', () => {
  it('is warned of, falls by itself, calls everybody out and asks for the gas again', async () => {
    const jobs = terminal.folder()
    const machine = changedMachine(terminal.folder(), (text) =>
      text.replace('life: 30 min', 'life: 6 s').replace('warn_before: 5 min', 'warn_before: 3 s'),
    )
    const t = terminal.start([
      'run',
      'bore-inspection',
      '--machine',
      machine,
      '--clock',
      '2026-03-14 06:20',
      '--jobs',
      jobs,
    ])
    await t.see('Your initials')
    await t.sayAll(TO_BORE)
    await t.see('Reading (in) with M-3')
    t.send('9.50')
    await t.until('half a figure', () => t.input === '9.50')
    await t.see('finish and come out.')
    await t.see('HOLD. COME OUT AND STAND CLEAR: the gas test is past its life.', 15_000)
    await t.see('type ALL OUT')
    expect(logged(jobs).at(-1)).toMatchObject({ type: 'gate.closed', cause: 'lapsed' })
    // The figure that was being keyed when it fell is kept, and counts for nothing yet.
    t.send('33')
    await t.until('the rest of the figure', () => t.input === '9.5033')
    t.send('\r')
    await t.see('9.5033 was keyed after the hold point fell')
    expect(logged(jobs).at(-1)).toMatchObject({ type: 'reading.late', typed: '9.5033' })
    await t.say('here we are')
    await t.see('type ALL OUT')
    expect(logged(jobs).at(-1)?.type).toBe('reading.late')
    await t.say('all out')
    await t.see('read OXYGEN')
    await expect.poll(() => t.flow).toContain('Asked again: the gas test is past its life.')
  })
})
