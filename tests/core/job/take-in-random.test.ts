// Whatever a job went through, and whichever fields of its machine record change: after it was taken in nothing stands that the
// old one proved or judged, and nobody is sent anywhere before all of it is proved by the new one.
import fc from 'fast-check'
import { expect, it } from 'vitest'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import type { Entry } from '../../../src/core/job/entries.ts'
import { readEntries } from '../../../src/core/job/entry-schema.ts'
import { fold, opening } from '../../../src/core/job/fold.ts'
import type { Input } from '../../../src/core/job/input.ts'
import { type State, standingVerdict, stands } from '../../../src/core/job/state.ts'
import { EVERY_KIND, kindsDefs, tiedDefs } from '../../helpers/all-kinds.ts'
import { Walk } from '../../helpers/example.ts'
import { smallDefs, TWO_GATES } from '../../helpers/small-job.ts'
import { changed, takenIn, tried } from '../../helpers/taken-in.ts'
import { violations } from './invariants.ts'
import { momentOf, perform, scheduleWithPeople } from './schedules.ts'

type Machine = Definitions['machine']

/** One change each of what verdicts, doubts, hold points, and the make-safe sheet are told by. */
const CHANGES: readonly ((m: Machine) => Partial<Machine>)[] = [
  (m) => ({ edition: `${m.edition}b` }),
  (m) => ({ bore: { ...m.bore, nominal: { ...m.bore.nominal, text: '9.600 in', si: 9.6 * 0.0254 } } }),
  (m) => ({ bore: { ...m.bore, lined: !m.bore.lined } }),
  (m) => ({ limits: m.limits.slice(1) }),
  (m) => ({ site: { ...m.site, isolation_points: m.site.isolation_points.slice(1) } }),
  (m) => ({
    site: { ...m.site, isolation_points: [{ id: 'drain', name: 'drain, V-19' }, ...m.site.isolation_points] },
  }),
  (m) => ({
    site: { ...m.site, gas: { ...m.site.gas, life: { ...m.site.gas.life, text: '10 min', si: 600 } } },
  }),
  (m) => ({ site: { ...m.site, emergency: `${m.site.emergency} Or call out.` } }),
  (m) => ({ overhauls: m.overhauls?.slice(1) }),
]

const STARTS = [
  () => new Walk().toBore(),
  () => new Walk().toBore().keys('9.60'),
  () => new Walk().toVerdict(),
  () => new Walk(smallDefs(TWO_GATES)),
  () => new Walk(kindsDefs(EVERY_KIND)),
  () => new Walk(tiedDefs()).keys('RO', 'TC-401-1', 'NO START', 'ML', '1', '1', '1.0'),
]

function replayed(entries: readonly Entry[]): State {
  const stored = entries.map((e) => JSON.parse(JSON.stringify({ ...e, prev: '00', hash: '00' })) as unknown)
  const read = readEntries(stored)
  if (!read.ok) throw new Error(read.error.say)
  const [first, ...rest] = read.value
  if (first?.type !== 'job.opened') throw new Error('not opened')
  return rest.reduce((state, e) => fold(state, e), opening(first))
}

it('nothing stands after it, and nobody is let in before it is proved anew', { timeout: 120_000 }, () => {
  const seen = { open: 0, judged: 0, pending: 0, again: 0 }
  fc.assert(
    fc.property(
      fc.constantFrom(...STARTS),
      fc.subarray([...CHANGES], { minLength: 1 }),
      scheduleWithPeople,
      fc.constantFrom(0, 4, 120),
      scheduleWithPeople,
      (start, changes, before, most, after) => {
        const old = start()
        const inputs: Input[] = []
        for (const action of before.slice(0, most)) perform(old, action, inputs)
        if (old.state.closed !== null) return
        const to = changed(
          old,
          Object.assign({}, ...changes.map((change) => change(old.engine.defs.machine))),
        )
        const readings = Object.values(old.state.readings).flat().filter(stands)
        // Of two leads one may have taken readings; who did both is not in the crew.
        const person = readings.some(({ by }) => by === 'KH') ? 'PB' : 'KH'
        if (readings.some(({ by }) => by === person)) return
        if (Object.values(old.state.gates).some((gate) => gate.status === 'open')) seen.open += 1
        if (Object.keys(old.state.verdicts).length > 0) seen.judged += 1
        if (old.state.doubt !== null || old.state.late !== null) seen.pending += 1
        if (old.state.pinMisses[person] !== undefined) return
        if (tried(old, to, { person }).refusal?.code === 'lock-on') {
          expect(old.engine.defs.machine.site.isolation_points.slice(1)).toEqual(
            to.machine.site.isolation_points.filter(({ id }) => id !== 'drain'),
          )
          return
        }
        const walk = takenIn(old, to, { person })
        const { state } = walk
        expect(Object.values(state.gates).filter((gate) => gate.status === 'open')).toEqual([])
        expect(
          Object.values(state.gates).flatMap((gate) => Object.keys({ ...gate.given, ...gate.begun })),
        ).toEqual([])
        expect(Object.keys(state.verdicts).filter((id) => standingVerdict(state, id) !== null)).toEqual([])
        expect(Object.values(state.dispositions).filter((one) => !one.void)).toEqual([])
        expect([state.doubt, state.late, state.seats, state.people]).toEqual([null, null, {}, []])
        expect(Object.values(state.readings).flat().filter(stands)).toEqual(readings)
        // What fell is named, so that the log says it: nothing was judged or decided that it leaves out.
        const taken = walk.last.type === 'record.taken-in' ? walk.last : null
        for (const id of Object.keys(old.state.verdicts))
          if (standingVerdict(old.state, id) !== null) expect(taken?.voids).toContain(id)
        expect(replayed(walk.entries)).toStrictEqual(state)
        // And on from there, by the new record.
        walk.bring({ do: 'take-up' })
        for (const action of after.slice(0, 60)) {
          perform(walk, action, [])
          expect(violations(momentOf(walk), false)).toEqual([])
        }
        if (Object.values(walk.state.gates).some((gate) => gate.status === 'open')) seen.again += 1
        expect(replayed(walk.entries)).toStrictEqual(walk.state)
      },
    ),
    { numRuns: 50, seed: 20261126 },
  )
  // Else the property would hold of nothing.
  for (const [what, times] of Object.entries(seen)) expect([what, times > 0]).toEqual([what, true])
})
