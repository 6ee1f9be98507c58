// What a closed job leaves for the next: only figures that stand, of parts that went back, adopted by a lead who did not read them.
import { of } from './mutant.ts'

export const ADOPT = [
  ...of('core/job/adopt', 'core/job/measuring-hold', [
    {
      rule: 'A size that was measured on HOLD is no baseline.',
      find: 'else if (onHold !== null)',
      into: "else if (onHold === '')",
      by: 'leaves no baseline, and is named with its sheet, the check',
    },
  ]),
  ...of('core/bore/bore-holds', 'core/job/measuring-hold', [
    {
      rule: 'A set-check that is out is a hold on the measuring of every size between.',
      find: 'return [...placeHolds(input), ...setCheckHolds(input), ...temperatureHolds(input), ...measuring].map(',
      into: 'return [...placeHolds(input), ...temperatureHolds(input), ...measuring].map(',
      by: 'leaves none with',
    },
  ]),
  ...of('core/job/measuring-hold', 'core/job/measuring-hold', [
    {
      rule: 'A size whose verdict fell, or was never given, is no baseline.',
      find: "if (given === null) return { sheet: judge, seq: null, why: ['no verdict on it stands'] }",
      into: 'if (given === null) continue',
      by: 'is not left before any verdict on it was given',
    },
    {
      rule: 'What holds a verdict by figures on its measuring keeps each size in it from a baseline.',
      find: '...verdict.inputs.holds, ',
      into: '',
      by: 'is left where its verdict trusts it, and not where a check was out',
    },
    {
      rule: 'A gauge that nobody checked on its standard leaves no baseline, also where no verdict looks at the size.',
      find: 'if (check === null) return [`there',
      into: 'if (check === null) return [].length === 0 ? [] : [`there',
      by: 'goes by its own checks',
    },
  ]),
  ...of('core/job/renewed-parts', 'core/job/adopt-renewed', [
    {
      rule: 'A part that a lead had reworked counts as cut: nothing read before that is left.',
      find: 'CHANGES_IT.includes(choice)',
      into: "choice === 'replace'",
      by: 'is told from the decision, by its entry',
    },
  ]),
  ...of('core/job/adopt', 'core/job/adopt-renewed', [
    {
      rule: 'What the log says was made new or cut cannot be left out of a baseline.',
      find: 'return by === undefined\n    ? null\n    : `By entry',
      into: 'return by?.seq !== undefined\n    ? null\n    : `By entry',
      by: 'is not denied, nor passed over by naming another part',
    },
  ]),
  ...of('core/job/adopt', 'core/job/adopt', [
    {
      rule: 'What was to be worked on or renewed and was not measured again leaves no figure.',
      find: 'if (courses.some(({ left }) => left === null))',
      into: 'if (courses.length === 0)',
      by: 'is nothing of a part that was to be worked on and was not measured again',
    },
    {
      rule: 'A bore is adopted at 20 degC.',
      find: 'si: found.valueM, ',
      into: '',
      by: 'is each bore figure at 20 degC as its verdict had it',
    },
    {
      rule: 'Nothing of a job that ended in STOP is a baseline.',
      find: "if (state.closed === 'STOP')",
      into: "if (state.closed === 'none')",
      by: 'is refused for a job that is open, and for one that ended in STOP',
    },
    {
      rule: 'A baseline is adopted once, while it stands.',
      find: 'if (state.adopted !== null && !state.adopted.void)',
      into: 'if (state.adopted?.void === true)',
      by: 'is refused a second time, until an instrument it rests on is found out',
    },
    {
      rule: 'A baseline and a remark are a lead’s.',
      find: "return person.role === 'lead'",
      into: "return person.role !== 'trainee'",
      by: 'by a mechanic',
    },
    {
      rule: 'Nobody adopts figures they read.',
      find: 'if (own)',
      into: 'if (own && state.closed === null)',
      by: 'is refused to the lead whose own readings they are',
    },
    {
      rule: 'No part both went back as it was found and was made new: wear would be counted from a worn size.',
      find: 'if (worn !== null)',
      into: "if (worn === '')",
      by: 'is refused where a part is as found and said to be made new or cut',
    },
    {
      rule: 'Running hours do not go back.',
      find: 'if (input.hours < before)',
      into: 'if (input.hours < 0)',
      by: 'with fewer hours than the last overhaul had',
    },
  ]),
  ...of('core/job/fold-void', 'core/job/adopt', [
    {
      rule: 'A baseline falls with an instrument that read for it.',
      find: 'entry.readings.length > 0 ? { ...state.adopted, void: true } : state.adopted',
      into: 'state.adopted',
      by: 'is refused a second time, until an instrument it rests on is found out',
    },
  ]),
]
