// When something that holds for a time only ran out, a gas test first of all: each fall with its entry, who was signed on then, and when
// people were keyed clear and the hold point was complete again. Whoever was behind it no record tells.
import { CAUSES } from '../job/close-causes.ts'
import { stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { gatesOf, itemByKey } from '../job/gate.ts'
import { lapsedText } from '../job/lapsed-at.ts'
import { list } from '../lib/wording.ts'
import { type Block, row } from '../sheet/block.ts'
import {
  asItem,
  entryLine,
  gasNamed,
  heading,
  lineName,
  linesWhere,
  notTold,
  type OnRecord,
  said,
} from './asked-entries.ts'
import { isFall } from './behind.ts'
import { count, type Move, movesOf, named, when, whoIn } from './look.ts'

type Fall = { readonly entry: Extract<Entry, { type: 'gate.closed' }>; readonly move: Move }

const ABOUT_GAS = /\b(?:gas|air|oxygen|o2|lel|h2s|atmosphere)\b/
const reasonOf = ({ why, cause }: Fall['entry']) => why ?? CAUSES[cause]

/** Of the gas test alone where that is asked about; of all that ran out, where it is not. Text comes in small letters. */
export function lapsesTold(record: OnRecord, asked: string): Block[] {
  const { defs } = record
  const isGas = ABOUT_GAS.test(asked)
  const falls = movesOf(record.entries).flatMap((move): Fall[] => {
    const { entry } = move
    if (entry.type !== 'gate.closed' || entry.cause !== 'lapsed') return []
    return !isGas || ABOUT_GAS.test(reasonOf(entry)) ? [{ entry, move }] : []
  })
  const what = isGas ? 'the gas test' : 'what was proved'
  if (falls.length === 0)
    return [
      heading(`No hold point fell by this log because ${what} was past its life`),
      said('Each figure that was keyed, with its time: when was the gas tested.'),
    ]
  const gates = [...new Set(falls.map(({ entry }) => entry.step))]
  return [
    heading(
      `When ${what} was past its life, by this log: ${falls.length} ${falls.length === 1 ? 'fall' : 'falls'}`,
    ),
    ...gates.map((gate): Block => {
      const own = falls.filter(({ entry }) => entry.step === gate)
      return {
        margin: '',
        rows: [
          row(named(stepById(defs, gate)), 'strong'),
          ...own.map((fall) => row(`  ${fallLine(record, fall)}`)),
        ],
      }
    }),
    ...unclear(record),
    said('Who stood behind one meanwhile the log does not tell.'),
  ]
}

/** What the list has of hold points behind which work went on, or that nobody keyed clear. */
function unclear({ review }: OnRecord): Block[] {
  const all = review.exceptions.filter(({ kind }) => kind === 'gate' || kind === 'gate-after')
  return all.length === 0
    ? []
    : [said('Not seen to, for whatever cause; a number opens it:'), ...all.map(asItem)]
}

function fallLine(record: OnRecord, { entry, move }: Fall): string {
  const { before } = move
  const lapsed = lapsedText(record.defs, move.after, entry)
  const fell =
    lapsed === null
      ? entryLine(record, entry, `fell: ${reasonOf(entry)}`)
      : `${lapsed}, ${whoIn(entry)}: fell: ${reasonOf(entry)} (entry ${entry.seq})`
  const others = before.people.filter((id) => id !== before.doer)
  const on =
    before.people.length === 0
      ? 'nobody signed on'
      : `signed on: ${list(before.people)}${before.doer === null ? '' : `, ${before.doer} at the keys`}${others.length === 0 ? ', no other' : ''}`
  return `${fell}; ${on}; ${afterIt(record, entry)}.`
}

/** What came of it: the next entries of the same hold point. */
function afterIt({ entries }: OnRecord, { seq, step }: Fall['entry']): string {
  const later = entries.filter((e) => e.seq > seq && 'step' in e && e.step === step)
  const again = later.find((e) => e.type === 'gate.opened')
  const clear = later.find((e) => e.type === 'people.clear' && (again === undefined || e.seq < again.seq))
  const at = (e: Entry) => `${when({ entries }, e)} (entry ${e.seq})`
  return [
    clear === undefined ? 'NOBODY KEYED CLEAR' : `keyed clear ${at(clear)}`,
    again === undefined ? 'not complete again' : `complete again ${at(again)}`,
  ].join(', ')
}

/** Of each gas at each place how often it was keyed, and the least and the most of it. */
function spans({ defs, entries }: OnRecord, gas: RegExp | undefined): string[] {
  const read = new Map<string, { readonly shown: string; readonly si: number; readonly seq: number }[]>()
  for (const e of entries) {
    if ((e.type !== 'evidence.given' && e.type !== 'evidence.failed') || e.reading === undefined) continue
    const gate = gatesOf(defs).find(({ id }) => id === e.step)
    if (gate === undefined || itemByKey(defs, gate, e.item)?.evidence.kind !== 'gas') continue
    const name = lineName(defs, e)
    if (gas?.test(name.toLowerCase()) === false) continue
    read.set(name, [...(read.get(name) ?? []), { shown: e.shown, si: e.reading.si, seq: e.seq }])
  }
  return [...read].map(([name, all]) => {
    const sorted = all.toSorted((a, b) => a.si - b.si)
    const [least, most] = [sorted[0], sorted.at(-1)]
    const text = (one: (typeof all)[number] | undefined) => `${one?.shown ?? ''} (entry ${one?.seq ?? ''})`
    return least?.si === most?.si
      ? `${name}: ${count(all.length, 'figure')}, ${all.length === 1 ? '' : 'all '}${text(least)}.`
      : `${name}: ${count(all.length, 'figure')}, from ${text(least)} to ${text(most)}.`
  })
}

/** Every figure of a gas limit that was keyed, hold point by hold point, and what each fell by between; failed ones too. */
export function gasTold(record: OnRecord, asked = ''): Block[] {
  const gas = gasNamed(asked)
  const { defs } = record
  const blocks = gatesOf(defs).flatMap((gate): Block[] => {
    const isGas = (entry: Entry) =>
      (entry.type === 'evidence.given' || entry.type === 'evidence.failed') &&
      entry.step === gate.id &&
      itemByKey(defs, gate, entry.item)?.evidence.kind === 'gas' &&
      (gas?.test(lineName(defs, entry).toLowerCase()) ?? true)
    if (!record.entries.some(isGas)) return []
    const lines = linesWhere(record, (move) => isGas(move.entry) || isFall(gate, move))
    return [{ margin: '', rows: [row(named(gate), 'strong'), ...lines.map((text) => row(`  ${text}`))] }]
  })
  if (blocks.length === 0)
    return [
      notTold(`of any ${gas === undefined ? 'gas test' : 'test of that gas'}: no figure of one is in it`),
    ]
  return [
    heading('Gas tests as they were keyed, hold point by hold point, and what each fell by'),
    said(...spans(record, gas)),
    ...blocks,
    said('None of them tells what the air is like now.'),
  ]
}
