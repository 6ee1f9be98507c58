// Engines broken on purpose, one rule at a time: the search has to find the way past the gate and to show it.
import { beforeEach, describe, expect, it, vi } from 'vitest'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import { judgeStep } from '../../../src/core/job/judge-step.ts'
import { judgedAs } from '../../../src/core/proof/before.ts'
import { type Proof, prove } from '../../../src/core/proof/prove.ts'
import { exampleDefs } from '../../helpers/example.ts'
import {
  gate,
  NO_START,
  OXYGEN,
  readOne,
  smallDefs,
  TWO_GATES,
  tell,
  WITNESS,
} from '../../helpers/small-job.ts'

/** Which rule is broken now. */
const broken = vi.hoisted(() => ({ rule: '' }))
beforeEach(() => {
  broken.rule = ''
})

vi.mock('../../../src/core/job/fold-gate.ts', async (original) => {
  const real = await original<typeof import('../../../src/core/job/fold-gate.ts')>()
  const strikeAll: typeof real.strikeAll = (state, cause) => {
    if (broken.rule === `stands after ${cause}`) return state
    const struck = real.strikeAll(state, cause)
    if (broken.rule !== 'nobody is called out') return struck
    const gates = Object.entries(struck.gates).map(([id, g]) => [id, { ...g, mustClear: false }])
    return { ...struck, gates: Object.fromEntries(gates) }
  }
  return { ...real, strikeAll }
})
vi.mock('../../../src/core/job/gate.ts', async (original) => {
  const real = await original<typeof import('../../../src/core/job/gate.ts')>()
  return {
    ...real,
    unheld: (...a: Parameters<typeof real.unheld>) =>
      broken.rule === 'trusts the file checks' ? [] : real.unheld(...a),
    gatesBefore: (...a: Parameters<typeof real.gatesBefore>) => {
      const gates = real.gatesBefore(...a)
      return broken.rule === 'one gate will do' ? gates.slice(0, 1) : gates
    },
  }
})
vi.mock('../../../src/core/job/lapse.ts', async (original) => {
  const real = await original<typeof import('../../../src/core/job/lapse.ts')>()
  return {
    ...real,
    staleNow: (...a: Parameters<typeof real.staleNow>) =>
      broken.rule === 'never lapses' ? [] : real.staleNow(...a),
  }
})
vi.mock('../../../src/core/job/voiding.ts', async (original) => {
  const real = await original<typeof import('../../../src/core/job/voiding.ts')>()
  return {
    ...real,
    shownAfter: (...a: Parameters<typeof real.shownAfter>) =>
      broken.rule === 'tried under no lock' ? [] : real.shownAfter(...a),
  }
})
vi.mock('../../../src/core/job/admit-gate.ts', async (original) => {
  const real = await original<typeof import('../../../src/core/job/admit-gate.ts')>()
  const admitEvidence: typeof real.admitEvidence = (defs, state, input) => {
    const result = real.admitEvidence(defs, state, input)
    if (result.ok || result.error.code !== broken.rule) return result
    const { step, item, typed: shown } = input
    const signed = result.error.code.includes('witness') ? { person: shown } : {}
    return { ok: true, value: [{ type: 'evidence.given', step, item, shown, ...signed }] }
  }
  return { ...real, admitEvidence }
})
vi.mock('../../../src/core/job/admit-stop.ts', async (original) => {
  const real = await original<typeof import('../../../src/core/job/admit-stop.ts')>()
  const admitRelease: typeof real.admitRelease = (defs, state, input) => {
    const result = real.admitRelease(defs, state, input)
    if (result.ok || result.error.code !== broken.rule) return result
    return { ok: true, value: [{ type: 'stop.released', person: input.person, answer: input.answer }] }
  }
  const admitStopCause: typeof real.admitStopCause = (...a) => {
    const result = real.admitStopCause(...a)
    if (!result.ok || broken.rule !== 'a name is enough') return result
    const value = result.value.map((one) => {
      if (one.type !== 'stop.explained') return one
      const { signed: _, ...unsigned } = one
      return unsigned
    })
    return { ok: true, value }
  }
  return { ...real, admitRelease, admitStopCause }
})
vi.mock('../../../src/core/job/stop-causes.ts', async (original) => {
  const real = await original<typeof import('../../../src/core/job/stop-causes.ts')>()
  const barredFromRelease: typeof real.barredFromRelease = (state) =>
    broken.rule === 'a name is enough'
      ? { ...real.barredFromRelease(state), everybody: false }
      : real.barredFromRelease(state)
  return { ...real, barredFromRelease }
})
vi.mock('../../../src/core/job/values.ts', async (original) => {
  const real = await original<typeof import('../../../src/core/job/values.ts')>()
  return {
    ...real,
    hangsOn: (...a: Parameters<typeof real.hangsOn>) =>
      broken.rule === 'corrections void nothing' ? [] : real.hangsOn(...a),
  }
})

