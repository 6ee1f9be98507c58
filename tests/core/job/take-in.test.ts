// A changed machine record taken in while nobody is on the job: who may, what is refused, and that nothing the old one proved,
// judged or decided stands after it.
import { describe, expect, it } from 'vitest'
import { asKind, type Definitions, stepById } from '../../../src/core/job/definitions.ts'
import { fold } from '../../../src/core/job/fold.ts'
import { gatesOf, itemByKey } from '../../../src/core/job/gate.ts'
import { handOverLines } from '../../../src/core/job/hand-over.ts'
import { nowDoubted } from '../../../src/core/job/plausible.ts'
import { openStop, type State, standingVerdict, stands } from '../../../src/core/job/state.ts'
import { layOut, plainText } from '../../../src/core/sheet/block.ts'
import { entryBlock } from '../../../src/core/sheet/entry-block.ts'
import { fallenLines } from '../../../src/core/sheet/record-block.ts'
import { makeSafeLines } from '../../../src/core/talk/make-safe.ts'
import { exampleDefs, GATE_LINES, LOCK_LINES, Walk } from '../../helpers/example.ts'
import { type Raw, smallDefs } from '../../helpers/small-job.ts'
import { changed, takenEntry, takenIn, tried } from '../../helpers/taken-in.ts'

const defs = exampleDefs()
const { machine } = defs
type Machine = typeof machine
const inch = (value: number) => ({
  text: `${value.toFixed(3)} in`,
  kind: 'length' as const,
  value,
  unit: 'in',
  si: value * 0.0254,
})
const bored = (to: number) => ({ bore: { ...machine.bore, nominal: inch(to) } })
const limits = machine.limits.map((one) =>
  one.characteristic === 'largest-diameter' ? { ...one, at_most: inch(9.506) } : one,
)
const piston = { piston: { ...(machine.piston as NonNullable<typeof machine.piston>), length: inch(5.3) } }
const left = (walk: Walk) => {
  walk.bring({ do: 'leave' })
  return walk
}
const judged = () => left(new Walk().toVerdict())

