// The measuring error: how large it is, and what it does to a verdict.
import { of } from './mutant.ts'

export const METROLOGY = [
  ...of('core/metrology/conformity', 'core/metrology/conformity', [
    {
      rule: 'A value is accepted only inside its limit by the whole measuring error.',
      find: 'const acceptBar = wholeBelow(bar - guard / resolution)',
      into: 'const acceptBar = wholeBelow(bar)',
      by: 'a half step goes to the unsafe side (ASTM E29 rounding, halves our own choice)',
    },
    {
      rule: 'Rounding down never earns an acceptance that the value as it stood has not.',
      find: ' && !isAbove(steps.raw, steps.bar - steps.guardSteps)',
      into: '',
      by: 'rounding down never earns an acceptance that the value as it stood has not',
    },
    {
      rule: 'A value on a limit that excludes it is not accepted.',
      find: 'const lastAccepted = limit.inclusive ? acceptBar : acceptBar - 1',
      into: 'const lastAccepted = acceptBar',
      by: 'a value on an exclusive guarded limit is not accepted; beyond still means by more than U',
    },
    {
      rule: 'Without a stated measuring error the verdict is HOLD.',
      find: "return { ...holdJudgement(['the measuring error U is not on record']), ...shareOf(sound) }",
      into: 'return judgeGuarded(sound, 0, COVERAGE_K)',
      by: 'is HOLD, though the figures may be shown',
    },
    {
      rule: 'Plain acceptance by an owner is never better than MONITOR.',
      find: "if (inside) return { ...base, verdict: 'MONITOR', reasons: [ERROR_NOT_ALLOWED_FOR] }",
      into: "if (inside) return { ...base, verdict: 'ACCEPT', reasons: [ERROR_NOT_ALLOWED_FOR] }",
      by: 'with simple acceptance by name is a plain comparison, never better than MONITOR',
    },
    {
      rule: 'Plain acceptance does not set aside a measuring error that is stated.',
      find: 'if (u !== null && u !== undefined) return judgeGuarded',
      into: 'if (u !== null && u !== undefined && !input.simpleAcceptance) return judgeGuarded',
      by: 'simple acceptance does not set aside an error that is stated',
    },
    {
      rule: 'Beyond is said only when outside by more than the measuring error.',
      find: 'const rejectBar = steps.bar + steps.guardSteps',
      into: 'const rejectBar = steps.bar',
      by: 'beyond is said only outside by more than the guard band',
      in: 'core/metrology/conformity-properties',
    },
  ]),
  ...of('core/metrology/steps', 'core/metrology/conformity', [
    {
      rule: 'Half a step is rounded to the unsafe side.',
      find: 'return Math.floor(steps + 0.5 + slack(steps))',
      into: 'return Math.ceil(steps - 0.5 - slack(steps))',
      by: 'a half step goes to the unsafe side (ASTM E29 rounding, halves our own choice)',
    },
  ]),
  ...of('core/metrology/judge-input', 'core/metrology/conformity-properties', [
    {
      rule: 'A measuring error below zero is HOLD.',
      find: '!(Number.isFinite(u) && u >= 0)',
      into: '!Number.isFinite(u)',
      by: 'a resolution of zero, a U that is negative or not finite: HOLD even with simple acceptance',
    },
    {
      rule: 'A guard band that leaves more than 5 chances in 100 is refused.',
      find: 'return Number.isFinite(k) && normalBelow(-k) <= GREATEST_RISK',
      into: 'return Number.isFinite(k)',
      by: 'the stated chance follows the k in hand, and a k too small for a guard is refused',
      in: 'core/metrology/conformity',
    },
  ]),
  ...of('core/metrology/limit', 'core/metrology/conformity-properties', [
    {
      rule: 'A limit of zero or less is no limit.',
      find: "if (limit.value <= 0) return 'the limit is zero or less'",
      into: '',
      by: 'no limit, a limit of zero, below zero, not finite, or with a bad share: HOLD',
    },
  ]),
  ...of('core/metrology/reduce-to-20', 'core/metrology/reduce-to-20', [
    {
      rule: 'An unknown temperature is refused, never taken as 20 C.',
      find: 'if (celsius === null || celsius === undefined)\n    return {',
      into: 'if (celsius === null || celsius === undefined) return null\n  if (celsius === undefined)\n    return {',
      by: 'is refused as',
    },
    {
      rule: 'A hot part is smaller at 20 C: it is divided by its expansion.',
      find: 'return ok((warm.readingM * instrument) / part)',
      into: 'return ok((warm.readingM * part) / instrument)',
      by: 'a hot part comes down, a hot instrument goes up',
    },
  ]),
  ...of('core/metrology/repeats', 'core/metrology/repeats', [
    {
      rule: 'Nothing settles before as many readings are in as are asked.',
      find: 'if (values.length >= rule.atLeast && middleAgrees',
      into: 'if (middleAgrees',
      by: 'asks for more before there are enough',
    },
    {
      rule: 'Two readings that differ by more than the span do not settle.',
      find: 'if (sorted.length % 2 === 0) return below <= within + NOISE_M',
      into: 'if (sorted.length % 2 === 0) return below <= 2 * within + NOISE_M',
      by: 'two that agree settle at their mean, to the last decimal of the span',
    },
  ]),
  ...of('core/metrology/uncertainty', 'core/metrology/uncertainty', [
    {
      rule: 'An error stated at any k is brought to k = 2.',
      find: "{ from: 'instrument', u: instrumentU / instrumentK }",
      into: "{ from: 'instrument', u: instrumentU / COVERAGE_K }",
      by: 'the instrument alone comes back at k = 2, whatever k it was stated with',
    },
    {
      rule: 'The error of a difference is root two of that of a reading.',
      find: 'return Math.SQRT2 * checkedU(readingU)',
      into: 'return checkedU(readingU)',
      by: 'difference: root two; middle against the mean of the ends: root one and a half (JCGM 100:2008 5.1.2)',
    },
    {
      rule: 'The step of the instrument counts, where the stated error does not have it in.',
      find: 'input.resolutionInsideU ? 0 : input.resolutionM / Math.sqrt(12)',
      into: '0',
      by: 'resolution counts as a rectangle, and once only',
    },
  ]),
  ...of('core/metrology/uncertainty', 'core/metrology/uncertainty', [
    {
      rule: 'Few repeats widen the error by the degrees of freedom they are known with.',
      find: "dof: from === 'repeats' && u > 0 ? input.repeats?.dof : undefined",
      into: 'dof: undefined',
      by: 'few repeats widen it: t at 95.45 in 100 (GUM Table G.2, from memory), from endless degrees of freedom on k = 2',
    },
  ]),
  ...of('core/metrology/repeatability', 'core/metrology/repeatability', [
    {
      rule: 'A reading that the repeat rule left out of the middle stays in the scatter of its place.',
      find: 'const scatters = read.map(({ values }) => scatterOf(values))',
      into: 'const scatters = read.map(({ values }) => scatterOf([...values].sort((a, b) => a - b).slice(0, 2)))',
      by: 'carries its own scatter, the reading left out of the middle in it, with its own degrees of freedom',
    },
    {
      rule: 'A place that stands out carries its own scatter.',
      find: 'const error = standsOut ? {',
      into: 'const error = !standsOut && false ? {',
      by: 'carries its own scatter, the reading left out of the middle in it, with its own degrees of freedom',
    },
    {
      rule: 'What stands out does not vanish from the pool: it counts as far as chance goes.',
      find: 'held = held.map((squares, n) => Math.min(squares, bound[n] ?? squares))',
      into: 'held = held.map((squares, n) => (squares > (bound[n] ?? squares) ? 0 : squares))',
      by: 'counts with the others only as far as chance goes: more than without it, far less than all of it',
    },
    {
      rule: 'A single reading carries the whole scatter of one reading.',
      find: 'return placeOf(one, null, { u: s, dof })',
      into: 'return placeOf(one, null, null)',
      by: 'never come to less than no repeats at all would, single readings least of all',
    },
  ]),
  ...of('core/bore/bore-characteristics', 'core/bore/own-errors', [
    {
      rule: 'A place that may be the worst in truth is not settled by one that is the greatest as read.',
      find: "const decides = beyond ?? judged.find((one) => word(one) === 'HOLD') ?? judged[0]",
      into: 'const decides = judged[0]',
      by: 'is HOLD where it may be the worst in truth, though another place is the greatest as read',
    },
  ]),
]
