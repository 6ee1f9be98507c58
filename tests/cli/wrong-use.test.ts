// Wrong use of the command line: one clear sentence each, the right exit code, and nothing on standard output.
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { barover, changedMachine, MACHINE, runArgs } from '../helpers/cli.ts'
import { ROOT } from '../helpers/example.ts'
import { terminals } from '../helpers/pty.ts'

const { folder } = terminals()
const jobs = '/nowhere'

describe('what cannot be done', () => {
  it.each([
    ['a command nobody knows', ['nonsense'], 2, '"nonsense" is no command of Barover.'],
    ['an option nobody knows', ['--nonsense'], 2, "Unknown option '--nonsense'."],
    ['an option of another command', ['jobs', '--head', 'x'], 2, "Unknown option '--head'."],
    ['an option without its value', ['jobs', '--jobs'], 2, "Option '--jobs <value>' argument missing"],
    ['run without a procedure', ['run'], 2, 'barover run is called as: barover run PROCEDURE'],
    ['run without a machine', ['run', 'bore-inspection'], 2, 'A job needs a machine'],
    ['a seed that is no number', ['practice', '--seed', 'x'], 2, '--seed takes a whole number'],
    ['a level that there is not', ['practice', '--level', '6'], 2, '--level takes 1 to 5'],
    [
      'practice of what it does not know yet',
      ['practice', 'renew-liner', '--jobs', jobs],
      1,
      'Practice does not know Renew the liner',
    ],
    ['two jobs to show', ['show', 'a', 'b'], 2, 'barover show is called as: barover show JOB'],
    [
      'a kind of record nobody knows',
      runArgs(jobs, '--as', 'foo'),
      2,
      '--as takes real, practice or example',
    ],
    [
      'a clock that is no time',
      runArgs(jobs, '--clock', 'noon'),
      2,
      '--clock takes a time like 2026-03-14 06:20',
    ],
    ['a head that is none', ['verify', 'x', '--head', 'abc'], 4, 'There is no job "x"'],
    [
      'a procedure that is not there',
      ['run', 'nope', '--machine', MACHINE],
      4,
      'There is no procedure "nope".',
    ],
    [
      'a machine that is not there',
      ['run', 'bore-inspection', '--machine', '/nope.yaml'],
      4,
      '/nope.yaml: there is no such file.',
    ],
    ['a folder for a machine', ['run', 'bore-inspection', '--machine', ROOT], 4, 'it is a folder.'],
    ['answers that are not there', runArgs(jobs, '--answers', '/nope'), 4, '/nope: there is no such file.'],
    ['a job that is not there', ['show', 'nope', '--jobs', jobs], 4, 'There is no job "nope" in /nowhere.'],
    ['a file to check that is not there', ['check', '/nope'], 4, '/nope: there is no such file.'],
    [
      'a REAL job on an invented machine',
      runArgs(jobs, '--as', 'real'),
      1,
      'can only be an EXAMPLE or PRACTICE',
    ],
  ] as const)('%s', async (_, args, code, sentence) => {
    const ran = await barover(args)
    expect(ran).toMatchObject({ code, out: '' })
    const [first, ...more] = ran.err.trim().split('\n')
    expect(first).toContain(sentence)
    // At most one line of advice under it, and no trace of the inside.
    expect(more.length).toBeLessThanOrEqual(1)
    expect(ran.err).not.toMatch(/ {2}barover|barover {2}|\bat .*:\d+:\d+|A fault in Barover/)
  })

  it('a machine record that is not UTF-8', async () => {
    const path = join(folder(), 'machine.yaml')
    writeFileSync(path, Buffer.from([0x6d, 0xff, 0xfe]))
    const ran = await barover(['run', 'bore-inspection', '--machine', path])
    expect(ran).toMatchObject({ code: 4, out: '', err: `${path} is not text in UTF-8.\n` })
  })

  it('an answers file with a line that sets no clock', async () => {
    const path = join(folder(), 'answers.txt')
    writeFileSync(path, 'RO\n# fine\nclock tomorrow\n')
    const ran = await barover(runArgs(folder(), '--answers', path))
    expect(ran).toMatchObject({ code: 2, out: '' })
    expect(ran.err).toContain(`${path}:3: "clock tomorrow" is not understood`)
  })

  it('a folder of jobs that is a file', async () => {
    const path = join(folder(), 'file')
    writeFileSync(path, '')
    const ran = await barover(runArgs(path))
    expect(ran).toMatchObject({ code: 4, out: '' })
    expect(ran.err).toContain('cannot be made: say where jobs are kept with --jobs.')
  })
})

describe('REAL', () => {
  it('is refused on a machine that is not invented, with the way to practise', async () => {
    const machine = changedMachine(folder(), (text) => text.replace('invented: true\n', ''))
    const ran = await barover(['run', 'bore-inspection', '--machine', machine, '--jobs', folder()])
    expect(ran).toMatchObject({ code: 1, out: '' })
    expect(ran.err).toMatch(/This crew file is marked invented, so it can only be an EXAMPLE or PRACTICE/)
  })
})

describe('help', () => {
  it.each(['--help', '-h', 'help'])('%s names every command and every exit code', async (word) => {
    const { code, out } = await barover([word])
    expect(code).toBe(0)
    for (const name of [
      'run',
      'resume',
      'jobs',
      'show',
      'verify',
      'kit',
      'briefing',
      'sheet',
      'check',
      'pin',
    ])
      expect(out).toContain(`barover ${name} `)
    for (const exit of [0, 1, 2, 3, 4, 70, 130]) expect(out).toMatch(new RegExp(`^ +${exit}  \\w`, 'm'))
    expect(out).toMatch(/^[\n -~]*$/)
  })

  it.each(['run', 'resume', 'jobs', 'show', 'verify', 'kit', 'briefing', 'sheet', 'check', 'pin'])(
    '%s --help shows how it is called and its options',
    async (name) => {
      const { code, out, err } = await barover([name, '--help'])
      expect({ code, err }).toEqual({ code: 0, err: '' })
      expect(out).toContain(`barover ${name} `)
      expect(out).toContain('--help')
      expect(out).toMatch(/^[\n -~]*$/)
    },
  )

  it('--version is a version', async () => {
    expect((await barover(['--version'])).out).toMatch(/^\d+\.\d+\.\d+\n$/)
  })
})
