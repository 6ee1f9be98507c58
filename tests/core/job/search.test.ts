// The same promise, searched to the end: every state that a small job can come to by right lines, wrong lines, waiting,
// STOP, leaving, a clock set back, corrections, going back and old inputs, until nothing new turns up.
import { describe, expect, it } from 'vitest'
import type { Evidence } from '../../../src/core/definition/evidence.ts'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import { gatesOf } from '../../../src/core/job/gate.ts'
import type { Input } from '../../../src/core/job/input.ts'
import { next } from '../../../src/core/job/next.ts'
import type { State } from '../../../src/core/job/state.ts'
import { barredFromRelease, lastingStop, openStops } from '../../../src/core/job/stop-causes.ts'
import { dayEndsMs, dayOf } from '../../../src/core/lib/instant.ts'
import { kindsDefs, LET_IN, LIFTED, PROVED_EMPTY } from '../../helpers/all-kinds.ts'
import { exampleDefs, Walk } from '../../helpers/example.ts'
import {
  gate,
  NO_START,
  OXYGEN,
  type Raw,
  readOne,
  smallDefs,
  tell,
  WITNESS,
} from '../../helpers/small-job.ts'
import { violations } from './invariants.ts'
import { type Action, momentOf, perform } from './schedules.ts'

const HALF_LIFE_MIN = 15

/** Time only passes by waiting, half a life at a time, so that ages come in three classes: new, half, past. */
const EVENTS: readonly (readonly Action[])[] = [
  [{ do: 'right', salt: 0 }],
  [{ do: 'right', salt: 1 }],
  [{ do: 'line', text: 'y' }],
  [{ do: 'line', text: 'back' }],
  [{ do: 'line', text: 'stop' }],
  [{ do: 'wait', minutes: HALF_LIFE_MIN }],
  [{ do: 'wait', minutes: HALF_LIFE_MIN }, { do: 'tick' }],
  [{ do: 'leave' }, { do: 'take-up' }],
  [{ do: 'clock', seconds: -10, told: false }],
  [{ do: 'old', which: 0 }],
]

/** What can happen at any job is in EVENTS; each search adds the wrong lines of its own kinds. */
const lines = (...texts: string[]): Action[][] => texts.map((text) => [{ do: 'line', text }])

const ACTIONS = [...EVENTS, ...lines('30', '9.5030', '2', '9.58', 'n/a')]

/** People coming, going and handing over, by whoever is next on the list, or left half-way; at a gate of one of each kind. */
const CREW_ACTIONS: typeof EVENTS = [
  [{ do: 'right', salt: 0 }],
  [{ do: 'line', text: 'back' }],
  [{ do: 'line', text: 'stop' }],
  [{ do: 'wait', minutes: HALF_LIFE_MIN }],
  [{ do: 'leave' }, { do: 'take-up' }],
  [{ do: 'old', which: 0 }],
  ...(['sign on', 'sign off', 'hand over'] as const).map((word) => [
    { do: 'people', word, salt: 0, half: false } as const,
  ]),
  [{ do: 'people', word: 'hand over', salt: 1, half: false }],
  [{ do: 'people', word: 'hand over', salt: 0, half: true }],
]

const CREW: Raw[] = [
  gate('hold', ['start', 'bad_air'], [NO_START, OXYGEN, WITNESS]),
  tell('work', { exposes: ['start', 'bad_air'] }),
  tell('close', { exposes: ['start'] }),
]

const SHARP: Raw[] = [
  gate('isolated', ['start'], [NO_START, WITNESS]),
  gate('air', ['bad_air'], [OXYGEN, WITNESS], { exposes: ['start'] }),
  readOne('size', { exposes: ['start', 'bad_air'], repeats: { at_least: 1, at_most: 1, within: '1 in' } }),
  tell('close', { exposes: ['bad_air'] }),
]

/** What can make a difference to what happens next; times as ages in half lives, numbers of entries left out. */
function classOf(walk: Walk, hasCrew: boolean): string {
  const { state: s, now, talk } = walk
  const age = (ms: number) => Math.max(-1, Math.min(3, Math.floor((now.ms - ms) / (HALF_LIFE_MIN * 60_000))))
  const gates = Object.entries(s.gates).map(([id, g]) => [
    id,
    g.status,
    g.mustClear,
    Object.entries(g.given).map(([k, e]) => [
      k,
      e.by,
      e.person,
      e.shown,
      age(e.atMs),
      has(walk, 'lift') && isOfToday(walk, e.at),
    ]),
    Object.entries(g.begun).map(([k, e]) => [k, e.by, age(e.atMs)]),
  ])
  const readings = Object.values(s.readings).map((l) =>
    l.flatMap((r) => (r.correctedBy === null ? [sizeClass(r.typed)] : [])),
  )
  // How many there are makes no difference beyond one; what is not answered, who is barred and why does.
  const open = openStops(s)
  const asked = open.filter((stop) => stop.cause === null)
  const barred = barredFromRelease(s)
  // Only a lead could release it, so of all others it makes no difference whether they are barred.
  const leads = (ids: Iterable<string | null>) =>
    [...ids].filter((id) => walk.engine.defs.crew.crew.some((p) => p.id === id && p.role === 'lead')).sort()
  const stop = open.length > 0 && [
    [...new Set(asked.map((a) => `${a.by === null} ${leads([a.by, ...a.on])}`))],
    leads(barred.people.keys()),
    [barred.everybody, lastingStop(s) !== null, open.some((o) => o.cause !== null)],
    talk.ask !== null && 'of' in talk.ask
      ? [
          open.find((o) => 'of' in (talk.ask ?? {}) && o.seq === (talk.ask as { of: number }).of)?.cause ===
            null,
        ]
      : [],
  ]
  return JSON.stringify([
    [s.doer, s.machineNamed, s.seats, s.done, gates, readings, s.notApplicable, s.left, s.closed],
    [
      s.doubt === null ? null : sizeClass(s.doubt.typed),
      s.late === null ? null : sizeClass(s.late.typed),
      s.cutShort,
      stop,
      hasCrew ? askClass(walk) : talk.ask?.kind,
      talk.ask !== null && 'cause' in talk.ask ? talk.ask.cause : null,
    ],
    now.ms < s.lastMs,
    // Who is on the job matters where people come and go or each has a number, and midnight where a lift plan has its day.
    (hasCrew || has(walk, 'numbers')) && [...s.people].sort(),
    has(walk, 'lift') && Math.min(4, Math.ceil((dayEndsMs(now) - now.ms) / (HALF_LIFE_MIN * 60_000))),
  ])
}

