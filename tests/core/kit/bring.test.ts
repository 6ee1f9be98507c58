// What a job wants beside instruments, who has to be there, and how it is said.
import { describe, expect, it } from 'vitest'
import type { Person } from '../../../src/core/definition/crew.ts'
import { type Kit, kitOf } from '../../../src/core/kit/kit.ts'
import { stepsText } from '../../../src/core/kit/steps.ts'
import { kitBeforeJob, kitLines } from '../../../src/core/kit/words.ts'
import { exampleDefs } from '../../helpers/example.ts'
import {
  gate,
  LOCKS,
  OXYGEN,
  type Raw,
  rawProcedure,
  smallDefs,
  TWO_GATES,
  tell,
  WITNESS,
} from '../../helpers/small-job.ts'

const DAY = '2026-03-14'
const kit = (steps: readonly Raw[], ...more: [parts?: ReturnType<typeof rawProcedure>[]]): Kit =>
  kitOf(smallDefs(steps, ...more), DAY)
const short = (things: readonly { readonly what: string; readonly steps: Kit['tools'][number]['steps'] }[]) =>
  things.map(({ what, steps }) => `${what}, ${stepsText(steps)}`)

const SLING = { what: 'Sling and shackles', kind: 'lifting', note: 'rated for the head' }

const LIFT = {
  id: 'lift',
  kind: 'lift',
  load: 'Read the weight.',
  rating: 'Read the rating.',
  sling: 'Read the number.',
  inspected: 'Look it over.',
}

describe('weights', () => {
  it('of piston and rod on record stand before the slings, and what is not on record is said', () => {
    const lifted = [gate('g', ['fall'], [LIFT, WITNESS]), tell('in', { exposes: ['fall'] })]
    const [weights, sling] = kit(lifted).lifting
    expect(weights).toMatchObject({ what: 'Weights on record', notes: ['piston: 95 lb', 'rod: 70 lb'] })
    expect(sling?.what).toContain('Sling')
    expect(kit([tell('a')]).lifting).toEqual([])
    const defs = smallDefs(lifted)
    const { mass: _mass, ...rod } = defs.machine.rod ?? { source: '', diameter: defs.machine.bore.nominal }
    const without = kitOf({ ...defs, machine: { ...defs.machine, rod } }, DAY)
    expect(without.lifting[0]?.notes).toEqual(['piston: 95 lb', 'rod: not on record, from its drawing'])
  })
})

describe('what steps need', () => {
  it('is listed once under its kind, with the numbers of all steps that want it', () => {
    const found = kit([
      tell('a', { needs: [SLING, { what: 'Brass drift', kind: 'tool' }] }),
      tell('b'),
      tell('c', { needs: [{ ...SLING, what: 'sling  and Shackles', note: 'rated for the piston' }, SLING] }),
      tell('d', {
        needs: [
          { what: 'Brass drift', kind: 'part' },
          { what: 'Solvent', kind: 'consumable' },
        ],
      }),
      tell('e', {
        needs: [
          { what: 'Hot work permit', kind: 'permit' },
          { what: 'A watcher', kind: 'person' },
        ],
      }),
    ])
    expect(short(found.lifting)).toEqual(['Sling and shackles, steps 1, 3'])
    expect(found.lifting[0]?.notes).toEqual(['rated for the head', 'rated for the piston'])
    expect(short(found.tools)).toEqual(['Brass drift, step 1'])
    expect(short(found.parts)).toEqual(['Brass drift, step 4'])
    expect(short(found.consumables)).toEqual(['Solvent, step 4'])
    expect(short(found.permits)).toEqual(['Hot work permit, step 5'])
    expect(short(found.persons)).toEqual(['A watcher, step 5'])
  })

  it('counts what a part step needs once, at its first step, and says when it may come to none', () => {
    const part = rawProcedure([tell('x'), tell('y', { needs: [SLING] })], { procedure: 'inner' })
    const look = {
      id: 'look',
      kind: 'observe',
      title: 'look',
      conditions: [
        { id: 'sound', label: 'Sound' },
        { id: 'torn', label: 'Torn' },
      ],
    }
    const step = { id: 'p', kind: 'part', title: 'p', use: 'inner', needs: [{ what: 'Tray', kind: 'tool' }] }
    const when = { rule: 'look == "torn"', unknown: 'do' }
    expect(short(kit([look, step], [part]).tools)).toEqual(['Tray, step 2'])
    const perhaps = kit([look, { ...step, when }], [part])
    expect(short(perhaps.tools)).toEqual(['Tray, perhaps step 2'])
    expect(short(perhaps.lifting)).toEqual(['Sling and shackles, perhaps step 3'])
    const also = kit([look, { ...step, when }, tell('z', { needs: [SLING] })], [part])
    expect(short(also.lifting)).toEqual(['Sling and shackles, steps 3, 4'])
  })
})

