// A REAL job: a machine that is not invented, keys of the crew's own, a person at a terminal, and gates that are proved.
import { spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { hashPin } from '../../src/node/pins.ts'
import { ROOT } from '../helpers/example.ts'
import { BUNDLE, plainEnv, terminals } from '../helpers/pty.ts'

const terminal = terminals()
const PINS = { RO: '7701', ML: '7702', KH: '7703', PB: '7704', TS: '7705' } as const

let folder = ''
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'real-'))
  cpSync(join(ROOT, 'examples/tc-401'), join(folder, 'examples/site'), { recursive: true })
  const lesson = readFileSync(join(ROOT, 'examples/first-procedure.yaml'), 'utf8')
  writeFileSync(join(folder, 'first-procedure.yaml'), lesson.replace(/^invented: true$/m, ''))
  cpSync(join(ROOT, 'procedures'), join(folder, 'procedures'), { recursive: true })
  mkdirSync(join(folder, 'jobs'))
  for (const name of ['machine.yaml', 'crew.yaml', 'instruments.yaml'])
    change(name, (text) => text.replace(/^invented: true$/m, '').replace(/due: \d{4}/g, 'due: 2099'))
  const keys = await Promise.all(Object.values(PINS).map((pin) => hashPin(pin)))
  change('crew.yaml', (text) => text.replace(/"\$scrypt[^"]*"/g, () => `"${keys.shift()}"`))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

function change(name: string, edit: (text: string) => string): void {
  const path = join(folder, 'examples/site', name)
  writeFileSync(path, edit(readFileSync(path, 'utf8')))
}

const run = (procedure = 'first-procedure.yaml') => [
  ...['run', join(folder, procedure), '--machine', join(folder, 'examples/site/machine.yaml')],
  ...['--jobs', join(folder, 'jobs')],
]

function logs(): string[] {
  const under = readdirSync(join(folder, 'jobs'), { recursive: true }).map(String)
  return under.filter((name) => name.endsWith('.jsonl')).map((name) => join(folder, 'jobs', name))
}

describe('a REAL job', () => {
  it('is searched, opened, signed with keys of its own, killed and taken up, by people only', {
    timeout: 240_000,
  }, async () => {
    const env = { XDG_CACHE_HOME: join(folder, 'cache') }
    const t = terminal.start(run(), { env })
    await t.see('Searching every state of this job')
    await t.see('Who is at the keyboard?', 120_000)
    // The PIN that the example prints for RO, which signs every practice session.
    await t.say('RO')
    await t.key('4071', '(not shown)')
    t.send('\r')
    await t.see("A PIN was keyed that is not RO's")
    await t.sayAll([PINS.RO, 'TC-401-1'])
    await t.see('Enter when it is done')
    t.kill('SIGKILL')
    await t.ended()
    const [log = ''] = logs()
    expect(log).toMatch(/real/i)
    const before = readFileSync(log, 'utf8')
    expect(before.split('\n')[0]).toMatch(/"record":"REAL"/)
    for (const pin of Object.values(PINS)) expect(before).not.toMatch(new RegExp(`"${pin}"`))
    const piped = spawnSync(process.execPath, [BUNDLE, 'resume', log, '--jobs', join(folder, 'jobs')], {
      input: 'RO\n7701\n',
      env: plainEnv(),
      encoding: 'utf8',
    })
    expect(piped.status).toBe(1)
    expect(piped.stderr).toContain(
      'A REAL job takes its answers from a person at a terminal, not from a file or a pipe.',
    )
    expect(readFileSync(log, 'utf8')).toBe(before)
    // What opened the job is known to the check of the same files too, and to the next job.
    const files = [join(folder, 'first-procedure.yaml'), join(folder, 'examples/site/machine.yaml')]
    const check = spawnSync(process.execPath, [BUNDLE, 'check', '--json', ...files], {
      env: plainEnv(env),
      encoding: 'utf8',
    })
    const [safety] = JSON.parse(check.stdout).safety
    expect(safety).toMatchObject({ is: 'proved', searchedBefore: safety.pieces - 1 })
    const second = terminal.start(run(), { env })
    await second.see('pieces had been searched before.')
    await second.see('Who is at the keyboard?')
    second.kill('SIGKILL')
    await second.ended()
    const again = terminal.start(['resume', log, '--jobs', join(folder, 'jobs')])
    await again.see('Taken up again.')
    await again.see('Who is at the keyboard?')
    await again.sayAll(['ML', PINS.ML])
    await again.see('Which machine do you stand at now?')
    await again.say('TC-401-1')
    await again.see('Enter when it is done')
  })

  it('is refused from a pipe, before anything is searched or written', () => {
    const piped = spawnSync(process.execPath, [BUNDLE, ...run()], {
      input: 'RO\n',
      env: plainEnv(),
      encoding: 'utf8',
    })
    expect(piped).toMatchObject({ status: 1, stdout: '' })
    expect(piped.stderr).toMatch(/^A REAL job takes its answers from a person at a terminal/)
    expect(logs()).toEqual([])
  })
})
