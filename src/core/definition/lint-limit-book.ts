// Cross-checks of a limit book: for each characteristic, ring material and service at most one rule may apply.

import { quote } from '../lib/wording.ts'
import { aKind } from '../units/index.ts'
import { characteristicOf } from './characteristics.ts'
import { type BookLimit, type LimitBook, PISTON_MATERIALS, RING_MATERIALS } from './limit-book.ts'
import { type Finding, finding, type Path } from './lint-common.ts'

const RINGS = ['metallic', 'ptfe'] as const
const SERVICES = ['ordinary', 'light_or_high'] as const

/** All findings of one limit book, in no set order. */
export function lintLimitBook(book: LimitBook): Finding[] {
  const differential = book.light_or_high?.ring_differential_above
  const found =
    differential === undefined
      ? lintService(book)
      : zero(differential, ['light_or_high', 'ring_differential_above'])
  book.limits.forEach((limit, n) => {
    const path = ['limits', n]
    found.push(...lintFigure(limit, path))
    for (const key of ['at_most', 'at_least', 'plus', 'up_to_bore'] as const) {
      const figure = limit[key]
      if (figure !== undefined) found.push(...zero(figure, [...path, key]))
    }
    const clash = lintClash(book.limits, limit, n)
    if (clash !== undefined) found.push(clash)
  })
  return found
}

/** A rule for one service in a book that does not say which service is which would never apply. */
function lintService({ limits }: LimitBook): Finding[] {
  return limits.flatMap((limit, n) => {
    if (limit.service === undefined) return []
    const message = `${quote(limit.characteristic)} is for ${limit.service} service, and the book does not say which that is.`
    return [finding(['limits', n, 'service'], 'no-service-rule', message, 'add light_or_high: with its page')]
  })
}

function zero(quantity: { readonly si: number; readonly text: string }, path: Path): Finding[] {
  return quantity.si > 0 ? [] : [finding(path, 'zero', `${quote(quantity.text)} is not above zero.`)]
}

/**
 * The cases, such as `ptfe rings in ordinary service`, that a row covers. A row that leaves a condition out covers all it
 * could be. Materials are only told apart where some row of `about` asks for them.
 */
function casesOf(limit: BookLimit, about: readonly BookLimit[]): string[] {
  const rings = limit.rings === undefined ? RINGS : [limit.rings]
  const services = limit.service === undefined ? SERVICES : [limit.service]
  const cases = rings.flatMap((ring) =>
    services.map(
      (service) => `${ring} rings in ${service === 'ordinary' ? 'ordinary' : 'light or high'} service`,
    ),
  )
  return MATERIALS.reduce<string[]>((known, { key, words, say }) => {
    if (!about.some((row) => row[key] !== undefined)) return known
    const own = limit[key]
    const here: readonly string[] = own === undefined ? words : [own]
    return known.flatMap((one) => here.map((word) => `${one}, ${say} of ${word}`))
  }, cases)
}

const MATERIALS = [
  { key: 'ring_material', words: RING_MATERIALS, say: 'rings' },
  { key: 'piston_material', words: PISTON_MATERIALS, say: 'a piston' },
] as const

function lintClash(limits: readonly BookLimit[], limit: BookLimit, n: number): Finding | undefined {
  const about = limits.filter((other) => other.characteristic === limit.characteristic)
  const cases = (row: BookLimit) => casesOf(row, about)
  const earlier = about.filter((other) => limits.indexOf(other) < n)
  const taken = new Set(earlier.flatMap(cases))
  const shared = cases(limit).filter((one) => taken.has(one))
  const [first] = shared
  if (first === undefined) return undefined
  const path = ['limits', n, 'characteristic']
  const word = quote(limit.characteristic)
  const where = limits.findIndex(
    (other) => other.characteristic === limit.characteristic && cases(other).includes(first),
  )
  if (shared.length === cases(limit).length) {
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

/** A rule is a share of a size, or a fixed figure of the kind of what it bounds: one of the two, and whole. */
function lintFigure(limit: BookLimit, path: Path): Finding[] {
  const { kind } = characteristicOf(limit.characteristic)
  const where = [...path, 'characteristic']
  const say = (code: string, message: string, hint: string) => [finding(where, code, message, hint)]
  if (
    limit.is !== undefined &&
    (limit.ratio !== undefined || limit.of !== undefined || limit.plus !== undefined)
  )
    return say(
      'two-figures',
      `The rule for ${quote(limit.characteristic)} has a fixed figure and a ratio.`,
      'keep one',
    )
  if (limit.is !== undefined) {
    if (limit.is.kind === kind) return zero(limit.is, [...path, 'is'])
    const message = `${quote(limit.is.text)} is ${aKind(limit.is.kind)}, and ${quote(limit.characteristic)} is ${aKind(kind)}.`
    return [finding([...path, 'is'], 'wrong-quantity', message)]
  }
  if (limit.ratio === undefined || limit.of === undefined)
    return say(
      'no-figure',
      `The rule for ${quote(limit.characteristic)} gives no figure.`,
      'add ratio and of, or a fixed figure with is',
    )
  if (kind === 'length') return []
  const message = `${quote(limit.characteristic)} is ${aKind(kind)}, and a ratio gives a length.`
  return say('wrong-quantity', message, 'give a fixed figure with is')
}
