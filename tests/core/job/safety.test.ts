// The central promise, searched for holes: random schedules over the shipped procedure and over one with two gates.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { admit } from '../../../src/core/job/admit.ts'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import type { Input } from '../../../src/core/job/input.ts'
import { next } from '../../../src/core/job/next.ts'
import { openStop } from '../../../src/core/job/state.ts'
import { hear } from '../../../src/core/talk/hear.ts'
import { EVERY_KIND, kindsDefs } from '../../helpers/all-kinds.ts'
import { BORE_LINES, exampleDefs, START, Walk } from '../../helpers/example.ts'
import { rightLine } from '../../helpers/right-line.ts'
import { runs } from '../../helpers/runs.ts'
import { smallDefs, TWO_GATES } from '../../helpers/small-job.ts'
import { violations } from './invariants.ts'
import {
  KINDS_LINES,
  LINES,
  momentOf,
  perform,
  schedule,
  scheduleOf,
  scheduleWithPeople,
} from './schedules.ts'

/** Fixed, so that the suite says the same every time; change it to search elsewhere. */
const SEED = 20260314

const example = exampleDefs()
const STARTS: readonly ((defs: Definitions) => Walk)[] = [
  (defs) => new Walk(defs),
  (defs) => new Walk(defs, 'PRACTICE').throughGate(),
  (defs) => new Walk(defs).toBore(),
  (defs) => new Walk(defs).toBore().keys(...BORE_LINES, '1'),
]

/** What the schedules came by, so that a search that gets nowhere cannot pass for one that found nothing. */
class Seen {
  readonly prompts = new Map<string, number>()
  readonly entries = new Map<string, number>()
  readonly causes = new Map<string, number>()
  bare = 0
  count(map: Map<string, number>, key: string): void {
    map.set(key, (map.get(key) ?? 0) + 1)
  }
}

function search(begin: fc.Arbitrary<() => Walk>, few: number, actions = schedule): Seen {
  const seen = new Seen()
  fc.assert(
    fc.property(begin, actions, (start, done) => {
      const walk = start()
      const inputs: Input[] = []
      done.forEach((a, n) => {
        perform(walk, a, inputs)
        const moment = momentOf(walk)
        expect(violations(moment, n === done.length - 1 || n % 20 === 0)).toEqual([])
        expect(canStop(walk)).toBe(true)
        const prompt = next(moment.defs, moment.state)
        seen.count(seen.prompts, prompt.kind)
        if ('step' in prompt && (prompt.step.step.exposes ?? []).length > 0) seen.bare += 1
      })
      for (const e of walk.entries) {
        seen.count(seen.entries, e.type)
        if (e.type === 'gate.closed') seen.count(seen.causes, e.cause)
      }
    }),
    { numRuns: runs(few), seed: SEED },
  )
  return seen
}

/** STOP is heard at this prompt and inside this question, and blocks at once. */
function canStop(walk: Walk): boolean {
  if (walk.state.closed !== null) return true
  return ['stop', ' STOP! ', '!'].every((word) => {
    const heard = hear(walk.engine.defs, walk.state, walk.talk, word)
    if (heard.input?.do !== 'stop' || heard.talk.ask !== null) return false
    const { state } = admit(walk.engine, walk.state, heard.input, walk.now, walk.others())
    return openStop(state) !== null && ['stop-cause', 'stopped'].includes(next(walk.engine.defs, state).kind)
  })
}

const SOUND = { id: 'sound', label: 'Sound' }

const WANTED = [
  ...[
    'evidence.given',
    'evidence.failed',
    'gate.opened',
    'gate.closed',
    'people.clear',
    'clock.moved',
    'job.left',
  ],
  ...[
    'job.taken-up',
    'stop.raised',
    'stop.explained',
    'stop.released',
    'stop.stands',
    'reading.taken',
    'reading.doubted',
    'reading.late',
  ],
  ...[
    'late.settled',
    'doubt.settled',
    'reading.corrected',
    'reading.not-applicable',
    'step.reopened',
    'note.written',
  ],
]

