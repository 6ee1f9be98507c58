// Evidence that is typed: words and witness, numbers, waits, lift plans.
import { of } from './mutant.ts'

export const EVIDENCE = [
  ...of('core/job/evidence-words', 'core/job/gate', [
    {
      rule: 'Nobody keys that nothing temporary is left in while the register says otherwise.',
      file: 'core/job/admit-gate',
      find: "evidence.register === 'clear' && !registerClear(state)",
      into: 'false',
      by: 'takes no word for it while a thing is open, and says which',
      in: 'core/job/register',
    },
    {
      rule: 'Words are typed in full: their beginning, or a bare y, is no evidence.',
      find: 'if (spaced(asked.typed) === words)',
      into: 'if (words.startsWith(spaced(asked.typed)))',
      by: 'for NO START',
    },
    {
      rule: 'The one at the keyboard is never the witness.',
      find: 'return person === state.doer || doersAt',
      into: 'return doersAt',
      by: 'refuses whoever gave evidence that stands, though another sits at the keyboard now',
    },
    {
      rule: 'Whoever gave any of the evidence that stands is not its witness, though another sits at the keyboard now.',
      find: ' || doersAt(gateState(state, gate.id)).has(person)',
      into: '',
      by: 'refuses whoever gave evidence that stands, though another sits at the keyboard now',
    },
    {
      rule: 'A witness has one of the roles that the gate names.',
      find: 'if (!evidence.roles.some((role) => role === person.role))',
      into: 'if (evidence.roles.length === 0)',
      by: 'takes only the roles the gate names',
    },
    {
      rule: 'A witness signs with their own PIN.',
      find: 'signer(defs, state, { person: typed, proved })',
      into: 'signer(defs, state, { person: typed, proved: true })',
      by: 'is refused for a witness without it, at the gate itself',
      in: 'core/job/signature',
    },
  ]),
  ...of('core/job/evidence-numbers', 'core/job/evidence-kinds', [
    {
      rule: 'One lock does not hang in two places.',
      find: "if (down !== null) {\n    return refuse(\n      'lock-twice'",
      into: "if (number === '') {\n    return refuse(\n      'lock-twice'",
      by: 'refuses one lock at two points, keyed as',
      in: 'core/job/gate',
    },
    {
      rule: 'One blind or tag is not in two places.',
      find: "if (down !== null) {\n    return refuse(\n      'number-twice'",
      into: "if (number === '') {\n    return refuse(\n      'number-twice'",
      by: 'of blinds are one for each isolation point, and none twice',
    },
    {
      rule: 'A lock keyed with and without its dash is one lock.',
      find: "number.toUpperCase().replaceAll('-', '')",
      into: 'number',
      by: 'refuses one lock at two points, keyed as',
      in: 'core/job/gate',
    },
    {
      rule: 'A lock keyed with and without its letters is one lock.',
      find: "first[1] === second[1] || first[1] === '' || second[1] === ''",
      into: 'first[1] === second[1]',
      by: 'refuses one lock at two points, keyed as',
      in: 'core/job/gate',
    },
    {
      rule: 'The lock of a person and the lock at a point share their numbers.',
      find: 'sortOf(its) === sortOf(evidence) &&',
      into: 'its === evidence &&',
      by: 'of a lock at a point and a lock of a person are of one sort',
    },
    {
      rule: 'The number of a lock has a digit: a yes is no number.',
      find: '{0,15}$/.test(number) && /\\d/.test(number)',
      into: '{0,15}$/.test(number)',
      by: 'as the number of a lock',
      in: 'core/job/gate',
    },
    {
      rule: 'A number noted earlier is the only one taken where it is asked for again.',
      find: '!isSpelledAlike(was.shown, number)',
      into: "number === ''",
      by: 'is no evidence where another is keyed',
      in: 'core/job/noted-numbers',
    },
    {
      rule: 'A number that contradicts one noted is cleared up by a lead who releases a STOP over it, not by any STOP.',
      file: 'core/job/fold-stop',
      find: '.filter(([, one]) => !one.differs)',
      into: '.filter(() => false)',
      by: 'falls only once a lead has released a STOP over it',
      in: 'core/job/noted-numbers',
    },
    {
      rule: 'Where two people are asked for, the gate stays shut to one alone.',
      file: 'core/job/gate',
      find: 'people.length < (evidence.at_least ?? 0)',
      into: 'people.length < 0',
      by: 'keeps the gate shut to one alone',
      in: 'core/job/noted-numbers',
    },
  ]),
  ...of('core/job/evidence-wait', 'core/job/evidence-kinds', [
    {
      rule: 'A wait is over only when its time has really gone by since its own entry.',
      find: 'if (!(left <= 0))',
      into: 'if (!(left <= 1000))',
      by: 'is over exactly when it is, and says how long is left before',
    },
    {
      rule: 'A wait whose length is no time above zero never ends.',
      find: 'Number.isFinite(ms) && ms > 0 ? ms : Number.POSITIVE_INFINITY',
      into: 'ms',
      by: 's never ends',
    },
  ]),
  ...of('core/job/evidence-lift', 'core/job/evidence-kinds', [
    {
      rule: 'A load is at most its rating, whichever of the two was keyed last.',
      find: ': [before, { shown, si }]',
      into: ': [{ shown, si }, before]',
      by: 'fails on record with both figures, and both are asked again',
    },
    {
      rule: 'A weight that is not a number is never within a rating.',
      find: '(load.si ?? Number.NaN) <= (rating.si ?? Number.NaN)',
      into: '!((load.si ?? Number.NaN) > (rating.si ?? Number.NaN))',
      by: 'with a load that was kept without its figure carries nothing',
      in: 'core/job/fail-closed',
    },
    {
      rule: 'A load or a rating of nothing is no weight.',
      find: 'if (!(si > 0 && Number.isFinite(si)))',
      into: 'if (!(si >= 0 && Number.isFinite(si)))',
      by: 'as a load or a rating',
    },
  ]),
]
