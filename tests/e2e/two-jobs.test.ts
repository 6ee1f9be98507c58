// Two programs over one folder of jobs, each in a terminal of its own: what the one sees of the other, and how soon.
import { appendFileSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { changedMachine } from '../helpers/cli.ts'
import { ROOT } from '../helpers/example.ts'
import { EXAMPLE_RUN, TO_BORE, TO_GATE, terminals } from '../helpers/pty.ts'

const terminal = terminals()

const BAR = join(ROOT, 'tests', 'fixtures', 'bar-over.yaml')

/** The bore of throw 1, keyed by RO, and barring over from throw 2, by KH. */
async function both(lines: readonly string[]) {
  const at = terminal.folder()
  const jobs = join(at, 'jobs')
  const bore = terminal.start([...EXAMPLE_RUN, '--jobs', jobs])
  await bore.see('Your initials')
  await bore.sayAll(lines)
  const machine = changedMachine(at, (text) => text.replace('machine: TC-401-1', 'machine: TC-401-2'))
  const bar = terminal.start([
    'run',
    BAR,
    '--machine',
    machine,
    '--jobs',
    jobs,
    '--clock',
    '2026-03-14 06:40+00:00',
  ])
  await bar.see('Your initials')
  return { bore, bar, jobs }
}

const TO_BAR = ['KH', '8314', 'TC-401-2', 'ALL COUNTED', 'PB', '6053']

describe('two jobs on one compressor, on screens of 80 by 24', () => {
  it('tell of each other, and a bar over waits until the arm is out of the bore', {
    timeout: 60_000,
  }, async () => {
    const { bore, bar } = await both(TO_BORE)
    await bar.see(/Also open on this machine: job [0-9a-f]{4} \(RO on it\)/)
    await bar.sayAll(TO_BAR)
    await bar.see('HOLD: this can let in the crank turning over, and job')
    await bore.see('COME OUT AND STAND CLEAR')
    await bore.see(/Bar over in job [0-9a-f]{4}/)
    await bore.say('ALL OUT')
    await bore.see('HOLD: job')
    await bar.see('One turn, block back on.')
    expect(bore.wipes + bar.wipes).toBe(0)
    await bar.say('1')
    await bar.see('Bar put away')
    await bore.see('Lock number at main driver breaker, E-1')
    for (const t of [bore, bar]) for (const line of t.lines) expect(line.length).toBeLessThanOrEqual(80)
  })

  it('hold for a STOP of the other, and for a log of one that was killed and then spoilt', {
    timeout: 60_000,
  }, async () => {
    const { bore, bar, jobs } = await both(TO_GATE)
    await bar.say('stop')
    await bore.see('HOLD: STOP is open in job')
    bar.kill('SIGKILL')
    await bar.ended()
    // What was on screen before says nothing: the prompt has to be drawn anew.
    await bore.say('open')
    await bore.see('Nothing that was found or put off is open so far.')
    await bore.see('HOLD: STOP is open in job')
    const log = readdirSync(join(jobs, 'example')).find(
      (name) => name.includes('TC-401-2') && name.endsWith('.jsonl'),
    )
    appendFileSync(join(jobs, 'example', log ?? ''), 'spoilt\n')
    await bore.see(/HOLD: the log of job [0-9a-f]{4} cannot be read/)
  })
})
