// Tests over time, gates that ask for findings decided, and what comes off.
import { of } from './mutant.ts'

export const OVER_TIME = [
  ...of('core/job/over-time', 'core/job/over-time', [
    {
      rule: 'What was read at the end of a test falls where its start was read anew.',
      find: '?? begunAt) < begunAt,',
      into: '?? begunAt) < Number.NEGATIVE_INFINITY,',
      by: 'asks for stand and end again where the start was corrected, by name',
    },
    {
      rule: 'A test over time begins anew, whole, once a machine record was taken in.',
      find: '?? changedAt) < changedAt)',
      into: '?? changedAt) < Number.NEGATIVE_INFINITY)',
      by: 'begins at its first step, whole and by name, where a machine record was taken in',
    },
    {
      rule: 'A stand that began before the start was read stands for nothing.',
      find: 'return seq < begunAt',
      into: 'return seq < Number.NEGATIVE_INFINITY',
      by: 'begins a wait anew that runs while the start is corrected',
    },
    {
      rule: 'Once the gas is off, a test of which anything fell begins at its first step.',
      find: 'return isOver ? run.filter(hasSome) : behind',
      into: 'return behind',
      by: 'begins at its first step where the gas is off, whatever fell of it',
    },
    {
      rule: 'Whatever of a test was done behind a step that has to be done anew falls.',
      find: 'open < 0 ? run.length : open + 1',
      into: 'run.length',
      by: 'begins at its first step where the gas is off, whatever fell of it',
    },
    {
      rule: 'The start of a test is not read before it has settled.',
      file: 'core/job/admit-reading',
      find: 'if (early !== null) return early',
      into: '',
      by: 'does not have its start read before it has settled, by the clock',
    },
    {
      rule: 'Where the clock moved, settling begins anew.',
      file: 'core/job/fold',
      find: '[id, { seq, atMs: lastMs }]',
      into: '[id, { seq, atMs: state.doneAt[id]?.atMs ?? 0 }]',
      by: 'does not have its start read before it has settled, by the clock',
    },
    {
      rule: 'A wait falls with the value it was watched from, where the gauge of that was found unfit.',
      file: 'core/job/voiding',
      find: '[...measured, ...waitsAfter(state, gate, measured)]',
      into: 'measured',
      by: 'falls with it where its gauge was found unfit, and where it was keyed wrong',
    },
    {
      rule: 'A wait falls with the value it was watched from, where that was keyed wrong.',
      file: 'core/job/falls-with',
      find: '[...keys, ...waitsAfter(state, gate, keys)]',
      into: 'keys',
      by: 'falls with it where its gauge was found unfit, and where it was keyed wrong',
    },
    {
      rule: 'Words that every finding is decided fall once one is not.',
      file: 'core/job/settle',
      find: 'if (undecided.length > 0) return undecided',
      into: '',
      by: 'shuts once something is found after it, or what was decided on is looked at anew',
    },
    {
      rule: 'A gate that asks for findings decided is not passed with one on hold.',
      file: 'core/job/nonconformance',
      find: "d.choice !== 'hold' && ",
      into: '',
      by: 'asks a lead about each first, and takes the words once none is open or on hold',
    },
    {
      rule: 'A word by radio decides on no finding that a gate asks about before its lead has signed.',
      file: 'core/job/nonconformance',
      find: '(d.radio === null || d.countersigned)',
      into: 'true',
      by: 'takes no word by radio for a decision before its lead has signed',
    },
    {
      rule: 'A gate asks about verdicts too that did not conform, not only about what was seen.',
      file: 'core/job/nonconformance',
      find: '({ stands, decided }) => stands && (decided === null || !isDecided(decided))',
      into: '({ stands, decided, word }) => stands && !/^[A-Z]/.test(word) && (decided === null || !isDecided(decided))',
      by: 'asks about a verdict too that its procedure has nobody decide on',
    },
  ]),
  ...of('core/job/evidence-numbers', 'core/job/taken-off', [
    {
      rule: 'Whose hand took a lock off is somebody on the job.',
      find: 'more.length === 0 && peopleOnJob(state).includes(person)',
      into: 'more.length === 0',
      by: 'is asked with the initials of somebody on the job, and is held against what hung',
    },
    {
      rule: 'What turns the machine stays locked while the locks of pipes come off.',
      file: 'core/job/gate',
      find: "(point.comes_off ?? 'before_gas') === off",
      into: 'point !== null',
      by: 'is of the pipes first, and of what turns the machine last, the last on first off',
    },
    {
      rule: 'The make-safe sheet tells of no lock that came off.',
      file: 'core/talk/make-safe',
      find: ' || gone.has(shown)',
      into: '',
      by: 'hangs nowhere any more, and is told with whose hand it was',
    },
  ]),
  ...of('core/definition/lint-procedure-over-time', 'authoring/over-time', [
    {
      rule: 'A test over time that is not tied is refused by check.',
      find: "if (end.kind !== 'read' || ends.has(end.id)) return []",
      into: "if (end.kind !== 'read' || ends !== null) return []",
      by: 'is refused where readings on both sides of a wait are not tied',
    },
    {
      rule: 'A test whose end could be read before the wait is over is refused by check.',
      find: 'if (!gate.holds.some(',
      into: 'if (gate.holds.length > 99 && !gate.holds.some(',
      by: 'has a stand with a wait, and an end behind it that does not end the test',
    },
  ]),
]
