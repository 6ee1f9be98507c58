// Practice: nothing of it gets into a job, and no hold point of it is passed on what nobody saw.
import { of } from './mutant.ts'

export const PRACTICE = [
  ...of('core/job/open-job', 'core/practice/session', [
    {
      rule: 'A hidden machine is never behind a REAL or EXAMPLE record.',
      find: "if (record !== 'PRACTICE')",
      into: "if (record === 'REAL')",
      by: 'is never REAL or EXAMPLE, and never signed with keys of a crew of its own',
    },
    {
      rule: 'A practice session is signed only with PINs that prove nothing.',
      find: 'crew.crew.filter((person) => !isExampleKey(person.pin))\n  if (own',
      into: 'crew.crew.filter((person) => person.pin === undefined)\n  if (own',
      by: 'is never REAL or EXAMPLE, and never signed with keys of a crew of its own',
    },
  ]),
  ...of('core/job/open-job', 'core/practice/scenario', [
    {
      rule: 'A scenario of an instructor makes no job of its own.',
      find: 'return scenario === undefined\n      ? null',
      into: 'return scenario?.scenario !== ""\n      ? null',
      by: 'nor a job without a session',
    },
  ]),
  ...of('core/practice/hint', 'core/practice/scenario', [
    {
      rule: 'What an instructor says at a hold point never takes the place of what the list says of it.',
      find: "const isHeld = prompt.kind === 'evidence' || prompt.kind === 'tag'",
      into: "const isHeld = prompt.kind === 'tag'",
      by: 'says its own hint, and at a hold point the one of the list behind it',
    },
  ]),
  ...of('core/practice/edition', 'core/practice/scenario', [
    {
      rule: 'A practice session is not worked on where its seed draws another machine by now.',
      find: "if (practice.named !== null || ageOf(defs, practice) === 'same') return null",
      into: "if (practice.named !== null || ageOf(defs, practice) !== 'other-build') return null",
      by: 'is told apart',
    },
  ]),
  ...of('core/job/admit-practice', 'core/practice/session', [
    {
      rule: 'A job takes nothing of a practice session.',
      find: 'if (state.practice === null)',
      into: 'if (state.closed !== null)',
      by: 'is not heard in a job, nor taken by one',
    },
  ]),
  ...of('core/job/adopt', 'core/practice/session', [
    {
      rule: 'What a practice session left is never the baseline of a machine.',
      find: 'if (state.practice !== null)',
      into: 'if (state.practice?.seed === -1)',
      by: 'leaves no baseline for a machine, and takes no other record in',
    },
  ]),
  ...of('core/practice/lesson-gate', 'core/practice/session', [
    {
      rule: 'Missing or false evidence at a hold point fails the session.',
      find: 'isUnsafe: true,',
      into: 'isUnsafe: false,',
      by: 'at a hold point fails the session',
    },
  ]),
  ...of('core/practice/lesson-gate', 'core/practice/slips', [
    {
      rule: 'A line of a hold point that was looked at in a hurry is no evidence.',
      find: "if (asked.manner === 'quick')",
      into: "if (asked.manner === 'sheet' && asked.figure === '')",
      by: 'a hurried look is a slip as well',
    },
    {
      rule: 'Words typed for what was not so have to be taken back.',
      find: 'if (truth.mayType === null)',
      into: "if (truth.mayType === '')",
      by: 'a driver that turned, keyed as still',
    },
    {
      rule: 'A figure that was seen longer ago than it counts for is no evidence.',
      find: 'if (life !== null && !(entry.atMs - asked.atMs < life))',
      into: 'if (life !== null && entry.atMs < asked.atMs)',
      by: 'a gas figure that was taken back is not keyed again once its life is over',
    },
  ]),
  ...of('core/practice/lesson-opened', 'core/practice/slips', [
    {
      rule: 'A hold point that is complete with a slip fails the session.',
      find: 'isUnsafe: true,',
      into: 'isUnsafe: false,',
      by: 'fails the session once the hold point is complete with it',
    },
  ]),
  ...of('core/job/practice', 'core/practice/slips', [
    {
      rule: 'What was looked at before a hold point fell is evidence of nothing after it.',
      find: 'return isSlip ? [] : entry.items',
      into: 'return isSlip ? entry.items : []',
      by: 'a look is over once the hold point fell',
    },
  ]),
  ...of('core/practice/looks', 'core/practice/session', [
    {
      rule: 'Each repeat is measured anew: what was measured is keyed once.',
      find: ' && seq > earlier',
      into: '',
      by: 'is measured anew: one look answers once',
    },
  ]),
  ...of('core/practice/lesson-gate', 'core/practice/waits', [
    {
      rule: 'A wait that nobody looked at when it was over fails the session.',
      find: "if (evidence.kind === 'wait' && !isOver(",
      into: "if (evidence.kind === 'words' && !isOver(",
      by: 'that nobody looked at when it was over fails the session',
    },
  ]),
  ...of('core/practice/lesson-found', 'core/practice/waits', [
    {
      rule: 'A finding that would hurt somebody fails the session.',
      find: '  if (isUnsafeSaid(truth, entry)) return unsafe',
      into: '  if (isUnsafeSaid(truth, entry) && truth.seen.length < 2) return unsafe',
      by: 'fails the session at',
    },
    {
      rule: 'A step said to be done that would hurt somebody fails the session, whether anybody looked or not.',
      find: "if (isSaidSo && !truth.isSo && fault?.shows === 'stop')",
      into: "if (isSaidSo && !truth.isSo && asked !== null && fault?.shows === 'stop')",
      by: 'a step that is said to be done with gas behind the cover fails the session',
    },
  ]),
  ...of('core/practice/lesson-found', 'core/practice/unseen', [
    {
      rule: 'What would hurt somebody fails the session, said without a look too.',
      find: 'if (isUnsafeSaid(truth, entry)) return',
      into: 'if (asked !== null && isUnsafeSaid(truth, entry)) return',
      by: 'by whoever never looked fails the session',
    },
    {
      rule: 'A correction to what would hurt somebody fails the session.',
      find: 'if (!isUnsafeSaid(truth, entry))',
      into: 'if (isUnsafeSaid(truth, entry))',
      by: 'by a correction fails it too',
    },
  ]),
  ...of('node/pins', 'cli/practice-keys', [
    {
      rule: 'No key is made of a PIN that is printed in an example.',
      find: 'if (PRINTED.includes(pin))',
      into: "if (PRINTED.includes(pin.concat('0')))",
      by: 'gets no key made of a PIN that an example prints',
    },
  ]),
  ...of('core/practice/grade', 'core/practice/unseen', [
    {
      rule: 'A session that was left is never passed.',
      find: 'return named !== null && named.length',
      into: 'return named === null || named.length',
      by: 'is not over: neither passed',
    },
  ]),
  ...of('core/practice/grade', 'core/practice/fair-sheet', [
    {
      rule: 'A session in which what was hidden was not named is never passed.',
      find: ' && hidden.every((id) => named.includes(id))',
      into: '',
      by: 'named as',
    },
    {
      rule: 'To name the whole list passes no session.',
      find: 'named.length === hidden.length && hidden',
      into: 'hidden',
      by: 'named as',
    },
  ]),
  ...of('core/definition/instruments', 'core/practice/past-range', [
    {
      rule: 'What a gauge does not span was not measured with it.',
      find: 'const PAST_ITS_MARKS = 0.01',
      into: 'const PAST_ITS_MARKS = 9',
      by: 'is doubted at what it does not span on a job',
    },
  ]),
  ...of('core/practice/inside-air', 'core/practice/inside-air', [
    {
      rule: 'A cylinder that was swept and opened is never told as air to breathe in practice.',
      find: 'return { isSwept, aired: 1 - Math.exp(-changes) }',
      into: 'return { isSwept, aired: 1 }',
      by: 'is not what a trainee keys who takes it for ordinary air',
    },
  ]),
  ...of('core/practice/false-lines', 'core/practice/false-lines', [
    {
      rule: 'A line of a hold point that is false never looks done in practice.',
      find: 'lesson?.isUnsafe === true || lesson?.isToMend === true ?',
      into: 'lesson?.isUnsafe === true ?',
      by: 'is told as FALSE in the box and in the list',
    },
  ]),
  ...of('core/talk/practice-words', 'core/practice/waits', [
    {
      rule: 'Time is let go by in a practice session, and in no other.',
      find: "if (state.practice === null || prompt.kind === 'closed') return null",
      into: "if (prompt.kind === 'closed') return null",
      by: 'goes by at a word in a practice session, and in no other',
    },
  ]),
]
