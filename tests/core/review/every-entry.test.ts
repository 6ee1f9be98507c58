// No entry that is out of the ordinary is left out: whatever a job went through, each stands behind an exception of its kind.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Entry } from '../../../src/core/job/entries.ts'
import type { Input } from '../../../src/core/job/input.ts'
import type { Kind } from '../../../src/core/review/exception.ts'
import { movesOf } from '../../../src/core/review/look.ts'
import type { Review } from '../../../src/core/review/review.ts'
import { Walk } from '../../helpers/example.ts'
import { asPerson, reviewed, reviewOfEntries } from '../../helpers/reviewed.ts'
import { perform, schedule } from '../job/schedules.ts'

/** Where an entry of each type has to stand, or null for what is ordinary or looked at with its neighbours. */
const CLASS: Readonly<Record<Entry['type'], Kind | null>> = {
  'job.opened': null,
  'person.signed-on': null,
  // In tests/core/review/paper.test.ts: no walk of a live job makes any of them.
  'paper.row': null,
  'paper.unread': null,
  'paper.signed': null,
  'person.came-on': null,
  'person.signed-off': null,
  'job.handed-over': null,
  'pin.missed': 'crew',
  'pin.fitted': null,
  'machine.named': null,
  'machine.mismatched': 'machine',
  'instrument.picked': null,
  'instrument.put-back': 'instrument',
  'instrument.doubted': 'instrument',
  'step.done': null,
  'step.confirmed': null,
  'step.objected': 'objection',
  'step.reopened': 'correction',
  'evidence.given': null,
  'evidence.failed': 'gate',
  'gate.opened': null,
  'gate.closed': 'gate',
  'wait.begun': null,
  'people.clear': null,
  'reading.taken': null,
  'reading.doubted': 'doubted',
  'reading.late': 'doubted',
  'doubt.settled': 'doubted',
  'late.settled': 'doubted',
  'reading.dropped': 'correction',
  'reading.corrected': 'correction',
  'reading.not-applicable': 'not-applicable',
  'not-applicable.taken-back': 'correction',
  'finding.observed': null,
  'finding.corrected': 'correction',
  'branch.left': 'correction',
  'verdict.given': null,
  'disposition.set': null,
  'disposition.countersigned': null,
  'deviation.permitted': 'deviation',
  'point.signed': null,
  'point.notice-given': null,
  'point.not-attended': 'open',
  'note.written': 'note',
  'left.adopted': null,
  'remark.made': 'remark',
  'file.attached': null,
  'stop.raised': 'stop',
  'stop.explained': 'stop',
  'stop.released': 'stop',
  'stop.stands': 'stop',
  'thing.placed': null,
  'thing.seen': null,
  'thing.accounted': null,
  'things.handed-on': null,
  'elsewhere.seen': null,
  'elsewhere.gone': 'machine',
  'readings.questioned': 'improbable',
  'practice.asked': null,
  'practice.called': null,
  'practice.named': null,
  'practice.hinted': null,
  'job.left': null,
  'job.taken-up': null,
  'record.taken-in': 'record',
  'clock.moved': 'clock',
  'job.closed': null,
}

function kindOf(entry: Entry): Kind | null {
  // A step that is meant to let something in makes its hold points fall: counted as usual.
  if (entry.type === 'gate.closed' && entry.cause === 'opening') return null
  if (entry.type === 'verdict.given') return entry.verdict.result.verdict === 'ACCEPT' ? null : 'verdict'
  if (entry.type === 'disposition.countersigned') return entry.agrees ? null : 'open'
  return CLASS[entry.type]
}

/** Hold points are parted by what the record tells of people behind them. */
const sortOf = (kind: Kind): Kind => (kind.startsWith('gate') ? 'gate' : kind)

function leftOut(entries: readonly Entry[], review: Review): string[] {
  return entries.flatMap((entry) => {
    const kind = kindOf(entry)
    const stands = review.exceptions.some(
      (one) => sortOf(one.kind) === kind && one.entries.includes(entry.seq),
    )
    return kind === null || stands ? [] : [`entry ${entry.seq}, ${entry.type}, is behind no ${kind}`]
  })
}

describe('a review', () => {
  it('has every entry that is out of the ordinary, of any job that can be walked', () => {
    fc.assert(
      fc.property(fc.boolean(), schedule, (isLate, actions) => {
        const walk = isLate ? new Walk().toVerdict() : new Walk().toBore()
        const inputs: Input[] = []
        for (const action of actions) perform(walk, action, inputs)
        const review = reviewed(walk)
        expect(leftOut(walk.entries, review)).toEqual([])
        // The same log gives the same review, numbers and all.
        expect(JSON.stringify(reviewOfEntries(walk.engine.defs, asPerson(walk.entries)).exceptions)).toBe(
          JSON.stringify(review.exceptions),
        )
        // And every hold point that fell otherwise than as planned stands in it, by whatever entry that came.
        for (const { entry, before, after } of movesOf(walk.entries))
          for (const [id, gate] of Object.entries(before.gates)) {
            const now = after.gates[id]
            if (gate.status !== 'open' || now?.status !== 'closed' || now.cause === 'opening') continue
            expect(
              review.exceptions.some((one) => sortOf(one.kind) === 'gate' && one.entries.includes(entry.seq)),
            ).toBe(true)
          }
      }),
      { numRuns: 30, seed: 20260316 },
    )
  })
})
