// Who may release a STOP, and which STOP nobody may.
import { of } from './mutant.ts'

export const RELEASE = [
  ...of('core/job/stop-causes', 'core/job/stop-cause', [
    {
      rule: 'A STOP for something that moved or started is never released.',
      find: "says: 'it moved, turned or started', releasable: false",
      into: "says: 'it moved, turned or started', releasable: true",
      by: 'number ',
    },
    {
      rule: 'A STOP for a lock, block or blind that was off is never released.',
      find: "says: 'a lock, block or blind was off or wrong', releasable: false",
      into: "says: 'a lock, block or blind was off or wrong', releasable: true",
      by: 'number ',
    },
    {
      rule: 'A STOP for the wrong machine is never released.',
      find: "says: 'the wrong machine or the wrong cylinder', releasable: false",
      into: "says: 'the wrong machine or the wrong cylinder', releasable: true",
      by: 'number ',
    },
    {
      rule: 'A STOP for somebody hurt is never released.',
      find: "says: 'somebody is hurt', releasable: false",
      into: "says: 'somebody is hurt', releasable: true",
      by: 'number ',
    },
    {
      rule: 'A cause that is not in the list is never released.',
      find: 'says: cause, releasable: false }',
      into: 'says: cause, releasable: true }',
      by: 'that is not in the list is never released',
    },
    {
      rule: 'What a STOP was called for is never talked down to a mistake.',
      find: "return cause === 'mistake' ? 0 : 1",
      into: 'return 1',
      by: 'is never put right to a mistake once it was anything else',
    },
    {
      rule: 'Each open STOP is explained before any release, not only the oldest.',
      find: 'return openStops(state).find((s) => s.cause === null) ?? null',
      into: 'return openStops(state).slice(0, 1).find((s) => s.cause === null) ?? null',
      by: 'is an entry of its own, and each is explained before release',
    },
    {
      rule: 'One STOP that is never released holds all the others with it.',
      find: 'return openStops(state).find((s) => s.cause !== null &&',
      into: 'return openStops(state).slice(0, 1).find((s) => s.cause !== null &&',
      by: 'that is never released makes all of them so, the first too',
    },
    {
      rule: 'Nobody releases what they called.',
      find: "    for (const person of stop.calledBy) bar(person, 'called this STOP')\n",
      into: '',
      by: 'raised by ',
    },
    {
      rule: 'Nobody releases what they raised at the keyboard.',
      find: "    if (stop.by !== null) bar(stop.by, 'raised this STOP')\n",
      into: '',
      by: 'raised by ',
      in: 'core/job/stop-cause',
    },
    {
      rule: 'When nobody knows who called it, nobody who was on the job releases it.',
      find: 'if (!stop.callerUnknown) continue',
      into: 'continue',
      by: 'is no lead who was on the job, or witnessed at its gate, when the caller is not known',
    },
    {
      rule: 'When nobody knows who raised nor who called it, nobody at all releases it.',
      find: 'everybody: open.some((s) => s.by === null && s.callerUnknown)',
      into: 'everybody: false',
      by: 'is nobody when it is known neither who raised nor who called it',
    },
    {
      rule: 'Of two open STOPs those who called either are barred, not only those of the last.',
      find: 'const open = openStops(state)',
      into: 'const open = openStops(state).slice(-1)',
      by: 'bars who raised or called either of them, not only the last',
    },
  ]),
  ...of('core/job/admit-stop', 'core/job/stop-cause', [
    {
      rule: 'The cause of a STOP that is never released is put right only to one as strict.',
      find: 'stop.cause !== null && isSofter(input.cause, stop.cause)',
      into: "stop.cause === input.cause && isSofter(input.cause, stop.cause) && input.why === ''",
      by: 'once it is never released is put right only to one as strict',
    },
    {
      rule: 'A STOP that is never released is refused its release.',
      find: "if (lasting !== null) return refuse('never-released', lasting)",
      into: '',
      by: 'that is never released makes all of them so, the first too',
    },
    {
      rule: 'Only a lead releases a STOP.',
      find: "return person.role === 'lead'",
      into: "return person.role !== 'trainee'",
      by: 'is not released by',
      in: 'core/job/stop',
    },
    {
      rule: 'A lead never releases their own STOP.',
      find: 'if (why !== undefined) return refuse',
      into: "if (why === '') return refuse",
      by: 'of a lead is released by another lead only, also after it was left and taken up',
      in: 'core/job/stop',
    },
    {
      rule: 'A STOP whose cause is not told is not released.',
      find: "  input: Of<'release-stop'>,\n): Result<readonly Body[]> {\n  if (openStop(state) === null || unexplainedStop(state) !== null) return notAsked()",
      into: "  input: Of<'release-stop'>,\n): Result<readonly Body[]> {\n  if (openStop(state) === null) return notAsked()",
      by: 'wants its cause in words before it can be released',
      in: 'core/job/stop',
    },
  ]),
]