describe('what hold points ask the number of', () => {
  const numbers = (id: string, of: string, per: string): Raw => ({
    id,
    kind: 'numbers',
    ask: `Ask ${id}.`,
    of,
    per,
  })

  it('is counted once for several gates: locks by point, blinds, personal locks by people', () => {
    const found = kit([
      gate(
        'a',
        ['start'],
        [LOCKS, numbers('permit', 'permit', 'once'), numbers('own', 'personal_lock', 'person')],
      ),
      gate(
        'b',
        ['start'],
        [LOCKS, numbers('blind', 'blind', 'isolation_point'), numbers('own', 'personal_lock', 'person')],
      ),
      gate('c', ['start'], [numbers('lift_permit', 'permit', 'once')]),
    ])
    expect(found.numbered.map((one) => [one.of, one.count, stepsText(one.steps)])).toEqual([
      ['lock', 2, 'steps 1, 2'],
      ['permit', 1, 'step 1'],
      ['personal_lock', null, 'steps 1, 2'],
      ['blind', 2, 'step 2'],
      ['permit', 1, 'step 3'],
    ])
    expect(found.numbered[0]?.points).toEqual(['main driver breaker, E-1', 'barring motor breaker, E-2'])
    expect(kitLines(found).join('\n')).toContain('Personal lock: one for each person on the job, steps 1, 2')
  })

  it('asks gear for a lift plan, with how its load is found', () => {
    const plan = {
      id: 'plan',
      kind: 'lift',
      load: 'Weigh it.',
      rating: 'Read it.',
      sling: 'Tag.',
      inspected: 'Look.',
    }
    const found = kit([gate('a', ['fall'], [plan]), gate('b', ['fall'], [plan])])
    expect(found.lifting).toHaveLength(2)
    expect(found.lifting[1]).toMatchObject({
      notes: ['load: Weigh it.', 'rating: Read it.'],
      steps: { numbers: [1, 2] },
    })
  })

  it('has the temporary things that are placed', () => {
    expect(short(kit(TWO_GATES).placed)).toEqual(['locking pin, step 7', 'tag on the panel, step 7'])
  })
})

describe('people', () => {
  const person = (id: string, role: Person['role']): Person => ({ id, name: `N. ${id}`, role })
  const withCrew = (steps: readonly Raw[], ...crew: Person[]) =>
    kitOf({ ...smallDefs(steps), crew: { crew } }, DAY)
  const witnessed = [gate('a', ['start'], [LOCKS, WITNESS])]

  it('are found by role, and two where somebody has to vouch', () => {
    const found = withCrew(witnessed, person('RO', 'mechanic'), person('KH', 'lead'), person('TS', 'trainee'))
    expect(found.holds).toEqual([])
    expect(found.roles.map((role) => [role.does, role.can])).toEqual([
      ['does the work and keys it', ['RO', 'KH']],
      ['witnesses a hold point', ['RO', 'KH']],
    ])
    expect(kitLines(found)).toContain('PEOPLE   two at least')
    expect(kitLines(withCrew([tell('a')], person('RO', 'mechanic')))).toContain('PEOPLE   one at least')
  })

  it('hold the job where one alone would vouch for their own work, or nobody has the role', () => {
    expect(withCrew(witnessed, person('RO', 'mechanic'), person('TS', 'trainee')).holds).toEqual([
      'a second person, who witnesses a hold point (step 1): only RO could, and nobody vouches for their own work.',
    ])
    expect(withCrew(witnessed, person('TS', 'trainee')).holds).toHaveLength(2)
    const review = [tell('a', { point: { kind: 'review', roles: ['lead'] } })]
    expect(withCrew(review, person('RO', 'mechanic'), person('ML', 'mechanic')).holds).toEqual([
      'a lead, who reads the records and signs for them (step 1): nobody on the crew list is one.',
    ])
    expect(withCrew(review, person('RO', 'mechanic'), person('KH', 'lead')).holds).toEqual([])
  })

  it('a verdict is decided on by a lead', () => {
    const { crew } = exampleDefs().crew
    const mechanics = { crew: crew.filter((one) => one.role === 'mechanic') }
    expect(kitOf({ ...exampleDefs(), crew: mechanics }, DAY).holds.join()).toContain(
      'who decides on a verdict',
    )
    expect(kitOf(exampleDefs(), DAY).roles.at(-1)?.can).toEqual(['KH', 'PB'])
  })
})

