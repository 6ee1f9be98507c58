// Whether a reading as keyed is doubted, why, and what is shown with the doubt. Nothing here changes or picks a figure.
import { isSetOnStandard } from '../definition/instruments.ts'
import type { StepOf } from '../definition/procedure.ts'
import { type Definitions, instrumentById, type PlacedStep } from './definitions.ts'
import type { ReadingAt } from './entries.ts'
import { againstLast, type LastLeft } from './last-left.ts'
import { likely, likelySentence, type Written } from './likely.ts'
import { type Far, farFromOthers } from './neighbours.ts'
import { isCheckAfter, isSetCheck, type OffStandard, offStandard } from './off-standard.ts'
import { decimalsIn, implausible, sizeOf } from './plausible.ts'
import { type State, standing } from './state.ts'
import { swappedCheck } from './swapped-check.ts'
import { type SwappedPair, swappedPair } from './swapped-pair.ts'
import { APART_K, isNear, type TemperatureGap, temperatureGap } from './temperature-gap.ts'
import { sizeKeyed } from './temperature-size.ts'
import { type WiderStrip, widerStrip } from './wider-strip.ts'

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

interface Doubt {
  /** A clause about the figure, short enough for the smallest screen: `9.053 is ...`. */
  readonly why: string
  /** What it is held against, and what the figure may have been meant to be, in sentences; left out where nothing is. */
  readonly shown?: string
}

interface Reason {
  readonly why: string
  readonly more: string | null
  /** Likely a slip of the fingers, so that what would fit is worth showing. */
  readonly isSlip: boolean
  /** Said where no slip of either figure would fit. */
  readonly otherwise?: string
}

/**
 * Null for a reading that is believed. One outside its window is doubted always; a temperature far from those it
 * belongs with, a gauge off on its standard before it measures, a check after with two figures changed round, a size far from its neighbours, or against what the last overhaul left, only as the first of its place: a repeat is held
 * against the first, by `repeats`.
 */
export function doubtOf(defs: Definitions, state: State, placed: ReadStep, reading: ReadingAt): Doubt | null {
  const reason = reasonOf(defs, state, placed, reading)
  if (reason === null) return null
  const fits = (si: number) => reasonOf(defs, state, placed, { ...reading, si }) === null
  const written = writtenAs(defs, placed, reading)
  const meant = reason.isSlip ? likelySentence(reading, likely(reading, written, fits)) : null
  const shown = [reason.more, meant].filter((one) => one !== null).join(' ') || (reason.otherwise ?? '')
  return shown === '' ? { why: reason.why } : { why: reason.why, shown }
}

function reasonOf(defs: Definitions, state: State, placed: ReadStep, reading: ReadingAt): Reason | null {
  const outside = implausible(defs, placed, reading)
  const sized = sizeKeyed(defs, state, placed, reading)
  if (sized !== null && (outside !== null || standing(state, reading.place).length === 0))
    return sizeReason(sized)
  if (outside !== null) return { why: outside, more: null, isSlip: true }
  if (standing(state, reading.place).length > 0) return null
  const size = (si: number) => sizeOf(defs, placed.step.quantity, Math.abs(si), reading)
  const off = isSetCheck(placed) && !isCheckAfter(defs, placed) ? offStandard(defs, placed, reading) : null
  if (off !== null) return offReason(off, size)
  const slipped = swappedCheck(defs, state, placed, reading, writtenAs(defs, placed, reading))
  if (slipped !== null) return checkReason(slipped, size)
  const gap = temperatureGap(defs, state, placed, reading)
  if (gap !== null) return gapReason(defs, state, gap, size, '1, then correct')
  const swapped = swappedPair(defs, state, placed, reading)
  if (swapped !== null) return swappedReason(reading, swapped, size, '1, then correct')
  const wider = widerStrip(defs, state, placed, reading)
  if (wider !== null) return widerReason(wider, size)
  const far = farFromOthers(state, placed, reading.place, reading.si)
  if (far !== null) return farReason(far, size)
  const last = againstLast(defs, placed, reading)
  return last === null ? null : lastReason(last, size)
}

/**
 * A temperature that is put right, held against those it belongs with: a correction has a reason beside it already, so it is taken
 * with the doubt on record. Null where it is believed. What is outside its window is refused before this.
 */
export function doubtOfCorrection(
  defs: Definitions,
  state: State,
  placed: ReadStep,
  reading: ReadingAt,
): Doubt | null {
  const sized = sizeKeyed(defs, state, placed, reading)
  if (sized !== null) return { why: sizeReason(sized).why }
  const size = (si: number) => sizeOf(defs, placed.step.quantity, Math.abs(si), reading)
  const gap = temperatureGap(defs, state, placed, reading)
  if (gap === null) {
    const swapped = swappedPair(defs, state, placed, reading)
    if (swapped === null) return null
    const { why, more } = swappedReason(reading, swapped, size, 'correct that one next')
    return more === null ? { why } : { why, shown: more }
  }
  const { why, more, isSlip, otherwise } = gapReason(defs, state, gap, size, 'correct that one next')
  const fits = (si: number) =>
    implausible(defs, placed, { ...reading, si }) === null &&
    temperatureGap(defs, state, placed, { ...reading, si }) === null
  const [meant] = isSlip ? likely(reading, writtenAs(defs, placed, reading), fits) : []
  const own = meant === undefined ? null : `${meant.figure} would fit.`
  const shown = [own, more].filter((one) => one !== null).join(' ') || (otherwise ?? '')
  return shown === '' ? { why } : { why, shown }
}