describe('a changed record', () => {
  it('makes every verdict and hold point fall by name, and leaves the readings as they were read', () => {
    const walk = judged()
    const after = takenIn(walk, changed(walk, { ...piston, edition: '5' }))
    expect(takenEntry(after)).toMatchObject({
      by: 'KH',
      person: 'KH',
      signed: 'pin',
      why: 'bored to the next size',
      changed: [
        { field: 'edition', was: '4', now: '5' },
        { field: 'piston, length', was: '5.20 in', now: '5.300 in' },
      ],
      gates: ['hold_point'],
      voids: ['bore_judged'],
      undecided: [],
      anew: [],
      tests: [],
      dropped: [],
    })
    expect(standingVerdict(after.state, 'bore_judged')).toBeNull()
    expect(after.state).toMatchObject({ left: true, doer: null, people: [] })
    expect([after.state.seats, after.state.gates.hold_point?.given]).toEqual([{}, {}])
    expect(after.state.gates.hold_point).toMatchObject({
      status: 'closed',
      cause: 'record',
      mustClear: true,
    })
    const count = (state: State) => Object.values(state.readings).flat().filter(stands).length
    expect(count(after.state)).toBe(count(walk.state))
    expect(after.prompt.kind).toBe('sign-on')
  })

  it('is judged by at once when the job is taken up, and the old verdict keeps its words in the log', () => {
    const walk = judged()
    expect(standingVerdict(walk.state, 'bore_judged')?.verdict.result.verdict).toBe('MONITOR')
    const after = takenIn(walk, changed(walk, { limits }))
    after.bring({ do: 'take-up' })
    after.keys('RO', 'TC-401-1')
    const words = after.entries.flatMap((e) => (e.type === 'verdict.given' ? [e.verdict.result.verdict] : []))
    expect(words).toEqual(['MONITOR', 'REPLACE'])
    expect(after.prompt.kind).toBe('decide')
  })

  it('voids a decision with the verdict it was about', () => {
    const walk = left(new Walk().toVerdict().keys('1', 'KH', 'run it, none given'))
    // The last question is open, so the job is not at its end.
    if (walk.state.closed !== null) throw new Error('closed')
    const after = takenIn(walk, changed(walk, piston), { person: 'PB' })
    expect(takenEntry(after).voids).toEqual(['bore_judged', 'disposition'])
    expect(Object.values(after.state.dispositions).map((one) => one.void)).toEqual([true])
  })

  it('holds the verdict where a reading that nobody kept is beyond belief by it, whatever its limits say', () => {
    const walk = judged()
    const wide = machine.limits.filter((one) => one.characteristic !== 'largest-diameter')
    const after = takenIn(walk, changed(walk, { ...bored(9.6), limits: wide }))
    after.bring({ do: 'take-up' })
    after.keys('RO', 'TC-401-1')
    const verdict = standingVerdict(after.state, 'bore_judged')?.verdict
    expect(verdict?.result.verdict).toBe('HOLD')
    expect(JSON.stringify(verdict?.inputs)).toContain(
      'by the record as it is now 0.0967 in under nominal 9.600 in',
    )
  })

  it('asks a reading anew that waited to be settled, as its doubt was by the old one', () => {
    const walk = left(new Walk().toBore().keys('9.60'))
    const seq = walk.state.doubt?.seq
    const after = takenIn(walk, changed(walk, bored(9.6)))
    expect(takenEntry(after).dropped).toEqual([seq])
    expect(after.state.doubt).toBeNull()
    after.bring({ do: 'take-up' })
    after.keys('RO', 'TC-401-1', 'ALL OUT', ...GATE_LINES)
    expect(after.prompt.kind).toBe('pick')
  })

  it('keeps a finding and voids what was decided about it', () => {
    const look = (id: string): Raw => ({
      id,
      kind: 'observe',
      title: id,
      conditions: [
        { id: 'sound', label: 'Sound' },
        { id: 'scored', label: 'Scored', finding: true },
      ],
    })
    const walk = new Walk(smallDefs([look('rod'), look('bore')])).keys('RO', 'TC-401-1', '2', '2')
    walk.bring({ do: 'dispose', step: 'rod', choice: 'accept', person: 'KH', why: 'light' })
    const after = takenIn(left(walk), changed(walk, { edition: '5' }))
    expect(takenEntry(after)).toMatchObject({ voids: [], undecided: ['rod'] })
    after.bring({ do: 'take-up' })
    after.keys('RO', 'TC-401-1')
    expect(after.prompt.kind === 'findings' && after.prompt.open.map((one) => one.step)).toEqual([
      'rod',
      'bore',
    ])
  })

  it('asks for a lock at a point it adds, and knows what was keyed at one that it has no more', () => {
    const walk = left(new Walk().throughGate())
    const added = { id: 'drain', name: 'drain valve, V-19' }
    const at = (isolation_points: Machine['site']['isolation_points']) =>
      changed(walk, { site: { ...machine.site, isolation_points } })
    const after = takenIn(walk, at([...machine.site.isolation_points, added]))
    expect(makeSafeLines(after.engine.defs, after.state).join('\n')).toMatch(/L-101 {2}/)
    expect(handOverLines(after.engine.defs, after.state).join('\n')).toMatch(
      /Machine record changed on the job 2026-03-14 \d\d:\d\d by KH/,
    )
    after.bring({ do: 'take-up' })
    after.keys('RO', 'TC-401-1', 'ALL OUT', ...LOCK_LINES)
    const { prompt } = after
    expect(prompt.kind === 'evidence' && prompt.item.key).toBe('locks.drain')
    const shorter = at(machine.site.isolation_points.slice(1))
    const [gate] = gatesOf(shorter)
    if (gate === undefined) throw new Error('no gate')
    expect(itemByKey(shorter, gate, 'locks.breaker')?.point?.name).toBe(
      'breaker, a point that the record has no more',
    )
  })

  it('keeps an answer about the record and voids what was signed for it, which is signed anew', () => {
    const about = [
      {
        id: 'which',
        kind: 'observe',
        title: 'Which piston',
        by_record: true,
        point: { kind: 'hold', roles: ['lead'] },
        conditions: [
          { id: 'same', label: 'that on record' },
          { id: 'other', label: 'another' },
        ],
      },
      { id: 'agreed', kind: 'confirm', title: 'Agreed', seen: 'as on record', by_record: true },
      { id: 'other', kind: 'confirm', title: 'Other', seen: 'so' },
    ]
    const walk = new Walk(smallDefs(about)).keys('RO', 'TC-401-1', '1', 'KH', '1')
    expect(walk.prompt.kind).toBe('confirm')
    const after = takenIn(left(walk), changed(walk, { edition: '5' }), { person: 'PB' })
    const entry = takenEntry(after)
    expect(entry.anew).toEqual(['which', 'agreed'])
    expect(after.state.done).toEqual({ which: 'same' })
    after.bring({ do: 'take-up' })
    after.keys('RO', 'TC-401-1')
    expect(after.prompt).toMatchObject({ kind: 'point', step: { id: 'which' } })
    after.keys('KH')
    expect(after.prompt).toMatchObject({ kind: 'confirm', step: { id: 'agreed' } })
    const shown = fallenLines(after.engine.defs, entry).join('\n')
    expect(shown).toMatch(/answers about the record, to be given or signed anew: Which piston; Agreed/)
  })

  it('is taken in under a STOP too, which stands; and for a job that was cut off, which is left first', () => {
    const walk = new Walk().throughGate().keys('stop', '8', 'the record is wrong', 'RO')
    const cut = takenIn(walk, changed(walk, piston))
    expect(cut.entries.slice(-2).map((e) => e.type)).toEqual(['job.left', 'record.taken-in'])
    expect(openStop(cut.state)).not.toBeNull()
    cut.bring({ do: 'take-up' })
    expect(cut.prompt.kind).toBe('stopped')
  })

  it('leaves a reading to the word of whoever kept it in spite of a doubt', () => {
    const walk = new Walk().toBore().keys('9.60', '3', 'it is worn')
    const [kept] = Object.values(walk.state.readings)
      .flat()
      .filter((one) => one.keptBecause !== null)
    if (kept === undefined) throw new Error('nothing was kept')
    const placed = asKind(stepById(defs, kept.step), 'read')
    expect(nowDoubted(changed(walk, bored(9.7)), placed, kept)).toBeNull()
    expect(nowDoubted(changed(walk, bored(9.7)), placed, { ...kept, keptBecause: null })).toMatch(
      /under nominal/,
    )
  })

  it('makes all of it fall also by an entry that names nothing', () => {
    const walk = new Walk().toVerdict().keys('1', 'KH', 'run it, none given', 'sign on', 'ML', ...GATE_LINES)
    const entry = takenEntry(takenIn(walk, changed(walk, piston), { person: 'PB' }))
    const before = { ...walk.state, gates: opened(walk.state) }
    const none = { gates: [], voids: [], undecided: [], anew: [], tests: [], changed: [], dropped: [] }
    const after = fold(before, { ...entry, ...none })
    expect(Object.values(before.gates).map(({ status }) => status)).toContain('open')
    expect(Object.values(after.gates).map(({ status }) => status)).not.toContain('open')
    expect(Object.values(after.verdicts).map((one) => one.void)).toEqual([true])
    expect(Object.values(after.dispositions).map((one) => one.void)).toEqual([true])
  })

  it('stands on the sheet with every field, the hold points and the verdicts by name', () => {
    const walk = judged()
    const after = takenIn(walk, changed(walk, piston))
    const block = entryBlock(after.engine.defs, after.state, after.last)
    const shown = plainText(
      layOut(block ?? { margin: '', rows: [] }, { width: 100, record: 'EXAMPLE', ascii: true }),
    )
    expect(shown).toMatch(/MACHINE RECORD CHANGED/)
    expect(shown).toMatch(/signed by KH$/m)
    expect(shown).toMatch(/piston, length: 5\.20 in, now 5\.300 in/)
    expect(shown).toMatch(/void, to be judged and decided anew: Bore judged/)
    expect(shown).toMatch(/hold points to be proved anew: /)
  })
})

