// The review on the sheet: on one screen, counted where it does not fit, or whole, line by line.
import type { Definitions } from '../job/definitions.ts'
import { NOT_ENFORCED_BY } from '../job/paper.ts'
import type { State } from '../job/state.ts'
import { cutSeen, wrap } from '../lib/text.ts'
import { type Block, type Line, layOut, type Row, row, type SheetStyle, textWidth } from '../sheet/block.ts'
import { changesInFew } from './changes-rows.ts'
import { type Exception, KIND_NAMES } from './exception.ts'
import { foldTo, type Listed } from './fold-list.ts'
import type { Review } from './review.ts'
import { FOUND_AND_LEFT, sectionsOf } from './sections.ts'

export const CAUTION = 'The maker’s manual, site permits, local code and licensed practice come first.'
/** A screen that is lower than this shows the list only. */
const ROOMY = 16
/** Most lines of a screen that one exception takes. */
const TALLEST = 2
/** Columns of the margin. */
const MARGIN = 5
/** Below this many columns the number stands in front of the words. */
const NARROW = 60

/** The greatest number that there is something behind; 0 for none. */
export function lastNumber(review: Review): number {
  return sectionsOf(review).at(-1)?.number ?? review.exceptions.length
}

/** At most `rows` lines. Every exception has its number in it or is in a count that names its numbers. */
export function screenLines(defs: Definitions, review: Review, style: SheetStyle, rows: number): Line[] {
  const head = layOut({ margin: '', rows: headRows(review) }, style)
  const left = rows - head.length
  const below = rows >= ROOMY ? belowLines(defs, review, style, left) : []
  const room = Math.max(1, left - below.length)
  const list =
    review.exceptions.length === 0
      ? layOut({ margin: '', rows: [row(NOTHING)] }, style)
      : listLines(review.exceptions, style, room)
  const usual = rows >= ROOMY && list.length < room ? usualLines(review, style) : []
  return [...head, ...list, ...usual, ...below].slice(0, rows)
}

const NOTHING = 'Nothing out of the ordinary was found by what this review looks at.'

/** Two lines each where all of them have room for that, else one; what is cut ends in stops. */
function listLines(exceptions: readonly Exception[], style: SheetStyle, room: number): Line[] {
  const height = (listed: Listed) => listedPieces(listed, style, TALLEST).length
  const tall = foldTo(exceptions, room, (one) => height({ is: 'one', one }))
  const isTall = tall.reduce((sum, listed) => sum + height(listed), 0) <= room
  const list = isTall ? tall : foldTo(exceptions, room)
  let spare = isTall ? room : room - list.length
  return list.flatMap((listed) => {
    const most = isTall ? TALLEST : Math.min(TALLEST, 1 + spare)
    const pieces = listedPieces(listed, style, most)
    if (!isTall) spare -= pieces.length - 1
    const { margin, tone } = listedHead(listed)
    return layOut({ margin, rows: pieces.map((text) => ({ text, tone, keep: true })) }, style)
  })
}

function listedPieces(listed: Listed, style: SheetStyle, most: number): string[] {
  const { margin, text } = listedHead(listed)
  const width = textWidth(style) - (style.width < NARROW ? margin.length + 3 : 0)
  const pieces = wrap(text, width, 2)
  if (pieces.length <= most) return pieces
  const rest = pieces.slice(most - 1).map((piece) => piece.trim())
  const kept = cutSeen(`${most === 1 ? '' : '  '}${rest.join(' ')}`, width)
  return [...pieces.slice(0, most - 1), kept]
}

/**
 * The numbers of what stands behind the list, and above them the places by which a lead plans: these only where every exception has a
 * line of its own all the same. They stand behind their number too, and what is out of the ordinary has the room first.
 */
function belowLines(defs: Definitions, review: Review, style: SheetStyle, left: number): Line[] {
  const sections = sectionsOf(review)
  const behind = sections.map(({ number, name }) => `${number} ${name}`)
  const found = sections.find(({ name }) => name === FOUND_AND_LEFT)?.number ?? null
  const laid = (rows: readonly Row[]) => layOut({ margin: '', rows: [...rows] }, style)
  const numbers = row(`${behind.join(', ')}.`)
  const whole = laid([...changesInFew(defs, review.changes, found), numbers])
  return review.exceptions.length <= left - whole.length ? whole : laid([numbers])
}

/** A row of what was as usual, where the list leaves one. */
function usualLines({ usual }: Review, style: SheetStyle): Line[] {
  const text = cutSeen(`As usual: ${usual.join('; ')}.`, textWidth(style))
  return layOut({ margin: '', rows: [{ ...row(text, 'faint'), keep: true }] }, style)
}

