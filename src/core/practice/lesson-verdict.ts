// Judging: the trainee's verdict against that of the same bore with the sizes it has in truth, by the function that judges every bore.
import type { CharacteristicJudgement } from '../bore/bore-characteristics.ts'
import type { BoreVerdict } from '../bore/bore-judge.ts'
import type { BoreCharacteristic } from '../bore/bore-judge-input.ts'
import { characteristicText } from '../definition/characteristics.ts'
import { asBoreJudge } from '../job/bore-facts.ts'
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { placesOf } from '../job/places.ts'
import type { State } from '../job/state.ts'
import type { BoreVerdictRecord } from '../job/verdict-record.ts'
import { formatNumber, fromSi, valueIn } from '../units/index.ts'
import { hiddenMachine } from './ask.ts'
import { type BorePlace, judgedAgain } from './bore-truth.ts'
import { placeAt } from './facts.ts'
import type { HiddenMachine } from './machine.ts'
import { type Lesson, right, type Scene, wrong } from './marks.ts'

export function verdictLesson(scene: Scene, entry: Extract<Entry, { type: 'verdict.given' }>): Lesson | null {
  const { defs, state, practice } = scene
  const called = practice.called[entry.step]
  const judge = asBoreJudge(stepById(defs, entry.step))
  if (called === undefined || judge === null || entry.verdict.compute !== 'bore_form') return null
  const truth = truthJudged(defs, state, entry.step, entry.verdict, hiddenMachine(defs, practice))
  const sheet = entry.verdict.result
  // Measured well, noise alone may bring the sheet to another word than the truth: then both are right.
  const words = isMeasuredWell(scene, entry.verdict) ? [truth.verdict, sheet.verdict] : [truth.verdict]
  const isWord = words.includes(called.verdict)
  const governs = [truth, sheet].flatMap((one) => one.governs?.characteristics ?? [])
  const isGoverning = called.governs.some((one) => governs.some((other) => other === one))
  const asksGoverning = governs.length > 0 && called.verdict !== 'HOLD'
  return {
    marks: [
      isWord ? right('judging') : wrong('judging'),
      ...(asksGoverning ? [isGoverning ? right('judging') : wrong('judging')] : []),
    ],
    isUnsafe: false,
    says: [
      isWord ? `Right: ${called.verdict}.` : `Wrong: you said ${called.verdict}; it is ${truth.verdict}.`,
      ...(asksGoverning && !isGoverning
        ? [
            `Wrong: what governs is ${listed(truth.governs?.characteristics ?? governs)}, which uses most of its limit.`,
          ]
        : []),
      ...truthTold(defs, truth),
    ],
  }
}

/** The verdict on the bore as it is, with what the job had on record of limits, errors and temperatures. */
export function truthJudged(
  defs: Definitions,
  state: State,
  step: string,
  record: BoreVerdictRecord,
  machine: HiddenMachine,
): BoreVerdict {
  const judge = asBoreJudge(stepById(defs, step))
  if (judge === null) throw new Error(`${step} judges no bore`)
  const read = asKind(stepById(defs, judge.scope + judge.step.inputs.diameters), 'read')
  const places = placesOf(read).flatMap(({ station, axis }): BorePlace[] =>
    axis === null ? [] : [placeAt(station, axis)],
  )
  const { bias: beforeM, knocked } = machine.off[gaugeUsed(state, read.id)] ?? { bias: 0, knocked: 0 }
  return judgedAgain(record.inputs, machine.bore, places, { beforeM, afterM: beforeM + knocked })
}

/** Empty where nothing was measured. */
function gaugeUsed(state: State, read: string): string {
  const all = Object.values(state.readings).flat()
  return all.findLast(({ step }) => step === read)?.instrument ?? ''
}

/** Whether each reading that the verdict rests on was measured as the sheet says, and keyed as it was shown. */
function isMeasuredWell({ state, practice }: Scene, { readings }: BoreVerdictRecord): boolean {
  const all = Object.values(state.readings).flat()
  return readings.every((seq) => {
    const reading = all.find((one) => one.seq === seq)
    if (reading === undefined) return false
    return practice.asked.some(
      (one) =>
        one.of === reading.place &&
        one.seq < seq &&
        one.manner === 'sheet' &&
        one.figure !== null &&
        Number(one.figure) === reading.value,
    )
  })
}

/** The sums, as they would come out without any error of measuring. */
function truthTold(defs: Definitions, truth: BoreVerdict): string[] {
  const unit = defs.machine.shop_units.length
  const inUnit = (si: number) => formatNumber(valueIn(fromSi('length', si), unit), unit === 'in' ? 4 : 3)
  const rows = truth.judged.map((one) => `  ${judgedTold(one, inUnit, unit)}`)
  return [
    'In truth, without any error of measuring, at 20 degC:',
    ...rows,
    ...(truth.form === null ? [] : [`  form: ${truth.form.form}`]),
    ...truth.holds.map((hold) => `  ${hold}`),
  ]
}

function judgedTold(
  { characteristic, valueM, limit, judgement }: CharacteristicJudgement,
  inUnit: (si: number) => string,
  unit: string,
): string {
  const name = characteristicText(characteristic)
  if (valueM === null || limit === null) return `${name}: no figure, or no limit`
  const used = judgement.used === null ? '' : `, ${Math.round(judgement.used * 100)} % of it used`
  return `${name} ${inUnit(valueM)} ${unit}, limit ${inUnit(limit.value)} ${unit}${used}; ${limit.source}`
}

function listed(ids: readonly BoreCharacteristic[]): string {
  return ids.length === 0 ? 'nothing' : ids.map(characteristicText).join(' and ')
}
