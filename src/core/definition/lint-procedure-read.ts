// Cross-checks of a reading: instrument seat, stations and axes, repeats, and the range that is plausible.

import { axesOf } from '../drawing/kinds.ts'
import { a, list, nearest, quote } from '../lib/wording.ts'
import { FACT_TYPES } from '../rules/machine-facts.ts'
import { aKind, KIND_NAME, type QuantityKind, unitsOf } from '../units/index.ts'
import type { WrittenQuantity } from './common.ts'
import { DIFFERENCE_OF, READS } from './instruments.ts'
import { type Finding, finding, type Path, repeatedIds, unknownId, warning } from './lint-common.ts'
import { lintDrawing } from './lint-procedure-drawing.ts'
import type { Axis, Procedure, Seat, StepOf } from './procedure.ts'

type Read = StepOf<'read'>

/** Findings of one reading; `base` is its path. */
export function lintRead(procedure: Procedure, read: Read, base: Path): Finding[] {
  const seat = procedure.seats.find((s) => s.id === read.with)
  const seatless = unknownId(
    [...base, 'with'],
    read.with,
    'seat',
    procedure.seats.map((s) => s.id),
  )
  return [
    ...(seat === undefined ? [seatless] : [...lintSeat(read, seat, base), ...lintHow(read, seat, base)]),
    ...lintStations(read, base),
    ...lintAxes(read, base),
    ...lintDrawing(read, base),
    ...lintRepeats(read, base),
    ...lintPlausible(read, base),
  ]
}

function lintSeat(read: Read, seat: Seat, base: Path): Finding[] {
  const wrong = seat.kinds.filter((kind) => !READS[read.quantity].some((one) => one === kind))
  if (wrong.length === 0) return []
  const message = `The seat ${quote(seat.id)} may take ${a(list(wrong, 'or'))}, which does not read a ${read.quantity}.`
  const hint = `for a ${read.quantity} the kinds are ${list(READS[read.quantity])}`
  return [finding([...base, 'with'], 'wrong-seat', message, hint)]
}

/** The handling words follow the instrument kind (decision 10), so each kind the seat allows needs its own. */
function lintHow(read: Read, seat: Seat, base: Path): Finding[] {
  const path = [...base, 'how']
  const given = Object.keys(read.how)
  const absent = seat.kinds.filter((kind) => !given.includes(kind))
  const strange = given.filter((kind) => !seat.kinds.some((known) => known === kind))
  const meant = strange.map((kind) => nearest(kind, absent))
  const found = strange.map((kind, n): Finding => {
    const hint = meant[n] === undefined ? `the seat takes ${list(seat.kinds)}` : `did you mean ${meant[n]}?`
    const message = `${quote(kind)} is not a kind that the seat ${quote(seat.id)} takes.`
    return { ...finding([...path, kind], 'unknown-kind', message, hint), atKey: true }
  })
  const missing = absent.filter((kind) => !meant.includes(kind))
  if (missing.length === 0) return found
  const message = `The seat ${quote(seat.id)} takes ${a(list(missing, 'or'))}, and how has no words for it.`
  return [
    ...found,
    { ...finding(path, 'no-words', message, 'say how to handle each kind the seat allows'), atKey: true },
  ]
}

function lintStations(read: Read, base: Path): Finding[] {
  const found = repeatedIds([...base, 'stations'], read.stations, 'station')
  read.stations.forEach((station, n) => {
    const twin = read.stations.slice(0, n).find((other) => other.at === station.at)
    if (twin === undefined) return
    const message = `${quote(station.id)} is at ${station.at}, the same place as ${quote(twin.id)}.`
    found.push(finding([...base, 'stations', n, 'at'], 'same-place', message))
  })
  return found
}

function lintAxes(read: Read, base: Path): Finding[] {
  const axes = read.axes ?? []
  const found = repeatedIds([...base, 'axes'], axes, 'axis')
  const isDrawn = read.drawing !== 'none' && axesOf(read.drawing) !== 'no'
  axes.forEach((axis, n) => {
    const path = [...base, 'axes', n]
    const twin = axes.slice(0, n).find((other) => ends(other) === ends(axis))
    if (twin !== undefined) {
      const message = `${quote(axis.id)} has the same ends as ${quote(twin.id)}.`
      found.push(finding([...path, 'from'], 'same-place', message))
    }
    if (isDrawn && Math.abs(axis.from - axis.to) !== 6) {
      const message = `${quote(axis.id)} runs from ${axis.from} to ${axis.to} o'clock, which is not straight across.`
      found.push(
        warning([...path, 'to'], 'not-across', message, 'the ends of a diameter are six hours apart'),
      )
    }
  })
  return found
}

