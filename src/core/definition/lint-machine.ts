// Cross-checks of one machine record: sizes that contradict each other, and limits that could not be applied as written.

import { quote } from '../lib/wording.ts'
import { aKind } from '../units/index.ts'
import { characteristicOf } from './characteristics.ts'
import type { WrittenQuantity } from './common.ts'
import {
  type Finding,
  finding,
  lintLongLife,
  type Path,
  repeatedIds,
  repeats,
  warning,
} from './lint-common.ts'
import { lintGasLimit } from './lint-machine-gas.ts'
import { lintWholeCompressor } from './lint-whole-compressor.ts'
import type { Machine } from './machine.ts'

/** Share by which ring travel may pass the stroke before it looks mistyped. Common practice, no source. */
const MOST_RING_OVERRUN = 0.2

/** All findings of one machine record, in no set order. */
export function lintMachine(machine: Machine): Finding[] {
  const { site } = machine
  return [
    ...lintZeros(machine),
    ...lintBore(machine),
    ...lintRingTravel(machine),
    ...lintLimits(machine),
    ...machine.limits.flatMap((limit, n) => lintBound(limit, ['limits', n])),
    ...lintCrossed(machine),
    ...lintParts(machine),
    ...lintWholeCompressor(machine),
    ...repeatedIds(['site', 'isolation_points'], site.isolation_points, 'isolation point'),
    ...lintGasLife(machine),
    ...repeatedIds(['site', 'gas', 'limits'], site.gas.limits, 'gas limit'),
    ...site.gas.limits.flatMap((limit, n) => lintGasLimit(limit, ['site', 'gas', 'limits', n])),
    ...share(machine.fallback?.monitor_from, ['fallback', 'monitor_from']),
  ]
}

function lintZeros(machine: Machine): Finding[] {
  const { bore, site } = machine
  const must: [WrittenQuantity | undefined, Path][] = [
    [bore.nominal, ['bore', 'nominal']],
    [bore.stroke, ['bore', 'stroke']],
    [bore.as_bored?.diameter, ['bore', 'as_bored', 'diameter']],
    [site.barometer, ['site', 'barometer']],
    [site.gas.life, ['site', 'gas', 'life']],
    [site.gas.lel_basis.lower_limit, ['site', 'gas', 'lel_basis', 'lower_limit']],
  ]
  return must.flatMap(([quantity, path]) => (quantity === undefined ? [] : aboveZero(quantity, path)))
}

function aboveZero(quantity: WrittenQuantity, path: Path): Finding[] {
  if (quantity.si > 0) return []
  return [finding(path, 'zero', `${quote(quantity.text)} is not above zero.`)]
}

function lintBore(machine: Machine): Finding[] {
  const { nominal, counterbore } = machine.bore
  const found: Finding[] = []
  if (counterbore !== undefined && counterbore.si <= nominal.si) {
    const message = `The counterbore ${quote(counterbore.text)} is not larger than the bore, ${quote(nominal.text)}.`
    found.push(finding(['bore', 'counterbore'], 'counterbore', message, 'a counterbore is larger by design'))
  }
  machine.limits.forEach((limit, n) => {
    const path = ['limits', n, 'at_most']
    if (limit.at_most?.kind !== 'length') return
    if (limit.characteristic === 'largest-diameter') {
      if (limit.at_most.si >= nominal.si) return
      const message = `The largest diameter ${quote(limit.at_most.text)} is below the nominal bore, ${quote(nominal.text)}.`
      found.push(finding(path, 'contradiction', message))
    } else if (limit.at_most.si >= nominal.si) {
      const message = `${quote(limit.at_most.text)} for ${limit.characteristic} is as large as the bore itself.`
      found.push(finding(path, 'contradiction', message, 'this limit is a difference, not a diameter'))
    }
  })
  return found
}

/** A limit bounds the way its characteristic does, in a unit of what it bounds, and above zero. */
function lintBound(limit: Machine['limits'][number], path: Path): Finding[] {
  const { kind, bound } = characteristicOf(limit.characteristic)
  const [key, other] =
    bound === 'at-most' ? (['at_most', 'at_least'] as const) : (['at_least', 'at_most'] as const)
  const found: Finding[] = []
  if (limit[other] !== undefined) {
    const message = `${quote(limit.characteristic)} bounds from ${bound === 'at-most' ? 'above' : 'below'}, so ${other} says nothing about it.`
    found.push(
      finding([...path, other], 'wrong-bound', message, `write ${key}, or name the other characteristic`),
    )
  }
  const given = limit[key]
  if (given === undefined) {
    if (limit[other] !== undefined) return found
    const message = `The limit for ${quote(limit.characteristic)} has no figure.`
    return [...found, finding([...path, 'characteristic'], 'no-figure', message, `add ${key}`)]
  }
  if (given.kind !== kind) {
    const message = `${quote(given.text)} is ${aKind(given.kind)}, and ${quote(limit.characteristic)} is ${aKind(kind)}.`
    return [...found, finding([...path, key], 'wrong-quantity', message)]
  }
  return [...found, ...aboveZero(given, [...path, key])]
}

