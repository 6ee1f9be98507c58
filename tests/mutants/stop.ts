// STOP, the clock, and what is heard when.
import { of } from './mutant.ts'

export const STOP = [
  ...of('core/talk/words', 'core/job/stop', [
    {
      rule: 'A line that is only stop is STOP, however often it is said.',
      find: '/^(?:!|stop)(?:[\\s.,!?]|stop)*$/i',
      into: '/^(?:!|stop)$/i',
      by: 'blocks at once',
    },
  ]),
  ...of('core/talk/hear', 'core/job/stop', [
    {
      rule: 'STOP is heard where a PIN is asked too.',
      find: 'if (isStop(line)) return',
      into: "if (isStop(line) && talk.ask?.kind !== 'pin') return",
      by: 'hears STOP where the PIN is asked',
      in: 'core/job/signature',
    },
    {
      rule: 'The make-safe sheet is shown to anybody, signed on or not, inside any question.',
      find: 'if (isMakeSafe(line)) return',
      into: 'if (isMakeSafe(line) && state.doer !== null) return',
      by: 'is heard in any state and inside any question, and leaves all of it as it was',
      in: 'core/talk/make-safe',
    },
  ]),
  ...of('core/job/admit', 'core/job/stop', [
    {
      rule: 'Under STOP nothing goes on.',
      find: 'return openStop(state) === null ? handleWork(engine, before, state, input) : stopped()',
      into: 'return handleWork(engine, before, state, input)',
      by: 'takes nothing but note, help, its cause, its release and leaving',
    },
    {
      rule: 'A STOP is heard after the job was left.',
      find: "'take-up',\n  'stop',",
      into: "'take-up',",
      by: 'is heard after the job was left, which otherwise takes nothing until taken up',
    },
    {
      rule: 'A closed job takes nothing more.',
      find: 'if (state.closed !== null) {',
      into: "if (state.closed === 'STOP') {",
      by: 'a closed job takes nothing, and is closed once',
      in: 'core/job/attacks',
    },
    {
      rule: 'Time acts first: what has lapsed falls before a line is looked at.',
      find: '  add(overtaken(engine.defs, state, now))\n',
      into: '',
      by: 'falls when the next line comes, before the line is looked at',
      in: 'core/job/expiry',
    },
    {
      rule: 'Whether something is fit for use is asked of this moment, not of the last entry.',
      find: '{ ...state, lastAt: stamp(now) }, input)',
      into: 'state, input)',
      by: 'is put back when its calibration lapses while the prompt waits, before the line is looked at',
      in: 'core/job/gate-gas',
    },
    {
      rule: 'A reading keyed after its gate fell is kept as late, and is no reading yet.',
      find: 'return admitLate(defs, before, state, input) ?? admitReading(defs, state, input)',
      into: 'return admitReading(defs, state, input)',
      by: 'is kept as late when its line comes after the life',
      in: 'core/job/expiry',
    },
    {
      rule: 'A clock set back makes every gate fall.',
      find: 'if (now.ms < state.lastMs - BACKWARD_SLACK_MS)',
      into: 'if (now.ms < 0)',
      by: 'fells every gate, whole',
      in: 'core/job/clock',
    },
    {
      rule: 'A STOP called while another is open goes on record too.',
      find: "return ok([{ type: 'stop.raised', step: currentStep(defs, before) }])",
      into: "return ok(openStop(state) === null ? [{ type: 'stop.raised', step: currentStep(defs, before) }] : [])",
      by: 'is an entry of its own, and each is explained before release',
      in: 'core/job/stop-cause',
    },
  ]),
  ...of('core/job/fold', 'core/job/clock', [
    {
      rule: 'Small steps back of the clock add up to a large one.',
      find: 'Math.max(before.lastMs, readStamp(entry.at)?.ms ?? before.lastMs)',
      into: 'readStamp(entry.at)?.ms ?? before.lastMs',
      by: 'does not add up either when each step makes an entry',
    },
    {
      rule: 'A clock that was moved, back or ahead, makes every gate fall.',
      find: "...strikeAll(state, 'clock'),",
      into: '...state,',
      by: 'fells every gate, by',
    },
    {
      rule: 'A clock that was moved voids the notices that were running by it.',
      find: '        notices: {},\n        points: withoutWaited',
      into: '        points: withoutWaited',
      by: 'loses its notice when the clock moves',
      in: 'core/job/points',
    },
  ]),
  ...of('core/job/fold-stop', 'core/job/stop-cause', [
    {
      rule: 'A STOP makes every gate fall.',
      find: "...strikeAll(state, 'stop'), stops",
      into: '...state, stops',
      by: 'released, calls everybody out and asks the whole gate again',
      in: 'core/job/stop',
    },
    {
      rule: 'When nobody knows who called it, everybody who ever was on the job may have.',
      find: '...state.everOn, ...peopleOnJob(state)',
      into: '...peopleOnJob(state)',
      by: 'is no lead who was on the job, or witnessed at its gate, when the caller is not known',
    },
    {
      rule: 'When nobody knows who called it, a witness at a gate may have.',
      find: '...peopleOnJob(state), ...witnesses])',
      into: '...peopleOnJob(state)])',
      by: 'is no lead who was on the job, or witnessed at its gate, when the caller is not known',
    },
    {
      rule: 'That its caller is not known is never taken back.',
      find: 'stop.callerUnknown ||\n      (',
      into: '(',
      by: 'is still no lead who was on the job after a caller was named',
    },
    {
      rule: 'Initials that nobody signed for, of a STOP that nobody raised who was signed on, name nobody.',
      find: ' || (stop.by === null && entry.signed === undefined)',
      into: '',
      by: 'of an older log, by initials that nobody signed for, is as if nobody were named',
    },
    {
      rule: 'Everybody who was ever named as the caller stays named.',
      find: '[...new Set([...stop.calledBy, named])]',
      into: '[named]',
      by: 'is never more people after the cause was put right',
    },
  ]),
  ...of('core/talk/ask-stop', 'core/talk/harm-told', [
    {
      rule: 'What was told of danger stands beside a cause of a STOP that could be released.',
      find: 'isReleasable(cause) ? toldBefore(state) : []',
      into: 'isReleasable(cause) ? [] : toldBefore(state)',
      by: 'that is on record stands beside the cause of a STOP that could be released, and before its release',
    },
  ]),
]