function ends(axis: Axis): string {
  return [axis.from, axis.to].sort((a, b) => a - b).join(' ')
}

function lintRepeats(read: Read, base: Path): Finding[] {
  const path = [...base, 'repeats']
  const found: Finding[] = []
  const { at_least, at_most, within } = read.repeats
  if (at_least > at_most) {
    const message = `at_least is ${at_least}, more than at_most, which is ${at_most}.`
    found.push(finding([...path, 'at_least'], 'wrong-order', message))
  }
  const wanted = DIFFERENCE_OF[read.quantity]
  if (within.kind === wanted && within.si <= 0) {
    const message = `${quote(within.text)} is not above zero, and no two readings agree that well.`
    found.push(finding([...path, 'within'], 'zero', message))
  }
  if (within.kind !== wanted) {
    const message = `${quote(within.text)} is not a ${wanted.replace('-', ' ')}, and ${quote(read.id)} reads a ${read.quantity}.`
    const units = list(
      unitsOf(wanted).map((unit) => unit.symbol),
      'or',
    )
    found.push(finding([...path, 'within'], 'wrong-quantity', message, `its units: ${units}`))
  }
  return found
}

function lintPlausible(read: Read, base: Path): Finding[] {
  const { plausible } = read
  const path = [...base, 'plausible']
  if (plausible.from === 'range') return lintRange(read, plausible, path)
  if (plausible.from === 'record') return lintRecord(read, plausible, path)
  if (read.quantity !== 'length') {
    const message = `${quote(plausible.from)} does not fit ${quote(read.id)}, which reads a ${KIND_NAME[read.quantity]}.`
    const hint = `a ${KIND_NAME[read.quantity]} is plausible from range or record`
    return [finding([...path, 'from'], 'wrong-quantity', message, hint)]
  }
  return lintWindow(plausible, path)
}

function lintWindow(
  { below, above }: { readonly below: WrittenQuantity; readonly above: WrittenQuantity },
  path: Path,
): Finding[] {
  if (below.si + above.si > 0) return []
  const message = `below and above are both ${quote(below.text)}, so every reading would be doubted.`
  return [finding([...path, 'below'], 'zero', message, 'say how far off a reading may be')]
}

type Plausible<F extends Read['plausible']['from']> = Extract<Read['plausible'], { from: F }>

function lintRange(read: Read, { least, most }: Plausible<'range'>, path: Path): Finding[] {
  const wrong = (['least', 'most'] as const).filter((key) => ({ least, most })[key].kind !== read.quantity)
  if (wrong.length > 0)
    return wrong.map((key) => wrongKind(read, { least, most }[key], read.quantity, [...path, key]))
  if (least.si < most.si) return []
  const message = `least is ${quote(least.text)}, not below most, which is ${quote(most.text)}.`
  return [finding([...path, 'least'], 'wrong-order', message)]
}

function lintRecord(read: Read, plausible: Plausible<'record'>, path: Path): Finding[] {
  const fact = FACT_TYPES.get(`machine.${plausible.of}`)
  if (fact?.is !== 'one' || fact.of !== read.quantity) {
    const known = [...FACT_TYPES].flatMap(([name, type]) =>
      type.is === 'one' && type.of === read.quantity ? [name.slice('machine.'.length)] : [],
    )
    const near = nearest(plausible.of, known)
    const message = `${quote(plausible.of)} is no ${KIND_NAME[read.quantity]} of the machine record.`
    const hint = near === undefined ? `there are: ${list(known)}` : `did you mean ${near}?`
    return [finding([...path, 'of'], 'unknown-fact', message, hint)]
  }
  const wanted = DIFFERENCE_OF[read.quantity]
  const wrong = (['below', 'above'] as const).filter((key) => plausible[key].kind !== wanted)
  if (wrong.length > 0) return wrong.map((key) => wrongKind(read, plausible[key], wanted, [...path, key]))
  return lintWindow(plausible, path)
}

function wrongKind(read: Read, given: WrittenQuantity, wanted: QuantityKind, path: Path): Finding {
  const message = `${quote(given.text)} is not ${aKind(wanted)}, and ${quote(read.id)} reads ${aKind(read.quantity)}.`
  return finding(path, 'wrong-quantity', message)
}
