// The make-safe sheet: at any moment, for anybody, and it changes nothing.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { definitionsFrom } from '../../../src/authoring/definitions.ts'
import type { Input } from '../../../src/core/job/input.ts'
import { hear } from '../../../src/core/talk/hear.ts'
import { makeSafeLines } from '../../../src/core/talk/make-safe.ts'
import { fileCopies, Walk } from '../../helpers/example.ts'
import { gate, type Raw, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'
import { perform, schedule } from '../job/schedules.ts'

const sheet = (walk: Walk) => makeSafeLines(walk.engine.defs, walk.state).join('\n')

describe('the make-safe sheet', () => {
  it('says what to do in order, whom to call, the rescue plan and what the work adds', () => {
    const text = sheet(new Walk())
    const order = ['Come out', 'Stand clear', 'Close what lets gas in', 'Leave every lock', 'Count heads']
    const places = [...order, 'Call: Radio channel 1', 'RESCUE PLAN', 'air packs', 'THIS WORK', 'LOCKS'].map(
      (w) => text.indexOf(w),
    )
    expect(places.every((at) => at >= 0)).toBe(true)
    expect([...places].sort((a, b) => a - b)).toEqual(places)
    expect(text).toContain('no lock is on record')
  })

  it('names locks by number and point, also after their evidence fell, but not one that was mistyped', () => {
    const walk = new Walk().toGate().keys('L-900', 'back', 'yes')
    expect(sheet(walk)).not.toContain('L-900')
    walk.keys('L-101', 'L-102')
    expect(sheet(walk)).toContain('L-101  main driver breaker, E-1')
    expect(sheet(walk)).not.toContain('L-900')
    walk.bring({ do: 'take-back-evidence', step: 'hold_point', item: 'locks.breaker', why: 'another lock' })
    expect(sheet(walk)).not.toContain('L-101')
    walk.keys('ALL OUT', 'L-103')
    expect(sheet(walk)).toContain('L-103  main driver breaker, E-1')
    walk.keys('stop')
    expect(sheet(walk)).toContain('L-102  barring motor breaker, E-2')
    walk.bring({ do: 'leave' })
    expect(sheet(walk)).toContain('L-103  main driver breaker, E-1')
  })

  it('names the own lock of somebody who has left the job, and the blind, but no permit', () => {
    const numbers = (of: string, per: string): Raw => ({ id: of, kind: 'numbers', of, per, ask: 'Number.' })
    const steps = [
      gate(
        'g',
        ['start'],
        [numbers('permit', 'once'), numbers('blind', 'once'), numbers('personal_lock', 'person'), WITNESS],
      ),
      tell('in', { exposes: ['start'] }),
    ]
    const walk = new Walk(smallDefs(steps)).keys('RO', 'TC-401-1', 'P-77', 'F-2', 'L-31')
    const without = { ...walk.state, people: [], doer: null }
    const text = makeSafeLines(walk.engine.defs, without).join('\n')
    expect(text).toContain('F-2  blind')
    expect(text).toContain('L-31  personal lock of RO')
    expect(text).not.toContain('P-77')
  })

  it('is heard in any state and inside any question, and leaves all of it as it was', {
    timeout: 60_000,
  }, () => {
    const starts = [() => new Walk(), () => new Walk().toBore(), () => new Walk().toVerdict()]
    fc.assert(
      fc.property(
        fc.constantFrom(...starts),
        schedule,
        fc.constantFrom('safe', ' SAFE! ', 'safe?', 'make safe'),
        (start, actions, word) => {
          const walk = start()
          const inputs: Input[] = []
          for (const a of actions) {
            perform(walk, a, inputs)
            const heard = hear(walk.engine.defs, walk.state, walk.talk, word)
            expect(heard.input).toBeNull()
            expect(heard.pin).toBeUndefined()
            expect(heard.talk).toBe(walk.talk)
            expect(heard.say[0]).toContain('MAKE SAFE')
          }
        },
      ),
      { numRuns: 30, seed: 7 },
    )
  })
})

describe('files from before there was such a sheet', () => {
  const old = fileCopies({
    procedure: (text) => text.replace(/^make_safe:\n(?: {2}- .*\n)+/m, ''),
    machine: (text) => text.replace(/^ {2}rescue:\n(?: {4}- .*\n)+/m, ''),
  })

  it('open no new job, and say what is missing', () => {
    const result = definitionsFrom(old)
    expect(result.ok || result.diagnostics.map((d) => d.code)).toEqual(['no-make-safe', 'no-rescue'])
  })

  it('are taken up and shown, and the sheet names the permit', () => {
    const result = definitionsFrom(old, 'kept')
    if (!result.ok) throw new Error('not taken up')
    expect(makeSafeLines(result.defs, new Walk().state).join('\n')).toContain(
      'RESCUE PLAN: none on record here',
    )
  })
})
