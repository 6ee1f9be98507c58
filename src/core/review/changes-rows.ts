// As found, as left and the last overhaul of each place on one line: in columns for a screen, in words for whoever listens.
import { recordedSame } from '../job/changes.ts'
import type { Definitions } from '../job/definitions.ts'
import { cutSeen } from '../lib/text.ts'
import { type Row, row } from '../sheet/block.ts'
import { changeFigures, wearFigures } from '../talk/changes.ts'
import { lengthText } from '../talk/names.ts'
import type { Outlook } from './hours-left.ts'
import type { Changed } from './review.ts'

const COLUMNS = { name: 12, figure: 9, change: 8, rate: 8, hours: 7 }

/** Things that were measured at the last overhaul too; the others are behind their number. */
const MOST_THINGS = 2

/**
 * For a screen: of each thing the worst place, which is nearest to its limit, or wears fastest, or wore most; and how many more of it
 * stand behind which number.
 */
export function changesInFew(defs: Definitions, changes: readonly Changed[], behind: number | null): Row[] {
  const told = thingsOf(changes)
    .filter((places) => places.some((one) => one.last !== null))
    .slice(0, MOST_THINGS)
  if (told.length === 0) return []
  return [
    header(),
    ...told.flatMap((places) => {
      const more = places.length - 1
      const rest =
        more === 0 || behind === null ? '' : `; worst of ${places.length}, ${more} more behind ${behind}`
      return [
        row(`${thingName(defs, places)}${rest}`),
        kept(inColumns(defs, worst(defs, places))),
        ...heldShort(places),
      ]
    }),
  ]
}

/** All of them, in the same columns, with what no column holds below each thing. */
export function changesInFull(defs: Definitions, changes: readonly Changed[]): Row[] {
  if (changes.length === 0) return []
  return [
    header(),
    ...thingsOf(changes).flatMap((places) => [...thingRows(defs, places), ...notes(defs, places)]),
    ...noHoursRow(changes),
  ]
}

/** How sure the rates of wear are, limits behind the hours, and why there are none, each once. */
function notes(defs: Definitions, places: readonly Changed[]): Row[] {
  const sure = places.flatMap(({ found, rate }) =>
    found === null || rate === null || !rate.ok ? [] : [wearFigures(defs, found, rate.value).interval],
  )
  const said = places.flatMap((one) => [
    ...(one.rate !== null && !one.rate.ok && !isNoHours(one.rate) ? [`no rate: ${one.rate.error.say}`] : []),
    ...hoursWords(defs, one),
  ])
  const held = heldWords(places)
  const since = places.flatMap((one) => changeFigures(defs, one)?.worn ?? [])
  const lines = [
    ...held,
    ...(since.length === 0 ? [] : [`found less last, place by place: ${since.join(', ')}`]),
    ...(sure.length === 0 ? [] : [`give or take, in 1000 h: ${sure.join(', ')}`]),
    ...new Set(said),
  ]
  return lines.map((line) => row(`  ${line}`))
}

/** Figures that no verdict trusts are no wear: it stands beside them, once for each cause of a thing. */
function heldWords(places: readonly Changed[]): string[] {
  return [...new Set(places.flatMap(heldOf))]
}

function heldOf({ held }: Changed): string[] {
  return [
    ...(held.found === null
      ? []
      : [`${ON_HOLD} FOUND ON HOLD, no wear told from it is to be trusted: ${held.found}`]),
    ...(held.left === null ? [] : [`${ON_HOLD} LEFT ON HOLD, no baseline: ${held.left}`]),
  ]
}

/** The same on a line, where the numbers behind have the rest. */
function heldShort(places: readonly Changed[]): Row[] {
  const [first] = places.flatMap(heldOf)
  return first === undefined ? [] : [row(`  ${first.replace(/:.*/s, '')}: ${sheetOf(places)}`, 'caution')]
}

function sheetOf(places: readonly Changed[]): string {
  const told = places.flatMap(({ held }) => held.found ?? held.left ?? [])[0] ?? ''
  return told.replace(/:.*/s, '')
}

