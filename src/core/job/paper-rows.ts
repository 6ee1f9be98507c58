// The boxes of a printed sheet in the order they stand on it, and how each is keyed: the person goes down the paper.
import { list } from '../lib/wording.ts'
import { asKind, type Definitions, type PlacedStep, personById } from './definitions.ts'
import { comesOff, type GateStep, type Item, itemsFor } from './gate.ts'
import { itemLabel } from './item-label.ts'
import { type PaperState, rowOf } from './paper.ts'
import { type Place, placesOf } from './places.ts'
import { pointOf } from './point.ts'

/**
 * What one line takes. `line`: time, initials and what stands beside them. `done`: the same of a step that is only signed.
 * `figure`: a reading of the place. `thing`: a line of the register. `copy`: whether the page was filled in once more.
 */
export type Takes = 'words' | 'copy' | 'day' | 'line' | 'done' | 'seen' | 'place' | 'figure' | 'thing'

export interface SheetBox {
  readonly placed: PlacedStep | null
  readonly row: string
  readonly takes: Takes
  /** What the sheet calls it. */
  readonly label: string
  /** How it is keyed, where that is not told by what it takes. */
  readonly how?: string
  readonly place?: Place
  readonly item?: Item
  /** What a step puts in, of a line of the register. */
  readonly what?: string
}

export const FRONT = {
  marks: 'marks',
  order: 'order',
  day: 'day',
  begun: 'begun',
  ended: 'ended',
  plate: 'plate',
  people: 'people',
} as const

/** The front page: what the sheet is, when, of which machine, who and with what. */
export function frontBoxes(defs: Definitions): SheetBox[] {
  const box = (row: string, takes: Takes, label: string, how?: string): SheetBox => ({
    placed: null,
    row,
    takes,
    label,
    ...(how === undefined ? {} : { how }),
  })
  return [
    box(
      FRONT.marks,
      'words',
      'Foot of each page',
      'Check mark, as it stands there; procedure and edition may go with it',
    ),
    box(FRONT.order, 'words', 'Job or work order'),
    box(FRONT.day, 'day', 'Begun, the day'),
    box(FRONT.begun, 'words', 'Begun, the time', 'As 06:20; - where it is blank'),
    box(FRONT.ended, 'words', 'Ended, day and time', 'As 2026-03-14 16:30; - where it is blank'),
    box(FRONT.plate, 'line', 'Plate on the cylinder, as read'),
    box(FRONT.people, 'words', 'Who is on the job', 'All initials of the list, a space between'),
    ...defs.seats.map(({ id, kinds }) =>
      box(
        `seat.${id}`,
        'words',
        `Number of the ${list(
          kinds.map((kind) => kind.replaceAll('_', ' ')),
          'or',
        )}`,
      ),
    ),
  ]
}

/** The foot of a hold point's page: no line of evidence has such an id. */
export const PAGE = { complete: '.complete', clear: '.clear' } as const

/** The boxes behind its register. Each is asked again until a line is blank, but for the signatures. */
export const ENDS = [
  { row: 'stop', label: 'STOP' },
  { row: 'found', label: 'Found out of the ordinary' },
  { row: 'changes', label: 'Changes, corrections, what was left out' },
] as const

export const SIGNED_BY = [
  { row: 'worker', label: 'Signed for the whole: whoever did the work' },
  { row: 'lead', label: 'Signed for the whole: lead who did none of it' },
] as const

/** The next box behind the register, in order; null once all of it is keyed. */
export function endBox(paper: PaperState): SheetBox | null {
  for (const { row, label } of ENDS) {
    for (let n = 1; ; n++) {
      const keyed = rowOf(paper, null, `${row}.${n}`)
      if (keyed === undefined) return { placed: null, row: `${row}.${n}`, takes: 'line', label }
      if (keyed.text === null) break
    }
  }
  const open = SIGNED_BY.find(({ row }) => rowOf(paper, null, row) === undefined)
  return open === undefined ? null : { placed: null, row: open.row, takes: 'line', label: open.label }
}

/** Everybody in the list on its front, as far as their initials are in the crew file. */
export function peopleOnSheet(defs: Definitions, paper: PaperState): string[] {
  const text = rowOf(paper, null, FRONT.people)?.text ?? ''
  const ids = text.toUpperCase().split(/[\s,;]+/)
  return [...new Set(ids.filter((id) => personById(defs, id) !== undefined))]
}

/** The lines of a hold point, as they stand on the permit. */
function permitBoxes(defs: Definitions, paper: PaperState, placed: PlacedStep): SheetBox[] {
  const items = itemsFor(defs, asKind(placed, 'gate'), peopleOnSheet(defs, paper))
  return copiesOf(paper, placed.id).flatMap((n): SheetBox[] => {
    const of = n === 1 ? '' : `, copy ${n} of its page`
    return [
      ...items.flatMap((item) => lineBoxes(defs, placed, item, n, of)),
      ...footBoxes(asKind(placed, 'gate'), n, of),
      { placed, row: copyKey('copy', n), takes: 'copy', label: 'Another copy of this page' },
    ]
  })
}

