// The arithmetic behind the load question: target, correction, and stage by stage the balance at the setting spoken of.
import { completeMachine } from '../cycle/machine-holds.ts'
import { operate, type StagePoint } from '../cycle/operate.ts'
import { withOpening } from '../cycle/pocket-choice.ts'
import { frictionOf } from '../cycle/pocket-curve.ts'
import { VE_FORMULA, VE_SOURCE } from '../cycle/volumetric-efficiency.ts'
import type { Definitions } from '../job/definitions.ts'
import type { PocketVerdictRecord } from '../job/verdict-record.ts'
import { shownNumber } from '../units/index.ts'
import { allowances, cylinderLines, figureIn, percent, powerText, settingText } from './pocket-words.ts'

export function pocketSums(defs: Definitions, record: PocketVerdictRecord): string[] {
  const { inputs, result } = record
  const complete = completeMachine(inputs.record)
  if (!complete.ok || result.targetW === null)
    return ['Nothing could be worked out:', ...result.holds.map((h) => `  ${h}`)]
  const machine = complete.value
  const opening = result.at ?? 0
  const present = operate(machine)
  const row = result.table.find((one) => one.opening === opening)
  if (!present.ok || row === undefined) return ['Nothing could be worked out.']
  const at = operate(withOpening(machine, inputs.choice, opening), frictionOf(machine, present.value))
  if (!at.ok) return [at.error.say]
  const power = (watts: number) => powerText(defs, watts)
  const error = inputs.errors.loadW ?? 0
  const correction = Math.max(1, (machine.measuredLoadW + error) / present.value.driverW)
  return [
    `Target = rating x (1 - margin) = ${power(machine.driverRatingW)} x ${shownNumber(1 - machine.margin, 3)} = ${power(result.targetW)}`,
    `Now: computed ${power(present.value.driverW)}, measured ${power(machine.measuredLoadW)}; the site lets them differ by ${percent(machine.agreement, 1)} of the measured one.`,
    `Correction = (measured + U) / computed, never below 1 = ${shownNumber(correction, 4)}`,
    `${VE_FORMULA[machine.veForm]} on suction conditions, end by end.`,
    `  Source: ${VE_SOURCE[machine.veForm]}`,
    `Pocket ${settingText(row)}: n = sum of VE x displacement x Ps / (Z R Ts), each stage drawing what the one before passes on:`,
    ...at.value.stages.flatMap((stage, i) => stageLines(defs, stage, i, power)),
    `  Capacity ${figureIn('ratio', at.value.molPerS / present.value.molPerS, '%', 1)} % of now.`,
    `Driver = correction x (indicated + friction) = ${shownNumber(correction, 4)} x ${power(at.value.driverW)} = ${power(at.value.driverW * correction)} as read; ${power(row.loadW)} at worst.`,
    'Rod load: Pd A(head) - Ps A(crank) pushed, Pd A(crank) - Ps A(head) pulled, in the cylinder, barometer on the rod:',
    '  Source: H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996, p. 83-85',
    'Reversal: gas and inertia together at the crosshead pin, all round one turn. Its criterion is the site’s.',
    ...row.cylinders.flatMap((one) => cylinderLines(defs, one).map((line) => `  ${line}`)),
    ...allowances(defs, record),
  ]
}

function stageLines(
  defs: Definitions,
  stage: StagePoint,
  i: number,
  power: (watts: number) => string,
): string[] {
  const unit = defs.machine.shop_units.length === 'in' ? 'psia' : 'bara'
  const pressure = (pa: number) => figureIn('pressure-absolute', pa, unit, 2)
  return [
    `  Stage ${i + 1}: Ps ${pressure(stage.suctionPa)}, Pd ${pressure(stage.dischargePa)} ${unit}, ratio ${shownNumber(stage.ratio, 3)}, n ${shownNumber(stage.molPerS, 2)} mol/s, indicated ${power(stage.indicatedW)}`,
  ]
}
