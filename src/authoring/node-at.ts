// From a path in the plain values to the place in the text that an author would look at.
import { type Document, isAlias, isCollection, isMap, isScalar, isSeq, type Node, type Pair } from 'yaml'
import type { Span } from './span.ts'

export type Step = string | number

export interface Found {
  /** The last node on the path that exists, aliases followed on the way. */
  readonly node: Node | null
  /** Its key, if it is the value of one. */
  readonly key: Node | null
  /** How many steps of the path exist. */
  readonly depth: number
  /** Set when the node that was looked for is an alias: the use, whose target is `node`. */
  readonly use?: Node
}

/** Follows `path` as far as it goes; what is missing, or came from nowhere, ends the walk early. */
export function nodeAt(doc: Document, path: readonly Step[]): Found {
  let found: Found = { node: doc.contents as Node | null, key: null, depth: 0 }
  for (const step of path) {
    const next = stepInto(doc, found.node, step)
    if (next === undefined) break
    found = { ...next, depth: found.depth + 1 }
  }
  return found
}

function stepInto(doc: Document, node: Node | null, step: Step): Omit<Found, 'depth'> | undefined {
  if (isMap(node)) {
    const pair = pairOf(node.items as Pair[], String(step))
    return pair === undefined ? undefined : follow(doc, pair.value as Node | null, pair.key as Node)
  }
  if (isSeq(node) && typeof step === 'number' && step < node.items.length) {
    return follow(doc, node.items[step] as Node | null, null)
  }
  return undefined
}

function pairOf(pairs: readonly Pair[], key: string): Pair | undefined {
  return pairs.find((pair) => isScalar(pair.key) && String(pair.key.value) === key)
}

function follow(doc: Document, node: Node | null, key: Node | null): Omit<Found, 'depth'> {
  if (!isAlias(node)) return { node, key }
  return { node: node.resolve(doc) ?? null, key, use: node }
}

/** The span of the key whose value was found. */
export function ownKeySpan(found: Found): Span | undefined {
  return found.key === null ? undefined : rangeOf(found.key)
}

/** The span of a part of a text's value, where the source spells the value as it is: on one line, with no escapes. */
export function partSpan(
  found: Found,
  source: string,
  part: { start: number; end: number },
): Span | undefined {
  const { node, use } = found
  if (use !== undefined || !isScalar(node) || typeof node.value !== 'string' || !node.range) return undefined
  const isQuoted = node.type === 'QUOTE_DOUBLE' || node.type === 'QUOTE_SINGLE'
  const start = node.range[0] + (isQuoted ? 1 : 0)
  if (!source.startsWith(node.value, start) || part.start >= node.value.length) return undefined
  return [start + part.start, start + Math.max(part.start + 1, Math.min(part.end, node.value.length))]
}

/** The span of the key `name` in the map at `found`, if it is there. */
export function keySpan(found: Found, name: string): Span | undefined {
  if (!isMap(found.node)) return undefined
  const pair = pairOf(found.node.items as Pair[], name)
  return pair === undefined ? undefined : rangeOf(pair.key as Node)
}

/** Written with brackets on one line. */
export function isFlow(found: Found): boolean {
  return isCollection(found.node) && found.node.flow === true
}

/** The key is there and nothing stands behind it. */
export function keyIsAlone(found: Found, name: string): boolean {
  if (!isMap(found.node)) return false
  const value = pairOf(found.node.items as Pair[], name)?.value as Node | null | undefined
  return value === null || (isScalar(value) && value.value === null && rangeOf(value) === undefined)
}

/** In braces: the words right behind the value of `name` that stand alone, as if they were keys. */
export function straysBehind(found: Found, name: string): string[] {
  if (!isMap(found.node) || !isFlow(found)) return []
  const keys = found.node.items.map((pair) => String(isScalar(pair.key) ? pair.key.value : ''))
  const start = keys.indexOf(name) + 1
  if (start === 0) return []
  const behind = keys.slice(start)
  const end = behind.findIndex((key) => !keyIsAlone(found, key))
  return end === -1 ? behind : behind.slice(0, end)
}

/** In braces: the last key in front of the lone word `stray` that has a value. */
export function ownerOfStray(found: Found, stray: string): string | undefined {
  if (!isMap(found.node)) return undefined
  const keys = found.node.items.map((pair) => String(isScalar(pair.key) ? pair.key.value : ''))
  return keys.slice(0, Math.max(0, keys.indexOf(stray))).findLast((key) => !keyIsAlone(found, key))
}

/** The useful span of what was found: a use before its target, a value, else its key; of a map its first key. */
export function usefulSpan(found: Found): Span {
  const use = found.use && rangeOf(found.use)
  return use ?? valueSpan(found.node) ?? (found.key && rangeOf(found.key)) ?? [0, 0]
}

function valueSpan(node: Node | null): Span | undefined {
  if (!isCollection(node)) return node === null ? undefined : rangeOf(node)
  for (const item of node.items) {
    const inner = isMap(node) ? (item as Pair).key : item
    const span = isCollection(inner) ? valueSpan(inner) : rangeOf(inner as Node | null)
    if (span !== undefined) return span
  }
  return rangeOf(node)
}

/** Start and end of a node's own text; nothing for an empty one. */
function rangeOf(node: Node | null): Span | undefined {
  const range = node?.range
  if (range === null || range === undefined || range[0] === range[1]) return undefined
  return [range[0], range[1]]
}
