// A verdict on the sheet: each characteristic beside its limit and source, what governed, the stamp, what it leaves open.
import type { CharacteristicJudgement } from '../bore/bore-characteristics.ts'
import type { Definitions } from '../job/definitions.ts'
import type { BoreVerdictRecord, VerdictRecord } from '../job/verdict-record.ts'
import { assertNever } from '../lib/result.ts'
import { bareLength, lengthText } from '../talk/names.ts'
import { type Block, type Row, row } from './block.ts'
import { figuresBecause, figuresBlock } from './figures-block.ts'
import { holdsInFew } from './holds-in-few.ts'
import { limitSource } from './limit-source.ts'
import { pocketBecause, pocketBlock } from './pocket-block.ts'

const LABELS: Readonly<Record<string, string>> = {
  'out-of-round': 'out of round',
  taper: 'taper',
  spread: 'spread of all',
  'largest-diameter': 'largest',
}

/** Columns of a station's name; with two axes the row is just as wide as a sheet of 80 columns. */
const STATION = 11

/** `title` is that of the judge step; `columns` what is left for words beside the margin. */
export function verdictBlock(
  defs: Definitions,
  title: string,
  record: VerdictRecord,
  look: { readonly margin: string; readonly right: string; readonly columns: number },
): Block {
  switch (record.compute) {
    case 'figures':
      return figuresBlock(defs, title, record, look.margin, look.right)
    case 'pocket_setting':
      return pocketBlock(defs, title, record, look)
    case 'bore_form':
      return boreBlock(defs, record, look.margin, look.right)
    default:
      return assertNever(record)
  }
}

function boreBlock(defs: Definitions, record: BoreVerdictRecord, margin: string, right: string): Block {
  const { inputs, result } = record
  const rows: Row[] = [
    row(`Bore judged, ${inputs.readings.length} places, at 20 degC`, 'strong'),
    ...formRows(defs, record),
  ]
  for (const c of result.judged)
    rows.push(
      ...characteristicRows(defs, c, result.governs?.characteristics.includes(c.characteristic) ?? false),
    )
  rows.push(row(`( ${result.verdict} )`, 'stamp'))
  for (const hold of result.holds) rows.push(row(`  HOLD: ${hold}`, 'caution'))
  if (
    inputs.differenceU !== null &&
    inputs.differenceU !== undefined &&
    inputs.readingU !== null &&
    inputs.readingU !== undefined
  ) {
    rows.push(
      row(
        `Measuring error allowed for: ${bareLength(defs, inputs.differenceU)} of a difference, ${bareLength(defs, inputs.readingU)} of a size (U, k = ${inputs.k ?? 2}).`,
      ),
    )
  }
  if (result.judged.some((c) => c.limit?.from === 'fallback')) {
    rows.push(row('Fall-back limits were used: the maker’s manual comes first.', 'caution'))
  }
  rows.push(row('What this leaves open, for a lead to decide:'))
  for (const proposal of result.proposals) rows.push(row(`  ${proposal.say}`))
  rows.push(row('Type why for the sums.', 'faint'))
  return { margin, right, rows }
}

function characteristicRows(defs: Definitions, c: CharacteristicJudgement, governs: boolean): Row[] {
  const label = (LABELS[c.characteristic] ?? c.characteristic).padEnd(14)
  const value = c.valueM === null ? '-' : bareLength(defs, c.valueM)
  if (c.limit === null) return [row(`${label}${value.padStart(7)}   no limit on record   HOLD`, 'caution')]
  const limit = bareLength(defs, c.limit.value)
  const word = c.judgement.verdict === 'ACCEPT' ? '' : `   ${c.judgement.verdict}`
  const used = c.judgement.used === null ? '' : `  ${Math.round(c.judgement.used * 100)}\u00a0%`
  const tone = c.judgement.verdict === 'ACCEPT' || c.judgement.verdict === 'MONITOR' ? 'plain' : 'caution'
  return [
    row(
      `${label}${value.padStart(7)}  limit ${limit.padStart(7)}${used}${governs ? '   governs' : ''}${word}`,
      tone,
    ),
    row(`${' '.repeat(14)}${limitSource(c.limit)}`, 'faint'),
  ]
}

function formRows(defs: Definitions, { inputs, result }: BoreVerdictRecord): Row[] {
  const { form } = result
  if (form === null) return []
  const rows: Row[] = []
  for (const station of form.round) {
    const sizes = inputs.readings
      .filter((r) => r.station === station.station)
      .map((r) => `${r.axis} ${bareLength(defs, r.valueM)}`)
    rows.push(
      row(
        `${station.station.replaceAll('_', ' ').padEnd(STATION)}${sizes.join('  ')}  round to ${bareLength(defs, station.outOfRoundM)}`,
      ),
    )
  }
  for (const axis of form.perAxis) {
    const middle = axis.widerInMiddleM
    const shape =
      middle === null
        ? ''
        : `, ${middle < 0 ? 'narrower' : 'wider'} in the middle by ${bareLength(defs, Math.abs(middle))}, ${axis.form}`
    rows.push(row(`taper ${axis.axis.padEnd(11)}${bareLength(defs, axis.taperM)}${shape}`))
  }
  if (result.wearFromNominalM !== null)
    rows.push(row(`wear from nominal ${lengthText(defs, result.wearFromNominalM)} at the largest`))
  rows.push(...datumRows(defs, result))
  if (result.reboreRoom !== null)
    rows.push(
      row(
        `room to cut ${lengthText(defs, result.reboreRoom.roomM)}, up to the ${result.reboreRoom.boundBy}`,
      ),
    )
  return rows
}

function datumRows(defs: Definitions, result: BoreVerdictRecord['result']): Row[] {
  const wear = result.wearFromDatum
  if (wear === null) return []
  if (wear.from === null) return [row(`no datum of wear: ${wear.perAxis[0]?.why ?? 'none on record'}`)]
  const parts = wear.perAxis.map((a) =>
    a.wearM === null ? `${a.axis}: ${a.why ?? 'no figure'}` : `${a.axis} ${bareLength(defs, a.wearM)}`,
  )
  return [row(`wear from ${wear.from}: ${parts.join('  ')}`)]
}

/** Why the verdict is what it is, in few lines: what holds it up, or what governs with its limit and source. */
export function becauseRows(defs: Definitions, record: VerdictRecord): Row[] {
  if (record.compute === 'figures') return figuresBecause(defs, record)
  if (record.compute === 'pocket_setting') return pocketBecause(defs, record)
  const { result } = record
  if (result.holds.length > 0) return holdsInFew(result.holds)
  const governing = result.governs?.characteristics ?? []
  return result.judged.flatMap((c) => {
    if (!governing.includes(c.characteristic) || c.valueM === null || c.limit === null) return []
    const used = c.judgement.used === null ? '' : `, ${Math.round(c.judgement.used * 100)}\u00a0% used`
    return [
      row(
        `  ${LABELS[c.characteristic]} governs: ${bareLength(defs, c.valueM)} of ${bareLength(defs, c.limit.value)}${used}; ${limitSource(c.limit)}`,
      ),
    ]
  })
}
