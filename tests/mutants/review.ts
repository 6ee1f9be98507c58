// The review: what a lead must not miss, and who must not be accused.
import { of } from './mutant.ts'

export const REVIEW = [
  ...of('core/review/fold-list', 'core/review/page', [
    {
      rule: 'What does not fit on a screen is counted, and never left out.',
      find: 'const rest = listed.slice(shown.length).flatMap(',
      into: 'const rest = listed.slice(shown.length + 1).flatMap(',
      by: 'fits, and has every exception in it or in a count, at any height',
    },
  ]),
  ...of('core/review/kinds/gates', 'core/review/kinds', [
    {
      rule: 'A hold point that fell by anything but a step that is meant to let something in stands in the review.',
      find: "causeOf(gate, move) === 'opening')",
      into: "MEANT.includes(causeOf(gate, move)) || causeOf(gate, move) === 'clock')",
      by: 'that fell has its fall, what called people out, and whether it was proved again',
    },
    {
      rule: 'A test of a hold point that failed stands in the review.',
      find: "({ entry }) => entry.type === 'evidence.failed' && entry.step === gate.id",
      into: '() => false',
      by: 'whose test failed has the reading that failed',
    },
  ]),
  ...of('core/review/kinds/unenforced', 'core/review/kinds', [
    {
      rule: 'Answers that nobody gave at the machine head the review.',
      find: "...(answers === 'script'",
      into: "...(answers !== 'script'",
      by: 'answers from a file, and a clock set by hand, at the head of it',
    },
  ]),
  ...of('core/review/hours-left', 'core/review/hours-left', [
    {
      rule: 'Hours left are never told of a size that was cut or renewed on the job.',
      find: '  if (isRemade(state, change, judged.judge))\n',
      into: '  if (isRemade(state, { ...change, left: null }, judged.judge))\n',
      by: 'are told where the bore was left as it was found, and not once it was cut or renewed on the job',
    },
    {
      rule: 'Nor of one that a lead decided to have renewed.',
      find: 'if (decided !== undefined && !RUNS_ON.includes(decided.choice)) return true',
      into: '',
      by: 'are not told once a lead decided that it is to be renewed, whatever was left',
    },
  ]),
  ...of('core/review/last-digits', 'core/review/improbable', [
    {
      rule: 'Last digits of a gauge that steps in fives say nothing of whoever reads it.',
      find: '    if (!isPowerOfTen(step)) return []\n',
      into: '',
      by: 'are not where they lie so close that they share a digit, nor of a gauge that steps in fives',
    },
    {
      rule: 'Readings so close that they share their last digit are asked nothing.',
      find: '!(Math.max(...wholes) - Math.min(...wholes) >= LEAST_SPREAD)',
      into: 'false',
      by: 'are not where they lie so close that they share a digit, nor of a gauge that steps in fives',
    },
    {
      rule: 'Repeats count once: copied or not, they are no new draw.',
      find: 'standing(state, key).slice(0, 1)',
      into: 'standing(state, key)',
      by: 'are asked about, with the test, its threshold and its source, as a question',
    },
  ]),
]
