// A verdict on the sheet: each characteristic beside its limit and source, what governed, the stamp, what it leaves open.
import { allowedFor, type CharacteristicJudgement, startOf } from '../bore/bore-characteristics.ts'
import { asBoreJudge } from '../job/bore-facts.ts'
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import { foundBesides } from '../job/found-besides.ts'
import { placeResult, placesOf } from '../job/places.ts'
import type { State } from '../job/state.ts'
import type { BoreVerdictRecord, VerdictRecord } from '../job/verdict-record.ts'
import { assertNever } from '../lib/result.ts'
import { widthOf } from '../lib/text.ts'
import { axisName, withAxisNames } from '../talk/axis-names.ts'
import { decidesPlace } from '../talk/decides-place.ts'
import { bareError, bareLength, lengthText, placeFigure } from '../talk/names.ts'
import { nextLookLines } from '../talk/next-look.ts'
import { type ShareTold, shareTold, usedText } from '../units/index.ts'
import { besidesRows } from './besides-rows.ts'
import { type Block, type Row, row } from './block.ts'
import { WHY_OFFERED } from './entry-words.ts'
import { errorRows } from './error-rows.ts'
import { figuresBecause, figuresBlock, figuresGovern } from './figures-block.ts'
import { holdsInFew } from './holds-in-few.ts'
import { keptRows } from './kept-rows.ts'
import { limitSource } from './limit-source.ts'
import { pocketBecause, pocketBlock } from './pocket-block.ts'

const LABELS: Readonly<Record<string, string>> = {
  'out-of-round': 'out of round',
  taper: 'taper',
  spread: 'spread of all',
  'largest-diameter': 'largest',
}

/** Columns of the name of a figure. */
const LABEL = 13

/** Columns of a station's name. */
const STATION = 11

interface Look {
  /** Id of the judge step. */
  readonly step: string
  readonly margin: string
  readonly right: string
  readonly columns: number
}

/** Lines of a verdict that are in sight at once, whatever is asked below it, on a screen of 24 rows. */
const IN_SIGHT = 9

/**
 * `title` is that of the judge step; `columns` what is left for words beside the margin; `state` the one after the verdict. One
 * that is longer than a screen says its word, what governs with its limit and source, and what was doubted and kept at both
 * ends: whoever reads the sheet from its top has it first, and whoever sees it scroll by has it left in sight.
 */
export function verdictBlock(
  defs: Definitions,
  state: State,
  title: string,
  record: VerdictRecord,
  look: Look,
): Block {
  const block = wholeBlock(defs, state, title, record, look)
  const kept = [
    ...besidesRows(defs, state, look.step),
    ...errorRows(defs, state, look.step, record),
    ...keptRows(defs, state, record),
  ]
  const [head, ...rest] = block.rows
  const stamp = rest.findIndex((r) => r.tone === 'stamp')
  if (head === undefined || stamp < 0) return block
  const before = rest.slice(0, stamp)
  const after = rest.slice(stamp + 1)
  const stamped = rest.slice(stamp, stamp + 1)
  if (linesOf(block.rows, look.columns) <= IN_SIGHT)
    return { ...block, rows: [head, ...before, ...stamped, ...kept, ...after] }
  const short = [...becauseRows(defs, record), ...governingRows(defs, record), ...kept]
  const named = { ...head, text: `${head.text}: ${record.result.verdict}` }
  const sums = after.slice(-1)
  return {
    ...block,
    rows: [named, ...short, ...before, ...after.slice(0, -1), ...stamped, ...short, ...sums],
  }
}

function linesOf(rows: readonly Row[], columns: number): number {
  return rows.reduce((sum, { text }) => sum + Math.max(1, Math.ceil(widthOf(text) / columns)), 0)
}

function wholeBlock(
  defs: Definitions,
  state: State,
  title: string,
  record: VerdictRecord,
  look: Look,
): Block {
  switch (record.compute) {
    case 'figures':
      return figuresBlock(defs, title, record, look.margin, look.right)
    case 'pocket_setting':
      return pocketBlock(defs, title, record, look)
    case 'bore_form':
      return boreBlock(defs, state, record, look)
    default:
      return assertNever(record)
  }
}

