// All machines in a row each: which of them comes to its limit first, and of which nobody can tell. Two narrow tables, as one with
// everything in it would be too wide for a terminal of 80 columns and fall apart into lines.
import { type Column, type Section, table } from '../report/paper.ts'
import { hoursText } from '../units/index.ts'
import { type History, type MachineHistory, nearestFirst } from './history.ts'

const COLUMNS: readonly Column[] = [
  { head: 'machine', wide: 3 },
  { head: 'jobs', right: true, wide: 1 },
  { head: 'last job', wide: 3 },
  { head: 'ended', wide: 4 },
  { head: 'h left', right: true, wide: 2 },
  { head: 'after', right: true, wide: 2 },
]

const NEAREST: readonly Column[] = [
  { head: 'machine', wide: 3 },
  { head: 'place', wide: 8 },
  { head: 'newer', right: true, wide: 1 },
]

/** The machine whose hours are fewest first, those that nobody can tell of before all: they are the ones to look into. */
export function overviewSection({ machines }: History): Section[] {
  if (machines.length < 2) return []
  const all = [...machines].sort(inOrder)
  const whichIsNearest = all.map(placeRow).filter(([, place, newer]) => place !== NOT_TOLD || newer !== '0')
  return [
    {
      id: 'overview',
      title: 'All machines, the nearest to its limit first',
      pieces: [
        ...table(
          'Hours left after the last hours that were read; what cannot be told stands first',
          COLUMNS,
          all.map(rowOf),
        ),
        ...table(
          'Its place nearest to a limit, and how many have newer readings that are in no rate',
          NEAREST,
          whichIsNearest,
        ),
      ],
    },
  ]
}

const NOT_TOLD = 'not told'

/** The place whose hours left are fewest; where none can be told, none. */
function nearest({ trends }: MachineHistory) {
  return [...trends].filter(({ left }) => left?.ok === true).sort(nearestFirst)[0]
}

function earliestOf(one: MachineHistory): number {
  const place = nearest(one)
  return place?.left?.ok === true ? place.left.value.earliest : Number.NEGATIVE_INFINITY
}

function inOrder(one: MachineHistory, other: MachineHistory): number {
  const [a, b] = [earliestOf(one), earliestOf(other)]
  return a === b ? one.machine.localeCompare(other.machine, 'en') : a < b ? -1 : 1
}

function rowOf(one: MachineHistory): string[] {
  const from = nearest(one)?.readings.at(-1)?.hours
  const hours = earliestOf(one)
  return [
    one.machine,
    String(one.jobs),
    one.last.at.slice(0, 10),
    shortEnd(one.last),
    Number.isFinite(hours) ? `${Math.floor(hours)}` : NOT_TOLD,
    from === undefined ? '-' : `${hoursText(from)} h`,
  ]
}

/** As left where that is told apart; `MONITOR, not all` where something was not measured again: whole it stands with its machine. */
function shortEnd({ outcome, asLeft }: MachineHistory['last']): string {
  if (asLeft === null) return outcome ?? ''
  const [word = '', ...more] = asLeft.split(', and ')
  return more.length === 0 ? word : `${word}, not all`
}

function placeRow(one: MachineHistory): string[] {
  const newer = one.trends.filter(({ newest }) => newest !== null).length
  return [one.machine, nearest(one)?.name ?? NOT_TOLD, String(newer)]
}