describe('a changed record is refused, and nothing is written,', () => {
  const walk = judged()
  const to = changed(walk, piston)
  const with_ = (change: Partial<Definitions['machine']>) => changed(walk, { ...piston, ...change })
  it.each([
    ['of another tag', with_({ machine: 'TC-402-1' }), 'other-machine', /record of 'TC-402-1'/],
    ['of another compressor', with_({ compressor: 'TC-402' }), 'other-machine', /part of 'TC-402'/],
    ['that names no compressor any more', with_({ compressor: undefined }), 'other-machine', /no compressor/],
    ['of another kind', with_({ invented: false }), 'other-kind', /not marked invented/],
    [
      'that names another crew file',
      with_({ uses: { ...machine.uses, crew: 'other.yaml' } }),
      'other-files',
      /uses, crew/,
    ],
    ['that differs in nothing', walk.engine.defs, 'unchanged', /Nothing that a job reads differs/],
    [
      'that the procedure is not for',
      with_({ cylinder: { ...machine.cylinder, orientation: 'vertical' } }),
      'not-for',
      /vertical/,
    ],
  ] as const)('%s', (_what, record, code, why) => {
    const found = tried(walk, record)
    expect([found.refusal?.code, found.entries]).toEqual([code, []])
    expect(found.refusal?.say).toMatch(why)
    expect(found.state).toBe(walk.state)
  })

  it('that loses a point where a lock is still on', () => {
    const site = { ...machine.site, isolation_points: machine.site.isolation_points.slice(1) }
    const locked = left(new Walk().throughGate())
    const found = tried(locked, changed(locked, { site }))
    expect([found.refusal?.code, found.entries]).toEqual(['lock-on', []])
    expect(found.refusal?.say).toMatch(/lock at main driver breaker, E-1 \(L-101\) is still on/)
    const before = left(new Walk().toGate())
    expect(tried(before, changed(before, { site })).refusal).toBeNull()
  })

  it.each([
    ['by a mechanic', { person: 'ML' }, 'not-lead'],
    ['by a trainee', { person: 'TS' }, 'not-lead'],
    ['by nobody of the crew', { person: 'XX' }, 'unknown-person'],
    ['without a PIN that fits', { proved: false }, 'pin-needed'],
    ['without words', { why: ' ... ' }, 'no-words'],
  ] as const)('%s', (_what, more, code) => {
    const found = tried(walk, to, more)
    expect([found.refusal?.code, found.entries]).toEqual([code, []])
  })

  it('by a lead whose reading stands, and not by one who only keyed or decided', () => {
    const own = left(new Walk().toGate())
    const byLead: Walk = Object.assign(own.copy(), {
      state: { ...walk.state, readings: byPerson(walk.state, 'KH') },
    })
    expect(tried(byLead, to).refusal?.code).toBe('own-work')
    expect(tried(byLead, to, { person: 'PB' }).refusal).toBeNull()
    const atKeys: Walk = Object.assign(own.copy(), { state: { ...walk.state, doer: 'KH' } })
    expect(tried(atKeys, to).refusal).toBeNull()
  })

  it('for a closed job', () => {
    const closed = new Walk().toVerdict().keys('1', 'KH', 'read again, none given', '')
    expect(closed.state.closed).not.toBeNull()
    expect(tried(closed, changed(closed, piston)).refusal?.code).toBe('closed')
  })

  it('for a REAL job whose gates are not proved by it', () => {
    const { crew, instruments } = walk.engine.defs
    const key = `$scrypt$ln=15,r=8,p=1$${'A'.repeat(22)}$${'B'.repeat(43)}`
    const real: Definitions = {
      ...walk.engine.defs,
      machine: { ...machine, invented: undefined },
      instruments: { ...instruments, invented: undefined },
      crew: { ...crew, invented: undefined, crew: crew.crew.map((one) => ({ ...one, pin: key })) },
      invented: [],
    }
    const job: Walk = Object.assign(walk.copy(), {
      engine: { ...walk.engine, defs: real },
      state: { ...walk.state, record: 'REAL', scripted: false },
    })
    const record = changed(job, piston)
    expect(tried(job, record, { unproved: 'the search ended' }).refusal?.code).toBe('not-proved')
    expect(tried(job, record).refusal).toBeNull()
    const example = { ...real, crew: { ...real.crew, crew: crew.crew } }
    expect(tried(job, { ...example, machine: record.machine }).refusal?.code).toBe('example-key')
  })
})

function opened(state: State): State['gates'] {
  return Object.fromEntries(
    Object.entries(state.gates).map(([id, gate]) => [id, { ...gate, status: 'open' as const }]),
  )
}

function byPerson(state: State, person: string): State['readings'] {
  return Object.fromEntries(
    Object.entries(state.readings).map(([place, list]) => [
      place,
      list.map((one) => ({ ...one, by: person })),
    ]),
  )
}
