// As found, as left and the last overhaul in lines: on the word `changes`, and at the close.

import { DIFFERENCE_OF } from '../definition/instruments.ts'
import { type Change, changesOf, isFinishStep, type Taken, unitFor } from '../job/changes.ts'
import type { Definitions } from '../job/definitions.ts'
import type { State } from '../job/state.ts'
import type { Refusal } from '../lib/result.ts'
import {
  differenceUnit,
  formatFinish,
  formatNumber,
  formatQuantity,
  shownNumber,
  unitNamed,
  valueIn,
} from '../units/index.ts'
import type { WearRate } from '../wear/rate.ts'
import { placeName } from './names.ts'

/** Nothing at all where no step has a stage. Hours that were not read are one cause for every place: it is said once, at the end. */
export function changeLines(defs: Definitions, state: State): string[] {
  const changes = changesOf(defs, state)
  const rates = changes.flatMap(({ rate }) => (rate === null ? [] : [rate]))
  const noHours = rates.find((rate) => !rate.ok && rate.error.code === 'no-hours')
  const places = changes.flatMap((change) => {
    const one = change.found ?? change.left
    if (one === null) return []
    const parts = [
      change.last === null ? null : `last ${figure(defs, one, change.last.si)} (${change.last.on})`,
      change.found === null
        ? null
        : `found ${figure(defs, one, change.found.si)}${change.last === null ? '' : `, ${signed(defs, one, change.found.si - change.last.si)} since`}`,
      change.left === null ? null : `left ${figure(defs, one, change.left.si)}`,
      change.found === null || change.left === null
        ? null
        : `change ${signed(defs, one, change.left.si - change.found.si)}`,
    ].filter((part) => part !== null)
    return [
      placeName(defs, one.step.id, one.place.key),
      `  ${parts.join('   ')}`,
      ...heldLines(change),
      ...rateLines(defs, change),
    ]
  })
  return noHours === undefined || noHours.ok ? places : [...places, noRate(noHours.error)]
}

/** Comparators go in steps of a tenth of a micrometre, and finer ones are told as fine as they are. */
const FINISH_DECIMALS = 1

function decimalsIn(unit: string): number {
  return { in: 4, mm: 3 }[unit as 'in'] ?? 1
}

/** In the unit its place is shown in. */
export function figure(defs: Definitions, taken: Taken, si: number): string {
  if (isFinishStep(defs, taken)) return formatFinish(si, FINISH_DECIMALS)
  const unit = unitFor(defs, taken)
  return formatQuantity({ kind: taken.step.step.quantity, si }, unit, decimalsIn(unit))
}

/** `0.8 um Ra`, without the microinches that stand beside it elsewhere. */
function inMicrometres(si: number): string {
  return formatFinish(si, FINISH_DECIMALS).split('   ')[0] ?? ''
}

/** The figures of a change without their unit, for columns beside each other; null where there is none. */
export interface ChangeFigures {
  readonly unit: string
  readonly last: string | null
  readonly found: string | null
  readonly left: string | null
  readonly change: string | null
  /** Found less what the last overhaul left, with its sign. */
  readonly worn: string | null
}

export function changeFigures(defs: Definitions, change: Change): ChangeFigures | null {
  const one = change.found ?? change.left
  if (one === null) return null
  const kind = one.step.step.quantity
  const finish = isFinishStep(defs, one)
  const unit = finish ? inMicrometres(one.si).replace(/^\S+ /, '') : unitFor(defs, one)
  const bare = (si: number | undefined) => {
    if (si === undefined) return null
    if (finish) return inMicrometres(si).split(' ')[0] ?? null
    return formatNumber(valueIn({ kind, si }, unit), decimalsIn(unit))
  }
  const { found, left } = change
  const moved = found === null || left === null ? null : signed(defs, one, left.si - found.si)
  const { last } = change
  const since = found === null || last === null ? null : signed(defs, one, found.si - last.si)
  return {
    // As it is written everywhere else, whatever name of it the register has.
    unit: unitNamed(unit)?.symbol ?? unit,
    last: bare(change.last?.si),
    found: bare(found?.si),
    left: bare(left?.si),
    // Its unit is that of the figures, and stands with them.
    change: moved?.split(' ')[0] ?? null,
    worn: since?.split(' ')[0] ?? null,
  }
}

/** Wear in 1000 h and its interval, without unit, and what the interval accounts for. */
export function wearFigures(
  defs: Definitions,
  found: Taken,
  { perHour, U, basis }: WearRate,
): { readonly per1000: string; readonly interval: string; readonly basis: string } {
  const unit = unitFor(defs, found)
  const each = (m: number) =>
    shownNumber(valueIn({ kind: 'length', si: m * 1000 }, unit), decimalsIn(unit) + 1)
  return { per1000: each(perHour), interval: each(U), basis }
}

/** A difference in the unit of the figure; of degrees and pressures the sizes of both are the same. */
function signed(defs: Definitions, taken: Taken, si: number): string {
  const unit = unitFor(defs, taken)
  const kind = DIFFERENCE_OF[taken.step.step.quantity]
  const text = isFinishStep(defs, taken)
    ? formatFinish(si, FINISH_DECIMALS)
    : formatQuantity({ kind, si }, differenceUnit(unit, kind), decimalsIn(unit))
  return si > 0 && Number.parseFloat(text) > 0 ? `+${text}` : text
}

/** What no verdict trusts is told beside its figures, by its sheet: that says why. */
function heldLines({ held }: Change): string[] {
  const sheet = (text: string) => text.replace(/:.*/s, '')
  return [
    ...(held.found === null ? [] : [`  FOUND ON HOLD: ${sheet(held.found)}`]),
    ...(held.left === null ? [] : [`  LEFT ON HOLD: ${sheet(held.left)}`]),
  ]
}

/** A rate says what its interval accounts for: two readings show no scatter (decision 16). */
function rateLines(defs: Definitions, { rate, found }: Change): string[] {
  if (rate === null || found === null) return []
  if (!rate.ok) return rate.error.code === 'no-hours' ? [] : [`  ${noRate(rate.error)}`]
  const { per1000, interval, basis } = wearFigures(defs, found, rate.value)
  return [`  wear ${per1000} ${unitFor(defs, found)} in 1000 h, give or take ${interval} (${basis})`]
}

const noRate = ({ say }: Refusal): string => `no rate of wear: ${say}`