const SMALL = smallDefs([
  tell('brief'),
  gate('hold', ['start', 'bad_air'], [NO_START, OXYGEN, WITNESS]),
  readOne('in', { exposes: ['start', 'bad_air'] }),
  tell('out'),
])

function refuted(
  rule: string,
  defs: Definitions = SMALL,
): { readonly rule: string; readonly path: string[] } {
  broken.rule = rule
  const proof: Proof = prove(defs)
  if (proof.is !== 'refuted') throw new Error(`${rule}: ${proof.is}`)
  return { rule: proof.breach.rule, path: proof.breach.path.map((line) => line.says) }
}

/** The shortest way through the gate of the small job, up to its witness. */
const UP_TO_WITNESS = ['M1 signs on', 'TC-401-1', '(Enter)', 'NO START', 'G-7', '19.5']

/** The shipped procedure without its gate, for what only has to do with judging. */
const whole = exampleDefs()
const JUDGING: Definitions = {
  ...whole,
  steps: whole.steps
    .filter((s) => s.step.kind !== 'gate')
    .map((s) => ({ ...s, step: { ...s.step, exposes: [] } })),
}

describe('an engine that', () => {
  it('is not broken proves the same job', () => {
    expect(prove(SMALL)).toMatchObject({ is: 'proved' })
  })

  it('lets a gas test stand for ever is refuted by waiting', () => {
    const { rule, path } = refuted('never lapses')
    expect(rule).toBe('hazard')
    expect(path).toEqual([...UP_TO_WITNESS, '(time passes) M2'])
  })

  it.each([
    ['stop', 'stop'],
    ['left', 'leave'],
    ['interrupted', '(killed, and taken up)'],
    ['clock', '(the clock goes back an hour) M2'],
  ])('keeps evidence after: %s', (cause, word) => {
    const { rule, path } = refuted(`stands after ${cause}`)
    expect(rule).toMatch(/^(hazard|work|clear|stop)$/)
    expect(path).toContain(word)
  })

  it('asks anew before people are called out is refuted', () => {
    expect(refuted('nobody is called out').rule).toBe('clear')
  })

  it('lets people witness what they did is refuted', () => {
    // The gate that was opened on it is no open gate to the account.
    expect(refuted('self-witness')).toEqual({ rule: 'hazard', path: [...UP_TO_WITNESS, 'M1'] })
  })

  it('lets a trainee witness is refuted', () => {
    expect(refuted('witness-role')).toEqual({ rule: 'hazard', path: [...UP_TO_WITNESS, 'T1'] })
  })

  it('lets one lock hang in two places is refuted', () => {
    expect(refuted('lock-twice', smallDefs(TWO_GATES)).rule).toMatch(/hazard|work/)
  })

  it('keeps what was tried under a lock that is taken back is refuted', () => {
    const { rule, path } = refuted('tried under no lock', smallDefs(TWO_GATES))
    expect(rule).toBe('counts')
    // Shortest is a gas test that stands on a start that was no start.
    expect(path.at(-1)).toMatch(/^(locks\..*|try_start) was wrong$/)
  })

  it('takes a blank for evidence is refuted', () => {
    expect(refuted('words').rule).toMatch(/hazard|work/)
  })

  it('lets a lead release the STOP they raised, or a mechanic release one, is refuted', () => {
    expect(refuted('own-stop').rule).toBe('release')
    expect(refuted('not-lead').rule).toBe('release')
  })

  it('lets a lead release a STOP of nobody whose caller was only named, is refuted', () => {
    const { rule, path } = refuted('a name is enough')
    expect(rule).toBe('release')
    expect(path[0]).toBe('stop')
  })

  it('opens the way with one of two gates is refuted', () => {
    expect(refuted('one gate will do', smallDefs(TWO_GATES)).rule).toBe('hazard')
  })

  it('presents a hazard that no gate of the procedure holds is refuted', () => {
    const bare = smallDefs([tell('brief'), tell('in', { exposes: ['start'] })])
    expect(refuted('trusts the file checks', bare)).toEqual({
      rule: 'hazard',
      path: ['M1 signs on', 'TC-401-1', '(Enter)'],
    })
  })

  it('lets a verdict stand on a reading that was corrected is refuted', () => {
    expect(refuted('corrections void nothing', JUDGING).rule).toBe('verdict')
  })

  it('judges what was not measured is refuted', () => {
    const accepts = (defs: Definitions) => ({ defs, version: 'broken', judge: judgedAs('ACCEPT', judgeStep) })
    expect(prove(JUDGING, { engine: accepts })).toMatchObject({
      is: 'refuted',
      breach: { rule: 'verdict', step: 'bore_judged' },
    })
  })
})
