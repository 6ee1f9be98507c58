// What a lead decides, what is placed and accounted for, and what may be opened at all.
import { of } from './mutant.ts'

export const DECISIONS = [
  ...of('core/job/admit-disposition', 'core/job/disposition', [
    {
      rule: 'Every verdict but ACCEPT is a nonconformance, HOLD and MONITOR among them.',
      file: 'core/job/nonconformance',
      find: "return word !== 'ACCEPT'",
      into: "return word === 'REWORK' || word === 'REPLACE'",
      by: 'is every verdict but ACCEPT and every finding marked so, numbered in order of entry',
      in: 'core/job/nonconformance',
    },
    {
      rule: 'The number of a nonconformance is never given twice, also when what it stood for is void.',
      file: 'core/job/nonconformance',
      find: '.filter(({ step, word }) => conformsNot(defs, step, word))',
      into: '.filter(({ step, word, voidBy }) => voidBy === null && conformsNot(defs, step, word))',
      by: 'keeps its number when it becomes void, and the next verdict gets the next',
      in: 'core/job/nonconformance',
    },
    {
      rule: 'A HOLD is not accepted away by a lead.',
      find: "if (verdict === 'HOLD') return 'it could not be judged'",
      into: "if (verdict === 'HOLD') return null",
      by: 'ends the job as HOLD, and a lead cannot accept it away',
      in: 'core/job/judging',
    },
    {
      rule: 'What is beyond its limit is not accepted by a plain word.',
      find: "verdict === 'REWORK' || verdict === 'REPLACE' ?",
      into: "verdict === 'none' ?",
      by: 'choices',
    },
    {
      rule: 'Only a lead decides on a verdict.',
      find: "if (person.role !== 'lead')",
      into: "if (person.role === 'trainee')",
      by: 'is not for',
    },
    {
      rule: 'A lead who took the readings does not decide on them, also after handing the keyboard on.',
      find: 'new Set([...keys, ...worked])',
      into: 'new Set(keys)',
      by: 'is not for a lead who measured and then handed the keyboard on',
    },
    {
      rule: 'A lead who was at the keys when a verdict was given does not decide on it.',
      find: 'verdict.on.includes(state.doer) ? [state.doer] : []',
      into: 'verdict.on.length === 0 ? [state.doer] : []',
      by: 'is not for the lead who measured',
    },
    {
      rule: 'Where a decision says that work is to be done again, nothing goes on until it was.',
      file: 'core/job/next',
      find: '!waitsFor(step, disposition.choice)',
      into: 'step.choices.length > 0',
      by: 'lets nothing on, and is asked again with what was decided',
    },
    {
      rule: 'A gate has no disposition of any kind.',
      find: "?.step.kind !== ('judge' satisfies Disposable))",
      into: "?.step.kind === ('none' as string))",
      by: 'has no disposition of any kind, whatever the files say',
    },
    {
      rule: 'A concession says by whose authority and how long.',
      find: "input.choice === 'concession' ? concessionTerms(defs, state, input, own) : ok({})",
      into: 'ok({})',
      by: 'is refused: ',
    },
  ]),
  ...of('core/job/validity', 'core/job/disposition', [
    {
      rule: 'What a lead lets pass has an end that is still to come.',
      find: '!(until > dayOf(now))',
      into: "text === ''",
      by: 'is refused: ',
    },
  ]),
  ...of('core/lib/days-named', 'core/lib/days-named', [
    {
      rule: 'A day in figures that can be two days is taken as neither.',
      find: 'b > 12 || a === b',
      into: 'b > 0',
      by: 'a day that leaves something open',
    },
  ]),
  ...of('core/job/authority', 'core/job/authority', [
    {
      rule: 'Nobody who keys, decides or did the work is the authority for it.',
      find: 'if (ownName !== null)',
      into: 'if (ownName === typed)',
      by: 'is not ',
    },
  ]),
  ...of('core/job/authority', 'core/job/authority', [
    {
      rule: 'A day or a running time, keyed a question too soon, is no authority.',
      find: 'if (isEnd(text)) return',
      into: 'if (isEnd(HOW)) return',
      by: 'is not ',
    },
  ]),
  ...of('core/job/authority', 'core/job/authority', [
    {
      rule: 'A word that names nobody is no authority.',
      find: 'isAllOf(wordsIn(text), NOBODY)',
      into: "text === ''",
      by: 'is not ',
    },
  ]),
  ...of('core/job/admit-disposition', 'core/job/authority', [
    {
      rule: 'A concession for longer than a year has a reason for that.',
      find: '!isFar(valid, state.lastAt)',
      into: 'valid !== undefined',
      by: 'further off than a year',
    },
  ]),
  ...of('core/job/validity', 'core/job/authority', [
    {
      rule: 'A running time counts from hours that somebody has read.',
      find: 'if (!Number.isFinite(from))',
      into: 'if (from === null)',
      by: 'says what it counts from, and asks the counter where the job has not read it',
    },
  ]),
  ...of('core/job/admit-deviation', 'core/job/nonconformance', [
    {
      rule: 'No deviation is permitted in anything that faces people with a hazard.',
      find: '      (placed.step.exposes ?? []).length === 0 &&\n',
      into: '',
      by: 'is never for anything that exposes people, nor for a gate, in the whole of a job',
    },
    {
      rule: 'A deviation is permitted beforehand, never after a reading.',
      find: '      !hasBegun(state, placed.id) &&\n',
      into: '',
      by: 'comes too late once there is a reading or a verdict, also a void one',
    },
    {
      rule: 'The lead who does the work does not permit a deviation in it.',
      find: 'if (person.id === state.doer)',
      into: "if (person.id === '')",
      by: 'is not given by the lead who does the work',
    },
    {
      rule: 'No deviation is permitted in work that lets a hazard in.',
      find: "      !('lets_in' in placed.step && (placed.step.lets_in ?? []).length > 0) &&\n",
      into: '',
      by: 'is never for work that lets a hazard in',
    },
  ]),
  ...of('core/job/admit-register', 'core/job/register', [
    {
      rule: 'Something temporary is accounted for by two different people.',
      find: 'if (thing.seenBy === person.id)',
      into: "if (thing.seenBy === '')",
      by: 'is accounted for by two different people of the crew, each by a signature',
    },
    {
      rule: 'A trainee does not account for anything but in PRACTICE.',
      find: "if (person.role === 'trainee' && state.record !== 'PRACTICE')",
      into: "if (person.role === 'trainee' && state.record === 'REAL')",
      by: 'is accounted for by two different people of the crew, each by a signature',
    },
    {
      rule: 'A step that places something is done only once it is said where.',
      find: 'if (one === undefined)',
      into: 'if (one === undefined) continue\n    if (one === undefined)',
      by: 'is done only with where each of them is, and puts them on record before itself',
    },
    {
      rule: 'What stays open is handed on by a lead who did not do the work.',
      find: 'if (person.id === state.doer)',
      into: "if (person.id === '')",
      by: 'is not handed on by the lead who worked, nor before everything else is done',
    },
    {
      rule: 'A job does not close over anything placed and not accounted for.',
      file: 'core/job/next',
      find: 'if (things.length > 0) return',
      into: 'if (things.length > 1) return',
      by: 'waits for everything placed, and comes by itself with the last of it',
    },
    {
      rule: 'A job leaves behind only what its procedure names.',
      file: 'core/job/register',
      find: 'thing.place !== null && leaves.includes(thing.place)',
      into: 'thing.place !== null',
      by: 'leaves behind only what the procedure names',
    },
  ]),
  ...of('core/job/open-job', 'core/job/opening', [
    {
      rule: 'No REAL job is opened while its gates are not proved.',
      find: 'const why = unproved(defs)',
      into: 'const why = null',
      by: 'is refused while its own gates are not proved, and where nobody tried',
    },
    {
      rule: 'No REAL job is opened on a procedure that is marked invented.',
      find: 'if (invented[0] !== undefined) return',
      into: "if (invented[0] === '') return",
      by: 'is refused with',
    },
    {
      rule: 'A search that ends at its bound has proved nothing.',
      file: 'core/proof/prove',
      find: "if (bound !== null) return { is: 'not-proved', bound, ...seen }",
      into: '',
      by: 'that are larger than the bound are not proved, and the bound is named',
      in: 'core/proof/prove',
    },
    {
      rule: 'An example key, whose PIN everybody knows, never signs a REAL job.',
      find: 'if (example.length > 0)',
      into: 'if (example.length > crew.length)',
      by: 'is refused with',
    },
  ]),
]
