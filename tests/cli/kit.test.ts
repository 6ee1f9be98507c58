// barover kit and barover briefing as built, and what run says of the kit before the first line of a job.
import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { ANSWERS, barover, changedMachine, MACHINE, runArgs } from '../helpers/cli.ts'
import { terminals } from '../helpers/pty.ts'

const { folder } = terminals()
const DAY = ['--clock', '2026-03-14']
const forExample = (command: string, ...more: string[]) => [
  command,
  'bore-inspection',
  '--machine',
  MACHINE,
  ...more,
]

/** The example with a register that says something else, as files of its own. */
function changedRegister(from: string, to: string): string {
  const root = folder()
  const machine = changedMachine(root, (text) => text.replace('edition: "4"', 'edition: "5"'))
  const register = join(root, 'examples', 'tc-401', 'instruments.yaml')
  const text = readFileSync(register, 'utf8')
  expect(text).toContain(from)
  writeFileSync(register, text.replace(from, to))
  return machine
}

describe('barover kit', () => {
  it('lists what fits, what does not and why, in 80 columns', async () => {
    const { code, out, err } = await barover(forExample('kit', ...DAY))
    expect({ code, err }).toEqual({ code: 0, err: '' })
    expect(out).toMatch(
      /^KIT {3}Bore or liner inspection\nTC-401-1, .*as of 2026-03-14\.\n\nINSTRUMENTS {3}3\n/,
    )
    expect(out).toContain('fit: M-3')
    expect(out).toContain('NOT M-1: its calibration lapsed on 2025-11-30; it shows steps of 0.001 in,')
    expect(out).toContain('main driver breaker, E-1')
    expect(out).not.toContain('HOLD')
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
  })

  it('says first what the job is not to be started without, and ends with 1', async () => {
    const { code, out } = await barover(forExample('kit', '--clock', '2026-10-01 06:20'))
    expect(code).toBe(1)
    expect(out.split('\n')[3]).toBe('HOLD: NOT TO BE STARTED WITHOUT')
    expect(out.replace(/\s+/g, ' ')).toContain('An inside micrometer or bore gauge for the bore')
    expect(out).toContain('M-3: its calibration')
  })

  it('without --clock asks about today', async () => {
    const { out } = await barover(forExample('kit'))
    // On either side of midnight, wherever this runs.
    const near = [-1, 0, 1].map((days) => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10))
    expect(near).toContain(/Calibrations as of (\S+)\.\n/.exec(out)?.[1])
  })

  it('gives one JSON object with --json', async () => {
    const { code, out } = await barover(forExample('kit', '--json', ...DAY))
    expect(code).toBe(0)
    expect(JSON.parse(out)).toMatchObject({
      day: '2026-03-14',
      holds: [],
      seats: [{ id: 'meter' }, { id: 'thermometer' }, { id: 'gauge', fit: [{ id: 'M-3' }] }],
    })
  })

  it('is all ASCII where asked', async () => {
    expect((await barover(forExample('kit', '--ascii', ...DAY))).out).toMatch(/^[\n -~]*$/)
  })

  it.each(['kit', 'briefing'])(
    '%s: says how it is called wrongly, or that the procedure is for another machine',
    async (command) => {
      const bare = await barover([command, 'bore-inspection'])
      expect(bare).toMatchObject({ code: 2, out: '' })
      expect(bare.err).toContain('--machine FILE')
      const day = await barover(forExample(command, '--clock', 'tuesday'))
      expect(day).toMatchObject({ code: 2, out: '' })
      const vertical = changedMachine(folder(), (text) =>
        text.replace('orientation: horizontal', 'orientation: vertical'),
      )
      const other = await barover([command, 'bore-inspection', '--machine', vertical])
      expect(other).toMatchObject({ code: 1, out: '' })
      expect(other.err).toContain('vertical')
    },
  )
})