/** Pairs of characteristics of which one bounds from below and the other from above. */
function lintCrossed(machine: Machine): Finding[] {
  return machine.limits.flatMap((limit, n) => {
    if (limit.at_least === undefined) return []
    const upper = machine.limits.find((one) => `${one.characteristic}-least` === limit.characteristic)
    if (upper?.at_most === undefined || limit.at_least.si < upper.at_most.si) return []
    const message = `${quote(limit.at_least.text)} is not below ${quote(upper.at_most.text)}, the most for ${upper.characteristic}.`
    return [finding(['limits', n, 'at_least'], 'contradiction', message)]
  })
}

/** Hollow or solid decides how a piston is handled: figures that contradict one another are said at once. */
function lintParts(machine: Machine): Finding[] {
  const { piston, rings, rod, overhauls = [], bore } = machine
  const found: Finding[] = []
  if (piston?.construction === 'solid' && (piston.cavities ?? 0) > 0) {
    const message = `A solid piston has no cavities, and ${piston.cavities} are on record.`
    found.push(
      finding(
        ['piston', 'cavities'],
        'contradiction',
        message,
        'correct one of the two; until then: unknown',
      ),
    )
  }
  if (piston?.diameter !== undefined && piston.diameter.si >= bore.nominal.si) {
    const message = `The piston ${quote(piston.diameter.text)} is not smaller than the bore, ${quote(bore.nominal.text)}.`
    found.push(finding(['piston', 'diameter'], 'contradiction', message))
  }
  if (rod !== undefined && rod.diameter.si >= bore.nominal.si) {
    const message = `The rod ${quote(rod.diameter.text)} is not smaller than the bore, ${quote(bore.nominal.text)}.`
    found.push(finding(['rod', 'diameter'], 'contradiction', message))
  }
  const isMetal = rings?.material === 'cast-iron' || rings?.material === 'bronze'
  if (rings !== undefined && isMetal !== (bore.rings === 'metallic')) {
    const message = `The rings are ${rings.material} here, and ${bore.rings} under bore.`
    found.push(finding(['rings', 'material'], 'contradiction', message))
  }
  overhauls.forEach((one, n) => {
    const before = overhauls[n - 1]
    if (before === undefined) return
    if (one.day > before.day && one.hours.si > before.hours.si) return
    const message = `The overhaul of ${quote(one.day)} does not come after that of ${quote(before.day)}, in days and in hours.`
    found.push(finding(['overhauls', n, 'day'], 'wrong-order', message, 'the latest stands last'))
  })
  return found
}

/** Each ring sweeps one stroke; the ends of ring travel also span the ring pack, so travel is the stroke or a little more. */
function lintRingTravel(machine: Machine): Finding[] {
  const { ring_travel: travel, stroke } = machine.bore
  const length = travel.to.si - travel.from.si
  const path = ['bore', 'ring_travel', 'to']
  if (length <= 0) {
    const message = `Ring travel ends at ${quote(travel.to.text)}, not beyond where it starts, ${quote(travel.from.text)}.`
    return [finding(path, 'wrong-order', message)]
  }
  const longer = length > stroke.si * (1 + MOST_RING_OVERRUN)
  // A hair is allowed for figures rounded in another unit.
  const shorter = length < stroke.si * (1 - 1e-6)
  if (!longer && !shorter) return []
  const message = longer
    ? `Ring travel to ${quote(travel.to.text)} is more than a fifth longer than the stroke, ${quote(stroke.text)}.`
    : `Ring travel to ${quote(travel.to.text)} is shorter than the stroke, ${quote(stroke.text)}.`
  return [warning(path, 'check-ring-travel', message, 'check both ends and the stroke against the drawing')]
}

function lintLimits(machine: Machine): Finding[] {
  const names = machine.limits.map((limit) => limit.characteristic)
  const twice = repeats(names).map(({ at, first }) => {
    const message = `${quote(names[at] ?? '')} already has limit ${first + 1} in this list.`
    return finding(['limits', at, 'characteristic'], 'two-limits', message, 'keep the one that is in force')
  })
  return [
    ...twice,
    ...machine.limits.flatMap((limit, n) => share(limit.monitor_from, ['limits', n, 'monitor_from'])),
  ]
}

function share(quantity: WrittenQuantity | undefined, path: Path): Finding[] {
  if (quantity === undefined || (quantity.si >= 0 && quantity.si <= 1)) return []
  return [finding(path, 'share', `${quote(quantity.text)} is not a share of the limit, from 0 % to 100 %.`)]
}

function lintGasLife(machine: Machine): Finding[] {
  const { life, warn_before } = machine.site.gas
  const long = lintLongLife(life, ['site', 'gas', 'life'])
  if (life.si === 0 || warn_before.si < life.si) return long
  const message = `${quote(warn_before.text)} before the end is not within the life of a gas test, ${quote(life.text)}.`
  return [...long, finding(['site', 'gas', 'warn_before'], 'wrong-order', message)]
}
