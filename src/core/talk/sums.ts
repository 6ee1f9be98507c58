// The arithmetic behind a verdict, line by line, so that a sceptic can redo it with a pencil.

import { startOf } from '../bore/bore-characteristics.ts'
import { asBoreJudge, type BoreFacts, boreFacts, errorAt } from '../job/bore-facts.ts'
import { type Definitions, stepById } from '../job/definitions.ts'
import { standingOut } from '../job/repeats-error.ts'
import { type State, standingVerdict } from '../job/state.ts'
import type { BoreVerdictRecord, VerdictRecord } from '../job/verdict-record.ts'
import { assertNever } from '../lib/result.ts'
import { expandedOfReading, statedOfReading } from '../metrology/uncertainty.ts'
import { shareTold, shownNumber, usedText } from '../units/index.ts'
import { axisName } from './axis-names.ts'
import { type FigureTold, figureSums } from './figure-sums.ts'
import { bareLength, lengthText, placeNumber } from './names.ts'
import { pocketSums } from './pocket-sums.ts'

/** Where a verdict stands: its judge step, and a state in which it does, so that what it was worked out from is at hand. */
export interface SumsFrom {
  readonly state: State
  readonly step: string
}

/** Lengths with one more decimal than the instrument gives, since means and corrections live there. */
export function sums(
  defs: Definitions,
  record: VerdictRecord,
  from?: SumsFrom,
  figures: FigureTold = 'written',
): string[] {
  switch (record.compute) {
    case 'figures':
      return figureSums(defs, record, figures)
    case 'pocket_setting':
      return pocketSums(defs, record)
    case 'bore_form':
      return boreSums(defs, record, from)
    default:
      return assertNever(record)
  }
}

function boreSums(defs: Definitions, record: BoreVerdictRecord, from?: SumsFrom): string[] {
  const { inputs, result } = record
  const fine = defs.machine.shop_units.length === 'in' ? 5 : 4
  const len = (m: number) => bareLength(defs, m, fine)
  const lines = ['Diameters, medians of the repeats brought to 20 degC:']
  for (const r of inputs.readings)
    lines.push(`  ${plain(r.station)} ${axisName(defs, r.axis)}: ${lengthText(defs, r.valueM, fine)}`)
  if (inputs.readingU !== null && inputs.readingU !== undefined) {
    lines.push(
      `Measuring error: U ${len(inputs.readingU)} of one diameter, ${inputs.differenceU === null || inputs.differenceU === undefined ? 'unknown' : len(inputs.differenceU)} of a difference (level of k = ${inputs.k ?? 2}).`,
      ...(from === undefined ? [] : errorParts(defs, record, from)),
    )
  }
  for (const c of result.judged) {
    if (c.valueM === null || c.limit === null) continue
    const where = c.places.map((p) => `${plain(p.station)} ${axisName(defs, p.axis)}`).join(' less ')
    const startsAt = startOf(inputs, c.characteristic)
    const share = shareTold(
      { value: c.valueM, limit: c.limit, used: c.judgement.used, startsAt },
      (si, more) => bareLength(defs, si, fine + more),
    )
    const rule = c.limit.rule === undefined ? '' : ` (${c.limit.rule})`
    lines.push(
      `${c.characteristic}: ${where} = ${share.value}; limit ${share.limit}${rule}${usedText(share, 'of it used')}.`,
    )
    if (c.judgement.acceptAtMost !== null)
      lines.push(
        `  accepted up to ${len(c.judgement.acceptAtMost)}. Source: ${c.limit.source}. Approved: ${c.limit.approvedBy}.`,
      )
  }
  lines.push(...rulesOnce(result.judged.map((c) => c.judgement.rule)))
  return lines
}

const BEYOND = /\b(?:REWORK|REPLACE)\b/g

/** Rules that differ only in what lies beyond the limit are said once, with all that may. */
function rulesOnce(rules: readonly string[]): string[] {
  const alike = new Map<string, Set<string>>()
  for (const rule of rules) {
    const words = alike.get(rule.replace(BEYOND, '#')) ?? new Set()
    for (const word of rule.match(BEYOND) ?? []) words.add(word)
    alike.set(rule.replace(BEYOND, '#'), words)
  }
  return [...alike].map(([rule, words]) => rule.replaceAll('#', [...words].join(' or ')))
}

/** What the U of one diameter is put together from, the largest first; nothing where the verdict rests on it no longer. */
function errorParts(defs: Definitions, record: BoreVerdictRecord, { state, step }: SumsFrom): string[] {
  const judge = asBoreJudge(stepById(defs, step))
  if (judge === null || standingVerdict(state, step) === null) return []
  const facts = boreFacts(defs, state, judge)
  const { error, gauge } = facts
  const stated = error === null ? null : statedOfReading(error)
  if (stated === null || !stated.ok) return []
  if (isByOtherRule(record, stated.value.U)) return [`  ${BY_OTHER_RULE}`]
  const fine = (m: number) => bareLength(defs, m, defs.machine.shop_units.length === 'in' ? 6 : 5)
  const told = stated.value.parts
    .filter(({ u }) => u > 0)
    .sort((a, b) => b.u - a.u)
    .map(({ from, u }) => `${from === 'instrument' ? (gauge?.id ?? from) : from} ${fine(u)}`)
  return [
    `  One diameter, at k = 1: ${told.join('; ')}.`,
    ...poolLines(defs, facts),
    `  Root of the sum of squares, times k = ${kText(stated.value)}. Source: JCGM 100:2008 (GUM), 5.1.2, G.4.1, H.1. why error shows each.`,
  ]
}

/** That the error of a verdict is not what is worked out here: another version of the program judged it, and the verdict stands. */
export const BY_OTHER_RULE =
  'Worked out by an earlier version, by its own rule for repeats: what follows here would not be its sums.'

export function isByOtherRule({ inputs }: BoreVerdictRecord, now: number): boolean {
  const { readingU } = inputs
  return typeof readingU === 'number' && Math.abs(readingU - now) > 1e-9 * Math.max(readingU, now)
}

/** `2.03, for 118 degrees of freedom`; `2` where nothing was read twice, or it makes nothing of the error. */
export function kText({ k, dof }: { readonly k: number; readonly dof: number }): string {
  return Number.isFinite(dof) ? `${shownNumber(k, 2)}, for ${dof} degrees of freedom` : shownNumber(k, 2)
}

/** How the repeats were pooled, and each place that stands out of the pool with the U it carries. */
export function poolLines(defs: Definitions, facts: BoreFacts): string[] {
  const { repeats, error } = facts
  if (repeats.s === null || error === null) return []
  const fine = defs.machine.shop_units.length === 'in' ? 6 : 5
  const twice = repeats.places.filter(({ n }) => n > 1).length
  return [
    `  Repeats pooled over ${twice} ${twice === 1 ? 'place' : 'places'}: one reading scatters by s = ${bareLength(defs, repeats.s, fine)}, with ${repeats.dof} degrees of freedom (JCGM 100:2008 4.2.4).`,
    ...standingOut(facts).map((one) => {
      const expanded = expandedOfReading(errorAt(error, one))
      const where = placeNumber(defs, one.place.slice(0, one.place.indexOf('.')), one.place)
      const own = expanded.ok ? bareLength(defs, expanded.value, fine - 1) : 'unknown'
      return `  ${where} stands out, its ${one.n} readings lie ${bareLength(defs, one.spread)} apart (Cochran, ISO 5725-2): it carries U ${own} of its own.`
    }),
  ]
}

function plain(id: string): string {
  return id.replaceAll('_', ' ')
}