/** Nothing here compares a size with another or judges it; whether it is one of the bore or was doubted as none is all. */
function sizeClass(typed: string): string {
  return Math.abs(Number(typed) - 9.5) < 0.01 ? 'a bore' : 'odd'
}

function has({ engine }: Walk, kind: Evidence['kind']): boolean {
  return gatesOf(engine.defs).some((g) => g.step.evidence.some((evidence) => evidence.kind === kind))
}

function isOfToday(walk: Walk, at: string): boolean {
  return at.slice(0, 10) === dayOf(walk.now)
}

/** A question by its kind and whom it is about. */
function askClass({ talk: { ask } }: Walk): unknown {
  return ask === null ? null : [ask.kind, 'person' in ask && ask.person, ask.kind === 'pin' && ask.what.do]
}

interface Node {
  readonly walk: Walk
  readonly last: readonly Input[]
}

function explore(
  defs: Definitions,
  most: number,
  actions: readonly (readonly Action[])[] = ACTIONS,
  startHour = 6.5,
  hasCrew = false,
): { states: number; steps: number; bare: number; closed: boolean } {
  const start = new Walk(defs)
  start.stepMs = 0
  start.now = { ms: dayEndsMs(start.now) - (24 - startHour) * 3_600_000, offsetMin: 0 }
  start.keys('RO', 'TC-401-1')
  const seen = new Set([classOf(start, hasCrew)])
  const queue: Node[] = [{ walk: start, last: [] }]
  let steps = 0
  let bare = 0
  for (let node = queue.shift(); node !== undefined && seen.size < most; node = queue.shift()) {
    for (const some of actions) {
      // Two may stand open at once; a third is held by the same rules as the second, and its own random schedules try it.
      const isStop = some.some((a) => a.do === 'line' && a.text === 'stop')
      if (isStop && openStops(node.walk.state).length >= 2) continue
      const walk = node.walk.copy()
      const inputs = [...node.last]
      for (const a of some) perform(walk, a, inputs)
      steps += 1
      const moment = momentOf(walk)
      const key = classOf(walk, hasCrew)
      const isNew = !seen.has(key)
      // What looks back over the whole job says the same of the same readings: once for each class is enough of it.
      const found = violations(moment, isNew)
      if (found.length > 0) throw new Error(`${found.join('; ')}\n${pathOf(walk.entries)}`)
      if (isBare(defs, moment.state)) bare += 1
      if (!isNew) continue
      seen.add(key)
      queue.push({ walk, last: inputs.slice(-1) })
    }
  }
  return { states: seen.size, steps, bare, closed: queue.length === 0 }
}

function isBare(defs: Definitions, state: State): boolean {
  const prompt = next(defs, state)
  return 'step' in prompt && (prompt.step.step.exposes ?? []).length > 0
}

function pathOf(entries: Walk['entries']): string {
  return entries.map((e) => `${e.seq} ${e.type}${'step' in e ? ` ${e.step}` : ''}`).join('\n')
}

describe('every state of a small job', () => {
  it('never presents a hazard whose gate is not proved', { timeout: 240_000 }, () => {
    const found = explore(smallDefs(SHARP), 60_000)
    expect(found.closed).toBe(true)
    expect(found.states).toBeGreaterThan(10_000)
    expect(found.bare).toBeGreaterThan(1000)
  })

  it.each([
    ['a measured space and a wait', PROVED_EMPTY, lines('0.45', '5', '9.5030', 'NO RISE'), 6.5],
    ['numbers for each person, words that age, and work that lets in', LET_IN, lines('P-RO1', '30'), 6.5],
    ['a lift plan, close to midnight', LIFTED, lines('1800'), 23.25],
  ] as const)('never presents one behind %s', { timeout: 240_000 }, (_what, steps, own, hour) => {
    const found = explore(kindsDefs(steps), 60_000, [...EVENTS, ...own], hour)
    expect(found.closed).toBe(true)
    expect(found.states).toBeGreaterThan(500)
    expect(found.bare).toBeGreaterThan(100)
  })

  it('nor with people coming, going and handing over', { timeout: 240_000 }, () => {
    const { crew } = exampleDefs().crew
    const three = { crew: { crew: crew.filter((p) => ['RO', 'ML', 'KH'].includes(p.id)) } }
    const found = explore(smallDefs(CREW, [], three), 60_000, CREW_ACTIONS, 6.5, true)
    expect(found.closed).toBe(true)
    expect(found.states).toBeGreaterThan(1000)
    expect(found.bare).toBeGreaterThan(500)
  })
})
