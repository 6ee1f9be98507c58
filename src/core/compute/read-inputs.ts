// `bore=9.500 in` and its like become the inputs of a computation, or are refused in one sentence about the word keyed.

import { ok, type Result, refuse } from '../lib/result.ts'
import { list, nearest, quote } from '../lib/wording.ts'
import { findUnit, fromSi, parseEntry, type QuantityKind } from '../units/index.ts'
import type { Computation, Parameter, Value } from './computation.ts'
import { faultOf, type Inputs, isSigned } from './take.ts'

export interface ReadInputs {
  readonly values: Inputs
  /** Inputs keyed without a unit, with the unit that was taken for them. */
  readonly assumed: Readonly<Record<string, string>>
}

/** A value and the unit that was taken where none was keyed. */
interface Keyed {
  readonly value: Value
  readonly assumed?: string
}

/**
 * Reads `key=value` words. A word without `=` goes on from the one before, so `bore=9.500 in` need not be quoted.
 * A list is parted by spaces or by a comma and a space; its unit stands with each figure or once at the end.
 *
 * Refusal codes: no-key, key-twice, unknown-key, missing-keys; for a value those of `parseEntry`, `faultOf`, and
 * list-comma, list-units, unit-on-number, unknown-word.
 */
export function readInputs(computation: Computation, words: readonly string[]): Result<ReadInputs> {
  const pairs = pairsOf(words)
  if (!pairs.ok) return pairs
  const values: Record<string, Value> = {}
  const assumed: Record<string, string> = {}
  for (const [key, text] of pairs.value) {
    const parameter = computation.inputs.find(({ name }) => name === tidyKey(key))
    if (parameter === undefined) return unknownKey(computation, key)
    const { name } = parameter
    if (values[name] !== undefined) return refuse('key-twice', `${name} is given twice; give it once.`)
    const read = readValue(parameter, text)
    if (!read.ok) return refuse(read.error.code, named(name, read.error.say))
    const fault = faultOf(parameter, read.value.value)
    if (fault !== undefined) return { ok: false, error: fault }
    values[name] = read.value.value
    if (read.value.assumed !== undefined) assumed[name] = read.value.assumed
  }
  const missing = computation.inputs.filter((p) => p.optional !== true && values[p.name] === undefined)
  if (missing.length > 0)
    return refuse('missing-keys', `${computation.name} also needs ${list(missing.map((p) => p.name))}.`)
  return ok({ values, assumed })
}

function pairsOf(words: readonly string[]): Result<[string, string][]> {
  const pairs: [string, string][] = []
  for (const word of words) {
    const at = word.indexOf('=')
    const last = pairs[pairs.length - 1]
    if (at > 0) pairs.push([word.slice(0, at), word.slice(at + 1)])
    else if (at < 0 && last !== undefined) last[1] += ` ${word}`
    else return refuse('no-key', `${quote(word)} does not say what it is; key it as name=value.`)
  }
  return ok(pairs)
}

function tidyKey(key: string): string {
  return key.trim().toLowerCase().replace(/-/g, '_')
}

function unknownKey(computation: Computation, key: string): Result<never> {
  const names = computation.inputs.map(({ name }) => name)
  const near = nearest(key, names)
  const hint = near === undefined ? `it takes ${list(names)}` : `did you mean ${near}?`
  return refuse(
    'unknown-key',
    `${quote(key)} is no input of ${computation.name}; ${hint.replace(/[^?]$/, '$&.')}`,
  )
}

/** The sentence of a box, which does not know its name, with the name in front. */
function named(name: string, say: string): string {
  return say.startsWith(name) ? say : `${name}: ${say}`
}

function readValue({ name, type }: Parameter, text: string): Result<Keyed> {
  if (type.is === 'word') {
    const word = text.trim().toLowerCase()
    if (type.words.includes(word)) return ok({ value: { is: 'word', word } })
    return refuse('unknown-word', `${name} takes ${list(type.words, 'or')}, not ${quote(text)}.`)
  }
  if (type.is === 'number') return readNumber(name, text)
  if (type.is === 'quantities') return readList(text, type.kind, type.unit)
  return readOne(text, type.kind, type.unit, type.signed === true)
}

function readNumber(name: string, text: string): Result<Keyed> {
  const read = parseEntry(text, { kind: 'ratio', unit: '1', signed: true })
  if (!read.ok && (read.error.code === 'unit-kind' || read.error.code === 'unit-unknown'))
    return refuse('unit-on-number', `${name} is a plain number without a unit.`)
  if (!read.ok) return read
  if (read.value.unit !== '1') return refuse('unit-on-number', `${name} is a plain number without a unit.`)
  return ok({ value: { is: 'number', number: read.value.value } })
}

function readOne(text: string, kind: QuantityKind, unit: string, signed: boolean): Result<Keyed> {
  const read = parseEntry(text, { kind, unit, signed: signed || isSigned(kind) || kind === 'temperature' })
  if (!read.ok) return read
  const value: Value = { is: 'quantity', quantity: fromSi(kind, read.value.si) }
  const hasUnit = unit === '1' || /[^\d.,+\-\s\u2212]/u.test(text)
  return ok(hasUnit ? { value } : { value, assumed: unit })
}

/** One reading of a list, with the words of its unit where it has any. */
interface Item {
  text: string
  unit: string
}

function readList(text: string, kind: QuantityKind, unit: string): Result<Keyed> {
  if (/\d,\d/.test(text))
    return refuse(
      'list-comma',
      `${quote(text)} could be one number or two; put a space after the comma between readings.`,
    )
  const items = itemsOf(text)
  const bare = items.filter((item) => item.unit === '')
  const last = items[items.length - 1]
  // A unit once at the end is for all of them; said with some and not with others it is anyone's guess.
  const shared = last !== undefined && bare.length === items.length - 1 ? last.unit : ''
  if (bare.length > 0 && bare.length < items.length && shared === '')
    return refuse('list-units', 'Key the unit with each figure, or once after the last.')
  const quantities = []
  for (const item of items) {
    const read = readOne(item.unit === '' ? `${item.text} ${shared}`.trim() : item.text, kind, unit, false)
    if (!read.ok) return read
    if (read.value.value.is === 'quantity') quantities.push(read.value.value.quantity)
  }
  const value: Value = { is: 'quantities', quantities }
  const isBare = bare.length === items.length && unit !== '1'
  return ok(isBare ? { value, assumed: unit } : { value })
}

function itemsOf(text: string): Item[] {
  const items: Item[] = []
  for (const word of text.split(/[\s,;]+/).filter((part) => part !== '')) {
    const last = items[items.length - 1]
    // A unit may begin with a figure (1/s), but only behind one.
    const isUnit =
      last !== undefined &&
      (!/^[+\-.\d\u2212]/.test(word) || (/\D/.test(word) && findUnit(word) !== undefined))
    if (isUnit) {
      last.text += ` ${word}`
      last.unit = `${last.unit} ${word}`.trim()
    } else items.push({ text: word, unit: word.replace(/^[+\-.\d\u2212]+/, '') })
  }
  return items
}
