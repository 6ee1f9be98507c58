// Cross-checks of a limit book: for each characteristic, ring material and service at most one rule may apply.

import { quote } from '../lib/wording.ts'
import type { BookLimit, LimitBook } from './limit-book.ts'
import { type Finding, finding, type Path } from './lint-common.ts'

const RINGS = ['metallic', 'ptfe'] as const
const SERVICES = ['ordinary', 'light_or_high'] as const

/** All findings of one limit book, in no set order. */
export function lintLimitBook(book: LimitBook): Finding[] {
  const differential = book.light_or_high.ring_differential_above
  const found = zero(differential, ['light_or_high', 'ring_differential_above'])
  book.limits.forEach((limit, n) => {
    const path = ['limits', n]
    if (limit.at_most !== undefined) found.push(...zero(limit.at_most, [...path, 'at_most']))
    const clash = lintClash(book.limits, limit, n)
    if (clash !== undefined) found.push(clash)
  })
  return found
}

function zero(quantity: { readonly si: number; readonly text: string }, path: Path): Finding[] {
  return quantity.si > 0 ? [] : [finding(path, 'zero', `${quote(quantity.text)} is not above zero.`)]
}

/** The cases, such as `ptfe rings in ordinary service`, that a row covers. A row without rings or service covers all. */
function casesOf(limit: BookLimit): string[] {
  const rings = limit.rings === undefined ? RINGS : [limit.rings]
  const services = limit.service === undefined ? SERVICES : [limit.service]
  return rings.flatMap((ring) =>
    services.map(
      (service) => `${ring} rings in ${service === 'ordinary' ? 'ordinary' : 'light or high'} service`,
    ),
  )
}

function lintClash(limits: readonly BookLimit[], limit: BookLimit, n: number): Finding | undefined {
  const earlier = limits.slice(0, n).filter((other) => other.characteristic === limit.characteristic)
  const taken = new Set(earlier.flatMap(casesOf))
  const shared = casesOf(limit).filter((one) => taken.has(one))
  const [first] = shared
  if (first === undefined) return undefined
  const path = ['limits', n, 'characteristic']
  const word = quote(limit.characteristic)
  const where = limits.findIndex(
    (other) => other.characteristic === limit.characteristic && casesOf(other).includes(first),
  )
  if (shared.length === casesOf(limit).length) {
    const message = `This rule for ${word} can never be chosen: the rules above it cover all its cases.`
    return finding(path, 'never-chosen', message, `see limit ${where + 1} of this list`)
  }
  const message = `Limit ${where + 1} of this list and this one both give ${word} for ${first}.`
  return finding(
    path,
    'two-rules',
    message,
    'say rings or service in both, so that one rule applies to each case',
  )
}