/** Everything, in words, for a screen reader, a pipe or paper. */
export function wholeBlocks(defs: Definitions, review: Review, state: State, style: SheetStyle): Block[] {
  const { exceptions, job } = review
  const open = exceptions.filter((one) => one.open).length
  return [
    { margin: '', rows: [...headRows(review), ...hungRows(review)] },
    {
      margin: '',
      rows: [
        exceptions.length === 0
          ? row(NOTHING)
          : row(
              `${exceptions.length}${ofAll(review)} out of the ordinary, worst first${open === 0 ? '' : `; ${open} still open`}:`,
            ),
      ],
    },
    ...exceptions.map((one): Block => ({ margin: String(one.number), rows: exceptionRows(one) })),
    ...sectionsOf(review).map(
      ({ number, rows }): Block => ({
        margin: String(number),
        rows: rows(defs, state, { ...style, linear: true }),
      }),
    ),
    {
      margin: '',
      rows: [
        row(`The entries behind one: barover review ${job} --item N`),
        ...wayOn(review).map((line) => row(line)),
        row(CAUTION, 'caution'),
        row(`Where the job stands, in few lines: barover show ${job} --handover`),
      ],
    },
  ]
}

/** `8 of 12`: the numbers behind them are of the rest of the record. */
function ofAll(review: Review): string {
  const all = lastNumber(review)
  return all > review.exceptions.length ? ` of ${all}` : ''
}

/** What a lead can do about it, and where. */
export function wayOn({ isClosed, adopted, job, changes }: Review): string[] {
  const isHeld = changes.some(({ left, held }) => (left === null ? held.found : held.left) !== null)
  const held = isHeld ? ' What was measured on HOLD is none of it.' : ''
  return isClosed
    ? [
        adopted === null
          ? `What was left is no baseline yet: a lead adopts it for the next overhaul by barover adopt ${job}.${held}`
          : `What was left was adopted as the next baseline by ${adopted.person}, ${adopted.at.slice(0, 10)}.`,
        'The job is closed: beside that its log takes a lead’s words, by barover remark, and an instrument found out of calibration since, by barover doubt.',
      ]
    : [
        `What is open is answered where the job is taken up: barover resume ${job}. There the words are: release, countersign, note, taken, n/a, deviation, correct, instrument.`,
      ]
}

/** What hung on the machine when it was started, as it was asked for: one line has no room for it. */
function hungRows({ started }: Review): Row[] {
  return (started?.hung ?? []).map((text) => row(`  on when it was started, ${text}`))
}

/** What it is; how it stands; when and who; the start. Whatever is too long goes on below: these are never cut. */
function headRows({ paper, title, machine, standing, from, to, people, added, started }: Review): Row[] {
  const day = (stamp: string) => `${stamp.slice(0, 10)} ${stamp.slice(11, 16)}`
  const end = from.slice(0, 10) === to.slice(0, 10) ? to.slice(11, 16) : day(to)
  return [
    row(`REVIEW  ${machine}  ${title}`, 'strong'),
    ...(paper ? [row(`From paper: ${NOT_ENFORCED_BY}.`, 'caution')] : []),
    row(
      `${standing}   ${day(from)} to ${end}   ${people.length === 0 ? 'nobody signed on' : people.join(', ')}`,
      'strong',
    ),
    ...(added.length === 0 ? [] : [row(`Added since: ${added.join('; ')}`, 'caution')]),
    ...(started === null ? [] : [row(started.what, 'strong')]),
  ]
}

export function exceptionRows({ what, sentences, open }: Exception): Row[] {
  return [
    row(what, open ? 'caution' : 'strong'),
    ...sentences.map((sentence) => row(`  ${sentence}`)),
    ...(open ? [row('  OPEN', 'caution')] : []),
  ]
}

function listedHead(listed: Listed): { margin: string; text: string; tone: Row['tone'] } {
  if (listed.is === 'one') {
    const { number, what, open } = listed.one
    return { margin: String(number), text: what, tone: open ? 'caution' : 'plain' }
  }
  const first = listed.of[0]?.number ?? 0
  const last = listed.of[listed.of.length - 1]?.number ?? 0
  const open = listed.of.filter((one) => one.open).length
  const name =
    listed.is === 'many'
      ? KIND_NAMES[listed.kind]
      : `more: ${[...new Set(listed.of.map(({ kind }) => KIND_NAMES[kind]))].join('; ')}`
  const range = `${first}-${last}`
  return {
    // As it is keyed to have them one by one.
    margin: first === last ? String(first) : range.length > MARGIN ? `${first}+` : range,
    text: `${listed.of.length} ${name}${open === 0 ? '' : `, ${open} OPEN`}`,
    tone: open === 0 ? 'plain' : 'caution',
  }
}

/** `13-20`, `13 to 20`, or `13+` for all of its kind from there: each of them in a line; null for what is no such range. */
export function rangeBlocks({ exceptions }: Review, asked: string): Block[] | null {
  const [, from, to] = /^(\d{1,4})\s*(?:\+|(?:-|to)\s*(\d{1,4}))$/.exec(asked.trim().toLowerCase()) ?? []
  const first = exceptions.find(({ number }) => number === Number(from))
  if (first === undefined) return null
  const last = to === undefined ? exceptions.findLast(({ kind }) => kind === first.kind) : undefined
  const end = last?.number ?? Number(to)
  const asLine = ({ number, what, open }: Exception): Block => ({
    margin: String(number),
    rows: [row(what, open ? 'caution' : 'plain')],
  })
  const within = exceptions.filter(({ number }) => number >= first.number && number <= end)
  return within.length === 0 ? null : within.map(asLine)
}
