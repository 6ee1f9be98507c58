// Many jobs together: what may not be mixed, and across what no rate of wear is told.
import { of } from './mutant.ts'

export const HISTORY = [
  ...of('core/history/history', 'core/history/history', [
    {
      rule: 'Real jobs, practice and examples are never told together.',
      find: 'job.record === record && ',
      into: '',
      by: 'of different kinds of record are never mixed, and nothing is told of one that is open',
    },
    {
      rule: 'Nothing is told of a job that is open: what it comes to is not known.',
      find: 'all.filter(({ outcome }) => outcome !== null)',
      into: 'all.filter(({ job }) => job !== null)',
      by: 'of different kinds of record are never mixed, and nothing is told of one that is open',
    },
    {
      rule: 'A limit may be reached by the early end of what is reckoned.',
      find: 'left.value.earliest : Number.POSITIVE_INFINITY',
      into: '(left.value.expected ?? left.value.earliest) : Number.POSITIVE_INFINITY',
      by: 'names what may reach its limit before the next planned overhaul, by the early end',
    },
  ]),
  ...of('core/history/trend', 'core/history/history', [
    {
      rule: 'No rate of wear reaches across work on the part.',
      find: "since: why === null ? 'nothing' : 'unknown', why",
      into: "since: 'nothing', why",
      by: 'begins anew where a part was renewed or worked on: nothing before it counts',
    },
    {
      rule: 'A part that was worked on and not read since has no hours left.',
      find: 'if (pending !== null) {',
      into: 'if (points.length === 0 && pending !== null) {',
      by: 'is never told across work at hours that nobody read, nor of a part that was worked on and not read since',
    },
    {
      rule: 'A job whose figures stand in the record is not told twice.',
      find: 'report === job.job || hours === job.hours',
      into: "report === '' && hours === job.hours",
      by: 'goes on from what the record of the last job says, and tells no job twice that stands in it',
    },
  ]),
]
