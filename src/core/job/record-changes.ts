// What differs between two machine records, field by field, in the words of the trade. Compared as read: spacing, comments and
// the order of a list are no difference, another way of writing a figure is, as the sheet shows it as it is written.
import { CHARACTERISTICS } from '../definition/characteristics.ts'
import type { Machine } from '../definition/machine.ts'

export interface ChangedField {
  /** Where it stands, from the whole to the part: `bore, nominal`. */
  readonly field: string
  /** As it is written in the record; null: it is not there. */
  readonly was: string | null
  readonly now: string | null
}

/** Keys that are not yet the words people have for them. */
const WORDS: Readonly<Record<string, string>> = {
  u: 'measuring error',
  u_per_kelvin: 'uncertainty per kelvin',
  left: 'as left',
  lel_basis: 'LEL basis',
  as_made: 'tolerance as made',
  by: 'decided by',
  k: 'exponent k',
  z_suction: 'compressibility at suction',
  z_discharge: 'compressibility at discharge',
}

/** Lists of things that have names of their own: what one of them is called, and the keys that tell it from the others. */
const LISTS: Readonly<Record<string, { readonly one: string; readonly by: readonly string[] }>> = {
  isolation_points: { one: 'isolation point', by: ['id'] },
  limits: { one: 'limit', by: ['id', 'characteristic'] },
  overhauls: { one: 'overhaul', by: ['day'] },
  left: { one: '', by: ['of', 'station', 'axis'] },
  stages: { one: 'stage', by: ['stage'] },
  cylinders: { one: 'throw', by: ['throw'] },
  between: { one: 'after stage', by: ['after'] },
}

/** In the order of the record as it was; what is new in the other stands after it, in the part it belongs to. */
export function recordChanges(was: Machine, now: Machine): ChangedField[] {
  return differences([], was, now)
}

function differences(path: readonly string[], was: unknown, now: unknown): ChangedField[] {
  const [before, after] = [written(was), written(now)]
  if (before !== undefined && after !== undefined)
    return before === after ? [] : [{ field: fieldName(path), was: before, now: after }]
  const [old, next] = [partsOf(path, was), partsOf(path, now)]
  return [...new Set([...old.keys(), ...next.keys()])].flatMap((key) =>
    differences([...path, key], old.get(key), next.get(key)),
  )
}

/** What is written in one place, null where nothing is; undefined for what has parts. */
function written(value: unknown): string | null | undefined {
  if (value === null || value === undefined) return null
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (typeof value !== 'object') return String(value)
  if ('text' in value && 'si' in value) return String(value.text).trim()
  if (Array.isArray(value) && value.every((one) => typeof one !== 'object')) return value.join('; ')
  return undefined
}

/** The parts of something by their keys; of what is written in one place, or not there, none. */
function partsOf(path: readonly string[], value: unknown): ReadonlyMap<string, unknown> {
  if (value === null || typeof value !== 'object' || written(value) !== undefined) return new Map()
  if (!Array.isArray(value)) return new Map(Object.entries(value))
  const list = LISTS[path.at(-1) ?? '']
  const parts = new Map<string, unknown>()
  for (const [n, one] of value.entries()) {
    const name = `${list?.one ?? ''} ${keyOf(one, list?.by ?? []) ?? n + 1}`.trim()
    // Two limits of one thing are two parts all the same.
    let unique = name
    for (let again = 2; parts.has(unique); again++) unique = `${name} (${again})`
    parts.set(unique, one)
  }
  return parts
}

/** What tells one of a list from the others, however the list is ordered. */
function keyOf(one: unknown, by: readonly string[]): string | null {
  if (typeof one !== 'object' || one === null) return null
  const values = one as Readonly<Record<string, unknown>>
  const own = by.flatMap((key) => (values[key] === undefined ? [] : [String(values[key])]))
  return own.length === 0 ? null : own.map(labelOf).join(' ')
}

function labelOf(word: string): string {
  const known: Readonly<Record<string, { readonly label: string; readonly bound: string }>> = CHARACTERISTICS
  const found = Object.hasOwn(known, word) ? known[word] : undefined
  if (found === undefined) return word
  return found.bound === 'at-least' ? `${found.label} (least)` : found.label
}

/** A list whose things have a name is told by that thing: `limit largest, at most`. */
function fieldName(path: readonly string[]): string {
  const told = path.filter((key, n) => n === path.length - 1 || (LISTS[key]?.one ?? '') === '')
  return told.map((key) => WORDS[key] ?? key.replaceAll('_', ' ')).join(', ')
}