function boreBlock(
  defs: Definitions,
  state: State,
  record: BoreVerdictRecord,
  { margin, right, step }: Look,
): Block {
  const { inputs, result } = record
  const asRead = sizesAsRead(defs, state, step)
  const rows: Row[] = [
    row(`Bore judged at 20 degC, ${inputs.readings.length} places`, 'strong'),
    ...formRows(defs, record, asRead),
  ]
  for (const c of result.judged)
    rows.push(
      ...characteristicRows(
        defs,
        inputs,
        c,
        result.governs?.characteristics.includes(c.characteristic) ?? false,
        decidesPlace(defs, result.form, c),
      ),
    )
  rows.push(row(`( ${result.verdict} )`, 'stamp'))
  for (const hold of result.holds) rows.push(row(`  HOLD: ${withAxisNames(defs, hold)}`, 'caution'))
  if (
    inputs.differenceU !== null &&
    inputs.differenceU !== undefined &&
    inputs.readingU !== null &&
    inputs.readingU !== undefined
  ) {
    rows.push(
      row(
        `Measuring error allowed for: ${bareError(defs, inputs.differenceU)} of a difference, ${bareError(defs, inputs.readingU)} of a size (U, level of k = ${inputs.k ?? 2}), so each is accepted only up to the figure before its limit.`,
      ),
      ...ownErrorRows(defs, record),
    )
  }
  if (result.judged.some((c) => c.limit?.from === 'fallback')) {
    rows.push(row('Fall-back limits were used: the maker’s manual comes first.', 'caution'))
  }
  const isNothing = result.proposals.every(({ kind }) => kind === 'nothing-to-do')
  const isBeside = foundBesides(defs, state, step).length > 0
  if (!isNothing) rows.push(row('What this leaves open, for a lead to decide:'))
  if (!isNothing || !isBeside)
    for (const { say } of result.proposals) rows.push(row(isNothing ? say : `  ${say}`))
  if (result.verdict === 'MONITOR')
    rows.push(...nextLookLines(defs, state, record).map((line) => row(`    ${line}`)))
  rows.push(row(WHY_OFFERED, 'faint'))
  return { margin, right, rows }
}

/** A difference to the last place of the gauge; a size at 20 degC to one more, as it is none that was read. */
function judgedText(
  defs: Definitions,
  { characteristic, valueM }: CharacteristicJudgement,
  more = 0,
): string {
  if (valueM === null) return '-'
  const isSize = characteristic === 'largest-diameter'
  return bareLength(defs, valueM, fine(defs) - (isSize ? 0 : 1) + more)
}

/** Figure, limit and share as a hand calculation comes to them; null where there is no figure or no limit. */
function boreShare(
  defs: Definitions,
  inputs: BoreVerdictRecord['inputs'],
  c: CharacteristicJudgement,
): ShareTold | null {
  const { characteristic, valueM, limit, judgement } = c
  if (valueM === null || limit === null) return null
  const told = shareTold(
    { value: valueM, limit, used: judgement.used, startsAt: startOf(inputs, characteristic) },
    (si, more) => (si === valueM ? judgedText(defs, c, more) : bareLength(defs, si, fine(defs) - 1 + more)),
  )
  return told
}

/** A long figure beside a long name keeps a space between them. */
function besideOf(label: string, value: string): string {
  const cell = value.padStart(7)
  return cell.startsWith(' ') || label.endsWith(' ') ? cell : ` ${cell}`
}

function characteristicRows(
  defs: Definitions,
  inputs: BoreVerdictRecord['inputs'],
  c: CharacteristicJudgement,
  governs: boolean,
  place: string | null,
): Row[] {
  const label = (LABELS[c.characteristic] ?? c.characteristic).padEnd(LABEL)
  const share = boreShare(defs, inputs, c)
  const value = share?.value ?? judgedText(defs, c)
  if (c.limit === null) return [row(`${label}${value.padStart(7)}   no limit on record   HOLD`, 'caution')]
  const limit = share?.limit ?? bareLength(defs, c.limit.value)
  const most = acceptedText(defs, c)
  const word = c.judgement.verdict === 'ACCEPT' ? '' : `${c.judgement.verdict}; `
  const percent = share?.percent ?? null
  const used = percent === null ? '' : `  ${percent}`
  const from = share?.from === null || share === null ? '' : `${share.from}; `
  const tone = c.judgement.verdict === 'ACCEPT' || c.judgement.verdict === 'MONITOR' ? 'plain' : 'caution'
  return [
    row(
      `${label}${besideOf(label, value)}${most === null ? '' : `  up to ${most}`}  limit ${limit}${used}`,
      tone,
    ),
    ...(place === null ? [] : [row(`${' '.repeat(LABEL)}${place}`, tone)]),
    row(
      `${' '.repeat(LABEL)}${word}${governs ? 'governs; ' : ''}${from}${limitSource(c.limit)}`,
      word === '' ? 'faint' : tone,
    ),
  ]
}

