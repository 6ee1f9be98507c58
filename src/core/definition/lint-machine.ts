// Cross-checks of one machine record: sizes that contradict each other, and limits that could not be applied as written.

import { quote } from '../lib/wording.ts'
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
    ...machine.limits.map((l, n): [WrittenQuantity, Path] => [l.at_most, ['limits', n, 'at_most']]),
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