/** Hours that were not read are one cause for every place: it is said once, at the end. */
function noHoursRow(changes: readonly Changed[]): Row[] {
  const noHours = changes.find(({ rate }) => isNoHours(rate))?.rate
  return noHours?.ok === false ? [row(`  No rate of wear: ${noHours.error.say}`)] : []
}

/** All of them in words, a line each; what is said of several places of a thing is said once, below them. */
export function changesInWords(defs: Definitions, changes: readonly Changed[]): Row[] {
  return [
    ...thingsOf(changes).flatMap((places) =>
      [
        row(`${thingName(defs, places)}:`),
        ...heldWords(places),
        ...places.map((one) => row(`  ${inWords(defs, one)}`)),
        ...new Set(places.flatMap((one) => hoursWords(defs, one))),
      ].map((one) => (typeof one === 'string' ? row(`  ${one}`) : one)),
    ),
    ...noHoursRow(changes),
  ]
}

const isNoHours = (rate: Changed['rate']) => rate !== null && !rate.ok && rate.error.code === 'no-hours'

function thingsOf(changes: readonly Changed[]): Changed[][] {
  const things = new Map<string, Changed[]>()
  for (const one of changes) things.set(one.of, [...(things.get(one.of) ?? []), one])
  return [...things.values()]
}

/** The one to plan by: the earliest end first, then the fastest wear, then the most wear since the last overhaul, then its size. */
function worst(defs: Definitions, places: readonly Changed[]): Changed {
  const ranked = places.map((one) => ({ one, keys: worstFirst(defs, one) }))
  const [first] = ranked.sort((a, b) => {
    const at = a.keys.findIndex((key, n) => key !== b.keys[n])
    return at < 0 ? 0 : (b.keys[at] ?? 0) - (a.keys[at] ?? 0)
  })
  if (first === undefined) throw new Error('a thing has a place')
  return first.one
}

/** Greater is worse; what is not known is never greater than what is. */
function worstFirst(defs: Definitions, change: Changed): number[] {
  const { found, left, last, rate, hoursLeft } = change
  const one = found ?? left
  const wears = one === null ? null : recordedSame(defs, one).findLast((was) => was.wears !== null)?.wears
  const sign = wears === 'smaller' ? -1 : 1
  return [
    hoursLeft?.ok === true ? -hoursLeft.value.earliest : Number.NEGATIVE_INFINITY,
    rate?.ok === true ? rate.value.perHour : Number.NEGATIVE_INFINITY,
    found === null || last === null ? Number.NEGATIVE_INFINITY : sign * (found.si - last.si),
    one === null ? Number.NEGATIVE_INFINITY : sign * one.si,
  ]
}

function header(): Row {
  const { name, figure, change, rate, hours } = COLUMNS
  const head = ['last', 'found', 'left'].map((word) => word.padStart(figure)).join('')
  return kept(
    `${'As read'.padEnd(name)}${head}${'change'.padStart(change)}${'/1000h'.padStart(rate)}${'hours'.padStart(hours)}`,
  )
}

const kept = (text: string): Row => ({ ...row(text), keep: true })

function thingName(defs: Definitions, places: readonly Changed[]): string {
  const [first] = places
  const unit = first === undefined ? null : changeFigures(defs, first)
  const rates = places.flatMap(({ rate }) => (rate?.ok === true ? [rate.value] : []))
  const bases = [...new Set(rates.map(({ basis }) => basis))]
  const readings = [
    ...new Set(
      places.flatMap(({ history, rate }) => (rate?.ok === true ? [history?.readings.length ?? 0] : [])),
    ),
  ]
  const wear = bases.length === 0 ? '' : `; wear by ${readings.join(' or ')} readings, ${bases.join(', or ')}`
  return `${first?.of ?? ''}, ${unit?.unit ?? ''}${wear}`
}

function thingRows(defs: Definitions, places: readonly Changed[]): Row[] {
  return [row(thingName(defs, places)), ...places.map((one) => kept(inColumns(defs, one)))]
}

