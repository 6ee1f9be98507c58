// The blank sheet on paper: it may leave out nothing that a screen would say or ask, and never pass for a gate or a verdict.
import { of } from './mutant.ts'

export const BLANK = [
  ...of('core/blank/gate', 'core/blank/blank', [
    {
      rule: 'On paper no line of evidence of a hold point is left out.',
      find: '...step.evidence.map(',
      into: '...step.evidence.slice(1).map(',
      by: 'has all it says and asks on its sheet',
    },
    {
      rule: 'Each hold point on paper says that nothing is enforced.',
      find: 'capital(NOT_ENFORCED)',
      into: "''",
      by: 'says on its front and at each hold point that none is enforced',
    },
    {
      rule: 'On paper a gas limit stands with how long its test is good for.',
      find: 'defs.machine.site.gas.life.text',
      into: "''",
      by: 'has all it says and asks on its sheet',
    },
  ]),
  ...of('core/blank/step', 'core/blank/blank', [
    {
      rule: 'On paper the hazard of a step stands in full.',
      find: "...line(step.hazard, 'caution', 'Hazard: '),",
      into: '',
      by: 'has all it says and asks on its sheet',
    },
  ]),
  ...of('core/blank/judge', 'core/blank/blank', [
    {
      rule: 'A limit that nobody has is HOLD on paper too.',
      find: "return [label, 'NONE: HOLD',",
      into: "return [label, '',",
      by: 'says of a limit that nobody has that it is HOLD',
    },
  ]),
  ...of('core/blank/record', 'core/blank/blank', [
    {
      rule: 'No blank sheet is REAL while a file of it is invented.',
      find: "record === 'REAL' && invented !== null",
      into: "record === 'REAL' && asked !== null && invented !== null",
      by: 'is REAL only where nothing in it is invented',
    },
  ]),
  ...of('core/blank/front', 'core/blank/blank', [
    {
      rule: 'On paper a trainee signs in practice and nowhere else.',
      find: "role !== 'trainee' || record === 'PRACTICE'",
      into: "role !== 'trainee' || record !== 'REAL'",
      by: 'has nobody sign who may not, but in practice',
    },
  ]),
  ...of('report/sheet-pdf', 'report/sheet', [
    {
      rule: 'Each page of a blank sheet says that nothing is enforced.',
      find: 'NOT_ENFORCED}`',
      into: 'day}`',
      by: 'has on each page its mark, number, procedure, machine record, day, and that nothing is enforced',
    },
    {
      rule: 'A hold point that runs over a page is named on the next.',
      file: 'report/pages',
      find: ', continued`',
      into: '`',
      by: 'goes on under its name where a hold point runs over the end of a page',
    },
  ]),
]
