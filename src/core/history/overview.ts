// All machines in a row each: which of them comes to its limit first, and of which nobody can tell.
import { type Column, type Section, table } from '../report/paper.ts'
import { hoursText } from '../units/index.ts'
import { endOf, figures } from './figures.ts'
import { type History, type MachineHistory, nearestFirst } from './history.ts'

const COLUMNS: readonly Column[] = [
  { head: 'machine', wide: 3 },
  { head: 'jobs', right: true, wide: 1 },
  { head: 'last job', wide: 3 },
  { head: 'nearest to its limit', wide: 5 },
  { head: 'in 1000 h', right: true, wide: 3 },
  { head: 'hours left', right: true, wide: 2 },
  { head: 'told from', right: true, wide: 2 },
  { head: 'newer, without a rate', right: true, wide: 2 },
]

/** The machine whose hours are fewest first, those that nobody can tell of before all: they are the ones to look into. */
export function overviewSection({ machines }: History): Section[] {
  if (machines.length < 2) return []
  return [
    {
      id: 'overview',
      title: 'All machines, the nearest to its limit first',
      pieces: table('What cannot be told stands before all', COLUMNS, [...machines].sort(inOrder).map(rowOf)),
    },
  ]
}

/** The place whose hours left are fewest; where none can be told, none. */
function nearest({ trends }: MachineHistory) {
  return [...trends].filter(({ left }) => left?.ok === true).sort(nearestFirst)[0]
}

function inOrder(one: MachineHistory, other: MachineHistory): number {
  const left = (of: MachineHistory) => {
    const place = nearest(of)
    return place?.left?.ok === true ? place.left.value.earliest : Number.NEGATIVE_INFINITY
  }
  const [a, b] = [left(one), left(other)]
  return a === b ? one.machine.localeCompare(other.machine, 'en') : a < b ? -1 : 1
}

function rowOf(one: MachineHistory): string[] {
  const place = nearest(one)
  const newer = one.trends.filter(({ newest }) => newest !== null).length
  const [, , rate = '', , left = ''] = place === undefined ? [] : figures(one, place)
  const from = place?.readings.at(-1)?.hours
  return [
    one.machine,
    String(one.jobs),
    `${one.last.at.slice(0, 10)} ${endOf(one.last)}`,
    place === undefined ? 'not told' : place.name,
    place === undefined ? 'not told' : `${rate} ${one.unit}`,
    place === undefined ? 'not told' : left,
    from === undefined ? 'no hours' : `${hoursText(from)} h`,
    newer === 0 ? '0' : `${newer} ${newer === 1 ? 'place' : 'places'}`,
  ]
}
