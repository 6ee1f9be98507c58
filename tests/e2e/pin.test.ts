// PINs in a real terminal: not one byte of them is written to it, and none is in the log.
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { pinFits } from '../../src/node/pins.ts'
import { changedMachine } from '../helpers/cli.ts'
import { GATE_LINES, withPins } from '../helpers/example.ts'
import { heldPty } from '../helpers/held-pty.ts'
import { BUNDLE, EXAMPLE_RUN, logged, logPath, plainEnv, terminals, withoutHashes } from '../helpers/pty.ts'

const terminal = terminals()

/** A run that is stopped once it made the terminal silent and before it drew anything: as slow a start as can be. */
async function heldBeforeScreen(more: readonly string[]) {
  for (let tries = 0; tries < 5; tries++) {
    const t = terminal.start([...EXAMPLE_RUN, ...more])
    await expect.poll(() => t.isSilent, { interval: 5, timeout: 10_000 }).toBe(true)
    t.kill('SIGSTOP')
    if (!t.raw.includes('Your initials')) return t
    t.kill('SIGKILL')
  }
  throw new Error('the screen was always there first')
}

describe('barover pin', () => {
  it('asks twice, shows nothing of it and prints the key', async () => {
    const t = terminal.start(['pin', 'RO'])
    await t.see('It is not shown')
    t.send('80417\r')
    await t.see('The same once more.')
    t.send('8041\u007f17\r')
    expect(await t.ended()).toEqual({ code: 0, signal: 0 })
    const [, key = ''] = /pin: "([^"]+)"/.exec(t.raw) ?? []
    expect(await pinFits('80417', key)).toBe(true)
    expect(t.raw.replace(key, '')).not.toMatch(/8041/)
  })

  it('makes nothing of two that differ, and gives the terminal back at Control-C', async () => {
    const t = terminal.start(['pin'])
    await t.see('It is not shown')
    t.send('80417\r')
    await t.see('The same once more.')
    t.send('80418\r')
    await t.see('The two were not the same; nothing was made.')
    expect((await t.ended()).code).toBe(1)
    const other = terminal.start(['pin'])
    await other.see('It is not shown')
    other.send('80\u0003')
    expect((await other.ended()).signal).toBe(2)
    expect(t.raw + other.raw).not.toMatch(/80/)
  })
})

describe('the PIN of who signs', () => {
  it('is on no screen and in no log, keyed wrongly or rightly', async () => {
    const jobs = terminal.folder()
    const t = terminal.start([...EXAMPLE_RUN, '--jobs', jobs])
    await t.see('Your initials')
    await t.say('RO')
    await t.see('PIN of RO')
    await t.key('4070', '(not shown)')
    t.send('\r')
    await t.see("A PIN was keyed that is not RO's")
    await t.key('4071', '(not shown)')
    t.send('\r')
    await t.see('Read the tag plate')
    await t.sayAll(['TC-401-1', 'done', ...withPins(GATE_LINES)])
    await t.see('Wipe the bore')
    const log = readFileSync(logPath(jobs), 'utf8')
    const after = withoutHashes(log.slice(log.indexOf('\n')))
    for (const pin of ['4070', '4071', '2596']) {
      expect(t.raw).not.toContain(pin)
      expect(after).not.toContain(pin)
    }
    expect(after).not.toMatch(/"typed":"407/)
  })

  it.each([[[]], [['--plain']]])('keyed before there is a screen shows nowhere: %j', async (more) => {
    const t = await heldBeforeScreen(['--jobs', terminal.folder(), ...more])
    t.send('4071')
    t.kill('SIGCONT')
    await t.see('Not taken: keyed before this line stood. Key it again.')
    await t.see('Your initials')
    expect(t.raw).not.toContain('4071')
  })

  it.each([
    ['a job that is refused', ['run', 'bore-inspection', '--machine', 'nowhere.yaml']],
    ['words that are none', ['run', '--no-such-word']],
    ['no such job', ['resume', 'nowhere']],
  ])('leaves the terminal as it was after %s', async (_what, args) => {
    const shell = heldPty('sh', ['-c', `"$0" "$@"; stty -a`, process.execPath, BUNDLE, ...args], {
      env: plainEnv(),
    })
    let seen = ''
    shell.onData((data) => {
      seen += data
    })
    await expect.poll(() => seen).toMatch(/ icanon [\s\S]* echo /)
  })

  it('is no STOP that is keyed before there is a screen: that one is heard', async () => {
    const jobs = terminal.folder()
    const t = await heldBeforeScreen(['--jobs', jobs])
    t.send('stop\r')
    t.kill('SIGCONT')
    await t.see('why was STOP called?')
    expect(logged(jobs).at(-1)?.type).toBe('stop.raised')
  })

  it('half keyed when the gas test lapses, answers nothing and shows nowhere', async () => {
    const jobs = terminal.folder()
    const machine = changedMachine(terminal.folder(), (text) =>
      text.replace('life: 30 min', 'life: 6 s').replace('warn_before: 5 min', 'warn_before: 3 s'),
    )
    const t = terminal.start([
      ...EXAMPLE_RUN.map((arg) => (arg.endsWith('machine.yaml') ? machine : arg)),
      ...['--jobs', jobs],
    ])
    await t.see('Your initials')
    await t.sayAll(['RO', '4071', 'TC-401-1', 'done', ...GATE_LINES.slice(0, -1), 'ML'])
    await t.see('PIN of ML')
    await t.key('25', '(not shown)')
    await t.until('the gate fallen', () => logged(jobs).at(-1)?.cause === 'lapsed', 15_000)
    await t.until('the half gone', () => t.input === '')
    await t.key('96', '(not shown)')
    t.send('\r')
    await t.see('are dropped and kept nowhere')
    const after = readFileSync(logPath(jobs), 'utf8').split('\n').slice(1).join('\n')
    expect(t.raw).not.toMatch(/2596|(?<!\d)96(?!\d)/)
    expect(after).not.toMatch(/"typed":"(96|2596)"/)
    expect(logged(jobs).at(-1)).toMatchObject({ type: 'gate.closed', cause: 'lapsed' })
  })

  it('is not shown on plain lines either', async () => {
    const jobs = terminal.folder()
    const t = terminal.start([...EXAMPLE_RUN, '--jobs', jobs, '--plain'])
    await t.see('Your initials')
    t.send('RO\r')
    await t.see('PIN of RO')
    t.send('4071\r')
    await t.see('RO, R. Oduya, signed on')
    await t.see('Read the tag plate')
    t.send('TC-401-1\r')
    await t.see('this is TC-401-1')
    expect(t.raw).not.toContain('4071')
  })
})