/** No slip of the fingers brings it right: it belongs to another sheet. */
function sizeReason(size: string): Reason {
  return {
    why: `a size, where a temperature is asked: ${size}`,
    more: 'If it was meant for another sheet: 2, then the temperature in full.',
    isSlip: false,
  }
}

/**
 * Which of the two is the slip nobody here can say: both are named, and of the one that stands it is said how it is put right. Where
 * that one is a size of this job it is the likelier slip, and nothing is offered in place of the figure keyed now.
 */
function gapReason(
  defs: Definitions,
  state: State,
  { other, apart, whose }: TemperatureGap,
  size: (si: number) => string,
  way: string,
): Reason {
  const { step, reading } = other
  const why = `${size(apart)} ${apart < 0 ? 'under' : 'over'} sheet ${step.number}, ${step.step.title}`
  const typed = reading.typed.trim()
  const stands = `There ${typed} ${reading.unit} stands`
  const mend = `If the slip is there: ${way}.`
  const sized = sizeKeyed(defs, state, step, reading)
  if (sized !== null) return { why, more: `${stands}, which is ${sized}. ${mend}`, isSlip: false }
  if (whose === 'this') return { why, more: null, isSlip: true }
  const now = reading.si + apart
  const fits = (si: number) => implausible(defs, step, { ...reading, si }) === null && isNear(si, now)
  const meant = likely(reading, writtenAs(defs, step, reading), fits).map(({ figure }) => figure)
  const more = meant.length === 0 ? null : `${stands}; ${meant.join(' or ')} would fit. ${mend}`
  const round = 'Were part and instrument changed round?'
  const apartMost = `Metal and instrument that have lain together differ by less than ${size(APART_K)}.`
  return { why, more, isSlip: whose === null, otherwise: `${apartMost} ${stands}. ${round} ${mend}` }
}

/** Both of the pair are named, as nobody here can say which is which; neither is put in place of the other. */
function swappedReason(
  reading: ReadingAt,
  { other, before }: SwappedPair,
  size: (si: number) => string,
  way: string,
): Reason {
  const figure = ({ typed, unit }: ReadingAt) => `${typed.trim()} ${unit}`
  const apart = reading.si - other.si
  const [now, then] = apart > 0 ? ['over', 'under'] : ['under', 'over']
  const sheet = `sheet ${other.step.number}, ${other.step.step.title}`
  return {
    why: `${size(apart)} ${now} ${sheet}, and before it was ${then}`,
    more: `There ${figure(other.reading)} stands; before, this was ${figure(before.same.reading)} and that ${figure(before.other.reading)}. If the two were changed round: ${way}. If it is so, keep it and say why.`,
    isSlip: false,
  }
}

function writtenAs(defs: Definitions, placed: ReadStep, reading: ReadingAt): Written {
  const instrument = instrumentById(defs, reading.instrument)
  return {
    kind: placed.step.quantity,
    decimalComma: defs.machine.decimal_comma ?? false,
    places: decimalsIn(defs, reading),
    isFull: placed.step.quantity === 'length' && instrument !== undefined && isSetOnStandard(instrument),
  }
}

/** Waited for before anything is measured with the gauge: what it measures would be in doubt from the first figure on. */
function offReason({ off, within }: OffStandard, size: (si: number) => string): Reason {
  return {
    why: `${size(off)} ${off < 0 ? 'under' : 'over'} the standard, and ${within} is allowed`,
    more: 'Wipe both, let them come to one warmth, then 1. If it stays so: the word instrument puts the gauge aside, and another is picked.',
    isSlip: false,
  }
}

/** Nothing else of the check after is doubted: what a gauge has drifted is what it is there to show. */
function checkReason(apart: number, size: (si: number) => string): Reason {
  return {
    why: `${size(apart)} ${apart < 0 ? 'under' : 'over'} the check before`,
    more: null,
    isSlip: true,
  }
}

/** Either of the two may be the slip: the other is named with what puts it right. */
function widerReason({ by, at, place, si }: WiderStrip, size: (si: number) => string): Reason {
  const where = [`${at.step.title}`, place.station.label, place.axis?.label]
    .filter((one) => one !== undefined)
    .join(', ')
  return {
    why: `${size(by)} wider than the bore`,
    more: `${where} reads ${size(si)}, and where no ring runs nothing wears. If the slip is there: 1, then correct.`,
    isSlip: true,
  }
}

function farReason({ beyond, spread, others }: Far, size: (si: number) => string): Reason {
  const side = beyond > 0 ? 'over the most' : 'under the least'
  const more = `It is ${size(beyond)} ${side} of the other ${others} places, which lie within ${size(spread)}.`
  return { why: 'far from its neighbours', more, isSlip: true }
}

/** A figure so near to the one on record is no slip of the fingers: what would fit is left to whoever measures again. */
function lastReason(last: LastLeft, size: (si: number) => string): Reason {
  const { si, on, change } = last
  if (last.is === 'same')
    return { why: 'the very figure of last time', more: `${size(si)} was left on ${on}.`, isSlip: false }
  const way = change < 0 ? 'smaller' : 'larger'
  const more = `${size(si)} was left on ${on}: this is ${size(change)} ${way}, and wear makes it ${last.wears}.`
  return { why: 'less worn than last time', more, isSlip: false }
}
