// A lead at the desk: nothing is answered there that is not a lead's, and a STOP comes first.
import { of } from './mutant.ts'

export const DESK = [
  ...of('app/desk', 'app/desk', [
    {
      rule: 'At the desk no line is heard at a question of the job that is not a lead’s.',
      find: 'if (!isStop(line) && !isMakeSafe(line) && !isWithin && !goesOn(word, prompt)) return leave()',
      into: '',
      by: 'hears no line at a question that came up under the keys',
    },
    {
      rule: 'At the desk a job that asks for work is left.',
      find: 'if (!goesOn(word, prompt)) await leave()',
      into: '',
      by: 'takes a note of who signed on, and is left',
    },
    {
      rule: 'A STOP keyed at the desk is on record before the job is taken up.',
      find: "  if (word === 'stop') await session.hear('stop')\n",
      into: '',
      by: 'can be raised there: it is on record before the job is even taken up',
    },
  ]),
  ...of('app/desk', 'app/desk', [
    {
      rule: 'The PIN of a sign-on at the desk signs for nobody else.',
      find: 'proved?.person !== ask.person ||',
      into: '',
      by: 'asks the PIN anew of another person, and of the same one once it was let lie',
    },
    {
      rule: 'The PIN of a sign-on at the desk lapses.',
      find: 'since >= 0 && since <= PIN_COUNTS_MS',
      into: 'true',
      by: 'asks the PIN anew of another person, and of the same one once it was let lie',
    },
    {
      rule: 'The PIN of a sign-on at the desk counts only while nothing went on record since.',
      find: "if (one.kind !== 'entry' || LEAVES_PROOF.includes(one.entry.type)) continue",
      into: "if (one.kind !== 'entry' || one.entry.type !== 'person.signed-on') continue",
      by: 'asks the PIN anew where anything went on record since: somebody else may be at the keys',
    },
  ]),
  ...of('core/job/stamp', 'app/desk', [
    {
      rule: 'A STOP keyed after everybody left is on nobody’s name until its caller is told.',
      find: "body.type === 'stop.raised' && state.left",
      into: "body.type === 'stop.raised' && state.closed !== null",
      by: 'is nobody’s until its caller is named',
    },
  ]),
  ...of('core/talk/desk-words', 'core/talk/desk-words', [
    {
      rule: 'Of a STOP that nobody may release no release is offered at the desk.',
      find: '...(never === null',
      into: '...(true',
      by: 'under a STOP are those of the STOP, and no release where nobody may',
    },
  ]),
]