/** That it was complete, with the time from which the first of it is stale; and that all were out, where it fell. */
function footBoxes(placed: GateStep, copy: number, of: string): SheetBox[] {
  const { clear_words: words } = placed.step
  return [
    {
      placed,
      row: copyKey(PAGE.complete, copy),
      takes: 'line',
      label: `Complete, and the first of it is stale from${of}`,
      how: 'Time, initials, then the time it is stale from: 06:54 RO 07:22; - alone where all of it is blank',
    },
    {
      placed,
      row: copyKey(PAGE.clear, copy),
      takes: 'line',
      label: `All out and clear: ${words}${of}`,
      how: 'Time, initials, then the words as they were written; - alone where all of it is blank, as it is where nothing fell',
    },
  ]
}

/** One line of evidence; a wait has two, and what comes off says whose hand it was. */
function lineBoxes(defs: Definitions, placed: PlacedStep, item: Item, copy: number, of: string): SheetBox[] {
  const { evidence } = item
  const row = copyKey(item.key, copy)
  const label = `${itemLabel(defs, item)}${of}`
  const line: SheetBox = { placed, row, takes: 'line', label, item }
  if (evidence.kind === 'wait') {
    const begun = `${label}, begun: ${evidence.begin_words}`
    return [
      { ...line, row: beginRow(row), label: begun },
      { ...line, label: `${label}, over: ${evidence.words}` },
    ]
  }
  const how = HOW[evidence.kind]
  if (how !== undefined) return [{ ...line, how }]
  return comesOff(evidence)
    ? [{ ...line, how: 'Its number, then who took it off: 16:31 RO L-101 RO; - alone where all is blank' }]
    : [line]
}

/** How lines are keyed that say something else than a number. */
const HOW: Readonly<Partial<Record<Item['evidence']['kind'], string>>> = {
  gas: 'Time, initials, figure, number of its meter: as 06:52 RO 20.9 G-7; without a number the meter of the front counts; - alone where all is blank',
  words: 'Time, initials, then the words as they were written; - alone where all of it is blank',
  lift: 'Time, initials, then what stands there, a weight with its unit; - alone where all of it is blank',
  measured:
    'Time, initials, figure with its unit, number of the instrument; - alone where all of it is blank',
  witness: 'Time, initials, then the name as written: 06:53 ML M. L.; - alone where all of it is blank',
}

const BEGUN = '.begun'

/** The line that a wait was begun with, beside the one that ends it. */
export function beginRow(row: string): string {
  const [key = '', copy] = row.split('#')
  return copy === undefined ? `${key}${BEGUN}` : `${key}${BEGUN}#${copy}`
}

/** Whether it is the line that a wait was begun with. */
export function isBeginRow(row: string): boolean {
  return keyOfCopy(row).endsWith(BEGUN)
}

/** What lapsed is filled in again on another copy of the page: the first, and each that was said to be there. */
export function copiesOf(paper: PaperState, gate: string): number[] {
  const copies = [1]
  for (let n = 1; (rowOf(paper, gate, copyKey('copy', n))?.text ?? null) !== null; n++) copies.push(n + 1)
  return copies
}

/** Ids hold no such sign. */
export function copyKey(key: string, copy: number): string {
  return copy === 1 ? key : `${key}#${copy}`
}

/** Which copy of the page a line stands on, from 1. */
export function copyOf(row: string): number {
  return Number(/#(\d+)$/.exec(row)?.[1] ?? 1)
}

/** The key of a line of a hold point, whichever copy it stands on. */
export function keyOfCopy(row: string): string {
  return row.replace(/#\d+$/, '')
}

/** What is keyed of a step before any of its figures, and behind them. Figures themselves are asked by what stands already. */
export function stepBoxes(defs: Definitions, paper: PaperState, placed: PlacedStep): SheetBox[] {
  const { step } = placed
  const box = (row: string, takes: Takes, label: string): SheetBox => ({ placed, row, takes, label })
  const point = pointOf(placed)
  const points = point === null ? [] : [box('point', 'line', `Signature: ${list(point.roles, 'or')}`)]
  switch (step.kind) {
    case 'tell':
      return [box('done', 'done', 'Done'), ...points]
    case 'confirm':
      return [box('done', 'done', `Ticked and signed: ${step.seen}`), ...points]
    case 'observe':
      return [box('done', 'seen', 'What is ticked'), ...points]
    case 'gate':
      return permitBoxes(defs, paper, placed)
    case 'read':
      return [
        box('instrument', 'words', 'Instrument number'),
        ...placesOf(asKind(placed, 'read')).map((place) => placeBox(placed, place)),
        ...points,
      ]
    case 'judge':
      return [box('verdict', 'line', 'Worked out, or a verdict, by hand'), ...points]
    case 'decide':
      return [box('decision', 'line', 'Decided, as written'), ...points]
    case 'part':
      return []
  }
}

/** Time and initials of the line that the figures of a place stand on. */
export function placeBox(placed: PlacedStep, place: Place): SheetBox {
  const axis = place.axis === null ? '' : `, ${place.axis.label}`
  return { placed, row: place.key, takes: 'place', label: `${place.station.label}${axis}`, place }
}