describe('in words', () => {
  it('says steps in runs', () => {
    expect(stepsText({ numbers: [4], perhaps: false })).toBe('step 4')
    expect(stepsText({ numbers: [2, 3, 5, 6, 7, 9], perhaps: false })).toBe('steps 2, 3, 5 to 7, 9')
    expect(stepsText({ numbers: [4], perhaps: true })).toBe('perhaps step 4')
  })

  it('puts what stops the job before everything to bring', () => {
    const lines = kitLines(kitOf(exampleDefs(), '2027-01-01'))
    const hold = lines.indexOf('HOLD: NOT TO BE STARTED WITHOUT')
    expect(hold).toBe(3)
    expect(lines[hold + 1]).toMatch(
      /^ {2}A gas meter for the gas tests .*G-7: its calibration lapsed on 2026-04-15/,
    )
    expect(lines.findIndex((line) => line.startsWith('INSTRUMENTS'))).toBeGreaterThan(hold)
    expect(kitLines(kitOf(exampleDefs(), DAY)).join('\n')).not.toContain('HOLD')
  })

  it('says one line before a job where nothing is wrong', () => {
    expect(kitBeforeJob(kitOf(exampleDefs(), DAY))).toEqual({
      lines: ['Kit: 3 instruments (M-1 may not be used), 6 locks. See barover kit'],
      wrong: false,
    })
    expect(kitBeforeJob(kit([tell('a', { needs: [SLING] })])).lines).toEqual(['Kit: 1 more. See barover kit'])
    expect(kitBeforeJob(kit([tell('a')])).lines).toEqual(['Kit: nothing to bring. See barover kit'])
  })

  it('does not leave an instrument behind that serves another seat', () => {
    const purge = { id: 'p', kind: 'gas', ask: 'Read.', limit: 'purge_end', with: 'purge' }
    const small = smallDefs([gate('a', ['bad_air'], [OXYGEN, purge])])
    const seats = [...small.seats, { id: 'purge', kinds: ['gas_meter' as const], for: 'the purge' }]
    const [line = ''] = kitBeforeJob(kitOf({ ...small, seats }, DAY)).lines
    expect(line).toBe('Kit: 2 instruments. See barover kit')
  })

  it('names in full what holds it and what could be picked and would fail', () => {
    const { lines, wrong } = kitBeforeJob(kitOf(exampleDefs(), '2026-05-01'))
    expect(wrong).toBe(false)
    expect(lines).toEqual(['Kit: 3 instruments (G-7 and M-1 may not be used), 6 locks. See barover kit'])
    const valid = exampleDefs({ instruments: (text) => text.replace('due: 2025-11-30', 'due: 2026-11-30') })
    const coarse = kitBeforeJob(kitOf(valid, DAY))
    expect(coarse.wrong).toBe(true)
    expect(coarse.lines[0]).toMatch(
      /^Not for this job: M-1: it shows steps of 0\.001 in, too coarse to agree within 0\.0002 in \(steps /,
    )
    expect(coarse.lines.at(-1)).toBe('Kit: 3 instruments, 6 locks. See barover kit')
    // What holds its seat is said there, and not once more.
    const none = exampleDefs({
      instruments: (text) => text.replace('resolution: 0.0001 in', 'resolution: 0.001 in'),
    })
    const held = kitBeforeJob(kitOf(none, DAY)).lines
    expect(held).toHaveLength(2)
    expect(held[0]).toMatch(/^HOLD: .* M-3: it shows steps of 0\.001 in/)
    const late = kitBeforeJob(kitOf(exampleDefs(), '2027-01-01'))
    expect(late.lines.filter((line) => line.startsWith('HOLD: not to be started without a'))).toHaveLength(3)
  })
})
