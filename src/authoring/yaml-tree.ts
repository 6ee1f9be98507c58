// Looks in the tree the parser made of a broken text for what an author would want to be shown.
import { type Document, isMap, isScalar, visit } from 'yaml'

/** Offset of the first key with the name of the one at `offset`, in the same map. */
export function firstKeyLike(doc: Document, offset: number): number | undefined {
  let first: number | undefined
  visit(doc, {
    Map: (_key, map) => {
      if (!isMap(map)) return
      const keys = map.items.map((pair) => pair.key).filter(isScalar)
      const again = keys.find((key) => key.range?.[0] === offset)
      if (again === undefined) return
      first = keys.find((key) => key.value === again.value)?.range?.[0]
      return visit.BREAK
    },
  })
  return first
}

/** Offset of the innermost bracket `open` in front of `offset` that has no end. */
export function openBracket(
  doc: Document,
  text: string,
  offset: number,
  open: '{' | '[',
): number | undefined {
  let found: number | undefined
  visit(doc, {
    Collection: (_key, node) => {
      const [start, end] = node.range ?? [0, 0]
      const isUnclosed = node.flow === true && text[start] === open && !/[\]}]/.test(text[end - 1] ?? '')
      if (isUnclosed && start < offset) found = start
    },
  })
  return found
}

/** Offset of the quote of the quoted text that reaches up to `offset`. */
export function openQuote(doc: Document, offset: number): number | undefined {
  let found: number | undefined
  visit(doc, {
    Scalar: (_key, node) => {
      const isQuoted = node.type === 'QUOTE_DOUBLE' || node.type === 'QUOTE_SINGLE'
      const [start, end] = node.range ?? [0, 0]
      if (isQuoted && start < offset && end >= offset) found = start
    },
  })
  return found
}
