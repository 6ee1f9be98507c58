// What other jobs on the machine hold and void here.
import { of } from './mutant.ts'

export const ELSEWHERE = [
  ...of('core/job/elsewhere', 'node/other-jobs', [
    {
      rule: 'A STOP in another job on the machine holds every gate here.',
      find: 'if (other.stop !== null)',
      into: 'if (other.stop === "")',
      by: 'strikes every hold point of the other job, whole, and holds it until it is released there',
    },
    {
      rule: 'A log of another job that cannot be read holds every gate here.',
      find: '    if (other.unread !== null)\n      return',
      into: '    if (other.unread === "")\n      return',
      by: 'that is no log at all holds from the first look on',
    },
    {
      rule: 'While another job is at work that lets a hazard in, no gate opens here that holds it.',
      find: 'if (other.letting !== null && meets(',
      into: 'if (other.letting === undefined && meets(',
      by: 'waits until nobody is behind what it lets in, and then keeps everybody out until it is done',
    },
    {
      rule: 'Work that lets a hazard in waits until nobody of another job is behind a gate that holds it.',
      find: 'if (other.inside.length > 0 && (',
      into: 'if (other.inside.length < 0 && (',
      by: 'waits until nobody is behind what it lets in, and then keeps everybody out until it is done',
    },
    {
      rule: 'Work that lets in what the other job does not name waits for anybody of that other job.',
      find: '(isUnnamed || meets(',
      into: '(meets(',
      by: 'waits too where the other procedure does not name what it lets in',
      in: 'core/job/two-jobs',
    },
    {
      rule: 'A REAL job has people at the machine, whatever its log says of its answers.',
      file: 'node/other-jobs',
      find: "record !== 'REAL' && (answers === 'script'",
      into: "(answers === 'script'",
      by: 'is none when it is REAL, whatever its log says',
    },
    {
      rule: 'Another job of another kind of record voids nothing and holds nothing.',
      find: 'return other.record === state.record',
      into: 'return true',
      by: 'are shown to each other and void nothing',
    },
  ]),
  ...of('core/job/admit-elsewhere', 'core/job/two-jobs', [
    {
      rule: 'A thing taken off in another job that no number tells could have held anything: everything falls.',
      find: 'isKnown || doing.told ?',
      into: 'true ?',
      by: 'could be anything, so everything falls',
    },
    {
      rule: 'What another job took off falls here, with or without the letters of its number.',
      find: 'const keys = numbered(state, gate, off, isSameDevice)',
      into: 'const keys = numbered(state, gate, off, isSpelledAlike)',
      by: 'goes with the job that hung it, also where that keyed its number without the letters',
    },
    {
      rule: 'Another job that had not ended and is gone from the folder makes everything fall.',
      find: 'const falls = counts(state, known) ? [whole(why)] : []',
      into: 'const falls: Fall[] = []',
      by: 'is gone, though its job had not ended: everything that was proved falls, once',
      in: 'node/other-jobs',
    },
    {
      rule: 'What another job did is looked at before an input is.',
      file: 'core/job/admit',
      find: 'if (!state.left) newsFrom(engine.defs, state, others, add)',
      into: '',
      by: 'was begun, and left between two looks of the other: what held it there is void',
    },
    {
      rule: 'Who wrote looks at the other job again before anything is shown.',
      file: 'app/session',
      find: 'wrote && n < MOST_LOOKS',
      into: 'wrote && n < 0',
      by: 'never send people in beside what lets in',
      in: 'app/two-sessions',
    },
  ]),
  ...of('core/job/removals', 'core/job/two-jobs-off', [
    {
      rule: 'What one person signed for as out is told to other jobs as off, before the second signs.',
      find: "    case 'thing.seen':\n",
      into: '',
      by: 'a thing from the first signature on that it is out',
    },
    {
      rule: 'A lock that was taken back as a slip is told to other jobs as off.',
      find: '!isTakenBack(entry.cause)',
      into: "entry.cause !== 'corrected'",
      by: 'a lock that is taken back as a slip',
    },
    {
      rule: 'Where another number is found, the one that was noted is told to other jobs as off.',
      find: 'return unlike(before, entry)',
      into: 'return []',
      by: 'the number that was noted, where another is found',
    },
    {
      rule: 'A lock that was swapped for another is told to other jobs as off.',
      find: 'hangs(evidence) && was !== undefined',
      into: 'false && was !== undefined',
      by: 'the number that hung before, where a lock was swapped',
    },
    {
      rule: 'Who goes takes own locks along, also those whose hold point fell before.',
      find: 'hungAt(before, gate, isOwn)',
      into: 'numbersAt(before, gate, isOwn)',
      by: 'the own lock of who goes, whether its hold point fell before or not',
    },
    {
      rule: 'What a job keys of locks that are off, by number or by words alone, is told to other jobs.',
      find: 'if (!tellsOff(evidence)) {',
      into: 'if (evidence.kind !== "lift") {',
      by: 'every number that hangs, where only words tell that locks are off',
    },
  ]),
  ...of('core/job/next', 'core/job/two-jobs-off', [
    {
      rule: 'No lock comes off while people of another job on the machine are behind what it holds back.',
      find: 'asksOff(item.evidence) ? holdsOff(defs, state, gate) : null',
      into: 'null as string | null',
      by: 'they are called out, nobody goes in again while it comes off, and it is on record why',
    },
  ]),
  ...of('core/job/watch', 'core/job/two-jobs-off', [
    {
      rule: 'Other jobs are told of a lock before it comes off, and come out for it.',
      find: 'if (off !== null) return {',
      into: 'if (off === undefined) return {',
      by: 'they are called out, nobody goes in again while it comes off, and it is on record why',
    },
  ]),
]
