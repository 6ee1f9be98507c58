// The arithmetic behind a verdict, line by line, so that a sceptic can redo it with a pencil.

import { asBoreJudge, boreFacts } from '../job/bore-facts.ts'
import { type Definitions, stepById } from '../job/definitions.ts'
import { widest } from '../job/repeats-error.ts'
import { type State, standingVerdict } from '../job/state.ts'
import type { BoreVerdictRecord, VerdictRecord } from '../job/verdict-record.ts'
import { assertNever } from '../lib/result.ts'
import { partsOfReading } from '../metrology/uncertainty.ts'
import { shownNumber } from '../units/index.ts'
import { axisName } from './axis-names.ts'
import { figureSums } from './figure-sums.ts'
import { bareLength, lengthText, placeNumber } from './names.ts'
import { pocketSums } from './pocket-sums.ts'

/** Where a verdict stands: its judge step, and a state in which it does, so that what it was worked out from is at hand. */
export interface SumsFrom {
  readonly state: State
  readonly step: string
}

/** Lengths with one more decimal than the instrument gives, since means and corrections live there. */
export function sums(defs: Definitions, record: VerdictRecord, from?: SumsFrom): string[] {
  switch (record.compute) {
    case 'figures':
      return figureSums(defs, record)
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
  const lines = ['Diameters, means of the repeats brought to 20 degC:']
  for (const r of inputs.readings)
    lines.push(`  ${plain(r.station)} ${axisName(defs, r.axis)}: ${lengthText(defs, r.valueM, fine)}`)
  if (inputs.readingU !== null && inputs.readingU !== undefined) {
    lines.push(
      `Measuring error: U ${len(inputs.readingU)} of one diameter, ${inputs.differenceU === null || inputs.differenceU === undefined ? 'unknown' : len(inputs.differenceU)} of a difference (k = ${inputs.k ?? 2}).`,
      ...(from === undefined ? [] : errorParts(defs, from)),
    )
  }
  for (const c of result.judged) {
    if (c.valueM === null || c.limit === null) continue
    const where = c.places.map((p) => `${plain(p.station)} ${axisName(defs, p.axis)}`).join(' less ')
    const share =
      c.judgement.used === null ? '' : `, ${shownNumber(c.judgement.used * 100, 0)}\u00a0% of it used`
    const rule = c.limit.rule === undefined ? '' : ` (${c.limit.rule})`
    lines.push(
      `${c.characteristic}: ${where} = ${len(c.valueM)}; limit ${len(c.limit.value)}${rule}${share}.`,
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
function errorParts(defs: Definitions, { state, step }: SumsFrom): string[] {
  const judge = asBoreJudge(stepById(defs, step))
  if (judge === null || standingVerdict(state, step) === null) return []
  const { error, gauge } = boreFacts(defs, state, judge)
  const parts = error === null ? null : partsOfReading(error)
  if (parts === null || !parts.ok) return []
  const [wide] = widest(defs, state, judge)
  const apart =
    wide === undefined
      ? ''
      : ` (the furthest apart, ${placeNumber(defs, wide.read.id, wide.place.key)}, by ${bareLength(defs, wide.spread)})`
  const told = parts.value
    .filter(({ u }) => u > 0)
    .sort((a, b) => b.u - a.u)
    .map(({ from, u }) => {
      const named = from === 'instrument' ? (gauge?.id ?? from) : from
      return `${named} ${bareLength(defs, u, defs.machine.shop_units.length === 'in' ? 6 : 5)}${from === 'repeats' ? apart : ''}`
    })
  return [
    `  One diameter, at k = 1: ${told.join('; ')}.`,
    '  Root of the sum of squares, times k. Source: JCGM 100:2008 (GUM), 5.1.2 and H.1. why error shows each.',
  ]
}

function plain(id: string): string {
  return id.replaceAll('_', ' ')
}
