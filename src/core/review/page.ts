// The review on the sheet: on one screen, counted where it does not fit, or whole, line by line.
import type { Definitions } from '../job/definitions.ts'
import { wrap } from '../lib/text.ts'
import { type Block, type Line, layOut, type Row, row, type SheetStyle, textWidth } from '../sheet/block.ts'
import { changesInFew, changesInWords } from './changes-rows.ts'
import { type Exception, KIND_NAMES } from './exception.ts'
import { foldTo, type Listed } from './fold-list.ts'
import type { Review } from './review.ts'

export const CAUTION = 'The maker’s manual, site permits, local code and licensed practice come first.'
/** Rows of what was as usual on a screen; whole in lines. */
const USUAL_ROWS = 2
/** A screen that is lower than this shows the list only. */
const ROOMY = 16

/** The number under which the places as found and as left are asked for; behind the exceptions. */
export function changesNumber({ exceptions }: Review): number {
  return exceptions.length + 1
}

/** At most `rows` lines. Every exception has its number in it or is in a count that names its numbers. */
export function screenLines(defs: Definitions, review: Review, style: SheetStyle, rows: number): Line[] {
  const head = headRows(review).map((one) => ({ ...one, keep: true }))
  const isRoomy = rows >= ROOMY
  const changes = isRoomy ? changesInFew(defs, review.changes, changesNumber(review)) : []
  const usual = isRoomy
    ? wrap(`As usual: ${review.usual.join('; ')}.`, textWidth(style))
        .slice(0, USUAL_ROWS)
        .map((text) => row(text, 'faint'))
    : []
  const room = Math.max(1, rows - head.length - usual.length - changes.length)
  const list = foldTo(review.exceptions, room)
  const blocks: Block[] = [
    { margin: '', rows: head },
    ...(list.length === 0 ? [{ margin: '', rows: [row(NOTHING)] }] : list.map(listedBlock)),
    { margin: '', rows: [...usual, ...changes.map((one) => ({ ...one, keep: true }))] },
  ]
  return blocks.flatMap((block) => layOut(block, style)).slice(0, rows)
}

const NOTHING = 'Nothing out of the ordinary was found by what this review looks at.'

/** Everything, in words, for a screen reader, a pipe or paper. */
export function wholeBlocks(defs: Definitions, review: Review): Block[] {
  const { exceptions, usual, changes, job } = review
  const open = exceptions.filter((one) => one.open).length
  return [
    { margin: '', rows: headRows(review) },
    {
      margin: '',
      rows: [
        exceptions.length === 0
          ? row(NOTHING)
          : row(
              `${exceptions.length} out of the ordinary, worst first${open === 0 ? '' : `; ${open} still open`}:`,
            ),
      ],
    },
    ...exceptions.map((one): Block => ({ margin: String(one.number), rows: exceptionRows(one) })),
    { margin: '', rows: [row('As usual', 'strong'), row(`  ${usual.join('; ')}.`)] },
    ...(changes.length === 0
      ? []
      : [
          {
            margin: String(changesNumber(review)),
            rows: [
              row('As found, as left and the last overhaul, as read', 'strong'),
              ...changesInWords(defs, changes),
            ],
          },
        ]),
    {
      margin: '',
      rows: [
        row(`The entries behind one: barover review ${job} --item N`),
        ...wayOn(review).map((line) => row(line)),
        row(CAUTION, 'caution'),
      ],
    },
  ]
}

/** What a lead can do about it, and where. */
export function wayOn({ isClosed, job }: Review): string[] {
  return isClosed
    ? [
        'The job is closed: its log takes only an instrument found out of calibration since, by barover doubt.',
      ]
    : [
        `What is open is answered where the job is taken up: barover resume ${job}. There the words are: release, countersign, note, taken, n/a, deviation, correct, instrument.`,
      ]
}

function headRows({ title, machine, standing, from, to, people }: Review): Row[] {
  const day = (stamp: string) => `${stamp.slice(0, 10)} ${stamp.slice(11, 16)}`
  const end = from.slice(0, 10) === to.slice(0, 10) ? to.slice(11, 16) : day(to)
  return [
    row(`REVIEW  ${machine}  ${title}`, 'strong'),
    row(
      `${standing}   ${day(from)} to ${end}   ${people.length === 0 ? 'nobody signed on' : people.join(', ')}`,
      'strong',
    ),
  ]
}

export function exceptionRows({ what, sentences, open }: Exception): Row[] {
  return [
    row(what, open ? 'caution' : 'strong'),
    ...sentences.map((sentence) => row(`  ${sentence}`)),
    ...(open ? [row('  OPEN', 'caution')] : []),
  ]
}

function listedBlock(listed: Listed): Block {
  if (listed.is === 'one') {
    const { number, what, open } = listed.one
    return { margin: String(number), rows: [{ ...row(what, open ? 'caution' : 'plain'), keep: true }] }
  }
  const [first, last] = [listed.of[0]?.number ?? 0, listed.of[listed.of.length - 1]?.number ?? 0]
  const open = listed.of.filter((one) => one.open).length
  const name = listed.is === 'many' ? KIND_NAMES[listed.kind] : 'more, for want of room'
  return {
    margin: `${first}+`,
    rows: [
      {
        ...row(
          `${listed.of.length} ${name}${open === 0 ? '' : `, ${open} OPEN`}   (${first}${first === last ? '' : ` to ${last}`})`,
          open === 0 ? 'plain' : 'caution',
        ),
        keep: true,
      },
    ],
  }
}
