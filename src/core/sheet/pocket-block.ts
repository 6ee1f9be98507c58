// The load question on the sheet: load against target, a row for each opening of the pocket, the stamp, every cylinder at the
// setting spoken of, and what was and was not allowed for.
import type { PocketRow } from '../cycle/pocket-judge-input.ts'
import type { Definitions } from '../job/definitions.ts'
import type { PocketVerdictRecord } from '../job/verdict-record.ts'
import {
  allowances,
  cylinderLines,
  degrees,
  figureIn,
  loadAgainstTarget,
  percent,
  powerUnit,
  recommendation,
  rowAtOpening,
  settingText,
  temperatureUnit,
} from '../talk/pocket-words.ts'
import { formatNumber } from '../units/index.ts'
import { type Block, type Row, row } from './block.ts'
import { WHY_OFFERED } from './entry-words.ts'
import { holdsInFew } from './holds-in-few.ts'

/** Columns that the table needs beside the margin; below that each opening gets lines of its own. */
const TABLE = 61

interface Look {
  readonly margin: string
  readonly right: string
  /** Columns of text beside the margin. */
  readonly columns: number
}

export function pocketBlock(
  defs: Definitions,
  title: string,
  record: PocketVerdictRecord,
  look: Look,
): Block {
  const { result, inputs } = record
  const rows: Row[] = [row(title, 'strong')]
  const loads = loadAgainstTarget(defs, record)
  if (loads !== null) rows.push(row(loads))
  if (result.table.length > 0)
    rows.push(...(look.columns >= TABLE ? tableRows(defs, record) : stackedRows(defs, record)))
  rows.push(row(`( ${result.verdict} )`, 'stamp'))
  for (const hold of result.holds) rows.push(row(`  HOLD: ${hold}`, 'caution'))
  const set = recommendation(defs, record)
  if (set !== null) rows.push(row(set, 'strong'))
  const at = rowAtOpening(record, result.at)
  if (at !== undefined) rows.push(row(`Every cylinder with the pocket ${settingText(at)}, as read:`))
  for (const one of result.judged) for (const line of cylinderLines(defs, one)) rows.push(row(line))
  for (const caution of result.cautions) rows.push(row(caution, 'caution'))
  if (result.table.length > 0) for (const line of allowances(defs, record)) rows.push(row(line, 'faint'))
  const rules = defs.machine.whole_compressor?.site_rules
  if (inputs.record.stages !== undefined && rules !== undefined)
    rows.push(row(`Margin, agreement and reversal: ${rules.source}`, 'faint'))
  rows.push(row(WHY_OFFERED, 'faint'))
  return { margin: look.margin, right: look.right, rows }
}

/** What a row is, in a word: the order in which they count. */
function wordOf(record: PocketVerdictRecord, { faults, loadW }: PocketRow): string {
  if (faults.some(({ grade }) => grade === 'hold')) return 'OUT'
  const { targetW } = record.result
  return targetW !== null && loadW <= targetW ? 'clear' : 'over'
}

function markOf({ result }: PocketVerdictRecord, { opening }: PocketRow): string {
  if (opening === result.recommended) return 'SET'
  return opening === result.present ? 'now' : ''
}

/** The figures of a row that stand for all cylinders: the worst of each. */
function worstOf(defs: Definitions, at: PocketRow) {
  return {
    load: figureIn('power', at.loadW, powerUnit(defs), 1),
    rod: percent(Math.max(...at.cylinders.map(({ share }) => share)), 0),
    reversal: degrees(Math.min(...at.cylinders.map(({ reversalAngle }) => reversalAngle))),
    hottest: figureIn(
      'temperature',
      Math.max(...at.cylinders.map(({ dischargeK }) => dischargeK)),
      temperatureUnit(defs),
      0,
    ),
  }
}

function kept(text: string, tone: Row['tone'] = 'plain'): Row {
  return { text, tone, keep: true }
}

function tableRows(defs: Definitions, record: PocketVerdictRecord): Row[] {
  const isWheel = record.inputs.turns !== null
  const cells = (parts: readonly string[]) => {
    const [
      mark = '',
      open = '',
      turns = '',
      gas = '',
      load = '',
      rod = '',
      reversal = '',
      hottest = '',
      word = '',
    ] = parts
    const where = isWheel ? `${open.padStart(6)}${turns.padStart(7)}` : open.padEnd(13)
    return `${mark.padEnd(4)}${where}${gas.padStart(8)}${load.padStart(8)}${rod.padStart(7)}${reversal.padStart(9)}${hottest.padStart(5)}  ${word}`
  }
  const head = isWheel ? ['', 'open', 'turns'] : ['', 'pocket', '']
  return [
    kept(cells([...head, 'gas', powerUnit(defs), 'rod', 'reversed', temperatureUnit(defs)]), 'faint'),
    ...record.result.table.map((at) => {
      const { load, rod, reversal, hottest } = worstOf(defs, at)
      const where = isWheel
        ? [percent(at.opening, 0), formatNumber(at.turns ?? Number.NaN, 2)]
        : [settingText(at), '']
      const word = wordOf(record, at)
      const line = cells([
        markOf(record, at),
        ...where,
        percent(at.capacityShare, 1),
        load,
        rod,
        reversal,
        hottest,
        word,
      ])
      return kept(line, toneOf(record, at))
    }),
    row(
      `${powerUnit(defs)}: driver, the meter’s error on top. rod: greatest share of a rod load limit. reversed: least arc of any pin. ${temperatureUnit(defs)}: hottest discharge.`,
      'faint',
    ),
  ]
}

function toneOf(record: PocketVerdictRecord, at: PocketRow): Row['tone'] {
  if (markOf(record, at) === 'SET') return 'strong'
  return wordOf(record, at) === 'clear' ? 'plain' : 'caution'
}

function stackedRows(defs: Definitions, record: PocketVerdictRecord): Row[] {
  return record.result.table.flatMap((at) => {
    const { load, rod, reversal, hottest } = worstOf(defs, at)
    const mark = markOf(record, at)
    const head = [settingText(at), ...(mark === '' ? [] : [mark]), wordOf(record, at)].join(', ')
    return [
      row(head, toneOf(record, at)),
      row(`  gas ${percent(at.capacityShare, 1)}, driver ${load} ${powerUnit(defs)}`),
      row(`  rod ${rod}, reversed ${reversal}, hottest ${hottest} ${temperatureUnit(defs)}`),
    ]
  })
}

/** Why the verdict is what it is, in few lines. */
export function pocketBecause(defs: Definitions, record: PocketVerdictRecord): Row[] {
  const { result } = record
  const loads = loadAgainstTarget(defs, record)
  const says = recommendation(defs, record)
  if (result.holds.length > 0) return holdsInFew(result.holds)
  const now = rowAtOpening(record, result.present)
  return [
    ...(loads === null ? [] : [row(`  ${loads}`)]),
    ...(says === null ? [] : [row(`  ${says}`, 'strong')]),
    ...(says !== null || now === undefined
      ? []
      : [row(`  The pocket stands ${settingText(now)}, and that is enough.`)]),
  ]
}