describe('nobody is sent to a hazard whose gate is not proved', () => {
  it('holds over random schedules of the shipped procedure', { timeout: 240_000 }, () => {
    const seen = search(fc.constantFrom(...STARTS.map((start) => () => start(example))), 200)
    expect([...seen.entries.keys()]).toEqual(
      expect.arrayContaining([...WANTED, 'verdict.given', 'disposition.set']),
    )
    expect(seen.bare).toBeGreaterThan(1000)
  })

  it('holds over random schedules with people coming, going, handing over and speaking by radio', {
    timeout: 240_000,
  }, () => {
    // A second person on, so that a word by radio can be keyed.
    const judged = () => new Walk(example).toGate().keys('sign on', 'ML').throughTheRest()
    const spoken = () => judged().keys('1', 'radio', 'KH', 'run it', 'ML')
    const starts = [judged, spoken, () => new Walk(example).toBore(), () => new Walk(smallDefs(TWO_GATES))]
    const seen = search(fc.constantFrom(...starts), 200, scheduleWithPeople)
    const crew = ['person.came-on', 'person.signed-off', 'job.handed-over']
    const words = ['disposition.set', 'disposition.countersigned', 'job.closed']
    expect([...seen.entries.keys()]).toEqual(expect.arrayContaining([...crew, ...words]))
    expect(seen.bare).toBeGreaterThan(500)
  })

  it('holds over random schedules with a gate whose own tests stand behind another', {
    timeout: 240_000,
  }, () => {
    const defs = smallDefs(TWO_GATES)
    const seen = search(
      fc.constant(() => new Walk(defs)),
      400,
    )
    expect([...seen.entries.keys()]).toEqual(
      expect.arrayContaining([
        ...WANTED,
        'job.closed',
        'thing.placed',
        'thing.seen',
        'thing.accounted',
        'things.handed-on',
      ]),
    )
    expect(seen.bare).toBeGreaterThan(1000)
  })

  it('holds while a job waits at its end for a lead to decide on what was found', {
    timeout: 240_000,
  }, () => {
    // The search of the proof takes findings as unmarked (proof/findings.ts): what can happen while a job waits is tried here.
    const marked = TWO_GATES.map((raw) =>
      raw.id === 'look'
        ? { ...raw, conditions: [SOUND, { id: 'scored', label: 'Scored', finding: true }] }
        : raw,
    )
    const defs = smallDefs(marked)
    const waiting = () => {
      const walk = new Walk(defs)
      for (let n = 0; n < 60 && walk.prompt.kind !== 'findings'; n++)
        walk.key(walk.prompt.kind === 'observe' ? '2' : rightLine(defs, walk.state, walk.talk))
      return walk
    }
    const starts = [[], ['correct'], ['back'], ['back', '1'], ['stop', '8']].flatMap((keys) =>
      [0, 31].map(
        (minutes) => () =>
          waiting()
            .wait(minutes)
            .keys(...keys),
      ),
    )
    const seen = search(fc.constantFrom(...starts), 300, scheduleWithPeople)
    expect(seen.prompts.get('findings')).toBeGreaterThan(1000)
    expect([...seen.entries.keys()]).toEqual(
      expect.arrayContaining([
        'reading.corrected',
        'finding.corrected',
        'gate.closed',
        'disposition.set',
        'job.closed',
      ]),
    )
    expect([...seen.prompts.keys()]).toEqual(expect.arrayContaining(['clear', 'evidence', 'stopped']))
    expect(seen.bare).toBeGreaterThan(100)
  })

  it('holds over random schedules with every kind of evidence and steps that let hazards in again', {
    timeout: 240_000,
  }, () => {
    const defs = kindsDefs(EVERY_KIND)
    // From noon, and from an hour before midnight, when a lift plan is of another day soon.
    const from = [START.ms, START.ms + 16.7 * 3_600_000]
    const seen = search(
      fc.constantFrom(...from.map((ms) => () => walkFrom(defs, ms))),
      400,
      scheduleOf([...LINES, ...KINDS_LINES]),
    )
    // There is one reading in it, so an n/a is seldom.
    const wanted = WANTED.filter((type) => type !== 'reading.not-applicable')
    expect([...seen.entries.keys()]).toEqual(expect.arrayContaining([...wanted, 'wait.begun', 'job.closed']))
    const causes = ['lapsed', 'failed', 'overload', 'opening', 'again']
    expect([...seen.causes.keys()]).toEqual(expect.arrayContaining(causes))
    expect(seen.bare).toBeGreaterThan(1000)
  })
})

/** Through the first gate at a given moment. */
function walkFrom(defs: Definitions, ms: number): Walk {
  const walk = new Walk(defs)
  walk.now = { ...walk.now, ms }
  walk.keys('RO', 'TC-401-1')
  for (let n = 0; n < 40 && walk.state.gates.isolated?.status !== 'open'; n++) {
    if (walk.prompt.kind === 'evidence' && walk.prompt.item.evidence.kind === 'wait') walk.wait(15)
    walk.key(rightLine(defs, walk.state, walk.talk))
  }
  return walk
}