function inColumns(defs: Definitions, one: Changed): string {
  const { name, figure, change, rate, hours } = COLUMNS
  const figures = changeFigures(defs, one)
  const cell = (text: string | null | undefined, width: number) => ` ${(text ?? '-').padStart(width - 1)}`
  const wear =
    one.rate?.ok === true && one.found !== null ? wearFigures(defs, one.found, one.rate.value).per1000 : null
  return [
    ` ${cutSeen(placeShort(one), name - 1)}`.padEnd(name),
    cell(figures?.last, figure),
    cell(mark(figures?.found, one.held.found), figure),
    cell(mark(figures?.left, one.held.left), figure),
    cell(figures?.change, change),
    cell(wear, rate),
    cell(hoursShort(one), hours),
  ].join('')
}

/** Beside a figure that was measured on HOLD, and before the line that says so. */
const ON_HOLD = '*'

function mark(figure: string | null | undefined, held: string | null): string | null | undefined {
  return figure == null || held === null ? figure : `${figure}${ON_HOLD}`
}

/** `CE 9-3`; the station's short name, and the axis by the clock seen from the head end. */
function placeShort({ found, left }: Changed): string {
  const place = (found ?? left)?.place
  if (place === undefined) return ''
  const { station, axis } = place
  return [station.short ?? station.label, ...(axis === null ? [] : [`${axis.from}-${axis.to}`])].join(' ')
}

const OUT_NOW = /: (NOT JUDGED|(?:REWORK|REPLACE|HOLD|STOP)(?=, NOT DECIDED$))/

/** The end to plan by; the verdict itself where it is out and nobody has decided: nobody plans by hours then. */
function hoursShort({ hoursLeft }: Changed): string | null {
  if (hoursLeft?.ok !== true) return null
  const [, word] = OUT_NOW.exec(hoursLeft.value.now ?? '') ?? []
  if (word !== undefined) return word === 'NOT JUDGED' ? '?' : word
  const hours = Math.floor(hoursLeft.value.earliest)
  if (hours === 0) return 'now'
  // More than the column holds, and than anybody plans by; the words have the figure.
  return hours < 1_000_000 ? String(hours) : 'far'
}

function inWords(defs: Definitions, one: Changed): string {
  const figures = changeFigures(defs, one)
  const told = [
    one.last === null || figures === null ? null : `last ${figures.last} on ${one.last.on}`,
    figures?.found == null ? null : `found ${figures.found}${one.held.found === null ? '' : ' ON HOLD'}`,
    figures?.worn == null ? null : `since the last ${figures.worn}`,
    figures?.left == null ? null : `left ${figures.left}${one.held.left === null ? '' : ' ON HOLD'}`,
    figures?.change == null ? null : `found to left ${figures.change}`,
  ].filter((part) => part !== null)
  return [`${placeShort(one)}: ${told.join(', ')}`, ...wearWords(defs, one)].join('; ')
}

function wearWords(defs: Definitions, { rate, found }: Changed): string[] {
  if (rate === null || found === null || isNoHours(rate)) return []
  if (!rate.ok) return [`no rate of wear: ${rate.error.say}`]
  const { per1000, interval, basis } = wearFigures(defs, found, rate.value)
  return [`wear ${per1000} in 1000 h, give or take ${interval} (${basis})`]
}

/** Each with its place; what is refused is said of the thing. */
function hoursWords(defs: Definitions, one: Changed): string[] {
  const { hoursLeft } = one
  if (hoursLeft === null) return []
  if (!hoursLeft.ok) return [`hours left not told: ${hoursLeft.error.say}`]
  const { expected, of, now } = hoursLeft.value
  const on = expected === null ? '' : `, straight on ${Math.round(expected)}`
  return [
    ...(now === null ? [] : [`AS IT IS NOW, ${now}: hours to the limit of one size say nothing of that`]),
    `${placeShort(one)}: ${reachedText(defs, hoursLeft.value)}${on} (${of.from === 'fallback' ? 'fallback' : 'machine book'}, ${of.source})`,
  ]
}

/** `its limit 9.5300 in may be reached after 28824 running hours more`: hours to come, and no figure of the counter. */
export function reachedText(defs: Definitions, { earliest, of, held }: Outlook): string {
  const from = held === null ? '' : ', BY A FIGURE THAT WAS MEASURED ON HOLD'
  return `its limit ${lengthText(defs, of.value)} may be reached after ${Math.floor(earliest)} running hours more${from}`
}
