// The review: what a lead must not miss, and who must not be accused.
import { of } from './mutant.ts'

export const REVIEW = [
  ...of('core/job/lapsed-at', 'core/review/lapsed-asleep', [
    {
      rule: 'A gas test is told as lapsed when its life was over, not when that was noted.',
      find: 'if (life !== null) return [given.ms + life]',
      into: 'if (life !== null) return [noted.ms]',
      by: 'is of the moment at which its life was over',
    },
    {
      rule: 'What was keyed after a life was over and before it was noted is told as work behind a fallen hold point.',
      file: 'core/review/behind',
      find: '    ...betweenLapseAndNote(look, gate, move),\n',
      into: '',
      by: 'in a log from elsewhere is work that went on behind it',
    },
  ]),
  ...of('core/review/fold-list', 'core/review/page', [
    {
      rule: 'What does not fit on a screen is counted, and never left out.',
      find: 'const rest = others.slice(shown.length).flatMap(',
      into: 'const rest = others.slice(shown.length + 1).flatMap(',
      by: 'fits, and has every exception in it or in a count, at any height',
    },
  ]),
  ...of('core/review/fold-list', 'core/review/page', [
    {
      rule: 'A word by radio that its lead denied is never folded away.',
      find: "readonly Kind[] = ['denied']",
      into: 'readonly Kind[] = []',
      by: 'fits, and has every exception in it or in a count, at any height',
    },
  ]),
  ...of('core/review/asked', 'core/review/asked', [
    {
      rule: 'A question whether it is safe is answered with what is open, and never with yes.',
      find: 'answer: isItSafe,',
      into: 'answer: whatWentWrong,',
      by: 'is never answered yes',
    },
  ]),
  ...of('core/review/asked', 'core/review/asked-gauge', [
    {
      rule: 'A gauge that is asked about in words of being good is not passed over for the machine.',
      find: 'if (gauge !== null) return gauge',
      into: '',
      by: 'what it read on its standard comes first',
    },
  ]),
  ...of('core/review/asked-gauge', 'core/review/asked-gauge', [
    {
      rule: 'A gauge that read off its standard is told as off at the desk, whatever the day of its calibration.',
      find: 'isOff: off !== null,',
      into: 'isOff: off !== null && entry.seq < 0,',
      by: 'what it read on its standard comes first',
    },
    {
      rule: 'What is judged on a gauge off its standard is said to be HOLD beside it.',
      find: '...(isStanding ? judgedOn(record, names) : [])',
      into: '',
      by: 'what it read on its standard comes first',
    },
  ]),
  ...of('core/review/asked-holds', 'core/review/asked-gauge', [
    {
      rule: 'What holds a verdict up is told before what a lead decided of it.',
      find: '...holdsOf(record, e).map((text) => row(',
      into: '...[].map((text) => row(',
      by: 'what holds the verdict up, then what was decided',
    },
  ]),
  ...of('core/review/asked-slips', 'core/review/asked-slips', [
    {
      rule: 'A slip is never mended in a tag or the number of a lock.',
      find: "(?<![\\p{L}\\d'’-])\\p{L}+(?![\\p{L}\\d'’-])",
      into: '\\p{L}+',
      by: 'a tag, a number, initials, a word cut by a mark',
    },
  ]),
  ...of('core/review/kinds/open', 'core/review/open-job', [
    {
      rule: 'Of a job that was left with a hold point complete it is said that people may be in.',
      find: 'const then = takenUp(state)',
      into: 'const then = state',
      by: 'stand in the list and behind its number as soon as a hold point was complete, and not once it is closed',
    },
  ]),
  ...of('core/review/clear-before', 'core/review/headline', [
    {
      rule: 'A start is told with the hold points that had fallen with nobody keyed clear.',
      find: 'silent: gatesOf(look.defs).filter((gate) => isSilent(look, gate, start)),',
      into: 'silent: [],',
      by: 'names hold points that fell before it and where nobody keyed clear',
    },
  ]),
  ...of('core/review/kinds/unmeasured', 'core/review/headline', [
    {
      rule: 'A part that was worked on and not measured again is named.',
      find: 'again === null && left === null',
      into: 'again !== null && left === null',
      by: 'is named under a number of its own, and the head says which',
    },
  ]),
  ...of('core/report/parts/limit-cylinders', 'core/report/limits', [
    {
      rule: 'A cylinder that is over its limit at the setting never reads ACCEPT in the table of limits.',
      find: "isOut ? 'HOLD' : 'ACCEPT'",
      into: "'ACCEPT'",
      by: 'say HOLD of what is over, and of nothing else',
    },
  ]),
  ...of('core/job/as-left', 'core/review/headline', [
    {
      rule: 'What was read again and held against no limit is not told as never measured again.',
      find: 'left === null ? readAgain(defs, state, judge, decided) : []',
      into: '[]',
      by: 'is told as read again and not judged where it was, with what it reads and who signed behind it',
    },
  ]),
  ...of('core/review/kinds/gates', 'core/review/kinds', [
    {
      rule: 'A hold point that nobody keyed clear of once is never counted with those that were seen to.',
      find: "  if (has('after')) return 'gate-after'\n",
      into: '',
      by: 'that was seen to at first and fell once more stands with those that nobody keyed clear of',
    },
    {
      rule: 'A hold point that fell by anything but a step that is meant to let something in stands in the review.',
      find: "causeOf(gate, move) === 'opening')",
      into: "causeOf(gate, move) === 'opening' || causeOf(gate, move) === 'clock')",
      by: 'that fell has its fall, what called people out, and whether it was proved again',
    },
    {
      rule: 'A test of a hold point that failed stands in the review.',
      find: "({ entry }) => entry.type === 'evidence.failed' && entry.step === gate.id",
      into: '() => false',
      by: 'whose test failed has the reading that failed',
    },
  ]),
  ...of('core/review/behind', 'core/review/kinds', [
    {
      rule: 'Work behind a hold point that had fallen is told as such, whatever was keyed afterwards.',
      find: "  if (worked.length > 0) return { ...base, is: 'worked' }\n",
      into: '',
      by: 'behind which work went on by the record heads them all',
    },
    {
      rule: 'Where the step at hand was behind it and nobody keyed clear, that is said.',
      find: 'const isOver = atHand === null && !isLeftToDo(look, gate)',
      into: 'const isOver = true',
      by: 'that fell has its fall, what called people out, and whether it was proved again',
    },
  ]),
  ...of('core/review/behind', 'core/review/after-close', [
    {
      rule: 'Nobody is accused of work behind a hold point by a gauge that fell after the close.',
      find: 'const state = stateAtClose(look)',
      into: 'const { state } = look',
      by: 'is told so still when the gauge that read behind it fell months later: nobody is accused',
    },
  ]),
  ...of('core/review/starts', 'core/review/after-close', [
    {
      rule: 'A machine that was started on a verdict which fell since heads the review, open.',
      find: 'state.verdicts[judge.id]?.void !== true',
      into: 'state.verdicts[judge.id]?.void === true',
      by: 'on a verdict that fell since heads the list, open: a lead decides',
    },
    {
      rule: 'What hung on the machine when it was started is told.',
      find: "closed: before.closed ?? 'NONE' }).on]",
      into: "closed: before.closed ?? 'NONE' }).off.map(({ what }) => what)]",
      by: 'is told on the head, with what was undecided and each tag by what it hung on',
    },
  ]),
  ...of('core/review/starts', 'core/review/agreement', [
    {
      rule: 'A start with a finding undecided, or put off, stands among the first of a review.',
      find: "stands && (decided === null || decided.choice === 'hold')",
      into: 'stands && decided === null',
      by: 'after the lead decided is none of it, but after a decision to hold it is',
    },
  ]),
  ...of('core/review/kinds/hanging', 'core/review/agreement', [
    {
      rule: 'Locks that by the record still hang when a job has ended are an exception of their own.',
      find: 'const locks = on.filter((one) => !isTag(one))',
      into: 'const locks = on.filter((one) => isTag(one))',
      by: 'when the job has ended is told by number, name and place, a tag by what it was asked for',
    },
  ]),
  ...of('core/review/kinds/hanging', 'core/review/stop-and-people', [
    {
      rule: 'A lock that no remark of a lead names stays open, whatever was said of the others.',
      find: 'const isTold = silent.length === 0',
      into: 'const isTold = said.length > 0',
      by: 'says what a lead does about it',
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
      find: 'remade: remade(state, change, judged.judge)',
      into: 'remade: remade(state, { ...change, left: null }, judged.judge)',
      by: 'are told where the bore was left as it was found, and not once it was cut or renewed on the job',
    },
    {
      rule: 'Nor of one that a lead decided to have renewed.',
      find: 'if (decided !== undefined && !RUNS_ON.includes(decided.choice))',
      into: 'if (decided !== undefined && RUNS_ON.length === 0)',
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