/** Figures whose places carry errors of their own: how much is allowed for there. */
function ownErrorRows(defs: Definitions, { inputs, result }: BoreVerdictRecord): Row[] {
  return result.judged.flatMap((c) => {
    const common = c.characteristic === 'largest-diameter' ? inputs.readingU : inputs.differenceU
    const own = allowedFor(inputs, c)
    if (own === null || own === common) return []
    const places = c.places.map((p) => `${p.station.replaceAll('_', ' ')} ${axisName(defs, p.axis)}`)
    return [
      row(
        `  ${LABELS[c.characteristic]}: ${bareError(defs, own)}, by the repeats of ${places.join(' and ')}.`,
      ),
    ]
  })
}

/** The limit less its guard band, to the step that is judged: the share of it used says nothing of how near that is. */
function acceptedText(defs: Definitions, { judgement }: CharacteristicJudgement): string | null {
  const { acceptAtMost: most, guard } = judgement
  return most === null || guard === null || guard === 0 ? null : bareLength(defs, most)
}

function fine({ machine }: Definitions): number {
  return machine.shop_units.length === 'in' ? 5 : 4
}

/** The size of each place as it stands in the bars, by station and axis: what was read, not what it is at 20 degC. */
function sizesAsRead(defs: Definitions, state: State, stepId: string): ReadonlyMap<string, string> {
  const judge = asBoreJudge(stepById(defs, stepId))
  if (judge === null) return new Map()
  const placed = asKind(stepById(defs, judge.scope + judge.step.inputs.diameters), 'read')
  return new Map(
    placesOf(placed).map((place) => [
      `${place.station.id} ${place.axis?.id ?? 'only'}`,
      placeFigure(defs, placed, placeResult(placed, place, state)) ?? '-',
    ]),
  )
}

function formRows(
  defs: Definitions,
  { inputs, result }: BoreVerdictRecord,
  asRead: ReadonlyMap<string, string>,
): Row[] {
  const { form } = result
  if (form === null) return []
  const rows: Row[] = [row('Sizes as read; all else is at 20 degC, from unrounded means:')]
  let isOff = false
  for (const station of form.round) {
    const figures = inputs.readings
      .filter((r) => r.station === station.station)
      .map(({ station: at, axis, valueM }) => ({
        axis,
        shown: asRead.get(`${at} ${axis}`) ?? bareLength(defs, valueM),
      }))
    isOff ||= !addsUp(figures, bareLength(defs, station.outOfRoundM))
    rows.push(
      row(
        `${station.station.replaceAll('_', ' ').padEnd(STATION)}${figures.map(({ axis, shown }) => `${axisName(defs, axis)} ${shown}`).join('  ')}`,
      ),
      row(`${' '.repeat(STATION)}out of round by ${bareLength(defs, station.outOfRoundM)}`),
    )
  }
  if (isOff) rows.push(row('a last digit off by one from the sizes shown is rounding, and no slip', 'faint'))
  for (const axis of form.perAxis) {
    const middle = axis.widerInMiddleM
    const shape =
      middle === null
        ? ''
        : `, ${middle < 0 ? 'narrower' : 'wider'} in the middle by ${bareLength(defs, Math.abs(middle))}, ${axis.form}`
    rows.push(row(`taper ${axisName(defs, axis.axis)} ${bareLength(defs, axis.taperM)}${shape}`))
  }
  if (result.wearFromNominalM !== null)
    rows.push(row(`wear from nominal ${lengthText(defs, result.wearFromNominalM)} at the largest`))
  rows.push(...datumRows(defs, result))
  if (result.wearFromNominalM !== null && result.wearFromDatum?.from != null)
    rows.push(row('  nominal is the size on the drawing; the other is the bore as it was made', 'faint'))
  if (result.reboreRoom !== null)
    rows.push(
      row(`room to cut ${lengthText(defs, result.reboreRoom.roomM)}, up to the ${result.reboreRoom.boundBy}`),
    )
  return rows
}

