// The foot of a hold point's page: that it was complete and from when the first of it is stale, and that everybody was out before it was
// filled in anew. What is written there lets nobody in; it may tell that people were in too long.
import type { Definitions, PlacedStep } from './definitions.ts'
import type { GateStep, Item } from './gate.ts'
import { lifeMs } from './lapse.ts'
import { type PaperState, rowOf, type SheetRow } from './paper.ts'
import { minutesOnSheet, sheetMs } from './paper-line.ts'
import { copiesOf, copyKey, PAGE } from './paper-rows.ts'

/** What was done behind it, each time with the step it stands at. */
export interface DoneBehind {
  readonly placed: PlacedStep
  readonly times: readonly (string | null)[]
}

/** Why the page would have held, each a clause. A box that was not keyed yet says nothing. */
export function pageFaults(
  defs: Definitions,
  paper: PaperState,
  gate: GateStep,
  items: readonly Item[],
  behind: readonly DoneBehind[],
): string[] {
  const copies = copiesOf(paper, gate.id)
  return copies.flatMap((copy) => {
    const rows = items.flatMap((item) => {
      const row = rowOf(paper, gate.id, copyKey(item.key, copy))
      return row === undefined ? [] : [{ item, row }]
    })
    const isLast = copy === copies.at(-1)
    const name = copies.length === 1 ? '' : ` of copy ${copy}`
    return [
      ...completeFaults(defs, paper, gate, { copy, name, rows, isLast, behind }),
      ...clearFaults(paper, gate, { copy, name, items, isLast, behind }),
    ]
  })
}

interface Page {
  readonly copy: number
  readonly name: string
  readonly isLast: boolean
  readonly behind: readonly DoneBehind[]
}

const isEmpty = ({ text, who }: SheetRow) => text === null && who === null

function completeFaults(
  defs: Definitions,
  paper: PaperState,
  gate: GateStep,
  { copy, name, rows, isLast, behind }: Page & { readonly rows: readonly { item: Item; row: SheetRow }[] },
): string[] {
  const row = rowOf(paper, gate.id, copyKey(PAGE.complete, copy))
  if (row === undefined) return []
  if (isEmpty(row)) return [`that it was complete is signed by nobody${name}`]
  const lapses = rows.flatMap(({ item, row: { time } }) => {
    const life = lifeMs(defs, item.evidence)
    return life === null ? [] : [{ time, minutes: life / 60_000 }]
  })
  // Nothing on the page goes stale: then no time has to stand there.
  if (lapses.length === 0) return []
  const from = staleFrom(row)
  if (from === null) return [`from when it is stale does not stand there${name}`]
  const late = lapses.find(({ time, minutes }) => !((minutesOnSheet(time, from) ?? Number.NaN) <= minutes))
  const after = isLast ? firstDone(behind, (time) => (minutesOnSheet(from, time) ?? -1) >= 0) : null
  return [
    ...(late === undefined
      ? []
      : [
          `stale from ${clock(from)} is written${name}, and what was read ${clock(late.time)} is stale after ${Math.round(late.minutes)} min`,
        ]),
    ...(after === null ? [] : [`stale from ${clock(from)} by the page itself, ${after}`]),
  ]
}

/** The time written in the box, on the day that the line was signed. */
function staleFrom({ text, time }: SheetRow): string | null {
  const found = /\b(\d{1,2})[:.](\d{2})\b/.exec(text ?? '')
  if (found === null) return null
  const at = `${(found[1] ?? '').padStart(2, '0')}:${found[2]}`
  const full = time !== null && time.length >= 16 ? `${time.slice(0, 10)} ${at}` : at
  return sheetMs(full) === null ? null : full
}

/** Filled in anew only behind everybody out; and behind that nothing was done before it was filled in anew. */
function clearFaults(
  paper: PaperState,
  gate: GateStep,
  { copy, name, items, isLast, behind }: Page & { readonly items: readonly Item[] },
): string[] {
  const row = rowOf(paper, gate.id, copyKey(PAGE.clear, copy))
  if (row === undefined) return []
  const { clear_words: words } = gate.step
  if (isEmpty(row)) return isLast ? [] : [`filled in anew, and that all were out is written by nobody${name}`]
  const wrong = row.text === null || plain(row.text) !== plain(words)
  const says = wrong
    ? [`it says ${row.text ?? 'nothing'} where all out is written${name}, and asked is ${words}`]
    : []
  if (isLast) {
    const after = firstDone(behind, (time) => (minutesOnSheet(row.time, time) ?? -1) > 0)
    return [
      ...says,
      ...(after === null ? [] : [`${words} ${clock(row.time)}, ${after}: nothing was proved anew`]),
    ]
  }
  const anew = items.flatMap(({ key }) => rowOf(paper, gate.id, copyKey(key, copy + 1)) ?? [])
  const early = anew.find(
    (line) => !isEmpty(line) && !((minutesOnSheet(row.time, line.time) ?? Number.NaN) >= 0),
  )
  return [
    ...says,
    ...(early === undefined
      ? []
      : [
          `${words} ${clock(row.time)}${name}, and the next copy was begun ${clock(early.time)}: it is not told that all were out first`,
        ]),
  ]
}

function firstDone(behind: readonly DoneBehind[], is: (time: string | null) => boolean): string | null {
  for (const { placed, times } of behind)
    for (const time of times) if (is(time)) return `${placed.number} ${placed.step.title} ${clock(time)}`
  return null
}

const clock = (time: string | null) => time?.slice(-5) ?? 'without a time'

const plain = (text: string) => text.trim().toLowerCase().replace(/\s+/g, ' ')