describe('barover briefing', () => {
  it('prints the whole job NOT LIVE, to be signed by name, and writes nothing', async () => {
    const cwd = folder()
    const { code, out, err } = await barover(forExample('briefing', ...DAY), { cwd, input: 'RO\n4071\n' })
    expect({ code, err }).toEqual({ code: 0, err: '' })
    const lines = out.trimEnd().split('\n')
    for (const line of lines) {
      expect(line).toMatch(/^NOT LIVE/)
      expect(line.length).toBeLessThanOrEqual(80)
    }
    expect(out).toContain('HOLD POINT. It keeps people from')
    expect(out).toContain('Only if step 8, Unswept strip, finds')
    expect(out).toMatch(/│ RO {2}R\. Oduya, mechanic\n.*signed _+ {2}date _+\n/)
    expect(readdirSync(cwd)).toEqual([])
  })

  it('opens the parts of a procedure out, says how long it is, and has a part of it by numbers or by title', async () => {
    const briefing = (...more: string[]) =>
      barover(['briefing', 'open-cylinder', '--machine', MACHINE, ...DAY, ...more])
    const whole = await briefing()
    expect(whole.code).toBe(0)
    expect(whole.out).toContain('Part: ')
    const [, all, lines] = /All (\d+) steps, about (\d+) lines, \d+ pages/.exec(whole.out) ?? []
    // The line that says so may itself go on to another.
    expect(Math.abs(whole.out.trimEnd().split('\n').length - Number(lines))).toBeLessThan(3)
    const some = await briefing('--steps', '3-5')
    expect(some.out).toContain(`ONLY 3 of ${all} steps`)
    expect(some.out.match(/^NOT LIVE +\d+ │/gm)).toHaveLength(3)
    const part = await briefing('--steps', 'bar over')
    expect(part.out).toMatch(/ONLY \d+ of/)
    const none = await briefing('--steps', '900')
    expect(none).toMatchObject({ code: 2, out: '' })
    expect(none.err).toMatch(/--steps takes numbers as 20-40.*\n.*\d+-\d+ {2}\S/)
  })
})

describe('run', () => {
  it('says the kit in one line above the first entry of a healthy job', async () => {
    const { out } = await barover(runArgs(folder(), '--answers', ANSWERS))
    expect(out).toMatch(/^EXAMPLE {8}│ Kit: 3 instruments \(M-1 may not be used\), 6 locks\. See/)
    // The command as it can be typed here.
    const told = out.slice(0, out.indexOf('Bore or liner inspection, edition')).replace(/\n\S+ +│ +/g, ' ')
    expect(told).toMatch(/See node \S*dist\/barover\.mjs kit\s/)
    expect(out.match(/Kit: /g)).toHaveLength(1)
  })

  it('says nothing of it to a program that reads JSON', async () => {
    const { out } = await barover(runArgs(folder(), '--answers', ANSWERS, '--json'))
    expect(() => JSON.parse(out)).not.toThrow()
  })

  it('names in full a gauge that could be picked and is too coarse, and a seat that nothing fits', async () => {
    const coarse = changedRegister('due: 2025-11-30', 'due: 2026-11-30')
    const flat = (out: string) => out.replace(/\nEXAMPLE {8}│ {3}/g, ' ')
    const args = (machine: string) => [
      'run',
      'bore-inspection',
      '--machine',
      machine,
      '--jobs',
      folder(),
      '--clock',
      '2026-03-14 06:20',
    ]
    const first = flat((await barover(args(coarse), { input: '' })).out)
    expect(first).toMatch(
      /^EXAMPLE(?: {8}│|\.) Not for this job: M-1: it shows steps of 0\.001 in, too coarse/,
    )
    const lapsed = changedRegister('due: 2026-09-30', 'due: 2026-03-13')
    const second = flat((await barover(args(lapsed), { input: '' })).out)
    expect(second).toMatch(
      /^EXAMPLE(?: {8}│|\.) HOLD: not to be started without an inside micrometer or bore gauge for the bore/,
    )
    expect(second).toContain('M-3: its calibration lapsed on 2026-03-13')
  })
})

describe('needs of a procedure', () => {
  it('come into the kit from its file', async () => {
    const root = folder()
    const own = join(root, 'procedures')
    mkdirSync(own, { recursive: true })
    cpSync(join(import.meta.dirname, '..', '..', 'examples', 'first-procedure.yaml'), join(own, 'mine.yaml'))
    const text = readFileSync(join(own, 'mine.yaml'), 'utf8')
    const need =
      '  - id: last\n    kind: tell\n    title: Last\n    needs: [{ what: Sling and shackles, kind: lifting, note: rated }]\n'
    writeFileSync(join(own, 'mine.yaml'), text + need)
    const { out } = await barover(['kit', join(own, 'mine.yaml'), '--machine', MACHINE, ...DAY])
    expect(out).toMatch(/LIFTING GEAR\n {2}Sling and shackles: step \d+\n {4}rated\n/)
  })
})