/** Whether the two sizes of a station, as they are shown, differ by what is shown as their difference. */
function addsUp(figures: readonly { readonly shown: string }[], difference: string): boolean {
  const sizes = figures.map(({ shown }) => Number(shown))
  if (sizes.length < 2 || !sizes.every(Number.isFinite)) return true
  return Math.abs(Math.max(...sizes) - Math.min(...sizes) - Number(difference)) < HALF_A_DIGIT
}

/** Below the last digit that any shop unit is shown with, above the noise of a sum of shown figures. */
const HALF_A_DIGIT = 0.00005

function datumRows(defs: Definitions, result: BoreVerdictRecord['result']): Row[] {
  const wear = result.wearFromDatum
  if (wear === null) return []
  if (wear.from === null) return [row(`no datum of wear: ${wear.perAxis[0]?.why ?? 'none on record'}`)]
  const parts = wear.perAxis.map((a) =>
    a.wearM === null
      ? `${axisName(defs, a.axis)}: ${withAxisNames(defs, a.why ?? 'no figure')}`
      : `${axisName(defs, a.axis)} ${bareLength(defs, a.wearM)}${wearU(defs, a.expandedU)}`,
  )
  const since = wear.since === undefined ? '' : ` of ${wear.since}`
  const source = wear.source === undefined ? '' : ` (${wear.source})`
  return [
    row(`wear from ${wear.from}${since}${source}: ${parts.join('  ')}`),
    ...(wear.from === 'unswept strip' ? [] : [row('  the sizes of the record taken as at 20 degC', 'faint')]),
  ]
}

function wearU(defs: Definitions, u: number | undefined): string {
  return u === undefined ? '' : ` (U ${bareLength(defs, u)})`
}

/** Why the verdict is what it is, in few lines: what holds it up, or what governs with its limit and source. */
export function becauseRows(defs: Definitions, record: VerdictRecord): Row[] {
  if (record.compute === 'figures') return figuresBecause(defs, record)
  if (record.compute === 'pocket_setting') return pocketBecause(defs, record)
  return record.result.holds.length > 0
    ? holdsInFew(record.result.holds.map((hold) => withAxisNames(defs, hold)))
    : boreGoverns(defs, record)
}

/** What governs, of a verdict that is held up too: how near it is to its limit, and where that comes from. */
function governingRows(defs: Definitions, record: VerdictRecord): Row[] {
  if (record.result.holds.length === 0 || record.compute === 'pocket_setting') return []
  return record.compute === 'figures' ? figuresGovern(defs, record) : boreGoverns(defs, record)
}

/** Where the measuring or the record is on hold every word is turned to HOLD: of what was not near its limit itself it is not said to make it so. */
function isOwnWord({ judgement: { verdict, compared, reasons } }: CharacteristicJudgement): boolean {
  return verdict !== 'HOLD' || compared || reasons.length > 1
}

function boreGoverns(defs: Definitions, { inputs, result }: BoreVerdictRecord): Row[] {
  const governing = result.governs?.characteristics ?? []
  // Of two limits the one that is used most may be the milder: the word is then another's, and that one is named first.
  const makes = result.judged.filter((c) => c.judgement.verdict === result.verdict && isOwnWord(c))
  const isOthers = makes.length > 0 && !makes.some((c) => governing.includes(c.characteristic))
  const first = isOthers ? makes : []
  return [...first, ...result.judged.filter((c) => governing.includes(c.characteristic))].flatMap((c) => {
    const share = boreShare(defs, inputs, c)
    if (share === null || c.limit === null) return []
    const does = first.includes(c) ? `makes it ${result.verdict}` : 'governs'
    const place = decidesPlace(defs, result.form, c)
    return [
      row(
        `  ${LABELS[c.characteristic]} ${does}: ${share.value} of ${share.limit}\u00a0${defs.machine.shop_units.length}${usedText(share)}; ${place === null ? '' : `${place}; `}${limitSource(c.limit)}`,
      ),
    ]
  })
}
