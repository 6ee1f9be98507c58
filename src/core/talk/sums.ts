// The arithmetic behind a verdict, line by line, so that a sceptic can redo it with a pencil.

import type { Definitions } from '../job/definitions.ts'
import type { BoreVerdictRecord, VerdictRecord } from '../job/verdict-record.ts'
import { assertNever } from '../lib/result.ts'
import { shownNumber } from '../units/index.ts'
import { figureSums } from './figure-sums.ts'
import { bareLength, lengthText } from './names.ts'
import { pocketSums } from './pocket-sums.ts'

/** Lengths with one more decimal than the instrument gives, since means and corrections live there. */
export function sums(defs: Definitions, record: VerdictRecord): string[] {
  switch (record.compute) {
    case 'figures':
      return figureSums(defs, record)
    case 'pocket_setting':
      return pocketSums(defs, record)
    case 'bore_form':
      return boreSums(defs, record)
    default:
      return assertNever(record)
  }
}

function boreSums(defs: Definitions, record: BoreVerdictRecord): string[] {
  const { inputs, result } = record
  const fine = defs.machine.shop_units.length === 'in' ? 5 : 4
  const len = (m: number) => bareLength(defs, m, fine)
  const lines = ['Diameters, means of the repeats brought to 20 degC:']
  for (const r of inputs.readings)
    lines.push(`  ${plain(r.station)} ${plain(r.axis)}: ${lengthText(defs, r.valueM, fine)}`)
  if (inputs.readingU !== null && inputs.readingU !== undefined) {
    lines.push(
      `Measuring error: U ${len(inputs.readingU)} of one diameter, ${inputs.differenceU === null || inputs.differenceU === undefined ? 'unknown' : len(inputs.differenceU)} of a difference (k = ${inputs.k ?? 2}).`,
    )
  }
  for (const c of result.judged) {
    if (c.valueM === null || c.limit === null) continue
    const where = c.places.map((p) => `${plain(p.station)} ${plain(p.axis)}`).join(' less ')
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
  const rules = new Set(result.judged.map((c) => c.judgement.rule))
  for (const rule of rules) lines.push(rule)
  return lines
}

function plain(id: string): string {
  return id.replaceAll('_', ' ')
}
