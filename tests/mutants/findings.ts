// What was found and decided, how the end of a job is told, and what hangs by the record.
import { of } from './mutant.ts'

export const FINDINGS = [
  ...of('core/job/nonconformance', 'core/job/findings', [
    {
      rule: 'A job does not end before a lead has decided on each finding.',
      file: 'core/job/next',
      find: 'if (findings.length > 0)',
      into: 'if (findings.length > 99)',
      by: 'does not end before a lead has decided on each, by number',
    },
    {
      rule: 'What was decided about a finding is not decided of what is found once more.',
      find: '&& d.seq > since)',
      into: '&& d.seq !== since)',
      by: 'is asked anew of what is found once more, and decides nothing for a rule',
    },
    {
      rule: 'The lead who found it does not decide on the finding.',
      file: 'core/job/admit-disposition',
      find: 'verdict === undefined ? (state.doneBy[input.step] ?? [])',
      into: 'verdict === undefined ? []',
      by: 'is decided by a lead at the keyboard, but not by the lead who found it',
    },
    {
      rule: 'A finding that a lead holds ends the job with HOLD.',
      file: 'core/job/outcome',
      find: "if (isHeld(defs, state)) return 'HOLD'",
      into: '',
      by: 'ends with HOLD where a lead holds one',
    },
    {
      rule: 'A rule goes by what the finding was, not by what was decided about it.',
      file: 'core/job/values',
      find: "if (placed.step.kind !== 'decide') return state.done[placed.id]",
      into: 'if (state.dispositions[placed.id] === undefined) return state.done[placed.id]',
      by: 'still goes by what was found',
    },
  ]),
  ...of('core/job/as-left', 'core/sheet/closing', [
    {
      rule: 'The end of a job calls no part fit, finding or verdict, that was worked on and not measured again.',
      find: 'CHANGES_IT.includes(decided.choice) ? null : found',
      into: "CHANGES_IT.includes(decided.choice) ? 'ACCEPT' : found",
      by: 'says so where the part was worked on and not measured again',
    },
    {
      rule: 'A verdict as left, finding or figure, is that of the last measurement.',
      find: 'const left = again === undefined ? own : again.found',
      into: 'const left = own',
      by: 'tells the verdict as found, what was done about it and the verdict as left',
    },
  ]),
  ...of('core/job/locks-on', 'core/job/locks-on', [
    {
      rule: 'A lock that was hung again is on: what was keyed last of it counts, in finding what hangs.',
      find: '{ on: tellsOff(one.item.evidence) ? (known?.on ?? one) : one, last: one }',
      into: '{ on: known?.on ?? one, last: known !== undefined && tellsOff(known.last.item.evidence) ? known.last : one }',
      by: 'takes a lock that was hung again as on',
    },
    {
      rule: 'After a STOP that ends a job no lock counts as off by words, in finding what hangs.',
      find: "state.closed === null || state.closed === 'STOP'",
      into: 'state.closed === null',
      by: 'under a STOP that ends the job counts every lock as on',
    },
  ]),
  ...of('core/job/tells-off', 'core/job/locks-on', [
    {
      rule: 'Words that no lock comes off take none off, in finding what hangs.',
      find: ' && !/\\b(no|not|never|nobody)\\b/i.test(one)',
      into: '',
      by: 'of a job that closes with its locks on says so, with when and by whom they were keyed',
    },
  ]),
]
