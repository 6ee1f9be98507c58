// Inspection points, and a lead's word by radio.
import { of } from './mutant.ts'

export const POINTS = [
  ...of('core/job/point', 'core/job/points', [
    {
      rule: 'Whoever did the step does not sign its inspection point.',
      find: '    ...(state.doneBy[placed.id] ?? []),\n',
      into: '',
      by: 'is not signed by a lead who did it or took its readings and handed the keyboard on',
    },
    {
      rule: 'Whoever took its readings does not sign the point of a judgement.',
      find: 'r.step === placed.id || behind.includes(r.seq)',
      into: 'r.step === placed.id',
      by: 'of a judgement or a decision is not signed by who took the readings under it, or decided',
    },
    {
      rule: 'The lead who decided does not sign the point of that decision.',
      find: '    ...(disposition === undefined ? [] : [disposition.person]),\n',
      into: '',
      by: 'of a judgement or a decision is not signed by who took the readings under it, or decided',
    },
    {
      rule: 'A point that became void is signed again.',
      find: 'return given === undefined || given.void ?',
      into: 'return given === undefined ?',
      by: 'falls by name with what it covered, and is asked again',
    },
    {
      rule: 'A review point keeps the job open until it is signed.',
      file: 'core/job/next',
      find: 'if (point !== null) review ??= placed',
      into: '',
      by: 'lets work go on, and keeps the job open until leads have signed',
    },
  ]),
  ...of('core/job/admit-point', 'core/job/points', [
    {
      rule: 'Only a witness point goes on unattended, never a hold point.',
      find: "pendingPoint(state, placed)?.kind !== 'witness')",
      into: "pendingPoint(state, placed)?.kind === 'review')",
      by: 'is never gone past unattended, notice or not',
    },
    {
      rule: 'A witness point goes on unattended only once its notice has really run out.',
      find: 'if (!(now >= due))',
      into: 'if (!(now >= due - 60_000))',
      by: 'goes on unattended only when a notice has really run out, and says so',
    },
    {
      rule: 'A point is signed by one of the roles it names.',
      find: 'if (!point.roles.some((role) => role === person.role))',
      into: 'if (point.roles.length === 0)',
      by: 'is not signed by',
    },
  ]),
  ...of('core/job/admit-radio', 'core/job/radio', [
    {
      rule: 'A concession is never given by radio.',
      find: "if (asked.choice === 'concession')",
      into: "if (asked.choice === '')",
      by: 'is refused from',
    },
    {
      rule: 'A word by radio is not keyed by whoever did the work: they would gain by it.',
      find: 'if (person.id === state.doer || found.value.doers.has(person.id))',
      into: 'if (person.id === state.doer)',
      by: 'is refused from who took a reading and handed over, and from the lead who is there',
    },
    {
      rule: 'The lead does not key their own word by radio.',
      find: 'if (person.id === lead)',
      into: "if (person.id === '')",
      by: 'is refused from who took a reading and handed over, and from the lead who is there',
    },
    {
      rule: 'A lead who took the readings does not decide on them by radio either.',
      find: 'return barsDeciding(lead, found.value)',
      into: "return lead.role === 'lead' ? null : barsDeciding(lead, found.value)",
      by: 'is refused from who took a reading and handed over, and from the lead who is there',
    },
    {
      rule: 'A word by radio is countersigned by the lead who spoke, by no other.',
      find: 'openWords(state).filter((word) => word.lead === person.id)',
      into: 'openWords(state)',
      by: 'is what the job waits for, from that same lead',
    },
    {
      rule: 'A job does not close over a word by radio that is not countersigned.',
      file: 'core/job/next',
      find: 'return open.length === 0 ?',
      into: 'return open.length < 2 ?',
      by: 'is what the job waits for, from that same lead',
    },
    {
      rule: 'A word by radio that its lead does not own to is void.',
      file: 'core/job/fold',
      find: 'agrees ? { ...old, countersigned: true } : { ...old, void: true }',
      into: '{ ...old, countersigned: true }',
      by: 'refused, voids the word, and the verdict is to be disposed of again',
    },
  ]),
]
