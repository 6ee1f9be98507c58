// What is keyed from a sheet opens nothing and is in no live job, and what of it may make somebody less safe counts.
import { of } from './mutant.ts'

export const PAPER = [
  ...of('core/job/paper-allowed', 'core/job/paper', [
    {
      rule: 'Nothing live comes into a job from paper.',
      find: 'return isPaper ? INPUTS.includes(input.do) :',
      into: 'return isPaper ? true :',
      by: 'takes nothing live into a job from paper',
    },
    {
      rule: 'No entry of a live job says that it came from paper.',
      find: "return carries || body.type.startsWith('paper.') ?",
      into: "return body.type.startsWith('paper.') ?",
      by: 'reads no log in which they are mixed',
    },
    {
      rule: 'No hold point is opened in a log from paper.',
      find: 'return ALLOWED.includes(body.type) ? null :',
      into: "return ALLOWED.includes(body.type) || body.type === 'gate.opened' ? null :",
      by: 'reads no log in which they are mixed',
    },
    {
      rule: 'In a job from paper nothing counts as read or done at a machine.',
      find: "return carries ? null : 'in a job from paper it says",
      into: "return carries || !isPaper || body.type === 'step.done' ? null : 'in a job from paper it says",
      by: 'reads no log in which they are mixed',
    },
  ]),
  ...of('core/job/admit', 'core/job/paper', [
    {
      rule: 'A job from paper is held by no other, and looks at none.',
      find: 'const others = before.paper === null ? found : NO_OTHERS',
      into: 'const others = found',
      in: 'core/job/paper-elsewhere',
      by: 'takes no look at them: what it says was done before',
    },
  ]),
  ...of('core/job/entry-schema', 'core/job/paper', [
    {
      rule: 'A log in which paper and live work are mixed is not read.',
      find: 'if (stray !== null) return refuse',
      into: 'if (stray === null && i < 0) return refuse',
      by: 'reads no log in which they are mixed',
    },
  ]),
  ...of('core/job/settle', 'core/job/paper', [
    {
      rule: 'A job from paper settles by rules of its own, which open nothing.',
      find: 'if (state.paper !== null) return settleSheet',
      into: 'if (state.paper !== null && state.left) return settleSheet',
      by: 'that cannot be is doubted, and nobody can measure again',
    },
  ]),
  ...of('core/job/paper-line', 'core/job/paper-line', [
    {
      rule: 'No time on a sheet is in the future.',
      find: 'return ms === null || !(ms <= now.ms + now.offsetMin * 60_000)',
      into: 'return ms === null',
      by: 'is held against the wall clock here, and against the line above',
    },
    {
      rule: 'A time that goes back is asked about.',
      find: 'if (!sure && isBefore(time, at.last))',
      into: 'if (!sure && time === at.last)',
      by: 'is held against the wall clock here, and against the line above',
    },
  ]),
  ...of('core/job/admit-paper', 'core/job/paper-mark', [
    {
      rule: 'Another check mark at the foot of a sheet is not taken in silence.',
      find: '!sure && !hasMark(typed, paper.mark)',
      into: 'sure && !hasMark(typed, paper.mark)',
      by: 'is asked about before it is taken, without the one that would fit',
    },
  ]),
  ...of('core/job/admit-paper', 'core/job/paper', [
    {
      rule: 'Who keyed a sheet does not compare it.',
      find: "if (input.as === 'compared' && keyed)",
      into: "if (input.as === 'keyed' && keyed && person.role === 'trainee')",
      by: 'that it was compared: a lead who keyed none of it',
    },
    {
      rule: 'A lead compares the sheet.',
      find: "if (input.as === 'compared' && person.role !== 'lead')",
      into: "if (input.as === 'compared' && person.role === 'trainee')",
      by: 'that it was compared: a lead who keyed none of it',
    },
    {
      rule: 'Nothing of another machine is keyed from a sheet.',
      find: "if (box.row === FRONT.plate && rest !== '' && !isTag(defs, rest))",
      into: "if (box.row === FRONT.plate && rest === '?' && !isTag(defs, rest))",
      by: 'not one of another machine',
    },
    {
      rule: 'A figure whose instrument cannot vouch for it is no value.',
      find: 'if (!instrument.ok) {',
      into: 'if (!instrument.ok && text.length > 40) {',
      by: 'read with an instrument past its day is kept as words, and the verdict is HOLD',
    },
  ]),
  ...of('core/job/fold-paper', 'core/job/paper', [
    {
      rule: 'What is changed after the signatures takes them away.',
      find: 'keyedBy: null, comparedBy: null } : {}',
      into: '} : {}',
      by: 'takes both signatures away',
    },
  ]),
  ...of('core/job/fold-paper', 'core/job/paper', [
    {
      rule: 'Who wrote a finding on a sheet does not decide on it.',
      find: 'doneBy: writtenBy(state, entry), ',
      into: '',
      by: 'is decided on by a lead who did not write it there',
    },
  ]),
  ...of('core/job/admit-disposition', 'core/job/paper', [
    {
      rule: 'Who wrote the figures on a sheet does not decide on what they come to.',
      find: '...(r.paper === undefined ? [] : [r.paper.who])',
      into: '',
      by: 'for what is decided: a lead who neither wrote the figures nor keyed them',
    },
  ]),
  ...of('core/job/watch', 'core/job/paper-elsewhere', [
    {
      rule: 'Until a sheet says that the work ended, people count as behind its hold points.',
      find: '(insideOnSheet(defs, state) ?? insideOf(defs, state))',
      into: 'insideOf(defs, state)',
      by: 'has people behind its hold points until it says that the work has ended, or is closed',
    },
  ]),
  ...of('core/job/locks-on', 'core/job/paper-elsewhere', [
    {
      rule: 'A lock that is noted on a sheet is on until it is told off.',
      find: '    ...linesNoted(state, gate),\n',
      into: '',
      by: 'has the locks on that it notes, and may take them off as it ends',
    },
  ]),
  ...of('core/job/paper-gate', 'core/review/paper', [
    {
      rule: 'On paper, what is older than its life would have held.',
      find: 'return life !== null && !(youngest.age < life)',
      into: 'return life !== null && !(youngest.age < 10 * life)',
      by: 'holds what lapsed against the steps behind it, by the times on the sheet',
    },
    {
      rule: 'On paper, a line without a time does not stand.',
      find: 'if (ages.length === 0) return',
      into: 'if (ages.length > 99) return',
      by: 'names a blank line, words that are others, a gas out of its limit',
    },
    {
      rule: 'On paper, a blank line of a hold point is told.',
      find: 'if (rows.every(isEmpty)) return',
      into: 'if (rows.length > 99) return',
      by: 'names a blank line, words that are others, a gas out of its limit',
    },
  ]),
  ...of('core/job/paper-gas', 'core/review/paper', [
    {
      rule: 'On paper, a gas out of its limit is told where no meter is named.',
      find: "if (typeof meter === 'string') return [...outside, ",
      into: "if (typeof meter === 'string') return [",
      by: 'tells a gas out of its limit first, also where nobody wrote which meter read it',
    },
    {
      rule: 'On paper, the meter of the front stands for no line that names another.',
      find: 'if (odd.length > 0)',
      into: 'if (odd.length > 99)',
      by: 'takes no meter of the front for a line that names another, or has two figures',
    },
  ]),
  ...of('core/job/paper-witness', 'core/review/paper', [
    {
      rule: 'On paper, a witness who did the work is told.',
      find: 'did.length === 0',
      into: 'did.length < 99',
      by: 'tells a witness who did the work, has no role for it, is nobody, or signed with initials alone',
    },
  ]),
  ...of('core/job/paper-devices', 'core/review/paper', [
    {
      rule: 'On paper, one lock at two points is told.',
      find: 'return its !== null && isSame(its, number)',
      into: "return its === '' && isSame(its, number)",
      by: 'tells one lock at two points',
    },
  ]),
  ...of('core/review/kinds/paper', 'core/review/paper', [
    {
      rule: 'A list of people that is blank on a sheet is told.',
      find: '...(people?.text === null',
      into: "...(people?.text === ''",
      by: 'tells a plate that is blank, and a list of people that is blank or has somebody nobody knows',
    },
  ]),
  ...of('core/job/admit-paper', 'core/job/paper', [
    {
      rule: 'Who signed that a sheet is keyed does not compare it as well.',
      find: 'keyedBy === person.id || keyers',
      into: "keyedBy === '' || keyers",
      by: 'that it was compared: also a lead who came to the keyboard after, and keyed nothing',
    },
    {
      rule: 'A line of a sheet with initials and no figure is asked about, as all behind it would be keyed a line too high.',
      find: "if (rest === '' && wantsMore(box))",
      into: "if (rest === '?' && wantsMore(box))",
      by: 'is asked about, and takes what comes now as its own',
    },
  ]),
]
