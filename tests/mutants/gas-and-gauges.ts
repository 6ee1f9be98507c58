// Gas tests and measured values: what passes, what fails, and where an instrument says nothing.
import { of } from './mutant.ts'

export const GAS_AND_GAUGES = [
  ...of('core/job/evidence-gas', 'core/job/gate-gas', [
    {
      rule: 'At 100 %LEL it burns, whatever a limit says.',
      find: '!(si < BURNS)',
      into: '!(si < 10 * BURNS)',
      by: ', as it burns from 100',
    },
    {
      rule: 'A meter that needs oxygen says nothing about flammables where there is too little.',
      find: 'if (!(oxygenSi >= meter.needs_oxygen.at_least.si))',
      into: 'if (!(oxygenSi >= 0))',
      by: 'takes no flammables on a catalytic meter below the oxygen it needs: put back, no word about the place',
    },
    {
      rule: 'Unknown oxygen is never enough oxygen for a flammables reading.',
      find: "if (oxygenSi === null) return 'the oxygen at this place is not on record'",
      into: 'if (oxygenSi === null) return null',
      by: 'takes none when the oxygen of the place was never named',
    },
    {
      rule: 'A % LEL of one gas is never held against a limit stated for another.',
      find: ' || meter.lel_basis.gas !== basis.gas',
      into: '',
      by: 'takes none on a meter that reads pct LEL of',
    },
    {
      rule: 'The end of a purge is read only with a meter that needs no air.',
      find: 'return meter.reads_in_inert === undefined',
      into: 'return meter.id === undefined',
      by: 'is not told by another meter that sits in the seat all the same',
      in: 'core/job/gas-inert',
    },
    {
      rule: 'Gas below the least that is allowed fails.',
      find: 'if (least !== undefined && !(si >= least.si)) return `below',
      into: 'if (least !== undefined && most === undefined && !(si >= least.si)) return `below',
      by: 'where people breathe passes',
    },
    {
      rule: 'Gas above the most that is allowed fails.',
      find: 'if (most !== undefined && !(si <= most.si)) return `above',
      into: 'if (most !== undefined && least === undefined && !(si <= most.si)) return `above',
      by: 'where people breathe passes',
    },
    {
      rule: 'A limit without any bound passes nothing.',
      find: 'if (least === undefined && most === undefined) return `the limit',
      into: 'if (si === -1) return `the limit',
      by: 'stays shut where the machine record lacks the limit, has no bound in it, or bounds it in another unit',
    },
    {
      rule: 'A limit in a unit that is not that of its gas passes nothing.',
      find: 'bound !== undefined && bound.kind !== kind)',
      into: 'bound !== undefined && bound.kind === undefined)',
      by: 'stays shut where the machine record lacks the limit, has no bound in it, or bounds it in another unit',
    },
  ]),
  ...of('core/job/evidence-instrument', 'core/job/gate-gas', [
    {
      rule: 'A meter whose calibration lapsed while the prompt waited is put back before its figure is looked at.',
      find: 'if (unfit !== null) return ok(foundUnfit(asked, meter.id, unfit))',
      into: '',
      by: 'is put back when its calibration lapses while the prompt waits, before the line is looked at',
    },
    {
      rule: 'A failed test fells its gate and is on record; it is not merely asked again.',
      find: "return [failure, { type: 'gate.closed', step: gate.id, cause: 'failed', items, ...why }]",
      into: 'return [failure]',
      by: 'puts a failure on record, fells all gas of the gate, keeps the locks, and calls people out',
    },
    {
      rule: 'What an unfit instrument measured so far falls with it.',
      find: '    ...voidMeasuredWith(defs, state, instrument, why),\n',
      into: '',
      by: 'found unfit while it is asked for voids what it measured, in every gate',
      in: 'core/job/voiding',
    },
    {
      rule: 'A value is measured with an instrument that reads such a thing, whatever sits in the seat.',
      find: "    instrument.kind === 'gas_meter' ||\n    !READS[evidence.quantity].includes(instrument.kind)\n",
      into: "    instrument.kind === 'gas_meter'\n",
      by: 'is not read on an instrument that measures something else, though it sits in the seat',
      in: 'core/job/fail-closed',
    },
  ]),
  ...of('core/job/measured-limit', 'core/job/evidence-kinds', [
    {
      rule: 'A measured value counts only when inside its upper limit by as much as the gauge may be off.',
      find: 'if (most !== undefined && !(most.si - si >= needed))',
      into: 'if (most !== undefined && !(most.si - si >= 0))',
      by: 'on record, and calls everybody clear',
    },
    {
      rule: 'A measured value counts only when inside its lower limit by as much as the gauge may be off.',
      find: 'if (least !== undefined && !(si - least.si >= needed))',
      into: 'if (least !== undefined && !(si - least.si >= 0))',
      by: 'is above its least by as much as the gauge may be off',
      in: 'core/job/fail-closed',
    },
    {
      rule: 'A gauge of which nobody stated how far off it may be says nothing.',
      find: 'if (uncertainty === undefined) return null',
      into: 'if (uncertainty === undefined) return { si: resolution.si, say: id }',
      by: 'on a gauge of which nobody said how far off it may be is nothing',
      in: 'core/job/fail-closed',
    },
    {
      rule: 'A gauge says nothing outside its own range.',
      find: 'if (!(si >= from.si && si <= to.si))',
      into: 'if (!Number.isFinite(si))',
      by: 'never passes on a gauge that cannot tell it: put back, with no word about the place',
    },
    {
      rule: 'An error stated at k = 1 is doubled before it is held against a limit.',
      find: 'expanded.si * Math.max(1, 2 / k) + unread',
      into: 'expanded.si + unread',
      by: 'never passes on a gauge that cannot tell it: put back, with no word about the place',
    },
    {
      rule: 'Steps of the gauge that are not in its stated error are added to it.',
      find: '!uncertainty.includes_resolution ? resolution.si / 2 : 0',
      into: '!uncertainty.includes_resolution ? 0 : 0',
      by: 'counts half a step of the instrument more where its certificate leaves the step out',
      in: 'core/job/fail-closed',
    },
    {
      rule: 'Where the step of the gauge is larger than its stated error, the step counts.',
      find: 'return u > resolution.si',
      into: 'return u > 0',
      by: 'never passes on a gauge that cannot tell it: put back, with no word about the place',
    },
  ]),
  ...of('talk/figure-sure', 'core/talk/figure-sure', [
    {
      rule: 'Only one digit alone is asked about where oxygen is read: any other figure outside its limit fells its hold point at once.',
      file: 'core/talk/figure-sure',
      find: '!/^\\d$/',
      into: '!/^\\d+$/',
      by: 'is none of it where the figure has a second digit, nor at what burns, which is often nothing',
    },
    {
      rule: 'What is keyed once one digit was asked about is judged like any other figure, that digit included.',
      file: 'core/talk/figure-sure',
      find: 'typed: line })',
      into: "typed: '20.9' })",
      by: 'and keyed once more, or in full, is the figure, and calls everybody out',
    },
    {
      rule: 'A digit that is asked about is gone with the line it was keyed for.',
      file: 'core/talk/ask',
      find: "const isFigure = question.kind === 'figure-sure'",
      into: 'const isFigure = false',
      by: 'goes with the line it was keyed for',
    },
  ]),
]
