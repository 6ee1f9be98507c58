// Waits, locks that come off, steps that let a hazard in, on a sheet: what it does not say counts as the worse of the two.
import { of } from './mutant.ts'

export const PAPER_HELD = [
  ...of('core/job/paper-watch', 'core/job/paper-held', [
    {
      rule: 'A STOP that is noted on a sheet counts for other jobs.',
      find: "row.startsWith('stop.') && says !== null",
      into: "row.startsWith('stop.') && says === null && seq < 0",
      in: 'core/job/paper-elsewhere',
      by: 'tells of a STOP that is noted on it',
    },
    {
      rule: 'A step of a sheet that lets a hazard in may have been done where its box is blank.',
      find: "const hazards = row === 'done' ? lettingHazards",
      into: "const hazards = row === 'done' && says !== null ? lettingHazards",
      by: 'is told to other jobs, and so is a box of it that is blank',
    },
    {
      rule: 'Until a sheet says that the work ended, somebody may be at a step that lets a hazard in.',
      find: `  if (paper === null || saysEnded(paper)) return null
  const ids = new Set`,
      into: `  if (paper === null || saysEnded(paper) || paper.mark !== '') return null
  const ids = new Set`,
      by: 'may be going on until the sheet says that the work has ended',
    },
    {
      rule: 'A lock whose box on a sheet is blank may be off.',
      find: 'if (says === null && numbers.length === 0) return []',
      into: 'if (says === null) return []',
      by: 'are told to other jobs, and one whose box is blank may be off',
    },
  ]),
  ...of('core/job/paper-figures', 'core/job/paper-limits', [
    {
      rule: 'What is measured on paper would have held outside its limit, by what its instrument may be off.',
      find: "outcome.kind === 'passes' ? null :",
      into: "outcome.kind !== 'not-valid' ? null :",
      by: 'would have held as',
    },
    {
      rule: 'What is measured on paper with no instrument that measures it would have held.',
      find: 'return only(named)',
      into: 'return only(null)',
      by: 'would have held as',
    },
    {
      rule: 'More load than rating on paper would have held.',
      find: 'return load <= rating ? []',
      into: 'return load <= rating || rating > 0 ? []',
      by: 'would have held: ',
    },
  ]),
  ...of('core/job/paper-page', 'core/job/paper-limits', [
    {
      rule: 'A page of a hold point on paper that nobody signed as complete would have held.',
      find: 'if (isEmpty(row)) return [`that it was complete',
      into: 'if (isEmpty(row) && !isLast) return [`that it was complete',
      by: 'tells what is not signed, stale later than its lines allow, or before a step that was done',
    },
    {
      rule: 'Work behind all out on paper, with nothing proved anew, would have held.',
      find: '(minutesOnSheet(row.time, time) ?? -1) > 0)',
      into: '(minutesOnSheet(row.time, time) ?? -1) > 600)',
      by: 'tells work behind all out with nothing proved anew, a copy begun before it, and other words',
    },
  ]),
  ...of('core/job/locks-on', 'core/job/paper-held', [
    {
      rule: 'The order of a sheet is that of the paper, so that a line put right hangs no lock again.',
      find: 'const all = state.paper === null ? keyed.sort((a, b) => a.seq - b.seq) : keyed',
      into: 'const all = keyed.sort((a, b) => a.seq - b.seq)',
      by: 'stay off where the line that hung them is put right later',
    },
  ]),
  ...of('core/job/paper-wait', 'core/job/paper-held', [
    {
      rule: 'A wait on a sheet is over by a minute more than it lasts, as its times are to the minute.',
      find: '(minutes - 1) * 60 >= seconds',
      into: 'minutes * 60 >= seconds',
      by: 'would not have stood where its times do not tell that it was over',
    },
    {
      rule: 'A wait whose times do not tell its length is not over.',
      find: 'if (minutes === null) return',
      into: 'if (minutes === null) return null && ',
      by: 'would not have stood where its times do not tell that it was over',
    },
  ]),
  ...of('core/job/paper-devices', 'core/job/paper-held', [
    {
      rule: 'On paper, a lock that comes off is the one that was hung.',
      find: 'return number !== null && isSpelledAlike(noted, number) ?',
      into: 'return number !== null ?',
      by: 'would have held with another number, or nobody’s hand',
    },
  ]),
  ...of('core/job/paper-test', 'core/job/paper-test', [
    {
      rule: 'A test over time on a sheet holds where its start is not told to be before its stand.',
      find: 'if (!begins.every((from) => isBehind(from, begun)))',
      into: 'if (begins.length === 0)',
      by: 'is HOLD where its times do not tell the stand, or what came before it and after it',
    },
    {
      rule: 'A test over time on a sheet holds where its stand is blank.',
      find: 'if (lines.length === 0) return says',
      into: "if (lines.length === 0) return []; else if (gate.id === '') return says",
      by: 'is HOLD where its times do not tell the stand, or what came before it and after it',
    },
    {
      rule: 'A test over time on a sheet holds where it was let off before its end was read.',
      find: 'return off === undefined || ends.every(',
      into: 'return off === undefined || ends.some(() => true) || ends.every(',
      by: 'is HOLD where its times do not tell the stand, or what came before it and after it',
    },
    {
      rule: 'A test over time on a sheet holds where its start is not told to have settled.',
      find: 'if (test.settlesMs === null) return null',
      into: 'if (test.settlesMs !== undefined) return null',
      by: 'counts how long it settled, by the times too',
    },
  ]),
  ...of('core/job/settle', 'core/job/paper-test', [
    {
      rule: 'A verdict on a test of a sheet is given anew where a time of it is put right.',
      find: 'if (anew !== null) return [anew]\n  const prompt',
      into: 'if (anew !== null && state.left) return [anew]\n  const prompt',
      by: 'is judged anew where a time is put right, and told in the review while it is no test',
    },
  ]),
  ...of('core/job/figure-step', 'core/job/paper-test', [
    {
      rule: 'What a sheet does not tell of a test goes into its verdict.',
      find: ', ...testHolds(defs, state, judge)',
      into: '',
      by: 'is HOLD where its times do not tell the stand, or what came before it and after it',
    },
  ]),
  ...of('core/job/paper-register', 'core/job/paper-register', [
    {
      rule: 'What a step of a sheet puts in is in the machine where its line is blank.',
      find: 'return rest === null',
      into: 'if (rest === null) return null\n  return rest === undefined',
      by: 'has in the machine what a step puts in, also where its line is blank, and what was written besides',
    },
    {
      rule: 'Initials on a sheet take nothing out of the register.',
      find: 'accountedBy: null,',
      into: "accountedBy: entry.paper.who === 'RO' ? ['RO', 'ML'] : null,",
      by: 'takes nothing out by initials: the review says what stands there',
    },
  ]),
  ...of('core/job/paper-watch', 'core/job/paper-register', [
    {
      rule: 'What stays in the machine by a sheet is told to other jobs.',
      find: 'return placed.length === 0 ? {} : { placed }',
      into: 'return placed.length >= 0 ? {} : { placed }',
      by: 'is told to other jobs: what stays in, and that something was taken off',
    },
  ]),
  ...of('core/job/paper-gate', 'core/job/paper-held', [
    {
      rule: 'On paper, what was let in is proved anew before anybody goes on.',
      find: 'if (!before.some((line) => (minutesOnSheet(letting, line.time) ?? 0) > 0))',
      into: 'if (before.length === 0)',
      by: 'has what proves that hazard written anew before the next that it holds',
    },
  ]),
]
