// Judging: the trainee's verdict against that of the same part on readings without any error, by the judge of every job.
import { startOf } from '../bore/bore-characteristics.ts'
import { type CharacteristicId, characteristicOf, characteristicText } from '../definition/characteristics.ts'
import type { Definitions } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import type { VerdictRecord } from '../job/verdict-record.ts'
import type { Judgement } from '../metrology/conformity.ts'
import type { Limit } from '../metrology/limit.ts'
import { formatNumber, fromSi, type QuantityKind, shareTold, usedText, valueIn } from '../units/index.ts'
import { formTold } from './form-told.ts'
import { governing, governsText } from './governable.ts'
import { judgedTruly } from './judged-truly.ts'
import { type Lesson, right, type Scene, wrong } from './marks.ts'
import { pocketTold } from './pocket-told.ts'

export function verdictLesson(scene: Scene, entry: Extract<Entry, { type: 'verdict.given' }>): Lesson | null {
  const { defs, state, practice } = scene
  const called = practice.called[entry.step]
  if (called === undefined) return null
  const truth = truthOnce(entry.verdict, () =>
    judgedTruly(defs, state, practice, entry.step, entry.verdict.version),
  )
  const sheet = entry.verdict.result
  // Measured well, noise alone may bring the sheet to another word than the truth: then both are right.
  const isWell = isMeasuredWell(scene, entry.verdict)
  const words = isWell ? [truth.result.verdict, sheet.verdict] : [truth.result.verdict]
  const isWord = words.includes(called.verdict)
  const governs = [...governing(truth), ...governing(entry.verdict)]
  const isPocket = truth.compute === 'pocket_setting'
  const isNone = isPocket && governs.length === 0 && called.governs.length === 0
  const isGoverning = isNone || called.governs.some((one) => governs.includes(one))
  const asksGoverning = isPocket || (governs.length > 0 && called.verdict !== 'HOLD')
  return {
    marks: [
      isWord ? right('judging') : wrong('judging'),
      ...(asksGoverning ? [isGoverning ? right('judging') : wrong('judging')] : []),
    ],
    isUnsafe: false,
    says: [
      isWord
        ? `Right: ${called.verdict}${asksGoverning && isGoverning && called.governs.length > 0 ? `, and ${listed(called.governs)} governs` : ''}.`
        : `Wrong: you said ${called.verdict}; it is ${truth.result.verdict}.`,
      ...(isWord && called.verdict !== sheet.verdict && !isWell ? [sheetTold(sheet.verdict)] : []),
      ...(isWord || isWell || called.verdict !== sheet.verdict ? [] : [MISLED]),
      ...(asksGoverning && !isGoverning ? [governsTold(governs, isPocket)] : []),
      ...truthTold(defs, truth, entry.verdict),
    ],
  }
}

/** The sum was right, and what went into it was not. */
const MISLED =
  'By the figures on record it does come to that; but one of them was taken in a hurry, or is not what the instrument showed, and a part is judged by them all the same.'

/** The machine is as it was judged; the sheet cannot know. */
function sheetTold(verdict: string): string {
  return `The sheet says ${verdict}, as it goes by what was keyed, and one of those figures was not measured as the sheet says. Of the machine itself you are right; a job stands by its sheet: put the figure right, by the word correct.`
}

/** By the verdict that was given: told at once, on the sheet and in the report, it is worked out once. */
const known = new WeakMap<VerdictRecord, VerdictRecord>()

function truthOnce(given: VerdictRecord, make: () => VerdictRecord): VerdictRecord {
  const truth = known.get(given) ?? make()
  known.set(given, truth)
  return truth
}

function governsTold(governs: readonly string[], isPocket: boolean): string {
  if (governs.length === 0) return 'Wrong: no limit governs here, as what was read does not go together.'
  return `Wrong: what governs is ${listed(governs)}, ${isPocket ? 'which it comes down to' : 'which uses most of its limit'}.`
}

/** Whether each reading that the verdict rests on was measured as the sheet says, and keyed as it was shown. */
function isMeasuredWell({ state, practice }: Scene, { readings }: VerdictRecord): boolean {
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
function truthTold(defs: Definitions, truth: VerdictRecord, given: VerdictRecord): string[] {
  if (truth.compute === 'pocket_setting') return pocketTold(defs, truth, given)
  const rows = rowsOf(truth).map((one) => `  ${rowTold(defs, one)}`)
  const form = truth.compute === 'bore_form' ? truth.result.form : null
  const isBeyond = truth.result.verdict === 'REWORK' || truth.result.verdict === 'REPLACE'
  return [
    'In truth, without any error of measuring, at 20 degC:',
    ...rows,
    ...(form === null ? [] : formTold(form, isBeyond, defs.machine.shop_units.length)),
    ...truth.result.holds.map((hold) => `  ${hold}`),
  ]
}

interface Judged {
  readonly characteristic: string
  readonly valueM: number | null
  readonly limit: Limit | null
  readonly startsAt: number | null
  readonly judgement: Judgement
}

function rowsOf(record: VerdictRecord): readonly Judged[] {
  switch (record.compute) {
    case 'bore_form':
      return record.result.judged.map((one) => ({
        ...one,
        startsAt: startOf(record.inputs, one.characteristic),
      }))
    case 'figures':
      return record.result.judged.map((one, n) => {
        const figure = record.inputs.figures[n]
        return { ...one, valueM: figure?.value ?? null, limit: figure?.limit ?? null, startsAt: null }
      })
    case 'pocket_setting':
      return []
  }
}

/** The unit of the shop for a kind of figure, and its decimals. */
function toldIn(kind: QuantityKind, length: 'in' | 'mm'): readonly [unit: string, decimals: number] {
  if (kind === 'torque') return length === 'in' ? ['ft-lb', 0] : ['N.m', 0]
  if (kind === 'angle') return ['deg', 1]
  return length === 'in' ? ['in', 4] : ['mm', 3]
}

function rowTold(defs: Definitions, { characteristic, valueM, limit, startsAt, judgement }: Judged): string {
  const name = characteristicText(characteristic as CharacteristicId)
  if (valueM === null || limit === null) return `${name}: no figure, or no limit`
  const { kind } = characteristicOf(characteristic as CharacteristicId)
  const [unit, decimals] = toldIn(kind, defs.machine.shop_units.length)
  const share = shareTold({ value: valueM, limit, startsAt, used: judgement.used }, (si, more) =>
    formatNumber(valueIn(fromSi(kind, si), unit), decimals + more),
  )
  return `${name} ${share.value} ${unit}, limit ${share.limit} ${unit}${usedText(share, 'of it used')}; ${limit.source}`
}

function listed(ids: readonly string[]): string {
  return [...new Set(ids)].map(governsText).join(' and ')
}
